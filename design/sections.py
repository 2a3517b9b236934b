"""Level sections of bodies: what a saw would leave at a height."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from . import plane
from .placing import Body
from .shapes.shape import Hull, corners


def section(body: Body, z: float) -> BaseGeometry:
    """Return what a level plane at height ``z`` m cuts of a body, in plan."""
    outside = plane.union_of([_hull_section(body, hull, z) for hull in body.shape.hulls()])
    inside = [_hull_section(body, hull, z) for hull in body.shape.cavities()]
    return outside.difference(plane.union_of(inside)) if inside else outside


def _hull_section(body: Body, hull: Hull, z: float) -> BaseGeometry:
    """Return the level section of a convex hull: the hull of where its points' joins cross z."""
    points = body.place(corners(hull))
    above, below = points[points[:, 2] >= z], points[points[:, 2] <= z]
    if not len(above) or not len(below):
        return plane.NOTHING
    rise = above[:, None, 2] - below[None, :, 2]
    part = np.where(rise > 0.0, (z - below[None, :, 2]) / np.where(rise > 0.0, rise, 1.0), 0.0)
    crossing = below[None, :, :2] + part[..., None] * (above[:, None, :2] - below[None, :, :2])
    return plane.hull(crossing.reshape(-1, 2))
