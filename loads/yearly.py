"""How likely the greatest gust of a year passes a gust, at a place whose gusts are known."""

import numpy as np

from ..units.arrays import Array
from ..units.frozen import ByIdentity
from .recurrence import recurrence
from .wind.how_often import LONGER
from .wind.site import Site

_NODES = 1200
_GREATEST = 150.0
"""Gust in m/s up to which the place's gusts are drawn on."""


class Yearly(ByIdentity, frozen=True):
    """A place's gusts: ln T (n,) of forecast gusts (n,) in m/s, T in years.

    ``longest`` in years is what a chance rests on: one below that of twice as long is not told.
    """

    gusts: Array
    logarithm: Array
    longest: float

    def chance(self, gust: Array) -> Array:
        """Return how likely (…) the year's greatest gust passes each ``gust`` (…) in m/s.

        1 - exp(-1/T), T the mean time between such gusts. ln T goes on straight beyond what is
        told, as the tail of Gumbel's distribution does. Infinite gusts never come.
        """
        steps = np.diff(self.logarithm)
        slope = float(steps[-1] / np.diff(self.gusts)[-1])
        within = np.interp(gust, self.gusts, self.logarithm)
        finite = np.where(np.isfinite(gust), gust, 0.0)
        beyond = self.logarithm[-1] + (finite - self.gusts[-1]) * slope
        log_T = np.where(finite > self.gusts[-1], beyond, within)
        return np.where(np.isfinite(gust), -np.expm1(-np.exp(-log_T)), 0.0)

    @property
    def least(self) -> float:
        """Return the least chance that is told."""
        return float(-np.expm1(-1.0 / (LONGER * self.longest)))


def yearly(site: Site) -> Yearly | None:
    """Return the gusts of a site's place, as `recurrence` knows them; None where it does not."""
    gusts: list[float] = []
    logarithm: list[float] = []
    longest = 0.0
    tried: list[float] = np.linspace(_GREATEST / _NODES, _GREATEST, _NODES).tolist()
    for gust in tried:
        found = recurrence(gust, site)
        if found is None or found.longest is None:
            return None
        if np.isfinite(found.years):
            gusts.append(gust)
            logarithm.append(float(np.log(found.years)))
            longest = found.longest
    if len(gusts) < 2:
        return None
    return Yearly(np.array(gusts), np.array(logarithm), longest)
