"""The planes of a roof in plan, each with its slope and the way in which it falls."""

from math import atan2, degrees

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.forms import Leaf, Slab
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class RoofPlane(ByIdentity, frozen=True):
    """A plane of a roof: its ``region`` in plan, ``slope`` in degrees and ``fall`` (2,), outward.

    ``fall`` is the unit vector in plan in which it slopes down; a level top has slope 0.
    """

    region: BaseGeometry
    slope: float
    fall: Array


def roof_planes(body: Body, closed: BaseGeometry) -> list[RoofPlane]:
    """Return the planes of a body's roof within ``closed``, what of it is closed in plan.

    Curved roofs as bands and sectors of even slope. One level plane for what has no slopes.
    """
    form = body.shape.form
    if isinstance(form, Leaf | Slab):
        return [_board(body, closed, 1 if isinstance(form, Leaf) else 2)]
    found = [
        RoofPlane(region, one.slope, body.bearing(one.fall))
        for one in body.shape.roof_faces()
        if not (region := body.in_plan(plane.polygon(one.corners)).intersection(closed)).is_empty
    ]
    level = closed.difference(plane.union_of([one.region for one in found])) if found else closed
    if level.area > 1e-9:
        found.append(RoofPlane(level, 0.0, np.zeros(2)))
    return found


def _board(body: Body, closed: BaseGeometry, axis: int) -> RoofPlane:
    """Return the one plane of a board, level or leaning; ``axis`` is its own across it."""
    across = body.rotation[:, axis]
    up = across * np.sign(across[2] or 1.0)
    run = float(np.hypot(up[0], up[1]))
    fall = up[:2] / run if run > 1e-9 else np.array([1.0, 0.0])
    return RoofPlane(closed, degrees(atan2(run, up[2])), fall)
