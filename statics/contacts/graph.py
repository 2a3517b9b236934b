"""What meets what, and what holds there: one graph of bodies and the ground, found by geometry."""

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from enum import StrEnum
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from ...design.on_ground import TOUCHING
from ...design.placing import Body
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..tables.joint_table import JointRow
from .face import Face, point_face
from .fit import CARRIED_ACROSS, FIT
from .meeting import boxes_near, capping, faces_met
from .surfaces import Surfaces, surfaces_of

GROUND = -1
"""The ground among bodies by index."""

_SLANT = 1.0e-6
"""Faces that slant less from plumb (as a cosine) hold nothing up that merely rests against them."""


class Holds(StrEnum):
    """What an edge can carry."""

    FASTENED = "fastened"
    ASSUMED = "assumed"
    RESTS = "rests"
    HUNG = "hung"
    EMBEDDED = "embedded"
    STANDS = "stands"


class Edge(ByIdentity, frozen=True):
    """Where body ``of`` meets body ``to``, or the ground: the ``face``, and what holds it there.

    ``leaves`` of the face points from ``to`` to ``of``. ``placed``: ``of`` is written to stand on
    ``to``, or to hang under it. ``apart`` is the gap in m across which that is taken to carry.
    The ground's edges have no face here.
    """

    of: int
    to: int
    holds: Holds
    face: Face | None = None
    placed: bool = False
    apart: float = 0.0

    @property
    def size(self) -> float:
        """Return the area in m2 on which the two meet."""
        return 0.0 if self.face is None else float(self.face.area.area)

    @property
    def bears_up(self) -> bool:
        """Return whether ``to`` can hold ``of`` up."""
        return self._bears(1.0)

    @property
    def bears_down(self) -> bool:
        """Return whether ``of`` can hold ``to`` up."""
        return self.holds is not Holds.HUNG and self._bears(-1.0)

    def _bears(self, way: float) -> bool:
        if self.holds is not Holds.RESTS or self.face is None or self.face.deep > 0.0:
            return True
        return way * float(self.face.leaves[2]) > _SLANT


