"""The gust-effect factor G of rigid structures."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units import FOOT
from ...units.arrays import Array
from ..printed.ranges import positive
from ..wind.exposure import exposure_letter

PERMITTED = 0.85
"""G that ASCE/SEI 7-16 26.11.1 permits for any rigid structure."""


def rigid_gust_factor(height: ArrayLike, breadth: ArrayLike, exposure: str) -> Array:
    """Return G = 0.925 (1 + 1.7 g_Q I_z Q)/(1 + 1.7 g_v I_z) of a structure above 1 Hz.

    ``height`` h above ground and ``breadth`` B across the wind in m, which broadcast; ``exposure``
    a letter or words of ``EXPOSURES``. With z = max(0.6 h, z_min), I_z = c (33 ft/z)^(1/6),
    L_z = l (z/33 ft)^epsilon and Q = sqrt(1/(1 + 0.63 ((B + h)/L_z)^0.63)).
    ValueError when a size is not above 0 or the exposure is unknown.
    Source: ASCE/SEI 7-16 26.11.4, Eqs. 26.11-6 to 26.11-9 and Table 26.11-1.
    """
    h, B = positive("height", height), positive("breadth", breadth)
    c, length, epsilon, z_min, g_Q, g_v = _constants(exposure_letter(exposure))
    ten_metres = 33.0 * FOOT
    z = np.maximum(0.6 * h, z_min)
    I_z = c * (ten_metres / z) ** (1.0 / 6.0)
    L_z = length * (z / ten_metres) ** epsilon
    Q = np.sqrt(1.0 / (1.0 + 0.63 * ((B + h) / L_z) ** 0.63))
    return 0.925 * (1.0 + 1.7 * g_Q * I_z * Q) / (1.0 + 1.7 * g_v * I_z)


def gust_factor_used(height: ArrayLike, breadth: ArrayLike, exposure: str) -> Array:
    """Return the larger of the computed G and 0.85, with the arguments of ``rigid_gust_factor``.

    0.85 is permitted, but a gust engulfs a small object whole: the larger is used (judgement).
    """
    return np.maximum(rigid_gust_factor(height, breadth, exposure), PERMITTED)


@cache
def _constants(letter: str) -> tuple[float, float, float, float, float, float]:
    """Return c, l (m), epsilon, z_min (m), g_Q and g_v of an exposure."""
    row = references.table("wind/asce7_gust_factor").one("exposure", letter)
    return (
        float(row["c"]),
        float(row["l_ft"]) * FOOT,
        float(row["epsilon"]),
        float(row["z_min_ft"]) * FOOT,
        float(row["g_Q"]),
        float(row["g_v"]),
    )
