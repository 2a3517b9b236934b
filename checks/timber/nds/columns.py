"""Pieces of lumber that are pressed along themselves, bent or not, by NDS."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....units.arrays import Array
from .nds_numbers import nds_number


def euler_stress(emin: ArrayLike, slender: ArrayLike) -> Array:
    """Return F_cE = 0.822 E'_min/(l_e/d)^2 in Pa (…), at which a slender column gives way.

    ``emin`` E'_min (…) in Pa, ``slender`` l_e/d (…). ValueError unless above 0.
    Source: NDS 2018 3.7.1.5.
    """
    return nds_number("column Euler") * positive("emin", emin) / positive("slender", slender) ** 2


def column_stability(strength: ArrayLike, buckling: ArrayLike) -> Array:
    """Return the column stability factor C_P (…) of sawn lumber, c = 0.8.

    ``strength`` F_c* and ``buckling`` F_cE (…) in Pa. ValueError unless above 0.
    Source: NDS 2018 3.7.1.5, Eq. 3.7-1.
    """
    r = positive("buckling", buckling) / positive("strength", strength)
    c = nds_number("column c")
    half = (1.0 + r) / (2.0 * c)
    return half - np.sqrt(half**2 - r / c)


def pressed_use(
    pressed: ArrayLike,
    strength: ArrayLike,
    edgewise: tuple[ArrayLike, ArrayLike, ArrayLike],
    flatwise: tuple[ArrayLike, ArrayLike, ArrayLike],
    buckling: ArrayLike,
) -> Array:
    """Return the part (…) of its strength that a piece uses, pressed and bent both ways at once.

    (f_c/F'_c)^2 + f_b1/(F'_b1 (1 - f_c/F_cE1)) + f_b2/(F'_b2 (1 - f_c/F_cE2 - (f_b1/F_bE)^2)),
    infinite where a bracket is not above 0. ``pressed`` f_c, ``strength`` F'_c; ``edgewise`` and
    ``flatwise`` each f_b, F'_b and F_cE of that way; ``buckling`` F_bE: all (…) in Pa. Passing at
    1. ValueError for negative stresses or strengths not above 0.
    Source: NDS 2018 3.9.2, Eq. 3.9-3.
    """
    fc = not_negative("pressed", pressed)
    f1, f2 = not_negative("edgewise", edgewise[0]), not_negative("flatwise", flatwise[0])
    first = 1.0 - fc / positive("edgewise", edgewise[2])
    turning = (f1 / positive("buckling", buckling)) ** 2
    second = 1.0 - fc / positive("flatwise", flatwise[2]) - turning
    stands = (first > 0.0) & (second > 0.0)
    safe1, safe2 = np.where(stands, first, 1.0), np.where(stands, second, 1.0)
    squeezed = (fc / positive("strength", strength)) ** 2
    bent = f1 / (positive("edgewise", edgewise[1]) * safe1)
    bent = bent + f2 / (positive("flatwise", flatwise[1]) * safe2)
    return np.where(stands, squeezed + bent, np.inf)
