"""Turning over: wind about every line on which a piece may tip, in every direction."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ..design.structure import Weighing
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..units.arrays import Array
from .judging import Check, Kind, azimuth, judged, where_greatest
from .standing import DeadLoad, Standing

_SOURCE = "statics: moments about the lee edge"
GREATEST_PRESSURE = 20.0e3
"""Velocity pressure in Pa of some 180 m/s, beyond which no gust is looked for."""

_WEIGHING: Weighing = "light"
"""Weight helps against turning over: as much as is sure counts."""

_ROUNDS = 60
_LIKELY = 4
"""Directions and cases that are worked out first, those that would tip first in calm air."""
_MARGIN = 1.0e-6
"""What tips no more than this much later may be the first: a margin for rounding."""


@dataclass(frozen=True)
class Hold:
    """What anchors hold about lines of turning: factored ``moment`` in N m and ``pull`` in N.

    Both take the lines' places (…, E) in m and return (…, E).
    """

    moment: Callable[[Array], Array]
    pull: Callable[[Array], Array]


def overturning_moment(actions: Actions, normals: Array, pivot: Array) -> Array:
    """Return the moment (…, D, C, E) in N m that turns over toward each normal (E, 2).

    ``pivot`` (…, D, C, E) is the line's place along the normal in m. M = sum(F.n z) + U arm, the
    arm from the line to where the suction acts.
    """
    sideways = actions.tilting @ normals.T
    lifted_at = actions.lifting @ normals.T
    return sideways + actions.uplift[..., None] * pivot - lifted_at


def check_overturning(
    standing: Standing,
    actions: Actions,
    factors: Factors,
    held: Hold | None = None,
) -> Check:
    """Return the worst of all gusts, directions, cases and lines; weight light, as dead load helps.

    ``actions`` has shape (Q, D, C). Both the helping and the hurting factor on dead load are tried.
    ``held`` is what anchors hold besides weight.
    """
    worst = max(
        (_worst(standing, actions, factors, held, dead) for dead in factors.sets),
        key=lambda one: one.ratio,
    )
    utilization, passes = judged(worst.demand, worst.hold)
    # what anchors hold bears no factor on weight
    bare_hold = worst.by_weight / worst.dead + (worst.hold - worst.by_weight)
    row, line = worst.at
    return Check(
        kind=Kind.OVERTURNING,
        subject="",
        demand=worst.demand,
        capacity=worst.hold,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=f"{_SOURCE}; {factors.source}",
        direction_deg=float(actions.azimuths[direction_of(actions, row)]),
        toward_deg=azimuth(standing.normals[line]),
        weighing=_WEIGHING,
        dead=worst.dead,
        wind=factors.wind,
        case=actions.names[row % len(actions.names)],
        bare=bare_hold / (worst.demand / factors.wind) if worst.demand > 0.0 else None,
    )


@dataclass(frozen=True)
class _Turned:
    """Demand and hold in N m of the action (row) and line ``at`` which a piece turns over most."""

    ratio: float
    demand: float
    hold: float
    by_weight: float
    dead: float
    at: tuple[int, int]


_ROUNDING = 1.0e-9
"""So much less, as a share, a bound may come out than what it bounds."""


def _worst(
    standing: Standing, actions: Actions, factors: Factors, held: Hold | None, dead: float
) -> _Turned:
    """Return what turns a piece over most, with one factor on dead load.

    How deep the ground is pressed, and so where each line lies, is worked out for those of the
    actions only that may be the worst: between the lines under the least and the greatest force on
    the ground moments only grow or only fall. What anchors hold does not always: then all are.
    """
    normals = standing.normals
    weight = dead * standing.structure.weight(_WEIGHING)
    pressing = weight - factors.wind * actions.uplift

    def held_at(pivot: Array) -> tuple[Array, Array]:
        by_weight = dead * standing.hold(_WEIGHING, pivot)
        return by_weight, by_weight if held is None else by_weight + held.moment(pivot)

    def ratio_of(demand: Array, hold: Array) -> Array:
        return np.where(demand > 0.0, demand / np.maximum(hold, 1.0e-12), 0.0)

    def among(rows: NDArray[np.intp]) -> _Turned:
        some = some_actions(actions, rows)
        pressed = np.repeat(pressing.reshape(-1, 1)[rows, :, None], len(normals), axis=-1)
        pivot = standing.pivot(pressed)
        demand = factors.wind * overturning_moment(some, normals, pivot)
        by_weight, hold = held_at(pivot)
        ratio = ratio_of(demand, hold)
        at = where_greatest(ratio)
        values = [float(each[at]) for each in (ratio, demand, hold, by_weight)]
        return _Turned(*values, dead=dead, at=(int(rows[at[0]]), int(at[-1])))

    if held is not None:
        return among(np.arange(actions.uplift.size))
    ends = [standing.pivot(np.full(len(normals), p)) for p in (pressing.max(), pressing.min())]
    most = [factors.wind * overturning_moment(actions, normals, pivot) for pivot in ends]
    least = np.minimum(*(held_at(pivot)[1] for pivot in ends))
    bound = ratio_of(np.maximum(*most), least).max(axis=-1).ravel()
    likely = among(np.array([bound.argmax()]))
    return among(np.flatnonzero(bound >= (1.0 - _ROUNDING) * likely.ratio))


@dataclass(frozen=True)
class _Tipping:
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
) -> _Tipping:
    """Return the least of `tipping_pressures` for one weight, with where it stands."""
    weight = standing.weight(weighing)
    one = DeadLoad(weight.force.reshape(1), weight.centre.reshape(1, 3))
    return least_tipping(standing, unit, one, np.array([low]), np.array([high]))[0]


def least_tipping(
    standing: Standing, unit: Actions, weight: DeadLoad, low: Array, high: Array
) -> list[_Tipping]:
    """Return the least of `tipping_pressures` for each of several weights (W,), and where.

    ``low`` and ``high`` are (W,) in Pa. Of the directions and cases only those are worked out that
    may be it for any of the weights: that tip no later than some that are likely, of which a look
    at each tells.
    """
    each = DeadLoad(weight.force[:, None, None], weight.centre[:, None, None])
    bounds = low[:, None, None, None], high[:, None, None, None]
    rows = np.arange(unit.uplift.size)
    if standing.ground.yield_pressure is not None and unit.uplift.any():
        calm = _in_calm(standing, unit, each)
        first = np.unique(np.argsort(calm.min(axis=-1), axis=-1, kind="stable")[:, :_LIKELY])
        likely = tipping_pressures(standing, some_actions(unit, first), each, *bounds)
        ceiling = likely.reshape(len(likely), -1).min(axis=1)
        rows = np.flatnonzero(_may_tip(standing, unit, each, calm, ceiling).any(axis=0))
    q = tipping_pressures(standing, some_actions(unit, rows), each, *bounds)
    found: list[_Tipping] = []
    for one in q:
        row, _, e = where_greatest(-one)
        found.append(_Tipping(float(one.min()), int(rows[row]) // unit.uplift.shape[-1], int(e)))
    return found


def direction_of(actions: Actions, row: int) -> int:
    """Return the direction's index of a row of actions (…, D, C) taken one after another."""
    return row // len(actions.names) % len(actions.azimuths)


