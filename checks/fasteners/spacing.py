"""Whether fasteners stand far enough from ends, edges and each other, as the file has them."""

from collections.abc import Iterator, Mapping, Sequence
from enum import StrEnum

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design.structure import Structure
from ...materials.fastener import Fastener
from ...statics.tables.joint_table import JointRow
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from ..judged.judging import Check, Kind
from ..timber.books import titled
from ..timber.terms.answers import Room
from ..timber.terms.joint_material import met
from .fastener_sets import JointPlace
from .wood_around import Around, square_to, wood_around

EXACT_SHARE = 1.0e-5
"""What is short by no more than this share is not short."""


_WITHIN = 1.0e-3
"""So deep (m) in a piece its wood is looked at: fasteners follow a piece that leans."""

HALF = 0.5
"""The least part of its value at which a bolt or lag screw may stand nearer than in full room."""


_NONE = 1.0e-9


class Near(StrEnum):
    """What fasteners may stand too near to."""

    END = "end"
    EDGE = "edge"
    EACH_OTHER = "each other"


class Nearest(ByValue, frozen=True):
    """Where a joint's fasteners have least of the room that they need.

    They stand ``has`` m from what they are ``near`` to in the piece ``part``, and ``needs`` is
    asked: ``use`` is the one over the other.
    """

    near: Near
    part: str
    has: float
    needs: float

    @property
    def use(self) -> float:
        """Return how far the room is used up, 1 where it just does."""
        return self.needs / max(self.has, _NONE)

    @property
    def fits(self) -> bool:
        """Return whether there is room."""
        return self.use <= 1.0 + EXACT_SHARE


class SpacingFound(ByIdentity, frozen=True):
    """What was found of the room of fasteners: of a joint, or of a part's seams.

    ``nearest`` is as they are driven. ``in_lead_holes``: it would do if lead holes were drilled.
    ``thickest`` in m is the diameter of one of their kind that would do where they stand.
    """

    fastener: Fastener
    check: Check
    nearest: Nearest
    in_lead_holes: bool
    thickest: float


def check_spacing(
    structure: Structure, placed: Sequence[JointPlace], used: Mapping[str, float | None]
) -> tuple[SpacingFound, ...]:
    """Return what is found of every joint that asks for room; ``used`` is how far each is."""
    found: list[SpacingFound] = []
    for row in structure.design.several(JointRow):
        own = [place for place in placed if place.row.name == row.name]
        share = used.get(row.name)
        share = 1.0 if share is None else share
        nearest = nearest_of(structure, own, share)
        if nearest is not None:
            drilled = nearest
            if not nearest.fits and not row.predrilled:
                drilled = nearest_of(structure, own, share, predrilled=True) or nearest
            source = titled(own[0].sets[0].holds.book).spacing
            found.append(spacing_found(row.name, row.fastener, nearest, drilled, source))
    return tuple(found)


def spacing_found(
    name: str, fastener: Fastener, nearest: Nearest, in_lead_holes: Nearest, source: str
) -> SpacingFound:
    """Return what is found of fasteners by where they have least room, as driven and drilled.

    ``source`` names the clauses of the book that asks for it.
    """
    check = Check(
        kind=Kind.SPACING,
        subject=name,
        demand=nearest.needs,
        capacity=nearest.has,
        unit="m",
        utilization=nearest.use if nearest.has > _NONE else None,
        passes=nearest.fits,
        source=source,
    )
    return SpacingFound(
        fastener, check, nearest, in_lead_holes.fits, fastener.diameter / nearest.use
    )


def nearest_of(
    structure: Structure,
    placed: Sequence[JointPlace],
    used: float = 1.0,
    *,
    predrilled: bool | None = None,
) -> Nearest | None:
    """Return where fasteners have least room, at all places; None where nothing asks for any.

    ``used`` is which part of what they hold in full is asked of bolts and lag screws.
    """
    worst: Nearest | None = None
    for place in _unlike(structure, placed):
        drilled = place.row.predrilled if predrilled is None else predrilled
        for one in _at(structure, place, used, drilled):
            if worst is None or one.use > worst.use:
                worst = one
    return worst


