"""The basic wind velocity, and how often it comes: EN 1991-1-4 section 4.2."""

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array
from ..printed.ranges import not_negative, positive
from .constants import constant


def basic_velocity(
    fundamental: ArrayLike,
    direction: ArrayLike = 1.0,
    season: ArrayLike = 1.0,
    probability: ArrayLike = 1.0,
) -> Array:
    """Return v_b = c_dir c_season c_prob v_b,0 in the unit of ``fundamental``; all broadcast.

    ValueError when a factor is not above 0. Source: EN 1991-1-4:2005 Eq. 4.1 and 4.2 (2) Note 4.
    """
    factors = positive("direction", direction) * positive("season", season)
    return not_negative("speed", fundamental) * factors * positive("probability", probability)


def probability_factor(
    yearly: ArrayLike, shape: float | None = None, exponent: float | None = None
) -> Array:
    """Return c_prob = ((1 - K ln(-ln(1 - p)))/(1 - K ln(-ln 0.98)))^n.

    ``yearly`` p (any shape) is the chance that the wind is exceeded in a year; ``shape`` K and
    ``exponent`` n are by default the recommended 0.2 and 0.5. ValueError when p is not between 0
    and 1, or so near 1 that the base would fall below 0.
    Source: EN 1991-1-4:2005 Eq. 4.2.
    """
    p = positive("probability", yearly)
    if np.any(p >= 1.0):
        raise ValueError(f"probability: found {p.max():g}, expected below 1")
    K, n = _shape(shape, exponent)
    base = (1.0 - K * np.log(-np.log1p(-p))) / _fifty_years(K)
    if np.any(base <= 0.0):
        raise ValueError(f"probability: found {p.max():g}, beyond the reach of the distribution")
    return base**n


def yearly_probability(
    factor: ArrayLike, shape: float | None = None, exponent: float | None = None
) -> Array:
    """Return p, the chance in a year of a wind ``factor`` c_prob times the basic one (any shape).

    The inverse of ``probability_factor``; the return period is 1/p. ValueError when the factor is
    not above 0. Source: EN 1991-1-4:2005 Eq. 4.2.
    """
    K, n = _shape(shape, exponent)
    reduced = (1.0 - positive("factor", factor) ** (1.0 / n) * _fifty_years(K)) / K
    return -np.expm1(-np.exp(reduced))


def _shape(shape: float | None, exponent: float | None) -> tuple[float, float]:
    K = constant("probability shape") if shape is None else shape
    n = constant("probability exponent") if exponent is None else exponent
    return K, n


def _fifty_years(K: float) -> float:
    return 1.0 - K * np.log(-np.log1p(-constant("basic probability")))
