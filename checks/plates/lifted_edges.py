"""Walls of an open box as beams in their own plane: a roof or lid on them is lifted by the wind."""

from ...design.shapes.boxes import Box
from ...design.shapes.forms import Ridge
from ...design.structure import Structure
from ...loads.roofs.lids import on_top, top_plan
from ...units.arrays import Array
from ..acting.local_wind import LocalWind
from .strips import Acting, Strip, StripWays


def lifted_edges(structure: Structure, i: int, local: LocalWind) -> list[StripWays]:
    """Return the walls of an open-topped box that a roof or lid on it lifts by their upper edge.

    Held at its corners alone, whatever its lower edge is fastened to, so that all of its height
    bends; the weight of what lies on it is not counted on. A pitched roof lifts the walls under its
    eaves by half of its span each, all else each wall by half of the lesser side of its plan
    (judgement: no less than the part of it that is nearest to that wall).
    """
    body = structure.bodies[i]
    box = body.shape.room
    if box is None or "top" not in box.open:
        return []
    opening = top_plan(body)
    found: list[StripWays] = []
    for j in on_top(structure, i):
        other = structure.bodies[j]
        if top_plan(other).intersection(opening).area < 0.5 * opening.area:
            continue
        lifted = local.panel(j, "outward", open_to_wind=True)
        ridge = other.shape.form
        if isinstance(ridge, Ridge) and not ridge.is_round:
            front = abs(float(other.bearing(0.0) @ body.bearing(0.0))) > 0.5**0.5
            walls = ("front", "back") if front else ("left", "right")
            reach = ridge.width / 2.0
        else:
            walls, reach = ("front", "back", "left", "right"), _lesser(other.extent) / 2.0
        found += _walls(box, walls, lifted * reach)
    return found


def _lesser(extent: tuple[Array, Array]) -> float:
    """Return the lesser side in m of the level box round a body."""
    low, high = extent
    return float((high - low)[:2].min())


def _walls(box: Box, walls: tuple[str, ...], line: float) -> list[StripWays]:
    """Return each kind of wall that is there and held at its corners, ``line`` N/m at its edge."""
    found: list[StripWays] = []
    for ends, sides in (
        (("left", "right"), ("front", "back")),
        (("front", "back"), ("left", "right")),
    ):
        if set(ends) & box.open or not set(sides) & set(walls) - box.open:
            continue
        along = max(box.length, box.top_plan.length)
        span = along if "front" in sides else max(box.width, box.top_plan.width)
        strip = Strip(
            (0.0, span),
            (0.0, span),
            box.height,
            across=False,
            lifts=(Acting(line / box.height),),
            on_edge=True,
        )
        found.append(StripWays("box wall", "lifted edge", (strip,)))
    return found
