"""The factors by which what a fastener holds is turned into what it holds in one joint."""

from math import pi

from ....materials.fastener import Fastener
from ..terms.driven import Driven
from . import adjustments
from .crown import crown_factor
from .dowel_bearing import from_quarter_inch

WARMEST = 100.0
"""Degrees Fahrenheit that a yard piece is taken to stay below for long: C_t = 1."""


def under_wind(basis: str) -> float:
    """Return C_D of wind; on the strength basis K_F phi lambda, which stands in its place."""
    if basis == "strength":
        return adjustments.load_and_resistance()
    return adjustments.load_duration("wind or earthquake")


def withdrawal_factor(
    fastener: Fastener, driven: Driven, duration: float
) -> tuple[float, list[str]]:
    """Return what turns a reference value against pulling out, and why where it is nothing.

    ``duration`` is that of the load. Staples as smooth nails.
    """
    factor = duration * _wet("withdrawal", _withdrawn_as(fastener, driven), driven)
    factor *= adjustments.temperature(WARMEST, wet=not driven.stays_dry)
    if driven.toe_nailed:
        factor *= adjustments.toe_nail("withdrawal")
    if driven.into == "panel edge":
        return 0.0, ["panel edge"]
    if driven.into == "end grain":
        grain = {"nail": "nail", "staple": "nail", "lag screw": "lag screw"}
        share = adjustments.end_grain("withdrawal", grain.get(fastener.kind, "wood screw"))
        return factor * share, ["end grain"] if share == 0.0 else []
    return factor, []


def lateral_factor(fastener: Fastener, driven: Driven, duration: float) -> float:
    """Return what turns a reference lateral value, with that of a staple's crown.

    Edges of panels as end grain (judgement).
    """
    size = "1/4 in and over" if bool(from_quarter_inch(fastener.diameter)) else "under 1/4 in"
    factor = duration * _wet("lateral", size, driven)
    factor *= adjustments.temperature(WARMEST, wet=not driven.stays_dry)
    if fastener.kind == "staple":
        factor *= float(crown_factor(pi / 2.0 if driven.crown_across else 0.0))
    if driven.toe_nailed:
        return factor * adjustments.toe_nail("lateral")
    if driven.into in ("end grain", "panel edge"):
        factor *= adjustments.end_grain("lateral", "any")
    return factor


def head_factor(driven: Driven, duration: float) -> float:
    """Return what turns a reference value against the head pulling through."""
    factor = duration * _wet("pull-through", "any", driven)
    return factor * adjustments.temperature(WARMEST, wet=not driven.stays_dry)


def _withdrawn_as(fastener: Fastener, driven: Driven) -> str:
    if driven.toe_nailed:
        return "toe-nailed"
    if fastener.shank == "ring":
        return "ring-shank nail"
    return "smooth nail" if fastener.kind in ("nail", "staple") else "screw"


def _wet(load: str, kind: str, driven: Driven) -> float:
    """Return C_M: of what is not said, the worse of wet and dry."""
    made = (False, True) if driven.made_wet is None else (driven.made_wet,)
    if driven.stays_dry:
        made, used = ((False,) if driven.made_wet is None else made), (False,)
    else:
        used = (False, True)
    return min(
        adjustments.wet_service(load, kind, made_wet=one, used_wet=other)
        for one in made
        for other in used
    )
