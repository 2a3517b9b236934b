"""What winds do about the lines on which a piece may turn over: the moments of each of them."""

import numpy as np
from numpy.typing import NDArray

from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class WindMoments(ByIdentity, frozen=True):
    """What winds do about lines: ``tilting`` and ``lifted`` in N m, suction's ``uplift`` in N.

    Each (…, E) of winds about every line, or (P,) of pairs of a wind and a line.
    """

    tilting: Array
    uplift: Array
    lifted: Array

    @classmethod
    def of(cls, actions: Actions, normals: Array) -> "WindMoments":
        """Return what actions (…, D, C) do about lines with normals (E, 2): (…, D, C, E)."""
        tilting = actions.tilting @ normals.T
        uplift = np.broadcast_to(actions.uplift[..., None], tilting.shape)
        return cls(tilting, uplift, actions.lifting @ normals.T)

    def over(self, pivot: Array) -> Array:
        """Return the moment in N m that turns over about lines at ``pivot`` m along their normals.

        M = sum(F.n z) + U arm, the arm from the line to where the suction acts.
        """
        return self.tilting + self.uplift * pivot - self.lifted

    def times(self, factor: float) -> "WindMoments":
        """Return those of winds of so many times the force."""
        return WindMoments(*(factor * each for each in (self.tilting, self.uplift, self.lifted)))

    def some(self, places: NDArray[np.intp], factor: float = 1.0) -> "WindMoments":
        """Return those at some places of all taken one after another, times a factor."""
        each = (self.tilting, self.uplift, self.lifted)
        return WindMoments(*(factor * values.reshape(-1)[places] for values in each))

    def worst_by_line(
        self, reach: Array, factors: Factors
    ) -> tuple["WindMoments", NDArray[np.intp]]:
        """Return for each case and line (C, E) the factored wind that turns over most at ``reach``.

        With it the index (C, E) of the direction from which it blows.
        """
        directions, *shape = self.uplift.shape[-3:]
        pairs: NDArray[np.intp] = np.arange(int(np.prod(shape)))
        first = self.over(reach).reshape(-1, *shape).argmax(axis=0)
        places = first * pairs.size + pairs.reshape(shape)
        return self.some(places, factors.wind), first % directions
