"""What the page tells and draws is what the commands tell and draw, of every example."""

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from yardfast.checks.as_one import stands_as_one
from yardfast.checks.examination import examine_in
from yardfast.checks.inputs import read, read_text
from yardfast.checks.situation import situation_of
from yardfast.report.drawings.gust_strip import gust_strip, marks
from yardfast.report.drawings.page_views import FRAME, views
from yardfast.report.screens.first_screen import first_screen
from yardfast.report.screens.glance import glance, numbers

EXAMPLES = Path(__file__).parents[2] / "examples"
QUICK = ("light-tower", "head-light", "seat-box", "three-pieces", "fingerpost")


@pytest.fixture(scope="module", params=QUICK)
def found(request):
    at = situation_of(read(EXAMPLES / f"{request.param}.toml"))
    return examine_in(at, at.design)


def _plain(text):
    return " ".join(text.split())


def test_every_row_of_the_first_screen_is_told_in_the_same_words(found):
    """All that `check` prints of a piece, but what to type next, stands on the page."""
    told = glance(found)
    rows = [*told.first, *told.rest]
    said = _plain(" ".join([told.word, told.said, *(row.text for row in rows)]))
    labels = "|".join(re.escape(row.label) for row in rows if row.label)
    screen = [line.text for line in first_screen(found, 71)[1:]]  # as narrow as has no picture
    until = next(i for i, line in enumerate(screen) if line.strip().startswith("Next"))
    for line in screen[:until]:
        words = re.sub(rf"^  (?:{labels}):? +", "", line)
        for piece in re.split(r"  +", words.strip()):
            assert piece in said, piece


def test_what_is_soon_known_is_what_is_told_once_all_is_judged(found):
    one = stands_as_one(found.at)
    assert numbers(one) == numbers(found)
    assert gust_strip(marks(one), "mph") == gust_strip(marks(found), "mph")
    assert views(one).front == views(found).front


def test_marks_stand_where_their_gusts_are(found):
    """Each mark's place, in shares of the rule, goes with its gust."""
    drawn = ElementTree.fromstring(gust_strip(marks(found), "mph"))
    lines = {
        line.get("class"): float(line.get("x1").rstrip("%"))
        for line in drawn
        if line.tag.endswith("line") and line.get("class") != "tick"
    }
    shares = [lines[m.key] / m.gust for m in marks(found) if m.gust and m.key in lines]
    assert shares == pytest.approx([shares[0]] * len(shares), rel=1.0e-3)  # to 0.01 % of the width


def test_both_views_stand_in_their_frames(found):
    drawn = views(found)
    for svg in (drawn.front, drawn.plan):
        _, _, width, height = map(float, ElementTree.fromstring(svg).get("viewBox").split())
        assert width == FRAME
        assert 0.0 < height <= FRAME + 1.0e-9


def test_a_person_beside_a_taller_piece_is_the_lower():
    """Drawn to one scale: 1.7 m beside a piece of 69 5/8 in, 1.768 m, is 0.961 of its height."""
    text = (EXAMPLES / "light-tower.toml").read_text(encoding="utf-8")
    one = stands_as_one(situation_of(read_text(text)))
    drawn = ElementTree.fromstring(views(one).front)
    gray = [each.get("d") for each in drawn.iter() if each.get("stroke") == "gray"]
    heights = [float(y) for _, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", gray[-1])]
    scale = float(re.search(r"1:(\d+)", views(one).scale)[1])
    # a thousandth of a metre on paper is a millimetre; corners are rounded by 0.006 of the stature
    assert max(heights) - min(heights) == pytest.approx(1700.0 / scale, rel=0.01)


def test_what_it_was_is_drawn_faintly_and_only_where_it_is_asked_for():
    text = (EXAMPLES / "light-tower.toml").read_text(encoding="utf-8")
    wider = text.replace("'24 in'", "'40 in'")
    was, now = (stands_as_one(situation_of(read_text(each))) for each in (text, wider))
    assert views(now).plan.count('stroke="gray"') == 0
    assert views(now, was.structure).plan.count('stroke="gray"') == 1
