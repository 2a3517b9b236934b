"""What is found as data for a message: what it is, and the slots that fill the message."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Literal, TypeAlias

from ...units.frozen import ByValue, field

QuantityKind = Literal[
    "length",
    "bend",
    "mass",
    "gust",
    "bare_gust",
    "density",
    "bare_density",
    "pressure",
    "pressure_per_depth",
    "act",
    "about_force",
    "force",
    "pull",
    "mass_needed",
    "width_needed",
]


class Amount(ByValue, frozen=True):
    """An amount in SI: ``of`` what it is; told ``way`` up, down or to the nearest."""

    value: float
    of: QuantityKind
    way: Literal["near", "up", "down"] = "near"


class Measure(ByValue, frozen=True):
    """A demand or capacity in a check's ``unit``, told with so many decimals."""

    value: float
    unit: str = "N"
    decimals: int = 0


class Against(ByValue, frozen=True):
    """What there is against what it needs: one is ``told``, so that it shows which is greater."""

    has: float
    needs: float
    unit: str
    passes: bool
    told: Literal["has", "needs"]


class Source(ByValue, frozen=True):
    """Where a value comes from, as its row says it; of several the ``first`` alone."""

    text: str
    first: bool = False


class Term(ByValue, frozen=True):
    """A word of the checks that people call otherwise: ``of`` which list it is."""

    of: str
    word: str


class ToAct(ByValue, frozen=True):
    """The forecast gust in m/s to act at; None above 150."""

    gust: float | None


class Ask(ByValue, frozen=True):
    """Whom to ask before anything goes into the ground of a country, or anywhere."""

    country: str | None


class Day(ByValue, frozen=True):
    """A date as YYYY-MM-DD."""

    date: str


class Several(ByValue, frozen=True):
    """So many of one kind, or of several together; ``terms`` is the list their words are of."""

    number: int
    of: tuple[str, ...]
    terms: str = ""


_Amounts: TypeAlias = Amount | Measure | Against | ToAct | Several
_Names: TypeAlias = str | int | Source | Term | Ask | Day
FindingSlot: TypeAlias = "_Amounts | _Names | Finding | tuple[FindingSlot, ...]"
"""What fills a message: words of the design, amounts, sources, terms, names, findings within it."""


class Finding(ByValue, frozen=True):
    """One finding: which of a list it is, with its slots by name."""

    what: StrEnum
    slots: Mapping[str, FindingSlot] = field(default_factory=dict[str, FindingSlot])