def some_actions(unit: Actions, rows: NDArray[np.intp]) -> Actions:
    """Return some rows (n,) of actions (…, D, C) taken one after another, each as a direction."""
    leading = unit.uplift.ndim

    def some(values: Array) -> Array:
        return values.reshape(-1, 1, *values.shape[leading:])[rows]

    return Actions(
        unit.azimuths[rows // unit.uplift.shape[-1] % len(unit.azimuths)],
        some(unit.force),
        some(unit.tilting),
        some(unit.twist),
        some(unit.uplift),
        some(unit.lifting),
        ("",),
    )


def _in_calm(standing: Standing, unit: Actions, weight: DeadLoad) -> Array:
    """Return at which pressure (W, D C, E) each would tip if the pivots stayed as in calm air."""
    lines = len(standing.normals)
    pivot = standing.pivot(np.repeat(weight.force[..., None], lines, axis=-1))
    over = overturning_moment(unit, standing.normals, pivot)
    hold = np.maximum(standing.hold(weight, pivot), 0.0)
    q = np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), np.inf)
    return q.reshape(len(q), -1, lines)


def _may_tip(
    standing: Standing, unit: Actions, weight: DeadLoad, calm: Array, q: Array
) -> NDArray[np.bool_]:
    """Return which directions and cases (W, D C) may tip at pressures ``q`` (W,) in Pa or before.

    Where wind presses a piece into the ground what is missing of the moment only grows with the
    pressure; where it lifts, the pivot moves outward and nothing tips before it would in calm air.
    All that do are among them.
    """
    known = np.isfinite(q)
    at = np.where(known, q, 0.0)[:, None, None, None]
    lines = len(standing.normals)
    pressed = unit.uplift.reshape(-1, 1) < 0.0
    sooner = np.zeros(calm.shape, dtype=bool)
    pressing = weight.force[..., None] - at * unit.uplift[..., None]
    # what is missing of the moment is linear in where the line lies: greatest at either end
    for end in (pressing.min(axis=(1, 2)), pressing.max(axis=(1, 2))) if pressed.any() else ():
        pivot = standing.pivot(np.repeat(end, lines, axis=-1))[:, None, None]
        over = overturning_moment(unit, standing.normals, pivot)
        tips = at * (1.0 + _MARGIN) * over >= standing.hold(weight, pivot)
        sooner |= tips.reshape(calm.shape)
    in_calm = calm <= at[..., 0] * (1.0 + _MARGIN)
    tips = np.where(pressed, sooner, in_calm).any(axis=-1)
    return np.asarray(tips | ~known[:, None])


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
    weighing = standing.weight(weighing)
    weight = weighing.force[..., None]
    lines = len(standing.normals)
    lift = np.repeat(unit.uplift[..., None], lines, axis=-1)
    q = np.zeros(np.broadcast_shapes(lift.shape, weight.shape))
    over, upward = q, np.maximum(lift, 0.0)
    moves = standing.ground.yield_pressure is not None and bool(upward.any())
    for _ in range(_ROUNDS):
        pivot = standing.pivot(weight - q * upward)
        over = overturning_moment(unit, standing.normals, pivot)
        hold = np.maximum(standing.hold(weighing, pivot), 0.0)
        before, q = q, np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), 0.0)
        if not moves or (np.abs(q - before) <= 1.0e-10 * q).all():
            break
    q = np.where(over > 0.0, q, np.inf)
    if standing.ground.yield_pressure is not None and (lift < 0.0).any():
        q = np.where(lift < 0.0, _pressed(standing, unit, weighing, lift, high), q)
    return np.where(q <= high, np.maximum(q, low), np.inf)


