"""The steps of the sheet and what its drawing names: only what is there is to be driven."""

import re

import pytest
from pages import words
from verdict_designs import STANDS, block, design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.drawing_elevation import Elevation
from yardfast.report.drawing_pair import pairs
from yardfast.report.drawing_plan import Plan
from yardfast.report.drawing_polar import polar
from yardfast.report.not_checked import not_checked
from yardfast.report.sheet import sheet

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


def guyed(anchor="rebar stake 5/8 in x 36 in", end="", parts=BOX):
    return examined(design_text(parts + GUYS.format(anchor=anchor, end=end)))


def test_piece_that_stands_untied_has_nothing_to_drive_nor_pull():
    found = examined(STANDS)
    said = words(sheet(found, "letter"))
    assert "Nothing to drive" in said
    assert "Above the gusts named, " in said
    assert "811" in said
    assert not re.search(r"one at each dot|every stake|suggested anchors", said)
    assert len(Plan(found).suggested) == 0


def test_piece_to_be_anchored_has_its_dots_and_stakes():
    found = examined(design_text(BOX))
    said = words(sheet(found, "letter"))
    assert re.search(r"at each dot.*suggested anchors.*Pull on every stake", said)
    assert "Nothing to drive" not in said


@pytest.mark.parametrize(
    ("end", "tied"), [("", "any knot"), ("end = 'splice'", "splice")], ids=["knot", "splice"]
)
def test_guys_are_told_where_they_start_end_and_how_they_are_tied(end, tied):
    said = words(sheet(guyed(end=end), "letter"))
    assert f"3 guys of polyester rope 1/4 in (made fast by {tied})" in said
    assert "from 3 ft 4 in up on the piece" in said
    assert "leaning away from it, 4 ft 7 in out from its middle" in said
    assert "how the guys are fastened to the piece" in said
    assert "every guy" in said
    assert "every stake" not in said


def test_only_stakes_lean():
    assert "leaning away" not in words(sheet(guyed("screw anchor 30 in"), "letter"))


def test_fastening_of_guys_is_not_checked_only_where_there_are_guys():
    def shorts(found):
        return [remark.short for remark in not_checked(found)]

    assert "how the guys are fastened to the piece" in shorts(guyed())
    assert not any("guys" in short for short in shorts(examined(design_text(BOX))))


def test_drawing_of_a_held_piece_says_that_it_tips_untied():
    held, free = guyed(), examined(design_text(BOX))
    assert "untied from" in polar(held, 62.0).svg("")
    assert "untied, tips" in Plan(held).legend(200.0).svg("")
    assert "untied" not in polar(free, 62.0).svg("") + Plan(free).legend(200.0).svg("")


def test_weight_and_height_of_the_balance_point_do_not_overlap():
    slim = block("6 in", "6 in", "48 in", "30 lb/ft^3")
    found = guyed(parts=slim)
    smallest = pairs(found, 190.0, [36.0])[0].scale
    svg = Elevation(found).paper(smallest, arm=False).svg("")
    weight = re.search(r'<text x="([\d.]+)"[^>]*bold"[^>]*>(\d+ lb)<', svg)
    height = max(float(x) for x in re.findall(r'<text x="([\d.]+)"[^>]*>24 in<', svg))
    letters = 0.55 * 11.0 * 25.4 / 72.0
    assert float(weight[1]) + letters * len(weight[2]) < height
