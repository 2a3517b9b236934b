"""The convex pieces of a body on the site: how far they reach, where they lie, how a plane cuts."""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from itertools import combinations, pairwise

import numpy as np
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.placing import Body
from ..design.shapes.edges import Edges, edges_of
from ..design.shapes.shape import Array, Disc, Hull, Shape, rim

EXACT = 1.0e-4
"""Lengths (m) that differ by less are one: what is drawn in one plane lies in it."""

_FACETS = 72
"""Flat faces that stand for a round side, as everywhere corners of a circle."""

_MANY = 24
"""Corners beyond which a piece without known faces is round: only its greatest reach lies."""

_NONE = np.empty((0, 3))


@dataclass(frozen=True, eq=False)
class Piece:
    """A convex piece on the site (m): corners (k, 3), circles (c), balls (b), and what bounds it.

    ``normals`` (p, 3) point out of its flat faces and the facets of its round sides; ``directions``
    (e, 3) are those of its edges, or of a round piece its axis. ``hull`` is what it is in its own
    axes, turned by ``rotation`` (3, 3) and moved to ``origin`` (3,).
    """

    points: Array
    centres: Array
    axes: Array
    radii: Array
    balls: Array
    ball_radii: Array
    normals: Array
    directions: Array
    hull: Hull
    rotation: Array
    origin: Array

    @cached_property
    def edges(self) -> Edges:
        """Return its edges on the site; of a ball they are many, and seldom asked for."""
        own = edges_of(self.hull)
        turned = self.rotation.T
        return Edges(own.starts @ turned + self.origin, own.ends @ turned + self.origin)

    def reach(self, normals: Array) -> Array:
        """Return how far (n,) in m it reaches along unit vectors (n, 3)."""
        found = np.full(len(normals), -np.inf)
        if len(self.points):
            found = (normals @ self.points.T).max(axis=1)
        if len(self.radii):
            found = np.maximum(found, self._of_discs(normals).max(axis=1))
        if len(self.ball_radii):
            found = np.maximum(found, (normals @ self.balls.T + self.ball_radii).max(axis=1))
        return found

    def lying(self, normal: Array, fit: float) -> Array:
        """Return the points (k, 3) farthest along a unit vector (3,): a face's, an edge's, one.

        Corners within ``fit`` m of the farthest lie with it; of a round side one line does.
        """
        reach = float(self.reach(normal[None])[0])
        found = [_NONE]
        if len(self.points):
            near = fit if len(self.points) <= _MANY else EXACT
            found.append(self.points[self.points @ normal >= reach - near])
        if len(self.radii):
            reaches = self._of_discs(normal[None])[0]
            for i in np.flatnonzero(reaches >= reach - EXACT):
                found.append(self._on_disc(int(i), normal, fit))
        for centre, radius in zip(self.balls, self.ball_radii, strict=True):
            if centre @ normal + radius >= reach - EXACT:
                found.append((centre + radius * normal)[None])
        return np.vstack(found)

    def cut(self, normal: Array, at: float) -> Array:
        """Return points (k, 3) round what the plane ``normal . x = at`` cuts of it; none: empty."""
        one, other = self.edges.starts @ normal - at, self.edges.ends @ normal - at
        across = (np.minimum(one, other) <= 0.0) & (np.maximum(one, other) >= 0.0)
        if not across.any():
            return _NONE
        start, end = self.edges.starts[across], self.edges.ends[across]
        rise = other[across] - one[across]
        part = np.where(rise != 0.0, -one[across] / np.where(rise != 0.0, rise, 1.0), 0.0)
        return start + part[:, None] * (end - start)

    @property
    def is_round(self) -> bool:
        """Return whether its sides are round."""
        return bool(len(self.radii) or len(self.ball_radii))

    @cached_property
    def middle(self) -> Array:
        """Return a point (3,) within it."""
        return np.vstack([self.points, self.centres, self.balls]).mean(axis=0)

    def _of_discs(self, normals: Array) -> Array:
        """Return how far (n, c) each circle reaches along unit vectors (n, 3)."""
        across = np.sqrt(np.maximum(1.0 - (normals @ self.axes.T) ** 2, 0.0))
        return normals @ self.centres.T + self.radii * across

    def _on_disc(self, i: int, normal: Array, fit: float) -> Array:
        axis, radius, centre = self.axes[i], float(self.radii[i]), self.centres[i]
        across = normal - (normal @ axis) * axis
        length = float(np.linalg.norm(across))
        if 2.0 * radius * length <= fit:
            x, y, z = centre.tolist()
            a, b, c = axis.tolist()
            return rim(Disc((x, y, z), radius, (a, b, c)))
        return (centre + radius / length * across)[None]


