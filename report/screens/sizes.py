"""The public sizing: a design in, what would hold it out, each way alone."""

from collections.abc import Mapping
from functools import cached_property
from pathlib import Path
from typing import Any

from ... import units
from ...checks.inputs import read
from ...checks.sizing.remedy import Remedy
from ...checks.sizing.ways import Sizing
from ...checks.sizing.ways import size_design as sized
from ...checks.sizing.why_none import why_none
from ...design.model import Design
from ...units import Quantity
from ...units.frozen import ByIdentity, ByValue
from ..told.sizing_words import why_no_remedy
from ..wording.amounts import Amounts
from .sizing_object import sizing_object

_DIMENSIONS = {"m": "length", "kg": "mass", "N": "force", "m/s": "speed"}


class ResultRemedy(ByValue, frozen=True):
    """One way alone: ``value`` is what it takes, None where it is none, then ``reason`` says why.

    ``kind`` is "base width", "ballast", "anchors", "guys", "height" or "wind"; ``governs`` the
    check that is nearest its limit then.
    """

    kind: str
    value: Quantity | None
    feasible: bool
    governs: str | None
    reason: str


class Sizes(ByIdentity, frozen=True):
    """What would hold a design; ``sizing`` holds all of it in SI units. `size` gives it."""

    sizing: Sizing

    def __repr__(self) -> str:
        kinds = ", ".join(one.kind for one in self.remedies if one.feasible)
        return f"<Sizes of {self.sizing.design.name!r}: {kinds or 'none'}>"

    @cached_property
    def remedies(self) -> tuple[ResultRemedy, ...]:
        """Return each way alone, in the order in which people are told."""
        return tuple(_remedy(self.sizing, one) for one in self.sizing.remedies)

    def __getitem__(self, kind: str) -> ResultRemedy:
        """Return the way of a kind. KeyError where there is none such."""
        return {one.kind: one for one in self.remedies}[kind]

    def to_dict(self) -> Mapping[str, Any]:
        """Return the JSON object of ``yardfast size --format json``."""
        return sizing_object(self.sizing)


def size(design: Design | str | Path) -> Sizes:
    """Return what would hold a design, or the design in a file, each way alone.

    Raises DesignError with everything that is wrong with the file, or where the piece cannot
    stand at all.

    >>> sizes = yf.size("examples/seat-box.toml")
    >>> sizes["ballast"].value.to("kg").magnitude
    8.0
    """
    return Sizes(sized(design if isinstance(design, Design) else read(design)))


def _remedy(sizing: Sizing, one: Remedy) -> ResultRemedy:
    value = None if one.value is None else units.quantity(one.value, _DIMENSIONS[one.unit])
    why, amounts = why_none(sizing.found, one), Amounts(sizing.design.units == "metric")
    return ResultRemedy(one.kind, value, one.feasible, one.governs, why_no_remedy(why, amounts))
