"""How one joint shares a wrench among its fasteners and the bed on which it presses.

Both sides are rigid there. A motion (6,) is sought for every load case at once that makes the
strain energy of springs and bed, less the work of the load, least: a convex, piecewise quadratic
function, so that Newton's method ends in the one answer, going each time to where it is least.
"""

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array
from ..units.frozen import ByIdentity

_ROUNDS = 60
_FREE = 1.0e-13
"""Share of the stiffness put on every motion; what is then not in balance was not held."""

_UNHELD = 1.0e-5


class Shared(ByIdentity, frozen=True):
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
    d, e = np.zeros_like(w), np.zeros_like(k)
    todo = np.arange(len(w))
    for _ in range(_ROUNDS):
        here = _Here(k[todo], one_way, w[todo], free[todo], d[todo], e[todo])
        H = (here.acts @ products).reshape(-1, 6, 6) + here.free[:, None, None] * np.eye(6)
        best = np.asarray(np.linalg.solve(H, here.w[..., None])[..., 0], dtype=np.float64)
        step = best - here.d
        stretch = step @ B.T
        # where the whole step opens and closes nothing it ends where the energy is least
        far = np.ones(len(todo))
        turns = ~here.stays(here.e + stretch)
        if turns.any():
            far[turns] = here.some(turns).least_along(step[turns], stretch[turns])
        d[todo] += far[:, None] * step
        now = here.e + far[:, None] * stretch
        e[todo] = now
        todo = todo[np.logical_not((far == 1.0) & here.stays(now))]
        if not len(todo):
            break
    e = d @ B.T
    force = np.where(one_way & (e > 0.0), 0.0, k * e)
    left = np.linalg.norm(w - force @ B, axis=1)
    return Shared(force, left > _UNHELD * np.maximum(np.linalg.norm(w, axis=1), 1.0e-12))


class _Here(ByIdentity, frozen=True):
    """Cases (m,) on their way: loads ``w`` and motions ``d`` (m, 6), stretches ``e`` (m, n)."""

    k: Array
    one_way: NDArray[np.bool_]
    w: Array
    free: Array
    d: Array
    e: Array

    @property
    def acts(self) -> Array:
        """Return the stiffness (m, n) of the springs that act."""
        return np.where(self.one_way & (self.e > 0.0), 0.0, self.k)

    def stays(self, e: Array) -> NDArray[np.bool_]:
        """Return in which cases (m,) the same springs act at stretches ``e`` (m, n) as here."""
        same: NDArray[np.bool_] = ((e > 0.0) == (self.e > 0.0)) | ~self.one_way
        return np.asarray(same.all(axis=1))

    def some(self, which: NDArray[np.bool_]) -> "_Here":
        """Return some of the cases."""
        of = (self.w[which], self.free[which], self.d[which], self.e[which])
        return _Here(self.k[which], self.one_way, *of)

    def least_along(self, step: Array, stretch: Array) -> Array:
        """Return how far (m,) to go along a step to where the energy is least on that way.

        The slope of the energy is a line that only rises, and bends where a spring opens or
        closes: it is followed from bend to bend to where it is level.
        """
        open_ = self.one_way & ((self.e > 0.0) | ((self.e == 0.0) & (stretch > 0.0)))
        slope = np.where(open_, 0.0, self.k * self.e * stretch).sum(axis=1)
        slope += ((self.free[:, None] * self.d - self.w) * step).sum(axis=1)
        bent, least = self.k * stretch**2, self.free * (step**2).sum(axis=1)
        rise = np.where(open_, 0.0, bent).sum(axis=1) + least
        at = np.where(stretch != 0.0, -self.e / np.where(stretch != 0.0, stretch, 1.0), 0.0)
        bends = self.one_way & (at > 0.0)
        at = np.where(bends, at, at.max(axis=1, initial=0.0, where=bends)[:, None])
        change = np.where(bends, np.where(open_, bent, -bent), 0.0)
        order = np.argsort(at, axis=1)
        begin = np.insert(np.take_along_axis(at, order, axis=1), 0, 0.0, axis=1)
        more = np.cumsum(np.take_along_axis(change, order, axis=1), axis=1)
        rise = np.maximum(np.insert(more, 0, 0.0, axis=1) + rise[:, None], least[:, None])
        slopes = np.cumsum(rise[:, :-1] * np.diff(begin, axis=1), axis=1) + slope[:, None]
        slopes = np.insert(slopes, 0, slope, axis=1)
        last = np.maximum((slopes < 0.0).sum(axis=1) - 1, 0)
        m = np.arange(len(last))
        return np.asarray(begin[m, last] - slopes[m, last] / rise[m, last], dtype=np.float64)
