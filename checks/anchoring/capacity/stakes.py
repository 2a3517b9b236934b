"""Stakes: what holds a straight pull, a sideways pull and a slanting one, and both together.

All strengths are ultimate; over a factor they are allowable. The numbers for a kind of ground are
in references/ground/holding_rules.csv.
"""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....materials.holding_rules import value
from ....units.arrays import Array


def sideways_strength(diameter: ArrayLike, embedded: ArrayLike, wet: ArrayLike = False) -> Array:
    """Return H = 10 N/cm2 d l in N, half of it where ``wet``: sideways and slanting pulls.

    ``diameter`` d and ``embedded`` length l in m; l counts up to 40 d, beyond which no stake was
    tested. All broadcast. ValueError when d is not above 0 or l below 0.
    Source: judgement within published stake tests, 4 to 26 N/cm2; half when wet: Univ. of Illinois
    stake study as quoted in InTents, 1 June 2009.
    """
    d = positive("diameter", diameter)
    length = np.minimum(not_negative("embedded", embedded), value("stake", "most diameters") * d)
    share = np.where(np.asarray(wet, dtype=bool), value("stake", "wet share"), 1.0)
    return np.asarray(value("stake", "sideways strength") * share * d * length)


def sideways_in_sand(
    diameter: ArrayLike, embedded: ArrayLike, wet: ArrayLike = False, height: ArrayLike = 0.0
) -> Array:
    """Return H = K_p gamma d l^3/(2 (l + e)) in N: a short stiff stake pushed sideways in sand.

    The earth in front presses with 3 K_p gamma z at depth z, and the stake turns about its point.
    ``diameter`` d and ``embedded`` length l in m, l counted up to 40 d as in `sideways_strength`;
    ``wet`` halves gamma, buoyed by water; ``height`` e in m at which it is pushed above the ground.
    All broadcast. ValueError when d is not above 0, or another is below 0.
    Source: Broms 1964, Lateral Resistance of Piles in Cohesionless Soils; FHWA-HI-97-013 9.7.3.2.
    """
    d, e = positive("diameter", diameter), not_negative("height", height)
    length = np.minimum(not_negative("embedded", embedded), value("stake", "most diameters") * d)
    share = np.where(np.asarray(wet, dtype=bool), value("stake", "wet share"), 1.0)
    phi = value("stake in sand", "friction angle")
    passive = (1.0 + np.sin(phi)) / (1.0 - np.sin(phi))
    pressure = value("stake in sand", "pressure over passive") * passive
    pressure = pressure * share * value("stake in sand", "unit weight")
    reach = np.where(length + e > 0.0, length + e, 1.0)
    return np.asarray(pressure * d * length**3 / (6.0 * reach))


def straight_strength(
    diameter: ArrayLike, embedded: ArrayLike, undrained_strength: ArrayLike
) -> Array:
    """Return T = 0.5 s_u pi d (l - 0.15 m) in N: a plain rod pulled along itself out of the ground.

    ``diameter`` d and ``embedded`` length l in m; ``undrained_strength`` s_u in Pa as the ground
    is in the wet season, 0 in sand and gravel, which hold nothing. All broadcast.
    ValueError when d is not above 0 or another is below 0.
    Source: adhesion on a pile in clay (alpha method); share and lost length are judgement.
    """
    d, s_u = positive("diameter", diameter), not_negative("undrained_strength", undrained_strength)
    lost = value("stake", "top not counted")
    skin = np.pi * d * np.maximum(not_negative("embedded", embedded) - lost, 0.0)
    return np.asarray(value("stake", "adhesion share") * s_u * skin)


def stake_utilization(
    straight: ArrayLike,
    sideways: ArrayLike,
    straight_allowable: ArrayLike,
    sideways_allowable: ArrayLike,
) -> Array:
    """Return T/T_a + H/H_a, at most 1 where an anchor holds a straight and a sideways pull at once.

    All in N, broadcast. Infinite where something is asked of what holds nothing.
    ValueError when one is below 0. Source: straight-line interaction, common practice.
    """
    T, H = not_negative("straight", straight), not_negative("sideways", sideways)
    Ta = not_negative("straight_allowable", straight_allowable)
    Ha = not_negative("sideways_allowable", sideways_allowable)
    return _ratio(T, Ta) + _ratio(H, Ha)


def slanting_allowable(
    elevation: ArrayLike, straight_allowable: ArrayLike, sideways_allowable: ArrayLike
) -> Array:
    """Return the allowable pull in N on a stake at ``elevation`` (rad) above level.

    Up to 60 degrees the sideways value: the stake leans away and is pulled across itself. Steeper
    pulls are judged as T/T_a + H/H_a = 1, which is less. All broadcast.
    ValueError when the elevation lies outside 0 to 90 degrees or a value is below 0.
    Source: stake tests at 45 degrees (UK HSE, BS EN 14960); the bound is judgement.
    """
    a = not_negative("elevation", elevation)
    if np.any(a > np.pi / 2.0 + 1.0e-12):
        raise ValueError(f"elevation: found {a.max():g}, expected up to {np.pi / 2:.4f} rad")
    Ha = not_negative("sideways_allowable", sideways_allowable)
    steep = stake_utilization(np.sin(a), np.maximum(np.cos(a), 0.0), straight_allowable, Ha)
    across = a <= value("stake", "slanting to") + 1.0e-12
    return np.where(across, Ha, np.minimum(Ha, _ratio(np.ones_like(steep), steep)))


def on_a_slope(up: ArrayLike, downhill: ArrayLike, slope: ArrayLike) -> tuple[Array, Array]:
    """Return a pull's part out of the slope and its part down along it, in N.

    N = T cos a + H sin a and S = H cos a - T sin a of the plumb pull ``up`` T and the level pull
    ``downhill`` H (below 0: uphill), on a ``slope`` a in rad. All broadcast; a pull without bound
    has none in either part, on level ground in its own. Source: statics.
    """
    T, H, a = (np.asarray(one, dtype=float) for one in (up, downhill, slope))
    plumb, level = (np.where(np.isinf(one), 0.0, one) for one in (T, H))
    leans = np.sin(a) != 0.0
    out = plumb * np.cos(a) + level * np.sin(a)
    along = level * np.cos(a) - plumb * np.sin(a)
    return (
        np.where(np.isinf(T) | (np.isinf(H) & leans), np.inf, out),
        np.where(np.isinf(H), H, np.where(np.isinf(T) & leans, -np.inf, along)),
    )


def _ratio(asked: Array, holds: Array) -> Array:
    """Return asked/holds; 0 where nothing is asked, infinite where nothing holds."""
    nothing = holds <= 0.0
    ratio = asked / np.where(nothing, 1.0, holds)
    return np.where(nothing, np.where(asked > 0.0, np.inf, 0.0), ratio)
