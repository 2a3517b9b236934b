"""What is found as data for a message: what it is, and the slots that fill the message."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Literal, TypeAlias

from ..units.frozen import ByValue, field

QuantityKind = Literal[
    "length",
    "mass",
    "gust",
    "bare_gust",
    "density",
    "bare_density",
    "pressure",
    "pressure_per_depth",
]


class Amount(ByValue, frozen=True):
    """An amount in SI: ``of`` what it is; told ``way`` up, down or to the nearest."""

    value: float
    of: QuantityKind
    way: Literal["near", "up", "down"] = "near"


class Source(ByValue, frozen=True):
    """Where a value comes from, as its row says it; of several the ``first`` alone."""

    text: str
    first: bool = False


FindingSlot: TypeAlias = "str | int | Amount | Source | tuple[str, ...] | tuple[Finding, ...]"
"""What fills a message: words of the design, amounts, sources, names, or findings within it."""


class Finding(ByValue, frozen=True):
    """One finding: which of a list it is, with its slots by name."""

    what: StrEnum
    slots: Mapping[str, FindingSlot] = field(default_factory=dict[str, FindingSlot])
