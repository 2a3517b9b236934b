"""The convex pieces of a body on the site: how far they reach, where they lie, how a plane cuts."""

from functools import cached_property, lru_cache

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.edges import ROUND_FROM, Edges, edges_of, faces_of
from ...design.shapes.hulls import Disc, Hull, rim
from ...design.shapes.shape import Shape
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace

EXACT_LENGTH = 1.0e-4
"""Lengths (m) that differ by less are one: what is drawn in one plane lies in it."""

_NONE = np.empty((0, 3))


class ConvexPiece(ByIdentity, frozen=True):
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
            near = fit if len(self.points) <= ROUND_FROM else EXACT_LENGTH
            found.append(self.points[self.points @ normal >= reach - near])
        if len(self.radii):
            reaches = self._of_discs(normal[None])[0]
            for i in np.flatnonzero(reaches >= reach - EXACT_LENGTH):
                found.append(self._on_disc(int(i), normal, fit))
        for centre, radius in zip(self.balls, self.ball_radii, strict=True):
            if centre @ normal + radius >= reach - EXACT_LENGTH:
                found.append((centre + radius * normal)[None])
        return np.vstack(found)

    def cut(self, normal: Array, at: float) -> Array:
        """Return points (k, 3) round what the plane ``normal . x = at`` cuts of it; none: empty."""
        if len(self.balls) == 1 and not len(self.points) and not len(self.radii):
            return self._ball_cut(normal, at)
        one, other = self.edges.starts @ normal - at, self.edges.ends @ normal - at
        across = (np.minimum(one, other) <= 0.0) & (np.maximum(one, other) >= 0.0)
        if not across.any():
            return _NONE
        start, end = self.edges.starts[across], self.edges.ends[across]
        rise = other[across] - one[across]
        part = np.where(rise != 0.0, -one[across] / np.where(rise != 0.0, rise, 1.0), 0.0)
        return start + part[:, None] * (end - start)

    def _ball_cut(self, normal: Array, at: float) -> Array:
        centre, radius = self.balls[0], float(self.ball_radii[0])
        off = at - float(centre @ normal)
        if abs(off) >= radius:
            return _NONE
        x, y, z = (centre + off * normal).tolist()
        a, b, c = normal.tolist()
        return rim(Disc((x, y, z), float(np.sqrt(radius**2 - off**2)), (a, b, c)))

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


class Surfaces(ByIdentity, frozen=True):
    """A body's convex pieces and its cavities on the site, and the upright box round it (2, 3)."""

    hulls: tuple[ConvexPiece, ...]
    cavities: tuple[ConvexPiece, ...]
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


def cut_of(body: Surfaces, way: Array, at: float, right: Array, up: Array) -> BaseGeometry:
    """Return what the plane ``way . x = at`` cuts of a body's wood, by the axes of that plane."""
    found = plane.union_of([outline(piece.cut(way, at), right, up) for piece in body.hulls])
    for cavity in body.cavities:
        found = found.difference(outline(cavity.cut(way, at), right, up))
    return found


@lru_cache(maxsize=256)
def _own(shape: Shape) -> tuple[tuple[ConvexPiece, ...], tuple[ConvexPiece, ...]]:
    """Return the pieces of a shape in its own axes: copies share them."""
    return (
        tuple(_piece(hull) for hull in shape.hulls()),
        tuple(_piece(hull) for hull in shape.cavities()),
    )


def _piece(hull: Hull) -> ConvexPiece:
    normals, directions = faces_of(hull)
    return ConvexPiece(
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


def _placed(piece: ConvexPiece, body: Body) -> ConvexPiece:
    turned = body.rotation.T
    return ConvexPiece(
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


def _moved(piece: ConvexPiece, by: Array) -> ConvexPiece:
    return replace(
        piece,
        points=piece.points + by,
        centres=piece.centres + by,
        balls=piece.balls + by,
        origin=piece.origin + by,
    )
