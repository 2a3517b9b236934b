"""What one fastener of a joint holds: pulled out, its head pulled through, pushed sideways."""

from dataclasses import dataclass, replace
from math import cos, inf, pi, radians

from .. import references, units
from ..materials import fasteners
from ..materials.fastener import Fastener
from . import adjustments
from .dowel_bearing import dowel_bearing, from_quarter_inch
from .joint_material import Stuff
from .lateral import (
    LEAST_PENETRATION,
    TIP,
    YieldLimits,
    main_bearing_length,
    penetrates_enough,
    single_shear,
)
from .withdrawal import (
    HANDBOOK,
    MEAN_OVER_ALLOWABLE,
    holding_length,
    kinds,
    mean_withdrawal,
    pull_through,
    withdrawal,
)

SLANT = radians(30.0)
TOE_SIDE = 1.0 / 3.0
"""A toe-nail starts a third of its length up the side and slants by 30 degrees (NDS 12.1.6.3)."""

WARMEST = 100.0
"""Degrees Fahrenheit that a yard piece is taken to stay below for long: C_t = 1."""


@dataclass(frozen=True)
class Driven:
    """How a fastener is driven; lengths in m.

    ``through`` the side piece (with ``plate`` of steel under the head) into the piece that holds
    the point, whose wood reaches ``room`` along it and lies as ``into`` says. ``side_end`` tells
    that the side piece is met in its end grain or edge.
    """

    side: Stuff
    main: Stuff
    through: float
    room: float
    into: str
    plate: float | None = None
    washer: float | None = None
    toe_nailed: bool = False
    made_wet: bool | None = None
    stays_dry: bool = False


@dataclass(frozen=True)
class Capacity:
    """What one fastener holds in N, adjusted for this joint: by NDS, and the Wood Handbook's mean.

    ``out`` against pulling out, ``head`` against its head pulling through (infinite where a plate
    or steel lies beneath it), ``sideways`` by the yield mode ``mode``. ``mean_out`` is the average
    load at which such fasteners came out in tests, None where no equation holds. Lengths in m:
    ``penetration`` into the piece that holds the point, of which ``holding`` holds;
    ``least_penetration`` is asked. ``reasons`` are words: why something counts nothing.
    """

    out: float
    head: float
    sideways: float
    mode: str
    penetration: float
    least_penetration: float
    holding: float
    mean_out: float | None
    factor_out: float
    factor_sideways: float
    comes_out: bool
    reasons: tuple[str, ...] = ()

    @property
    def pull(self) -> float:
        """Return what it holds along itself in N: the lesser of point and head."""
        return min(self.out, self.head)


def capacity(fastener: Fastener, driven: Driven, basis: str) -> Capacity:
    """Return what one fastener holds under wind on a basis of judgement.

    Reference values x C_D C_M C_t C_eg C_tn; on the strength basis K_F phi lambda for C_D. Panel
    edges hold nothing against pulling out, since no value is published, and sideways as end grain
    does (judgement). Less than six diameters of penetration holds nothing at all.
    ValueError where no value is published for what it goes through or into.
    Source: NDS 2018 11.3, 12.2, 12.3, 12.5.
    """
    known = as_known(fastener)
    L, D = known.need("length"), known.diameter
    through, p = _lengths(L, driven)
    comes_out = p > driven.room + 1.0e-6 and known.kind != "bolt"
    p = min(p, driven.room)
    reasons: list[str] = []
    duration = (
        adjustments.load_and_resistance()
        if basis == "strength"
        else adjustments.load_duration("wind or earthquake")
    )
    reaches = known.kind == "bolt" or bool(penetrates_enough(p, D))
    if known.kind == "bolt":
        reaches = through + driven.room - 1.0e-6 <= L
        reasons += [] if reaches else ["too short for a nut"]
    elif not reaches:
        reasons.append("too short")
    limits = _sideways(known, driven, through, p)
    C_lateral = duration * _lateral_factor(known, driven)
    lateral = float(limits.value) * C_lateral if limits is not None and reaches else 0.0
    if known.kind == "bolt":
        out, mean, holding, C_out = _washer(known, driven, duration), None, p, 1.0
        reasons += ["no washer value"] if out <= 0.0 else []
        head = inf
    else:
        holding = _holding(known, p)
        C_out, why = _withdrawal_factor(known, driven, duration)
        reasons += why
        out, mean = _out(known, driven.main, holding)
        out = out * C_out if reaches else 0.0
        head = _head(known, driven, through, duration)
        reasons += ["head unknown"] if head <= 0.0 else []
    if driven.into in ("end grain", "panel edge"):
        mean = None
    return Capacity(
        out=out,
        head=head,
        sideways=lateral,
        mode=str(limits.mode) if limits is not None else "",
        penetration=p,
        least_penetration=0.0 if known.kind == "bolt" else LEAST_PENETRATION * D,
        holding=holding,
        mean_out=mean,
        factor_out=C_out,
        factor_sideways=C_lateral,
        comes_out=comes_out,
        reasons=tuple(reasons),
    )


