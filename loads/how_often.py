"""How often a gust comes: speeds of other return periods from one of a map.

Not for coasts with hurricanes. The range of years for which the relation was fitted is not known
here; below some 5 years it is an extrapolation.
"""

import numpy as np
from numpy.typing import ArrayLike

from ..design.shapes.shape import Array
from .ranges import positive

SHORTEST = np.exp(-3.6) / 12.0
"""The return period in years at which the relation's speed reaches 0."""


def speed_ratio(years: ArrayLike) -> Array:
    """Return V_T/V_50 = 0.36 + 0.1 ln(12 T) of the return period T in ``years`` (any shape).

    ValueError when T is not above 0.0023 years, where the speed would reach 0.
    Source: ASCE/SEI 7-10 commentary C26.5 (Peterka and Shahid 1998).
    """
    T = np.asarray(years, dtype=float)
    if np.any(T <= SHORTEST):
        raise ValueError(f"years: found {T.min():g}, expected above {SHORTEST:.2g}")
    return 0.36 + 0.1 * np.log(12.0 * T)


def return_period(ratio: ArrayLike) -> Array:
    """Return T = exp((V/V_50 - 0.36)/0.1)/12 in years of the ``ratio`` V/V_50 (any shape).

    The inverse of ``speed_ratio``. ValueError when the ratio is not above 0. Same source.
    """
    return np.exp((positive("ratio", ratio) - 0.36) / 0.1) / 12.0


def fifty_year_speed(speed: ArrayLike, years: ArrayLike) -> Array:
    """Return V_50 = V_T/(0.36 + 0.1 ln(12 T)) from the ``speed`` V_T of a map for T ``years``.

    In the unit of ``speed``; both broadcast. Errors and source as in ``speed_ratio``.
    """
    return np.asarray(speed, dtype=float) / speed_ratio(years)
