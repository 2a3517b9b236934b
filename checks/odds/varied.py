"""The inputs of many pieces at once, drawn from their distributions."""

from collections.abc import Mapping

import numpy as np

from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..spread import INPUTS, Spreads
from .weights import BY_KIND, MEASURED

_AS_WOOD = {MEASURED: "wood"}


class Varied(ByIdentity, frozen=True):
    """Factors (n,) on what is written or published, of many pieces that differ in them alone.

    ``heavier`` by kind of material, then ``friction`` and ``soil`` of the ground, the force
    ``coefficient``, the ``gust`` at the piece for what is forecast, the ``climate``'s gusts and
    what a ``fastening`` holds.
    """

    heavier: Mapping[str, Array]
    friction: Array
    soil: Array
    coefficient: Array
    gust: Array
    climate: Array
    fastening: Array

    @property
    def count(self) -> int:
        """Return of how many pieces."""
        return len(self.friction)


def varied_inputs(spreads: Spreads, kinds: tuple[str, ...], chances: Array) -> Varied:
    """Return the inputs whose ``chances`` (n, inputs) of not being passed are between 0 and 1.

    A column for each of ``INPUTS``; of one input all ``kinds`` of material share theirs.
    """
    column: dict[str, Array] = dict(zip(INPUTS, chances.T, strict=True))

    def factor(name: str, kind: str = "") -> Array:
        return spreads[name][_AS_WOOD.get(kind, kind)].factor(column[name])

    heavier: dict[str, Array] = {}
    for kind in kinds:
        heavier[kind] = np.ones(len(chances))
        for name in BY_KIND[kind]:
            heavier[kind] = heavier[kind] * factor(name, kind)
    rest = {name: factor(name) for name in INPUTS if name not in _OF_WEIGHT}
    return Varied(heavier, **rest)


_OF_WEIGHT = ("density", "thickness", "moisture")
