"""What the wind finds of bodies: areas, centroids, and the outline of all together."""

import numpy as np

from ...design import plane
from ...design.plane import Polygons
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .hiding import LEAST_AREA, overlap


class Faces(ByIdentity, frozen=True):
    """Area (bodies, D) in m2 and centroid across the wind and above ground (bodies, D) in m."""

    area: Array
    side: Array
    up: Array


def measure(polygons: Polygons) -> Faces:
    """Return area and centroid of outline polygons of any array shape; 0 where empty."""
    centre = plane.centroids(polygons)
    return Faces(plane.area(polygons), centre[..., 0], centre[..., 1])


def count_twice(visible: Polygons) -> bool:
    """Return whether what is visible of two bodies (bodies, D) lies on one line of the wind."""
    boxes = plane.bounds(visible)
    for i in range(len(visible) - 1):
        shared = overlap(boxes[i], boxes[i + 1 :])
        for j in np.flatnonzero(shared.any(axis=1)).tolist():
            both = plane.intersection(visible[i, shared[j]], visible[i + 1 + j, shared[j]])
            if (plane.area(both) > LEAST_AREA).any():
                return True
    return False


def silhouette(outlines: Polygons, solidity: Array) -> Faces:
    """Return area and centroid (D,) of the whole outline, overlap counted once.

    ``solidity`` (bodies, D): what is fully solid covers; a lattice or rotor counts by its solidity
    where nothing solid and no denser lattice stands in the same line of sight.
    """
    solid = solidity >= 1.0
    covered = plane.union_over(plane.kept(solid, outlines))
    whole = measure(covered)
    area, side, up = whole.area, whole.area * whole.side, whole.area * whole.up
    open_rows = np.flatnonzero(~solid.all(axis=1))
    for row in sorted(open_rows, key=lambda r: -float(solidity[r].max())):
        rest = plane.difference(plane.kept(~solid[row], outlines[row]), covered)
        part = measure(rest)
        counted = part.area * solidity[row]
        area, side, up = area + counted, side + counted * part.side, up + counted * part.up
        covered = plane.union(covered, rest)
    safe = np.where(area > 0.0, area, 1.0)
    return Faces(area, side / safe, up / safe)


def breadth(outlines: Polygons) -> Array:
    """Return the width (D,) across the wind from the first to the last point of any outline, m."""
    bounds = plane.bounds(outlines)
    return np.nanmax(bounds[..., 2], axis=0) - np.nanmin(bounds[..., 0], axis=0)
