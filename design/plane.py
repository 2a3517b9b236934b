"""The geometry kernel (shapely) with the types of arrays of polygons that are used here."""

from collections.abc import Sequence
from functools import partial
from typing import Any, cast

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Point, Polygon
from shapely.geometry.base import BaseGeometry

from ..units.arrays import Array, Mask

Polygons = NDArray[np.object_]

_kernel: Any = shapely
NOTHING = Polygon()

GRID = 1.0e-9
"""Grid in m on which an overlay is done again that the kernel's floating one cannot finish."""


def area(polygons: Polygons) -> Array:
    """Return the areas in m2 of an array of polygons, of the same shape."""
    return cast(Array, _kernel.area(polygons))


def centroids(polygons: Polygons) -> Array:
    """Return the centroids (…, 2) in m; 0 where a polygon is empty."""
    result = np.zeros((*np.shape(polygons), 2))
    filled = ~np.asarray(_kernel.is_empty(polygons), dtype=bool)
    centre = _kernel.centroid(polygons[filled])
    result[filled] = np.stack([_kernel.get_x(centre), _kernel.get_y(centre)], axis=-1)
    return result


def middle(region: BaseGeometry) -> Array:
    """Return the centroid (2,) of an area, a line or a point, in m."""
    return _coordinates(_kernel.centroid(region))[0]


def bounds(polygons: Polygons) -> Array:
    """Return least x, least y, greatest x, greatest y (…, 4) in m; NaN where empty."""
    return cast(Array, _kernel.bounds(polygons))


def bounds_of(region: BaseGeometry) -> Array:
    """Return least x, least y, greatest x, greatest y (4,) of one region in m."""
    return cast(Array, _kernel.bounds(region))


def area_above(region: BaseGeometry, height: float) -> float:
    """Return the area in m2 of an upright region (across, up) above a height in m."""
    low_x, low_y, high_x, high_y = region.bounds
    if height <= low_y:
        return region.area
    return region.intersection(shapely.box(low_x, height, high_x, high_y)).area


def intersection(first: Polygons, second: Polygons | BaseGeometry) -> Polygons:
    """Return what is common, pair by pair."""
    return _overlay(_kernel.intersection, first, second)


def difference(first: Polygons, second: Polygons) -> Polygons:
    """Return what of the first is not in the second, pair by pair."""
    return _overlay(_kernel.difference, first, second)


def union(first: Polygons, second: Polygons) -> Polygons:
    """Return both together, pair by pair."""
    return _overlay(_kernel.union, first, second)


def union_over(polygons: Polygons) -> Polygons:
    """Return the unions (D,) over the first axis of polygons (N, D)."""
    return _overlay(partial(_kernel.union_all, axis=0), polygons)


