"""Whether a printed sheet is current: what has changed since, and which of its figures."""

from collections.abc import Sequence
from typing import Any

from ...checks.examination import Examination
from ...checks.stated.listing import listing_of
from ...units.frozen import ByValue
from ..wording.faults import clean
from ..wording.fingerprint import design_mark, fingerprint, tables_mark
from ..wording.lines import Line, wrapped
from .label_rows import ACT_COLUMNS, label_figures
from .printed_sheets import PrintedSheet

DESIGN, _TABLES, _EITHER = (
    "the design has changed",
    "the tables of Yardfast, or its version, have changed",
    "the design, or the tables or version of Yardfast, has changed",
)


class SheetComparison(ByValue, frozen=True):
    """A printed sheet beside its design as it is now.

    ``changes`` says what has changed, nothing where the sheet holds; ``figures`` are the printed
    figures that are no longer current: column, printed, now.
    """

    sheet: PrintedSheet
    name: str
    now: str
    changes: tuple[str, ...]
    figures: tuple[tuple[str, str, str], ...]

    @property
    def stale(self) -> bool:
        """Return whether the sheet has to be printed anew."""
        return bool(self.changes)


def compare_sheet(sheet: PrintedSheet, found: Examination) -> SheetComparison:
    """Return a sheet beside what is found of its design now."""
    design = found.design
    now = fingerprint(design)
    if now == sheet.fingerprint:
        return SheetComparison(sheet, design.name, now, (), ())
    marks = [
        (what, sheet.printed[column] == mark)
        for what, column, mark in (
            (DESIGN, "design mark", design_mark(design)),
            (_TABLES, "tables mark", tables_mark()),
        )
        if sheet.printed.get(column)
    ]
    changes = tuple(what for what, same in marks if not same) if len(marks) == 2 else ()
    differ = tuple(
        (column, sheet.printed[column], value)
        for column, value in label_figures(listing_of(found)).items()
        if column in sheet.printed and sheet.printed[column] != value
    )
    return SheetComparison(sheet, design.name, now, changes or (_EITHER,), differ)


def stale_lines(found: Sequence[SheetComparison]) -> list[Line]:
    """Return the report: the stale sheets first, each with what changed."""
    lines: list[Line] = []
    for each in sorted(found, key=lambda one: not one.stale):
        lines += _one(each)
    stale = sum(each.stale for each in found)
    many = f"{len(found)} sheet{'s' if len(found) != 1 else ''}"
    if stale:
        verb = "is" if stale == 1 else "are"
        said = f"{stale} of {many} {verb} stale: print anew, and take back what was handed out."
    else:
        said = f"{many}: the print is current."
    return [*lines, Line(""), *wrapped(said, rest="  ", mood="bad" if stale else "good")]


def stale_object(found: SheetComparison) -> dict[str, Any]:
    """Return one sheet as a JSON object."""
    return {
        "name": found.name,
        "file": clean(found.sheet.file),
        "printed": found.sheet.fingerprint,
        "fingerprint": found.now,
        "stale": found.stale,
        "changes": list(found.changes),
        "figures": [
            {"column": column, "printed": printed, "now": now}
            for column, printed, now in found.figures
        ],
    }


def _one(found: SheetComparison) -> list[Line]:
    head = f"{found.name}   ({clean(found.sheet.file)})   {found.sheet.fingerprint}"
    if not found.stale:
        return wrapped(f"{head}   the print is current", rest="  ")
    lines = wrapped(f"{head}   STALE", rest="  ", mood="bad")
    lines += wrapped(f"{' and '.join(found.changes)}; now {found.now}.", "  ")
    for column, printed, now in sorted(found.figures, key=lambda one: one[0] not in _ACTS):
        lines += wrapped(
            f"{column}: printed {clean(printed, 200) or 'nothing'}, now {now}", "  ", "    "
        )
    if found.sheet.printed.keys() & _ACTS and not found.figures:
        lines += wrapped("every figure printed is the same all the same", "  ")
    return lines


_ACTS = frozenset(ACT_COLUMNS.values())
