"""Loads that act at points: those that a design names, and what people may do."""

from collections.abc import Mapping, Sequence

import numpy as np

from ...loads.given import GivenLoad
from ...statics.wrench import wrench
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .borne import Borne


class PointLoads(ByIdentity, frozen=True):
    """Loads that act at points: ``named`` by the design, and what ``people`` may do.

    ``at`` are the bodies and points (3,) at which any acts, ``place`` by load which of these.
    What people do comes with how much ``longer`` wood holds it than wind.
    """

    named: tuple[GivenLoad, ...]
    people: tuple[tuple[GivenLoad, float], ...]
    at: tuple[tuple[int, Array], ...]
    place: Mapping[GivenLoad, int]

    def wrenches(self, acting: Sequence[GivenLoad]) -> Array:
        """Return the wrenches (points * 6,) of loads that act at once."""
        found = np.zeros((len(self.at), 6))
        for load in acting:
            found[self.place[load]] += load_wrench(load)
        return found.ravel()


def point_loads(
    named: Sequence[Borne], people: Sequence[tuple[int, GivenLoad, float]] = ()
) -> PointLoads:
    """Return the loads that a design names and what people may do, each on its body.

    ``people`` are bodies by index, what is done to each, and how much longer it lasts than wind.
    """
    at: dict[tuple[int, tuple[float, float, float]], int] = {}
    place: dict[GivenLoad, int] = {}
    each = [*((one.body, one.load) for one in named), *((i, load) for i, load, _ in people)]
    for body, load in each:
        place[load] = at.setdefault((body, load.at), len(at))
    return PointLoads(
        tuple(one.load for one in named),
        tuple((load, longer) for _, load, longer in people),
        tuple((body, np.asarray(point)) for body, point in at),
        place,
    )


def load_wrench(load: GivenLoad) -> Array:
    """Return the wrench (6,) about the origin of a named load: F, then M = r x F."""
    return wrench(load.force * np.asarray(load.direction), np.asarray(load.at))
