"""Turning over: wind about every line on which a piece may tip, in every direction."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from ...design.structure import Weighing
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.arrays import Array, where_greatest
from ...units.frozen import ByIdentity, ByValue, replace
from ..judged.judging import Check, Kind, azimuth, judged
from .standing import Standing
from .wind_moments import WindMoments

_SOURCE = "statics: moments about the lee edge"

_WEIGHING: Weighing = "light"
"""Weight helps against turning over: as much as is sure counts."""


class Hold(ByValue, frozen=True):
    """What anchors hold about lines of turning: factored ``moment`` in N m and ``pull`` in N.

    Both take the lines' places (…, E) in m and return (…, E).
    """

    moment: Callable[[Array], Array]
    pull: Callable[[Array], Array]


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
    return Check(
        kind=Kind.OVERTURNING,
        subject="",
        demand=worst.demand,
        capacity=worst.hold,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=f"{_SOURCE}; {factors.source}",
        direction_deg=float(actions.azimuths[actions.direction_of(worst.row)]),
        toward_deg=azimuth(standing.normals[worst.line]),
        weighing=_WEIGHING,
        dead=worst.dead,
        wind=factors.wind,
        case=actions.names[worst.row % len(actions.names)],
        bare=bare_hold / (worst.demand / factors.wind) if worst.demand > 0.0 else None,
    )


class _Turned(ByValue, frozen=True):
    """Demand and hold in N m of the action's ``row`` and the ``line`` that turn it over most."""

    ratio: float
    demand: float
    hold: float
    by_weight: float
    dead: float
    row: int
    line: int


class _Turning(ByIdentity, frozen=True):
    """Factored winds about lines against weight with one factor ``dead`` and what anchors hold.

    ``lines`` are so many as stand in all.
    """

    standing: Standing
    winds: WindMoments
    dead: float
    held: Hold | None
    lines: int

    def at(self, pivot: Array) -> tuple[Array, Array, Array]:
        """Return the demand, the hold and that by weight alone, in N m, about lines there."""
        by_weight = self.dead * self.standing.hold(_WEIGHING, pivot)
        hold = by_weight if self.held is None else by_weight + self.held.moment(pivot)
        return self.winds.over(pivot), hold, by_weight

    @property
    def pressing(self) -> Array:
        """Return the force in N with which each wind leaves the piece on the ground."""
        return self.dead * self.standing.structure.weight(_WEIGHING) - self.winds.uplift

    def worst(self, places: NDArray[np.intp]) -> _Turned:
        """Return what turns over most; ``places`` are those of each wind and line among all."""
        found = self.at(self.standing.pivot(self.pressing))
        ratio = _ratio(*found[:2])
        at = where_greatest(ratio)
        row, line = divmod(int(places.reshape(ratio.shape)[at]), self.lines)
        values = [float(each[at]) for each in (ratio, *found)]
        return _Turned(*values, dead=self.dead, row=row, line=line)

    def some(self, places: NDArray[np.intp]) -> "_Turning":
        """Return some pairs (P,) of a wind and a line alone."""
        about = self.standing.about(places % self.lines)
        return replace(self, standing=about, winds=self.winds.some(places))


_ROUNDING = 1.0e-9
"""So much less, as a share, a bound may come out than what it bounds."""


def _worst(
    standing: Standing, actions: Actions, factors: Factors, held: Hold | None, dead: float
) -> _Turned:
    """Return what turns a piece over most, with one factor on dead load.

    How deep the ground is pressed, and so where each line lies, is worked out only for those pairs
    of an action and a line that may be the worst: between the lines under the least and the
    greatest force on the ground moments only grow or only fall. What anchors hold does not always:
    then all pairs are worked out.
    """
    winds = standing.winds(actions).times(factors.wind)
    lines = len(standing.normals)
    every = _Turning(standing, winds, dead, held, lines)
    if held is not None:
        return every.worst(np.arange(winds.uplift.size))
    pressing = every.pressing
    ends = [standing.pivot(np.full(lines, p)) for p in (pressing.max(), pressing.min())]
    (most, least, _), (more, less, _) = (every.at(pivot) for pivot in ends)
    bound = _ratio(np.maximum(most, more), np.minimum(least, less))
    likely = np.flatnonzero(bound == bound.max())
    ratio = every.some(likely).worst(likely).ratio
    may = np.flatnonzero(bound >= (1.0 - _ROUNDING) * ratio)
    return every.some(may).worst(may)


def _ratio(demand: Array, hold: Array) -> Array:
    return np.where(demand > 0.0, demand / np.maximum(hold, 1.0e-12), 0.0)


def push_that_tips(standing: Standing, weighing: Weighing, height: float) -> float:
    """Return the level push in N at ``height`` m that starts to tip it, without wind."""
    weight = np.full(len(standing.normals), standing.structure.weight(weighing))
    hold = standing.hold(weighing, standing.pivot(weight))
    return max(float(hold.min()) / height, 0.0)
