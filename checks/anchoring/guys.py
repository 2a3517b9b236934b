"""Guys: the moment that ropes and cables hold, how they share it, and what they can bear.

Angles: elevation above level at the anchor, plan angle off the normal of the lee edge, 0 for a guy
that runs straight to windward.
"""

from typing import cast

import numpy as np
from numpy.typing import ArrayLike

from ...loads.printed.ranges import fraction, not_negative, positive
from ...materials.guy_lines import End, GuyLine
from ...materials.holding_rules import value
from ...units.arrays import Array


def lever(
    height: ArrayLike, elevation: ArrayLike, plan_angle: ArrayLike, distance: ArrayLike
) -> Array:
    """Return h cos a cos psi + x sin a in m: the moment about the lee edge of a pull of 1 N.

    ``height`` h of the attachment and its ``distance`` x from the lee edge in m, ``elevation`` a
    and ``plan_angle`` psi in rad; all broadcast. Below 0 a guy would turn the piece over.
    Source: statics.
    """
    h, a, psi, x = (np.asarray(v, dtype=float) for v in (height, elevation, plan_angle, distance))
    return np.asarray(h * np.cos(a) * np.cos(psi) + x * np.sin(a))


def guy_tensions(moment: ArrayLike, arm: ArrayLike, stiffness: ArrayLike = 1.0) -> Array:
    """Return the tensions (…, guys) in N with which guys hold a ``moment`` (…) in N m.

    A rigid piece that turns about its lee edge stretches each by its `lever` ``arm`` (…, guys), so
    T_i = M k_i r_i/sum(k r2); what would slacken (r below 0) pulls nothing. ``stiffness`` k is the
    pull per stretch (`line_stiffness`), in any one unit. Infinite where a moment is to be held and
    no guy pulls. ValueError when moment or stiffness is below 0. Source: statics, elastic guys.
    """
    r = np.maximum(np.asarray(arm, dtype=float), 0.0)
    k = not_negative("stiffness", stiffness)
    M = not_negative("moment", moment)[..., None]
    weight = (k * r**2).sum(axis=-1, keepdims=True)
    none = weight <= 0.0
    shared = M * k * r / np.where(none, 1.0, weight)
    return np.where(none & (M > 0.0), np.inf, shared)


def three_guys(directions: ArrayLike, load: ArrayLike) -> Array:
    """Return the tensions (…, 3) in N of three guys that alone hold a point against a ``load``.

    ``directions`` (…, 3, 3): from the point along each guy, any length; ``load`` (…, 3) in N.
    ValueError when one would have to push, or the three lie in one plane.
    Source: statics of a point in space.
    """
    way = np.asarray(directions, dtype=float)
    along = way / np.linalg.norm(way, axis=-1, keepdims=True)
    if np.any(np.abs(np.linalg.det(along)) < 1.0e-9):
        raise ValueError("directions: expected three that do not lie in one plane")
    against = -np.asarray(load, dtype=float)[..., None]
    sides: Array = np.swapaxes(along, -1, -2)
    T = cast(Array, np.linalg.solve(sides, against))[..., 0]
    if np.any(T < 0.0):
        raise ValueError("load: one of the guys would have to push")
    return T


def line_stiffness(stiffness: ArrayLike, length: ArrayLike) -> Array:
    """Return k = EA/L in N/m from a line's ``stiffness`` EA in N and its ``length`` L in m."""
    return np.asarray(positive("stiffness", stiffness) / positive("length", length))


def line_allowable(
    breaking: ArrayLike, keeps: ArrayLike, wet_share: ArrayLike, factor: ArrayLike | None = None
) -> Array:
    """Return the allowable pull in N: breaking load x what the knot keeps x what water leaves / 5.

    ``breaking`` in N, shares from 0 to 1, ``factor`` of safety above 0; all broadcast.
    Source: one fifth of the ultimate (sign code of Jersey County IL); knots: Knots in Use 4th ed.
    """
    f = value("guy", "factor") if factor is None else factor
    kept = fraction("keeps", keeps) * fraction("wet_share", wet_share)
    return np.asarray(not_negative("breaking", breaking) * kept / positive("factor", f))


def allowable(line: GuyLine, end: End | None = None) -> float:
    """Return the allowable pull in N of a rope or cable; ``end`` is its own unless given.

    ValueError when a rope's end is asked of a cable or the other way round.
    """
    fast = line.end if end is None else end
    if fast.of != line.of:
        raise ValueError(f"end: found {fast.name!r}, which is for a {fast.of}, not a {line.of}")
    return float(line_allowable(line.breaking, fast.keeps, line.wet_share))
