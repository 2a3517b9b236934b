"""Many designs at a glance: word, gust to act at, file and name, what to do; the weakest first."""

from collections import Counter
from collections.abc import Sequence
from math import inf
from pathlib import Path

from ..checks.examination import Examination
from ..checks.verdict import Verdict, Word
from . import messages
from .facts import Facts, facts_of
from .faults import clean
from .first_screen import MOST_COLUMNS, mood_of
from .lines import Line, wrapped
from .remark import joined
from .what_to_do import in_brief

_ORDER = list(Word)
_WORD = max(len(word) for word in Word) + 2
_ACT = 12


def folder(found: Sequence[Examination], faulty: int = 0) -> list[Line]:
    """Return two lines for each design, the weakest first, and how many there are of each word."""
    rows = sorted(((one.verdict, facts_of(one)) for one in found), key=lambda row: _weak(row[0]))
    head = f"{'':<{_WORD}}{'act at':<{_ACT}}file and name"
    lines = [Line(head, "title")]
    names = [Path(facts.file).name for _, facts in rows]
    short = len(set(names)) == len(names)
    for verdict, facts in rows:
        file = Path(facts.file).name if short else facts.file
        lines += _row(verdict, facts, clean(file))
    return [*lines, Line(""), *_count(rows, faulty)]


def _weak(verdict: Verdict) -> tuple[int, float]:
    act = verdict.untied.until
    return _ORDER.index(verdict.word), inf if act is None else act


def _row(verdict: Verdict, facts: Facts, file: str) -> list[Line]:
    """Return a design's word, gust to act at, file and name, and beneath what to do with it."""
    word, act = verdict.word.upper(), verdict.untied.until
    said = messages.CALM if act is None else facts.amounts.act(act)
    first = f"{word:<{_WORD}}{said:<{_ACT}}"
    lines = wrapped(f"{file}   {facts.name}", first, " " * len(first), width=MOST_COLUMNS)
    lines[0] = Line(lines[0].text, word=(word, mood_of(verdict.word)))
    todo = in_brief(verdict, facts)
    return lines + (wrapped(todo, "    ", "      ", width=MOST_COLUMNS) if todo else [])


def _count(rows: Sequence[tuple[Verdict, Facts]], faulty: int) -> list[Line]:
    """Return how many designs there are, and how many of each word."""
    counts = Counter(verdict.word for verdict, _ in rows)
    said = joined(f"{counts[word]} {messages.MANY[word]}" for word in Word if counts[word])
    wrong = messages.FAULTY.format(n=faulty) if faulty else ""
    pieces = "1 piece" if len(rows) == 1 else f"{len(rows)} pieces"
    return wrapped(f"{pieces}: {said}.{wrong}", rest="  ", width=MOST_COLUMNS)
