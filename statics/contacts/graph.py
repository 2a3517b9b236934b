"""What holds, carries or hangs on what: one graph of the bodies of a structure and the ground."""

from collections.abc import Iterable
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from ...design.structure import Structure
from ...units.frozen import ByIdentity
from .edge import GROUND, Edge, Holds
from .edges_found import edges_found, edges_hung
from .fit import FIT


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
    return Graph(structure, tuple(edges_found(structure)))


def laden(graph: Graph, structure: Structure) -> Graph:
    """Return the graph of a structure that has weights more than that one's, last of its bodies.

    They hang on what is nearest to them; nothing else that meets is changed.
    """
    more = range(len(graph.structure.bodies), len(structure.bodies))
    found = (edge for i in more for edge in edges_hung(structure, i))
    return Graph(structure, (*graph.edges, *found))
