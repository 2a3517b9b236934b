"""Published answers beside ours: on a screen, as a page, for a program."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from math import floor, log10
from typing import Any

from ...checks.verification.recomputed import Recomputed, last_digit
from ..wording.lines import Line, wrapped

_HEAD = "{:<22}{:>20}{:>13}{:>12}{:>12}"
_PAGE = """\
# Published answers, worked out again

What books and public calculations print, beside what Yardfast gives for the same inputs. The
tolerance is half a unit of the last printed digit, or what the note says. Printed by
`yardfast verify`, which works all of it out again. This page is made from `references/verified/` by
`python tests/support/verification_page.py`; a test holds the two together.

{counts}
"""
_UNITS = {
    **{unit: unit for unit in ("in", "ft", "mm", "m", "mph", "lb", "N", "kN", "kip", "psi", "psf")},
    **{unit: unit for unit in ("pcf", "Pa", "kg", "m2", "mm3", "mm4")},
    **{"m_s": "m/s", "km_h": "km/h", "kN_m": "kN m"},
}
_KNOWN = {
    "seen": "read in the document itself",
    "copy": "read in a copy, quotation or transcription of it",
    "memory": "recalled, not compared with the document",
    "derived": "computed from other values",
    "judgement": "a choice",
}


def verification_lines(rows: Sequence[Recomputed]) -> list[Line]:
    """Return every row under its source, then how many there are and what does not agree."""
    found: list[Line] = []
    for source, several in groupby(rows, key=lambda row: row.source):
        found += [*wrapped(source, rest="  ", mood="title")]
        found.append(Line(_HEAD.format("", "printed", "ours", "apart by", "at most"), "quiet"))
        for row in several:
            found += wrapped(f"{said(row)} ({row.place}; {row.confidence})", "  ", "    ")
            cells = (f"{row.printed} {row.unit}".rstrip(), ours(row), _apart(row), _most(row))
            found.append(Line(_HEAD.format("" if row.passes else "  DIFFERS", *cells)))
        found.append(Line(""))
    wrong = sum(not row.passes for row in rows)
    agree = "all of them agree" if not wrong else f"{wrong} of them do not agree"
    found += wrapped(
        f"{counts(rows)} To the printed digit {agree}.", mood="bad" if wrong else "good"
    )
    return found


def verification_page(rows: Sequence[Recomputed]) -> str:
    """Return the page of references/verification.md."""
    parts = [_PAGE.format(counts=counts(rows))]
    for source, several in groupby(rows, key=lambda row: row.source):
        table = list(several)
        parts.append(f"## {source}\n\n{''.join(_table(table))}")
    return "\n".join(parts)


def verification_objects(rows: Iterable[Recomputed]) -> dict[str, Any]:
    """Return the rows as one JSON object."""
    return {
        "rows": [
            {
                "what": said(row),
                "source": f"{row.source}, {row.place}",
                "confidence": row.confidence,
                "printed": row.value,
                "ours": row.ours,
                "unit": row.unit,
                "difference": row.difference,
                "tolerance": row.tolerance,
                "passes": row.passes,
                "note": row.note,
            }
            for row in rows
        ]
    }


def said(row: Recomputed) -> str:
    """Return what was worked out, of which inputs with their units."""
    inputs = ", ".join(_input(name, text) for name, text in row.inputs.items())
    return f"{row.what}: {inputs}" if inputs else row.what


def _input(name: str, text: str) -> str:
    ending = max((each for each in _UNITS if name.endswith(f"_{each}")), key=len, default="")
    plain = name.removesuffix(f"_{ending}").replace("_over_", "/")
    plain = plain if len(plain) < 4 else plain.replace("_", " ")
    return f"{plain} {text} {_UNITS[ending]}" if ending else f"{plain} {text}"


def counts(rows: Sequence[Recomputed]) -> str:
    """Return how many answers of how many sources there are, and how well each is known."""
    known = Counter(row.confidence for row in rows)
    said = "; ".join(f"{known[each]} {words}" for each, words in _KNOWN.items() if known[each])
    sources = len({row.source for row in rows})
    return f"{len(rows)} published answers of {sources} sources: {said}."


def ours(row: Recomputed) -> str:
    """Return our value to two digits beyond the printed one."""
    return f"{row.ours:.{_decimals(row) + 2}f}"


def _apart(row: Recomputed) -> str:
    """Return the difference to two digits beyond the printed one, without a minus before 0."""
    return f"{round(row.difference, _decimals(row) + 2) + 0.0:+.{_decimals(row) + 2}f}"


def _most(row: Recomputed) -> str:
    """Return the tolerance in as many digits as it has."""
    decimals = max(-floor(log10(row.tolerance)), 0)
    return f"{row.tolerance:.{decimals + 1}f}".rstrip("0").rstrip(".")


def _decimals(row: Recomputed) -> int:
    return round(-log10(last_digit(row.printed)))


def _table(rows: Sequence[Recomputed]) -> Iterator[str]:
    yield "| what | where | known | printed | ours | apart by | at most |\n"
    yield "|---|---|---|---:|---:|---:|---:|\n"
    for row in rows:
        what = f"{said(row)}{f' ({row.note})' if row.note else ''}"
        cells = (what, row.place, row.confidence, f"{row.printed} {row.unit}".rstrip())
        yield f"| {' | '.join((*cells, ours(row), _apart(row), _most(row)))} |\n"