@dataclass(frozen=True, eq=False)
class Surfaces:
    """A body's convex pieces and its cavities on the site, and the upright box round it (2, 3)."""

    hulls: tuple[Piece, ...]
    cavities: tuple[Piece, ...]
    box: Array

    def moved(self, by: Array) -> "Surfaces":
        """Return the same body moved by (3,) m."""
        return Surfaces(
            tuple(_moved(one, by) for one in self.hulls),
            tuple(_moved(one, by) for one in self.cavities),
            self.box + by,
        )


def surfaces_of(body: Body) -> Surfaces:
    """Return the pieces of a body where it stands."""
    hulls, cavities = _own(body.shape)
    return Surfaces(
        tuple(_placed(one, body) for one in hulls),
        tuple(_placed(one, body) for one in cavities),
        np.array(body.extent),
    )


def outline(points: Array, right: Array, up: Array) -> BaseGeometry:
    """Return the hull of points (k, 3) in a plane: an area, a segment or a point; or nothing."""
    if not len(points):
        return plane.NOTHING
    return plane.hull(points @ np.column_stack([right, up]))


@lru_cache(maxsize=512)
def _own(shape: Shape) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """Return the pieces of a shape in its own axes: copies share them."""
    return (
        tuple(_piece(hull) for hull in shape.hulls()),
        tuple(_piece(hull) for hull in shape.cavities()),
    )


def _piece(hull: Hull) -> Piece:
    normals, directions = _faces(hull)
    return Piece(
        np.asarray(hull.points, dtype=float).reshape(-1, 3),
        np.array([disc.centre for disc in hull.discs]).reshape(-1, 3),
        np.array([disc.axis for disc in hull.discs]).reshape(-1, 3),
        np.array([disc.radius for disc in hull.discs]),
        np.array([ball.centre for ball in hull.spheres]).reshape(-1, 3),
        np.array([ball.radius for ball in hull.spheres]),
        normals,
        directions,
        hull,
        np.eye(3),
        np.zeros(3),
    )


def _placed(piece: Piece, body: Body) -> Piece:
    turned = body.rotation.T
    return Piece(
        body.place(piece.points),
        body.place(piece.centres),
        piece.axes @ turned,
        piece.radii,
        body.place(piece.balls),
        piece.ball_radii,
        piece.normals @ turned,
        piece.directions @ turned,
        piece.hull,
        body.rotation,
        body.origin,
    )


def _moved(piece: Piece, by: Array) -> Piece:
    return replace(
        piece,
        points=piece.points + by,
        centres=piece.centres + by,
        balls=piece.balls + by,
        origin=piece.origin + by,
    )


def _faces(hull: Hull) -> tuple[Array, Array]:
    """Return the outward normals (p, 3) of a hull's faces, and directions (e, 3) of its edges."""
    if hull.spheres:
        return _NONE, _NONE
    if hull.discs:
        return _round_faces(hull)
    points = hull.points
    half = len(points) // 2
    if hull.ends or _in_two_levels(points):
        return _between(points[:half], points[half:])
    if len(points) > 3 and np.ptp(points[:-1, 2]) <= 0.0:
        apex = np.broadcast_to(points[-1], (len(points) - 1, 3))
        return _between(points[:-1], apex)
    return _of_any(points)


