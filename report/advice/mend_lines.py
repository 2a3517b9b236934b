"""Every mend whole, with the lines to type into the file where what they say was found to hold."""

from collections.abc import Mapping, Sequence
from typing import Any

from ...checks.sizing.mending import Mending
from ..messages import messages
from ..told.facts import Facts
from ..wording.lines import Line, wrapped
from .mends import ToType, mends
from .what_to_do import subjects


def mend_lines(found: Sequence[Mending], facts: Facts, width: int) -> list[Line]:
    """Return what to mend, the worst first, each with its lines; nothing where nothing is to."""
    lines: list[Line] = []
    for k, (one, mend) in enumerate(zip(found, mends(found, facts), strict=True), 1):
        text = f"{k}  {subjects(one.alike)}: {mend.whole}"
        lines += wrapped(text, "  ", "     ", width=width)
        lines += [Line(f"       {line}") for typed in mend.lines for line in lines_to_type(typed)]
    return [Line(messages.MENDS), *lines] if lines else []


def lines_to_type(one: ToType) -> list[str]:
    """Return the lines of a table that stand, and those to type, as they stand in a file."""
    wide = max(len(key) for key, _ in (*one.entries, (one.key, "")))
    head = [f"[[{one.table}]]", f"{one.key:<{wide}} = '{one.name}'"]
    lines = [f"{key:<{wide}} = {value}" for key, value in one.entries]
    return [*head, *lines, *(messages.TAKE_OUT.format(key=key) for key in one.out)]


def mend_objects(found: Sequence[Mending], facts: Facts) -> list[Mapping[str, Any]]:
    """Return every mend as a JSON object: the checks that it is of, what it says, what to type."""
    return [
        {
            "of": [check.name for check in one.alike],
            "says": mend.whole,
            "lines": [
                {
                    "table": typed.table,
                    typed.key: typed.name,
                    "keys": dict(typed.entries),
                    "out": typed.out,
                }
                for typed in mend.lines
            ],
        }
        for one, mend in zip(found, mends(found, facts), strict=True)
    ]
