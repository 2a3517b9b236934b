"""The answer to a text: its fields, what is wrong with it, or what is found and drawn of it."""

from collections import OrderedDict
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from functools import lru_cache
from typing import Any, TypeVar

from ..checks.as_one import AsOne, stands_as_one
from ..checks.examination import Examination, examine_in
from ..checks.inputs import read_text, scanned
from ..checks.situation import situation_of
from ..design.faults import DesignError, Fault
from ..design.model import Design
from ..report.drawings.gust_strip import gust_strip, marks
from ..report.drawings.page_views import views
from ..report.messages import window_messages as messages
from ..report.screens.glance import Glance, glance, numbers
from ..report.wording.amounts import Amounts
from ..report.wording.faults import clean, fault_said
from ..units.frozen import values_by_name
from . import markup
from .fields import field_id, fields_of
from .leading import leading
from .named_files import named_elsewhere

_KEPT = 8
"""So many examinations are kept: the saved design's, and those that undo goes back to."""

Answer = dict[str, Any]
K = TypeVar("K")
V = TypeVar("V")


class RecentTexts:
    """What was found of the last few texts, so that going back costs nothing."""

    def __init__(self) -> None:
        self._found: OrderedDict[tuple[str, str], Examination] = OrderedDict()
        self._stand: OrderedDict[tuple[str, str], AsOne] = OrderedDict()

    def examined(self, text: str, file: str) -> Examination:
        """Return what is found of a text. DesignError with all that is wrong with it."""

        def work() -> Examination:
            at = self.standing(text, file).at
            return examine_in(at, at.design)

        return _kept(self._found, (text, file), work)

    def standing(self, text: str, file: str) -> AsOne:
        """Return what is found of a text as one body, which is soon done. DesignError."""
        found = self._found.get((text, file))
        if found is not None:
            return found
        return _kept(
            self._stand,
            (text, file),
            lambda: stands_as_one(situation_of(read_from_browser(text, file))),
        )

    def first(self, text: str, file: str, saved: str) -> Answer:
        """Return what is soon known of a text: drawing, gusts and numbers, or what is wrong.

        ``saved`` is the text of the file as it is saved.
        """
        try:
            found = self.standing(text, file)
            seen = self._first_seen(text, found, saved, self._saved(text, file, saved))
            faults: Sequence[Fault] = ()
        except DesignError as wrong:
            seen, faults = None, wrong.faults
        return {"text": text, "groups": _groups(text), "faults": _told(text, faults), "seen": seen}

    def answer(self, text: str, file: str, saved: str) -> Answer:
        """Return all that the page shows of a text."""
        found = self.first(text, file, saved)
        return {**found, **self.rest(text, file, saved)} if found["seen"] else found

    def rest(self, text: str, file: str, saved: str) -> Answer:
        """Return what is known of a text once its parts are judged, with the whole first part."""
        try:
            found = self.examined(text, file)
            was = self._saved(text, file, saved)
            before = None if was is None else glance(self.examined(saved, file))
            seen = {
                **self._first_seen(text, found, saved, was),
                "unheld": "" if found.needs_anchors else messages.WAYS_NONE,
                **_judged(glance(found), before),
            }
        except DesignError as wrong:
            return {"faults": _told(text, wrong.faults), "seen": None}
        return {"seen": seen}

    def _saved(self, text: str, file: str, saved: str) -> AsOne | None:
        """Return what is found of the saved design, where it differs and is right."""
        if saved in ("", text):
            return None
        try:
            return self.standing(saved, file)
        except DesignError:
            return None

    def _first_seen(self, text: str, found: AsOne, saved: str, was: AsOne | None) -> Answer:
        drawn = views(found, None if was is None else was.structure)
        before, first = None if was is None else numbers(was), leading(found.structure)
        first = [name for name in first if name in _typed(text)]
        amounts = Amounts(found.design.units == "metric")
        stretched = next(iter(first), "").endswith(".to")  # no size of its own is how tall it is
        return {
            "name": found.design.name,
            "front": drawn.front,
            "plan": drawn.plan,
            "scale": drawn.scale,
            "strip": gust_strip(marks(found), amounts.speed_unit),
            "numbers": markup.number_table(numbers(found), before),
            "leading": first[1:] if stretched else first,
            "stretched": amounts.length(found.structure.height) if stretched else "",
            "weightless": not any(name.endswith(".mass") for name in first),
            "compared": was is not None,
            "was": [] if was is None else _was(text, saved),
        }


def _kept(known: OrderedDict[K, V], key: K, work: Callable[[], V]) -> V:
    """Return what is known of a key, worked out where it is not; the oldest of many is dropped."""
    found = known.get(key)
    if found is None:
        found = known[key] = work()
    with suppress(KeyError):  # another thread may have dropped it meanwhile
        known.move_to_end(key)
    while len(known) > _KEPT:
        with suppress(KeyError):
            known.popitem(last=False)
    return found


def read_from_browser(text: str, file: str) -> Design:
    """Return the design of a text that came from the browser. DesignError."""
    if faults := named_elsewhere(text, file):
        raise DesignError(faults)
    return read_text(text, file)


def _judged(now: Glance, before: Glance | None) -> Answer:
    return {
        "size": now.size,
        "spoken": f"{now.word}: {now.said}",
        "verdict": markup.verdict(now, before),
        "rest": markup.rows(now.rest),
        "cautions": markup.sentence_list(now.cautions),
        "not_checked": markup.sentence_list(now.not_checked),
    }


def _was(text: str, saved: str) -> list[tuple[str, str]]:
    """Return the fields that differ from the saved design, each with its text there."""
    now, before = _typed(text), _typed(saved)
    return [
        (name, ", ".join(before.get(name, ())))
        for name, value in now.items()
        if before.get(name) != value
    ]


@lru_cache(maxsize=_KEPT)
def _typed(text: str) -> Mapping[str, tuple[str, ...]]:
    """Return what is typed in each field of a text, by the field's name."""
    return {field.id: field.value for group in fields_of(text) for field in group.fields}


def _groups(text: str) -> list[Mapping[str, Any]]:
    return [
        {**values_by_name(group), "fields": [values_by_name(field) for field in group.fields]}
        for group in fields_of(text)
    ]


def _told(text: str, faults: Sequence[Fault]) -> list[Answer]:
    """Return what is wrong with a text: the field that it stands beside, its line, what to write.

    ``change`` is from where to where in the text what would mend it goes.
    """
    by_line = {line: spot for spot, line in scanned(text).lines.items()}
    found: list[Answer] = []
    for fault in faults:
        spot = None if fault.line is None else by_line.get(fault.line)
        change = fault.change
        found.append(
            {
                "field": None if spot is None else field_id(spot),
                "line": fault.line,
                "where": ", ".join(clean(each, 60) for each in (fault.part, fault.key) if each),
                "says": fault_said(fault),
                "change": None if change is None else [change.start, change.end, change.new],
            }
        )
    return found
