"""What hides what from the wind: a question of where bodies stand, not of how they were written.

On a line of the wind a body is hidden by what stands close before it, with a clear gap of at most a
tenth of the hiding one's lesser width, or about it. What is together there counts once.
"""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from ...design import plane
from ...design.outlines import downwind_axes, lateral_axes
from ...design.placing import Body
from ...design.plane import Polygons
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .depth import (
    FLUSH,
    Depths,
    DirectionIndices,
    depths,
    faces_look,
    least_widths,
    reach,
    without_clear_gap,
)

CLOSE = 0.1
"""Clear gap over the lesser width of what stands in front, up to which it hides (judgement)."""

ALIKE = 1.0e-9
"""Coefficients that differ less are equal: the part named first in the file then hides."""

LEAST_AREA = 1.0e-9
"""Areas in m2 below which an overlap is none."""

MOST_LOOKS = 100_000
"""So often one outline is held against another, from one side or with one cut: some 3 seconds."""


class CrowdedError(Exception):
    """More ``pairs`` of bodies stand in and close behind one another than are looked at."""

    def __init__(self, pairs: Sequence[tuple[int, int]]) -> None:
        super().__init__(f"{len(pairs)} pairs")
        self.pairs = pairs


class _Looks:
    """Counts how often outlines are held against one another, and stops where that is too much.

    ``pairs`` are the bodies of those to be looked at. The count is the same each time.
    """

    def __init__(self, pairs: Sequence[tuple[int, int]]) -> None:
        self._pairs, self._spent = pairs, 0

    def spend(self, count: int) -> None:
        """Count so many looks more; CrowdedError above the most."""
        self._spent += count
        if self._spent > MOST_LOOKS:
            raise CrowdedError(self._pairs)


class Hidden(ByIdentity, frozen=True):
    """The ``regions`` (m,) of a ``body`` that ``by``, all of them standing, hide in ``ways`` (m,).

    ``ways`` are places among the directions.
    """

    body: int
    by: tuple[int, ...]
    ways: DirectionIndices
    regions: Polygons


class Close(ByIdentity, frozen=True):
    """The ``regions`` (m,) in ``ways`` (m,) where the bodies ``one`` and ``other`` are together.

    ``whole`` (m,): where that is all that their outlines have in common.
    """

    one: int
    other: int
    ways: DirectionIndices
    regions: Polygons
    whole: NDArray[np.bool_]

    def of(self, k: int) -> int:
        """Return the other body of the two."""
        return self.other if k == self.one else self.one


def hidden(
    bodies: Sequence[Body], outlines: Polygons, coefficient: Array, azimuths: Array
) -> tuple[Hidden, ...]:
    """Return what of each outline (bodies, D) is hidden, and by what.

    ``coefficient`` (bodies, D) ranks the bodies: what is together counts as the greater. Bodies of
    which both are close to a third on one line are together there. The wind comes from the
    ``azimuths`` (D,) in rad. Wheels hide nothing: seen from
    the side they take less than what stands behind them. CrowdedError above ``MOST_LOOKS``.
    """
    together = _Together(bodies, outlines, azimuths).all()
    found = [one for close in together for one in _lesser(close, close.regions, coefficient)]
    touching: list[list[Close]] = [[] for _ in bodies]
    whole = np.zeros((len(bodies), len(bodies), len(azimuths)), dtype=bool)
    for close in together:
        for k in (close.one, close.other):
            touching[k].append(close)
            whole[k, close.of(k), close.ways] = close.whole
    between = [
        _Between(middle, its, coefficient, whole)
        for middle, its in enumerate(touching)
        if len(its) > 1
    ]
    looks = _Looks([(each.middle, each.middle) for each in between for _ in each.pairs])
    looks.spend(sum(len(ways) for each in between for *_, ways in each.pairs))
    for each in between:
        found += each.hidden()
    return tuple(found)


