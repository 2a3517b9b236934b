"""Which fields come first on the page: those that decide how a piece stands in the wind."""

from collections.abc import Iterator

from ..checks.anchoring.ground_parts import GroundParts, ground_parts
from ..design.model import Design, Part
from ..design.structure import Structure

_UPRIGHT = ("height", "panel_length", "to")
_FOOT = ("across", "across_side", "across_points", "length", "breadth", "width")
_BODY = (
    *("bottom", "bottom_side", "bottom_points", "top", "top_side", "top_points"),
    *("across", "length", "width", "top_length", "top_width"),
)
_SITE = ("ground", "exposure", "terrain", "wind")


def leading(structure: Structure) -> list[str]:
    """Return the places of such fields in their order, whether the file has each or not."""
    design, ground = structure.design, ground_parts(structure)
    feet = [i for i in ground.feet if i < len(design.parts)]
    body = _body(structure, ground)
    found = [*_places(body, _UPRIGHT)]
    found += [place for i in feet[:1] for place in _places(i, _FOOT)]
    if body not in feet:
        found += _places(body, _BODY)
    found += [f"part.{i}.mass" for i in _low(design, structure)]
    return [*found, *(f"site.0.{key}" for key in _SITE)]


def _places(part: int, keys: tuple[str, ...]) -> Iterator[str]:
    return (f"part.{part}.{key}" for key in keys)


def _body(structure: Structure, ground: GroundParts) -> int:
    """Return the part that is tallest, the foot left out where there is another."""
    tall: dict[int, float] = {}
    for body in structure.bodies:
        low, high = body.extent
        tall[body.part] = max(tall.get(body.part, 0.0), float(high[2] - low[2]))
    others = {i: height for i, height in tall.items() if i not in ground.feet} or tall
    return max(others, key=lambda i: others[i])


def _low(design: Design, structure: Structure) -> list[int]:
    """Return the first weight that lies in the lower half of the piece."""
    return [i for i, part in enumerate(design.parts) if _is_low(part, i, structure)][:1]


def _is_low(part: Part, i: int, structure: Structure) -> bool:
    return part.shape.is_point and structure.part_centre[i][2] < 0.5 * structure.height
