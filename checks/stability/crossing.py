"""Where functions that only grow cross zero: many at once, each between two ends of its own."""

from collections.abc import Callable

import numpy as np

from ...units.arrays import Array

_ROUNDS = 100
_CLOSE = 1.0e-14
"""Ends as near as this, as a share of where they lie, count as one."""


def crossing(
    of: Callable[[Array], Array], low: Array, high: Array, settled: Array | float = 0.0
) -> tuple[Array, Array]:
    """Return the ends (…) between which each function crosses zero, closed in on from low and high.

    ``of`` takes places (…) and returns values (…) that do not fall as the place grows, in steps if
    it must; ``settled`` (…) is how little a value may be to count as 0, and both ends are then that
    place. Where the value at ``low`` is 0 or more both ends are low, where that at ``high`` is
    below 0 both are high. By false position with the end that stays put halved (Dowell and Jarratt
    1971), and by halving where that comes no nearer.

    >>> crossing(lambda x: x**3 - 2.0, np.zeros(1), np.full(1, 2.0), 1.0e-12)[0].round(9).tolist()
    [1.25992105]
    """
    low, high = np.array(low, dtype=float), np.array(high, dtype=float)
    short, beyond = of(low), of(high)
    low, high = np.where(beyond < 0.0, high, low), np.where(short >= 0.0, low, high)
    last, wide = np.zeros(low.shape), high - low
    for turn in range(_ROUNDS):
        spread = beyond - short
        even = (spread > 0.0) & np.isfinite(spread)
        share = np.where(even, -short / np.where(even, spread, 1.0), 0.5)
        if turn % 4 == 3:
            slow = high - low > 0.25 * wide
            share, wide = np.where(slow, 0.5, share), high - low
        at = low + share * (high - low)
        found = of(at)
        over, still = found >= 0.0, np.abs(found) <= settled
        short = np.where(over, np.where(last > 0.0, 0.5, 1.0) * short, found)
        beyond = np.where(over, found, np.where(last < 0.0, 0.5, 1.0) * beyond)
        low, high = np.where(over & ~still, low, at), np.where(over | still, at, high)
        last = np.where(over, 1.0, -1.0)
        if (high - low <= _CLOSE * np.abs(high)).all():
            break
    return low, high