def visible(outlines: Polygons, hiding: Sequence[Hidden], some: NDArray[np.bool_]) -> Polygons:
    """Return the outlines (bodies, D) less what is hidden where only ``some`` (bodies,) stand."""
    result = outlines.copy()
    for one in hiding:
        if some[one.body] and all(some[j] for j in one.by):
            rest = plane.difference(result[one.body, one.ways], one.regions)
            result[one.body, one.ways] = rest
    return result


def overlap(bounds: Array, others: Array) -> NDArray[np.bool_]:
    """Return where boxes (…, 4) of least and greatest coordinates share space; they broadcast."""
    low = np.maximum(bounds[..., :2], others[..., :2])
    high = np.minimum(bounds[..., 2:], others[..., 2:])
    return np.asarray((high - low > FLUSH).all(axis=-1))


class _Together:
    """Finds where pairs of bodies are together on the lines of the wind."""

    def __init__(self, bodies: Sequence[Body], outlines: Polygons, azimuths: Array) -> None:
        self._outlines, self._bodies = outlines, bodies
        self._wind, self._across = downwind_axes(azimuths), lateral_axes(azimuths)
        self._boxes = plane.bounds(outlines)
        for i, body in enumerate(bodies):
            if body.shape.wheel is not None:
                self._boxes[i] = np.nan
        level = np.column_stack([self._wind, np.zeros(len(azimuths))])
        self._near = np.array([-reach(body, -level) for body in bodies])
        self._far = np.array([reach(body, level) for body in bodies])
        look = faces_look(bodies)
        self._begins = np.array([-reach(body, -look) for body in bodies])
        self._ends = np.array([reach(body, look) for body in bodies])
        self._sides = self._boxes[..., 2:] - self._boxes[..., :2]
        self._least = self._sides.min(axis=-1)
        self._known: NDArray[np.bool_] = np.zeros(self._least.shape, dtype=bool)
        self._depths: dict[int, Depths] = {}

    def all(self) -> list[Close]:
        """Return every pair, the first named first."""
        near: list[tuple[int, int, DirectionIndices]] = []
        for i in range(len(self._bodies) - 1):
            rest = slice(i + 1, None)
            ahead = self._near[rest] - self._far[i] - CLOSE * self._least[i]
            behind = self._near[i] - self._far[rest] - CLOSE * self._least[rest]
            close = overlap(self._boxes[i], self._boxes[rest])
            close &= np.maximum(ahead, behind) <= FLUSH
            # no line between two bodies is shorter than the room between two planes that part them
            room = np.maximum(
                (self._begins[rest] - self._ends[i]).max(axis=1),
                (self._begins[i] - self._ends[rest]).max(axis=1),
            )
            most = CLOSE * np.fmax(self._least[rest], self._least[i])
            close &= room[:, None] <= most + FLUSH
            some = np.flatnonzero(close.any(axis=1)).tolist()
            near += [(i, i + 1 + j, np.flatnonzero(close[j])) for j in some]
        looks = _Looks([(i, j) for i, j, _ in near])
        looks.spend(sum(len(ways) for *_, ways in near))
        pairs = (self._pair(*each, looks) for each in near)
        return [pair for pair in pairs if pair is not None]

    def _pair(self, i: int, j: int, ways: DirectionIndices, looks: _Looks) -> Close | None:
        shared = plane.intersection(self._outlines[i, ways], self._outlines[j, ways])
        some = plane.area(shared) > LEAST_AREA
        ways, shared = ways[some], shared[some]
        if not len(ways):
            return None
        low, high = np.split(plane.bounds(shared), 2, axis=1)
        boxes = np.stack([low, [1, 0] * high + [0, 1] * low, high, [1, 0] * low + [0, 1] * high], 1)
        least = self._gap(i, ways), self._gap(j, ways)
        two = self._of(i), self._of(j)
        parts = without_clear_gap(boxes, ways, two, least, looks.spend)
        whole = np.ones(len(ways), dtype=bool)
        for n, part in enumerate(parts):
            whole[n] = np.array_equal(part, boxes[n])
            if len(part) < 3:
                shared[n] = plane.NOTHING
            elif not whole[n]:
                shared[n] = plane.hull(part).intersection(shared[n])
        some = plane.area(shared) > LEAST_AREA
        return Close(i, j, ways[some], shared[some], whole[some]) if some.any() else None

    def _gap(self, i: int, ways: DirectionIndices) -> Array:
        """Return the gaps (m,) in m that a body closes, by its lesser width as the wind sees it."""
        new = ways[~self._known[i, ways]]
        if len(new):
            self._known[i, new] = True
            slanted = plane.area(self._outlines[i, new]) < (1.0 - FLUSH) * self._sides[i, new].prod(
                -1
            )
            new = new[slanted]
        if len(new):
            self._least[i, new] = least_widths(self._outlines[i, new])
        return CLOSE * self._least[i, ways]

    def _of(self, i: int) -> Depths:
        if i not in self._depths:
            self._depths[i] = depths(self._bodies[i], self._wind, self._across)
        return self._depths[i]


