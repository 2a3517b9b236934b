"""A force with its moment: wrenches (…, 6), force in N, then moment in N m about a point."""

import numpy as np
from numpy.typing import ArrayLike

from ..units.arrays import Array


def wrench(force: ArrayLike, at: ArrayLike, couple: ArrayLike = 0.0) -> Array:
    """Return the wrench (…, 6) about the origin of a ``force`` (…, 3) in N at points (…, 3) in m.

    ``couple`` (…, 3) in N m is added: M = r x F + couple.
    """
    F = np.asarray(force, dtype=float)
    M = np.cross(np.asarray(at, dtype=float), F) + np.asarray(couple, dtype=float)
    shape = np.broadcast_shapes(F.shape, M.shape)
    return np.concatenate([np.broadcast_to(F, shape), np.broadcast_to(M, shape)], axis=-1)


def about(wrenches: Array, point: Array) -> Array:
    """Return wrenches (…, 6) about the origin as they are about another ``point`` (…, 3) in m."""
    F = wrenches[..., :3]
    M = wrenches[..., 3:] - np.cross(np.broadcast_to(point, F.shape), F)
    return np.concatenate([F, M], axis=-1)


def motion_rows(directions: Array, points: Array, origins: Array) -> Array:
    """Return the rows (n, 6) by which a rigid body's motion about ``origins`` moves ``points``.

    Each is (d, (p - o) x d): the motion (u, turn) of a body moves its point p along the unit vector
    d by row . motion; transposed, a force along d at p has that wrench about o.
    """
    arm = np.cross(points - origins, directions)
    return np.concatenate([directions, arm], axis=-1)


def moved(offsets: Array) -> Array:
    """Return the matrices (…, 6, 6) from a body's motion to that of a point ``offsets`` (…, 3) off.

    u = u0 + turn x r, turn alike; transposed it brings a wrench at the point to the body's own.
    """
    r = np.asarray(offsets, dtype=float)
    T = np.zeros((*r.shape[:-1], 6, 6))
    T[..., range(6), range(6)] = 1.0
    x, y, z = r[..., 0], r[..., 1], r[..., 2]
    T[..., 0, 4], T[..., 0, 5] = z, -y
    T[..., 1, 3], T[..., 1, 5] = -z, x
    T[..., 2, 3], T[..., 2, 4] = y, -x
    return T
