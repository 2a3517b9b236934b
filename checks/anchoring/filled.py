"""What fills a body with a floor: ballast where it lies, as a part without wind."""

from dataclasses import replace

from ...design.faults import Fault
from ...design.model import Design, Part
from ...design.shapes.bodies import Shell
from ...design.shapes.boxes import Box
from ...design.shapes.flat import Frame, Plate
from ...design.shapes.shape import Moments
from ...design.shapes.weight import Weight
from ...materials import ballast


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
        mass = ballast.find(part.fill).least * inside.volume
        found.append(Part(f"{part.fill} in {part.name}", Weight(), place, mass=mass))
    return found, faults


def _floored(part: Part, below: Part | None) -> bool:
    """Return whether what lies inside a body lifts with it."""
    if isinstance(part.shape, Box):
        return "bottom" not in part.shape.open or _closes(below)
    return _closes(below)


def _closes(below: Part | None) -> bool:
    if below is None or isinstance(below.shape, (Frame, Shell)):
        return False
    return not (isinstance(below.shape, Plate) and below.shape.hole)


def _inside(part: Part) -> Moments | None:
    """Return the space inside a body up to the depth of the fill."""
    shape = part.shape
    assert isinstance(shape, (Shell, Box))
    depth = shape.height if part.fill_depth is None else min(part.fill_depth, shape.height)
    share = depth / shape.height
    if isinstance(shape, Shell):
        top = shape.bottom + (shape.top - shape.bottom) * share
        return replace(shape, top=top, height=depth).inner().moments()
    plan = shape.top_plan
    cut = replace(
        shape,
        height=depth,
        top_length=shape.length + (plan.length - shape.length) * share,
        top_width=shape.width + (plan.width - shape.width) * share,
        open=shape.open if share >= 1.0 else shape.open | {"top"},
    )
    space = cut.inner()
    return None if space is None else space.moments()


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
