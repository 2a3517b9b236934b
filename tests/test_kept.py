"""Answers and screens of many pieces, against what was last looked at (tests/support/kept.py).

They say that something changed, and what; not that it is right. Where a change is meant:
``python tests/support/kept.py``, and read the difference before it is kept.
"""

import difflib

import pytest
from garden import LONG
from kept import DRAWN, FOLDER, SCREENS, SLOW, answer, differing, pages, pieces, screens

PIECES = pieces()


def names(every, slow):
    return [pytest.param(name, marks=[pytest.mark.slow] if name in slow else []) for name in every]


@pytest.mark.parametrize("name", names(PIECES, LONG))
def test_the_numbers_of_a_piece_are_as_kept(name):
    kept = (FOLDER / f"{name}.answer").read_text(encoding="utf-8").splitlines()
    found = differing(kept, answer(PIECES[name], f"{name}.toml"))
    assert not found, "\n".join(f"{path}: {old} -> {new}" for path, old, new in found)


@pytest.mark.parametrize("name", names(SCREENS, SLOW))
def test_what_is_printed_is_as_kept(name):
    kept = (FOLDER / f"{name}.screens").read_text(encoding="utf-8").splitlines()
    now = screens(name).splitlines()
    assert kept == now, "\n".join(difflib.unified_diff(kept, now, "kept", "now", lineterm="", n=1))


@pytest.mark.parametrize("name", names(DRAWN, SLOW))
def test_what_is_drawn_and_set_on_paper_is_as_kept(name):
    kept = (FOLDER / f"{name}.pages").read_text(encoding="utf-8").splitlines()
    now = pages(name).splitlines()
    assert kept == now, "\n".join(difflib.unified_diff(kept, now, "kept", "now", lineterm="", n=1))


def test_every_kept_file_is_of_a_piece_that_is_asked():
    asked = {f"{name}.answer" for name in PIECES} | {f"{name}.screens" for name in SCREENS}
    asked |= {f"{name}.pages" for name in DRAWN}
    assert {file.name for file in FOLDER.iterdir()} == asked


def test_a_number_a_word_and_a_line_that_change_are_told():
    kept = ["a = 1.000001 2", "b = 'holds'", "c = 3", "wind.direction_deg = 90"]
    assert (
        differing(kept, ["a = 1.0000014 2", "b = 'holds'", "c = 3", "wind.direction_deg = 0"]) == []
    )
    assert differing(
        kept, ["a = 1.00001 2", "b = 'fails'", "wind.direction_deg = 80", "d = 1"]
    ) == [
        ("a", "1.000001 2", "1.00001 2"),
        ("b", "'holds'", "'fails'"),
        ("c", "3", None),
        ("wind.direction_deg", "90", "80"),
        ("d", None, "1"),
    ]
