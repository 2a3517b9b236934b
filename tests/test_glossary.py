import csv
import re

import pytest
from glossary_page import PAGE, ROOT, Term, page, terms


def test_the_page_is_what_the_code_says() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), "python tests/support/glossary_page.py"


@pytest.mark.parametrize("row", terms(), ids=lambda row: f"{row.module}.{row.name}")
def test_the_code_writes_the_symbol_the_unit_and_the_clause_of_a_term(row: Term) -> None:
    first = row.says.splitlines()[0]
    assert re.search(rf"(?<![\w]){re.escape(row.symbol)}(?!\w)", row.says)
    assert row.unit == "" or re.search(rf"\b{re.escape(row.unit)}\b", first)
    assert re.search(r"\d", row.clause), "a docstring names document and clause"


def test_a_term_and_what_works_it_out_stand_once() -> None:
    with (ROOT / "docs" / "glossary.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    for column in ("term", "name"):
        named = [(row["module"] if column == "name" else "", row[column]) for row in rows]
        assert len(set(named)) == len(named)
