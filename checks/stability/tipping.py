"""The least pressure that tips a piece: about which line, in which wind, on ground that yields."""

import numpy as np
from numpy.typing import NDArray

from ...design.structure import Weighing
from ...loads.actions import Actions
from ...units.arrays import Array, distinct, where_greatest
from ...units.frozen import ByValue
from .crossing import crossing
from .standing import DeadLoad, Standing
from .wind_moments import WindMoments

GREATEST_PRESSURE = 20.0e3
"""Velocity pressure in Pa of some 180 m/s, beyond which no gust is looked for."""

_ROUNDS = 60
_LIKELY = 8
"""Winds and lines that are worked out first, those that would tip first in calm air."""
_MARGIN = 1.0e-6
"""What tips no more than this much later may be the first: a margin for rounding."""


class LeastTipping(ByValue, frozen=True):
    """The least pressure in Pa that tips, the direction's index and the line it tips about."""

    pressure: float
    direction: int
    line: int


def tipping_pressure(
    standing: Standing,
    unit: Actions,
    weighing: Weighing | DeadLoad,
    low: float = 0.0,
    high: float = np.inf,
) -> LeastTipping:
    """Return the least of `tipping_pressures` for one weight, with where it stands."""
    weight = standing.weight(weighing)
    one = DeadLoad(weight.force.reshape(1), weight.centre.reshape(1, 3))
    return least_tipping(standing, unit, one, np.array([low]), np.array([high]))[0]


def least_tipping(
    standing: Standing, unit: Actions, weight: DeadLoad, low: Array, high: Array
) -> list[LeastTipping]:
    """Return the least of `tipping_pressures` for each of several weights (W,), and where.

    ``low`` and ``high`` are (W,) in Pa. Of the pairs of a wind and a line only those are worked out
    that may be it for any of the weights: that tip no later than some that are likely, of which a
    look at each tells, and no later than ``high``. Nothing tips before ``low``: where one of the
    likely does there, no other is looked at.
    """
    every = WindMoments.of(unit, standing.normals)
    lines = every.uplift.shape[-1]
    calm = _in_calm(standing, every, weight)
    bounds = low[:, None], high[:, None]

    def of_pairs(places: NDArray[np.intp]) -> Array:
        about = standing.about(places % lines)
        return _least_pressures(about, every.some(places), weight, *bounds)

    likely = _least_few(calm)
    ceiling = np.minimum(of_pairs(likely).min(axis=1), high)
    may = _may_tip(standing, every, weight, calm, ceiling)
    may[ceiling <= low] = False
    places = distinct(np.concatenate([np.flatnonzero(may.any(axis=0)), likely]))
    found: list[LeastTipping] = []
    for q in of_pairs(places):
        row, line = divmod(int(places[where_greatest(-q)]), lines)
        found.append(LeastTipping(float(q.min()), row // unit.uplift.shape[-1], line))
    return found


def _in_calm(standing: Standing, every: WindMoments, weight: DeadLoad) -> Array:
    """Return at which pressure (W, D, C, E) each would tip if the pivots stayed as in calm air."""
    pivot = standing.pivot(np.repeat(weight.force[:, None], len(standing.normals), axis=-1))
    hold = np.maximum(standing.hold(weight, pivot), 0.0)[:, None, None]
    over = every.over(pivot[:, None, None])
    return np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), np.inf)


def _least_few(calm: Array) -> NDArray[np.intp]:
    """Return which pairs of all (…) are among the few least for any of the weights (W, …)."""
    flat = calm.reshape(len(calm), -1)
    few = min(_LIKELY, flat.shape[1])
    return distinct(np.argpartition(flat, few - 1, axis=1)[:, :few])


