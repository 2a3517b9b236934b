"""Text for a listing: what it always says, what it never says, and how long it is."""

import re
from pathlib import Path

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from sample_file import HARBOUR_LIGHT
from verdict_designs import (
    ALL,
    AT_PIECE,
    CODE,
    FALLS,
    LONG_NAME,
    METRIC,
    PAVED,
    PUSHED,
    ROUND,
    SLIDES_DOWN,
    SOLID_AS_ROCK,
    STANDS,
    design_text,
)

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.stated.surroundings import act_by_exposure
from yardfast.design.faults import DesignError
from yardfast.report.data.result import Result
from yardfast.report.printed.label import (
    LONG,
    SHORT,
    Label,
    Refusal,
    label,
    printed_length,
    shortened,
)
from yardfast.report.printed.label_rows import label_object
from yardfast.report.printed.seller_words import TESTED, overstated
from yardfast.report.printed.shop import Shop
from yardfast.units.frozen import replace

EXAMPLES = Path(__file__).parents[2] / "examples"
NEVER = re.compile(
    r"safe|(storm|wind)[\s-]?proof|wind[\s-]?rated|certifi|engineered|approved|meets? (the )?code"
    r"|guarant|maintenance[\s-]?free|(?<!not )\btested\b",
    re.IGNORECASE,
)
"""What a seller's text must never say, written here anew, apart from the table."""
NEVER_OURS = re.compile(r"\bok\b|\bpasses\b", re.IGNORECASE)
"""What no words of ours say besides; a person's own name may be OK."""

STAKES = "\n[[anchor]]\nname = 'stakes'\nkind = 'rebar stake 1/2 in x 36 in'\nwhere = 'corners'\n"
HELD = HARBOUR_LIGHT.replace("58 mph", "35 mph") + STAKES
NOT_HELD = HARBOUR_LIGHT.replace("58 mph", "110 mph") + STAKES
DESIGNS = {**ALL, "HELD": HELD, "NOT_HELD": NOT_HELD}


def found(text):
    return examine(read_text(text, "piece.toml"))


HARBOUR = found(HARBOUR_LIGHT)


def texts(examination, shop=None):
    given_label = label(examination, shop or Shop())
    assert isinstance(given_label, Label), given_label
    return given_label.short, given_label.long


def named(name, examination=HARBOUR, maker=None):
    changed = replace(examination, design=replace(examination.design, name=name, maker=maker))
    for one in ("anchors", "verdict"):  # found once: a name changes none of it
        vars(changed)[one] = getattr(examination, one)
    return changed


@pytest.mark.parametrize("kind", DESIGNS)
def test_every_text_says_what_a_buyer_has_to_know_or_there_is_none(kind):
    examination = found(DESIGNS[kind])
    given_label = label(examination, Shop())
    if isinstance(given_label, Refusal):
        assert given_label.missing == "act-at"
        return
    per_mile = 3.6 if examination.design.units == "metric" else 1.0 / 0.44704
    act = Result(examination).to_dict()["limits"]["act_forecast_gust_m_s"]
    number = 5 * int(act * per_mile / 5.0 + 1.0e-6)
    unit = "km/h" if examination.design.units == "metric" else "mph"
    for text, most in ((given_label.short, SHORT), (given_label.long, LONG)):
        assert f"gusts over {number} {unit} are forecast (" in text
        assert "Calculated, not tested" in text
        assert "not checked" in text
        assert "sheet" in text
        assert not NEVER.search(text)
        assert not NEVER_OURS.search(text)
        assert printed_length(text) <= most
    assert "not for climbing or leaning" in given_label.long.lower()
    assert "Local rules apply" in given_label.long


NAMES = st.text(
    st.characters(blacklist_categories=["Cs", "Cc"], blacklist_characters="\u2028\u2029"),
    min_size=1,
    max_size=200,
).filter(lambda name: name.isprintable() and name.strip() == name)
WORDS = st.lists(
    st.sampled_from(
        [
            "Harbour",
            "light,",
            "the",
            "of",
            "a",
            "storm",
            "proof",
            "Not",
            "for",
            "tested",
            "sa",
            "fe",
        ]
    ),
    min_size=1,
    max_size=30,
).map(" ".join)


@pytest.mark.slow
@settings(deadline=None, max_examples=300)
@given(name=NAMES | WORDS)
@example(name="x" * 200)
@example(name="OK")
@example(name="🦀" * 100)
@example(name="contested" * 20)
@example(name="Windsafe " * 20)
@example(
    name="Light. Calculated, not tested; joints not checked. 25 mph are forecast (open ground)"
)
def test_no_name_makes_a_text_too_long_or_takes_out_of_it_what_must_stand_there(name):
    if overstated(name):
        with pytest.raises(DesignError):
            label(named(name), Shop())
        return
    short, long = texts(named(name))
    for text, most in ((short, SHORT), (long, LONG)):
        assert len(text) <= printed_length(text) <= most
        assert "25 mph are forecast (open ground)" in text
        assert "alculated, not tested" in text
        assert "not checked" in text
        assert not NEVER.search(text)


