"""The face on which two bodies meet: a region of a plane, and what two regions of it share."""

from functools import cached_property

import numpy as np
import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from .bed import cells
from .fit import FIT
from .surfaces import EXACT_LENGTH

LEAST_FACE = 1.0e-6
"""Area (m2) below which two faces touch in a line or a point only."""

_NARROW = 1.0e-4
"""Width (m) below which what two faces share is a line."""

FIT_REACH = FIT + 1.0e-9
"""The fit is inclusive, whatever the last digit of a sum is."""

LEVEL_FROM = 1.0 - 1.0e-9
"""A plane of which the unit vector is upright to that is level."""


class Face(ByIdentity, frozen=True):
    """Where two bodies meet: ``area`` in a plane (m), with ``origin`` and axes (3,) on the site.

    ``area`` is a polygon, or a segment or a point where they meet in no more. ``leaves`` is the
    unit vector in which the one body leaves the other; ``right`` and ``up`` are the axes of the
    plane: right x up = leaves. ``deep`` is how far in m they lie within each other, 0 where they
    touch within the fit.
    """

    area: BaseGeometry
    origin: Array
    right: Array
    up: Array
    leaves: Array
    deep: float = 0.0

    def on_site(self, points: Array) -> Array:
        """Return points (…, 2) of the plane on the site (…, 3)."""
        return self.origin + points[..., :1] * self.right + points[..., 1:] * self.up

    def in_plane(self, points: Array) -> Array:
        """Return points (…, 3) of the site in the plane (…, 2)."""
        off = points - self.origin
        return np.stack([off @ self.right, off @ self.up], axis=-1)

    def bed(self, rows: int) -> tuple[Array, Array]:
        """Return points (n, 3) over the face and the area (n,) in m2 for which each stands."""
        known = self._beds
        if rows not in known:
            found = cells(self.area, rows)
            known[rows] = self.on_site(found.points), found.area
        return known[rows]

    @cached_property
    def _beds(self) -> dict[int, tuple[Array, Array]]:
        return {}

    @property
    def is_level(self) -> bool:
        """Return whether one body stands on, or hangs under, the other."""
        return abs(float(self.leaves[2])) > 0.5

    def widened(self, by: float) -> "Face":
        """Return the face itself, or of a segment or point a strip or spot ``by`` m round it."""
        if self.area.area > 0.0:
            return self
        return replace(self, area=self.area.buffer(by, cap_style="square"))

    @property
    def in_plan(self) -> BaseGeometry:
        """Return the region as seen from above, on the site (m); of an upright one a line."""
        (a, d), (b, e) = self.right[:2].tolist(), self.up[:2].tolist()
        x, y = self.origin[:2].tolist()
        return affinity.affine_transform(self.area, [a, b, d, e, x, y])

    @property
    def middle(self) -> Array:
        """Return the middle (3,) of where they meet, on the site."""
        return self.on_site(plane.middle(self.area))


def axes_of(leaves: Array) -> tuple[Array, Array]:
    """Return the axes ``right`` and ``up`` (3,) of the plane that a unit vector (3,) leaves.

    Of a level plane x, and y as seen from where it leaves; of others the level one to the right as
    one looks at it, and up.
    """
    if abs(float(leaves[2])) > LEVEL_FROM:
        return np.array([1.0, 0.0, 0.0]), np.array([0.0, float(np.sign(leaves[2])), 0.0])
    right = np.array([-leaves[1], leaves[0], 0.0]) / float(np.hypot(leaves[0], leaves[1]))
    return right, np.cross(leaves, right)


def point_face(at: Array, leaves: Array) -> Face:
    """Return a face that is one point (3,) of the site."""
    right, up = axes_of(leaves)
    return Face(shapely.Point(0.0, 0.0), at, right, up, leaves)


def face_rank(face: Face) -> tuple[int, float]:
    """Return which of two faces counts: areas first, touching before deep ones, the greater one."""
    if face.area.area > 0.0:
        return (3 if face.deep <= 0.0 else 2), face.area.area
    return (1 if face.area.length > 0.0 else 0), face.area.length


def shared_region(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """Return what two regions of a plane share; of such as lie beside each other the line between.

    Regions that end within the fit of each other meet there.
    """
    shared = one.intersection(other)
    if not shared.is_empty:
        return shared
    if one.is_empty or other.is_empty or one.distance(other) > FIT_REACH:
        return plane.NOTHING
    reach = 0.5 * FIT_REACH + EXACT_LENGTH
    strip = plane.narrowest_box(one.buffer(reach).intersection(other.buffer(reach)))
    return _midline(strip, 4.0 * reach)


def _midline(corners: Array, least: float) -> BaseGeometry:
    """Return the line along the middle of a rectangle (4, 2); of a short one its middle."""
    if len(corners) < 4:
        return plane.line(corners[:2]) if len(corners) > 1 else shapely.Point(corners[0])
    if np.linalg.norm(corners[1] - corners[0]) < np.linalg.norm(corners[2] - corners[1]):
        corners = np.roll(corners, -1, axis=0)
    ends = np.array([corners[[0, 3]].mean(axis=0), corners[[1, 2]].mean(axis=0)])
    if float(np.linalg.norm(ends[1] - ends[0])) <= least:
        return shapely.Point(ends.mean(axis=0))
    return plane.line(ends)


def face_in_plane(
    shared: BaseGeometry, way: Array, at: float, right: Array, up: Array, deep: float = 0.0
) -> Face | None:
    """Return the face of what is shared in the plane ``way . x = at``; None where nothing is."""
    if shared.is_empty:
        return None
    area = _of_one_kind(shared)
    middle = plane.middle(area)
    if abs(float(way[2])) > LEVEL_FROM:
        return Face(area, at * way, right, up, way, deep)
    upright = abs(float(way[2])) < 1.0e-9
    place = np.array([middle[0], 0.0 if upright else middle[1]])
    origin = at * way + place[0] * right + place[1] * up
    moved = affinity.translate(area, -float(place[0]), -float(place[1]))
    return Face(moved, origin, right, up, way, deep)


def _of_one_kind(shared: BaseGeometry) -> BaseGeometry:
    """Return the areas of what is shared; where it has none to speak of, its line or point."""
    areas = plane.pieces(shared)
    if areas and (whole := plane.union_of(areas)).area > LEAST_FACE:
        if 2.0 * whole.area > _NARROW * whole.length:
            return whole
        return _midline(plane.narrowest_box(whole), 0.0)
    lines = [one for one in shapely.get_parts(shared).tolist() if one.length > 0.0]
    if not lines:
        return shapely.Point(plane.coordinates(shared)[0])
    ends = plane.coordinates(plane.union_of(lines))
    if len(ends) == 2:
        return plane.line(ends)
    return _midline(plane.narrowest_box(plane.hull(ends)), 0.0)
