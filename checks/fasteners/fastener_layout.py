"""Where the fasteners of a joint stand on the face on which two parts meet."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array

_EDGE = 0.020
"""How far (m) from the edge of a broad face fasteners are set where nothing is said: judgement."""

_STRIP = 0.045
"""A face narrower than this (m) takes one row along its middle."""

_SQUARE = 0.98
_SIDE = 0.15
_ALIKE = 1.0e-3

_AMID = 1.0e-6
"""Edges are as near as each other that lie so far (m) from it alike."""


def evenly(area: BaseGeometry, count: int, up: Array) -> Array:
    """Return points (count, 2) in m evenly along the middle of a wall, or round inside the edge.

    Round it they begin at its corner that lies farthest along ``up`` (2,).
    """
    lines = [line for piece in plane.pieces(area) for line in _lines(piece, up)]
    lengths = np.array([_length(line) for line in lines])
    ends: Array = np.cumsum(lengths)
    found: list[Array] = []
    whole = float(lengths.sum())
    for place in [(k + 0.5) / count * whole for k in range(count)]:
        i = min(int(np.searchsorted(ends, place)), len(lines) - 1)
        found.append(_at(lines[i], place - float(ends[i] - lengths[i])))
    return np.array(found)


def where_nothing_is_said(area: BaseGeometry, count: int, up: Array) -> Array:
    """Return points (count, 2) as one would set them: in two rows on a solid rectangle, else even.

    One stands in the middle, two or three in a row along the longer side, of a square along ``up``
    (2,).
    """
    pieces = plane.pieces(area)
    corners = plane.narrowest_box(area)
    box = plane.polygon(corners)
    solid = len(pieces) == 1 and area.area > _SQUARE * box.area
    rows = count <= 3 or count % 2 == 0
    if solid and rows:
        return in_rows(area, count, up)
    if solid or count > 1:
        return evenly(area, count, up)
    return np.array([plane.inside(area)])


def in_rows(
    area: BaseGeometry,
    count: int,
    up: Array,
    length: float | None = None,
    width: float | None = None,
) -> Array:
    """Return points (count, 2) in two rows along the longer side; up to three in one row.

    On a square face along ``up`` (2,). ``length`` and ``width`` in m are those of the rectangle
    that they fill, along x and y; else it lies inside the face's edge.
    """
    centre, one, other = _halves(area, up)
    if length is not None and width is not None:
        one, other = np.array([length / 2.0, 0.0]), np.array([0.0, width / 2.0])
        if length < width:
            one, other = other, one
    else:
        one, other = (half * _inset(float(np.linalg.norm(half))) for half in (one, other))
    if count == 1:
        return centre[None]
    if count <= 3:
        along = np.linspace(-1.0, 1.0, count)
        return centre + along[:, None] * one
    along = np.linspace(-1.0, 1.0, count // 2)
    return np.vstack([centre + along[:, None] * one + way * other for way in (-1.0, 1.0)])


def ways_to_fill(area: BaseGeometry, count: int, up: Array) -> list[Array]:
    """Return ways (each (count, 2)) to set fasteners to the very edges of one region.

    In two rows where the number is even, and in one, along its longer side; of a square along
    ``up`` (2,).
    """
    if len(plane.pieces(area)) != 1:
        return []
    centre, one, other = _halves(area, up)
    if count == 1:
        return [centre[None]]
    along = np.linspace(-1.0, 1.0, count)[:, None]
    ways = [centre + along * one]
    if count > 3 and count % 2 == 0:
        along = np.linspace(-1.0, 1.0, count // 2)[:, None]
        ways.append(np.vstack([centre + along * one + way * other for way in (-1.0, 1.0)]))
    return ways


def _halves(area: BaseGeometry, up: Array) -> tuple[Array, Array, Array]:
    """Return the middle (2,) of the narrowest rectangle round a region, and half its sides (2,).

    The longer first; of alike ones the one that runs more nearly along ``up``.
    """
    corners = plane.narrowest_box(area)
    one, other = (corners[1] - corners[0]) / 2.0, (corners[2] - corners[1]) / 2.0
    first, second = float(np.linalg.norm(one)), float(np.linalg.norm(other))
    alike = abs(first - second) <= _ALIKE * max(first, second)
    turns = abs(float(other @ up)) > abs(float(one @ up)) if alike else second > first
    centre = corners.mean(axis=0)
    return (centre, other, one) if turns else (centre, one, other)


def on_a_ring(area: BaseGeometry, count: int, across: float, start: float) -> Array:
    """Return points (count, 2) round the middle of the face, on a circle ``across`` m wide."""
    low_x, low_y, high_x, high_y = plane.bounds_of(area)
    centre = 0.5 * np.array([low_x + high_x, low_y + high_y])
    angles = start + 2.0 * np.pi * np.arange(count) / count
    return centre + across / 2.0 * np.column_stack([np.cos(angles), np.sin(angles)])


def on_each_side(area: BaseGeometry, count: int) -> Array:
    """Return points (count, 2), as many on each straight side. ValueError with the sides' number.

    A side is straight that is at least a seventh of the longest; a round face has none.
    """
    hull = plane.hull(plane.coordinates(area))
    inset = min(_inset_of(piece) for piece in plane.pieces(area))
    ring = plane.ring_of(plane.simpler(_shrunk(hull, inset)))
    sides = np.roll(ring, -1, axis=0) - ring
    lengths = np.linalg.norm(sides, axis=1)
    long = np.flatnonzero(lengths > _SIDE * lengths.max())
    if len(long) > 12 or count % len(long):
        raise ValueError(len(long))
    each = count // len(long)
    share = (np.arange(each) + 0.5) / each
    return np.vstack([ring[i] + share[:, None] * sides[i] for i in long])


def outward(area: BaseGeometry, points: Array) -> Array:
    """Return unit vectors (n, 2) square to the nearest edge of a face's outline, out of it.

    Of a strip, such as the edge of a sheet, to its long edges, however near its ends they stand.
    """
    hull = plane.hull(plane.coordinates(area))
    ring = plane.ring_of(plane.simpler(hull))
    along = np.roll(ring, -1, axis=0) - ring
    lengths = np.linalg.norm(along, axis=1)
    along /= lengths[:, None]
    normals = np.column_stack([along[:, 1], -along[:, 0]])
    depth = (normals * ring).sum(axis=1) - points @ normals.T
    box = plane.narrowest_box(hull)
    short = float(np.linalg.norm(box[1:3] - box[:2], axis=1).min())
    if short < _STRIP:
        depth[:, lengths <= (1.0 + _ALIKE) * short] = np.inf
    # amid two edges out to the right, whatever rounding says
    return normals[(depth - _AMID * (normals @ np.array([1.0, 0.5]))).argmin(axis=1)]


def least_spacing(points: Array) -> float | None:
    """Return the least distance in m between two of the points (n, 2); None of fewer than two."""
    if len(points) < 2:
        return None
    apart = np.linalg.norm(points[:, None] - points[None], axis=-1)
    return float(apart[~np.eye(len(points), dtype=bool)].min())


def _lines(piece: BaseGeometry, up: Array) -> list[Array]:
    """Return the lines (k, 2) along which fasteners are set on one piece; closed but of a strip.

    One, but where a piece with a narrow neck falls apart as its edges are moved in.
    """
    wall = _wall(piece)
    if not plane.is_ring(piece):
        corners = plane.narrowest_box(piece)
        sides = [corners[1] - corners[0], corners[2] - corners[1]]
        short, long = sorted(sides, key=lambda side: float(np.linalg.norm(side)))
        if np.linalg.norm(short) < _STRIP:
            centre = corners.mean(axis=0)
            return [np.array([centre - long / 2.0, centre + long / 2.0])]
    inset = wall / 2.0 if plane.is_ring(piece) else _inset_of(piece)
    shrunk = plane.simpler(_shrunk(plane.without_holes(piece), inset))
    return [_closed(plane.ring_of(part), up) for part in plane.pieces(shrunk)]


def _closed(ring: Array, up: Array) -> Array:
    """Return a closed line from the corner farthest along ``up``: of two, the one to the right."""
    ring = np.roll(ring, -int((ring @ (up + _ALIKE * np.array([up[1], -up[0]]))).argmax()), axis=0)
    return np.vstack([ring, ring[:1]])


def _wall(piece: BaseGeometry) -> float:
    """Return the thickness of a wall from its area and the length of its edges, in m."""
    return 2.0 * float(piece.area) / float(piece.length)


def _inset_of(piece: BaseGeometry) -> float:
    if plane.is_ring(piece):
        return _wall(piece) / 2.0
    corners = plane.narrowest_box(piece)
    least = min(
        float(np.linalg.norm(corners[1] - corners[0])),
        float(np.linalg.norm(corners[2] - corners[1])),
    )
    return min(_EDGE, least / 4.0)


def _inset(half: float) -> float:
    """Return what is left of half a width when fasteners keep off the edge."""
    return 1.0 - min(_EDGE, half / 2.0) / half if half > 0.0 else 1.0


def _shrunk(region: BaseGeometry, by: float) -> BaseGeometry:
    """Return a region moved in by ``by`` m; the region itself where nothing would be left."""
    smaller = plane.moved_in(region, by)
    return region if smaller.is_empty else smaller


def _length(line: Array) -> float:
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


def _at(line: Array, place: float) -> Array:
    steps = np.linalg.norm(np.diff(line, axis=0), axis=1)
    ends = np.cumsum(steps)
    i = min(int(np.searchsorted(ends, place)), len(steps) - 1)
    share = (place - (ends[i] - steps[i])) / steps[i]
    return line[i] + share * (line[i + 1] - line[i])
