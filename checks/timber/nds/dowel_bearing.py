"""How hard wood bears on the shank of a fastener that is pushed sideways."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ....loads.printed.ranges import not_negative, positive
from ....units import INCH, PSI
from ....units.arrays import Array
from .nds_numbers import nds_number

ACROSS_GRAIN = np.pi / 2.0
"""Load across the grain in rad: the weakest direction."""


def dowel_bearing(
    specific_gravity: ArrayLike, diameter: ArrayLike, grain_angle: ArrayLike = ACROSS_GRAIN
) -> Array:
    """Return the dowel bearing strength Fe in Pa (…), rounded to 50 psi as NDS tabulates it.

    ``specific_gravity`` G (…) on oven-dry volume, as NDS assigns it; ``diameter`` D (…) in m, the
    nominal one; ``grain_angle`` theta (…) in rad between load and grain. Under 1/4 in the
    direction does not matter: Fe = 16600 G^1.84. From 1/4 in on: along the grain 11200 G, across
    it 6100 G^1.45 / sqrt(D), between them by Hankinson's formula. D in in, Fe in psi.
    ValueError unless all are above 0 (the angle 0 or more).
    Source: NDS 2018 12.3.3, Eq. 12.3-1 to 12.3-3 and 12.3-11, Table 12.3.3.
    """
    G = positive("specific_gravity", specific_gravity)
    D = positive("diameter", diameter) / INCH
    theta = not_negative("grain_angle", grain_angle)
    small = _rounded(nds_number("bearing small") * G ** nds_number("bearing small exponent"))
    along = _rounded(nds_number("bearing along") * G)
    power = G ** nds_number("bearing across exponent")
    across = _rounded(nds_number("bearing across") * power / np.sqrt(D))
    between = along * across / (along * np.sin(theta) ** 2 + across * np.cos(theta) ** 2)
    return PSI * np.where(from_quarter_inch(diameter), between, small)


def from_quarter_inch(diameter: ArrayLike) -> NDArray[np.bool_]:
    """Return whether a diameter (…) in m is 1/4 in or more, where other rules begin."""
    rounded = np.round(np.asarray(diameter, dtype=float) / INCH, 9)  # 6.35 mm is 1/4 in
    return rounded >= nds_number("other rules from")


def _rounded(strength: Array) -> Array:
    """Return strengths in psi as NDS rounds them before they enter the yield equations."""
    step = nds_number("bearing step")
    return step * np.round(strength / step)
