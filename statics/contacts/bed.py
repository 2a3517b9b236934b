"""A face on which two things press as a bed of points, each with its share of the area."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array
from ...units.frozen import ByIdentity

FINE_BED = 8
"""Rows of a bed each way where the fasteners of a joint are judged."""

COARSE_BED = 2
"""Rows of a bed each way where it only passes force on from piece to piece."""


class Bed(ByIdentity, frozen=True):
    """Points (n, 2) in a plane in m, and the area (n,) in m2 for which each stands."""

    points: Array
    area: Array


def cells(face: BaseGeometry, rows: int) -> Bed:
    """Return the middles of what lies of a face in each of ``rows`` x ``rows`` equal cells.

    Of the narrowest rectangle round it; of thin walls they lie at mid-thickness.
    """
    if face.area <= 0.0:
        points = plane.coordinates(face)
        return Bed(points, np.full(len(points), LINE / max(len(points), 1)))
    corners = _box_round(face)
    across, up = corners[1] - corners[0], corners[3] - corners[0]
    at = np.arange(rows) / rows
    low: Array = corners[0] + at[:, None, None] * across + at[None, :, None] * up
    whole = abs(float(across[0] * up[1] - across[1] * up[0]))
    if face.area >= whole * (1.0 - _ALIKE):
        middles = low + (across + up) / (2.0 * rows)
        return Bed(middles.reshape(-1, 2), np.full(rows**2, whole / rows**2))
    ring = np.stack(
        [low, low + across / rows, low + (across + up) / rows, low + up / rows], axis=-2
    ).reshape(-1, 4, 2)
    squares = plane.hulls(ring)
    parts = plane.intersection(squares[plane.touch(face, squares)], face)
    area = plane.area(parts)
    kept = area > 1.0e-9 * float(area.max())
    return Bed(plane.centroids(parts[kept]), area[kept])


def _box_round(face: BaseGeometry) -> Array:
    """Return the corners (4, 2) of the narrowest rectangle round a face.

    Of a round or square one, which has many as narrow, the one along the plane's own axes.
    """
    narrowest = plane.narrowest_box(face)
    low_x, low_y, high_x, high_y = plane.bounds_of(face)
    own = (high_x - low_x) * (high_y - low_y)
    if own <= plane.polygon(narrowest).area * (1.0 + _ALIKE):
        return np.array([[low_x, low_y], [high_x, low_y], [high_x, high_y], [low_x, high_y]])
    return narrowest


_ALIKE = 1.0e-6

LINE = 1.0e-4
"""m2 for which a line or a point stands on which two things touch: they bed in (judgement)."""
