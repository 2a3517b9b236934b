"""The ways to hold a piece, and a weight laid low, each put into the design's text."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from .. import units
from ..checks.anchoring.ground_parts import ground_parts
from ..checks.examination import Examination
from ..checks.sizing.laid_weight import with_weight
from ..checks.sizing.other_height import with_height
from ..checks.sizing.remedy import Remedy
from ..checks.sizing.ways import each_way
from ..checks.sizing.why_none import why_none
from ..design.model import Design
from ..design.structure import build_structure
from ..report.advice.way_words import way_name, way_said
from ..report.messages import window_messages as messages
from ..report.told.sizing_words import why_no_remedy
from ..report.wording.amounts import Amounts
from ..report.wording.remark import capital
from .commands import Commands


class NotPutInError(Exception):
    """Why something was not put into the text, in a sentence."""


class Ways:
    """The ways of the text that was asked for last; each is worked out once."""

    def __init__(self, commands: Commands) -> None:
        self._commands = commands
        self._of = ""
        self._known: dict[str, Remedy] = {}
        self._rest: Iterator[Remedy] = iter(())
        self._design: Design | None = None
        self._found: Examination | None = None

    def begin(self, text: str, design: Design, found: Examination) -> None:
        """Take a text, with its design and what was found of it."""
        if text != self._of:
            self._of, self._known = text, {}
            self._design, self._found = design, found
            self._rest = each_way(design, found)

    def told(self, number: int) -> dict[str, Any] | None:
        """Return what the page tells of a way; None where there are no more."""
        remedy = self._remedy(number)
        if remedy is None:
            return None
        assert self._found is not None
        return {
            "kind": remedy.kind,
            "name": way_name(remedy.kind),
            "says": _said(self._found, remedy),
            "possible": remedy.built is not None,
        }

    def put_in(self, kind: str, folder: Path) -> str:
        """Return the text with a way put into it. NotPutInError, KeyError."""
        while kind not in self._known:
            if self._remedy(len(self._known)) is None:
                raise KeyError(kind)
        remedy, design, found = self._known[kind], self._design, self._found
        assert design is not None
        assert found is not None
        if remedy.design is None or remedy.built is None:
            raise NotPutInError(
                messages.NO_WAY.format(why=why_no_remedy(why_none(found, remedy), _amounts(design)))
            )
        return self.changed(design, remedy.design, folder)

    def stretched(self, text: str, design: Design, typed: str, folder: Path) -> str:
        """Return a text with all that stands upright scaled to so tall a piece. NotPutInError."""
        try:
            height = units.to_si(typed, "length")
        except units.UnitError as wrong:
            raise NotPutInError(str(wrong)) from None
        structure = build_structure(design)
        new = with_height(design, ground_parts(structure), height) if height > 0.0 else None
        if new is None:
            raise NotPutInError(messages.NO_HEIGHT)
        return text if new == design else self.changed(design, new, folder)

    def weighed(self, text: str, design: Design, typed: str, folder: Path) -> str:
        """Return a text with so much weight laid low on its foot. NotPutInError."""
        try:
            mass = units.to_si(typed, "mass")
        except units.UnitError as wrong:
            raise NotPutInError(str(wrong)) from None
        if mass <= 0.0:
            return text
        return self.changed(
            design, with_weight(design, ground_parts(build_structure(design)), mass), folder
        )

    def changed(self, old: Design, new: Design, folder: Path) -> str:
        """Return the text of one design with what differs in another. NotPutInError."""
        try:
            return self._commands.changed(old, new, folder)
        except ValueError as error:
            raise NotPutInError(messages.NO_FORM.format(what=error)) from None

    def _remedy(self, number: int) -> Remedy | None:
        while len(self._known) <= number:
            remedy = next(self._rest, None)
            if remedy is None:
                return None
            self._known[remedy.kind] = remedy
        return list(self._known.values())[number]


def _said(found: Examination, remedy: Remedy) -> str:
    """Return what a way takes, or why it is none, as a sentence."""
    amounts = _amounts(found.design)
    if (way := remedy.built) is not None:
        return way_said(way, amounts)
    return f"{capital(why_no_remedy(why_none(found, remedy), amounts))}."


def _amounts(design: Design) -> Amounts:
    return Amounts(design.units == "metric")
