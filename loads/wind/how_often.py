"""How often a gust comes: by one speed of a map, or by two or more local ones.

Not for coasts with hurricanes. The range of years for which the map's relation was fitted is not
known here; below some 5 years it is an extrapolation.
"""

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array
from ...units.frozen import ByValue
from ..printed.ranges import positive

SHORTEST = np.exp(-3.6) / 12.0
"""The return period in years at which the relation's speed reaches 0."""

LONGER = 2.0
"""Times the longest known return period, up to which a rarer gust is told: judgement."""


def speed_ratio(years: ArrayLike) -> Array:
    """Return V_T/V_50 = 0.36 + 0.1 ln(12 T) of the return period T in ``years`` (any shape).

    ValueError when T is not above 0.0023 years, where the speed would reach 0.
    Source: ASCE/SEI 7-10 commentary C26.5 (Peterka and Shahid 1998).
    """
    T = np.asarray(years, dtype=float)
    if np.any(T <= SHORTEST):
        raise ValueError(f"years: found {T.min():g}, expected above {SHORTEST:.2g}")
    return 0.36 + 0.1 * np.log(12.0 * T)


def return_period_of_ratio(ratio: ArrayLike) -> Array:
    """Return T = exp((V/V_50 - 0.36)/0.1)/12 in years of the ``ratio`` V/V_50 (any shape).

    The inverse of ``speed_ratio``. ValueError when the ratio is not above 0.

    Source: as ``speed_ratio``, ASCE/SEI 7-10 commentary C26.5 (Peterka and Shahid 1998).
    """
    return np.exp((positive("ratio", ratio) - 0.36) / 0.1) / 12.0


def fifty_year_speed(speed: ArrayLike, years: ArrayLike) -> Array:
    """Return V_50 = V_T/(0.36 + 0.1 ln(12 T)) from the ``speed`` V_T of a map for T ``years``.

    In the unit of ``speed``; both broadcast. Errors and source as in ``speed_ratio``.
    """
    return np.asarray(speed, dtype=float) / speed_ratio(years)


def years_between(speed: ArrayLike, years: ArrayLike, speeds: ArrayLike) -> Array:
    """Return the return period T in years of ``speed`` (any shape), linear in ln T between values.

    ``years`` (n,) and ``speeds`` (n,), n at least 2, both growing: what gust comes once in how many
    years at a place, in the unit of ``speed``. The end pieces are drawn on, upward to twice the
    longest period; beyond, infinite: rarer than that can be told. ValueError where the values do
    not grow or a speed is not above 0. Source: the upper tail of a Gumbel distribution.
    """
    T, V = np.asarray(years, dtype=float), positive("speeds", speeds)
    if T.ndim != 1 or T.shape != V.shape or len(T) < 2:
        raise ValueError("years: expected two or more, each with its speed")
    if np.any(positive("years", T)[1:] <= T[:-1]) or np.any(V[1:] <= V[:-1]):
        raise ValueError("speeds: expected a greater one for each longer return period")
    v = positive("speed", speed)
    i = np.clip(np.searchsorted(V, v, side="right") - 1, 0, len(V) - 2)
    across = (v - V[i]) / (V[i + 1] - V[i])
    logarithm = np.log(T[i]) + across * (np.log(T[i + 1]) - np.log(T[i]))
    told = logarithm <= np.log(LONGER) + np.log(T[-1]) + 1.0e-12
    return np.where(told, np.exp(np.where(told, logarithm, 0.0)), np.inf)


class Recurrence(ByValue, frozen=True):
    """How often a gust comes: once in ``years``, infinite where rarer than can be told.

    ``method`` is ``"local values"``, ``"peaks"`` or ``"map"``; ``longest`` in years is the period
    that the answer rests on, twice which is the most that is told.
    """

    years: float
    method: str
    longest: float | None