class Graph(ByIdentity, frozen=True):
    """The bodies of a structure with every edge between them, and to the ground.

    ``first`` are edges without fasteners that are taken to hold before all others.
    """

    structure: Structure
    edges: tuple[Edge, ...]
    first: tuple[Edge, ...] = ()

    @cached_property
    def grounded(self) -> frozenset[int]:
        """Return the bodies that stand on the ground or in it."""
        return frozenset(edge.of for edge in self.edges if edge.to == GROUND)

    @cached_property
    def joined(self) -> tuple[int, ...]:
        """Return for each body (bodies,) its group: those that edges hold together, not the ground.

        What merely rests or hangs is of a group of its own. What bears it from below, as two
        blocks a plank, is one foot of it: but not what reaches past its underside, which would tip
        about its own foot while the plank lies on it.
        """
        bodies = self.structure.bodies
        groups = _Groups(len(bodies))
        groups.join(e for e in self.edges if e.holds in (Holds.FASTENED, Holds.ASSUMED))
        of = [groups.of(i) for i in range(len(bodies))]
        bears: dict[int, list[int]] = {}
        for edge in self.edges:
            if edge.holds is Holds.RESTS:
                whole = [body.top for k, body in zip(of, bodies, strict=True) if k == of[edge.to]]
                if max(whole) <= bodies[edge.of].bottom + FIT:
                    bears.setdefault(edge.of, []).append(edge.to)
        for beneath in bears.values():
            for one, other in pairwise(beneath):
                groups.unite(one, other)
        return tuple(groups.of(i) for i in range(len(bodies)))

    @cached_property
    def bears(self) -> tuple[tuple[int, ...], ...]:
        """Return for each body those that it can hold up.

        What merely rests bears what lies above it, and nothing below; what hangs bears nothing.
        """
        found: list[dict[int, None]] = [{} for _ in self.structure.bodies]
        for edge in self.edges:
            if edge.to == GROUND:
                continue
            if edge.bears_up:
                found[edge.to][edge.of] = None
            if edge.bears_down:
                found[edge.of][edge.to] = None
        return tuple(tuple(one) for one in found)

    @cached_property
    def borne(self) -> tuple[tuple[int, ...], ...]:
        """Return for each body those that can hold it up."""
        count = range(len(self.structure.bodies))
        return tuple(tuple(j for j in count if i in self.bears[j]) for i in count)

    def steps(self, without: int | None = None) -> list[int]:
        """Return over how many edges each body stands from the ground, -1 where none leads there.

        ``without`` is a body that is taken away.
        """
        found = [-1] * len(self.structure.bodies)
        edge = [i for i in self.grounded if i != without]
        step = 0
        while edge:
            for i in edge:
                found[i] = step
            edge = list(
                dict.fromkeys(
                    j for i in edge for j in self.bears[i] if found[j] < 0 and j != without
                )
            )
            step += 1
        return found

    def carried(self, i: int) -> NDArray[np.bool_]:
        """Return which bodies (bodies,) go where body ``i`` goes: it, and all that it alone holds.

        Those from which no edge leads to the ground but through it.
        """
        alone = np.array(self.steps(without=i)) < 0
        return alone & np.array([step >= 0 or k == i for k, step in enumerate(self.steps())])

    def seats(self, i: int) -> tuple[Edge, ...]:
        """Return the edges on which body ``i``, with all that it carries, lies on others."""
        goes = self.carried(i)
        return tuple(
            edge
            for edge in self.edges
            if edge.to != GROUND
            and edge.face is not None
            and goes[edge.of] != goes[edge.to]
            and (edge.bears_up if goes[edge.of] else edge.bears_down)
            and edge.face.is_level
        )

    def beneath(self, i: int) -> tuple[int, ...]:
        """Return body ``i`` and all through which its load goes down by the shortest way."""
        step = self.steps()
        found, edge = {i: None}, [i]
        while edge:
            edge = [j for k in edge for j in self.borne[k] if 0 <= step[j] < step[k]]
            found.update(dict.fromkeys(edge))
        return tuple(found)

    @cached_property
    def held(self) -> tuple[Edge, ...]:
        """Return the edges without fasteners that are taken to hold what they join, both ways.

        What stands on or hangs under another does where nothing fastens it to something else, and
        else what joins bodies that nothing else joins: so that a joint is not passed by. Of several
        that join the same, all do that end at one piece, or at faces as large as the largest.
        """
        joined, stiff = _Groups(len(self.structure.bodies)), _Groups(len(self.structure.bodies))
        fastened = [edge for edge in self.edges if edge.holds is Holds.FASTENED]
        joined.join((*fastened, *self.first))
        stiff.join(self.first)
        of = {edge.of for edge in (*fastened, *self.first)}
        others = [e for e in self.edges if e.to != GROUND and e.holds is not Holds.FASTENED]
        others = [e for e in others if e not in self.first]
        placed = [edge for edge in others if edge.placed]
        found = [edge for edge in placed if edge.of not in of]
        joined.join(found)
        stiff.join(found)
        for some in (placed, [edge for edge in others if not edge.placed]):
            left = [edge for edge in some if joined.parted(edge)]
            most: dict[tuple[frozenset[int], frozenset[int]], float] = {}
            ways = [
                (
                    frozenset((joined.of(edge.of), joined.of(edge.to))),
                    frozenset((stiff.of(edge.of), stiff.of(edge.to))),
                )
                for edge in left
            ]
            for way, edge in zip(ways, left, strict=True):
                most[way] = most.get(way, 0.0) + edge.size
            best = {pair: max(most[w] for w in most if w[0] == pair) for pair, _ in ways}
            more = [
                edge
                for way, edge in zip(ways, left, strict=True)
                if most[way] >= best[way[0]] * (1.0 - _ALIKE)
            ]
            joined.join(more)
            stiff.join(more)
            found += more
        return (*self.first, *found)

    @cached_property
    def otherwise(self) -> "Graph | None":
        """Return the same with those edges first that are passed by, of what lies on others.

        A board lies on all posts beneath it, and which of them bears first is not known. None where
        none is passed by.
        """
        passed = tuple(
            edge
            for edge in self.edges
            if edge.holds is Holds.ASSUMED
            and edge not in self.held
            and edge.size >= _BEARS
            and edge.face is not None
            and edge.face.is_level
        )
        return Graph(self.structure, self.edges, passed) if passed else None


