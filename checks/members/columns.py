"""Straight pieces that are pressed along themselves, bent or not."""

from math import pi

import numpy as np
from numpy.typing import ArrayLike

from ... import references, units
from ...design.shapes.shape import Array
from ...loads.ranges import not_negative, positive


def column_rule(name: str) -> float:
    """Return K_e of a piece that "stands out" or is held "between", or l_e/d of the "most slender".

    Or the share of strength from which a piece "is a column", or the stress in psi of "aluminium
    buckling". KeyError for another. Source: NDS 2018 Appendix G and 3.7.1.4; judgement; Aluminum
    Design Manual 2015.
    """
    return float(references.table("column_rules").one("rule", name)["value"])


def euler_stress(emin: ArrayLike, slender: ArrayLike) -> Array:
    """Return F_cE = 0.822 E'_min/(l_e/d)^2 in Pa (…), at which a slender column gives way.

    ``emin`` E'_min (…) in Pa, ``slender`` l_e/d (…). ValueError unless above 0.
    Source: NDS 2018 3.7.1.5.
    """
    return 0.822 * positive("emin", emin) / positive("slender", slender) ** 2


def column_stability(strength: ArrayLike, buckling: ArrayLike) -> Array:
    """Return the column stability factor C_P (…) of sawn lumber, c = 0.8.

    ``strength`` F_c* and ``buckling`` F_cE (…) in Pa. ValueError unless above 0.
    Source: NDS 2018 3.7.1.5, Eq. 3.7-1.
    """
    r = positive("buckling", buckling) / positive("strength", strength)
    half = (1.0 + r) / 1.6
    return half - np.sqrt(half**2 - r / 0.8)


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


def steel_column(strength: ArrayLike, stiffness: ArrayLike, slender: ArrayLike) -> Array:
    """Return F_cr in Pa (…), at which a column of steel gives way: F_y or less.

    0.658^(F_y/F_e) F_y, or 0.877 F_e from F_y/F_e of 2.25. ``strength`` F_y and ``stiffness`` E
    (…) in Pa, ``slender`` L_c/r (…), length over radius of gyration. ValueError unless above 0.
    Source: AISC 360-16 E3, Eq. E3-2 to E3-4 (memory).
    """
    Fy = positive("strength", strength)
    Fe = pi**2 * positive("stiffness", stiffness) / positive("slender", slender) ** 2
    ratio = Fy / Fe
    return np.where(ratio <= 2.25, 0.658 ** np.minimum(ratio, 2.25) * Fy, 0.877 * Fe)


def steel_use(pressed: ArrayLike, bent: ArrayLike) -> Array:
    """Return the part (…) of its strength that a piece of steel uses, pressed and bent.

    ``pressed`` P_r/P_c and ``bent`` M_r/M_c (…) of both ways summed: P + 8/9 M from P of 0.2,
    else P/2 + M. ValueError below 0. Source: AISC 360-16 H1.1, Eq. H1-1 (memory).
    """
    P, M = not_negative("pressed", pressed), not_negative("bent", bent)
    return np.where(P >= 0.2, P + 8.0 / 9.0 * M, P / 2.0 + M)


def aluminium_column(strength: ArrayLike, stiffness: ArrayLike, slender: ArrayLike) -> Array:
    """Return F_c in Pa (…), at which a column of work-hardened aluminium gives way: F_cy or less.

    (B_c - D_c l)(0.85 + 0.15 (C_c - l)/(C_c - l_1)), or 0.85 pi^2 E/l^2 from C_c; B_c =
    F_cy (1 + sqrt(F_cy/1000 ksi)), D_c = B_c/20 sqrt(6 B_c/E), C_c = 2 B_c/(3 D_c), l_1 =
    (B_c - F_cy)/D_c. ``strength`` F_cy and ``stiffness`` E (…) in Pa, ``slender`` l = L/r (…).
    ValueError unless above 0. Source: Aluminum Design Manual 2015 E.2, Table B.4.1 (memory).
    """
    Fcy, E = positive("strength", strength), positive("stiffness", stiffness)
    ratio = positive("slender", slender)
    unit = column_rule("aluminium buckling") * units.factor("psi")
    B = Fcy * (1.0 + np.sqrt(Fcy / unit))
    D = B / 20.0 * np.sqrt(6.0 * B / E)
    C, first = 2.0 * B / (3.0 * D), (B - Fcy) / D
    yields = (B - D * ratio) * (0.85 + 0.15 * (C - ratio) / (C - first))
    return np.where(ratio <= first, Fcy, np.where(ratio < C, yields, 0.85 * pi**2 * E / ratio**2))


def aluminium_use(pressed: ArrayLike, bent: ArrayLike) -> Array:
    """Return the part (…) of its strength that a piece of aluminium uses, pressed and bent: P + M.

    ``pressed`` P_r/P_c and ``bent`` M_r/M_c (…) of both ways summed. ValueError below 0.
    Source: Aluminum Design Manual 2015 H.1 (memory).
    """
    return np.asarray(not_negative("pressed", pressed) + not_negative("bent", bent), dtype=float)
