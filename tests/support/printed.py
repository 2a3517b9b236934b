"""Rows of published values that the relations are held against."""

import csv
from pathlib import Path

from yardfast.references.table import Table

_FOLDER = Path(__file__).resolve().parent.parent / "published" / "data"


def rows(name):
    with (_FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def table(name):
    """Return such rows as a table like those of references/."""
    found = rows(name)
    return Table(name, tuple(found[0]), tuple(found))
