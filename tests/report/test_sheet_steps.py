"""The steps of the sheet and what its drawing names: only what is there is to be driven."""

import re

import pytest
from pages import words
from verdict_designs import STANDS, block, design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.verdict import Word
from yardfast.report.data.result import Result
from yardfast.report.drawings.drawing_elevation import Elevation
from yardfast.report.drawings.drawing_pair import pairs
from yardfast.report.drawings.drawing_plan import PlanDrawing
from yardfast.report.drawings.drawing_polar import polar
from yardfast.report.drawings.front_view import front_view
from yardfast.report.drawings.ground_plan import ground_plan
from yardfast.report.drawings.set_out import set_out
from yardfast.report.printed.sheet import sheet

BOX = block("20 in", "20 in", "48 in", "12 lb/ft^3")
GUYS = """
[[guy]]
name = 'ropes'
line = 'polyester rope 1/4 in'
anchor = '{anchor}'
height = '40 in'
radius = '55 in'
count = 3
{end}
"""


def examined(text):
    return examine(read_text(text))


def guyed(anchor="screw anchor 40 in", end="", parts=BOX, wind="35 mph"):
    return examined(design_text(parts + GUYS.format(anchor=anchor, end=end), wind=wind))


def test_piece_that_stands_untied_has_nothing_to_drive_nor_pull():
    found = examined(STANDS)
    said = words(sheet(found, "letter"))
    assert "Set it up" in said
    assert "When more is forecast: " in said
    assert "811" in said
    assert not re.search(r"black dots|every stake|as drawn", said)
    assert not len(set_out(found).ends)


def test_piece_to_be_anchored_has_its_dots_and_stakes():
    found = examined(design_text(BOX))
    said = words(sheet(found, "letter"))
    assert re.search(r"black dots, .* from the middle of the foot.*Pull on every stake", said)
    assert len(set_out(found).anchors) == 4


def test_distances_from_the_middle_to_the_stakes_stand_in_the_plan_and_in_the_boxes():
    # stakes at the corners of a box 20 in square: half of its diagonal
    found = examined(design_text(BOX))
    out = set_out(found)
    half = 0.0254 * 10.0 * 2.0**0.5
    assert out.reaches == pytest.approx([half] * 4)
    svg = ground_plan(found, out, 76.2, 78.0).svg("")
    assert svg.count("14 1/8 in") == 1
    assert "14 1/8 in from the middle of the foot" in words(sheet(found, "letter"))


def test_a_figure_is_shown_from_the_side_on_which_it_is_one():
    board = block("1 in", "30 in", "40 in", "40 lb/ft^3")
    edge_on = examined(design_text(board))
    assert "seen from the right side" in front_view(edge_on, 70.0, 80.0).svg("")
    face_on = examined(design_text(block("30 in", "1 in", "40 in", "40 lb/ft^3")))
    assert "seen from the front" in front_view(face_on, 70.0, 80.0).svg("")


@pytest.mark.parametrize(
    ("end", "tied"), [("", "any knot"), ("end = 'splice'", "splice")], ids=["knot", "splice"]
)
def test_guys_are_told_where_they_start_end_and_how_they_are_tied(end, tied):
    found = guyed("rebar stake 5/8 in x 36 in", end)
    assert found.verdict.word is Word.HELD_DOWN
    said = words(sheet(found, "letter"))
    assert f"3 guys of polyester rope 1/4 in (made fast by {tied})" in said
    assert "from 3 ft 4 in up on the piece" in said
    assert "leaning away from it, 4 ft 7 in out from its middle" in said
    assert "where guys are tied" in said
    assert "every guy" in said
    assert "every stake" not in said


def test_only_stakes_lean():
    assert "leaning away" not in words(sheet(guyed("screw anchor 30 in"), "letter"))


def test_fastening_of_guys_is_not_checked_only_where_there_are_guys():
    def said(found):
        return " ".join(Result(found).not_checked)

    assert "How the guys are fastened to the piece was not checked" in said(guyed())
    assert "guys" not in said(examined(design_text(BOX)))


def test_drawing_of_a_held_piece_says_that_it_tips_untied():
    held, free = guyed(), examined(design_text(BOX))
    assert "untied from" in polar(held, 62.0).svg("")
    assert "untied, tips" in PlanDrawing(held).legend(200.0).svg("")
    assert "untied" not in polar(free, 62.0).svg("") + PlanDrawing(free).legend(200.0).svg("")


def test_weight_and_height_of_the_balance_point_do_not_overlap():
    slim = block("6 in", "6 in", "48 in", "30 lb/ft^3")
    found = guyed(parts=slim)
    smallest = pairs(found, 190.0, [36.0])[0].scale
    svg = Elevation(found).paper(smallest, arm=False).svg("")
    weight = re.search(r'<text x="([\d.]+)"[^>]*bold"[^>]*>(\d+ lb)<', svg)
    height = max(float(x) for x in re.findall(r'<text x="([\d.]+)"[^>]*>24 in<', svg))
    letters = 0.55 * 11.0 * 25.4 / 72.0
    assert float(weight[1]) + letters * len(weight[2]) < height
