"""What lumber and sheets may carry by NDS in bending and shear, outdoors and under wind.

Wood is taken as wet in use: a yard piece stands in rain and dew, and near the soil.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .... import references, units
from ....loads.combinations import FACTORED
from ....loads.printed.ranges import positive
from ....materials.lumber import Lumber
from ....materials.sheets import Sheet
from ....units.arrays import Array
from ..terms.answers import Adjusted
from . import adjustments
from .beams import beam_stability, buckling_stress, slenderness, slenderness_between


def adjusted_design_values(
    lumber: Lumber, least: float, wide: float, length: float, basis: str, between: bool = False
) -> Adjusted:
    """Return F'_b, F'_v and E' of a piece ``least`` by ``wide`` m that stands out by ``length`` m.

    ``between``: that is what it spans between two supports.

    C_D 1.6 under wind, or K_F phi lambda on the strength basis; C_M wet; C_F by size; C_L on edge,
    1 where it is no deeper than wide. C_fu is left at 1, below its true value. ValueError unless
    the sizes are above 0. Source: NDS 2018 Table 4.3.1, 3.3.3, 4.3.6; Supplement 4A adjustments.
    """
    wet = _wet_factors(lumber)
    bending = lumber.bending * lumber.size_factor * wet["Fb"] * _duration("bending", basis)
    shear = lumber.shear * wet["Fv"] * _duration("shear", basis)
    least_stiffness = lumber.least_stiffness * wet["E, Emin"]
    if basis == FACTORED:
        least_stiffness *= adjustments.load_and_resistance("stability")
    ratio = (slenderness_between if between else slenderness)(length, least, wide)
    buckling = float(buckling_stress(least_stiffness, ratio))
    stability = float(beam_stability(bending, buckling)) if wide > least * 1.0005 else 1.0
    return Adjusted(
        edgewise=bending * stability,
        flatwise=bending,
        shear=shear,
        buckling=buckling,
        stiffness=lumber.wet_stiffness,
        compression=(
            lumber.compression
            * lumber.compression_factor
            * wet["Fc"]
            * _duration("compression", basis)
        ),
        tension=(lumber.tension * lumber.tension_factor * wet["Ft"] * _duration("tension", basis)),
        least_stiffness=least_stiffness,
    )


def sheet_bending(sheet: Sheet, strip: ArrayLike, basis: str, across: bool) -> Array:
    """Return the moment in N m per m of width (…) that a sheet may carry.

    ``strip`` (…) in m is how wide the strip is: below 24 in it carries less for each m, C_s.
    ``across``: it bends across the grain of its face. Wet in use; C_D, or K_F phi lambda, under
    wind. ValueError unless the width is above 0. Source: APA Panel Design Specification D510.
    """
    width = positive("strip", strip)
    strip_factor = np.interp(width, *_strip_factors())
    reference = sheet.bending[1 if across else 0]
    return reference * _panel("CM", "bending strength") * _duration("bending", basis) * strip_factor


def sheet_stiffness(sheet: Sheet, across: bool) -> float:
    """Return E I in N m2 per m of width of a wet sheet. Source: as ``sheet_bending``."""
    return sheet.stiffness[1 if across else 0] * _panel("CM", "stiffness")


def sheet_rolling_shear(sheet: Sheet, basis: str, across: bool) -> float:
    """Return the shear in N per m of width that the layers of a wet sheet hold, under wind.

    Narrow strips take no factor. Source: as ``sheet_bending``; NDS 2018 9.3.
    """
    reference = sheet.shear[1 if across else 0]
    return reference * _panel("CM", "bending strength") * _duration("shear", basis)


def sheet_through(sheet: Sheet, basis: str) -> float:
    """Return the shear in N per m through the thickness of a wet sheet. Source: as above."""
    return sheet.through * _panel("CM", "bending strength") * _duration("shear", basis)


def _duration(action: str, basis: str) -> float:
    if basis == FACTORED:
        return adjustments.load_and_resistance(action)
    return adjustments.load_duration("wind or earthquake")


def _wet_factors(lumber: Lumber) -> dict[str, float]:
    thickness = "5 in and over" if lumber.timber else "2 to 4 in"
    found: dict[str, float] = {}
    for row in references.table("wood/wet_service_CM").where("thickness", thickness):
        mild = row["one_up_to_psi"]
        value = (
            lumber.compression * lumber.compression_factor
            if row["property"] == "Fc"
            else lumber.bending * lumber.size_factor
        )
        low = bool(mild) and value <= float(mild) * units.factor("psi")
        found[row["property"]] = 1.0 if low else float(row["CM"])
    return found


@cache
def _strip_factors() -> tuple[list[float], list[float]]:
    """Return widths in m and the strip factors C_s at them, linear between."""
    table = references.table("wood/panel_adjustment_factors")
    pairs = zip(table.rows, table.si("width_in").tolist(), strict=True)
    found = [(width, float(row["value"])) for row, width in pairs if row["factor"] == "Cs"]
    return [width for width, _ in found], [value for _, value in found]


def _panel(factor: str, condition: str) -> float:
    table = references.table("wood/panel_adjustment_factors")
    rows = [row for row in table.where("factor", factor) if row["condition"] == condition]
    return float(rows[0]["value"])
