"""For each case and line, the gust and direction that turn a piece over most."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..units.arrays import Array
from .overturning import overturning_moment
from .standing import Standing


@dataclass(frozen=True, eq=False)
class Worst:
    """By case and line (C, E): factored tilting without suction's arm, uplift and its moment.

    ``direction`` (C, E) is the index of the direction in which each stands.
    """

    tilting: Array
    uplift: Array
    lifted: Array
    direction: NDArray[np.intp]

    def over(self, pivot: Array) -> Array:
        """Return the factored overturning moment (C, E) about the pivots."""
        return self.tilting + self.uplift * pivot - self.lifted


def worst_by_line(standing: Standing, actions: Actions, factors: Factors) -> Worst:
    """Keep for each case and line the gust and direction that turn it over most."""
    normals = standing.normals
    over = overturning_moment(actions, normals, standing.reach)
    flat = over.reshape(-1, *over.shape[-2:])
    if over.ndim == 4:
        flat = over.reshape(-1, over.shape[-2], over.shape[-1])
    at = flat.argmax(axis=0)

    def pick(values: Array) -> Array:
        whole = np.broadcast_to(values, over.shape).reshape(flat.shape)
        return np.take_along_axis(whole, at[None], axis=0)[0]

    return Worst(
        factors.wind * pick(actions.tilting @ normals.T),
        factors.wind * pick(actions.uplift[..., None]),
        factors.wind * pick(actions.lifting @ normals.T),
        at % len(actions.azimuths),
    )
