"""Pieces of lumber that are bent, one way or both, by NDS."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....units.arrays import Array
from .nds_numbers import nds_number


def slenderness(unbraced: ArrayLike, width: ArrayLike, depth: ArrayLike) -> Array:
    """Return the slenderness ratio R_B = sqrt(l_e d/b^2) (…) of a cantilever loaded at its end.

    l_e is 1.87 l_u up to l_u/d of 7, else 1.44 l_u + 3 d. ``unbraced`` l_u, ``width`` b and
    ``depth`` d (…) in m. ValueError unless all are above 0.
    Source: NDS 2018 3.3.3, Eq. 3.3-5 and Table 3.3.3.
    """
    lu, b, d = positive("unbraced", unbraced), positive("width", width), positive("depth", depth)
    long = nds_number("cantilever long") * lu + nds_number("depths added") * d
    short = lu < nds_number("short to") * d
    effective = np.where(short, nds_number("cantilever short") * lu, long)
    return np.sqrt(effective * d / b**2)


def slenderness_between(unbraced: ArrayLike, width: ArrayLike, depth: ArrayLike) -> Array:
    """Return the slenderness ratio R_B (…) of a piece between two supports, however it is loaded.

    l_e is 2.06 l_u below l_u/d of 7, 1.63 l_u + 3 d up to 14.3, 1.84 l_u beyond. Arguments and
    errors as ``slenderness``. Source: NDS 2018 Table 3.3.3, note 1 (memory).
    """
    lu, b, d = positive("unbraced", unbraced), positive("width", width), positive("depth", depth)
    middle = nds_number("span middle") * lu + nds_number("depths added") * d
    longer = lu > nds_number("middle to") * d
    effective = np.where(longer, nds_number("span long") * lu, middle)
    short = lu < nds_number("short to") * d
    effective = np.where(short, nds_number("span short") * lu, effective)
    return np.sqrt(effective * d / b**2)


def buckling_stress(emin: ArrayLike, ratio: ArrayLike) -> Array:
    """Return F_bE = 1.20 E_min/R_B^2 in Pa (…), at which a deep member turns over sideways.

    ``emin`` E'_min (…) in Pa, ``ratio`` R_B (…). ValueError unless above 0.
    Source: NDS 2018 3.3.3.8.
    """
    return nds_number("beam Euler") * positive("emin", emin) / positive("ratio", ratio) ** 2


def beam_stability(strength: ArrayLike, buckling: ArrayLike) -> Array:
    """Return the beam stability factor C_L (…) of a member whose edge in compression is free.

    ``strength`` F_b* and ``buckling`` F_bE (…) in Pa. ValueError unless above 0.
    Source: NDS 2018 3.3.3.8, Eq. 3.3-6.
    """
    r = positive("buckling", buckling) / positive("strength", strength)
    c = nds_number("beam c")
    half = (1.0 + r) / (2.0 * c)
    return half - np.sqrt(half**2 - r / c)


def both_ways_use(
    edgewise: ArrayLike,
    edgewise_strength: ArrayLike,
    flatwise: ArrayLike,
    flatwise_strength: ArrayLike,
    buckling: ArrayLike,
) -> Array:
    """Return the part (…) of a member's bending strength that is used, bent both ways at once.

    f_b1/F'_b1 + f_b2/(F'_b2 (1 - (f_b1/F_bE)^2)), all (…) in Pa; infinite where f_b1 reaches F_bE.
    Passing at 1. ValueError for negative stresses or strengths not above 0.
    Source: NDS 2018 3.9.2, Eq. 3.9-3 without axial load.
    """
    f1, f2 = not_negative("edgewise", edgewise), not_negative("flatwise", flatwise)
    F1 = positive("edgewise_strength", edgewise_strength)
    F2 = positive("flatwise_strength", flatwise_strength)
    left = 1.0 - (f1 / positive("buckling", buckling)) ** 2
    safe = np.where(left > 0.0, left, 1.0)
    return np.where(left > 0.0, f1 / F1 + f2 / (F2 * safe), np.inf)
