"""What turns a reference value of NDS into the one for this load, place and direction.

Each factor multiplies the reference value: C_D, C_M, C_t, C_eg and C_tn. Loads are "withdrawal",
"lateral" and "pull-through" (the head through the side piece).
"""

from functools import cache

from .... import references

HOTTEST = 125.0
"""Degrees Fahrenheit in sustained service beyond which NDS 2018 Table 11.3.4 is not carried on."""


def load_duration(load: str) -> float:
    """Return C_D: "wind or earthquake", "snow", "normal" (ten years) or "permanent".

    It applies to fasteners as to wood, never to stiffness. KeyError for another load.
    Source: NDS 2018 Table 2.3.2.
    """
    return _factor("CD", "any", "any", load)


def wet_service(load: str, kind: str, *, made_wet: bool, used_wet: bool) -> float:
    """Return C_M by the moisture of the wood when fastened and in use; wet is above 19 %.

    ``kind``, for "withdrawal": "smooth nail", "ring-shank nail", "toe-nailed" or "screw" (of any
    sort). For "lateral": "under 1/4 in" or "1/4 in and over", of the diameter. For "pull-through":
    "any". A smooth nail that sees wood dry out, or get wet, keeps a quarter.
    KeyError for another kind. Source: NDS 2018 Table 11.3.3.
    """
    made, used = ("wet" if wet else "dry" for wet in (made_wet, used_wet))
    return _factor("CM", load, kind, f"made {made}, used {used}")


def temperature(fahrenheit: float, *, wet: bool) -> float:
    """Return C_t for sustained service up to that many degrees Fahrenheit.

    ValueError above 125: no row is held here. Source: NDS 2018 Table 11.3.4.
    """
    if not fahrenheit <= HOTTEST:
        raise ValueError(f"temperature: found {fahrenheit:g} F, expected {HOTTEST:g} F or less")
    row = "100" if fahrenheit <= 100.0 else "125"
    return _factor("Ct", "any", "any", f"up to {row} F, {'wet' if wet else 'dry'}")


def end_grain(load: str, kind: str) -> float:
    """Return C_eg for a fastener driven into end grain.

    ``kind`` is "nail", "wood screw" or "lag screw", for "withdrawal"; "any" for "lateral". Nails
    and wood screws hold nothing against pulling out: 0. KeyError for anything else.
    Source: NDS 2018 12.2.1.2, 12.2.2, 12.2.3 (withdrawal), 12.5.2 (lateral).
    """
    return _factor("Ceg", load, kind, "end grain")


def toe_nail(load: str) -> float:
    """Return C_tn of a toe-nail: for "withdrawal" or "lateral". KeyError for another load.

    Source: NDS 2018 12.5.4.
    """
    return _factor("Ctn", load, "nail", "toe-nailed")


def load_and_resistance(of: str = "connections") -> float:
    """Return K_F phi lambda under wind, which stands in place of C_D on a strength basis.

    ``of``: "connections", "bending", "shear", "compression", "tension" or "stability" (E_min,
    which takes no lambda; that of wind is 1). KeyError for anything else.
    Source: NDS 2018 Tables 2.3.5, 2.3.6 and N3.
    """
    rows = (("KF", of), ("phi", of), ("lambda", "wind"))
    K_F, phi, time_effect = (_factor(name, "any", "any", row) for name, row in rows)
    return K_F * phi * time_effect


def time_effect(load: str) -> float:
    """Return lambda, in place of C_D on a strength basis: of "wind", "normal" or "permanent" load.

    KeyError for another load. Source: NDS 2018 Table N3.
    """
    return _factor("lambda", "any", "any", load)


def duration_ratio(load: str, basis: str) -> float:
    """Return how much more wood holds under wind than under a load that stays longer.

    ``load`` is "permanent", dead load alone, or "normal", what people do: ten years in all, as live
    load of occupancy. C_D of wind over that of the load; on the strength basis lambda.
    KeyError for another load. Source: NDS 2018 Tables 2.3.2 and N3.
    """
    if basis == "strength":
        return time_effect("wind") / time_effect(load)
    return load_duration("wind or earthquake") / load_duration(load)


@cache
def _factor(factor: str, load: str, applies_to: str, condition: str) -> float:
    wanted = (factor, load, applies_to, condition)
    for row in references.table("wood/nds_adjustment_factors").rows:
        if (row["factor"], row["load"], row["applies_to"], row["condition"]) == wanted:
            return float(row["value"])
    raise KeyError(f"NDS has no {factor} here for {load}, {applies_to}, {condition}")
