"""A strip as a beam of several spans with cantilevers, solved exactly for many loads at once."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ...loads.printed.ranges import positive
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class Bent(ByIdentity, frozen=True):
    """What loads (…) do to a strip of n elements, held at k of its n + 1 nodes.

    ``moment`` (…, n, 3) in N m at the start of each element, at its greatest within, at its end;
    ``shear`` (…, n, 2) in N at its ends; ``held`` (…, k) in N, what each support gives;
    ``moved`` (…, n + 1) in m, the way that the loads act. Moments and shear have signs.
    """

    moment: Array
    shear: Array
    held: Array
    moved: Array


def bend(
    at: ArrayLike,
    stiffness: ArrayLike,
    held: NDArray[np.bool_],
    line: ArrayLike,
    force: ArrayLike,
    couple: ArrayLike = 0.0,
    *,
    fast: bool = False,
) -> Bent:
    """Return how a strip bends that is held at some of its nodes, under loads (…).

    ``at`` (n + 1,) in m along it, ascending; ``stiffness`` E I (n,) in N m2; ``held`` (n + 1,)
    tells where it rests, both ways; ``line`` (…, n) in N/m, ``force`` (…, n + 1) in N and
    ``couple`` (…, n + 1) in N m. ``fast``: its start may not turn either. ValueError where nodes
    do not ascend, stiffness is not above 0, or what holds it leaves it free to turn.
    Source: E I w'' = M summed twice (Macaulay), exact for even loads between nodes.
    """
    x, EI = np.asarray(at, dtype=float), positive("stiffness", stiffness)
    h = positive("length of an element", np.diff(x))
    if int(held.sum()) + int(fast) < 2:
        raise ValueError("held: a strip rests on two places, or is held fast at its start")
    q, forces, couples = (np.asarray(each, dtype=float) for each in (line, force, couple))
    shape = np.broadcast_shapes(q.shape[:-1], forces.shape[:-1], couples.shape[:-1])
    length, stiff = x[-1] - x[0], float(EI.max())
    supports, unit = np.flatnonzero(held), np.eye(x.size)
    turning = unit[:1] if fast else unit[:0]
    k, u = supports.size, supports.size + len(turning)
    # loads first, then a force of 1 at each support and, where held fast, a couple of 1
    q = np.vstack([_rows(q, (*shape, h.size)) * length, np.zeros((u, h.size))])
    F = np.vstack([_rows(forces, (*shape, x.size)), unit[supports], 0.0 * turning])
    C = np.vstack([_rows(couples, (*shape, x.size)) / length, 0.0 * unit[supports], turning])
    shears, moments, moved = _from_the_start(h / length, EI / stiff, q, F, C)
    cases, place = len(F) - u, (x - x[0]) / length
    # each support keeps its place, and behind the end there is neither force nor moment
    rows = [*moved[:, supports].T, shears[:, -1, 1] + F[:, -1], moments[:, -1, 2] - C[:, -1]]
    rows += [np.zeros(len(F))] * len(turning)
    system = np.zeros((u + 2, u + 2))
    system[:, :u] = np.array(rows)[:, cases:]
    system[:k, u], system[:k, u + 1] = 1.0, place[supports]
    system[k + 2 :, u + 1] = 1.0
    found = np.asarray(np.linalg.solve(system, -np.array(rows)[:, :cases]), dtype=float).T
    V, M, w = (
        part[:cases] + np.tensordot(found[:, :u], part[cases:], 1)
        for part in (shears, moments, moved)
    )
    w = w + found[:, u, None] + found[:, u + 1, None] * place
    # between its ends the moment is greatest where there is no shear
    begin, end = V[..., 0], V[..., 1]
    turns = begin * end < 0.0
    peak = M[..., 0] - begin**2 / np.where(turns, 2.0 * q[:cases], np.inf)
    within = np.stack([M[..., 0], peak, M[..., 2]], axis=-1)

    def of(part: Array) -> Array:
        return part.reshape(*shape, *part.shape[1:])

    return Bent(of(within * length), of(V), of(found[:, :k]), of(w * length**3 / stiff))


def _rows(part: Array, shape: tuple[int, ...]) -> Array:
    return np.broadcast_to(part, shape).reshape(-1, shape[-1])


def _from_the_start(h: Array, EI: Array, q: Array, F: Array, C: Array) -> tuple[Array, ...]:
    """Return shear (…, n, 2), moment (…, n, 3) and how far it moves (…, n + 1).

    Of a strip that is held nowhere and lies still at its start; the moments at the start, middle
    and end of each element.
    """
    start = np.cumsum(F, axis=-1)[..., :-1] + _before(q * h)
    V = np.stack([start, start + q * h], axis=-1)
    M0 = _before(start * h + q * h**2 / 2.0) - np.cumsum(C, axis=-1)[..., :-1]
    M1, M2 = M0 + start * h / 2.0 + q * h**2 / 8.0, M0 + start * h + q * h**2 / 2.0
    slope = _before((M0 + 4.0 * M1 + M2) * h / (6.0 * EI))
    moved = np.cumsum(slope * h + (M0 + 2.0 * M1) * h**2 / (6.0 * EI), axis=-1)
    return V, np.stack([M0, M1, M2], axis=-1), np.insert(moved, 0, 0.0, axis=-1)


def _before(part: Array) -> Array:
    """Return the sum (…, n) of all that stands before each."""
    return np.cumsum(part, axis=-1) - part
