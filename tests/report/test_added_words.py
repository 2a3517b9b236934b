"""Weight that was added: the page and the listing say that the gusts to act at need it."""

import re

import pytest
from pages import words
from verdict_designs import block, design_text

from yardfast.checks.anchoring.added_weight import added_weight
from yardfast.checks.anchoring.ballasted import with_ballast
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.printed.label import Label, label
from yardfast.report.printed.sheet import sheet
from yardfast.report.printed.shop import Shop
from yardfast.units.frozen import replace

KG = 0.45359237
FLOOR = block("30 in", "30 in", "1 in", "35 lb/ft^3")
TOWER = (
    "[[part]]\nname = 'tower'\nshape = 'box'\nlength = '16 in'\nwidth = '16 in'\n"
    "height = '60 in'\nwall = '1/2 in'\nmaterial = 'softwood plywood'\non = 'block'\n"
)
BARE = FLOOR + TOWER
LAID = (
    "[[part]]\nname = 'ballast'\nshape = 'weight'\nmass = '180 lb'\nat = ['0 in', '0 in', '1 in']\n"
)
ROW = "[[ballast]]\nname = 'bags'\nmass = '60 lb'\ncount = 3\non = 'block'\n"
FILLED = FLOOR + TOWER + "fill = 'sand'\nfill_depth = '10 in'\n"


def design(parts, head=""):
    return read_text(design_text(parts).replace("[site]", f"{head}[site]", 1))


@pytest.mark.parametrize("added", [LAID, ROW], ids=["laid", "row"])
def test_page_and_listing_say_the_gust_without_the_weight(added):
    bare, held = examine(design(BARE)), examine(design(BARE + added))
    without = label(bare, Shop())
    assert isinstance(without, Label)
    gust = re.search(r"over (\d+ mph) are", without.short)[1]
    text = label(held, Shop())
    assert isinstance(text, Label)
    assert f"{gust} without its 180 lb ballast" in text.long
    assert f"{gust} without" in text.short
    page = words(sheet(held, "letter"))
    assert re.search(
        rf"Only with 180 lb fixed (low on it|on its block)\. Without it: [^.]*{gust}", page
    )
    assert re.search(r"lb[^.]*, with 180 lb fixed", page)
    assert "Only with" not in words(sheet(bare, "letter"))
    assert "without" not in without.short + without.long


@pytest.mark.parametrize("parts", [BARE + LAID, BARE + ROW, FILLED], ids=["laid", "row", "filled"])
def test_without_the_weight_it_acts_as_the_file_without_it(parts):
    held, bare = examine(design(parts)), examine(design(BARE))
    assert held.without_added.limits.act == pytest.approx(bare.limits.act, rel=1e-12)
    lost = held.structure.mass("typical") - bare.structure.mass("typical")
    assert held.added.mass == pytest.approx(lost, rel=1e-12)


def test_scale_reading_loses_the_weight_that_was_on_it():
    weighed = with_ballast(replace(design(BARE + ROW), weighed=250.0 * KG))
    added = added_weight(weighed)
    assert added.mass == pytest.approx(180.0 * KG)
    assert added.without.weighed == pytest.approx(70.0 * KG)


def test_other_weights_of_a_piece_are_its_own():
    lamp = LAID.replace("'ballast'", "'lamp'")
    assert examine(design(BARE + lamp)).added is None
    assert examine(design(BARE + lamp)).without_added is None


def test_fill_is_named_where_it_lies():
    page = words(sheet(examine(design(FILLED)), "letter"))
    assert re.search(r"Only with \d+ lb of sand in its tower\. Without it: \d+", page)


def test_nobody_is_asked_how_earth_is_fastened_to_the_box_that_it_fills():
    """What a body is filled with lies in it: no screw holds it, and no verdict rests on one."""
    verdict = examine(design(FILLED)).verdict
    assert not [name for name in verdict.unfastened if "sand" in name]
