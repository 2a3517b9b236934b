"""How far from what is written something may lie: a factor, of mean 1 unless said, and spread."""

from collections.abc import Callable, Mapping
from math import inf, log, log1p, sqrt
from typing import Any, cast

import numpy as np

from .. import references
from ..units.arrays import Array
from ..units.frozen import ByValue, replace

DISTRIBUTIONS = ("normal", "lognormal", "uniform")
INPUTS = (
    "density",
    "thickness",
    "moisture",
    "friction",
    "soil",
    "coefficient",
    "gust",
    "climate",
    "fastening",
)
"""What varies, in the order in which it is told and in which a seed draws it."""

_TABLE = "variation"


class Spread(ByValue, frozen=True):
    """The distribution of a factor: ``mean``, ``spread`` (standard deviation over the mean).

    ``low`` and ``high`` bound the factor; what lies beyond is cut off, not gathered there.
    ``source`` and ``confidence`` say who says so.
    """

    shape: str
    spread: float
    mean: float = 1.0
    low: float = 0.0
    high: float = inf
    source: str = ""
    confidence: str = ""
    note: str = ""

    def factor(self, chance: Array) -> Array:
        """Return the factor (…) that is not passed with this ``chance`` (…), between 0 and 1.

        >>> Spread("uniform", 0.1, mean=2.0).factor(np.array([0.5]))
        array([2.])
        """
        if self.spread == 0.0:
            return np.full(np.shape(chance), self.mean)
        below, quantile = _law(self)
        first, last = below(self.low), below(self.high)
        factor = quantile(first + (last - first) * chance)
        return np.clip(factor, self.low, self.high)

    @property
    def reaches(self) -> bool:
        """Return whether anything lies between its bounds."""
        if self.spread == 0.0:
            return self.low <= self.mean <= self.high
        below, _ = _law(self)
        return below(self.high) - below(self.low) > _LEAST


_LEAST = 1.0e-4
"""Less of a distribution than this within its bounds is nothing: judgement."""

_Law = tuple[Callable[[float], float], Callable[[Array], Array]]


def _law(one: Spread) -> _Law:
    """Return how likely a factor lies below a value, and the factor by that chance."""
    deviation = one.mean * one.spread
    if one.shape == "uniform":
        half = sqrt(3.0) * deviation
        low, width = one.mean - half, 2.0 * half
        return (
            lambda value: float(np.clip((value - low) / width, 0.0, 1.0)),
            lambda chance: low + width * chance,
        )
    from scipy import special  # noqa: PLC0415 - not of a check

    standard = cast(Any, special)
    if one.shape == "normal":
        return (
            lambda value: float(standard.ndtr((value - one.mean) / deviation)),
            lambda chance: one.mean + deviation * standard.ndtri(chance),
        )
    sigma = sqrt(log1p(one.spread**2))
    middle = log(one.mean) - 0.5 * sigma**2
    return (
        lambda value: float(standard.ndtr((log(value) - middle) / sigma)) if value > 0.0 else 0.0,
        lambda chance: np.exp(middle + sigma * standard.ndtri(chance)),
    )


class Changed(ByValue, frozen=True):
    """What a design says of one input itself, a row of ``[[odds]]``; None as published."""

    input: str
    spread: float | None
    mean: float | None
    low: float | None
    high: float | None
    shape: str | None

    def of(self, published: Spread) -> Spread:
        """Return the spread as the design has it."""
        said = {
            key: value
            for key in ("spread", "mean", "low", "high", "shape")
            if (value := getattr(self, key)) is not None
        }
        return replace(published, **said, source="the design file", confidence="", note="")


Spreads = Mapping[str, Mapping[str, Spread]]
"""By input, then by the kind of material where it depends on that, else under an empty name."""


def published() -> Spreads:
    """Return every spread as published, by input and kind of material."""
    found: dict[str, dict[str, Spread]] = {name: {} for name in INPUTS}
    for row in references.table(_TABLE).rows:
        found[row["input"]][row["of"]] = Spread(
            row["shape"],
            float(row["spread"]),
            source=row["source"],
            confidence=row["confidence"],
            note=row["note"],
        )
    return found
