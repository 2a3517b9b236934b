"""Which bodies the boxes round which touch, and how far apart the boxes of others are."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from .placing import Body

GAP = 0.003
"""Boxes round two bodies that come nearer than this (m) are taken to touch: glue, paint, a shim."""


def beside_each_other(bodies: Sequence[Body]) -> NDArray[np.bool_]:
    """Return which bodies (bodies, bodies) have upright boxes round them that touch."""
    low = np.array([body.extent[0] for body in bodies])
    high = np.array([body.extent[1] for body in bodies])
    return np.asarray(
        ((low[:, None] <= high[None] + GAP) & (high[:, None] >= low[None] - GAP)).all(axis=-1)
    )


def gap(of: Body, to: Body) -> float:
    """Return the greatest clear distance in m between the upright boxes round two bodies."""
    low, high = of.extent
    other_low, other_high = to.extent
    return float(np.maximum(np.maximum(low - other_high, other_low - high), 0.0).max())
