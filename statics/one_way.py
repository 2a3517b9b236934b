"""What only presses: which springs close and which open, for many load cases at once.

With all of them closed the elastic answer is linear. A spring that is drawn there opens: a release
z >= 0 of its stretch such that its force is nothing. With D the stiffness of the springs that only
press and S how far each is stretched by unit forces at the others, D z, pressing and their product:
w = q + M z >= 0, z >= 0, w z = 0, M = D - D S D, q = -D e0: a linear complementarity problem, M
symmetric and not negative. Scaled by D it is of shares of stiffness: M = 1 - sqrt(D) S sqrt(D).
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array, Mask
from ..units.frozen import ByIdentity

SWEEPS = 60
"""Of exchanging all that is wrong; then the one of least number alone, which cannot go round."""

_PATIENCE = 5
_ZERO = 1.0e-11
_LOST = 1.0e-9
"""Springs that are open are a mechanism where less than this share of their stiffness is left."""


class Settled(ByIdentity, frozen=True):
    """Which springs are ``open`` (cases, n), and their release ``z`` (cases, n).

    ``lost`` (cases,) have no equilibrium: what presses cannot hold them.
    """

    open: Mask
    z: Array
    lost: Mask


def settle(M: Array, q: Array, start: Mask | None = None) -> Settled:
    """Return the solution of w = q + M z, w >= 0, z >= 0, w z = 0 for cases q (cases, n).

    ``M`` (n, n) symmetric and positive semidefinite, 1 at most. ``start`` (cases, n) are springs
    thought to be open, q < 0 unless given. Cases with the same open springs are worked together.
    Source: block principal pivoting (Judice & Pires 1994), with least-index pivots (Murty 1974)
    where it goes round; where it meets a mechanism on its way, one spring at a time (Lawson &
    Hanson 1974), which tells a mechanism that cannot be left: M d = 0, d >= 0, q d < 0.
    """
    cases, n = q.shape
    size = np.maximum(np.abs(q).max(axis=1, initial=0.0), 1.0e-300)[:, None]
    b = q / size
    F = (b < -_ZERO) if start is None else start.copy()
    y, lost = np.zeros((cases, n)), np.zeros(cases, dtype=bool)
    todo: NDArray[np.intp] = np.arange(cases if n else 0, dtype=np.intp)
    hard: list[int] = []
    best, left = np.full(cases, n + 1), np.full(cases, _PATIENCE)
    for _ in range(SWEEPS + 4 * n):
        if not len(todo):
            break
        for group in _alike(F, todo):
            found = _open(M, b[group], F[group[0]])
            if found is None:
                hard += group.tolist()
            else:
                y[group] = found
        todo = todo[np.isin(todo, hard, invert=True)]
        w = b[todo] + y[todo] @ M
        wrong = np.where(F[todo], y[todo] < -_ZERO, w < -_ZERO)
        count = wrong.sum(axis=1)
        still = count > 0
        todo, wrong, count = todo[still], wrong[still], count[still]
        fewer = count < best[todo]
        best[todo] = np.minimum(best[todo], count)
        left[todo] = np.where(fewer, _PATIENCE, left[todo] - 1)
        least = wrong & (np.cumsum(wrong, axis=1) == 1)
        F[todo] ^= np.where((left[todo] >= 0)[:, None], wrong, least)
    for case in [*hard, *todo.tolist()]:
        y[case], lost[case] = _one_at_a_time(M, b[case])
        F[case] = y[case] > 0.0
    return Settled(F & ~lost[:, None], np.maximum(y, 0.0) * size, lost)


def _alike(F: Mask, todo: NDArray[np.intp]) -> Iterator[NDArray[np.intp]]:
    """Yield the cases that have the same open springs, together."""
    packed = np.packbits(F[todo], axis=1)
    _, which = np.unique(packed, axis=0, return_inverse=True)
    which = which.reshape(-1)
    order = np.argsort(which, kind="stable")
    starts = np.flatnonzero(np.r_[True, np.diff(which[order]) > 0])
    for part in np.split(order, starts[1:]):
        yield todo[part]


def _open(M: Array, b: Array, which: Mask) -> Array | None:
    """Return the release (k, n) of the open springs; None where nothing holds what they leave."""
    y = np.zeros_like(b)
    f = np.flatnonzero(which)
    if not len(f):
        return y
    own = M[f][:, f]  # as `numpy.ix_`, five times sooner
    try:
        L = np.linalg.cholesky(own)
    except np.linalg.LinAlgError:
        return None
    if np.diag(L).min() ** 2 < _LOST:
        return None
    y[:, f] = np.linalg.solve(own, -b[:, f].T).T
    return y


def _one_at_a_time(M: Array, b: Array) -> tuple[Array, bool]:
    """Return the release (n,) of one case, and whether it has none: opened one by one."""
    n = len(b)
    y, F = np.zeros(n), np.zeros(n, dtype=bool)
    for _ in range(30 * n + 30):
        w = np.where(F, 0.0, b + M @ y)
        j = int(w.argmin())
        if w[j] >= -_ZERO:
            return y, False
        F[j] = True
        while True:
            f = np.flatnonzero(F)
            values, ways = np.linalg.eigh(M[np.ix_(f, f)])
            if values[0] < _LOST:  # nothing resists this motion: as far along it as z >= 0 goes
                step = ways[:, 0] * -np.sign(b[f] @ ways[:, 0] or 1.0)
                if (step >= -1.0e-7).all():
                    return np.zeros(n), True
                far = np.inf
            else:
                step = ways @ ((ways.T @ -b[f]) / values) - y[f]
                far = 1.0
            falls = step < -1.0e-14
            room = np.where(falls, y[f] / np.where(falls, -step, 1.0), np.inf)
            reach = min(far, float(room.min(initial=np.inf)))
            y[f] = np.maximum(y[f] + reach * step, 0.0)
            if reach == far:
                break
            F[f[falls & (room <= reach)]] = False
            y[~F] = 0.0
            if not F.any():
                break
    return y, False
