"""Ballast: the least weight that keeps a piece down, and the weight of what fills it."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....units.arrays import Array


def least_ballast(
    overturning: ArrayLike, resisting: ArrayLike, arm: ArrayLike, helping: ArrayLike
) -> Array:
    """Return B = (M_over - M_resist)/(f d) in N, 0 where none is needed.

    ``overturning`` and ``resisting`` in N m, both with their factors; ``arm`` d in m from the lee
    edge to where the ballast lies on the piece; ``helping`` f, the factor on dead load that helps.
    All broadcast. Infinite where the ballast lies beyond the edge. ValueError when f is not above
    0. Source: statics; B = net uplift/0.9 in DIN EN 12811 practice.
    """
    net = np.maximum(np.subtract(overturning, resisting), 0.0)
    holds = positive("helping", helping) * np.maximum(np.asarray(arm, dtype=float), 0.0)
    within = holds > 0.0
    return np.where(within, net / np.where(within, holds, 1.0), np.where(net > 0.0, np.inf, 0.0))


def sliding_ballast(
    force: ArrayLike, pressing: ArrayLike, friction: ArrayLike, helping: ArrayLike
) -> Array:
    """Return B = (H/mu - N)/f in N, 0 where friction already holds.

    ``force`` H level and ``pressing`` N down in N, both with their factors; ``friction`` mu;
    ``helping`` f as in ``least_ballast``. All broadcast. ValueError when mu or f is not above 0.
    Source: Coulomb friction.
    """
    needed = not_negative("force", force) / positive("friction", friction)
    lacking = np.maximum(needed - np.asarray(pressing, dtype=float), 0.0)
    return np.asarray(lacking / positive("helping", helping))
