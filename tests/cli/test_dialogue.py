"""The dialogue of `yardfast new`: what is asked, and what each answer becomes in the file."""

import pytest
from scripted_talk import ENTER, ScriptedTalk, answered, asked_file, part

from yardfast.checks.inputs import read_text
from yardfast.cli.starting.pieces import PIECE_KINDS, piece
from yardfast.design.structure import build_structure
from yardfast.loads.wind.site import Site

INCH = 0.0254  # international inch, exact
MPH = 0.44704  # international mile, exact


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_the_dialogue_fits_a_screen_of_80_columns(kind):
    asked = []
    for question in piece(kind).questions:
        if not question.when:
            asked += ["?", "no such thing at all", "don't know"]
    lines = answered(kind, *asked)[2].heard.splitlines()
    assert any("no such thing" in line for line in lines)
    assert max(map(len, lines)) <= 80, max(lines, key=len)


# --- what is answered -------------------------------------------------------------------------


def test_a_tower_is_as_it_was_answered():
    design, text, _ = answered(
        "tower",
        "6",
        "5'-6 1/2\"",
        "20 in, 12 in",
        "3/4 in western redcedar",
        "30 in, 2x4 on edge",
        "gravel",
        "3",
        "1",
    )
    tower, foot, site = part(design, "tower"), part(design, "foot"), design.table(Site)
    assert tower.shape.sides == 6
    assert tower.shape.height == pytest.approx(66.5 * INCH)
    assert tower.shape.bottom == pytest.approx(20 * INCH)
    assert tower.shape.top == pytest.approx(12 * INCH)
    assert tower.material == "western redcedar"
    # A dressed 2x4 is 1 1/2 in by 3 1/2 in: American Softwood Lumber Standard PS 20.
    assert (foot.shape.width, foot.shape.height) == pytest.approx((1.5 * INCH, 3.5 * INCH))
    assert foot.shape.plan.across == pytest.approx(30 * INCH)
    assert (site.ground, site.exposure) == ("gravel", "D")
    assert site.wind == pytest.approx(46 * MPH)
    assert "'66 1/2 in'" in text


def test_widths_over_points_and_of_one_panel_are_written_as_such():
    # Corner to corner of a regular hexagon is 2 / sqrt(3) times flat to flat: plane geometry.
    design, text, _ = answered("tower", "6", ENTER, "20 in, 12 in points")
    assert "bottom_points" in text
    assert part(design, "tower").shape.bottom == pytest.approx(20 * INCH * 3**0.5 / 2)
    # The side of a square is its width.
    design, text, _ = answered("tower", "4", ENTER, "20 in, 12 in panel")
    assert "top_side" in text
    assert part(design, "tower").shape.top == pytest.approx(12 * INCH)


def test_the_foot_offered_is_wider_than_the_body():
    _, _, talk = answered("tower", "8", "6 ft", "30 in, 12 in")
    (prompt,) = [line for line in talk.asked if "Foot" in line]
    assert "[36 in, 2x6 flat]" in prompt


def test_not_knowing_the_ground_takes_the_softer_lawn_and_says_so():
    design, _, talk = answered("tower", *[ENTER] * 5, "don't know")
    assert design.table(Site).ground == "wet lawn"
    assert "softer" in talk.heard


def test_curly_marks_of_a_phone_are_read():
    design, _, _ = answered("tower", ENTER, "5′6″", ENTER, ENTER, ENTER, "I don’t know")
    assert part(design, "tower").shape.height == pytest.approx(66 * INCH)


def test_the_question_mark_explains_and_asks_again():
    design, _, talk = answered("tower", "?", "12")
    assert part(design, "tower").shape.sides == 12
    assert "seen from above" in talk.heard


@pytest.mark.parametrize(
    ("before", "wrong", "words"),
    [
        ([], "2", ["'2'", "3 to 60"]),
        ([], "eleventy", ["'eleventy'", "number of sides"]),
        ([ENTER], "480", ["'480'", "a length", "480 in", "480 mm"]),
        ([ENTER], "48 mph", ["'48 mph'", "a length"]),
        ([ENTER], "400 ft", ["'400 ft'", "100 ft"]),
        ([ENTER], "1,200 mm", ["1200 mm", "1.200 mm"]),
        ([ENTER, ENTER], "18 in, 12 in, 3 in", ["bottom", "top"]),
        (["7", ENTER], "18 in, 12 in points", ["7 sides"]),
        (["0", ENTER], "18 in, 12 in panel", ["round"]),
        ([ENTER] * 3, "3/4 wod", ["3/4 plywood"]),
        ([ENTER] * 3, "3/4 in cedar", ["western redcedar"]),
        ([ENTER] * 4, "24 in, 2x7 flat", ["lumber as sold"]),
        ([ENTER] * 5, "swamp", ["'swamp'", "1 to 7"]),
        ([ENTER] * 6, "9", ["'9'", "1 to 5"]),
    ],
)
def test_a_wrong_answer_is_asked_again_with_what_was_read_and_what_is_expected(
    before, wrong, words
):
    _, text, talk = answered("tower", *before, wrong)
    said = [" ".join(text.split()) for text in talk.said]
    told = [text for text in said if text.startswith("read ") and "expected" in text]
    assert len(told) == 1
    assert all(word in told[0] for word in words), told
    assert text == answered("tower", *before)[1]


