"""Walls and tops of hollow boxes: plates held at their edges, judged as strips between two of them.

A strip from edge to edge that takes all of the load is in balance by itself, whichever way it runs.
So of a plate held all round the better way is taken, of one with a free edge the other way.
"""

from math import hypot

from ...design.shapes.boxes import Box
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.roofs.lids import covered, top_plan
from ...materials.lumber import Lumber, board_width
from ...units.frozen import ByValue
from ..acting.local_wind import LocalWind
from ..members.member_check import MemberStrength, NotJudged
from .boards import panel_pressure
from .lifted_edges import lifted_edges
from .strip_strength import plate_material_of
from .strips import Acting, Basis, Strip, StripWays, simple_span, weakest_place
from .thrust import Thrust, thrust_on

_SIDES = {"front": "left", "back": "left", "left": "front", "right": "front"}
"""Each side of a box with one of the two that it meets; the other is opposite to that."""

_OPPOSITE = {"front": "back", "back": "front", "left": "right", "right": "left"}
_FRONT, _ENDS = frozenset({"front", "back"}), frozenset({"left", "right"})
EDGE = 0.175
"""Share of its span that carries a line of load along the free edge of a sheet (judgement: no more
than that of the weakest plywood along its grain, by plate theory)."""

_WHOLE = 0.9
"""Share of a top that has to be covered for the wind not to reach it (judgement)."""


class _Plate(ByValue, frozen=True):
    """One plate of a box: its greatest extent in m one way and the other, and which edges hold it.

    ``held`` tells of each way whether both ends of strips that run so are held.
    """

    where: str
    extent: tuple[float, float]
    held: tuple[bool, bool]


def check_box(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> MemberStrength | NotJudged | None:
    """Return the bending of the weakest wall of a hollow box, or its top; None for any other body.

    Local suction governs, more where the top or a side is open. The floor is not judged: what
    it stands on and what lies in it is not the wind's.
    """
    body = structure.bodies[i]
    box, part = body.shape.room, structure.design.parts[body.part]
    if box is None or box.wall is None or box.inner() is None:
        return None
    stuff = plate_material_of(part, box.wall)
    if isinstance(stuff, NotJudged):
        return stuff
    top = top_plan(body)
    hidden = covered(structure, i).intersection(top).area if top.area > 0.0 else 0.0
    reached = hidden < _WHOLE * top.area
    if "top" not in box.open and reached and hidden > 0.0:
        return NotJudged(part.name, "load on it")
    pressure = panel_pressure(structure, i, local)
    by = Basis(factors, basis, stuff, box.wall)
    places: list[StripWays] = []
    thrust = thrust_on(structure, i, local) if "top" in box.open else None
    if thrust is not None:
        places += _upper_edges(box, thrust, float(local.velocity[i]), by)
    places += lifted_edges(structure, i, local)
    for plate in plates_of(box):
        if plate.where != "top" or reached:
            ways = _strips(plate, pressure, isinstance(stuff, Lumber))
            if not ways:
                return NotJudged(part.name, "free edges")
            places.append(StripWays("box wall", plate.where, ways))
    return weakest_place(part.name, places, by) if places else None


def plates_of(box: Box) -> list[_Plate]:
    """Return the walls and the top of a hollow box that are there, each with the edges that hold.

    The upper edge of a wall is held by the box's own top, or where it leans against the opposite
    one at a ridge or a point; the lower one by its own floor.
    """
    top = box.top_plan
    ends = "top" not in box.open and "bottom" not in box.open
    lean = {
        "x": hypot(box.height, (box.length - top.length) / 2.0),
        "y": hypot(box.height, (box.width - top.width) / 2.0),
    }
    found: list[_Plate] = []
    for side, meets in _SIDES.items():
        if side in box.open:
            continue
        across = side in ("left", "right")
        level = max(box.width, top.width) if across else max(box.length, top.length)
        level_held = meets not in box.open and _OPPOSITE[meets] not in box.open
        long = level >= (max(box.length, top.length) if across else max(box.width, top.width))
        name = "long wall" if long else "short wall"
        found.append(_Plate(name, (level, lean["x" if across else "y"]), (level_held, ends)))
    if "top" not in box.open and top.length > 0.0 and top.width > 0.0:
        held = (not box.open & {"left", "right"}, not box.open & {"front", "back"})
        found.append(_Plate("top", (top.length, top.width), held))
    return found


def _strips(plate: _Plate, pressure: float, boards: bool) -> list[Strip]:
    """Return the strips that may carry a plate; of ``boards`` those along the longer side alone."""
    ways = [way for way in (0, 1) if plate.held[way]]
    if boards and len(ways) == 2:
        ways = [0 if plate.extent[0] >= plate.extent[1] else 1]
    found: list[Strip] = []
    for way in ways:
        span, width = plate.extent[way], plate.extent[1 - way]
        across = span < width if boards else span <= width
        found.append(simple_span(span, width, across, pressure))
    return found


def _upper_edges(box: Box, thrust: Thrust, velocity: float, by: Basis) -> list[StripWays]:
    """Return the upper edges of the walls that bear a roof: strips along them, between corners.

    No deeper than the wall is high, and of a sheet than carries a line of load on a free edge.
    """
    sides, ends = (_FRONT, _ENDS) if thrust.front else (_ENDS, _FRONT)
    if sides <= box.open or box.open & ends:
        return []
    top, high = box.top_plan, box.height
    span = max(box.length, top.length) if thrust.front else max(box.width, top.width)
    depth = min(board_width() if isinstance(by.stuff, Lumber) else EDGE * span, high)
    outward, inward = thrust.edges(velocity, depth)
    strip = Strip(
        (0.0, span),
        (0.0, span),
        depth,
        span <= high,
        lifts=(Acting(inward / depth),),
        presses=(Acting(outward / depth),),
        weighs=Acting(thrust.weight / depth),
        whole=high,
    )
    return [StripWays("box wall", "upper edge", (strip,))]
