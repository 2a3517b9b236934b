"""At which gust the first joint of many pieces is asked what its book lets it hold.

What goes through a joint grows with wind and weight alike: twice of both is twice as much. So what
the model gives for one weight at several pressures tells it for every weight and pressure.
"""

from collections.abc import Callable

import numpy as np

from ...loads.actions import body_actions
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from ..acting.load_cases import LoadSet, load_cases
from ..acting.point_loads import point_loads
from ..examination import Examination, strength_in_ways
from ..limits import GREATEST_GUST
from ..strength import worse_of
from .varied import Varied

_FIRST = 200.0
"""Pressure in Pa, of some 40 mph, at which joints are looked at first beside calm air."""

_ROUNDS = 3
_NEAR = 0.1
_GREATEST = 0.5 * 1.226 * (1.5 * GREATEST_GUST) ** 2
"""Pressure in Pa beyond which no joint is looked at."""


class JointsGive(ByIdentity, frozen=True):
    """How far the joint used most is ``used`` (k,) at ``pressures`` (k,) in Pa, typical weight.

    ``names`` (k,) are those joints. No factors on loads; against what the book lets it hold.
    """

    pressures: Array
    used: Array
    names: tuple[str, ...]

    def at(self, heavier: Array, inputs: Varied) -> Array:
        """Return the pressures (n,) in Pa at which the first joint is used up, infinite if never.

        ``heavier`` (n,) is the weight over the typical one.
        """
        wanted = inputs.fastening / np.maximum(heavier, 1.0e-9)
        # straight on beyond the ends, as the last two have it
        below = _beyond(wanted, self.used[:2], self.pressures[:2])
        above = _beyond(wanted, self.used[-2:], self.pressures[-2:])
        found = np.interp(wanted, self.used, self.pressures)
        found = np.where(wanted < self.used[0], np.maximum(below, 0.0), found)
        found = np.where(wanted > self.used[-1], above, found)
        return found * heavier / inputs.coefficient

    @property
    def first(self) -> str:
        """Return the joint that goes first by best estimate."""
        return self.names[int(np.abs(self.used - 1.0).argmin())]


def joints_give(found: Examination) -> JointsGive | None:
    """Return how joints are used over pressures; None of a piece without any."""
    return _table(_use_of(found)) if found.joints else None


_Use = Callable[[float], tuple[float, str]]


def _use_of(found: Examination) -> _Use:
    """Return what tells how far the joint used most is used at a pressure in Pa, and its name."""
    at, exposed = found.at, found.exposed
    bare = replace(at.factors_of_parts, helping=1.0, hurting=1.0, wind=1.0)
    none, only = point_loads(()), (LoadSet("typical", 1.0, 1.0),)
    bodies = np.ones(len(exposed.limit))

    def use(pressure: float) -> tuple[float, str]:
        actions = body_actions(
            exposed,
            np.array([pressure]),
            ratio=bodies,
            directionality=bodies,
            gust=np.ones(len(exposed.azimuths)),
        )
        cases = load_cases(
            at.structure,
            np.moveaxis(actions.wrench, 1, 3),
            exposed.azimuths,
            actions.names,
            bare,
            at.basis,
            none,
            at.standing.slope,
            only,
        )
        strength = worse_of(strength_in_ways(at, found.held, cases, none, bare))
        worst = max(strength.joints, key=lambda one: one.check.rank)
        return worst.check.used, worst.row.name

    return use


def _table(use: _Use) -> JointsGive:
    """Return the table: in calm air, in some wind, and near where the first joint is used up."""
    known = {pressure: use(pressure) for pressure in (0.0, _FIRST)}
    for _ in range(_ROUNDS):
        (low, (less, _)), (high, (more, _)) = sorted(known.items())[-2:]
        near = min(known, key=lambda p: abs(known[p][0] - 1.0))
        if abs(known[near][0] - 1.0) <= _NEAR or not less < more < np.inf:
            break
        pressure = low + (high - low) * (1.0 - less) / (more - less)
        pressure = float(np.clip(pressure, 0.0, _GREATEST))
        known[pressure] = use(pressure)
    order = sorted(known)
    used = np.maximum.accumulate([known[p][0] for p in order])
    rising = np.append(True, used[1:] > used[:-1] + 1.0e-9) & np.isfinite(used)
    kept = np.flatnonzero(rising) if rising.any() else np.zeros(1, np.intp)
    return JointsGive(np.array(order)[kept], used[kept], tuple(known[order[k]][1] for k in kept))


def _beyond(wanted: Array, used: Array, pressures: Array) -> Array:
    if len(used) < 2:  # nothing that wind does is felt, or all of it gives way in calm air
        return np.where(wanted < used, 0.0, np.inf)
    slope = (pressures[1] - pressures[0]) / (used[1] - used[0])
    return pressures[1] + (wanted - used[1]) * slope