_BEARS = 1.0e-4
"""Area (m2) from which what lies on another may bear on it alone."""

_ALIKE = 1.0e-3
"""Share by which faces may differ that count as large as each other."""


class _Groups:
    """Which bodies edges join: each group by the number of one of them."""

    def __init__(self, count: int) -> None:
        self._above = list(range(count))

    def of(self, k: int) -> int:
        """Return the group of a body."""
        while self._above[k] != k:
            self._above[k] = self._above[self._above[k]]
            k = self._above[k]
        return k

    def join(self, edges: Iterable[Edge]) -> None:
        """Join what edges join."""
        for edge in edges:
            self.unite(edge.of, edge.to)

    def unite(self, one: int, other: int) -> None:
        """Make one group of those of two bodies."""
        self._above[self.of(one)] = self.of(other)

    def parted(self, edge: Edge) -> bool:
        """Return whether the two bodies of an edge are in different groups."""
        return self.of(edge.of) != self.of(edge.to)


def graph_of(structure: Structure) -> Graph:
    """Return the graph of a structure: bodies that meet within the fit, or stand on each other."""
    return Graph(structure, tuple(_edges(structure)))


def laden(graph: Graph, structure: Structure) -> Graph:
    """Return the graph of a structure that has weights more than that one's, last of its bodies.

    They hang on what is nearest to them; nothing else that meets is changed.
    """
    more = range(len(graph.structure.bodies), len(structure.bodies))
    hung = (edge for i in more for edge in _hung(structure, i))
    return Graph(structure, (*graph.edges, *hung))


def swings(structure: Structure, i: int) -> bool:
    """Return whether a body is no solid that meets others: a weight, a wheel, or what swings."""
    body = structure.bodies[i]
    hook = structure.design.parts[body.part].hangs_at
    return not body.shape.stands or hook is not None


def _edges(structure: Structure) -> Iterator[Edge]:
    bodies, parts = structure.bodies, structure.design.parts
    for i, body in enumerate(bodies):
        if parts[body.part].embed > 0.0:
            yield Edge(i, GROUND, Holds.EMBEDDED)
        elif body.bottom <= TOUCHING and body.shape.hulls() and body.shape.stands:
            yield Edge(i, GROUND, Holds.STANDS)
    solid = {i: surfaces_of(body) for i, body in enumerate(bodies) if not swings(structure, i)}
    rows = _rows(structure)
    met: set[frozenset[int]] = set()
    for of, to, face in _meeting(structure, solid, rows):
        met.add(frozenset((of, to)))
        yield _edge(structure, rows, of, to, face)
    for of, to, face, apart in _placed_apart(structure, solid, met):
        yield _edge(structure, rows, of, to, face, apart)
    swinging = {parts[body.part].name for i, body in enumerate(bodies) if i not in solid}
    for i, body in enumerate(bodies):
        if i not in solid or parts[body.part].place.reference in swinging:
            yield from _hung(structure, i)


Rows = Mapping[frozenset[str], Sequence[JointRow]]
"""By the names of two parts, the joints between them."""


def _rows(structure: Structure) -> Rows:
    found: dict[frozenset[str], list[JointRow]] = {}
    for row in structure.design.several(JointRow):
        found.setdefault(frozenset((row.of, row.to)), []).append(row)
    return found


