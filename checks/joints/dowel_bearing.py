"""How hard wood bears on the shank of a fastener that is pushed sideways."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ...design.shapes.shape import Array
from ...loads.ranges import not_negative, positive
from .printed_units import INCH, PSI

ACROSS = np.pi / 2.0
"""Load across the grain in rad: the weakest direction."""

STEP = 50.0
"""NDS rounds dowel bearing strengths to this many psi before they enter the yield equations."""


def dowel_bearing(
    specific_gravity: ArrayLike, diameter: ArrayLike, grain_angle: ArrayLike = ACROSS
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
    small = _rounded(16600.0 * G**1.84)
    along = _rounded(11200.0 * G)
    across = _rounded(6100.0 * G**1.45 / np.sqrt(D))
    between = along * across / (along * np.sin(theta) ** 2 + across * np.cos(theta) ** 2)
    return PSI * np.where(from_quarter_inch(diameter), between, small)


def from_quarter_inch(diameter: ArrayLike) -> NDArray[np.bool_]:
    """Return whether a diameter (…) in m is 1/4 in or more, where other rules begin."""
    return np.round(np.asarray(diameter, dtype=float) / INCH, 9) >= 0.25  # 6.35 mm is 1/4 in


def _rounded(strength: Array) -> Array:
    return STEP * np.round(strength / STEP)
