"""Shelter that one stack gives another behind it, where the design asks for it."""

from collections.abc import Sequence

import numpy as np

from ..design import plane
from ..design.outlines import downwind_axes
from ..design.placing import Body
from ..design.plane import Polygons
from ..design.shapes.shape import Array
from .shielding import shielding


def shelter(
    bodies: Sequence[Body],
    stack: Sequence[int],
    outlines: Polygons,
    solidity: Array,
    angles: Array,
) -> Array:
    """Return the factor (bodies, D) on each body's force for shelter by one that stands before it.

    A body stands clear behind another of a different stack (or copy) when its nearest point lies
    downwind of the other's farthest. What of its outline the front one covers takes the shielding
    coefficient of ISO 4302 by the front's solidity and the gap over the front's lesser width. Of
    several in front the one that shelters most counts, alone.
    """
    wind = downwind_axes(angles)
    near, far = reach_along(bodies, wind)
    bounds = plane.bounds(outlines)
    lesser = np.minimum(bounds[..., 2] - bounds[..., 0], bounds[..., 3] - bounds[..., 1])
    area = plane.area(outlines)
    result = np.ones(area.shape)
    for i in range(len(bodies)):
        for j in range(len(bodies)):
            same = stack[i] == stack[j] and bodies[i].part != bodies[j].part
            if i == j or same:
                continue
            gap = near[i] - far[j]
            clear = (gap > 0.0) & (area[i] > 0.0) & (area[j] > 0.0)
            if not clear.any():
                continue
            shared = plane.area(plane.intersection(outlines[i, clear], outlines[j, clear]))
            eta = shielding(solidity[j, clear], gap[clear] / lesser[j, clear])
            factor = 1.0 - (1.0 - eta) * shared / area[i, clear]
            result[i, clear] = np.minimum(result[i, clear], factor)
    return result


def reach_along(bodies: Sequence[Body], wind: Array) -> tuple[Array, Array]:
    """Return how far upwind and downwind (bodies, D) each body begins and ends, in m."""
    near, far = (
        np.full((len(bodies), len(wind)), np.inf),
        np.full((len(bodies), len(wind)), -np.inf),
    )
    for i, body in enumerate(bodies):
        for hull in body.shape.hulls():
            if len(hull.points):
                along = body.place(hull.points)[:, :2] @ wind.T
                near[i] = np.minimum(near[i], along.min(axis=0))
                far[i] = np.maximum(far[i], along.max(axis=0))
            for round_piece in (*hull.discs, *hull.spheres):
                along = body.place(np.asarray(round_piece.centre))[:2] @ wind.T
                near[i] = np.minimum(near[i], along - round_piece.radius)
                far[i] = np.maximum(far[i], along + round_piece.radius)
    return near, far
