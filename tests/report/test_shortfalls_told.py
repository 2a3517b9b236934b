"""What falls short besides the holding is said where people look: loose parts, named loads."""

from bare_checks import bare_check
from pages import words
from verdict_designs import CONCRETE, STANDS, block, design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.report.data.result import Result
from yardfast.report.printed.sheet import sheet
from yardfast.report.screens.sections import Shown, shown_of
from yardfast.report.told.passing_words import passing
from yardfast.units.frozen import replace

HEAD = (
    "[[part]]\nname = 'head'\nshape = 'box'\nlength = '8 in'\nwidth = '8 in'\nheight = '8 in'\n"
    "on = 'block'\nloose = true\ndensity = '12 lb/ft^3'\n"
)
NO_PICTURE = 70
NUMBERS = Shown(numbers=True)
STAKES = "[[anchor]]\nname = 'stakes'\nkind = 'steel stake 1 in x 36 in'\nwhere = 'corners'\n"
BEAM = design_text(
    "[[part]]\nname = 'foot'\nshape = 'box'\nlength = '60 in'\nwidth = '40 in'\nheight = '8 in'\n"
    f"density = '{CONCRETE}'\n"
    "[[part]]\nname = 'post'\nshape = 'box'\non = 'foot'\nlumber = '2x4'\nheight = '60 in'\n"
    "material = 'douglas fir'\n",
    wind="20 mph",
)


def load(force, at="['0 in', '0 in', '12 in']", direction="back", name="leaning", on="block"):
    return (
        f"[[load]]\nname = '{name}'\nforce = '{force}'\nat = {at}\ndirection = '{direction}'\n"
        f"on = '{on}'\n"
    )


def examined(text):
    return examine(read_text(text, "piece.toml"))


def said(text, shown=None):
    lines = shown_of(examined(text), shown or Shown(), NO_PICTURE)
    return " ".join(" ".join(line.text for line in lines).split())


def on_paper(text):
    return words(sheet(examined(text), "letter"))


def light(more=""):
    return design_text(block("20 in", "20 in", "48 in", "12 lb/ft^3", more))


def test_the_sheet_says_in_its_box_that_loose_parts_come_off():
    text = on_paper(light() + HEAD)
    warning = "HEAD COMES OFF in a forecast gust of 58 mph: fasten it first."
    assert text.index("When gusts are forecast over") < text.index(warning)
    assert text.index(warning) < text.index("Do not go out to hold it")
    assert "OFF in" not in on_paper(light())


def test_a_loose_part_that_only_tips_is_named_as_well():
    tall = HEAD.replace("height = '8 in'", "height = '30 in'").replace("12 lb/ft^3", "9 lb/ft^3")
    rough = light() + tall.replace("loose = true", "loose = true\ncontact = 'rubber'")
    found = examined(rough)
    failing = [check.name for check in found.checks if not check.passes]
    assert "loose: head" in failing
    assert "COMES APART" in said(rough)
    assert "head: by itself it tips in 58 mph: fasten it" in said(rough, Shown(numbers=True)) or (
        "Mend 1 of 1" in said(rough)
    )


def test_the_sheet_tells_as_worked_out_only_loads_that_it_stands():
    held, failing = load("5 lbf", name="a wreath"), load("900 lbf", name="climbers")
    text = on_paper(STANDS + held + failing)
    assert "Does NOT stand 'climbers': keep people off." in text
    assert "Loads worked out: 'a wreath' (5 lb), no more." in text
    assert "NOT stand" not in on_paper(STANDS + held)
    assert "Loads worked out" not in on_paper(STANDS + failing)


def test_stakes_against_the_wind_are_no_promise_for_a_named_load():
    text = said(light() + load("400 lbf"))
    assert "alone will not save it: it does not stand 'leaning'" in text
    assert "does not stand" not in said(light() + load("0.1 lbf"))


def test_a_load_is_judged_with_the_stakes_that_hold_the_piece():
    """What they hold about the edge is added to the weight: statics."""
    free, tied = (examine(read_text(light() + more + load("45 lbf"))) for more in ("", STAKES))
    alone, held = (
        next(check for check in found.checks if check.kind is Kind.LOAD) for found in (free, tied)
    )
    assert not alone.passes
    assert held.passes
    assert "untied" not in said(light() + STAKES + load("45 lbf"), NUMBERS)


def test_a_part_too_weak_under_a_load_is_not_called_too_weak_for_the_wind():
    under = load("150 lbf", "['0 in', '0 in', '64 in']", name="pulled", on="post")
    text, paper = said(BEAM + under), on_paper(BEAM + under)
    assert "1 part is too weak for 'pulled'" in text
    assert "too weak for 20 mph" not in text
    assert "1 part is too weak for 'pulled'" in paper
    assert "too weak for 20 mph" not in paper


def cautions_of(text):
    return " ".join(Result(examined(text)).cautions)


def test_nobody_is_told_to_lay_down_what_stands_in_the_ground():
    post = (
        "[[part]]\nname = 'post'\nshape = 'box'\nlumber = '4x4'\nheight = '90 in'\n"
        "embed = '30 in'\nmaterial = 'southern pine, treated'\n"
    )
    assert "keep away from it" in cautions_of(design_text(post))
    assert "lay it down or take it in, in time" in cautions_of(light())


def test_what_is_built_to_carry_is_told_to_carry_nothing_more():
    assert "Nothing more hung on it" in cautions_of(light() + load("5 lbf"))
    assert "Nothing more hung" not in cautions_of(light())


def test_one_name_of_many_takes_their_verb():
    assert passing([bare_check("member: legs")]) == "legs are strong enough for the wind"
    assert passing([bare_check("member: truss")]) == "truss is strong enough for the wind"
    # a joint is one, whatever its name ends in
    assert passing([bare_check("joint: beam to legs")]) == "beam to legs stays fastened"


def test_parts_whose_strength_was_not_checked_are_named_where_there_is_room():
    short = " in ', '0 in', '0 in']\nmass = '1 lb'\n"
    parts = "".join(
        f"[[part]]\nname = '{name}'\nshape = 'ball'\nacross = '4 in'\non = 'foot'\n"
        f"at = ['{x}{short.replace(' in ', ' in', 1)}"
        for x, name in ((-12, "cap"), (0, "ball"))
    )
    text = BEAM + parts
    assert any(
        "The strength of foot, cap and ball was" in one
        for one in Result(examined(text)).not_checked
    )


def test_what_fails_only_by_how_stiff_things_may_be_is_told_apart():
    found = examined(light())
    doubt = replace(bare_check("joint: lid to box", 1.3), envelope=(0.4, 1.3), as_read=0.6)
    sure = replace(bare_check("joint: foot to box", 1.3), envelope=(1.1, 1.3), as_read=1.2)
    lines = shown_of(replace(found, checks=(*found.checks, doubt, sure)), NUMBERS, NO_PICTURE)
    told = " ".join(" ".join(line.text for line in lines).split())
    assert "As they are read lid to box would hold; not if wood, fasteners or ground give" in told
    assert (doubt.fails_in_doubt, sure.fails_in_doubt) == (True, False)