@settings(deadline=None)
@given(maker=NAMES, contact=NAMES, wording=NAMES)
def test_the_sellers_own_words_give_way_before_what_a_buyer_has_to_know(maker, contact, wording):
    assume(not any(overstated(text) for text in (maker, contact, wording)))
    given_label = label(HARBOUR, Shop(maker, contact, "US", wording))
    assert isinstance(given_label, Label)
    assert printed_length(given_label.long) <= LONG
    for own, what in ((maker, "maker"), (contact, "contact"), (wording, "wording")):
        assert (" ".join(own.split()) in given_label.long) or what in given_label.left_out
    for must in ("25 mph are forecast (open ground)", "Calculated, not tested", "not checked"):
        assert must in given_label.long


@given(name=NAMES, most=st.integers(12, 80))
def test_a_name_is_cut_where_one_sees_it_and_never_longer_than_asked(name, most):
    cut = shortened(name, most)
    assert printed_length(cut) <= most
    assert cut == name or (cut.endswith("...") and name.startswith(cut[:-3]))


def test_a_name_is_cut_between_words():
    assert shortened("Light tower by the old harbour", 20) == "Light tower..."
    assert shortened("Lighthouse", 20) == "Lighthouse"


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("Storm-proof light", "storm-proof"),
        ("Stormproof light", "storm-proof"),
        ("Wind\N{EN DASH}proof light", "storm-proof"),
        ("Safely home", "safe"),
        ("ＳＡＦＥ light", "safe"),
        ("Certified light", "certified"),
        ("Light, engineered", "engineered"),
        ("County approved light", "approved"),
        ("Meets the building code", "meets code"),
        ("Guaranteed to stand", "guaranteed"),
        ("Wind-tested light", "tested"),
        ("Maintenance free light", "maintenance-free"),
        ("A wind-rated light", "wind-rated"),
    ],
)
def test_a_name_that_promises_too_much_is_a_fault_that_names_word_and_reason(name, word):
    text = HARBOUR_LIGHT.replace("'Harbour light'", f"'{name}'")
    with pytest.raises(DesignError) as wrong:
        label(found(text), Shop())
    (fault,) = wrong.value.faults
    assert (fault.line, fault.key, fault.found) == (2, "name", name)
    assert f"'{word}'" in fault.expected
    assert len(fault.expected.partition(" in a listing: ")[2]) > 20
    assert "leave the word out" in fault.hint


def test_the_makers_name_is_held_to_the_same_words():
    with pytest.raises(DesignError) as wrong:
        label(named("Light", maker="Safe Yards Ltd"), Shop())
    assert wrong.value.faults[0].key == "maker"


@pytest.mark.parametrize(
    "harmless",
    ["Contested light", "Engineer Bob's works", "Code name light", "Coupon code SPRING", "Proof"],
)
def test_a_harmless_word_is_none_of_them(harmless):
    assert overstated(harmless) is None


RECORD = (
    "\n[[record]]\nkind = '{kind}'\nvalue = '{value}'\ndate = 2026-05-03\nby = 'A. Miller'\n{more}"
)


def test_a_dated_test_is_named_and_earns_its_word():
    tested = HARBOUR_LIGHT.replace("'Harbour light'", "'Tested light'") + RECORD.format(
        kind="scale test", value="7 lbf", more="height = '48 in'\n"
    )
    for text in texts(found(tested)):
        assert "Calculated; scale test on " in text
        assert "2026" in text
        assert "not tested" not in text
    weighed = HARBOUR_LIGHT + RECORD.format(kind="weight", value="41 lb", more="")
    assert all("Calculated, not tested" in text for text in texts(found(weighed)))


def test_joints_that_were_all_calculated_are_said_to_be():
    example = (EXAMPLES / "heron.toml").read_text(encoding="utf-8")
    heron = examine(read_text(example, str(EXAMPLES / "heron.toml")))
    assert any(check.name.startswith("joint: ") for check in heron.checks)
    assert "Joints: calculated." in texts(heron)[1]


def test_unseen_marks_hide_no_word():
    assert overstated("S\N{SOFT HYPHEN}afe light") is not None
    assert overstated("guar\N{ZERO WIDTH SPACE}anteed") is not None


def test_a_word_that_a_design_has_earned_is_let_through():
    assert overstated("Tested in May", frozenset({TESTED})) is None
    assert overstated("Tested and safe", frozenset({TESTED})) is not None


@pytest.mark.parametrize("text", [SOLID_AS_ROCK, FALLS, SLIDES_DOWN])
def test_where_there_is_no_gust_to_act_at_there_is_no_text(text):
    refused = label(found(text), Shop())
    assert isinstance(refused, Refusal)
    assert refused.missing == "act-at"
    assert "wind at all" in refused.reason or "no gust" in refused.reason


