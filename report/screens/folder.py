"""Many designs at a glance: word, gust to act at, file and name, what to do; the weakest first."""

from collections import Counter
from collections.abc import Iterable, Sequence
from math import inf
from pathlib import Path

from ...checks.examination import Examination
from ...checks.verdict import Word
from ...units.frozen import ByValue
from ..advice.what_to_do import in_brief
from ..messages import messages
from ..told.facts import facts_of
from ..wording.faults import clean
from ..wording.lines import Line, wrapped
from ..wording.remark import joined
from .first_screen import MOST_COLUMNS, mood_of

_ORDER = list(Word)
_WORD = max(len(word) for word in Word) + 2
_ACT = 12


class FolderRow(ByValue, frozen=True):
    """What stands in the table of one design; ``until`` is the gust in m/s to act at, if any."""

    word: Word
    until: float | None
    act: str
    file: str
    name: str
    todo: str


def folder_row(found: Examination) -> FolderRow:
    """Return a design's row."""
    verdict, facts = found.verdict, facts_of(found)
    until = verdict.untied.until
    act = messages.CALM if until is None else facts.amounts.act(until)
    todo = in_brief(verdict, facts)
    return FolderRow(verdict.word, until, act, facts.file, facts.name, todo)


def folder(found: Iterable[FolderRow], faulty: Sequence[tuple[str, int]] = ()) -> list[Line]:
    """Return two lines for each design, the weakest first, and how many there are of each word.

    ``faulty`` are files that cannot be read, with the number of things wrong; they come first.
    """
    rows = sorted(found, key=_weak)
    head = f"{'':<{_WORD}}{'act at':<{_ACT}}file and name"
    lines = [Line(head, "title")]
    files = [row.file for row in rows] + [file for file, _ in faulty]
    names = [Path(file).name for file in files]
    short = len(set(names)) == len(names)
    for file, things in faulty:
        lines += _faulty(Path(file).name if short else file, things)
    for row in rows:
        lines += _row(row, clean(Path(row.file).name if short else row.file))
    return [*lines, Line(""), *_count(rows, len(faulty))]


def _weak(row: FolderRow) -> tuple[int, float]:
    return _ORDER.index(row.word), inf if row.until is None else row.until


def _row(row: FolderRow, file: str) -> list[Line]:
    """Return a design's word, gust to act at, file and name, and beneath what to do with it."""
    word = row.word.upper()
    first = f"{word:<{_WORD}}{row.act:<{_ACT}}"
    lines = wrapped(f"{file}   {row.name}", first, " " * len(first), width=MOST_COLUMNS)
    lines[0] = Line(lines[0].text, word=(word, mood_of(row.word)))
    return lines + (wrapped(row.todo, "    ", "      ", width=MOST_COLUMNS) if row.todo else [])


def _faulty(file: str, things: int) -> list[Line]:
    many = messages.TO_PUT_RIGHT.format(n=things, s="" if things == 1 else "s")
    first = f"{many:<{_WORD + _ACT}}"
    lines = wrapped(clean(file), first, " " * len(first), width=MOST_COLUMNS)
    lines[0] = Line(lines[0].text, word=(many, "bad"))
    return lines


def _count(rows: Sequence[FolderRow], faulty: int) -> list[Line]:
    """Return how many designs there are, and how many of each word."""
    counts = Counter(row.word for row in rows)
    said = joined(f"{counts[word]} {messages.MANY[word]}" for word in Word if counts[word])
    said = f": {said}" if said else ""
    wrong = messages.FAULTY.format(n=faulty) if faulty else ""
    pieces = "1 piece" if len(rows) == 1 else f"{len(rows)} pieces"
    return wrapped(f"{pieces}{said}.{wrong}", rest="  ", width=MOST_COLUMNS)
