"""Sheets and labels that were handed out: which design and which fingerprint stood on them."""

import csv
import io
from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path

from ...design.faults import DesignError, Fault
from ...design.reader.file_text import text_in
from ...design.reader.typed_text import shown
from ...units.frozen import ByValue, field
from ..wording.cells import from_cell
from ..wording.fingerprint import LENGTH

_NEEDED = ("file", "fingerprint")


class PrintedSheet(ByValue, frozen=True):
    """One sheet as handed out: its design's file and what was printed, by column.

    ``table`` is the file of rows that names it, nothing where it was typed.
    """

    file: str
    fingerprint: str
    printed: Mapping[str, str] = field(default_factory=dict[str, str])
    table: str = ""

    @property
    def design_file(self) -> str:
        """Return where the design lies: as named, else from the folder of the table, or in it."""
        if not self.table:
            return self.file
        folder = Path(self.table).parent
        places = (Path(self.file), folder / self.file, folder / Path(self.file).name)
        try:
            return str(next((place for place in places if place.is_file()), places[0]))
        except (OSError, ValueError):
            return self.file


def is_fingerprint(text: str) -> bool:
    """Return whether a text is a fingerprint as printed."""
    return len(text) == LENGTH and all(c in "0123456789abcdef" for c in text.casefold())


def read_printed(path: str) -> list[PrintedSheet]:
    """Return the sheets that a table of labels names. DesignError with all that is wrong."""
    text = text_in(path, "a table of labels, .csv").removeprefix("\ufeff")
    rows = csv.reader(io.StringIO(text))
    try:
        heads: list[str] = next(rows, list[str]())
        columns = [name.strip().casefold() for name in heads]
        numbered = [(rows.line_num, row) for row in rows if any(row)]
    except csv.Error as error:
        raise DesignError(
            (_fault(path, rows.line_num, None, str(error), "rows of a table"),)
        ) from None
    missing = [_missing(path, name, columns) for name in _NEEDED if name not in columns]
    if missing:
        raise DesignError(tuple(missing))
    found: list[PrintedSheet] = []
    faults: list[Fault] = []
    for line, row in numbered:
        values = dict(zip(columns, (from_cell(value.strip()) for value in row), strict=False))
        file, fingerprint = (values.get(name, "") for name in _NEEDED)
        if not file:
            faults.append(_fault(path, line, "file", shown(file), "the name of a design file"))
        if not is_fingerprint(fingerprint):
            expected = f"a fingerprint: {LENGTH} figures, 0 to 9 and a to f"
            faults.append(_fault(path, line, "fingerprint", shown(fingerprint), expected))
        found.append(PrintedSheet(file, fingerprint.casefold(), values, path))
    if faults:
        raise DesignError(tuple(faults))
    if not found:
        expected = "a row for each sheet, as  yardfast label --format csv  writes them"
        raise DesignError((_fault(path, None, None, "no rows", expected),))
    return found


def _missing(path: str, name: str, columns: list[str]) -> Fault:
    near = get_close_matches(name, columns, n=1, cutoff=0.6)
    hint = f"'{shown(near[0])}'?" if near else "yardfast label --format csv  writes it"
    return _fault(path, 1, name, f"no column '{name}'", f"a column '{name}'", hint)


def _fault(
    path: str, line: int | None, key: str | None, found: str, expected: str, hint: str = ""
) -> Fault:
    return Fault(path, line, None, key, found, expected, hint)