def woods_of(structure: Structure, place: JointPlace) -> list[tuple[Around, float]]:
    """Return the wood round the fasteners of a place in each piece that they go straight through.

    With each the lesser length of the fastener in wood, in diameters. None of steel, of the edges
    of panels, of toe-nails, nor of blocks, whose places are not drawn.
    """
    if place.row.blocks is not None or place.row.toe_nailed:
        return []
    one = place.sets[0]
    through, reach = one.driven.through, one.holds.penetration
    heads_above = one.head_in == place.row.of
    lengths = [] if one.driven.side.is_steel else [through]
    slender = min([*lengths, reach]) / place.row.fastener.diameter
    found: list[tuple[Around, float]] = []
    for i, way, has_head in ((place.of, 1.0, heads_above), (place.to, -1.0, not heads_above)):
        stuff = one.driven.side if has_head else one.driven.main
        body = structure.bodies[i]
        part = structure.design.parts[body.part]
        into = met(body, part, way * place.face.leaves).into
        if not has_head and place.row.into is not None:
            into = place.row.into
        if stuff.is_steel or into == "panel edge":
            continue
        sheet, in_end = into == "panel face", into == "end grain"
        around = wood_around(body, part.name, place.face, way * _WITHIN, sheet=sheet, in_end=in_end)
        if around.pieces:
            found.append((around, slender))
    return found


def free_region(structure: Structure, place: JointPlace, used: float = 1.0) -> BaseGeometry | None:
    """Return where on the face of a place fasteners have room to ends and edges; None: anywhere."""
    free: BaseGeometry | None = None
    for around, slender in woods_of(structure, place):
        room = room_of(place, around, slender, used, place.row.predrilled)
        own = around.within(room.end, room.edge)
        free = own if free is None else free.intersection(own)
    return None if free is None else free.intersection(place.face.area)


def room_of(
    place: JointPlace, around: Around, slender: float, used: float, predrilled: bool
) -> Room:
    """Return the room that the fasteners of a place need in one of its pieces."""
    return _asked(place, used, predrilled, slender, around.sheet)


def _asked(
    place: JointPlace, used: float, predrilled: bool, slender: float = 0.0, sheet: bool = False
) -> Room:
    """Return what the book of a place asks, in the denser of its two pieces."""
    one = place.sets[0]
    known = [stuff.gravity for stuff in (one.driven.side, one.driven.main) if not stuff.is_steel]
    dense = None if None in known else max((each or 0.0 for each in known), default=0.0)
    return titled(one.holds.book).room(
        place.row.fastener,
        predrilled=predrilled,
        sheet=sheet,
        used=used,
        slender=slender,
        gravity=dense,
    )


def _at(
    structure: Structure, place: JointPlace, used: float, predrilled: bool
) -> Iterator[Nearest]:
    """Yield the least room at one place: from ends and edges of each piece, and apart."""
    points = place.face.in_plane(place.points)
    woods = woods_of(structure, place)
    for around, slender in woods:
        room = room_of(place, around, slender, used, predrilled)
        ends, edges = around.distances(points)
        yield Nearest(Near.EDGE, around.part, float(edges.min()), room.edge)
        if np.isfinite(ends.min()):
            yield Nearest(Near.END, around.part, float(ends.min()), room.end)
        yield from _apart(points, around, room)
    if not woods and len(points) > 1:
        yield from _apart(points, None, _asked(place, used, predrilled))


def _apart(points: Array, around: Around | None, room: Room) -> Iterator[Nearest]:
    """Yield the two fasteners that stand nearest, by the grain between them.

    What is asked of those that stand askew lies on an ellipse between along and across the grain
    (judgement: of staggered rows less is asked).
    """
    if len(points) < 2:
        return
    first, second = np.triu_indices(len(points), 1)
    between = points[second] - points[first]
    apart = np.linalg.norm(between, axis=1)
    asked = np.full(len(apart), room.across)
    if around is not None:
        grain = around.grains(points)[first]
        along = (between * grain).sum(axis=1) / room.along
        across = (between * square_to(grain)).sum(axis=1) / room.across
        share, known = np.hypot(along, across), grain.any(axis=1)
        asked[known] = apart[known] / np.maximum(share[known], _NONE)
    k = int(np.argmin(apart / asked))
    part = "" if around is None else around.part
    yield Nearest(Near.EACH_OTHER, part, float(apart[k]), float(asked[k]))


def _unlike(structure: Structure, placed: Sequence[JointPlace]) -> Iterator[JointPlace]:
    """Yield places of which none is a copy of one before."""
    seen: set[tuple[object, ...]] = set()
    for place in placed:
        key = alike(structure, place)
        if key not in seen:
            seen.add(key)
            yield place


def alike(structure: Structure, place: JointPlace) -> tuple[object, ...]:
    """Return what is the same of two places whose fasteners and pieces stand alike."""
    key: list[object] = [place.row.name]
    for i in (place.of, place.to):
        body = structure.bodies[i]
        local = (place.points - body.origin) @ body.rotation
        key += [body.part, np.round(local, 6).tobytes()]
    return tuple(key)
