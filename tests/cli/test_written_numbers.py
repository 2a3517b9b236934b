"""Lengths as a file and a tape have them, answers as they are shown: by hand."""

import pytest

from yardfast.cli.files.written_sizes import is_metric, written_size
from yardfast.cli.starting.answers import shown_answer

INCH = 0.0254


@pytest.mark.parametrize(
    ("metres", "parts", "written"),
    [
        (0.6, 8, "600 mm"),
        (0.6004, 8, "600 mm"),  # a file that is made new: to the mm
        (0.6, 64, "600 mm"),
        (0.60045, 64, "600.45 mm"),  # one that is changed: as it is
        (-0.25, 8, "-250 mm"),
        (-0.0001, 8, "0 mm"),
    ],
)
def test_a_length_in_millimetres(metres, parts, written):
    assert written_size(metres, metric=True, parts=parts) == written


@pytest.mark.parametrize(
    ("inches", "parts", "written"),
    [
        (24.0, 8, "24 in"),
        (24.5, 8, "24 1/2 in"),
        (0.75, 8, "3/4 in"),
        (0.0, 8, "0 in"),
        (24.3, 8, "24 1/4 in"),  # to the nearest eighth
        (24.328125, 64, "24 21/64 in"),
        (24.33, 64, "24.33 in"),
        (600.0 / 25.4, 64, "600 mm"),  # what is a whole mm and no tape's mark is one
        (-1.5, 8, "-1 1/2 in"),
    ],
)
def test_a_length_in_inches(inches, parts, written):
    assert written_size(inches * INCH, metric=False, parts=parts) == written


@pytest.mark.parametrize(
    ("text", "metric"), [("60 cm", True), ("600 mm", True), ("24 in", False), ("2 ft 3 in", False)]
)
def test_which_lengths_are_metric(text, metric):
    assert is_metric(text) is metric


def test_an_answer_is_shown_whole_up_to_a_lines_length_and_never_moves_the_cursor():
    short, long = "x" * 40, "y" * 500
    assert shown_answer(short) == repr(short)
    shown = shown_answer(long)
    assert shown.endswith("…'")
    assert shown_answer("y" * (len(shown) - 2)) == repr("y" * (len(shown) - 2))
    assert len(shown_answer("y" * (len(shown) - 1))) == len(shown)
    assert shown_answer("a\x1b[31mb\n") == "'a?[31mb?'"
