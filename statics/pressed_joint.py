"""How one joint shares a wrench among its fasteners and the bed on which it presses.

Both sides are rigid there. A motion (6,) is sought for every load case at once that makes the
strain energy of springs and bed, less the work of the load, least: a convex, piecewise quadratic
function, so that Newton's method with a line search ends in the one answer.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ..design.shapes.shape import Array

_ROUNDS = 60
_FREE = 1.0e-13
"""Share of the stiffness put on every motion; what is then not in balance was not held."""

_UNHELD = 1.0e-5


@dataclass(frozen=True, eq=False)
class Shared:
    """The force (cases, n) in N in every spring, drawn above 0, and which cases nothing holds."""

    force: Array
    lost: NDArray[np.bool_]


def share(
    rows: Array, stiffness: Array, one_way: NDArray[np.bool_], wrenches: Array, size: float
) -> Shared:
    """Return how springs share ``wrenches`` (cases, 6) in N and N m about the rows' own origin.

    ``rows`` (n, 6) tell how a motion stretches each, ``stiffness`` (n,) or (cases, n) in N/m;
    those ``one_way`` (n,) only press. ``size`` in m brings turns and moves to one scale. Cases in
    which part of a wrench is not held, such as a twist by a single screw, are lost.
    """
    scale = np.array([1.0, 1.0, 1.0, size, size, size])
    B = rows / scale
    w = wrenches / scale
    k = np.broadcast_to(stiffness, (len(w), len(B)))
    products = (B[:, :, None] * B[:, None, :]).reshape(len(B), 36)
    free = _FREE * k.max(axis=1, initial=0.0)
    d = np.zeros_like(w)
    todo = np.arange(len(w))
    for _ in range(_ROUNDS):
        mine, load = k[todo], w[todo]
        e = d[todo] @ B.T
        acts = np.where(one_way & (e > 0.0), 0.0, mine)
        H = (acts @ products).reshape(-1, 6, 6) + free[todo, None, None] * np.eye(6)
        best = np.asarray(np.linalg.solve(H, load[..., None])[..., 0], dtype=np.float64)
        step = best - d[todo]
        far = _least_along(B, mine, one_way, load, free[todo], d[todo], step)
        d[todo] += far[:, None] * step
        now = d[todo] @ B.T
        same = ((now > 0.0) == (e > 0.0)) | ~one_way
        settled = (far == 1.0) & same.all(axis=1)
        todo = todo[np.logical_not(settled)]
        if not len(todo):
            break
    e = d @ B.T
    force = np.where(one_way & (e > 0.0), 0.0, k * e)
    left = np.linalg.norm(w - force @ B, axis=1)
    return Shared(force, left > _UNHELD * np.maximum(np.linalg.norm(w, axis=1), 1.0e-12))


def _least_along(
    B: Array,
    k: Array,
    one_way: NDArray[np.bool_],
    w: Array,
    free: Array,
    d: Array,
    step: Array,
) -> Array:
    """Return how far (cases,) to go along a step: all of it, or by halves until energy falls."""

    def energy(at: Array) -> Array:
        e = at @ B.T
        held = np.where(one_way & (e > 0.0), 0.0, k) * e**2
        return 0.5 * held.sum(axis=1) + 0.5 * free * (at**2).sum(axis=1) - (w * at).sum(axis=1)

    far = np.ones(len(d))
    before = energy(d)
    last_digits = np.abs(before) * 1.0e-12
    for _ in range(30):
        worse = energy(d + far[:, None] * step) > before + last_digits
        if not worse.any():
            break
        far = np.where(worse, far / 2.0, far)
    return far