def _edge(
    structure: Structure, rows: Rows, of: int, to: int, face: Face, apart: float = 0.0
) -> Edge:
    parts = structure.design.parts
    one, other = (parts[structure.bodies[k].part] for k in (of, to))
    placed = one.place.reference == other.name
    loose = one.loose if placed else one.loose or other.loose
    holds = Holds.RESTS if loose else Holds.ASSUMED
    if frozenset((one.name, other.name)) in rows:
        holds = Holds.FASTENED
    return Edge(of, to, holds, face, placed, apart)


def _meeting(
    structure: Structure, solid: Mapping[int, Surfaces], rows: Rows
) -> Iterator[tuple[int, int, Face]]:
    """Yield ``of``, ``to`` and the face of bodies that meet.

    ``of`` is what is fastened to the other, or written to stand on it, else the upper one.
    """
    bodies, parts = structure.bodies, structure.design.parts
    for i, j in _pairs(solid):
        one, other = parts[bodies[i].part], parts[bodies[j].part]
        joints = rows.get(frozenset((one.name, other.name)), ())
        first = one.place.reference == other.name or any(row.of == one.name for row in joints)
        second = other.place.reference == one.name or any(row.of == other.name for row in joints)
        if first == second:
            first = bodies[i].bottom > bodies[j].bottom + FIT
        of, to = (i, j) if first else (j, i)
        bridged = any(row.blocks is not None or row.through is not None for row in joints)
        face = faces_met(solid[of], solid[to], bridged)
        if face is not None:
            yield of, to, face


def _pairs(solid: Mapping[int, Surfaces]) -> list[tuple[int, int]]:
    """Return the pairs of bodies whose boxes lie within the fit of each other."""
    if not solid:
        return []
    index, boxes = list(solid), np.array([one.box for one in solid.values()])
    near = boxes_near(np.moveaxis(boxes, 1, 0)[:, :, None], np.moveaxis(boxes, 1, 0)[:, None, :])
    return [(index[a], index[b]) for a, b in np.argwhere(np.triu(near, 1)).tolist()]


def _placed_apart(
    structure: Structure, solid: Mapping[int, Surfaces], met: Container[frozenset[int]]
) -> Iterator[tuple[int, int, Face, float]]:
    """Yield what is written to stand on something that it meets nowhere, and yet is carried by.

    A hollow roof or lid that sits over walls within its own; or what misses it by an inch or less.
    """
    bodies, parts = structure.bodies, structure.design.parts
    for i in solid:
        place = parts[bodies[i].part].place
        below = [j for j in solid if parts[bodies[j].part].name == place.reference]
        if any(frozenset((i, j)) in met for j in below):
            continue
        way = 1.0 if place.on is not None else -1.0
        for j in below:
            upper, lower = (bodies[i], bodies[j]) if way > 0.0 else (bodies[j], bodies[i])
            apart = upper.bottom - lower.top
            if not -FIT <= apart <= CARRIED_ACROSS + 1.0e-9:
                continue
            apart = apart if apart > FIT else 0.0
            nearer = solid[i].moved(np.array([0.0, 0.0, -way * apart]))
            face = faces_met(nearer, solid[j]) or capping(nearer, solid[j])
            if face is not None:
                yield i, j, face, apart


def _hung(structure: Structure, i: int) -> Iterator[Edge]:
    """Yield the edge of a weight, a wheel or what swings to the copy or part that is nearest."""
    bodies, parts = structure.bodies, structure.design.parts
    part = parts[bodies[i].part]
    at = bodies[i].origin.copy()
    if part.hangs_at is not None:
        at[2] = part.hangs_at
    of = part.place.reference
    near = [j for j, b in enumerate(bodies) if j != i and (of is None or parts[b.part].name == of)]
    near = [j for j in near if not bodies[j].shape.is_point]
    if not near:
        return
    to = min(near, key=lambda j: (_away(bodies[j], at), j))
    up = np.array([0.0, 0.0, 1.0])
    yield Edge(i, to, Holds.HUNG, point_face(at, up), of is not None)


def _away(body: Body, point: Array) -> float:
    low, high = body.extent
    return float(np.linalg.norm(np.maximum(np.maximum(low - point, point - high), 0.0)))
