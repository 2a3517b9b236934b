"""A staple's crown: how it lies to the grain under it, and what its legs keep sideways so."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.ranges import not_negative
from ....units.arrays import Array


def crown_factor(angle: ArrayLike) -> Array:
    """Return which part of the lateral value of two nails a staple has (…): 1, or 0.7.

    ``angle`` (…) in rad between its crown and the grain of the wood under it: up to 30 degrees both
    legs stand in nearly the same fibres, and 0.7 is left. ValueError below 0.
    Source: EN 1995-1-1:2004 8.4(5).
    """
    within, part = _rule()
    return np.where(not_negative("angle", angle) <= within * (1.0 + 1.0e-9), part, 1.0)


@cache
def _rule() -> tuple[float, float]:
    rows = references.table("wood/staple_rules")
    within = float(rows.one("rule", "crown within (deg)")["value"])
    return float(np.radians(within)), float(rows.one("rule", "crown along the grain")["value"])
