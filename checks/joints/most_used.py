"""Which fastener of a joint is used most: by what pulls it and what pushes it sideways at once."""

from math import inf

import numpy as np

from ...units.arrays import Array, as_great, to_rank, where_greatest
from ...units.frozen import ByValue, replace
from ..fasteners.fastener_sets import FastenerSet, JointPlace
from ..timber.terms.capacity import Capacity
from .combined import fastener_use


class MostUsed(ByValue, frozen=True):
    """The fastener of a place that is used most: which, under which load, and how far.

    ``tension`` and ``shear`` in N are what it is asked; ``rank`` orders also those that nothing
    resists, by that.
    """

    place: JointPlace
    fasteners: FastenerSet
    nth: int
    load: tuple[int, ...]
    used: float
    tension: float
    shear: float

    @property
    def rank(self) -> tuple[float, float]:
        """Return what orders fasteners: how far each is used, then what it is asked in N."""
        return to_rank(self.used), to_rank(float(np.hypot(self.tension, self.shear)))


def most_used(
    place: JointPlace, fasteners: FastenerSet, used: Array, tension: Array, shear: Array
) -> MostUsed:
    """Return the fastener of a set that is ``used`` (…, n) most under what it is asked (…, n).

    Of several used alike the one that is asked most.
    """
    most = as_great(used)
    pushed = np.where(np.isfinite(shear), shear, 1.0)
    asked = np.where(most, np.hypot(tension, pushed), -1.0)
    *load, nth = where_greatest(asked)
    where = (*load, nth)
    return MostUsed(
        place,
        fasteners,
        nth,
        tuple(load),
        float(used[where]),
        float(tension[where]),
        float(pushed[where]) if np.isfinite(shear[where]) else inf,
    )


def used_by(fasteners: FastenerSet, longer: Array, tension: Array, shear: Array) -> Array:
    """Return how far (…, n) each fastener of a set is used by what is ``longer`` (…) times as much.

    Infinite where nothing holds, where ``shear`` is so.
    """
    holds = fasteners.holds
    if holds.for_good:
        tension = tension / longer
    unheld = ~np.isfinite(shear)
    safe = np.where(unheld, 1.0, shear)
    used = fastener_use(holds.law, tension, safe, holds.pull, holds.sideways)
    return np.where(unheld, inf, used)


def held_for(holds: Capacity, longer: float) -> Capacity:
    """Return what a fastener holds of a load that lasts, of what it holds under wind.

    What washers bear on wood holds for good what it holds in a gust by NDS: C_D and lambda do not
    apply across the grain (2.3.2 and Table 4.3.1).
    """
    out = 1.0 if holds.for_good else longer
    return replace(
        holds,
        out=holds.out / out,
        head=holds.head / longer,
        sideways=holds.sideways / longer,
        factor_out=holds.factor_out / out,
        factor_sideways=holds.factor_sideways / longer,
    )
