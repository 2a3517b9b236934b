"""Lumber and sheets by EN 1995-1-1: bent, sheared, drawn, pressed, and both at once."""

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.ranges import not_negative, positive
from ....materials.lumber import Lumber
from ....references import TableRow
from ....units.arrays import Array
from ..terms.answers import Adjusted
from .lateral import MM
from .stuff import StrengthClass, design, en1995_number, strength_class

EN_MEMBERS = "EN 1995-1-1:2004 6.1 to 6.3"


def size_factor(size: ArrayLike) -> Array:
    """Return k_h (…) of a depth bent, or a width drawn, of so many m: (150/h)^0.2, 1 to 1.3.

    ValueError unless above 0. Source: EN 1995-1-1:2004 3.2 (3), Eq. 3.1.
    """
    ratio = en1995_number("size reference mm") / (positive("size", size) / MM)
    return np.clip(ratio ** en1995_number("size exponent"), 1.0, en1995_number("size most"))


def column_factor(strength: ArrayLike, buckling: ArrayLike) -> Array:
    """Return k_c (…) of solid timber by its strength f_c,0,k and pi^2 E_0.05/lambda^2 (…) in Pa.

    ValueError unless above 0. Source: EN 1995-1-1:2004 6.3.2, Eq. 6.21, 6.25 to 6.28.
    """
    ratio = np.sqrt(positive("strength", strength) / positive("buckling", buckling))
    free, straight = en1995_number("column from"), en1995_number("column straight")
    k = 0.5 * (1.0 + straight * (ratio - free) + ratio**2)
    factor = 1.0 / (k + np.sqrt(np.maximum(k**2 - ratio**2, 0.0)))
    return np.where(ratio <= free, 1.0, np.minimum(factor, 1.0))


def turning_factor(strength: ArrayLike, buckling: ArrayLike) -> Array:
    """Return k_crit (…) of a beam that may turn over, by f_m,k and sigma_m,crit (…) in Pa.

    ValueError unless above 0. Source: EN 1995-1-1:2004 6.3.3, Eq. 6.30 and 6.34.
    """
    ratio = np.sqrt(positive("strength", strength) / positive("buckling", buckling))
    none, linear = en1995_number("turning none to"), en1995_number("turning linear to")
    between = en1995_number("turning start") - none * ratio
    return np.where(ratio <= none, 1.0, np.where(ratio <= linear, between, ratio**-2.0))


def turning_stress(
    least_stiffness: ArrayLike, width: ArrayLike, depth: ArrayLike, length: ArrayLike, between: bool
) -> Array:
    """Return sigma_m,crit in Pa (…) of a piece that stands out, or spans ``between`` supports.

    0.78 b^2 E_0.05/(h l_ef), sizes in m. ValueError unless above 0.
    Source: EN 1995-1-1:2004 6.3.3, Eq. 6.32, Table 6.1 (softwood, loaded at the pressed edge).
    """
    b, h = positive("width", width), positive("depth", depth)
    share = en1995_number("turning span" if between else "turning cantilever")
    effective = share * positive("length", length) + en1995_number("turning added depths") * h
    stiffness = positive("least_stiffness", least_stiffness)
    return en1995_number("turning over") * b**2 * stiffness / (h * effective)


def both_ways(first: ArrayLike, second: ArrayLike) -> Array:
    """Return the use (…) of a rectangle bent both ways, by that of each: the greater of both sums.

    ``first`` and ``second`` (…) are sigma_m/f_m. Source: EN 1995-1-1:2004 6.1.6, Eq. 6.11 and 6.12.
    """
    one, other = not_negative("first", first), not_negative("second", second)
    km = en1995_number("both ways")
    return np.maximum(one + km * other, km * one + other)


def class_of(lumber: Lumber) -> StrengthClass | None:
    """Return the class of EN 338 of lumber as NDS grades it; None where none is assigned."""
    return strength_class(lumber.species, lumber.grade)


def member_rows(lumber: Lumber) -> tuple[TableRow, ...]:
    """Return the rows that a piece's class and its values stand in; none where there is none."""
    graded = references.table("wood/en1912_grades").where("species", lumber.species)
    own = [row for row in graded if row["grade"] == lumber.grade]
    classes = references.table("wood/en338_classes")
    return (*own, *(classes.one("class", row["class"]) for row in own))


def design_values(
    lumber: Lumber, least: float, wide: float, length: float, basis: str, between: bool = False
) -> Adjusted | None:
    """Return design values of a piece ``least`` by ``wide`` m outdoors; None without a class.

    It stands out by ``length`` m or spans it ``between`` two supports. ``buckling`` and
    ``least_stiffness`` stand in the same ratio to design strengths as to characteristic ones, as
    k_crit and k_c ask. Source: EN 1995-1-1:2004 2.4.1, 3.2, 6.1, 6.3.
    """
    wood = class_of(lumber)
    share = design("solid", "solid", basis)
    if wood is None or share is None:
        return None
    turning = float(turning_stress(wood.least_stiffness, least, wide, length, between))
    stable = float(turning_factor(wood.bending, turning)) if wide > least * 1.0005 else 1.0
    return Adjusted(
        edgewise=wood.bending * share * float(size_factor(wide)) * stable,
        flatwise=wood.bending * share * float(size_factor(least)),
        shear=wood.shear * share * en1995_number("shear width"),
        buckling=turning * share,
        stiffness=wood.stiffness,
        compression=wood.compression * share,
        tension=wood.tension * share * float(size_factor(wide)),
        least_stiffness=wood.least_stiffness * share,
    )
