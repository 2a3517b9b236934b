"""The shear flow round a thin-walled polygon by numerical integration, apart from our formulas."""

from itertools import pairwise

import numpy as np
from scipy.integrate import cumulative_trapezoid, trapezoid

PER_SIDE = 4001


def round_the_wall(sides, apothem):
    """Points along the middle of the wall, corner to corner, with path and unit tangent."""
    angles = np.pi / sides * (1.0 + 2.0 * np.arange(sides + 1))
    corners = apothem / np.cos(np.pi / sides) * np.column_stack([np.cos(angles), np.sin(angles)])
    part = np.linspace(0.0, 1.0, PER_SIDE)[:, None]
    points = np.vstack([a + (b - a) * part for a, b in pairwise(corners)])
    ways = np.vstack(
        [
            np.repeat([(b - a) / np.linalg.norm(b - a)], PER_SIDE, axis=0)
            for a, b in pairwise(corners)
        ]
    )
    steps = np.linalg.norm(np.diff(points, axis=0), axis=1)
    return points, ways, np.concatenate([[0.0], np.cumsum(steps)])


def flow_by_integration(sides, apothem, wall, shear, direction):
    """q = q0 - V/I times the integral of t y ds, q0 from no twist about the middle; and I."""
    points, ways, path = round_the_wall(sides, apothem)
    along = points @ np.array([np.cos(direction), np.sin(direction)])
    inertia = trapezoid(wall * along**2, path)
    q = -shear / inertia * cumulative_trapezoid(wall * along, path, initial=0.0)
    arm = points[:, 0] * ways[:, 1] - points[:, 1] * ways[:, 0]
    q -= trapezoid(q * arm, path) / trapezoid(arm, path)
    return q, inertia, ways, path
