"""What is seen of a piece from one side or from above: areas, edges of faces, what hides what."""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
from shapely import box
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.outlines import outlines
from ...design.placing import Body
from ...design.shapes.hulls import corners
from ...design.shapes.shape import Shape
from ...design.structure import Structure
from ...loads.roofs.lids import from_above as filled_outline
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace

_MANY_BLADES = 6
_FACING = 1.0e-6
_SAME_FACE = 0.94
"""Cosine of the angle (20 degrees) below which two faces pass for one curved one."""

_THINNEST = 1.0e-4
_BESIDE = np.array([[1, 2], [0, 2], [0, 1]])
"""The corners of a triangle on the edge that lies opposite to each."""

_FLAT = 2.0
"""So many times the area from the front, a view from the right is the one by which it is known."""


class Seen(ByIdentity, frozen=True):
    """One body as seen: its area, its faces' edges (k, 2, 2) in m, and whether wind passes it.

    A body without an outline has an empty area and sits at ``spot`` (2,).
    """

    body: Body
    area: BaseGeometry
    edges: Array
    spot: Array
    lattice: bool


def from_side(bodies: Sequence[Body], right: Array) -> list[Seen]:
    """Return bodies seen level, the farthest first; ``right`` (2,) is the plan vector to the right.

    Areas are in the plane (right, up).
    """
    axes, toward = _upright(right), np.array([right[1], -right[0], 0.0])
    areas = areas_from_side(bodies, right)
    seen = [_seen(body, area, axes, toward) for body, area in zip(bodies, areas, strict=True)]
    return _ordered([replace(one, edges=_above_ground(one.edges)) for one in seen], toward)


def areas_from_side(bodies: Sequence[Body], right: Array) -> list[BaseGeometry]:
    """Return the areas (right, up) that bodies cover seen level."""
    found = outlines(bodies, np.array([np.arctan2(-right[1], right[0])]))[:, 0]
    axes = _upright(right)
    return [_holed(body, area, axes) for body, area in zip(bodies, found, strict=True)]


def _upright(right: Array) -> Array:
    """Return the axes (2, 3) of a level view, to the right and up."""
    return np.array([[right[0], right[1], 0.0], [0.0, 0.0, 1.0]])


def known_from(structure: Structure) -> tuple[Sequence[Body], int]:
    """Return the bodies as the file has them, and from where the piece is known: 0 front, 1 right.

    A flat figure is known from the side on which it is a figure; what is looked through counts by
    so much of it as is filled, since nobody knows an arch by the lattice at its sides.
    """
    bodies = structure.as_filed
    sides = outlines(bodies, np.radians([0.0, 270.0]))
    front, right = (_shown(bodies, list(sides[:, view])) for view in (0, 1))
    return bodies, 1 if right > _FLAT * front else 0


def _shown(bodies: Sequence[Body], areas: Sequence[BaseGeometry]) -> float:
    """Return how much (m2) is seen of bodies by their areas, of a lattice what of it is filled."""
    filled = [body.shape.solidity if body.shape.is_lattice else 1.0 for body in bodies]
    seen, covered = 0.0, plane.NOTHING
    for share in sorted(set(filled), reverse=True):
        alike = [area for area, one in zip(areas, filled, strict=True) if one == share]
        more = plane.union_of([covered, *alike])
        seen, covered = seen + share * (more.area - covered.area), more
    return seen


def in_the_ground(bodies: Sequence[Body], right: Array) -> list[BaseGeometry]:
    """Return the areas (right, up) of what stands in the ground, below it."""
    axes = _upright(right)
    found: list[BaseGeometry] = []
    for body in bodies:
        if body.bottom > -_THINNEST or not body.shape.hulls():
            continue
        whole = plane.union_of(
            [plane.hull(body.place(corners(hull)) @ axes.T) for hull in body.shape.hulls()]
        )
        left, low, far, _ = (float(value) for value in plane.bounds_of(whole))
        found.append(whole.intersection(box(left, low, far, 0.0)))
    return found


def seen_from_above(bodies: Sequence[Body]) -> list[Seen]:
    """Return bodies seen from above in plan, the lowest first."""
    axes, toward = np.eye(3)[:2], np.array([0.0, 0.0, 1.0])
    return _ordered([_seen(body, above(body), axes, toward) for body in bodies], toward)


