"""The area on which a piece stands, cut by lines: caps, and points to integrate friction over."""

from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from .crossing import crossing

_EXACT = 1.0e-13
"""Depths in m that differ less are one."""
MANY_FEET = 60
_LEVEL = 1.0e-7
"""Edges whose ends differ less (m) along the normal lie across it and add no area."""


class Caps(ByIdentity, frozen=True):
    """Caps that lines across the normals (E, 2) cut off a contact area, from the lee side inward.

    ``reach`` (E,) is how far the area reaches along each normal, in m. ``depth``, ``area`` and
    ``moment`` (E, V) are exact at each corner's depth below that reach: area in m2 and its first
    moment about the lee extreme in m3. Between corners the chord's length is linear in depth, so
    area is quadratic and its moment cubic.
    """

    normals: Array
    reach: Array
    depth: Array
    area: Array
    moment: Array
    chord: Array
    growth: Array

    @property
    def total(self) -> float:
        """Return the whole contact area in m2."""
        return float(self.area[0, -1])

    def about(self, lines: NDArray[np.intp]) -> "Caps":
        """Return the caps for some of the normals (P,), any of which may come again."""
        grids = self.depth, self.area, self.moment, self.chord, self.growth
        return Caps(self.normals[lines], self.reach[lines], *(each[lines] for each in grids))

    def centroid_depth(self, area: Array) -> Array:
        """Return the depth (…, E) in m of the centroid of the cap of each ``area`` (…, E) in m2.

        An area beyond the whole takes the whole's centroid; area 0 gives 0.
        """
        wanted = np.minimum(np.maximum(area, 0.0), self.total)
        within = self._within(self._by_area, wanted)
        chord, growth = within.chord, within.growth
        rest = np.maximum(wanted - within.before, 0.0)
        # rest = chord x + growth/2 x2, in the form that is stable for growth near 0
        root = np.sqrt(np.maximum(chord * chord + 2.0 * growth * rest, 0.0))
        x = np.minimum(np.maximum(_ratio(2.0 * rest, chord + root), 0.0), within.span)
        return _ratio(within.moment(x), wanted)

    def area_about(self, depth: Array) -> Array:
        """Return the area (…, E) in m2 of the cap whose centroid lies at ``depth`` (…, E) in m.

        0 where the depth is negative (outside the lee edge); the whole area beyond its centroid.
        """
        within = self._within(self._by_centroid, depth)

        def beyond(x: Array) -> Array:
            return _ratio(within.moment(x), within.area(x)) - depth

        _, high = crossing(beyond, np.zeros_like(depth), within.span, _EXACT)
        return np.where(depth <= 0.0, 0.0, within.area(high))

    def _within(self, by: "_Rows", value: Array) -> "_Within":
        """Return the stretches of the area in which values (…, E) of what grows inward lie."""
        return _Within(*self._table[:, by.places(value)])

    @cached_property
    def _table(self) -> Array:
        """Return what `_Within` holds (6, E V) of the stretch from each corner to the next."""
        span = np.diff(self.depth, axis=1, append=self.depth[:, -1:])
        grids = self.area, self.moment, self.depth, self.chord, self.growth, span
        return np.stack([grid.ravel() for grid in grids])

    @cached_property
    def _by_area(self) -> "_Rows":
        return _Rows(self.area)

    @cached_property
    def _by_centroid(self) -> "_Rows":
        return _Rows(_ratio(self.moment, self.area))


class _Rows:
    """Rows (E, V) of which each grows from left to right, all laid one behind another."""

    def __init__(self, grid: Array) -> None:
        count = np.arange(len(grid))
        self._shift = (2.0 * float(np.abs(grid).max()) + 1.0) * count
        self._laid = (grid + self._shift[:, None]).ravel()
        self._first = grid.shape[1] * count
        self._last = self._first + grid.shape[1] - 2

    def places(self, value: Array) -> NDArray[np.intp]:
        """Return for each value (…, E) the place of the last entry of its row not above it.

        The entry before the last at most: a stretch begins there.
        """
        found = np.searchsorted(self._laid, value + self._shift, side="right") - 1
        return np.minimum(np.maximum(found, self._first), self._last)


class _Within(ByValue, frozen=True):
    """A stretch ``span`` long between two corners, over which the chord grows evenly; each (…, E).

    ``before`` in m2 and ``before_moment`` in m3 lie outside it, all else in m.
    """

    before: Array
    before_moment: Array
    start: Array
    chord: Array
    growth: Array
    span: Array

    def area(self, x: Array) -> Array:
        """Return the area in m2 up to ``x`` m beyond the corner."""
        return self.before + self.chord * x + self.growth * x**2 / 2.0

    def moment(self, x: Array) -> Array:
        """Return the first moment in m3 up to there: that of (s + x)(chord + growth x)."""
        s, chord, growth = self.start, self.chord, self.growth
        square = x * x
        strip = s * chord * x + (chord + s * growth) * square / 2.0 + growth * square * x / 3.0
        return self.before_moment + strip


