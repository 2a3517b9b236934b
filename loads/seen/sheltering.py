"""Shelter that one body gives another behind it, where the design asks for it."""

from collections.abc import Sequence

import numpy as np

from ...design import plane
from ...design.placing import Body
from ...design.plane import Polygons
from ...units.arrays import Array
from ..coefficients.shielding import shielding
from .depth import reach
from .hiding import overlap


def shelter(
    bodies: Sequence[Body],
    outlines: Polygons,
    visible: Polygons,
    solidity: Array,
    wind: Array,
) -> Array:
    """Return the factor (bodies, D) on each body's force for shelter by one that stands before it.

    ``wind`` (D, 2) is the way in which it blows. A body stands clear behind another when its
    nearest point lies downwind of the other's farthest. What of its ``visible`` outline the front
    one's outline covers takes the shielding coefficient of ISO 4302 by the front's solidity and the
    gap over the front's lesser width. Of several in front the one that shelters most counts, alone.
    """
    level = np.column_stack([wind, np.zeros(len(wind))])
    near = np.array([-reach(body, -level) for body in bodies])
    far = np.array([reach(body, level) for body in bodies])
    bounds, seen = plane.bounds(outlines), plane.bounds(visible)
    lesser = np.minimum(bounds[..., 2] - bounds[..., 0], bounds[..., 3] - bounds[..., 1])
    area = plane.area(visible)
    result = np.ones(area.shape)
    for i in range(len(bodies)):
        gaps = near[i] - far
        before = (gaps > 0.0) & overlap(seen[i], bounds)
        for j in np.flatnonzero(before.any(axis=1)).tolist():
            clear = np.flatnonzero(before[j])
            shared = plane.area(plane.intersection(visible[i, clear], outlines[j, clear]))
            eta = shielding(solidity[j, clear], gaps[j, clear] / lesser[j, clear])
            factor = 1.0 - (1.0 - eta) * shared / area[i, clear]
            result[i, clear] = np.minimum(result[i, clear], factor)
    return result
