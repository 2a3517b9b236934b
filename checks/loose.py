"""Parts that only stand there by their weight, each judged about its own contact."""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.faults import DesignError, Fault
from ..design.on_ground import BEDDING, Patch, contact_kind, touching_face
from ..design.sections import section
from ..design.structure import Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..loads.exposed import Bare, Exposed, expose
from ..loads.given import GivenLoad
from ..materials.grounds import Ground
from ..materials.surfaces import surface
from ..statics.contacts.edge import Edge
from ..statics.contacts.graph import Graph
from ..units.frozen import ByIdentity, replace
from .acting.borne import Borne, as_actions, borne_by
from .acting.given_loads import both_at_once, one_at_a_time, summed
from .acting.load_cases import at_once, loads_together
from .judged.judging import Check, Kind
from .stability.overturning import check_overturning
from .stability.sliding import check_sliding
from .stability.standing import Standing

LEAST_SEAT = 1.0e-6
"""Area in m2 below which a seat is a line or a point."""


class Loose(ByIdentity, frozen=True):
    """A loose part with all that stands on it: where it stands, and which bodies go with it."""

    name: str
    standing: Standing
    level: float
    goes: NDArray[np.bool_]

    @property
    def top(self) -> float:
        """Return how high it reaches above the ground in m, with what stands on it."""
        return self.level + self.standing.structure.height

    def exposed(self, structure: Structure, sheltering: bool, each: Bare) -> Exposed:
        """Return what only these bodies offer the wind: nothing before or behind them helps."""
        return expose(structure, each, sheltering, self.goes)

    def about_its_foot(self, actions: Actions) -> Actions:
        """Return actions with heights measured from its own underside."""
        return replace(actions, tilting=actions.tilting - self.level * actions.force)


def loose_parts(graph: Graph, ground: Ground, slope: float) -> tuple[Loose, ...]:
    """Return every loose part's standing on what is beneath it, with all that it carries.

    DesignError where one rests on a line or a point only.
    """
    parts, bodies = graph.structure.design.parts, graph.structure.bodies
    return tuple(
        _loose(graph, i, ground, slope) for i, body in enumerate(bodies) if parts[body.part].loose
    )


def check_loose(
    loose: Sequence[Loose],
    actions: Sequence[Actions],
    factors: Factors,
    named: Sequence[Borne] = (),
    people: Sequence[tuple[int, GivenLoad, float]] = (),
) -> list[Check]:
    """Return tipping and sliding of each loose part, each under the worst that acts on it.

    That is its own ``actions`` of wind (Q, D, C), loads ``named`` on it or on what it carries, by
    themselves and with wind as beside the whole, and what ``people`` do to it, without wind.
    """
    checks: list[Check] = []
    for one, its in zip(loose, actions, strict=True):
        tried = list(_tried(one, its, factors, named, people))
        for kind in (Kind.LOOSE, Kind.LOOSE_SLIDING):
            own = [check for check in tried if check.kind is kind]
            checks.append(max(own, key=lambda check: check.rank))
    return checks


def _tried(
    one: Loose,
    wind: Actions,
    factors: Factors,
    named: Sequence[Borne],
    people: Sequence[tuple[int, GivenLoad, float]],
) -> Iterator[Check]:
    """Yield tipping and sliding of a loose part under all that acts on it, wind first."""
    yield from _both_ways(one, wind, factors)
    live = replace(factors, wind=factors.live)
    for acting in at_once([each.load for each in borne_by(named, one.goes)]):
        load, name = summed([as_actions(each) for each in acting]), loads_together(acting)
        yield from _both_ways(one, load, live, name)
        for by_wind, by_load in factors.companions:
            both = both_at_once(wind, by_wind, load, by_load)
            for check in _both_ways(one, both, replace(factors, wind=1.0), name):
                yield replace(check, wind=by_load)
    done: dict[str, list[GivenLoad]] = {}
    for i, load, _ in people:
        if one.goes[i]:
            done.setdefault(load.name, []).append(load)
    for name, loads in done.items():
        yield from _both_ways(one, one_at_a_time([as_actions(each) for each in loads]), live, name)


def _both_ways(one: Loose, actions: Actions, factors: Factors, load: str = "") -> Iterator[Check]:
    """Yield tipping and sliding of a loose part under actions, named by a ``load`` if one acts."""
    lowered = one.about_its_foot(actions)
    for kind, check in (
        (Kind.LOOSE, check_overturning(one.standing, lowered, factors)),
        (Kind.LOOSE_SLIDING, check_sliding(one.standing, lowered, factors)),
    ):
        found = replace(check, kind=kind, subject=one.name, load=load)
        yield replace(found, direction_deg=None, case="") if load else found


def _loose(graph: Graph, i: int, ground: Ground, slope: float) -> Loose:
    structure, body, goes = graph.structure, graph.structure.bodies[i], graph.carried(i)
    part = structure.design.parts[body.part]
    level, face = body.bottom, touching_face(body)
    contact = contact_kind(part)
    if seats := graph.seats(i):
        level = min(float(edge.face.middle[2]) for edge in seats if edge.face is not None)
        face = _seat(graph, seats, goes)
        beneath = [edge.to if goes[edge.of] else edge.of for edge in seats]
        ground = _slipperiest(structure, beneath, contact)
    hull = plane.hull(plane.coordinates(face)) if not face.is_empty else plane.NOTHING
    if hull.area < LEAST_SEAT:
        raise DesignError((_no_seat(structure, part.name),))
    alone = replace(
        structure,
        body_mass=structure.body_mass * goes,
        body_centre=structure.body_centre - np.array([0.0, 0.0, level]),
        footprint=plane.ring_of(hull),
        patches=(Patch(face, body.part, contact),),
        height=max(each.top for each, own in zip(structure.bodies, goes, strict=True) if own)
        - level,
    )
    return Loose(part.name, Standing(alone, ground, slope), level, goes)


def _seat(graph: Graph, seats: Sequence[Edge], goes: NDArray[np.bool_]) -> BaseGeometry:
    """Return in plan (m) where it lies on what carries it: the faces on which they meet.

    What rests on a point or an edge beds in there: the sections of both 10 mm off it (judgement).
    """
    faces = [edge.face.in_plan for edge in seats if edge.face is not None]
    whole = plane.union_of([face for face in faces if face.area > 0.0])
    if whole.area >= LEAST_SEAT:
        return whole
    found: list[BaseGeometry] = []
    for edge in seats:
        upper, lower = (edge.of, edge.to) if goes[edge.of] else (edge.to, edge.of)
        above, below = graph.structure.bodies[upper], graph.structure.bodies[lower]
        at = 0.0 if edge.face is None else float(edge.face.middle[2])
        found.append(section(above, at + BEDDING).intersection(section(below, at - BEDDING)))
    return plane.union_of(found)


def _slipperiest(structure: Structure, beneath: Sequence[int], contact: str) -> Ground:
    """Return of the parts beneath, as a ground, the one on which it slides first."""
    parts, bodies = structure.design.parts, structure.bodies
    found = [surface(contact_kind(parts[bodies[j].part])) for j in beneath]
    return min(found, key=lambda one: one.friction[contact].coefficient)


def _no_seat(structure: Structure, name: str) -> Fault:
    return Fault(
        structure.design.file,
        structure.design.lines.get((name, "loose")),
        name,
        "loose",
        "it rests on a line or a point only, or on nothing",
        "a seat with some width both ways",
        "leave out 'loose' if it is fastened, or give it a seat",
    )
