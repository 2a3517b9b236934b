"""Straight pieces that are pressed along themselves, bent or not."""

from functools import cache
from math import pi

import numpy as np
from numpy.typing import ArrayLike

from ... import references, units
from ...loads.printed.ranges import not_negative, positive
from ...units.arrays import Array


@cache
def column_rule(name: str) -> float:
    """Return K_e of a piece that "stands out" or is held "between", or l_e/d of the "most slender".

    Or the share of strength from which a piece "is a column". KeyError for another.
    Source: NDS 2018 Appendix G and 3.7.1.4; judgement.
    """
    return float(references.table("column_rules").one("rule", name)["value"])


def steel_column(
    strength: ArrayLike, stiffness: ArrayLike, slender: ArrayLike, kind: str = "steel"
) -> Array:
    """Return F_cr in Pa (…), at which a column of steel or stainless steel gives way: F_y or less.

    0.658^(F_y/F_e) F_y, or 0.877 F_e from F_y/F_e of 2.25; of stainless steel, which yields softly,
    0.50, 0.531 and 1.44. ``strength`` F_y and ``stiffness`` E (…) in Pa, ``slender`` L_c/r (…),
    length over radius of gyration; ``kind`` "steel" or "stainless". ValueError unless above 0.
    Source: AISC 360-16 E3, Eq. E3-2 to E3-4; AISC Design Guide 27 (2013) 5.3 (memory).
    """
    Fy = positive("strength", strength)
    Fe = pi**2 * positive("stiffness", stiffness) / positive("slender", slender) ** 2
    base, limit, elastic = (_curve(kind, rule) for rule in ("base", "limit", "elastic"))
    ratio = Fy / Fe
    return np.where(ratio <= limit, base ** np.minimum(ratio, limit) * Fy, elastic * Fe)


def steel_use(pressed: ArrayLike, bent: ArrayLike) -> Array:
    """Return the part (…) of its strength that a piece of steel uses, pressed and bent.

    ``pressed`` P_r/P_c and ``bent`` M_r/M_c (…) of both ways summed: P + 8/9 M from P of 0.2,
    else P/2 + M. ValueError below 0. Source: AISC 360-16 H1.1, Eq. H1-1 (memory).
    """
    P, M = not_negative("pressed", pressed), not_negative("bent", bent)
    return np.where(P >= 0.2, P + 8.0 / 9.0 * M, P / 2.0 + M)


def aluminium_column(
    strength: ArrayLike,
    stiffness: ArrayLike,
    slender: ArrayLike,
    kind: str = "aluminium worked",
) -> Array:
    """Return F_c in Pa (…), at which a column of aluminium gives way: F_cy or less.

    (B_c - D_c l)(0.85 + 0.15 (C_c - l)/(C_c - l_1)), or 0.85 pi^2 E/l^2 from C_c; B_c =
    F_cy (1 + sqrt(F_cy/1000 ksi)), D_c = B_c/20 sqrt(6 B_c/E), C_c = 2 B_c/(3 D_c), l_1 =
    (B_c - F_cy)/D_c; of "aluminium aged" (tempers T5 to T9) B_c by 2250 ksi, D_c = B_c/10
    sqrt(B_c/E), C_c = 0.41 B_c/D_c. ``strength`` F_cy and ``stiffness`` E (…) in Pa, ``slender``
    l = L/r (…). ValueError unless above 0.
    Source: Aluminum Design Manual 2015 E.2, Tables B.4.1 and B.4.2 (memory).
    """
    Fcy, E = positive("strength", strength), positive("stiffness", stiffness)
    ratio, left = positive("slender", slender), _curve(kind, "crooked")
    B = Fcy * (1.0 + np.sqrt(Fcy / (_curve(kind, "intercept") * units.factor("psi"))))
    D = B / _curve(kind, "slope over") * np.sqrt(_curve(kind, "slope under") * B / E)
    C, first = _curve(kind, "end") * B / D, (B - Fcy) / D
    yields = (B - D * ratio) * (left + (1.0 - left) * (C - ratio) / (C - first))
    return np.where(ratio <= first, Fcy, np.where(ratio < C, yields, left * pi**2 * E / ratio**2))


def metal_column(kind: str, strength: ArrayLike, stiffness: ArrayLike, slender: ArrayLike) -> Array:
    """Return the stress in Pa (…) at which a metal column of a ``kind`` of rule gives way.

    The kinds are those of references/metal_columns.csv; the rest as ``steel_column``.
    """
    column = aluminium_column if kind.startswith("aluminium") else steel_column
    return column(strength, stiffness, slender, kind)


def aluminium_use(pressed: ArrayLike, bent: ArrayLike) -> Array:
    """Return the part (…) of its strength that a piece of aluminium uses, pressed and bent: P + M.

    ``pressed`` P_r/P_c and ``bent`` M_r/M_c (…) of both ways summed. ValueError below 0.
    Source: Aluminum Design Manual 2015 H.1 (memory).
    """
    return np.asarray(not_negative("pressed", pressed) + not_negative("bent", bent), dtype=float)


@cache
def _curve(kind: str, rule: str) -> float:
    """Return a number of a metal's column curve, by its kind and its name in the table."""
    rows = references.table("metal_columns").where("kind", kind)
    return next(float(row["value"]) for row in rows if row["rule"] == rule)