@pytest.mark.parametrize(
    ("before", "written", "taken", "said"),
    [
        ([ENTER], "48", "48 in", "Read as 48 in."),
        ([ENTER], "4'6\"", "54 in", ""),
        ([ENTER], "5 foot", "5 foot", ""),
        ([ENTER, ENTER], "18 x 10 in", "18 in, 10 in", ""),
        ([ENTER, ENTER], "18 to 10", "18 in, 10 in", "Read as 18 in."),
        ([ENTER] * 3, '1/2" cdx', "1/2 plywood", "Read as 1/2 plywood."),
        ([ENTER] * 3, "3/4 plywod", "3/4 plywood", "Read as 3/4 plywood."),
        ([ENTER] * 3, "plywood", "3/4 plywood", "Read as 3/4 plywood."),
        ([ENTER] * 3, "western red cedar", "3/4 in western redcedar", "western redcedar."),
        ([ENTER] * 3, "5/8 redwood", "5/8 in redwood", "Read as 5/8 in."),
        ([ENTER] * 4, "30 in", "30 in, 2x6 flat", "2x6 flat"),
        ([ENTER] * 4, "30, 2x4", "30 in, 2x4 flat", "2x4 flat"),
        ([ENTER] * 4, "30 in 2 x 4 on edge", "30 in, 2x4 on edge", ""),
    ],
)
def test_what_people_write_is_taken_and_said_again(before, written, taken, said):
    _, text, talk = answered("tower", *before, written)
    assert text == answered("tower", *before, taken)[1]
    assert said in " ".join(talk.heard.split())


def test_a_step_back_asks_again_what_was_answered_and_keeps_it_for_enter():
    _, text, talk = answered("tower", "<", "6", "60 in", "<", ENTER, "20 in")
    assert "This is the first question." in talk.heard
    assert sum("[60 in]" in line for line in talk.asked) == 1
    assert text == answered("tower", "6", "60 in", "20 in")[1]


def test_a_step_back_from_a_follow_up_forgets_it():
    _, text, _ = answered("tower", *[ENTER] * 6, "4", "<", "1")
    assert text == answered("tower")[1]


def test_control_characters_in_a_wrong_answer_are_not_echoed():
    _, _, talk = answered("tower", "\x1b[31m8")
    assert "\x1b" not in talk.heard


def test_answers_that_do_not_go_together_are_asked_again_from_what_was_typed():
    lines = ["8", "48 in", "18 in, 10 in", "6 in western redcedar", *[ENTER] * 4]
    again = [ENTER, ENTER, ENTER, "3/4 in western redcedar", *[ENTER] * 4]
    talk = ScriptedTalk(*lines, *again)
    design = read_text(asked_file("tower", talk))
    assert "closes up" in talk.heard
    assert part(design, "tower").shape.wall == pytest.approx(0.75 * INCH)
    assert part(design, "tower").shape.bottom == pytest.approx(18 * INCH)


# --- around it, and the wind ------------------------------------------------------------------


def test_selling_it_gives_three_rows():
    _, text, _ = answered("tower", *[ENTER] * 6, "5")
    rows = [line for line in text.splitlines() if line.lstrip("# ").startswith("exposure")]
    assert ["shore" in rows[0], "open" in rows[1], "houses and trees" in rows[2]] == [True] * 3
    assert [row.startswith("#") for row in rows] == [False, True, True]


@pytest.mark.parametrize(
    ("landform", "k"),
    # ASCE/SEI 7-16 Fig. 26.8-1: K1 over H/Lh in Exposure C, and H/Lh = 0.5 at most.
    [("hill", 1.05), ("ridge", 1.45), ("bluff", 0.85)],
)
def test_a_hill_is_counted_at_its_steepest(landform, k):
    design, _, _ = answered("tower", *[ENTER] * 6, "4", landform)
    # Kzt = (1 + K1)^2, Eq. 26.8-1; the file has two decimals.
    assert design.table(Site).topographic == pytest.approx((1 + 0.5 * k) ** 2, abs=0.005 + 1e-9)


