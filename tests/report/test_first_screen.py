"""The first screen: 22 lines of 79 columns, the worst thing first, every fact once."""

import re

import pytest
import word_designs
from bare_checks import bare_check
from garden import EXAMPLES, FOLDER, marked
from sample_file import HARBOUR_LIGHT
from verdict_designs import design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.not_looked_at import Topic
from yardfast.checks.verdict import GOOD, HOLDABLE, Reason, Word
from yardfast.design.structure import build_structure
from yardfast.report.drawings.picture import TALLEST, WIDEST, picture
from yardfast.report.drawings.seen import known_from
from yardfast.report.screens.first_screen import MOST_COLUMNS, MOST_LINES, first_screen
from yardfast.report.screens.folder import folder, folder_row
from yardfast.report.wording.amounts import MPH, POUND_FORCE
from yardfast.statics.contacts.look_again import LookAgain
from yardfast.units.frozen import replace

TEXTS = {file.stem: file.read_text(encoding="utf-8") for file in EXAMPLES}
TEXTS |= {f"{word}, {reason}": text for (word, reason), text in word_designs.TEXTS.items()}
EACH = pytest.mark.parametrize("name", [pytest.param(one, marks=marked(one)) for one in TEXTS])


def examined(name):
    """Return what is found of an example, in the folder of the examples, or of a word's design."""
    file = f"examples/{name}.toml" if name in {file.stem for file in EXAMPLES} else ""
    return examine(read_text(TEXTS[name], file))


def screen(found, columns=79):
    return [line.text for line in first_screen(found, columns)]


def flat(lines):
    return " ".join(" ".join(lines).split())


@EACH
@pytest.mark.parametrize("columns", [79, 199])
def test_it_takes_22_lines_of_79_columns(name, columns):
    lines = screen(examined(name), columns)
    assert len(lines) <= MOST_LINES
    assert max(map(len, lines)) <= MOST_COLUMNS


@EACH
def test_a_narrow_window_has_no_picture_and_no_line_too_wide(name):
    lines = screen(examined(name), 59)
    assert max(map(len, lines)) <= 59
    assert len(lines) <= 28
    assert not any("====" in line for line in lines)


@EACH
def test_it_is_plain_ascii(name):
    assert "\n".join(screen(examined(name))).isascii()


@EACH
def test_the_word_comes_first_and_is_that_of_the_data(name):
    found = examined(name)
    words = [w.upper() for w in Word]
    said = [line.split("   ")[0].strip() for line in screen(found) if line.strip()]
    first = next(text for text in said[1:] if text in words)
    assert first == found.verdict.word.upper()


@EACH
def test_only_the_word_is_coloured(name):
    lines = first_screen(examined(name))
    coloured = [line for line in lines if line.word is not None]
    assert [line.word[0] for line in coloured] == [examined(name).verdict.word.upper()]
    mood = coloured[0].word[1]
    word = examined(name).verdict.word
    assert mood == ("good" if word in GOOD else "tie" if word in HOLDABLE else "bad")
    assert {line.mood for line in lines} <= {"plain", "title"}


@EACH
def test_it_ends_with_what_to_type_next(name):
    last = screen(examined(name))
    assert "--numbers  --as-read  --assumed  --cautions" in "\n".join(last)


@EACH
def test_it_is_at_most_two_cautions_and_no_promise(name):
    text = flat(screen(examined(name)))
    for word in ("safe", "OK", "passes", "certified", "storm-proof", "guaranteed", "%"):
        assert word not in text.split()
    assert "second side" not in text


def test_gusts_and_pulls_are_those_of_the_data():
    found = examined("light-tower")
    text = flat(screen(found, 70))
    limits = found.limits
    assert f"gusts over {5 * int(limits.act / MPH / 5 + 1e-9)} mph are forecast" in text
    assert f"at {int(limits.forecast_sliding / MPH)} it slides" in text
    assert f"at {int(limits.forecast_tipping / MPH)} it tips" in text
    pull = int(re.search(r"pull up with (\d+) lb", text)[1])
    twice = 2.0 * found.remedies.stakes.pull / POUND_FORCE
    assert pull % 5 == 0
    assert twice <= pull < twice + 5.0


def test_the_first_mend_is_told_whole_then_two_then_a_count():
    found = examined("boathouse")
    some = [bare_check(f"member: part {n}", 2.0 + n) for n in range(5)]
    text = flat(screen(replace(found, checks=(*found.checks, *some))))
    for number in (1, 2, 3):
        assert f"Mend {number} of 7" in text
    assert "and 4 more" in text
    assert " Or " not in text
    assert "Until then" in text


