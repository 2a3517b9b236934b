"""Level sections of bodies: what a saw would leave at a height."""

from math import sqrt

import numpy as np
from shapely.geometry.base import BaseGeometry

from . import plane
from .placing import Body
from .shapes.edges import Edges
from .shapes.hulls import Disc, Sphere, rim


def section(body: Body, z: float) -> BaseGeometry:
    """Return what a level plane at height ``z`` m cuts of a body, in plan."""
    filled, hollow = body.edges
    outside = plane.union_of([_cut(one, z) for one in filled])
    inside = [_cut(one, z) for one in hollow]
    return outside.difference(plane.union_of(inside)) if inside else outside


def _cut(bounds: Edges | Sphere, z: float) -> BaseGeometry:
    """Return the level section of a convex piece: a ball's circle, or the hull of what z crosses.

    A circle has 72 corners, its edges tangent.
    """
    if isinstance(bounds, Sphere):
        x, y, centre = bounds.centre
        squared = bounds.radius**2 - (z - centre) ** 2
        if squared <= 0.0:
            return plane.NOTHING
        return plane.polygon(rim(Disc((x, y, z), sqrt(squared)))[:, :2])
    one, other = bounds.starts[:, 2], bounds.ends[:, 2]
    across = (np.minimum(one, other) <= z) & (np.maximum(one, other) >= z)
    if not across.any():
        return plane.NOTHING
    start, end = bounds.starts[across], bounds.ends[across]
    rise = end[:, 2] - start[:, 2]
    part = np.where(rise != 0.0, (z - start[:, 2]) / np.where(rise != 0.0, rise, 1.0), 0.0)
    return plane.hull(start[:, :2] + part[:, None] * (end[:, :2] - start[:, :2]))
