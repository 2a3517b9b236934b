"""Cells of a table for spreadsheets: no text in one is taken for a formula, and each reads back."""

import csv
import io
from collections.abc import Iterable, Mapping, Sequence

_FIRST = ("=", "+", "-", "@", "\t", "\r", "'")
"""What a formula begins with, and the mark that keeps a text from being one."""


def as_cell(value: str) -> str:
    """Return a text as a cell that no spreadsheet takes for a formula."""
    return f"'{value}" if value.startswith(_FIRST) else value


def from_cell(cell: str) -> str:
    """Return the text that ``as_cell`` wrote; what a person typed without a mark as it is.

    >>> from_cell(as_cell("-tower.toml")), from_cell("tower.toml")
    ('-tower.toml', 'tower.toml')
    """
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(_FIRST) else cell


def as_table(columns: Sequence[str], rows: Iterable[Mapping[str, str]]) -> str:
    """Return rows of cells under their heads, as spreadsheets read it."""
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return text.getvalue()
