"""Published answers that ship: each worked out again, and the page that shows them."""

import json

import pytest
import verification_page

from yardfast import references
from yardfast.checks.verification.recomputed import VALUES, VERIFIED_TABLES, last_digit, recomputed
from yardfast.cli import main
from yardfast.report.screens.verification import said, verification_lines

ROWS = recomputed()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.source[:40]}, {row.place[:30]}")
def test_what_is_printed_is_what_we_give(row):
    """Source, place and note stand in the row; to half a unit of the last digit, or its step."""
    assert row.ours == pytest.approx(float(row.printed), abs=row.tolerance * (1.0 + 1e-9) + 1e-9)


def test_there_are_enough_of_them_and_few_from_memory():
    assert len(ROWS) >= 250
    assert len({row.source for row in ROWS}) >= 25
    assert sum(row.confidence == "memory" for row in ROWS) <= len(ROWS) / 5


def test_a_step_wider_than_the_last_digit_says_why():
    for name in VERIFIED_TABLES:
        for row in references.table(name).rows:
            if row["step"] and float(row["step"]) > last_digit(row["printed"]):
                assert row["note"], row


def test_every_value_is_held_against_something():
    used = {row["value"] for name in VERIFIED_TABLES for row in references.table(name).rows}
    assert used == set(VALUES)


def test_no_answer_stands_twice():
    seen = {(row.what, tuple(row.inputs.items()), row.source, row.place) for row in ROWS}
    assert len(seen) == len(ROWS)


def test_the_command_prints_them_all(capsys):
    assert main(["verify", "--format", "json"]) == 0
    found = json.loads(capsys.readouterr().out)["rows"]
    assert len(found) == len(ROWS)
    keys = {"what", "source", "confidence", "printed", "ours", "tolerance", "passes"}
    assert all(keys <= set(row) and row["passes"] for row in found)
    assert main(["verify"]) == 0
    shown = capsys.readouterr().out
    assert f"{len(ROWS)} published answers of" in shown
    assert "To the printed digit all of them agree." in shown.replace("\n", " ")
    assert max(map(len, shown.splitlines())) <= 80


def test_one_that_differs_is_told_and_ends_in_status_1(monkeypatch, capsys):
    other = VALUES["wall on a footing"]
    monkeypatch.setitem(VALUES, "wall on a footing", lambda **given: 1.01 * other(**given))
    assert main(["verify"]) == 1
    shown = capsys.readouterr().out
    assert shown.count("  DIFFERS") == 1
    assert "1 of them do not agree" in shown


def test_inputs_are_said_with_their_units():
    wall = next(row for row in ROWS if row.what == "factor against overturning")
    assert "push 24 kip, push 42 ft" in said(wall)
    assert any("4.2" in line.text for line in verification_lines([wall]))


def test_the_page_is_the_one_that_the_rows_make():
    """Where this fails, run  python tests/support/verification_page.py"""
    assert verification_page.PAGE.read_text(encoding="utf-8") == verification_page.page()
