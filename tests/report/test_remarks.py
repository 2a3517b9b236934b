"""Assumptions, cautions and what was not checked: each true of the design that it is said of."""

import re

import pytest
import verdict_designs
from bare_checks import bare_check

from yardfast import references
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.stated.cautions import GENERAL, OF, WHOLE
from yardfast.design.faults import DesignError
from yardfast.report.data.result import Result
from yardfast.report.screens.listings import material_lines, material_objects
from yardfast.report.told.passing_words import named, passing


def examined(text):
    return examine(read_text(text, "piece.toml"))


def said(found, about):
    return list(getattr(Result(found), about))


def has(sentences, words):
    return any(words in sentence for sentence in sentences)


HARBOUR = verdict_designs.HARBOUR


def with_site(line):
    return HARBOUR.replace("ground   = ", f"{line}\nground   = ", 1)


def test_every_caution_has_its_condition():
    keys = {row["key"] for row in references.table("cautions").rows}
    assert keys == GENERAL | set(WHOLE) | set(OF) | {"weighed"}


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("slope = '2 deg'", "taken as level"),
        ("elevation = '5000 ft'", "as at sea level"),
        ("topographic = 1.1", "No hill, ridge or bluff"),
        ("safety = 2.0", "Half again to spare"),
    ],
)
def test_a_default_is_told_until_it_is_given(given, words):
    assert has(said(examined(HARBOUR), "assumptions"), words)
    assert not has(said(examined(with_site(given)), "assumptions"), words)


def test_one_degree_of_slope_costs_what_the_examination_finds_at_one_degree():
    sentence = next(s for s in said(examined(HARBOUR), "assumptions") if "one degree" in s)
    sloped = examined(with_site("slope = '1 deg'"))
    tips = int(sloped.limits.forecast_tipping / 0.44704 + 1e-9)
    slides = int(sloped.limits.forecast_sliding / 0.44704 + 1e-9)
    assert f"down to {tips} mph and" in sentence
    assert sentence.endswith(f"down to {slides} mph.")


def test_the_friction_row_is_named_with_its_source():
    assert has(
        said(examined(HARBOUR), "assumptions"),
        "Friction of wood on firm lawn is taken as 0.40: EN 13814:2004 Table 3",
    )


def test_contact_is_told_where_nothing_says_it():
    text = verdict_designs.STANDS
    assert has(
        said(examined(text), "assumptions"), "What block rubs on the ground with is not said"
    )
    given = text.replace("density", "contact = 'concrete'\ndensity")
    assert not has(said(examined(given), "assumptions"), "is not said")


def test_a_round_surface_is_rough_until_it_is_given():
    text = verdict_designs.ROUND
    assert has(said(examined(text), "assumptions"), "The round surface of pillar is taken as rough")
    given = text.replace("mass", "surface = 'smooth'\nmass")
    assert not has(said(examined(given), "assumptions"), "taken as rough")


def test_a_wheel_spins_until_it_is_said_to_be_locked():
    text = verdict_designs.WHEEL
    assert has(said(examined(text), "assumptions"), "vane is taken to spin")
    assert has(said(examined(text), "cautions"), "A spinning wheel can hurt")
    locked = text.replace("blades = 6", "blades = 6\nspins = false")
    assert not has(said(examined(locked), "assumptions"), "taken to spin")
    assert not has(said(examined(locked), "cautions"), "A spinning wheel can hurt")


def test_densities_are_told_with_their_band_until_it_is_weighed():
    assert has(
        said(examined(HARBOUR), "assumptions"), "Softwood plywood weighs 36 lb/ft3 (32 to 41)"
    )
    weighed = said(examined(verdict_designs.WEIGHED), "assumptions")
    assert has(weighed, "scaled to the 44 lb that a scale showed")
    assert not has(weighed, "weighs 36 lb/ft3")


def test_people_are_asked_for_at_27_inches_and_answered_by_the_file():
    low = verdict_designs.design_text(
        verdict_designs.block("24 in", "24 in", "26 in", "90 lb/ft^3")
    )
    high = low.replace("26 in", "27 in")
    words = "does not say who comes near"
    assert not has(said(examined(low), "cautions"), words)
    assert has(said(examined(high), "cautions"), words)
    answered = high.replace("ground = ", "people = 'none'\nground = ")
    assert not has(said(examined(answered), "cautions"), words)


