"""Splitting along the fasteners of a joint that is drawn across the grain, by EN 1995-1-1 8.1.4."""

from math import inf, sqrt

from .lateral import MM
from .stuff import design, en1995_number, wood_of


def characteristic(thick: float, deep: float, reach: float) -> float:
    """Return F_90,Rk = 14 b w sqrt(h_e/(1 - h_e/h)) in N, of sizes in m; infinite from h_e = h on.

    b ``thick``, h ``deep`` and h_e ``reach``; w 1, of all that is no punched plate.
    Source: EN 1995-1-1:2004 8.1.4, Eq. 8.4 and 8.5.

    >>> round(characteristic(0.045, 0.195, 0.120))
    11128
    """
    b, h, he = thick / MM, deep / MM, reach / MM
    if he >= h * (1.0 - 1.0e-9):
        return inf
    return en1995_number("splitting") * b * sqrt(he / (1.0 - he / h))


def resistance(
    material: str, thick: float, deep: float, reach: float, basis: str, dry: bool
) -> float:
    """Return F_90,Rd = k_mod F_90,Rk/gamma_M in N of solid wood; infinite of sheets and of steel.

    Of hardwood as of softwood, for which it is written (judgement).
    """
    wood = wood_of(material)
    if wood is None or wood.stuff != "solid":
        return inf
    modified = design(wood.stuff, "solid", basis, dry)
    return inf if modified is None else modified * characteristic(thick, deep, reach)
