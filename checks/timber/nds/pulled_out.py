"""Reference values of one fastener against pulling: at its point, at its head, at a washer."""

from functools import cache
from math import inf, pi

from .... import references, units
from ....materials.fastener import Fastener
from ..terms.driven import Driven, driving_rule
from ..terms.joint_material import JointMaterial
from .nds_numbers import nds_number
from .withdrawal import (
    HANDBOOK,
    kinds,
    least_head,
    mean_withdrawal,
    pull_through,
    reference_withdrawal,
)


def at_its_point(
    fastener: Fastener, main: JointMaterial, holding: float
) -> tuple[float, float | None]:
    """Return the reference value against pulling out, and the mean of tests, both in N.

    ``holding`` in m is the length that holds; a staple's two legs each hold as a nail. The mean is
    None where no equation holds. ValueError where the wood or kind has no value.
    In a panel's face the equivalent specific gravity of panels counts.
    """
    kind = fastener.withdrawal_kind
    gravity = main.withdrawal_gravity
    if kind is None or gravity is None:
        raise ValueError(main.name)
    length = fastener.legs * holding
    reference = float(reference_withdrawal(kind, fastener.diameter, gravity)) * length
    if kind not in kinds(HANDBOOK) or main.gravity_at_12 is None:
        return reference, None
    return reference, float(mean_withdrawal(kind, fastener.diameter, main.gravity_at_12)) * length


def at_its_head(fastener: Fastener, driven: Driven, through: float) -> float:
    """Return the reference value against its head pulling ``through`` so many m, in N.

    A flat head counts what is left under its countersink. Infinite under steel and of toe-nails;
    0 where the head's size is not known or below those published. A staple's crown is no round
    head: what it counts as has no least size. ValueError where the wood has no value.
    """
    if driven.plate is not None or driven.side.is_steel or driven.toe_nailed:
        return inf
    if driven.side.gravity is None:
        raise ValueError(driven.side.name)
    across = driven.washer or fastener.head_across
    if across is None or (fastener.crown is None and across < least_head()):
        return 0.0
    sunk = 0.0 if driven.washer else fastener.countersink or 0.0
    return float(pull_through(across, max(through - sunk, 0.0), driven.side.gravity))


def at_its_washer(fastener: Fastener, driven: Driven) -> float:
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
    hole = fastener.diameter + driving_rule("bolt hole over bolt") * units.factor("in")
    return least * share * pi / 4.0 * max(across**2 - hole**2, 0.0)


def _across_grain(stuff: JointMaterial) -> float | None:
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


def least_penetration(fastener: Fastener) -> float:
    """Return how far in m a point has to reach into its piece to count; a bolt's does not.

    Six diameters of nails and screws; fourteen of a staple's leg, since only so far driven is it
    said to hold as two nails. Source: NDS 2018 12.1.5.6, 12.1.6.5; EN 1995-1-1 8.4(3).
    """
    if fastener.kind == "bolt":
        return 0.0
    times = nds_number("least penetration") if fastener.kind != "staple" else _of_a_staple()
    return times * fastener.diameter


@cache
def _of_a_staple() -> float:
    rule = "least penetration over leg diameter"
    return float(references.table("wood/staple_rules").one("rule", rule)["value"])
