"""A design at many sizes: each of a grid read anew from its text, and examined."""

import re
from collections.abc import Iterator, Sequence
from itertools import product

from ..design.faults import DesignError, Fault
from ..design.model import Design
from ..units.frozen import ByValue, replace
from .examination import Examination, examine
from .inputs import read_text
from .verdict import Word

_VALUE = re.compile(r"""^(\s*[\w-]+\s*=\s*)('[^']*'|"(?:[^"\\]|\\.)*"|[^#'"\[{]*?)(\s*(?:#.*)?)$""")
_HEADING = re.compile(r"^\s*\[")
ONCE = ("site", "design")
"""Tables that stand once: their keys are named by them."""


class Vary(ByValue, frozen=True):
    """One size that is varied: ``key`` of the part, or of the table ``of``, and its ``values``.

    Each value is as a file has it: text with its unit, or a plain number.
    """

    of: str
    key: str
    values: tuple[str | float, ...]

    @property
    def name(self) -> str:
        """Return what it is called where it is asked for."""
        return f"{self.of}.{self.key}"


class Figures(ByValue, frozen=True):
    """What is kept of each place: forecast gusts in m/s (None above 150), mass in kg, the word."""

    tips: float | None
    slides: float | None
    act: float | None
    mass: float
    word: Word
    passes: bool


class Swept(ByValue, frozen=True):
    """One place of the grid: the value of each size, and what is found of it or what is wrong."""

    values: tuple[str | float, ...]
    found: Figures | tuple[Fault, ...]


def sweep(design: Design, varied: Sequence[Vary]) -> Iterator[Swept]:
    """Yield the design at every combination of values, the last size varying fastest.

    DesignError where the file has no such part or table, or a value that cannot be put in place.
    """
    lines = [_line(design, each) for each in varied]
    for values in product(*(each.values for each in varied)):
        text = _changed(design, varied, lines, values)
        try:
            yield Swept(values, _figures(examine(read_text(text, design.file))))
        except DesignError as wrong:
            # the file itself is right: there is nothing to mend in it
            yield Swept(values, tuple(replace(fault, change=None) for fault in wrong.faults))


def _figures(found: Examination) -> Figures:
    limits = found.limits
    return Figures(
        limits.forecast_tipping,
        limits.forecast_sliding,
        limits.act,
        found.structure.mass("typical"),
        found.verdict.word,
        found.passes,
    )


def _line(design: Design, vary: Vary) -> int:
    """Return the index of the line of a key, or of the heading behind which it is to stand."""
    rows = design.text.splitlines()
    if vary.of in ONCE:
        place = next(
            (i for i, row in enumerate(rows) if re.match(rf"^\s*\[\s*{vary.of}\s*\]", row)), None
        )
        if place is None:
            raise DesignError((_no_part(design, vary),))
        for i in range(place + 1, len(rows)):
            if _HEADING.match(rows[i]):
                break
            if re.match(rf"^\s*{re.escape(vary.key)}\s*=", rows[i]):
                return i
        return place
    line = design.lines.get((vary.of, vary.key)) or design.lines.get((vary.of, None))
    if vary.of not in {part.name for part in design.parts} or line is None:
        raise DesignError((_no_part(design, vary),))
    return line - 1


def _no_part(design: Design, vary: Vary) -> Fault:
    names = ", ".join([*(part.name for part in design.parts), *ONCE])
    return Fault(design.file, None, None, None, vary.of, f"a part to vary: {names}")


def _changed(
    design: Design, varied: Sequence[Vary], lines: Sequence[int], values: Sequence[str | float]
) -> str:
    rows = design.text.splitlines()
    behind: list[tuple[int, str]] = []
    for vary, line, value in zip(varied, lines, values, strict=True):
        new = f"'{value}'" if isinstance(value, str) else str(value)
        found = _VALUE.match(rows[line])
        if found is not None:
            rows[line] = f"{found[1]}{new}{found[3]}"
        elif _HEADING.match(rows[line]):
            behind.append((line, f"{vary.key} = {new}"))
        else:
            shown, expected = rows[line].strip()[:60], "one size on a line of its own"
            fault = Fault(design.file, line + 1, vary.of, vary.key, shown, expected)
            raise DesignError((fault,))
    for line, row in sorted(behind, reverse=True):
        rows.insert(line + 1, row)
    return "\n".join(rows) + "\n"
