"""Friction on the ground under a force that may also turn the piece."""

import numpy as np

from ...units.arrays import Array

_ROUNDS = 60
_SETTLED = 1.0e-7
_BLOCK = 64
"""Rows of a tall product that are taken at once: so few are not shared among threads, which on
slender products costs a hundred times what it saves."""


def sliding_resistance(
    points: Array, shares: Array, along: Array, arm: Array, even: bool = True
) -> Array:
    """Return the level force (M,) at which friction yields, per unit of pressing force.

    ``points`` (P, 2) in m from the contact's centre carry ``shares`` (P,): coefficient of friction
    times their fraction of the pressing force, taken as even over the contact. The force acts
    along unit vectors ``along`` (M, 2), its twist over its size being ``arm`` (M,) in m, positive
    counter-clockwise. ``even`` tells that friction is the same all over, so that a force through
    the centre turns nothing; no force at all is taken as such a one.

    By the upper-bound theorem for rigid sliding the resistance is the least, over all centres of
    rotation, of the friction's work over the force's own: minimise sum(shares |v + w J x|) with
    along.v + arm w = 1 (Prager & Hodge 1951, limit theorems; applied to friction of a flat face).
    Found by re-weighted least squares, from pure translation.
    """
    straight = float(shares.sum())
    result = np.full(len(arm), straight)
    scale = float(np.sqrt((points**2).sum(axis=1).max()))
    if scale <= 0.0:  # all friction in one point: nothing there resists a twist
        return np.where(arm == 0.0, straight, 0.0)
    turning = (np.abs(arm) > 1.0e-9 * scale) | (not even)
    turning &= (along != 0.0).any(axis=1) | (arm != 0.0)
    if not turning.any():
        return result
    load = np.column_stack([along[turning], arm[turning] / scale])
    x, y = points[:, 0] / scale, points[:, 1] / scale
    zero, one = np.zeros_like(x), np.ones_like(x)
    motion: Array = np.concatenate([np.stack([one, zero, -y]), np.stack([zero, one, x])], axis=1)
    across, away = motion[:, : len(x)], motion[:, len(x) :]
    products: Array = (
        np.einsum("jp,kp->pjk", across, across) + np.einsum("jp,kp->pjk", away, away)
    ).reshape(len(x), 9)
    rate: Array = load / (load**2).sum(axis=1)[:, None]
    found: Array = np.full(len(load), np.inf)
    todo = np.arange(len(load))
    for _ in range(_ROUNDS):
        speed = np.hypot(rate @ across, rate @ away)
        now = speed @ shares
        moves = np.abs(found[todo] - now) > _SETTLED * now
        found[todo] = now
        todo, speed = todo[moves], speed[moves]
        if not len(todo):
            break
        weight = shares / np.sqrt(speed**2 + 1.0e-16)
        form = _in_blocks(weight, products).reshape(-1, 3, 3)
        mine = load[todo]
        solved = np.linalg.solve(form, mine[:, :, None])[:, :, 0].astype(np.float64)
        rate = solved / np.einsum("mj,mj->m", mine, solved)[:, None]
    result[turning] = np.minimum(found, straight)
    return result


def _in_blocks(tall: Array, slender: Array) -> Array:
    """Return the product of (M, P) and (P, k), some rows at a time."""
    starts = range(0, len(tall), _BLOCK)
    return np.concatenate([tall[i : i + _BLOCK] @ slender for i in starts])