def caps(contact: BaseGeometry, normals: Array) -> Caps:
    """Return the caps of a contact area (polygons in plan, m) for outward normals (E, 2).

    With s measured inward along the normal and t across it, Green's theorem gives A = |∮ t ds| and
    S = |∮ s t ds|: each edge adds to the chord at depth s its own t(s) while the line crosses it.
    """
    start, end = _segments(contact)
    across = np.column_stack([-normals[:, 1], normals[:, 0]])
    reach = (normals @ start.T).max(axis=1)
    s0, s1 = (reach[:, None] - normals @ points.T for points in (start, end))
    t0, t1 = (across @ points.T for points in (start, end))
    run = s1 - s0
    counted = np.abs(run) > _LEVEL
    slope = np.where(counted, (t1 - t0) / np.where(counted, run, 1.0), 0.0)
    sign = np.where(counted, np.sign(run), 0.0)
    level = t0 - slope * s0
    at = np.concatenate([np.minimum(s0, s1), np.maximum(s0, s1)], axis=1)
    order = np.argsort(at, axis=1, kind="stable")
    depth = np.take_along_axis(at, order, axis=1)
    constant, growth = (
        np.cumsum(np.take_along_axis(np.concatenate([c, -c], axis=1), order, axis=1), axis=1)
        for c in (sign * level, sign * slope)
    )
    chord = constant + growth * depth
    span = np.diff(depth, axis=1)
    strip = chord[:, :-1] * span + growth[:, :-1] * span**2 / 2.0
    first = depth[:, :-1] * strip + chord[:, :-1] * span**2 / 2.0 + growth[:, :-1] * span**3 / 3.0
    nothing = np.zeros((len(normals), 1))
    area, moment = (
        np.concatenate([nothing, np.cumsum(part, axis=1)], axis=1) for part in (strip, first)
    )
    way = np.sign(area[:, -1:])
    return Caps(normals, reach, depth, way * area, way * moment, way * chord, way * growth)


class Quadrature(ByIdentity, frozen=True):
    """Points (P, 2) in m and their share of the area (P,) in m2, to integrate over contact."""

    points: Array
    weights: Array


def quadrature(areas: list[BaseGeometry], finest: float = 0.05) -> list[Quadrature]:
    """Return points to integrate over each area: its triangles, halved until small, 3 points each.

    ``finest`` is the longest side of a triangle that is kept, as a fraction of the whole extent.
    Three points at the middles of the sides integrate quadratics exactly. Many feet count as points
    at their middles: each is then small beside their spread.
    """
    if len(areas) > MANY_FEET:
        middles = [np.array([[a.centroid.x, a.centroid.y]]) for a in areas]
        return [Quadrature(m, np.array([a.area])) for m, a in zip(middles, areas, strict=True)]
    extent = plane.bounds_of(plane.union_of(areas)).reshape(2, 2)
    longest = finest * float(np.hypot(*(extent[1] - extent[0])))
    return [_over_triangles(_small_triangles(area, longest)) for area in areas]


def _small_triangles(area: BaseGeometry, longest: float) -> Array:
    """Return triangles (T, 3, 2) that fill an area, no side longer than ``longest``."""
    triangles = plane.triangles(area)
    while True:
        sides = np.linalg.norm(np.roll(triangles, -1, axis=1) - triangles, axis=2)
        large = sides.max(axis=1) > longest
        if not large.any():
            return triangles
        cut, which = triangles[large], sides[large].argmax(axis=1)
        rows = np.arange(len(cut))
        a, b, c = cut[rows, which], cut[rows, (which + 1) % 3], cut[rows, (which + 2) % 3]
        m = 0.5 * (a + b)
        halves = [np.stack([a, m, c], axis=1), np.stack([m, b, c], axis=1)]
        triangles = np.concatenate([triangles[~large], *halves])


def _over_triangles(triangles: Array) -> Quadrature:
    a, b, c = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    ab, ac = b - a, c - a
    area = 0.5 * np.abs(ab[:, 0] * ac[:, 1] - ab[:, 1] * ac[:, 0])
    points = np.concatenate([0.5 * (a + b), 0.5 * (b + c), 0.5 * (c + a)])
    return Quadrature(points, np.tile(area / 3.0, 3))


def _segments(contact: BaseGeometry) -> tuple[Array, Array]:
    """Return starts and ends (K, 2) of the outlines."""
    rings = plane.outlines_of(contact)
    return np.vstack([ring[:-1] for ring in rings]), np.vstack([ring[1:] for ring in rings])


def _ratio(a: Array, b: Array) -> Array:
    """Return a / b, and 0 where b is 0."""
    none = b == 0.0
    return np.where(none, 0.0, a / np.where(none, 1.0, b))