def _pressed(
    standing: Standing, unit: Actions, weighing: DeadLoad, lift: Array, high: float | Array
) -> Array:
    """Return the least pressures (…, D, C, E) where the wind presses a piece into yielding ground.

    The harder it blows the farther in the pivot lies: what is missing of the moment only grows with
    q. It is closed in on between calm and where it tips for certain, by false position with the end
    that stays put halved (Dowell and Jarratt 1971); the lower end is told, which lies before it.
    """
    weight = weighing.force[..., None]
    shape = np.broadcast_shapes(lift.shape, weight.shape)

    def missing(q: Array) -> Array:
        pivot = standing.pivot(weight - q * lift)
        over = overturning_moment(unit, standing.normals, pivot)
        return q * over - np.maximum(standing.hold(weighing, pivot), 0.0)

    below, above = np.zeros(shape), np.zeros(shape) + np.minimum(high, GREATEST_PRESSURE)
    short, beyond = missing(below), missing(above)
    tips, before = beyond >= 0.0, np.zeros(shape)
    for _ in range(_ROUNDS):
        spread = np.where(tips, beyond - short, 1.0)
        q = np.where(tips, below - short * (above - below) / np.where(spread > 0.0, spread, 1.0), 0)
        found = missing(q)
        over = found >= 0.0
        settled = np.abs(found) <= 1.0e-10 * weight
        if (settled | ~tips).all():
            below = np.where(tips, q, below)
            break
        short = np.where(over, np.where(before > 0.0, 0.5, 1.0) * short, found)
        beyond = np.where(over, found, np.where(before < 0.0, 0.5, 1.0) * beyond)
        below, above = np.where(over, below, q), np.where(over, q, above)
        before = np.where(over, 1.0, -1.0)
    return np.where(tips, below, np.inf)


def push_that_tips(standing: Standing, weighing: Weighing, height: float) -> float:
    """Return the level push in N at ``height`` m that starts to tip it, without wind."""
    weight = np.full(len(standing.normals), standing.structure.weight(weighing))
    hold = standing.hold(weighing, standing.pivot(weight))
    return max(float(hold.min()) / height, 0.0)