def _lesser(close: Close, regions: Polygons, coefficient: Array) -> Iterator[Hidden]:
    """Yield what of each of two bodies the other hides, where it takes less."""
    first = _outranks(coefficient, close.one, close.other, close.ways)
    for body, by, where in ((close.other, close.one, first), (close.one, close.other, ~first)):
        if where.any():
            yield Hidden(body, (by,), close.ways[where], regions[where])


def _outranks(
    coefficient: Array, one: int, other: int, ways: DirectionIndices
) -> NDArray[np.bool_]:
    """Return where an overlap belongs to the first of two: the greater, or the one named first."""
    a, b = coefficient[one, ways], coefficient[other, ways]
    alike = np.abs(a - b) <= ALIKE * b
    return np.asarray(np.where(alike, one < other, a > b), dtype=bool)


class _Between:
    """Finds what is hidden through a body between two that itself takes less than both.

    ``pairs`` are the two and where their boxes overlap. Where two are together with all that they
    have in common, as ``whole`` (bodies, bodies, D) says, the one hides that of the other by
    itself.
    """

    def __init__(
        self, middle: int, touching: Sequence[Close], coefficient: Array, whole: NDArray[np.bool_]
    ) -> None:
        self.middle, self._coefficient = middle, coefficient
        self._others = np.array([close.of(middle) for close in touching])
        shape = len(touching), whole.shape[2]
        boxes = np.full((*shape, 4), np.nan)
        self._regions = np.full(shape, plane.NOTHING, dtype=object)
        for n, close in enumerate(touching):
            both = _outranks(coefficient, close.of(middle), middle, close.ways)
            boxes[n, close.ways[both]] = plane.bounds(close.regions[both])
            self._regions[n, close.ways[both]] = close.regions[both]
        self.pairs: list[tuple[int, int, DirectionIndices]] = []
        for n in range(len(touching) - 1):
            shared = ~whole[self._others[n], self._others[n + 1 :]]
            shared &= overlap(boxes[n], boxes[n + 1 :])
            for m in np.flatnonzero(shared.any(axis=1)).tolist():
                self.pairs.append((n, n + 1 + m, np.flatnonzero(shared[m])))

    def hidden(self) -> Iterator[Hidden]:
        """Yield what of each of the two the other hides through the one between."""
        for n, m, at in self.pairs:
            common = plane.intersection(self._regions[n, at], self._regions[m, at])
            some = plane.area(common) > LEAST_AREA
            one, other = int(self._others[n]), int(self._others[m])
            pair = Close(one, other, at[some], common[some], some[some])
            for each in _lesser(pair, pair.regions, self._coefficient):
                yield Hidden(each.body, (*each.by, self.middle), each.ways, each.regions)
