"""Friction on the ground under a force that may also turn the piece."""

import numpy as np

from ..design.shapes.shape import Array

_ROUNDS = 40


def sliding_resistance(
    points: Array, shares: Array, along: Array, arm: Array, even: bool = True
) -> Array:
    """Return the level force (M,) at which friction yields, per unit of pressing force.

    ``points`` (P, 2) in m from the contact's centre carry ``shares`` (P,): coefficient of friction
    times their fraction of the pressing force, taken as even over the contact. The force acts
    along unit vectors ``along`` (M, 2), its twist over its size being ``arm`` (M,) in m, positive
    counter-clockwise. ``even`` tells that friction is the same all over, so that a force through
    the centre turns nothing.

    By the upper-bound theorem for rigid sliding the resistance is the least, over all centres of
    rotation, of the friction's work over the force's own: minimise sum(shares |v + w J x|) with
    along.v + arm w = 1 (Prager & Hodge 1951, limit theorems; applied to friction of a flat face).
    Found by re-weighted least squares, from pure translation.
    """
    straight = float(shares.sum())
    result = np.full(len(arm), straight)
    scale = float(np.sqrt((points**2).sum(axis=1).max()))
    turning = (np.abs(arm) > 1.0e-9 * scale) | (not even)
    if not turning.any():
        return result
    load = np.column_stack([along[turning], arm[turning] / scale])
    x, y = points[:, 0] / scale, points[:, 1] / scale
    zero, one = np.zeros_like(x), np.ones_like(x)
    motion: Array = np.stack(
        [np.stack([one, zero, -y], axis=1), np.stack([zero, one, x], axis=1)], axis=1
    )
    rate: Array = load / (load**2).sum(axis=1)[:, None]
    for _ in range(_ROUNDS):
        speed = np.sqrt((np.einsum("pij,mj->mpi", motion, rate) ** 2).sum(axis=2) + 1.0e-16)
        weight = shares / speed
        form: Array = np.einsum("mp,pij,pik->mjk", weight, motion, motion, optimize=True)
        solved = np.linalg.solve(form, load[:, :, None])[:, :, 0].astype(np.float64)
        rate = solved / np.einsum("mj,mj->m", load, solved)[:, None]
    speed = np.sqrt((np.einsum("pij,mj->mpi", motion, rate) ** 2).sum(axis=2))
    result[turning] = np.minimum(speed @ shares, straight)
    return result