def as_known(fastener: Fastener) -> Fastener:
    """Return a fastener with what is missing of a deck screw as a wood screw of its size has it.

    Deck screws are not standardised: root and steel are taken from the wood screw of the same
    number where the maker's sheet is silent (judgement).
    """
    if fastener.kind != "deck screw" or fastener.bending_yield is not None:
        return fastener
    inches = fastener.diameter / units.factor("in")
    try:
        alike = fasteners.find(f"wood screw {inches:.4g} in x 2 in")
    except (KeyError, ValueError):
        return fastener
    length = fastener.length
    return replace(
        fastener,
        bending_yield=alike.bending_yield,
        root_diameter=fastener.root_diameter or alike.root_diameter,
        head_diameter=fastener.head_diameter or alike.head_diameter,
        thread_length=fastener.thread_length or (None if length is None else length * 2.0 / 3.0),
    )


def _lengths(L: float, driven: Driven) -> tuple[float, float]:
    """Return what it goes through and how far it reaches beyond, in m."""
    if driven.toe_nailed:
        return L * TOE_SIDE, L * cos(SLANT) - L * TOE_SIDE
    return driven.through, max(L - driven.through - (driven.plate or 0.0), 0.0)


def _holding(fastener: Fastener, p: float) -> float:
    threaded = fastener.kind != "nail" or fastener.shank == "ring"
    thread = fastener.thread_length if threaded else None
    tip = fastener.tip_length if fastener.kind == "lag screw" else None
    return float(holding_length(p, inf if thread is None else thread, tip or 0.0))


def _out(fastener: Fastener, main: Stuff, holding: float) -> tuple[float, float | None]:
    """Return the reference value against pulling out, and the mean of tests, in N."""
    kind = fastener.withdrawal_kind
    if kind is None or main.gravity is None:
        raise ValueError(main.name)
    reference = float(withdrawal(kind, fastener.diameter, main.gravity)) * holding
    if kind not in kinds(HANDBOOK) or main.gravity_at_12 is None:
        return reference, None
    mean = float(mean_withdrawal(kind, fastener.diameter, main.gravity_at_12)) * holding
    return reference, mean


def mean_over_factor(mean: float) -> float:
    """Return the Wood Handbook's average in N over the stated factor."""
    return mean / MEAN_OVER_ALLOWABLE


def _withdrawal_factor(
    fastener: Fastener, driven: Driven, duration: float
) -> tuple[float, list[str]]:
    kind = "ring-shank nail" if fastener.shank == "ring" else "smooth nail"
    if fastener.kind != "nail":
        kind = "screw"
    if driven.toe_nailed:
        kind = "toe-nailed"
    factor = duration * _wet("withdrawal", kind, driven)
    factor *= adjustments.temperature(WARMEST, wet=not driven.stays_dry)
    if driven.toe_nailed:
        factor *= adjustments.toe_nail("withdrawal")
    if driven.into == "panel edge":
        return 0.0, ["panel edge"]
    if driven.into == "end grain":
        grain = {"nail": "nail", "lag screw": "lag screw"}.get(fastener.kind, "wood screw")
        share = adjustments.end_grain("withdrawal", grain)
        return factor * share, ["end grain"] if share == 0.0 else []
    return factor, []