def test_the_building_departments_number_comes_with_its_source():
    design, text, talk = answered(
        "tower", *[ENTER] * 7, "3", ENTER, "112 mph", ENTER, "Town of Q, by 'phone"
    )
    site = design.table(Site)
    assert site.wind == pytest.approx(112 * MPH)
    assert site.method == "ASCE 7-22"
    assert site.wind_source == "Town of Q, by ’phone"
    assert talk.heard.count("no default") == 2
    assert "nominal" not in text


def test_an_old_maps_number_is_asked_for_its_kind():
    design, _, _ = answered("tower", *[ENTER] * 7, "3", "80 mph", "1", "Town of Q")
    # Ultimate over nominal is sqrt(1 / 0.6): ASCE 7-10 commentary C26.5-2.
    assert design.table(Site).wind == pytest.approx(80 * MPH * (1 / 0.6) ** 0.5)


def test_not_knowing_the_building_departments_number_is_no_number():
    talk = ScriptedTalk(*[ENTER] * 7, "3", "don't know", "don't know")
    with pytest.raises(EOFError):
        asked_file("tower", talk)
    assert talk.heard.count("no default") == 2


def test_a_record_of_gusts_goes_into_the_file_whole():
    design, _, _ = answered(
        "tower", *[ENTER] * 7, "4", "50 years: 75 mph, 10 years: 60 mph", "Q airport, 1970 to 2020"
    )
    site = design.table(Site)
    assert site.wind == pytest.approx(75 * MPH)
    assert site.gusts == pytest.approx({10.0: 60 * MPH, 50.0: 75 * MPH})
    assert site.wind_source == "Q airport, 1970 to 2020"


def test_a_single_gust_of_a_record_is_the_wind():
    site = answered("tower", *[ENTER] * 7, "4", "68 mph")[0].table(Site)
    assert site.wind == pytest.approx(68 * MPH)
    assert not site.gusts


@pytest.mark.parametrize("wrong", ["10 years: 60 mph", "10: 60 mph, 50: 55 mph", "60 ft", "10: x"])
def test_a_record_that_makes_no_sense_is_asked_again(wrong):
    site = answered("tower", *[ENTER] * 7, "4", wrong, "68 mph")[0].table(Site)
    assert site.wind == pytest.approx(68 * MPH)


# --- the other kinds --------------------------------------------------------------------------


def test_a_sign_stands_at_the_height_that_was_answered():
    design, _, _ = answered(
        "sign", "60 in, 20 in", "40 in", "1/2 plywood", "4x4", "42 in, 2x6 flat"
    )
    structure = build_structure(design)
    assert structure.height == pytest.approx(60 * INCH)
    board = [part.name for part in design.parts].index("board")
    assert structure.part_centre[board][2] == pytest.approx(50 * INCH)


def test_a_signs_feet_stay_below_its_board():
    _, _, talk = answered("sign", ENTER, "2 in", ENTER, ENTER, "36 in, 4x4", "36 in, 2x6 flat")
    assert any("lower edge" in line for line in talk.said if "expected" in line)


def test_a_wells_eaves_are_as_high_as_was_answered():
    design, _, _ = answered("well", ENTER, ENTER, ENTER, ENTER, "20 in", "70 in")
    structure = build_structure(design)
    roof = part(design, "roof").shape
    assert structure.height - roof.height == pytest.approx(70 * INCH)


def test_an_arbors_vines_and_open_sides():
    assert part(answered("arbor", *[ENTER] * 3, "2")[0], "lattice").shape.climbers
    names = [each.name for each in answered("arbor", *[ENTER] * 3, "3")[0].parts]
    assert "lattice" not in names


def test_a_wheels_blades_clear_ground_and_tower():
    design, _, talk = answered("wheel", ENTER, ENTER, ENTER, ENTER, "11 ft, 4 blades", "80 in, 4")
    assert any("clear the ground" in line for line in talk.said)
    wheel = part(design, "wheel").shape
    assert (wheel.blades, wheel.span) == (4, pytest.approx(40 * INCH))
    structure = build_structure(design)
    body = next(each for each in structure.bodies if design.parts[each.part].name == "wheel")
    tower = part(design, "tower").shape
    down = float(body.origin[2]) - wheel.span
    assert down > 0.0
    assert -float(body.origin[1]) > tower.bottom / 2.0 * 0.5
