"""Every mend whole, with the lines to type into the file where what they say was found to hold."""

from collections.abc import Mapping
from typing import Any

from ...checks.examination import Examination
from ..messages import messages
from ..told.facts import facts_of
from ..wording.lines import Line, wrapped
from .mends import ToType, mends
from .what_to_do import subjects


def mend_lines(found: Examination, width: int) -> list[Line]:
    """Return what to mend, the worst first, each with its lines; nothing where nothing is to."""
    lines: list[Line] = []
    every = mends(found, None, facts_of(found))
    for k, (alike, mend) in enumerate(zip(found.verdict.mended_alike, every, strict=True), 1):
        text = f"{k}  {subjects(alike)}: {mend.whole}"
        lines += wrapped(text, "  ", "     ", width=width)
        lines += [Line(f"       {line}") for one in mend.lines for line in lines_to_type(one)]
    return [Line(messages.MENDS), *lines] if lines else []


def lines_to_type(one: ToType) -> list[str]:
    """Return the lines of a table that stand, and those to type, as they stand in a file."""
    wide = max(len(key) for key, _ in (*one.entries, (one.key, "")))
    head = [f"[[{one.table}]]", f"{one.key:<{wide}} = '{one.name}'"]
    lines = [f"{key:<{wide}} = {value}" for key, value in one.entries]
    return [*head, *lines, *(messages.TAKE_OUT.format(key=key) for key in one.out)]


def mend_objects(found: Examination) -> list[Mapping[str, Any]]:
    """Return every mend as a JSON object: the checks that it is of, what it says, what to type."""
    every = mends(found, None, facts_of(found))
    return [
        {
            "of": [check.name for check in alike],
            "says": mend.whole,
            "lines": [
                {"table": one.table, one.key: one.name, "keys": dict(one.entries), "out": one.out}
                for one in mend.lines
            ],
        }
        for alike, mend in zip(found.verdict.mended_alike, every, strict=True)
    ]
