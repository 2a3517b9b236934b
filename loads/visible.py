"""What the wind finds of each body: overlaps within a stack counted once."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..design import plane
from ..design.placing import Body
from ..design.plane import Polygons
from ..design.shapes.rotor import Rotor
from ..design.shapes.shape import Array

ALIKE = 1.0e-9
"""Coefficients that differ less are equal: the part named first in the file then hides."""


@dataclass(frozen=True, eq=False)
class Faces:
    """Area (bodies, D) in m2 and centroid across the wind and above ground (bodies, D) in m."""

    area: Array
    side: Array
    up: Array


def measure(polygons: Polygons) -> Faces:
    """Return area and centroid of outline polygons of any array shape; 0 where empty."""
    centre = plane.centroids(polygons)
    return Faces(plane.area(polygons), centre[..., 0], centre[..., 1])


def visible_outlines(
    bodies: Sequence[Body], stack: Sequence[int], outlines: Polygons, coefficient: Array
) -> Polygons:
    """Return the outlines (bodies, D) less what a greater coefficient of the same stack covers.

    ``coefficient`` (bodies, D) ranks the bodies; the overlap belongs to the greater. Copies of one
    part do not hide each other, and bodies of different stacks neither: each takes its own full
    wind (judgement; a union would make the force on an arbor a third too low). Wheels hide nothing:
    seen from the side they take less than what stands behind them.
    """
    visible = outlines.copy()
    low, high = vertical_extent(outlines)
    for i, body in enumerate(bodies):
        for j, other in enumerate(bodies):
            apart = low[j] >= high[i] - 1e-9 or low[i] >= high[j] - 1e-9
            alone = body.part == other.part or stack[body.part] != stack[other.part]
            wheel = isinstance(body.shape, Rotor) or isinstance(other.shape, Rotor)
            if i == j or apart or alone or wheel:
                continue
            hides = coefficient[j] > coefficient[i] * (1.0 + ALIKE)
            if j < i:
                hides |= np.abs(coefficient[j] - coefficient[i]) <= ALIKE * coefficient[i]
            if hides.any():
                visible[i, hides] = plane.difference(visible[i, hides], outlines[j, hides])
    return visible


def vertical_extent(outlines: Polygons) -> tuple[Array, Array]:
    """Return the lowest and highest point (bodies,) of outlines (bodies, D) over all directions."""
    bounds = plane.bounds(outlines)
    empty = np.isnan(bounds[..., 1])
    low = np.where(empty, np.inf, bounds[..., 1]).min(axis=1)
    high = np.where(empty, -np.inf, bounds[..., 3]).max(axis=1)
    return low, high


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
