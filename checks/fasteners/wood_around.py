"""The wood round the fasteners of a joint: how far each stands from a piece's ends and edges."""

import numpy as np
from numpy.typing import NDArray
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.plans import Plan, Regular, at_height
from ...design.shapes.shape import ALONG_AXIS
from ...statics.contacts.face import Face
from ...statics.contacts.surfaces import cut_of, surfaces_of
from ...units.arrays import Array
from ...units.frozen import ByIdentity, kept_with

_BESIDE = 1.0e-6
"""Farther (m) off a piece than this a point lies beside it."""

_STRAIGHT = 60
"""So many sides a ring of straight pieces has at most."""


class Around(ByIdentity, frozen=True):
    """One piece as fasteners find it: its ``pieces`` of one grain each in the plane of the face.

    Each is a region in m and the unit vector (2,) of its grain, None where it runs along the
    fasteners, across itself in plies, or is not known. ``sheet``: it is plywood or OSB.
    """

    part: str
    sheet: bool
    pieces: tuple[tuple[BaseGeometry, Array | None], ...]

    def distances(self, points: Array) -> tuple[Array, Array]:
        """Return how far (n,) points (n, 2) lie from an end, and from an edge, of their piece.

        An end is infinitely far where no grain is known; both are 0 beside the piece.
        """
        own, off = self._own(points)
        end, edge = np.zeros(len(points)), np.zeros(len(points))
        for k, (region, grain) in enumerate(self.pieces):
            within = (own == k) & (off <= _BESIDE)
            if not within.any():
                continue
            if grain is None:
                end[within] = np.inf
                edge[within] = plane.distances(points[within], region.boundary)
                continue
            end[within] = _to_boundary(region, points[within], grain)
            edge[within] = _to_boundary(region, points[within], square_to(grain))
        return end, edge

    def grains(self, points: Array) -> Array:
        """Return the grain (n, 2) of the piece nearest each point (n, 2); 0 where none is known."""
        known = np.array([np.zeros(2) if grain is None else grain for _, grain in self.pieces])
        return known[self._own(points)[0]]

    def _own(self, points: Array) -> tuple[NDArray[np.intp], Array]:
        """Return in which piece points lie, or nearest to which, and how far off it (n,)."""
        if len(self.pieces) == 1:
            return np.zeros(len(points), dtype=np.intp), plane.distances(points, self.pieces[0][0])
        off = np.stack([plane.distances(points, region) for region, _ in self.pieces], axis=1)
        return off.argmin(axis=1), off.min(axis=1)

    def within(self, end: float, edge: float) -> BaseGeometry:
        """Return where points stand at least so far from ends and edges, in m."""
        kept: list[BaseGeometry] = []
        for region, grain in self.pieces:
            if grain is None:
                kept.append(plane.moved_in(region, edge))
                continue
            across = square_to(grain)
            inside = region
            for step in (end * grain, -end * grain, edge * across, -edge * across):
                inside = inside.intersection(affinity.translate(region, *step.tolist()))
            kept.append(inside)
        return plane.union_of(kept)


def square_to(grain: Array) -> Array:
    """Return the unit vectors (…, 2) across the grain."""
    return np.stack([-grain[..., 1], grain[..., 0]], axis=-1)


@kept_with
def wood_around(
    body: Body, name: str, face: Face, depth: float, *, sheet: bool, in_end: bool
) -> Around:
    """Return a body's wood in a plane that lies ``depth`` m beyond a face, along what leaves it.

    ``in_end``: the fasteners enter along the grain. A ring is mitred at its corners.
    """
    if body.shape.ring is not None and face.is_level and (sides := _sides(body, face)):
        return Around(name, sheet, tuple((one, None if sheet else g) for one, g in sides))
    at = float(face.origin @ face.leaves) + depth
    whole = cut_of(surfaces_of(body), face.leaves, at, face.right, face.up)
    x, y = float(face.origin @ face.right), float(face.origin @ face.up)
    region = affinity.translate(whole, -x, -y)
    grain = None if sheet or in_end else _grain_in(body, face)
    return Around(name, sheet, tuple((one, grain) for one in plane.pieces(region)))


def _to_boundary(region: BaseGeometry, points: Array, way: Array) -> Array:
    """Return how far (n,) points (n, 2) within a region lie from its boundary, along a line."""
    return np.minimum(*(plane.clear_along(points, one, region) for one in (way, -way)))


def _sides(body: Body, face: Face) -> list[tuple[BaseGeometry, Array]]:
    """Return the pieces of a ring of lumber, mitred, with their grain; none of a round one."""
    ring = body.shape.ring
    assert ring is not None
    outer, inner = (_corners(plan, body, face) for plan in (ring.plan, ring.inside()))
    if len(outer) != len(inner) or len(outer) > _STRAIGHT:
        return []
    ends = zip(outer, np.roll(outer, -1, axis=0), np.roll(inner, -1, axis=0), inner, strict=True)
    return [(plane.polygon(np.array(each)), _unit(each[1] - each[0])) for each in ends]


def _corners(plan: Plan, body: Body, face: Face) -> Array:
    if isinstance(plan, Regular) and plan.sides == 0:
        return np.empty((0, 2))
    return face.in_plane(body.place(at_height(plan.corners(), 0.0)))


def _grain_in(body: Body, face: Face) -> Array | None:
    """Return the grain of a body's wood in the plane of a face (2,); None where it is not known."""
    own = body.shape.grain(body.rotation.T @ face.leaves)
    if own is None:
        return None
    grain = body.rotation @ own
    local = np.array([grain @ face.right, grain @ face.up])
    return None if np.linalg.norm(local) < ALONG_AXIS else _unit(local)


def _unit(vector: Array) -> Array:
    return vector / np.linalg.norm(vector)