def _lateral_factor(fastener: Fastener, driven: Driven) -> float:
    size = "1/4 in and over" if bool(from_quarter_inch(fastener.diameter)) else "under 1/4 in"
    factor = _wet("lateral", size, driven)
    factor *= adjustments.temperature(WARMEST, wet=not driven.stays_dry)
    if driven.toe_nailed:
        return factor * adjustments.toe_nail("lateral")
    if driven.into in ("end grain", "panel edge"):
        factor *= adjustments.end_grain("lateral", "any")
    return factor


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


def _head(fastener: Fastener, driven: Driven, through: float, duration: float) -> float:
    """Return what keeps the head from pulling through, in N."""
    if driven.plate is not None or driven.side.is_steel or driven.toe_nailed:
        return inf
    if driven.side.gravity is None:
        raise ValueError(driven.side.name)
    across = driven.washer or fastener.head_diameter
    if across is None:
        return 0.0
    reference = float(pull_through(across, through, driven.side.gravity))
    factor = duration * _wet("pull-through", "any", driven)
    return reference * factor * adjustments.temperature(WARMEST, wet=not driven.stays_dry)


def _sideways(fastener: Fastener, driven: Driven, through: float, p: float) -> YieldLimits | None:
    """Return the reference lateral value by mode; None where nothing bears."""
    if driven.main.gravity is None:
        raise ValueError(driven.main.name)
    D = fastener.diameter
    if driven.plate is not None or driven.side.is_steel:
        side_length, side_bearing = driven.plate or through, _steel_bearing()
    elif driven.side.gravity is None:
        raise ValueError(driven.side.name)
    else:
        side_length, side_bearing = through, float(dowel_bearing(driven.side.gravity, D))
    tip = 0.0 if fastener.kind == "bolt" else fastener.tip_length or TIP * D
    bearing = float(main_bearing_length(p, tip))
    if bearing <= 0.0 or side_length <= 0.0:
        return None
    return single_shear(
        fastener.yielding_diameter,
        side_length,
        bearing,
        side_bearing,
        float(dowel_bearing(driven.main.gravity, D)),
        fastener.need("bending_yield"),
        pi / 2.0,
        D,
    )


def _steel_bearing() -> float:
    """Return the dowel bearing strength of thin galvanised plate, the least of steel, in Pa."""
    row = references.table("wood/dowel_bearing_other").one("case", "steel gage A653 33")
    return float(row["formula"]) * units.factor("psi")


def _washer(fastener: Fastener, driven: Driven, duration: float) -> float:
    """Return what washers bear on the wood in N: Fc_perp x C_M x area less the hole's.

    The hole is 1/16 in wider than the bolt (NDS 12.1.3.2). Bearing takes no C_D; on the strength
    basis its K_F phi = 1.67 x 0.9 is not credited (judgement). 0 where the wood has no value here.
    Source: NDS 2018 3.10.2, Supplement Table 4A.
    """
    across = driven.washer or fastener.head_diameter
    least: float | None = None
    for one in (driven.side, driven.main):
        strength = None if one.is_steel else _across_grain(one)
        if strength is None and not one.is_steel:
            return 0.0
        if strength is not None:
            least = strength if least is None else min(least, strength)
    if across is None or least is None:
        return 0.0
    wet = references.table("wood/wet_service_CM").one("property", "Fc_perp")
    share = 1.0 if driven.stays_dry else float(wet["CM"])
    hole = fastener.diameter + units.factor("in") / 16.0
    return least * share * pi / 4.0 * max(across**2 - hole**2, 0.0)


def _across_grain(stuff: Stuff) -> float | None:
    """Return the design value Fc_perp in Pa of the wood's species; None where none is held."""
    rows = references.table("wood/lumber_design_values").rows
    row = references.table("materials").where("name", stuff.name)
    species = row[0]["gravity_row"].split(" (")[0] if row else ""
    values = [
        float(each["Fc_perp_psi"])
        for each in rows
        if species and each["species"].startswith(species)
    ]
    return min(values) * units.factor("psi") if values else None
