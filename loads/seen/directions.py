"""The wind directions that are tried: every 5 degrees, and those square to something."""

import numpy as np

from ...design.structure import Structure
from ...units.arrays import Array, distinct

_STEP_DEG = 5.0
MOST_DIRECTIONS = 720
"""Where parts stand every way, directions are rounded to half a degree: 1e-5 of any width."""


def wind_directions(structure: Structure) -> Array:
    """Return the azimuths (D,) in degrees, 0 <= d < 360, ascending, from which wind is tried.

    Every 5 degrees; square to each footprint edge, from both sides; and along each face normal
    and plan diagonal of every part. The steps turn with the piece, so that it is judged alike
    however it is turned.
    """
    found = [np.arange(0.0, 360.0, _STEP_DEG) - np.degrees(structure.design.turn)]
    normals = edge_normals(structure.footprint)
    along = np.degrees(np.arctan2(normals[:, 1], normals[:, 0]))
    found += [90.0 - along, 270.0 - along]
    for body in structure.bodies:
        square_on = body.bearing(np.asarray(body.shape.bearings()))
        found.append(90.0 - np.degrees(np.arctan2(square_on[:, 1], square_on[:, 0])))
    azimuths = distinct(np.round(np.concatenate(found) % 360.0, 7) % 360.0)
    if len(azimuths) > MOST_DIRECTIONS:
        step = 360.0 / MOST_DIRECTIONS
        azimuths = distinct(np.round(azimuths / step) * step % 360.0)
    return azimuths


def edge_normals(footprint: Array) -> Array:
    """Return the outward unit normals (E, 2) of the edges of a counter-clockwise polygon (E, 2).

    Edge i runs from corner i to corner i + 1.
    """
    edge = np.roll(footprint, -1, axis=0) - footprint
    return np.column_stack([edge[:, 1], -edge[:, 0]]) / np.linalg.norm(edge, axis=1)[:, None]
