"""Write docs/glossary.md: the field's terms, from docs/glossary.csv and what the code says of each.

    python tests/support/glossary_page.py

The clause is what the function's own docstring names as its source.
"""

import csv
import inspect
import re
from importlib import import_module
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[2]
PAGE = ROOT / "docs" / "glossary.md"
_HEAD = """# Glossary

What the field calls a thing, its symbol in the books, its unit, where it is printed, and the
function that works it out. Where no unit stands it is a ratio, or in the unit of what is given. By
`python tests/support/glossary_page.py` from `docs/glossary.csv` and from the docstrings.

| term | symbol | unit | clause | in the code |
|---|---|---|---|---|
"""


class Term(NamedTuple):
    """A row of the glossary, with the docstring of what works it out."""

    term: str
    symbol: str
    unit: str
    module: str
    name: str
    says: str

    @property
    def clause(self) -> str:
        """Return the source that the docstring names; nothing where it names none."""
        said = re.search(r"(?:Same source|Source): ?(.*?)(?:\n\s*\n|\Z)", self.says, re.DOTALL)
        return " ".join(said[1].split()).rstrip(".") if said else ""


def terms() -> list[Term]:
    """Return the terms in the order of the alphabet. ImportError, AttributeError."""
    with (ROOT / "docs" / "glossary.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    found = [
        Term(
            **row,
            says=inspect.getdoc(getattr(import_module(f"yardfast.{row['module']}"), row["name"]))
            or "",
        )
        for row in rows
    ]
    return sorted(found, key=lambda each: each.term.casefold())


def page() -> str:
    """Return the page as it should stand."""
    lines = [
        f"| {each.term} | {f'`{each.symbol}`'} | {each.unit} | {_cell(each.clause)} "
        f"| `{each.module}.{each.name}` |\n"
        for each in terms()
    ]
    return _HEAD + "".join(lines)


def _cell(text: str) -> str:
    return re.sub(r"([|*_^])", r"\\\1", text)


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
