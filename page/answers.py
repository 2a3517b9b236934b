"""The answer to a text: its fields, what is wrong with it, or what is found and drawn of it."""

from collections import OrderedDict
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any

from ..checks.examination import Examination, examine
from ..checks.inputs import read_text, scanned
from ..design.faults import DesignError, Fault
from ..design.model import Design
from ..report import window_messages as messages
from ..report.faults import clean, fault_said
from ..report.glance import Glance, glance
from ..report.gust_strip import gust_strip
from ..report.page_views import views
from . import markup
from .fields import field_id, fields_of
from .leading import leading
from .named_files import named_elsewhere

_KEPT = 8
"""So many examinations are kept: the saved design's, and those that undo goes back to."""

Answer = dict[str, Any]


class Answers:
    """What was found of the last few texts, so that going back costs nothing."""

    def __init__(self) -> None:
        self._found: OrderedDict[tuple[str, str], Examination] = OrderedDict()

    def examined(self, text: str, file: str) -> Examination:
        """Return what is found of a text. DesignError with all that is wrong with it."""
        known = self._found.pop((text, file), None)
        found = known or examine(read(text, file))
        self._found[text, file] = found
        while len(self._found) > _KEPT:
            self._found.popitem(last=False)
        return found

    def answer(self, text: str, file: str, saved: str) -> Answer:
        """Return what the page shows of a text; ``saved`` is that of the file as it is saved."""
        try:
            found = self.examined(text, file)
            seen = self._seen(text, found, saved, self._saved(text, file, saved))
            faults: Sequence[Fault] = ()
        except DesignError as wrong:
            seen, faults = None, wrong.faults
        return {"text": text, "groups": _groups(text), "faults": told(text, faults), "seen": seen}

    def _saved(self, text: str, file: str, saved: str) -> Examination | None:
        """Return what is found of the saved design, where it differs and is right."""
        if saved in ("", text):
            return None
        try:
            return self.examined(saved, file)
        except DesignError:
            return None

    def _seen(self, text: str, found: Examination, saved: str, was: Examination | None) -> Answer:
        drawn = views(found, None if was is None else was.structure)
        first = leading(found.structure)
        now, before = glance(found), None if was is None else glance(was)
        return {
            "front": drawn.front,
            "plan": drawn.plan,
            "scale": drawn.scale,
            "strip": gust_strip(found),
            "leading": first,
            "weightless": not any(name.endswith(".mass") for name in first),
            "unheld": "" if found.needs_anchors else messages.WAYS_NONE,
            "compared": was is not None,
            "was": [] if before is None else _was(text, saved),
            **_told(now, before),
        }


def read(text: str, file: str) -> Design:
    """Return the design of a text that came from the browser. DesignError."""
    if faults := named_elsewhere(text, file):
        raise DesignError(faults)
    return read_text(text, file)


def _told(now: Glance, before: Glance | None) -> Answer:
    return {
        "name": now.name,
        "size": now.size,
        "spoken": f"{now.word}: {now.said}",
        "verdict": markup.verdict(now, before),
        "rest": markup.rows(now.rest),
        "numbers": markup.numbers(now.numbers, None if before is None else before.numbers),
        "cautions": markup.listed(now.cautions),
        "not_checked": markup.listed(now.not_checked),
    }


def _was(text: str, saved: str) -> list[tuple[str, str]]:
    """Return the fields that differ from the saved design, each with its text there."""
    now, before = (
        {field.id: field.value for group in fields_of(each) for field in group.fields}
        for each in (text, saved)
    )
    return [
        (name, ", ".join(before.get(name, ())))
        for name, value in now.items()
        if before.get(name) != value
    ]


def _groups(text: str) -> list[Mapping[str, Any]]:
    return [asdict(group) for group in fields_of(text)]


def told(text: str, faults: Sequence[Fault]) -> list[Answer]:
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