def test_anchors_of_the_design_are_named_else_those_that_would_do():
    assert "With eight rebar stakes 1/2 in x 36 in as on its sheet" in texts(found(HELD))[1]
    short = texts(found(NOT_HELD))[1]  # what its plan names does not do: it is not sold with that
    assert "as on its sheet" not in short
    assert "110 mph" in short
    choice, stakes = HARBOUR.anchors, HARBOUR.remedies.stakes
    assert choice is not None
    assert len(choice.held.points) == len(stakes.points) == 4
    pull = 5 * -(-2.0 * stakes.pull / 4.4482216152605 // 5)
    what = choice.row.kind.replace("stake", "stakes")
    said = f"With four {what}, in the middle of every other side, each proved in your soil"
    assert f"{said} by a pull of {pull:.0f} lb straight up" in texts(HARBOUR)[1]


def test_each_anchor_is_told_what_it_has_to_hold():
    bolts = texts(found(PAVED))[1]
    assert re.search(
        r"With four bolts .* one at each corner, each to hold \d+ lb straight up", bolts
    )
    assert "Look for pipes before drilling" in bolts
    wide = ROUND.replace("200 mm", "300 mm").replace("30 m/s", "38 m/s")
    assert "evenly round it" in texts(found(wide))[1]


def test_what_stands_untied_says_so_and_is_not_for_calm_days_only():
    long = texts(found(STANDS))[1]
    assert "worked out untied, for a forecast gust of 35 mph" in long
    assert "calm days" not in long


def test_the_wind_that_was_asked_for_is_named_as_what_it_is():
    assert "the 105 mph map wind of ASCE 7-22" in texts(found(CODE))[1]
    assert "a gust of 40 mph at the piece" in texts(found(AT_PIECE))[1]
    assert "km/h are forecast" in texts(found(METRIC))[1]


def test_people_who_pull_it_over_are_named():
    assert "people can pull it over" in texts(found(PUSHED))[1]


def test_one_part_has_no_joints_to_check():
    assert "Strength: not checked" in texts(found(STANDS))[1]
    assert "Joints: not checked" in texts(HARBOUR)[1]


@pytest.mark.parametrize(
    ("country", "asked"),
    [
        (None, "Call 811 in the US, the local line elsewhere, days before"),
        ("US", "Call 811 days before"),
        ("united  states", "Call 811 days before"),
        ("Australia", "Ask Before You Dig Australia days before"),
        ("Norway", "Call the local line days before"),
    ],
)
def test_the_country_decides_whom_to_ask_before_digging(country, asked):
    assert asked in texts(HARBOUR, Shop(country=country))[1]


def test_the_designs_own_maker_and_country_win_over_the_shops():
    site = HARBOUR_LIGHT.replace("[site]", "[site]\ncountry = 'Canada'")
    own = site.replace("units = 'imperial'", "units = 'imperial'\nmaker = 'Ann'\ncontact = '1-2'")
    long = texts(found(own), Shop(maker="Bob", contact="3-4", country="US"))[1]
    assert "Made by Ann. Ask: 1-2." in long
    assert "Bob" not in long
    assert "one-call line" in long


def test_posts_in_the_ground_are_named_with_their_depth_and_no_stake_is_driven():
    post = (
        "[[part]]\nname = 'safe post'\nshape = 'solid'\nsides = 4\nbottom = '3 1/2 in'\n"
        "top = '3 1/2 in'\nheight = '6 ft'\nembed = '{deep}'\nmaterial = 'western redcedar'\n"
    )
    deep = texts(found(design_text(post.format(deep="30 in"), wind="46 mph")))[1]
    assert "keep clear of it when gusts over" in deep.lower()
    assert "With its post set 2 ft 6 in deep, it was worked out for" in deep
    assert "days before digging" in deep
    assert not re.search("safe|stake|untied", deep, re.IGNORECASE)
    shallow = texts(found(design_text(post.format(deep="8 in"), wind="90 mph")))[1]
    assert "Its post set 8 in deep does not hold it in" in shallow


def test_the_gusts_of_three_surroundings_agree_with_a_design_that_stands_there():
    for words, exposure in (("open", "C"), ("houses and trees", "B"), ("shore", "D")):
        there = found(HARBOUR_LIGHT.replace("'open'", f"'{words}'"))
        assert there.limits.act == act_by_exposure(HARBOUR)[exposure]


def test_rougher_surroundings_are_told_where_they_ask_to_act_sooner():
    long = texts(found(HARBOUR_LIGHT.replace("'open'", "'houses and trees'")))[1]
    acts = act_by_exposure(HARBOUR)
    for exposure, place in (("C", "on open ground"), ("D", "at the shore")):
        assert re.search(rf"That is .*{acts[exposure] / 0.44704:.0f} mph.* {place}", long)


def test_the_json_object_says_the_same_as_the_result():
    result, text = Result(HARBOUR).to_dict(), label(HARBOUR, Shop())
    found_object = label_object(text)
    assert found_object["fingerprint"] == result["fingerprint"]
    assert found_object["not_checked"] == result["not_checked"]
    assert (
        found_object["act_forecast_gust_m_s"]["open ground"]
        == result["limits"]["act_forecast_gust_m_s"]
    )


def test_a_long_name_leaves_room_for_the_rest():
    short, long = texts(found(LONG_NAME))
    assert short.startswith("A very A very")
    assert "...: " in short
    assert "...: " in long
