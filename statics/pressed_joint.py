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
    always = (k[:, ~one_way] @ products[~one_way]).reshape(-1, 6, 6)
    always += free[:, None, None] * np.eye(6)
    bed = _Bed(B[one_way], products[one_way], k[:, one_way])
    d = bed.held(always, w)
    e = d @ B.T
    force = np.where(one_way & (e > 0.0), 0.0, k * e)
    left = np.linalg.norm(w - force @ B, axis=1)
    return Shared(force, left > _UNHELD * np.maximum(np.linalg.norm(w, axis=1), 1.0e-12))


class _Bed(ByIdentity, frozen=True):
    """Springs that only press: their ``rows`` (n, 6), the ``products`` (n, 36) of these, and k.

    ``k`` (cases, n) in N/m.
    """

    rows: Array
    products: Array
    k: Array

    def held(self, always: Array, w: Array) -> Array:
        """Return the motion (cases, 6) of least energy of loads, ``always`` (cases, 6, 6) held."""
        d, e = np.zeros_like(w), np.zeros_like(self.k)
        todo = np.arange(len(w))
        for _ in range(_ROUNDS):
            K, load, k, here = always[todo], w[todo], self.k[todo], e[todo]
            presses = here <= 0.0
            H = K + ((k * presses) @ self.products).reshape(-1, 6, 6)
            best = np.asarray(np.linalg.solve(H, load[..., None])[..., 0], dtype=np.float64)
            there = best @ self.rows.T
            turns = ((there <= 0.0) != presses).any(axis=1)
            if turns.any():
                of = todo[turns]
                step, stretch = best[turns] - d[of], there[turns] - here[turns]
                pull = np.einsum("mij,mj->mi", K[turns], d[of]) - load[turns]
                bent = np.einsum("mi,mij,mj->m", step, K[turns], step)
                far = _least_along((pull * step).sum(axis=1), bent, k[turns], here[turns], stretch)[
                    :, None
                ]
                best[turns] = d[of] + far * step
                there[turns] = here[turns] + far * stretch
            d[todo], e[todo] = best, there
            todo = todo[turns]
            if not len(todo):
                break
        return d


def _least_along(slope: Array, rise: Array, k: Array, e: Array, stretch: Array) -> Array:
    """Return how far (m,) to go along a step to where the energy is least on that way.

    The slope of the energy is a line that only rises, and bends where a spring (m, n) opens or
    closes: it is followed from bend to bend to where it is level. ``slope`` and ``rise`` (m,) are
    those of all that never opens.
    """
    presses = (e < 0.0) | ((e == 0.0) & (stretch <= 0.0))
    bent = k * stretch**2
    m = np.arange(len(e))[:, None]
    at = np.where(stretch != 0.0, -e / np.where(stretch != 0.0, stretch, 1.0), 0.0)
    bends = at > 0.0
    at = np.where(bends, at, at.max(axis=1, initial=0.0)[:, None])
    order = np.argsort(at, axis=1)
    change = np.where(bends, np.where(presses, -bent, bent), 0.0)[m, order]
    begin, rises = np.zeros((2, len(e), e.shape[1] + 1))
    begin[:, 1:] = at[m, order]
    rises[:, 0] = (bent * presses).sum(axis=1)
    rises[:, 1:] = rises[:, :1] + np.cumsum(change, axis=1)
    rises = np.maximum(rises, 0.0) + rise[:, None]
    slopes = np.empty_like(begin)
    slopes[:, 0] = slope + (k * e * stretch * presses).sum(axis=1)
    slopes[:, 1:] = slopes[:, :1] + np.cumsum(rises[:, :-1] * np.diff(begin, axis=1), axis=1)
    last = np.maximum((slopes < 0.0).sum(axis=1) - 1, 0)[:, None]
    far = begin[m, last] - slopes[m, last] / rises[m, last]
    return np.asarray(far[:, 0], dtype=np.float64)