def simpler_outline(body: Body, region: BaseGeometry, axes: Array) -> BaseGeometry:
    """Return an outline seen level: many blades as what they sweep, a sawn board with its holes.

    A hole shows where the board is seen face on. ``axes`` (2, 3) are those of the picture.
    """
    wheel = body.shape.wheel
    if wheel is not None and wheel.blades >= _MANY_BLADES:
        return plane.hull(plane.coordinates(region))
    return _holed(body, region, axes)


def above(body: Body) -> BaseGeometry:
    """Return the filled outline from above, of a flat ring with its opening."""
    if not body.shape.hulls():
        return plane.NOTHING
    if body.upright and body.shape.wheel is None:
        return body.in_plan(body.shape.contact()) if body.shape.lies_flat else filled_outline(body)
    return plane.union_of(
        [plane.hull(body.place(corners(hull))[:, :2]) for hull in body.shape.hulls()]
    )


def _seen(body: Body, area: BaseGeometry, axes: Array, toward: Array) -> Seen:
    lattice = body.shape.is_lattice
    plain = lattice or not body.shape.has_edges
    edges = np.empty((0, 2, 2)) if plain else _edges(body, axes, toward)
    return Seen(body, area, edges, axes @ body.origin, lattice)


def _holed(body: Body, region: BaseGeometry, axes: Array) -> BaseGeometry:
    """Return an outline, of a sawn board with the holes that show where it is seen face on."""
    for hole in body.shape.holes:
        standing = np.array([(x, 0.0, z) for x, z in hole])
        seen = plane.polygon(body.place(standing) @ axes.T)
        region = region.difference(seen) if seen.area > 0.0 else region
    return region


def _ordered(seen: list[Seen], toward: Array) -> list[Seen]:
    """Return what is farthest first: what reaches farther toward the eye hides the rest."""

    def nearness(one: Seen) -> float:
        low, high = one.body.extent
        return float(np.maximum(low * toward, high * toward).sum())

    return sorted(seen, key=nearness)


def _above_ground(edges: Array) -> Array:
    """Return edges (k, 2, 2) cut off at the ground."""
    found: list[Array] = []
    for edge in edges:
        low, high = edge[np.argsort(edge[:, 1], kind="stable")]
        if high[1] <= 0.0:
            continue
        if low[1] < 0.0:
            low = low + (high - low) * (-low[1] / (high[1] - low[1]))
        found.append(np.array([low, high]))
    return np.array(found) if found else np.empty((0, 2, 2))


def _edges(body: Body, axes: Array, toward: Array) -> Array:
    """Return the edges (k, 2, 2) between flat faces of which one at least looks this way."""
    edges, normals = _creases(body.shape)
    facing = normals @ (body.rotation.T @ toward) >= _FACING
    shown = edges[facing.any(axis=1)]
    return body.place(shown.reshape(-1, 3)).reshape(shown.shape) @ axes.T


@lru_cache(maxsize=256)
def _creases(shape: Shape) -> tuple[Array, Array]:
    """Return the edges (k, 2, 3) between flat faces, and the normals (k, 2, 3) of both faces.

    In the shape's own axes; of a piece that is changed most shapes stay.
    """
    from scipy.spatial import ConvexHull, QhullError  # noqa: PLC0415 - a check does without

    edges, normals = [np.empty((0, 2, 3))], [np.empty((0, 2, 3))]
    for hull in shape.hulls():
        corner = hull.points
        if hull.discs or hull.spheres or len(corner) < 4:
            continue
        if np.linalg.svd(corner - corner.mean(axis=0), compute_uv=False)[-1] < _THINNEST:
            continue
        try:
            solid = ConvexHull(corner)
        except QhullError:
            continue
        normal, other = solid.equations[:, :3], solid.neighbors
        alike = np.einsum("ij,ikj->ik", normal, normal[other]) > _SAME_FACE
        face, opposite = np.nonzero(~alike & (other > np.arange(len(other))[:, None]))
        edges.append(corner[solid.simplices[face[:, None], _BESIDE[opposite]]])
        normals.append(np.stack([normal[face], normal[other[face, opposite]]], axis=1))
    return np.concatenate(edges), np.concatenate(normals)
