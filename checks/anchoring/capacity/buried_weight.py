"""Buried concrete: its weight, the earth that it lifts with it, and what water takes away."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....materials.holding_rules import value
from ....units.arrays import Array


def lifted_volume(
    area: ArrayLike, outline: ArrayLike, depth: ArrayLike, spread: ArrayLike | None = None
) -> Array:
    """Return V = A D + p D2 t/2 + pi D3 t2/3 in m3 within planes that spread up from the underside.

    ``area`` A in m2 and ``outline`` p in m of a convex underside at ``depth`` D in m; t is the
    tangent of ``spread`` in rad, 30 degrees from the vertical without one. All broadcast. It holds
    concrete and earth. ValueError when one is below 0.
    Source: CPUC General Order 95 rule 48.5; the volume is geometry, exact for round and square.
    """
    A, p, D = (
        not_negative("area", area),
        not_negative("outline", outline),
        not_negative("depth", depth),
    )
    t = np.tan(
        value("buried weight", "spread") if spread is None else not_negative("spread", spread)
    )
    return np.asarray(A * D + p * D**2 * t / 2.0 + np.pi * D**3 * t**2 / 3.0)


def concrete_weight(volume: ArrayLike, saturated: ArrayLike = False) -> Array:
    """Return the weight in N of a ``volume`` of concrete in m3 that holds something down.

    145 pcf at most, less that of water where the ground can be ``saturated``; both broadcast.
    ValueError when the volume is below 0.
    Source: CPUC General Order 95 rule 48.5; water: FEMA P-259 (2012) example C7.
    """
    return not_negative("volume", volume) * _unit_weight("concrete", saturated)


def earth_weight(volume: ArrayLike, saturated: ArrayLike = False) -> Array:
    """Return the weight in N of a ``volume`` of earth in m3 over something buried.

    90 pcf at most, less that of water where ``saturated``; as in ``concrete_weight``.
    """
    return not_negative("volume", volume) * _unit_weight("earth", saturated)


def block_strength(
    area: ArrayLike,
    outline: ArrayLike,
    thickness: ArrayLike,
    depth: ArrayLike,
    saturated: ArrayLike = False,
) -> Array:
    """Return the plumb pull in N that lifts a buried pad and the earth above and around it.

    ``thickness`` of the pad in m, its underside at ``depth``; the rest as in ``lifted_volume``.
    Ultimate: the factor is 1.5. ValueError also where the pad stands out of the ground.
    Source: CPUC General Order 95 rule 48.5.
    """
    t, D = positive("thickness", thickness), not_negative("depth", depth)
    if np.any(t > D):
        raise ValueError("thickness: expected no more than the depth of the underside")
    pad = not_negative("area", area) * t
    earth = np.maximum(lifted_volume(area, outline, D) - pad, 0.0)
    return concrete_weight(pad, saturated) + earth_weight(earth, saturated)


def overburden(depth: ArrayLike, saturated: ArrayLike = False) -> Array:
    """Return the pressure in Pa of the earth above ``depth`` in m, buoyant where ``saturated``."""
    return not_negative("depth", depth) * _unit_weight("earth", saturated)


def flotation(
    volume: ArrayLike, weight: ArrayLike, water: ArrayLike, factor: ArrayLike | None = None
) -> Array:
    """Return the pull in N still needed to keep a vessel under water: factor gamma_w V - W.

    ``volume`` V in m3, ``weight`` W in N, ``water`` gamma_w in N/m3; the factor is 1.3 without
    one. All broadcast; below 0 it stays down. Source: FEMA P-259 (3rd ed. 2012) example C7.
    """
    f = value("buried weight", "flotation factor") if factor is None else factor
    buoyancy = np.asarray(f, dtype=float) * not_negative("water", water)
    return buoyancy * not_negative("volume", volume) - not_negative("weight", weight)


def sinking_volume(pull: ArrayLike, unit_weight: ArrayLike, water: ArrayLike) -> Array:
    """Return V = P/(gamma - gamma_w) in m3 of what holds the ``pull`` P in N under water.

    ``unit_weight`` gamma and ``water`` gamma_w in N/m3; all broadcast. ValueError when it is not
    heavier than water. Source: FEMA P-259 (3rd ed. 2012) example C7.
    """
    P = not_negative("pull", pull)
    heavier = positive("unit_weight less water", np.subtract(unit_weight, water))
    return np.asarray(P / heavier)


def _unit_weight(what: str, saturated: ArrayLike) -> Array:
    dry = value("buried weight", what)
    wet = dry - value("buried weight", "water")
    return np.where(np.asarray(saturated, dtype=bool), wet, dry)
