"""A straight piece on its supports: bending and shear along it from loads at points of it.

Moments are those of what lies beyond a cut, toward the piece's end; loads push square to it.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike

from ...design.shapes.shape import Array

_BESIDE = 1.0e-9
"""So far in m beside a support a couple on it is taken to stand."""


@dataclass(frozen=True, eq=False)
class Along:
    """Moment (…, x) in N m and shear (…, x) in N at cuts, the greatest of all ways to carry."""

    moment: Array
    shear: Array


def cantilever(load: ArrayLike, turn: ArrayLike, at: ArrayLike, cuts: ArrayLike) -> Along:
    """Return moments and shears of what lies beyond each cut, toward the free end.

    Forces ``load`` (…, k) in N and couples ``turn`` (…, k) in N m stand ``at`` (k,) in m; ``cuts``
    (x,) in m. M = sum F (s - x) + C, V = sum F, of all with s > x. Source: statics.
    """
    F, C = np.asarray(load, dtype=float), np.asarray(turn, dtype=float)
    s, x = np.asarray(at, dtype=float), np.asarray(cuts, dtype=float)
    order = np.argsort(s, kind="stable")
    beyond = np.searchsorted(s[order], x, side="right")
    f, c, u = F[..., order], C[..., order], s[order]
    pushed = _from_end(f)[..., beyond]
    return Along(_from_end(f * u + c)[..., beyond] - pushed * x, pushed)


def over_supports(
    load: ArrayLike, turn: ArrayLike, at: ArrayLike, supports: ArrayLike, cuts: ArrayLike
) -> tuple[Along, Along]:
    """Return moments and shears between and beside two supports or more, carried in two ways.

    The first: each span by itself, as if the piece were cut over its inner supports. The second:
    in one piece over supports that do not yield, by the equation of three moments. Either may be
    the greater; which is nearer the truth depends on how the supports give. ``supports`` (n,) in
    m, ascending; the others as ``cantilever``. Beyond the outer ones it stands out freely.
    ValueError with fewer than two supports.
    Source: statics; Clapeyron's theorem of three moments.
    """
    F, C = np.asarray(load, dtype=float), np.asarray(turn, dtype=float)
    s, x = np.asarray(at, dtype=float), np.asarray(cuts, dtype=float)
    p = np.asarray(supports, dtype=float)
    if len(p) < 2:
        raise ValueError(f"supports: found {len(p)}, expected 2 or more")
    ends = _at_ends(F, C, s, p)
    apart = np.concatenate([ends[0], np.zeros((*F.shape[:-1], len(p) - 2)), ends[1]], axis=-1)
    joined = np.concatenate([ends[0], _over_inner(F, C, s, p, ends), ends[1]], axis=-1)
    return _between(F, C, s, p, x, apart), _between(F, C, s, p, x, joined)


def reactions(
    load: ArrayLike, turn: ArrayLike, at: ArrayLike, supports: ArrayLike
) -> tuple[Array, Array]:
    """Return what loads leave each support (…, n) in N, in the two ways of ``over_supports``.

    Positive where it is pushed as loads push; they balance the loads. A load that stands on a
    support goes into it, and a couple there turns the span next to it. Arguments and errors as
    ``over_supports``. Source: statics; Clapeyron's theorem of three moments.
    """
    F, C = np.asarray(load, dtype=float), np.asarray(turn, dtype=float)
    s, p = np.asarray(at, dtype=float), np.asarray(supports, dtype=float)
    if len(p) < 2:
        raise ValueError(f"supports: found {len(p)}, expected 2 or more")
    within = np.where(np.isin(s, p), np.where(s < p[-1], _BESIDE, -_BESIDE), 0.0)
    # forces where they stand, couples beside supports
    return _reactions(
        np.concatenate([F, 0.0 * C], axis=-1),
        np.concatenate([0.0 * F, C], axis=-1),
        np.concatenate([s, s + within]),
        p,
    )


def bent(moment: ArrayLike, cuts: ArrayLike, stiffness: float, held: ArrayLike) -> float:
    """Return how far in m a piece moves at most from the line that its supports keep.

    ``moment`` (x,) in N m at ``cuts`` (x,) in m, ascending; ``stiffness`` E I in N m2. ``held``:
    one or two places in m; at one it neither moves nor turns, at two it does not move.
    Source: statics, y'' = M/(E I) summed by trapezoids.
    """
    M, x = np.asarray(moment, dtype=float), np.asarray(cuts, dtype=float)
    at = np.asarray(held, dtype=float)
    step = np.diff(x)
    slope = np.concatenate([[0.0], np.cumsum((M[1:] + M[:-1]) / 2.0 * step)]) / stiffness
    moved = np.concatenate([[0.0], np.cumsum((slope[1:] + slope[:-1]) / 2.0 * step)])
    if len(at) == 1:
        there, turned = (np.interp(at, x, one)[0] for one in (moved, slope))
        line = there + turned * (x - at[0])
    else:
        low, high = np.interp(at, x, moved)
        line = low + (high - low) * (x - at[0]) / (at[1] - at[0])
    return float(np.abs(moved - line).max())


def _at_ends(F: Array, C: Array, s: Array, p: Array) -> tuple[Array, Array]:
    """Return the moments (…, 1) over the first and last support, from what stands out there."""
    before, after = s < p[0], s > p[-1]
    first = F @ np.where(before, p[0] - s, 0.0) - C @ before
    last = F @ np.where(after, s - p[-1], 0.0) + C @ after
    return first[..., None], last[..., None]


def _over_inner(F: Array, C: Array, s: Array, p: Array, ends: tuple[Array, Array]) -> Array:
    """Return the moments (…, n - 2) over the inner supports of a piece in one.

    Over each the piece does not kink: what the moments of the span before turn its end by, times
    E I, and those of the span after its start, add up to nothing.
    """
    count = len(p) - 2
    if count == 0:
        return np.zeros((*F.shape[:-1], 0))
    L = np.diff(p)
    near: list[Array] = []
    far: list[Array] = []
    for a, length in zip(p[:-1], L, strict=True):
        u = s - a
        on = (u > 0.0) & (u < length)
        at_end = np.where(on, u * (length**2 - u**2) / (6.0 * length), 0.0)
        v = length - u
        at_start = np.where(on, v * (length**2 - v**2) / (6.0 * length), 0.0)
        turn_end = np.where(on, u**2 / (2.0 * length) - length / 6.0, 0.0)
        turn_start = np.where(on, u - u**2 / (2.0 * length) - length / 3.0, 0.0)
        far.append(-(F @ at_end) + C @ turn_end)
        near.append(-(F @ at_start) + C @ turn_start)
    matrix = np.diag((L[:-1] + L[1:]) / 3.0)
    matrix += np.diag(L[1:-1] / 6.0, 1) + np.diag(L[1:-1] / 6.0, -1)
    right = -np.stack([far[i] + near[i + 1] for i in range(count)], axis=-1)
    right[..., 0] -= ends[0][..., 0] * L[0] / 6.0
    right[..., -1] -= ends[1][..., 0] * L[-1] / 6.0
    return np.asarray(right @ np.linalg.inv(matrix).T, dtype=float)


def _reactions(F: Array, C: Array, s: Array, p: Array) -> tuple[Array, Array]:
    """Return what supports bear, span by span and in one piece; no couple stands on a support."""
    ends = _at_ends(F, C, s, p)
    apart = np.concatenate([ends[0], np.zeros((*F.shape[:-1], len(p) - 2)), ends[1]], axis=-1)
    joined = np.concatenate([ends[0], _over_inner(F, C, s, p, ends), ends[1]], axis=-1)
    return _borne(F, C, s, p, apart), _borne(F, C, s, p, joined)


def _borne(F: Array, C: Array, s: Array, p: Array, over: Array) -> Array:
    """Return what each support (…, n) bears, from the moments ``over`` (…, n) them.

    Each span is cut out: what its loads, their couples and the moments at its ends ask of its two
    supports. What stands out goes to the outer ones.
    """
    found = F @ (s[:, None] == p).astype(float)
    found[..., 0] += F @ (s < p[0]).astype(float)
    found[..., -1] += F @ (s > p[-1]).astype(float)
    for i, (a, b) in enumerate(pairwise(p)):
        on = (s > a) & (s < b)
        f, u = F[..., on], s[on]
        far = f @ (u - a) + C[..., on].sum(axis=-1) + over[..., i + 1] - over[..., i]
        far = far / (b - a)
        found[..., i + 1] += far
        found[..., i] += f.sum(axis=-1) - far
    return found


def _between(F: Array, C: Array, s: Array, p: Array, x: Array, over: Array) -> Along:
    """Return moments and shears at cuts from those ``over`` (…, n) the supports."""
    free = cantilever(F, C, s, x)
    before = x < p[0]
    other = cantilever(F, -C, -s, -x)
    moment = np.where(before, other.moment, free.moment)
    shear = np.where(before, other.shear, free.shear)
    for i, (a, b) in enumerate(pairwise(p)):
        here = (x >= a) & (x <= b) if i == len(p) - 2 else (x >= a) & (x < b)
        if not here.any():
            continue
        on = (s > a) & (s < b)
        f, c, u, cut = F[..., on], C[..., on], s[on], x[here]
        far = over[..., i] - over[..., i + 1] - f @ (u - a) - c.sum(axis=-1)
        far = (far / (b - a))[..., None]
        inner = cantilever(f, c, u, cut)
        moment[..., here] = inner.moment + far * (b - cut) + over[..., i + 1 : i + 2]
        shear[..., here] = inner.shear + far
    return Along(moment, shear)


def _from_end(one: Array) -> Array:
    """Return the sums (…, k + 1) of all from each place on: from the first, …, from none."""
    summed = np.zeros((*one.shape[:-1], one.shape[-1] + 1))
    summed[..., :-1] = np.cumsum(one[..., ::-1], axis=-1)[..., ::-1]
    return summed
