"""What fills a body with a floor: ballast where it lies, as a part without wind."""

from ...design.faults import Fault
from ...design.model import Design, Part
from ...design.shapes.hulls import Moments
from ...design.shapes.weight import Weight
from ...materials import ballast
from ...units.frozen import replace


def filling(design: Design) -> tuple[list[Part], list[Fault]]:
    """Return what fills each body as a point mass, and what has no floor to lie on.

    It weighs the least that is published of its kind, loose, since it helps. A shell's floor is
    the part that it stands on, if that closes it; a box has its own unless it is open below.
    """
    named = {part.name: part for part in design.parts}
    found: list[Part] = []
    faults: list[Fault] = []
    for part in design.parts:
        if part.fill is None:
            continue
        if not _floored(part, named.get(part.place.on or "")):
            faults.append(_no_floor(design, part))
            continue
        inside = _inside(part)
        if inside is None or inside.volume <= 0.0:
            continue
        x, y, z = part.place.at
        height = float(inside.first[2]) / inside.volume
        place = replace(part.place, at=(x, y, z + height), turn=0.0)
        mass = ballast.find_ballast(part.fill).least * inside.volume
        found.append(Part(f"{part.fill} in {part.name}", Weight(), place, mass=mass))
    return found, faults


def _floored(part: Part, below: Part | None) -> bool:
    """Return whether what lies inside a body lifts with it."""
    return not part.shape.open_below or _closes(below)


def _closes(below: Part | None) -> bool:
    if below is None or below.shape.lets_through:
        return False
    return not below.shape.hole


def _inside(part: Part) -> Moments | None:
    """Return the space inside a body up to the depth of the fill."""
    height = part.shape.fill_height
    assert height is not None
    return part.shape.fill(height if part.fill_depth is None else min(part.fill_depth, height))


def _no_floor(design: Design, part: Part) -> Fault:
    return Fault(
        design.file,
        design.lines.get((part.name, "fill")),
        part.name,
        "fill",
        part.fill or "",
        "a body with a floor that lifts with it",
        "stand it on a plate without a hole: what lies loose in a ring stays behind",
    )
