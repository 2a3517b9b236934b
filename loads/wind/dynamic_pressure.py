"""Wind as a gust: at the object itself, or as forecasts and warnings state it."""

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array
from ..printed.ranges import not_negative, positive

AIR_DENSITY = 1.226
"""In kg/m3: twice the 0.613 of ASCE/SEI 7 Eq. 26.10-1.si."""


def dynamic_pressure(speed: ArrayLike, density: ArrayLike = AIR_DENSITY) -> Array:
    """Return q = 1/2 rho V^2 in Pa.

    ``speed`` V in m/s, a 3-s gust at the object; ``density`` rho in kg/m3; both broadcast.
    ValueError when one of them is below 0. Source: Bernoulli; any textbook of fluid mechanics.
    """
    return np.asarray(0.5 * not_negative("density", density) * not_negative("speed", speed) ** 2)


def forecast_to_object(speed: ArrayLike, Kz: ArrayLike, Kzt: ArrayLike = 1.0) -> Array:
    """Return the gust at the object, V sqrt(Kz Kzt), in the unit of ``speed``.

    ``speed`` V is a 3-s gust at 10 m over open country, where Kz is 1.0; ``Kz`` and ``Kzt`` are
    those at the object. All broadcast. ValueError when a factor is not above 0.
    Source: the ratio of two pressures by ASCE/SEI 7-22 Eq. 26.10-1.
    """
    return np.asarray(speed, dtype=float) * np.sqrt(positive("Kz", Kz) * positive("Kzt", Kzt))