def test_trees_all_round_are_cautioned_only_where_they_are_counted_on():
    words = "1,500 ft (460 m)"
    assert not has(said(examined(HARBOUR), "cautions"), words)
    trees = HARBOUR.replace("'open'", "'houses and trees'")
    assert has(said(examined(trees), "cautions"), words)


def test_code_wind_without_source_or_period_is_cautioned():
    bare, named = verdict_designs.CODE, verdict_designs.CODE_NAMED
    for words in ("No source is named", "No return period is given"):
        assert has(said(examined(bare), "cautions"), words)
        assert not has(said(examined(named), "cautions"), words)
        assert not has(said(examined(HARBOUR), "cautions"), words)


def test_climbers_answer_the_caution_of_vines():
    text = verdict_designs.LATTICE
    assert has(said(examined(text), "cautions"), "climbers = true on trellis")
    grown = text.replace("solidity = 0.4", "solidity = 0.4\nclimbers = true")
    assert not has(said(examined(grown), "cautions"), "Vines make a lattice")


def test_parts_that_share_space_are_named():
    double = verdict_designs.STANDS + verdict_designs.block(
        "24 in", "24 in", "6 in", "20 lb/ft^3"
    ).replace("'block'", "'sunk'")
    assert has(said(examined(double), "cautions"), "block and sunk share more than 2 %")
    assert not has(said(examined(verdict_designs.STANDS), "cautions"), "share more than")


def test_joints_are_not_checked_where_there_are_any():
    assert has(said(examined(HARBOUR), "not_checked"), "foot, tower, gallery and roof are fastened")
    assert not has(said(examined(verdict_designs.STANDS), "not_checked"), "fastened")


def test_values_from_memory_are_named():
    found = said(examined(HARBOUR), "unverified")
    assert has(found, "from memory of APA Panel Design Specification")
    assert not has(found, "friction of wood")
    assert not has(found, "hexagonal and octagonal bodies")  # read in an adoption of ASCE 7
    code = said(examined(verdict_designs.CODE), "unverified")
    assert not has(code, "gust effect factor")  # read in open programs
    assert not has(code, "The least wind of 16 psf")


def test_metric_designs_are_told_in_metric():
    sentences = said(examined(verdict_designs.METRIC), "assumptions")
    assert not has(sentences, " mph")
    assert not has(sentences, " psf")


@pytest.mark.parametrize(
    ("kind", "ground", "digs", "unchecked"),
    [
        ("bolt 3/8 in into a slab", "paving", "drilling or digging", "No bolt and no slab"),
        ("steel stake 1 in x 36 in", "firm lawn", "driving stakes", "No stake was checked"),
    ],
)
def test_what_goes_into_the_ground_is_called_by_its_name(kind, ground, digs, unchecked):
    text = re.sub(r"ground +=.*", f"ground = '{ground}'", HARBOUR, count=1)
    held = f"\n[[anchor]]\nname = 'ties'\nkind = '{kind}'\nwhere = 'corners'\n"
    found = examined(text + held)
    assert has(said(found, "cautions"), f"some days before {digs}; private lines")
    assert has(said(found, "not_checked"), unchecked)


def test_the_listing_of_materials_leaves_out_how_copies_compare():
    told = " ".join(" ".join(line.text.split()) for line in material_lines())
    assert "Wood Handbook FPL-GTR-282" in told
    assert not re.search(r"agree|public copy|doubtful", told, re.IGNORECASE)
    sources = " ".join(one["source"] for one in material_objects())
    assert "DISAGREES" in sources


def test_pressure_treated_pine_is_answered_with_its_name():
    with pytest.raises(DesignError) as wrong:
        read_text(re.sub(r"material += .*", "material = 'pressure treated pine'", HARBOUR, count=1))
    assert "'southern pine, treated'" in wrong.value.faults[0].hint


def test_checks_that_pass_are_said_in_plain_words():
    names = ["overturning", "sliding", "bearing", "joint: a to b", "joint: c to d", "anchor: ties"]
    said_ = passing([bare_check(name) for name in names])
    assert said_ == (
        "it neither tips nor slides, nor does it sink in; a to b and c to d stay fastened; "
        "ties can take the pull"
    )
    assert named(bare_check("overturning")) == "tipping"
    assert named(bare_check("member: post")) == "strength of post"
