"""Turning over: wind about every line on which a piece may tip, in every direction."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ..design.shapes.shape import Array
from ..design.structure import Weighing
from ..loads.actions import Actions
from ..loads.combinations import Factors
from .judging import Check, Kind, azimuth, judged
from .standing import Standing, Weight

SOURCE = "statics: moments about the lee edge"
GREATEST_PRESSURE = 20.0e3
"""Velocity pressure in Pa of some 180 m/s, beyond which no gust is looked for."""

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
    worst: tuple[float, float, float, float, float, tuple[int, ...]] | None = None
    weighing: Weighing = "light"
    weight = standing.structure.weight(weighing)
    for dead in factors.sets:
        pressing = dead * weight - factors.wind * actions.uplift
        pivot = standing.pivot(np.repeat(pressing[..., None], len(standing.normals), axis=-1))
        demand = factors.wind * overturning_moment(actions, standing.normals, pivot)
        by_weight = dead * standing.hold(weighing, pivot)
        hold = by_weight if held is None else by_weight + held.moment(pivot)
        ratio = np.where(demand > 0.0, demand / np.maximum(hold, 1.0e-12), 0.0)
        at = np.unravel_index(int(ratio.argmax()), ratio.shape)
        where = tuple(int(i) for i in at)
        if worst is None or ratio[at] > worst[0]:
            found = (float(demand[at]), float(hold[at]), float(by_weight[at]))
            worst = (float(ratio[at]), *found, dead, where)
    assert worst is not None
    _, demand_, hold_, weight_, dead, where = worst
    utilization, passes = judged(demand_, hold_)
    bare_hold = weight_ / dead + (hold_ - weight_)  # what anchors hold bears no factor on weight
    *_, d, c, e = where
    return Check(
        kind=Kind.OVERTURNING,
        subject="",
        demand=demand_,
        capacity=hold_,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=f"{SOURCE}; {factors.source}",
        direction_deg=float(actions.azimuths[d]),
        toward_deg=azimuth(standing.normals[e]),
        weighing=weighing,
        dead=dead,
        wind=factors.wind,
        case=actions.names[c],
        bare=bare_hold / (demand_ / factors.wind) if demand_ > 0.0 else None,
    )


@dataclass(frozen=True)
class Tipping:
    """The least pressure in Pa that tips, the direction's index and the line it tips about."""

    pressure: float
    direction: int
    line: int


def tipping_pressure(
    standing: Standing,
    unit: Actions,
    weighing: Weighing,
    low: float = 0.0,
    high: float = np.inf,
) -> Tipping:
    """Return the least of `tipping_pressures`, with where it stands.

    Of the directions and cases only those are worked out that may be it: that tip no later than
    some that are likely, of which a look at each tells.
    """
    rows = np.arange(unit.uplift.size)
    if standing.ground.yield_pressure is not None and unit.uplift.any():
        calm, likely = _in_calm(standing, unit, weighing), _LIKELY
        first = np.sort(np.argsort(calm.min(axis=-1), kind="stable")[:likely])
        ceiling = tipping_pressures(standing, some_actions(unit, first), weighing, low, high).min()
        rows = np.flatnonzero(_may_tip(standing, unit, weighing, calm, float(ceiling)))
    q = tipping_pressures(standing, some_actions(unit, rows), weighing, low, high)
    row, _, e = np.unravel_index(int(q.argmin()), q.shape)
    return Tipping(float(q.min()), int(rows[row]) // unit.uplift.shape[-1], int(e))


def some_actions(unit: Actions, rows: NDArray[np.intp]) -> Actions:
    """Return some of the directions and cases (n,) of actions (D, C), each as a direction."""
    case = unit.uplift.shape[-1]

    def some(values: Array) -> Array:
        return values.reshape(-1, 1, *values.shape[2:])[rows]

    return Actions(
        unit.azimuths[rows // case],
        some(unit.force),
        some(unit.tilting),
        some(unit.twist),
        some(unit.uplift),
        some(unit.lifting),
        ("",),
    )


def _in_calm(standing: Standing, unit: Actions, weighing: Weighing) -> Array:
    """Return at which pressure (D C, E) each would tip if the pivots stayed as in calm air."""
    lines = len(standing.normals)
    pivot = standing.pivot(np.full(lines, standing.structure.weight(weighing)))
    over = overturning_moment(unit, standing.normals, pivot).reshape(-1, lines)
    hold = np.maximum(standing.hold(weighing, pivot), 0.0)
    return np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), np.inf)


def _may_tip(
    standing: Standing, unit: Actions, weighing: Weighing, calm: Array, q: float
) -> NDArray[np.bool_]:
    """Return which directions and cases (D C,) may tip at a pressure ``q`` in Pa or before.

    Where wind presses a piece into the ground what is missing of the moment only grows with the
    pressure; where it lifts, the pivot moves outward and nothing tips before it would in calm air.
    """
    if not np.isfinite(q):
        return np.ones(len(calm), dtype=bool)
    lift = np.repeat(unit.uplift.reshape(-1, 1), calm.shape[-1], axis=1)
    pivot = standing.pivot(standing.structure.weight(weighing) - q * lift)
    over = overturning_moment(unit, standing.normals, pivot.reshape(*unit.uplift.shape, -1))
    hold = np.maximum(standing.hold(weighing, pivot), 0.0)
    tips = q * (1.0 + _MARGIN) * over.reshape(calm.shape) >= hold
    return np.asarray(np.where(lift < 0.0, tips, calm <= q * (1.0 + _MARGIN)).any(axis=1))


def tipping_pressures(
    standing: Standing,
    unit: Actions,
    weighing: Weighing | Weight,
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
    upward = np.maximum(lift, 0.0)
    for _ in range(_ROUNDS):
        pivot = standing.pivot(weight - np.where(np.isfinite(q), q, 0.0) * upward)
        over = overturning_moment(unit, standing.normals, pivot)
        hold = np.maximum(standing.hold(weighing, pivot), 0.0)
        after = np.where(over > 0.0, hold / np.where(over > 0.0, over, 1.0), np.inf)
        settled = np.allclose(after, q, rtol=1.0e-10, atol=0.0, equal_nan=True)
        q = after
        if settled or standing.ground.yield_pressure is None or not upward.any():
            break
    if standing.ground.yield_pressure is not None and (lift < 0.0).any():
        q = np.where(lift < 0.0, _pressed(standing, unit, weighing, lift, high), q)
    return np.where(q <= high, np.maximum(q, low), np.inf)


def _pressed(
    standing: Standing, unit: Actions, weighing: Weight, lift: Array, high: float | Array
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
