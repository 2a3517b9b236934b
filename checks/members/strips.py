"""Strips of a plate between what holds them: what they may carry, and the check of one."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...design.model import Part
from ...design.shapes.shape import Array
from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ...loads.combinations import Factors
from ...materials import lumber, metal, plastic, sheets
from ...materials.lumber import Lumber
from ...materials.metal import Metal
from ...materials.plastic import Plastic
from ...materials.sheets import Sheet
from ..adjustments import wind_over
from ..judging import Check, Kind, judged
from .bending import rectangle_inertia, rectangle_modulus
from .member_check import NotJudged, Stuff
from .member_strength import (
    adjusted,
    metal_shear,
    metal_stress,
    sheet_bending,
    sheet_rolling_shear,
    sheet_stiffness,
)

SOURCE = "statics: strips between supports"


@dataclass(frozen=True, eq=False)
class Strip:
    """What a strip (…) may carry: ``moment`` in N m and ``shear`` in N; its ``stiffness`` in N m2.

    A shear of infinity is not judged.
    """

    moment: Array
    shear: Array
    stiffness: Array


def stuff_of(part: Part, thickness: float) -> Stuff | NotJudged:
    """Return the published strength of what a plate ``thickness`` m thick is made of."""
    if part.material is None:
        return NotJudged(part.name, "no material")
    found = (
        sheets.find(part.material, thickness)
        or metal.find(part.material)
        or plastic.find(part.material)
        or lumber.find_boards(part.material, thickness, part.grade)
    )
    return NotJudged(part.name, "no values") if found is None else found


def strip_of(
    stuff: Stuff, thickness: float, width: ArrayLike, across: bool, basis: str
) -> Strip | None:
    """Return what strips ``width`` (…) and ``thickness`` m thick carry; None for no published one.

    ``across``: they bend across the grain of the face, or of the boards: for that no strength of
    solid wood is published. Wet in use, under wind. ValueError unless sizes are above 0.
    """
    b, t = np.asarray(width, dtype=float), np.full_like(np.asarray(width, dtype=float), thickness)
    match stuff:
        case Sheet():
            bending = sheet_bending(stuff, b, basis, across)
            rolling = sheet_rolling_shear(stuff, basis, across)
            return Strip(bending * b, rolling * b, sheet_stiffness(stuff, across) * b)
        case Metal():
            stress, shear, stiffness = (
                metal_stress(stuff, basis),
                metal_shear(stuff, basis),
                stuff.stiffness,
            )
        case Plastic():
            stress, shear = stuff.stress * _over_allowable(basis), np.inf
            stiffness = stuff.stiffness
        case Lumber():
            if across:
                return None
            value = adjusted(stuff, thickness, thickness, thickness, basis)
            stress, shear, stiffness = value.flatwise, value.shear, value.stiffness
    return Strip(
        rectangle_modulus(b, t) * stress,
        b * t * shear / 1.5,
        rectangle_inertia(b, t) * stiffness,
    )


def dead_pressure(structure: Structure, part: int, area: float) -> float:
    """Return the weight in Pa of one copy of a part over an area in m2, as heavy as it may be."""
    heavy = structure.body_mass[WEIGHINGS.index("heavy"), structure.of == part]
    return float(heavy[0]) * GRAVITY / area


def downward(factors: Factors, basis: str, stuff: Stuff, wind: float, dead: float) -> float:
    """Return the factored load (any unit) of wind and weight that press the same way.

    Weight alone counts as much more as wood holds less for long.
    """
    together = factors.wind * wind + factors.hurting * dead
    tires = wind_over("permanent", basis) if isinstance(stuff, (Lumber, Sheet)) else 1.0
    return max(together, factors.alone * dead * tires)


def check_strip(
    name: str,
    strip: Strip,
    moment: float,
    shear: float,
    factors: Factors,
    stuff: Stuff,
    dead: float = 0.0,
) -> tuple[Check, str]:
    """Return the check of one strip under a factored moment in N m and shear in N; what governs.

    ``dead`` is the factor on the weight that is in them.
    """
    by_bending = moment * float(strip.shear) >= shear * float(strip.moment)
    if not np.isfinite(strip.shear):
        by_bending = True
    demand, capacity = (moment, float(strip.moment)) if by_bending else (shear, float(strip.shear))
    utilization, passes = judged(demand, capacity)
    check = Check(
        kind=Kind.MEMBER,
        subject=name,
        demand=demand,
        capacity=capacity,
        unit="N*m" if by_bending else "N",
        utilization=utilization,
        passes=passes,
        source=f"{SOURCE}; {stuff.source}",
        weighing="heavy",
        dead=dead,
        wind=factors.wind,
    )
    return check, "bending" if by_bending else "shear"


def _over_allowable(basis: str) -> float:
    """Return by how much resistances of a basis stand above allowable values."""
    return float(references.table("combinations").where("basis", basis)[0]["soil"])
