"""A symmetric matrix as a chain of blocks, each of which touches only its neighbours.

Pieces are put in order by how many steps they lie from one at the end of the whole: what touches is
then in the same step or the next. The steps of a frame are short, so that solving it costs a small
part of what its whole matrix would. Source: level sets (Cuthill & McKee 1969), block elimination.
"""

from collections.abc import Sequence

import numpy as np

from ..units.arrays import Array, Integers
from ..units.frozen import ByIdentity

_MOST = 24
"""Steps are joined to one block up to so many pieces: small products cost more than they save."""


class Chain(ByIdentity, frozen=True):
    """The blocks on the diagonal (…, b, b), and those from each to the next (…, b, c)."""

    square: Sequence[Array]
    beside: Sequence[Array]

    def solved(self, right: Array) -> tuple[Array, float]:
        """Return the solution (…, n, m) for ``right`` (…, n, m), and the least pivot met in any.

        Pivots are those of Cholesky's elimination. LinAlgError where one is not above 0.
        """
        ends = np.cumsum([one.shape[-1] for one in self.square])
        sides = np.split(right, ends[:-1], axis=-2)
        least = np.inf
        gains: list[Array] = []
        found: list[Array] = []
        own, r = self.square[0], sides[0]
        for i, after in enumerate([*self.beside, None]):
            pivots = np.diagonal(np.linalg.cholesky(own), axis1=-2, axis2=-1)
            least = min(least, float(pivots.min()) ** 2)
            both = r if after is None else np.concatenate([after, r], axis=-1)
            x = np.asarray(np.linalg.solve(own, both), dtype=np.float64)
            if after is None:
                found.append(x)
                break
            gain, x = x[..., : after.shape[-1]], x[..., after.shape[-1] :]
            gains.append(gain)
            found.append(x)
            across = np.swapaxes(after, -1, -2)
            own = self.square[i + 1] - across @ gain
            r = sides[i + 1] - across @ x
        for i in reversed(range(len(gains))):
            found[i] = found[i] - gains[i] @ found[i + 1]
        return np.concatenate(found, axis=-2), least

    def whole(self) -> Array:
        """Return the matrix (…, n, n)."""
        ends = np.cumsum([0, *(one.shape[-1] for one in self.square)])
        K = np.zeros((*self.square[0].shape[:-2], ends[-1], ends[-1]))
        for i, one in enumerate(self.square):
            K[..., ends[i] : ends[i + 1], ends[i] : ends[i + 1]] = one
        for i, one in enumerate(self.beside):
            K[..., ends[i] : ends[i + 1], ends[i + 1] : ends[i + 2]] = one
            K[..., ends[i + 1] : ends[i + 2], ends[i] : ends[i + 1]] = np.swapaxes(one, -1, -2)
        return K


def chain_blocks(count: int, pairs: Integers) -> list[Integers]:
    """Return the pieces 0 … ``count`` in blocks of which each touches only the next.

    ``pairs`` (k, 2) are the pieces that touch.
    """
    touch: list[set[int]] = [set() for _ in range(count)]
    a: int
    b: int
    for a, b in pairs.tolist():
        touch[a].add(b)
        touch[b].add(a)
    found: list[list[int]] = []
    left = set(range(count))
    while left:
        far = _steps(touch, min(left))[-1]
        steps = _steps(touch, min(far, key=lambda k: len(touch[k])))
        left -= {k for step in steps for k in step}
        found += steps
    joined: list[list[int]] = [found[0]]
    for step in found[1:]:
        if len(joined[-1]) + len(step) <= _MOST:
            joined[-1] = joined[-1] + step
        else:
            joined.append(step)
    return [np.array(sorted(one), dtype=np.intp) for one in joined]


def _steps(touch: Sequence[set[int]], start: int) -> list[list[int]]:
    """Return the pieces by how many steps they lie from a first one, as far as it is joined."""
    seen, step = {start}, [start]
    found: list[list[int]] = []
    while step:
        found.append(step)
        step = sorted({j for i in step for j in touch[i]} - seen)
        seen.update(step)
    return found