def _in_two_levels(points: Array) -> bool:
    half = len(points) // 2
    if len(points) % 2 or half < 3:
        return False
    return float(np.ptp(points[:half, 2])) == 0.0 == float(np.ptp(points[half:, 2]))


def _between(one: Array, other: Array) -> tuple[Array, Array]:
    """Return faces and edges between two convex outlines (k, 3), corner by corner, and of both."""
    next_one, next_other = np.roll(one, -1, axis=0), np.roll(other, -1, axis=0)
    sides = np.cross(next_other - one, other - next_one)
    ends = [np.cross(ring - ring[0], np.roll(ring, -1, axis=0) - ring[0]) for ring in (one, other)]
    normals = np.vstack([ends[0].sum(axis=0), ends[1].sum(axis=0), sides])
    places = np.vstack([one.mean(axis=0), other.mean(axis=0), 0.5 * (one + next_other)])
    outward = _outward(normals, places, 0.5 * (one.mean(axis=0) + other.mean(axis=0)))
    return outward, _different(np.vstack([next_one - one, next_other - other, other - one]))


def _outward(normals: Array, places: Array, middle: Array) -> Array:
    """Return unit normals that point away from the middle; faces without area are left out."""
    sizes = np.linalg.norm(normals, axis=1)
    kept = sizes > 1.0e-12
    unit = normals[kept] / sizes[kept, None]
    inward = np.einsum("ij,ij->i", unit, places[kept] - middle) < 0.0
    return np.asarray(np.where(inward[:, None], -unit, unit), dtype=np.float64)


def _different(vectors: Array) -> Array:
    """Return the directions (e, 3) of vectors, each once, either way being one."""
    sizes = np.linalg.norm(vectors, axis=1)
    unit = vectors[sizes > 1.0e-9] / sizes[sizes > 1.0e-9, None]
    if not len(unit):
        return _NONE
    alike = np.abs(unit @ unit.T) > 1.0 - 1.0e-9
    return unit[~np.tril(alike, -1).any(axis=1)]


def _round_faces(hull: Hull) -> tuple[Array, Array]:
    """Return the end faces of circles on one axis, and the facets of the sides between them."""
    axis = np.asarray(hull.discs[0].axis)
    first = np.asarray(hull.discs[0].centre)
    rings = [(float((np.asarray(d.centre) - first) @ axis), d.radius) for d in hull.discs]
    rings += [(float((point - first) @ axis), 0.0) for point in hull.points]
    rings.sort()
    found: list[Array] = []
    if rings[0][1] > 0.0:
        found.append(-axis[None])
    if rings[-1][1] > 0.0:
        found.append(axis[None])
    spokes = rim(Disc((0.0, 0.0, 0.0), 1.0, hull.discs[0].axis), _FACETS, tangent=False)
    sides = list(pairwise(rings))
    for (low, r), (high, s) in sides if len(sides) < 3 else (sides[0], sides[-1]):
        slant = float(np.hypot(high - low, s - r))
        if slant > 0.0:
            found.append(((high - low) * spokes - (s - r) * axis) / slant)
    return np.vstack(found), axis[None]


def _of_any(points: Array) -> tuple[Array, Array]:
    """Return faces and edges of the hull of a few points, each three tried; of many none."""
    if len(points) > _MANY or len(points) < 4:
        return _NONE, _NONE
    three = np.array(list(combinations(range(len(points)), 3)), dtype=int)
    a, b, c = (points[three[:, i]] for i in range(3))
    normals = np.cross(b - a, c - a)
    places, middle = (a + b + c) / 3.0, points.mean(axis=0)
    sizes = np.linalg.norm(normals, axis=1)
    outward = _outward(normals, places, middle)
    at = np.einsum("ij,ij->i", outward, places[sizes > 1.0e-12])
    bounds = np.all(outward @ points.T <= at[:, None] + 1.0e-9, axis=1)
    ends = (points[:, None] - points[None]).reshape(-1, 3)
    kept = np.asarray(outward[np.flatnonzero(bounds)], dtype=float)
    return kept, _different(ends)
