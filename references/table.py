"""A published table as read from its file: text as printed, numbers, and numbers in SI.

Units are stated by the header's ending (``z_min_ft``, ``vertical_psf``) or, row by row, in a
column named ``unit``. A header that ends in none of the endings below holds pure numbers or text.
"""

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .. import units
from ..units.frozen import ByValue

TableRow = Mapping[str, str]

CONFIDENCES = ("seen", "copy", "derived", "memory", "judgement")
"""How well a value is known, best first; README.md beside this file says what each means."""

_FOLDER = Path(__file__).parent
_ENDINGS: Mapping[str, str] = {
    **dict.fromkeys(("in", "ft", "mm", "m", "mph", "kg", "lb", "lbf", "N", "kN", "deg"), ""),
    **dict.fromkeys(("psf", "psi", "Pa", "kPa", "pcf", "plf"), ""),
    "m_s": "m/s",
    "lb_ft3": "lb/ft^3",
    "kg_m3": "kg/m^3",
    "kg_m2": "kg/m^2",
    "kN_m2": "kN/m^2",
    "kN_m3": "kN/m^3",
}


class Table(ByValue, frozen=True):
    """The rows of one table, as printed, by column name."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[TableRow, ...]

    def where(self, column: str, value: str) -> tuple[TableRow, ...]:
        """Return the rows whose ``column`` holds exactly ``value``. KeyError: no such column."""
        self._need(column)
        return tuple(row for row in self.rows if row[column] == value)

    def one(self, column: str, value: str) -> TableRow:
        """Return the only row whose ``column`` holds ``value``. KeyError unless there is one."""
        found = self.where(column, value)
        if len(found) != 1:
            raise KeyError(f"table {self.name!r}: {len(found)} rows have {column} {value!r}")
        return found[0]

    def numbers(self, column: str) -> NDArray[np.float64]:
        """Return a column as printed, as numbers (R,); an empty field is NaN.

        KeyError where there is no such column, ValueError where a field is text.
        """
        self._need(column)
        return np.array([float(row[column] or "nan") for row in self.rows])

    def si(self, column: str) -> NDArray[np.float64]:
        """Return a column as numbers (R,) in SI units, by its header's ending or the unit column.

        KeyError where there is no such column or no unit is stated for it.
        """
        return self.numbers(column) * [units.factor(unit) for unit in self._units(column)]

    @property
    def source(self) -> str:
        """Return every source that the rows name, each once, in the order of the rows."""
        return "; ".join(dict.fromkeys(row["source"] for row in self.rows))

    @property
    def confidence(self) -> str:
        """Return the weakest confidence of any row."""
        return weakest_confidence(row["confidence"] for row in self.rows)

    def _need(self, column: str) -> None:
        if column not in self.columns:
            raise KeyError(f"table {self.name!r} has no column {column!r}: {list(self.columns)}")

    def _units(self, column: str) -> list[str]:
        ending = max((e for e in _ENDINGS if column.endswith(f"_{e}")), key=len, default=None)
        if ending is not None:
            return [_ENDINGS[ending] or ending] * len(self.rows)
        if "unit" not in self.columns:
            raise KeyError(f"table {self.name!r}: neither {column!r} nor a column states the unit")
        return [row["unit"] for row in self.rows]


@cache
def table(name: str) -> Table:
    """Return a table by its path in this folder, such as ``"wind/asce7_kd"``; read once.

    KeyError, with the nearest name, where there is none.
    """
    file = _FOLDER / f"{name}.csv"
    try:
        text = file.read_text(encoding="utf-8")
    except OSError:
        from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

        near = get_close_matches(name, table_names(), n=1, cutoff=0.4)
        hint = f"; the nearest is {near[0]!r}" if near else ""
        raise KeyError(f"there is no table {name!r} in references{hint}") from None
    head, *lines = csv.reader(text.splitlines())
    rows = tuple(dict(zip(head, line, strict=True)) for line in lines)
    return Table(name, tuple(head), rows)


def table_names() -> list[str]:
    """Return the name of every table."""
    files = _FOLDER.rglob("*.csv")
    return sorted(file.relative_to(_FOLDER).with_suffix("").as_posix() for file in files)


def weakest_confidence(confidences: Any) -> str:
    """Return the confidence of what rests on several values: that of the worst known."""
    return max(confidences, key=CONFIDENCES.index)