def _may_tip(
    standing: Standing, every: WindMoments, weight: DeadLoad, calm: Array, q: Array
) -> NDArray[np.bool_]:
    """Return which pairs (W, D, C, E) may tip at pressures ``q`` (W,) in Pa or before.

    Where wind presses a piece into the ground what is missing of the moment only grows with the
    pressure; where it lifts, the pivot moves outward and nothing tips before it would in calm air.
    All that do are among them.
    """
    known = np.isfinite(q)[:, None, None, None]
    at = np.where(np.isfinite(q), q, 0.0)[:, None, None, None]
    tips = calm <= at * (1.0 + _MARGIN)
    pressed = every.uplift < 0.0
    if pressed.any():
        pressing = weight.force[:, None, None, None] - at * every.uplift
        sooner = np.zeros(calm.shape, dtype=bool)
        # what is missing of the moment is linear in where the line lies: greatest at either end
        for end in (pressing.min(axis=(1, 2)), pressing.max(axis=(1, 2))):
            pivot = standing.pivot(end)
            hold = standing.hold(weight, pivot)[:, None, None]
            sooner |= at * (1.0 + _MARGIN) * every.over(pivot[:, None, None]) >= hold
        tips = np.where(pressed, sooner, tips)
    return np.asarray(tips | ~known)


def tipping_pressures(
    standing: Standing,
    unit: Actions,
    weighing: Weighing | DeadLoad,
    low: float | Array = 0.0,
    high: float | Array = np.inf,
) -> Array:
    """Return the least pressures (…, D, C, E) within low..high at which it tips, inf where none.

    ``unit`` holds the actions (D, C) of 1 Pa, valid between the two pressures; a weight may be that
    (…, 1, 1) of many pieces at once, and low and high (…, 1, 1, 1) theirs. On hard ground q =
    M_resist / M_over of 1 Pa. On ground that yields, or under suction, the pressing force and so
    the pivot change with q: the least root is approached from below, where the pivot lies deepest.
    A piece that is beyond tipping already at ``low`` tips there.
    """
    winds = WindMoments.of(unit, standing.normals)
    return _least_pressures(standing, winds, standing.weight(weighing), low, high)


def _least_pressures(
    standing: Standing,
    winds: WindMoments,
    weighing: DeadLoad,
    low: float | Array,
    high: float | Array,
) -> Array:
    """Return the least pressures (…, E) at which each wind tips about each line, as above."""
    lift = winds.uplift
    weight = weighing.force[..., None]
    q = np.zeros(np.broadcast_shapes(lift.shape, weight.shape))
    over, upward = q, np.maximum(lift, 0.0)
    moves = standing.ground.yield_pressure is not None and bool(upward.any())
    for _ in range(_ROUNDS):
        pivot = standing.pivot(weight - q * upward)
        over = winds.over(pivot)
        hold = np.maximum(standing.hold(weighing, pivot), 0.0)
        before, q = q, np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), 0.0)
        if not moves or (np.abs(q - before) <= 1.0e-10 * q).all():
            break
    q = np.where(over > 0.0, q, np.inf)
    if standing.ground.yield_pressure is not None and (lift < 0.0).any():
        q = np.where(lift < 0.0, _pressed(standing, winds, weighing, high), q)
    return np.where(q <= high, np.maximum(q, low), np.inf)


def _pressed(
    standing: Standing, winds: WindMoments, weighing: DeadLoad, high: float | Array
) -> Array:
    """Return the least pressures (…, E) where the wind presses a piece into yielding ground.

    The harder it blows the farther in the pivot lies: what is missing of the moment only grows with
    q. The lower end of what is closed in on is told, which lies before it.
    """
    weight = weighing.force[..., None]
    none = np.zeros(np.broadcast_shapes(winds.uplift.shape, weight.shape))

    def missing(q: Array) -> Array:
        pivot = standing.pivot(weight - q * winds.uplift)
        return q * winds.over(pivot) - np.maximum(standing.hold(weighing, pivot), 0.0)

    most = none + np.minimum(high, GREATEST_PRESSURE)
    below, _ = crossing(missing, none, most, 1.0e-10 * weight)
    return np.where(missing(most) >= 0.0, below, np.inf)