def union_of(regions: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return all regions as one."""
    return cast(BaseGeometry, _overlay(_kernel.union_all, list(regions)))


def upright_boxes(low_x: Array, low_y: float, high_x: Array, high_y: float) -> Polygons:
    """Return the upright rectangles (D,) between level bounds (D,) and heights, in m."""
    return cast(Polygons, _kernel.box(low_x, low_y, high_x, high_y))


def box(low_x: float, low_y: float, high_x: float, high_y: float) -> BaseGeometry:
    """Return an upright rectangle, in m."""
    return cast(BaseGeometry, _kernel.box(low_x, low_y, high_x, high_y))


def disc_region(centre: Array, radius: float) -> BaseGeometry:
    """Return a round region about a point (2,), in m, as a polygon of 32 corners."""
    return cast(BaseGeometry, _kernel.buffer(_kernel.points(centre), radius))


def pieces(region: BaseGeometry) -> list[Polygon]:
    """Return the separate polygons of a region; what has no area is left out."""
    return [part for part in _kernel.get_parts(region).tolist() if part.area > 0.0]


def narrowest_box(region: BaseGeometry) -> Array:
    """Return the corners (4, 2) in m of the rectangle of least area round a region."""
    return _coordinates(_kernel.oriented_envelope(region))[:4]


def diameter(region: BaseGeometry) -> float:
    """Return how far in m the farthest two points of a region lie apart; 0 of none."""
    corners = _coordinates(_kernel.convex_hull(region))
    apart = corners[:, None] - corners
    return float(np.hypot(apart[..., 0], apart[..., 1]).max(initial=0.0))


def intersects(one: BaseGeometry, other: BaseGeometry, least: float) -> bool:
    """Return whether two regions share more than ``least`` m2."""
    if not _kernel.intersects(one, other):
        return False
    return bool(_overlay(_kernel.intersection, one, other).area > least)


def touch(region: BaseGeometry, others: Polygons) -> Mask:
    """Return which of others (n,) share a point with a region, sooner than what they share."""
    _kernel.prepare(region)
    return cast(Mask, _kernel.intersects(region, others))


def is_ring(piece: BaseGeometry) -> bool:
    """Return whether a polygon has a hole."""
    return int(_kernel.get_num_interior_rings(piece)) > 0


def without_holes(piece: BaseGeometry) -> BaseGeometry:
    """Return a polygon without its holes."""
    return Polygon(_kernel.get_exterior_ring(piece))


def moved_in(region: BaseGeometry, by: float) -> BaseGeometry:
    """Return a region with its edges moved in by ``by`` m, corners kept sharp."""
    return cast(BaseGeometry, _kernel.buffer(region, -by, join_style="mitre", mitre_limit=10.0))


def snapped(region: BaseGeometry) -> BaseGeometry:
    """Return a region with its corners on a grid and in a set order, as on any other machine."""
    return _kernel.normalize(_kernel.transform(region, _on_grid))


def _on_grid(corners: Array) -> Array:
    return np.round(corners / GRID) * GRID


def simpler(region: BaseGeometry) -> BaseGeometry:
    """Return a region without corners that lie on straight edges, to a hundredth of a mm."""
    return cast(BaseGeometry, _kernel.simplify(region, 1.0e-5))


def inside(region: BaseGeometry) -> Array:
    """Return a point (2,) in m that lies within a region."""
    return _coordinates(_kernel.point_on_surface(region))[0]


def contains_points(region: BaseGeometry, points: Array) -> NDArray[np.bool_]:
    """Return whether points (n, 2) in m lie within a region or on its edge."""
    return np.asarray(_kernel.intersects(region, _kernel.points(points)), dtype=bool)


def kept(where: NDArray[np.bool_], polygons: Polygons) -> Polygons:
    """Return the polygons where the mask holds, and nothing elsewhere."""
    result = np.full(np.shape(where), NOTHING, dtype=object)
    result[where] = np.broadcast_to(polygons, where.shape)[where]
    return result


def hulls(points: Array) -> Polygons:
    """Return the convex hulls (D,) of points (D, k, 2) in m."""
    # a closed line has its points' hull and is made at once, where points are made one by one
    lines = _kernel.linestrings(np.concatenate([points, points[:, :1]], axis=1))
    return cast(Polygons, _kernel.convex_hull(lines))


def hulls_of(regions: Polygons) -> Polygons:
    """Return the convex hulls of regions."""
    return cast(Polygons, _kernel.convex_hull(regions))


def polygons(corners: Array) -> Polygons:
    """Return the polygons (D,) of corners (D, k, 2) in m."""
    return cast(Polygons, _kernel.polygons(corners))


def beyond(way: Array, start: Array, region: BaseGeometry) -> Polygons:
    """Return what lies farther than ``start`` (D,) along unit vectors (D, 2), as far as a region.

    Upright to each way it reaches beyond the region on every side.
    """
    across = np.column_stack([-way[:, 1], way[:, 0]])
    size = 3.0 * float(np.hypot(*np.abs(bounds_of(region)).reshape(2, 2).max(axis=0))) + 1.0
    near = way * start[:, None]
    corners = [near - across * size, near + across * size]
    corners += [corners[1] + way * 2.0 * size, corners[0] + way * 2.0 * size]
    return polygons(np.stack(corners, axis=1))


def line(points: Array) -> BaseGeometry:
    """Return the line through points (k, 2) in m."""
    return cast(BaseGeometry, _kernel.linestrings(points))


def widths(region: BaseGeometry, heights: Array, low: float, high: float) -> Array:
    """Return how much (n,) in m of the level lines at heights (n,) lies within a region.

    The lines run from ``low`` to ``high``.
    """
    ends = np.stack([np.full_like(heights, low), np.full_like(heights, high)], axis=1)
    lines = _kernel.linestrings(np.stack([ends, np.stack([heights, heights], axis=1)], axis=-1))
    return cast(Array, _kernel.length(_kernel.intersection(lines, region)))


def cut_lengths(region: BaseGeometry, starts: Array, ends: Array) -> Array:
    """Return how much (n,) in m of the lines between points (n, 2) lies within a region."""
    lines = _kernel.linestrings(np.stack([starts, ends], axis=1))
    return cast(Array, _kernel.length(_kernel.intersection(lines, region)))


def hull(points: Array) -> BaseGeometry:
    """Return the convex hull of points (k, 2) in m."""
    return cast(BaseGeometry, hulls(np.asarray(points)[None])[0])


def distance(point: Array, region: BaseGeometry) -> float:
    """Return how far in m a point (2,) lies outside a region, 0 within it."""
    return float(Point(point).distance(region))


def nearest_point(point: Array, region: BaseGeometry) -> Array:
    """Return the point (2,) of a region that is nearest to a point (2,); itself within it."""
    return _coordinates(_kernel.shortest_line(_kernel.points(point), region))[-1]


def farthest(region: BaseGeometry, start: Array, way: Array) -> float:
    """Return how far in m a region reaches from a point (2,) along a unit vector (2,)."""
    low_x, low_y, high_x, high_y = region.bounds
    ray = line(np.array([start, start + (high_x - low_x + high_y - low_y) * way]))
    met = _coordinates(region.intersection(ray))
    return float(((met - start) @ way).max(initial=0.0))


def clear_along(points: Array, way: Array, region: BaseGeometry) -> Array:
    """Return how far (n,) in m points (n, 2) in a region lie from its edge along a unit vector."""
    low_x, low_y, high_x, high_y = region.bounds
    ends = points + 2.0 * (high_x - low_x + high_y - low_y) * way
    rays = _kernel.linestrings(np.stack([points, ends], axis=1))
    met = _kernel.intersection(rays, region.boundary)
    return np.nan_to_num(cast(Array, _kernel.distance(_kernel.points(points), met)), nan=0.0)


def distances(points: Array, region: BaseGeometry) -> Array:
    """Return how far (n,) in m points (n, 2) lie outside a region, 0 within it."""
    return cast(Array, _kernel.distance(_kernel.points(points), region))


def inset(ring: Array, distance: float) -> Array:
    """Return the corners (k, 2) of a convex outline (k, 2) with each edge ``distance`` m inside.

    Empty (0, 2) where nothing is left. Counter-clockwise, from the corner that was first.
    """
    if distance <= 0.0:
        return ring
    inner = Polygon(ring).buffer(-distance, join_style="mitre")
    if inner.is_empty:
        return np.empty((0, 2))
    corners = ring_of(inner)
    first = int(np.linalg.norm(corners - ring[0], axis=1).argmin())
    return np.roll(corners, -first, axis=0)


def corners_of(regions: Polygons) -> tuple[Array, NDArray[np.int_]]:
    """Return every corner (k, 2) of regions (n,) in m, and of which of them it is one (k,)."""
    found, owner = _kernel.get_coordinates(regions, return_index=True)
    return np.asarray(found, dtype=float), np.asarray(owner, dtype=int)


def ring_of(region: BaseGeometry) -> Array:
    """Return the corners (k, 2) of a polygon's outline, counter-clockwise, each once."""
    oriented = shapely.geometry.polygon.orient(cast(Polygon, region))
    return np.asarray(_kernel.get_coordinates(oriented.exterior), dtype=float)[:-1]


def polygon(corners: Array, holes: Sequence[Array] = ()) -> Polygon:
    """Return the polygon of corners (k, 2) in m, less its holes."""
    return Polygon(corners, list(holes))


def triangles(region: BaseGeometry) -> Array:
    """Return triangles (T, 3, 2) in m that fill a region."""
    parts = _kernel.get_parts(_kernel.constrained_delaunay_triangles(region))
    return np.array([_kernel.get_coordinates(part)[:3] for part in parts])


def outlines_of(region: BaseGeometry) -> list[Array]:
    """Return the closed outlines (k, 2) of a region, outer ones one way and holes the other."""
    rings: list[Array] = []
    for part in cast(list[Polygon], _kernel.get_parts(_kernel.normalize(region)).tolist()):
        oriented = shapely.geometry.polygon.orient(part)
        rings += [_coordinates(ring) for ring in (oriented.exterior, *oriented.interiors)]
    return rings


def rings_of(region: BaseGeometry) -> list[Array]:
    """Return the closed outlines (k, 2) of a region and of its holes, as they run."""
    rings = _kernel.get_rings(_kernel.get_parts(region)).tolist()
    return [_coordinates(ring) for ring in rings]


def strokes(lines: BaseGeometry) -> list[Array]:
    """Return the points (k, 2) of every line among what lines were cut to."""
    parts = cast("list[BaseGeometry]", _kernel.get_parts(lines).tolist())
    return [_coordinates(part) for part in parts if part.length > 0.0]


def coordinates(region: BaseGeometry) -> Array:
    """Return every corner (k, 2) of a region in m."""
    return _coordinates(region)


def _overlay(how: Any, *regions: Any) -> Any:
    """Return an overlay; where rounding left a region that crosses itself, of what it is mended to.

    On a grid of a nanometre the kernel's overlay of valid regions cannot fail.
    """
    try:
        return how(*regions)
    except shapely.errors.GEOSException:
        # what is mended may hold lines too, which buffering drops
        mended = (_kernel.buffer(_kernel.make_valid(one), 0.0) for one in regions)
        return how(*mended, grid_size=GRID)


def _coordinates(geometry: object) -> Array:
    return np.asarray(_kernel.get_coordinates(geometry), dtype=float)