def test_a_loose_piece_that_tips_and_slides_is_one_thing_to_mend():
    assert "Mend 1 of 2" in flat(screen(examined("three-pieces")))


def test_what_to_look_at_again_stands_above_the_word():
    note = LookAgain("roof", "wall", "solid plywood, 11 of the 63 lb", "say stock if hollow")
    lines = first_screen(replace(examined("light-tower"), look_again=(note,)))
    again = next(i for i, line in enumerate(lines) if "Look again" in line.text)
    word = next(i for i, line in enumerate(lines) if "TIE IT DOWN" in line.text)
    assert again < word
    assert lines[again].word == ("Look again", "tie")
    assert len(lines) <= MOST_LINES


def test_what_the_file_does_not_fasten_is_said_once():
    text = flat(screen(examined("mailbox"), 70))
    assert text.count("post and brace") == 1
    assert "STANDS BY ITSELF in the 46 mph you asked, if each of post and brace is" in text


def test_the_picture_is_small_and_shows_the_side_by_which_it_is_known():
    for file in EXAMPLES:
        rows = picture(build_structure(read(file)))
        assert len(rows) <= TALLEST + 2
        assert len({len(row) for row in rows}) == 1
        assert len(rows[0]) <= WIDEST + 1
    # the heron is sawn from a sheet: from its side it would be a line
    assert max(map(len, picture(build_structure(read(FOLDER / "heron.toml"))))) > 8


@pytest.mark.parametrize(
    "name", [pytest.param(one, marks=marked(one)) for one in ("swing", "boathouse", "arbor")]
)
def test_a_picture_stands_beside_what_fills_the_screen(name):
    assert any("=====" in line for line in screen(examined(name)))


def test_an_arch_is_known_from_where_one_walks_through_it_and_a_trellis_by_its_lattice():
    # the lattices at its sides are half air: from there it covers no more than twice as much
    assert known_from(build_structure(read(FOLDER / "arbor.toml")))[1] == 0
    trellis = (
        "[[part]]\nname = 'post'\nshape = 'box'\nlumber = '4x4'\nheight = '60 in'\n"
        "density = '30 lb/ft^3'\n[[part]]\nname = 'lattice'\nshape = 'panel'\nturn = '90 deg'\n"
        "width = '48 in'\nheight = '48 in'\nthickness = '3/4 in'\nsolidity = 0.5\n"
        "density = '30 lb/ft^3'\nat = ['0 in', '0 in', '6 in']\n"
    )
    structure = build_structure(read_text(design_text(trellis)))
    assert known_from(structure)[1] == 1


def test_what_the_file_can_still_say_stands_apart_from_what_is_never_looked_at():
    text = HARBOUR_LIGHT.replace("material = 'softwood plywood'", "density  = '36 lb/ft^3'", 1)
    found = examine(read_text(text))
    strength = next(o for o in found.verdict.not_looked_at if o.topic is Topic.STRENGTH)
    assert len(strength.by_file) == 1
    told = flat(screen(found, 70))
    assert f"material of {strength.by_file[0]}" in told
    assert f"strength of {strength.by_file[0]}" not in told


def test_a_folder_tells_the_weakest_first_and_counts():
    found = [examined(name) for name in TEXTS if not marked(name)]
    lines = folder(map(folder_row, found), [("six.toml", 14), ("one.toml", 1)])
    text = [line.text for line in lines]
    assert max(map(len, text)) <= MOST_COLUMNS
    order = [line.word[0] for line in lines if line.word is not None]
    assert order[:2] == ["14 to put right", "1 to put right"]
    order = order[2:]
    rank = [w.upper() for w in Word]
    assert order == sorted(order, key=rank.index)
    assert len(order) == len(found)
    whole = flat(text)
    for one in found:
        assert one.design.name in whole
    assert f"{len(found)} pieces: " in whole
    assert "2 more cannot be read" in whole
    assert "needs none" not in whole


def test_a_folder_tells_what_to_mend_or_hold_it_with():
    rows = [folder_row(examined(name)) for name in ("light-tower", "boathouse")]
    text = flat([line.text for line in folder(rows)])
    assert "light-tower.toml Light tower hold it with four steel stakes 1 in x 36 in" in text
    worst = examined("boathouse").verdict.to_mend[0].subject
    assert f"Mini boathouse mend {worst}" in text


def test_posts_that_give_way_are_told_how_deep():
    text = flat(screen(examined(f"{Word.SET_IT_DEEPER}, {Reason.POSTS_GIVE}")))
    assert "Mend make post" in text
    assert "in concrete" in text
