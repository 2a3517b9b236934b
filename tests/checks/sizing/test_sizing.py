"""Sizing is the inverse of the check: what it returns passes, and one build step less fails."""

from math import ceil, floor

import numpy as np
import pytest
from designs import design, post, tower
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.anchoring.anchor_choice import PLAINEST, suited, with_anchors
from yardfast.checks.examination import examine
from yardfast.checks.judged.build_steps import IMPERIAL, METRIC, greatest, least
from yardfast.checks.sizing.remedy import RemedyReason, checks_needed
from yardfast.checks.sizing.ways import REMEDY_KINDS, remedy_of, size_design
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.weight import Weight
from yardfast.loads.wind.site import Site
from yardfast.units.frozen import replace

FEW = settings(max_examples=3, deadline=None)
TOWER = design(*tower(6, 0.4, 0.3, 0.2, 1.0))
STEEL = 2500.0
"""A density in kg/m3 at which a foot's own weight counts."""


@pytest.fixture(scope="module")
def sizing():
    """Return the sizing of a light tower, worked out once."""
    return size_design(TOWER)


def passes(changed, before):
    """Return whether a design passes what a remedy for another has to."""
    return all(c.passes for c in examine(changed).checks if c.name in checks_needed(before))


def with_wind(piece, wind):
    return replace(piece, tables={**piece.tables, Site: replace(piece.table(Site), wind=wind)})


# --- the inverse of the check, the changed design built here by hand ---------------------------


@FEW
@given(st.sampled_from([0, 4, 6, 8]), st.floats(0.5, 1.0), st.floats(22.0, 30.0))
def test_the_base_width_found_passes_and_a_step_narrower_fails(sides, height, wind):
    def on(foot):
        return design(*tower(sides, foot, 0.3, 0.2, height, density=STEEL), wind=wind)

    before, remedy = remedy_of(on(0.32), "base width")
    if remedy.reason is not None:
        assert remedy.reason is RemedyReason.NOT_NEEDED
        assert passes(on(0.32), before)
        return
    assert remedy.value / METRIC.width == pytest.approx(round(remedy.value / METRIC.width))
    assert passes(on(remedy.value), before)
    assert not passes(on(remedy.value - METRIC.width), before)


@FEW
@given(st.sampled_from([0, 4, 6, 8]), st.floats(0.8, 1.6), st.floats(22.0, 30.0))
def test_the_ballast_found_passes_and_a_step_less_fails(sides, height, wind):
    parts = tower(sides, 0.5, 0.3, 0.2, height)
    before, remedy = remedy_of(design(*parts, wind=wind), "ballast")

    def laid(mass):
        weight = Part("bags", Weight(), Place(on="foot"), mass=mass)
        return design(*parts, weight, wind=wind)

    assert remedy.feasible
    assert passes(laid(remedy.value), before)
    assert not passes(laid(remedy.value - METRIC.mass), before)


@FEW
@given(st.sampled_from([0, 4, 6, 8]), st.floats(0.5, 1.5))
def test_the_wind_found_passes_and_a_step_more_fails(sides, height):
    piece = design(*tower(sides, 0.5, 0.3, 0.2, height), wind=20.0)
    before, remedy = remedy_of(piece, "wind")
    assert passes(with_wind(piece, remedy.value), before)
    assert not passes(with_wind(piece, remedy.value + METRIC.wind), before)


@FEW
@given(st.sampled_from([4, 6, 8]), st.floats(0.15, 0.3), st.floats(20.0, 30.0))
def test_the_height_found_passes_and_a_step_more_fails(sides, across, wind):
    def tall(height):
        return design(*post(sides, across, height, density=STEEL), wind=wind)

    before, remedy = remedy_of(tall(1.0), "height")
    assert passes(tall(remedy.value), before)
    assert not passes(tall(remedy.value + METRIC.height), before)
    assert remedy.found.structure.height == pytest.approx(remedy.value, abs=1.0e-6)


# --- by hand -----------------------------------------------------------------------------------


def test_ballast_of_a_square_post_is_what_statics_asks():
    # On hard ground resistance to tipping and to sliding both go with W + B where B lies in the
    # middle, so B = W (u - 1), u the greater utilization: statics.
    piece = design(*post(4, 0.3, 1.2, density=600.0), wind=25.0)
    before, remedy = remedy_of(piece, "ballast")
    worst = max(before.overturning.utilization, before.sliding.utilization)
    extra = before.structure.mass("light") * (worst - 1.0)
    assert remedy.value == pytest.approx(METRIC.mass * ceil(extra / METRIC.mass))


def test_wind_of_a_square_post_goes_with_the_root_of_its_utilization():
    # F = q C A and q = rho V2 / 2, so V = V0 / sqrt(u): ASCE/SEI 7-22 29.4 with 26.10.
    piece = design(*post(4, 0.3, 1.2, density=600.0), wind=25.0)
    before, remedy = remedy_of(piece, "wind")
    worst = max(before.overturning.utilization, before.sliding.utilization)
    expected = METRIC.wind * floor(25.0 / np.sqrt(worst) / METRIC.wind)
    assert remedy.value == pytest.approx(expected)


# --- monotone ----------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["base width", "ballast"])
def test_more_wind_never_takes_less(kind):
    def value(wind):
        piece = design(*tower(6, 0.35, 0.3, 0.2, 0.8, density=STEEL), wind=wind)
        return remedy_of(piece, kind)[1].value

    found = [value(wind) for wind in (26.0, 32.0, 36.0)]
    assert found == sorted(found)
    assert found[0] < found[-1]


def test_a_wider_foot_never_stands_less_wind():
    def wind(foot):
        return remedy_of(design(*tower(6, foot, 0.3, 0.2, 1.0)), "wind")[1].value

    assert wind(0.4) <= wind(0.5) <= wind(0.8)


@given(st.integers(-5, 60), st.integers(-10, 70))
@settings(max_examples=100, deadline=None)
def test_the_search_finds_where_it_turns_from_any_guess(turn, guess):
    asked = []

    def does(k):
        asked.append(k)
        return k >= turn

    found = least(does, 0, 50, guess)
    assert found == (max(turn, 0) if turn <= 50 else None)
    assert all(0 <= k <= 50 for k in asked)
    assert found in (None, 0) or {found, found - 1} <= set(asked)
    most = greatest(lambda k: k <= turn, 0, 50, guess)
    assert most == (min(turn, 50) if turn >= 0 else None)


# --- what is told ------------------------------------------------------------------------------


def test_the_design_that_was_given_stays_as_it_is(sizing):
    assert sizing.design is TOWER
    assert design(*tower(6, 0.4, 0.3, 0.2, 1.0)) == TOWER
    assert sizing.remedy("ballast").design != TOWER


def test_past_the_width_that_is_told_it_slides_first(sizing):
    def limits(foot):
        found = examine(design(*tower(6, foot, 0.3, 0.2, 1.0))).limits
        return found.tipping, found.sliding

    width = sizing.slides_first
    tips, slides = limits(width)
    assert slides < tips
    tips, slides = limits(width - METRIC.width)
    assert tips <= slides


def test_the_curve_has_nine_widths_and_weights_with_the_present_marked(sizing):
    for kind, now in (("base width", 0.4), ("ballast", 0.0)):
        points = [point for point in sizing.curve if point.kind == kind]
        assert len(points) == 9
        assert [point.value for point in points if point.present] == pytest.approx([now])
        assert [point.value for point in points] == sorted({point.value for point in points})
        tipping = [point.limits.tipping for point in points]
        assert tipping == sorted(tipping)
        assert points[-1].value >= (sizing.remedy(kind).value or 0.0)


def test_what_stands_needs_nothing_and_may_grow():
    sizing = size_design(design(*post(4, 0.5, 0.5, density=STEEL), wind=10.0))
    for kind in ("base width", "ballast", "anchors"):
        assert sizing.remedy(kind).feasible
        assert sizing.remedy(kind).reason is RemedyReason.NOT_NEEDED
    assert sizing.remedy("height").value > 0.5
    assert sizing.remedy("wind").value > 10.0


def test_sliding_that_no_width_ends_is_told_as_sliding():
    foot = Part("foot", Plate(Regular(6, 0.4), 0.005), density=100.0)  # light: width adds no weight
    body = Part("body", Shell(6, 0.3, 0.3, 1.0, 0.01), Place(on="foot"), density=300.0)
    remedy = remedy_of(design(foot, body, wind=40.0), "base width")[1]
    assert not remedy.feasible
    assert remedy.reason is RemedyReason.SLIDES
    assert remedy.governs == "sliding"
    assert remedy.value is None


def test_where_nothing_holds_no_remedy_is_feasible():
    # Steeper than friction holds, it slides without any wind.
    sizing = size_design(design(*post(4, 0.5, 0.5), wind=20.0, ground="wet lawn", slope=0.5))
    assert [r.kind for r in sizing.remedies if r.feasible and r.kind != "anchors"] == []


def test_every_kind_is_told_in_si_with_the_check_that_governs(sizing):
    assert [remedy.kind for remedy in sizing.remedies] == list(REMEDY_KINDS)
    units = {"base width": "m", "ballast": "kg", "height": "m", "wind": "m/s"}
    for remedy in sizing.remedies:
        assert remedy.unit == units.get(remedy.kind, "N")
        found = sizing.found if remedy.found is None else remedy.found
        assert remedy.governs in {check.name for check in found.checks}


def test_anchors_are_told_in_whole_steps_of_pull():
    piece = replace(design(*tower(6, 0.4, 0.3, 0.2, 1.0), ground="firm lawn"), units="imperial")
    before, remedy = remedy_of(piece, "anchors")
    needs = max(before.remedies.stakes.pull, before.remedies.stakes.sideways)
    assert 0.0 <= remedy.value - needs < IMPERIAL.pull
    assert remedy.value / IMPERIAL.pull == pytest.approx(round(remedy.value / IMPERIAL.pull))
    assert remedy.value / IMPERIAL.pull == pytest.approx(round(remedy.value / IMPERIAL.pull))


@pytest.mark.parametrize("kind", ["anchors", "guys"])
@pytest.mark.parametrize("ground", ["sand", "paving"])
def test_what_is_chosen_to_hold_it_does_by_the_whole_check(kind, ground):
    _, remedy = remedy_of(design(*tower(6, 0.5, 0.4, 0.25, 1.2), ground=ground), kind)
    assert remedy.feasible
    found = examine(remedy.design)
    assert found.needs_anchors
    assert all(check.passes for check in found.checks)


def test_a_plainer_anchor_does_not_hold_it():
    piece = design(*tower(6, 0.5, 0.4, 0.25, 1.2), ground="firm lawn")
    _, remedy = remedy_of(piece, "anchors")
    order = suited("firm lawn", True, PLAINEST)
    chosen = remedy.anchors.row
    plainer = order[: order.index(chosen.kind)]
    assert plainer
    for kind in plainer:
        less = examine(with_anchors(piece, replace(chosen, kind=kind)))
        assert not all(check.passes for check in less.checks), kind


def test_guys_stay_clear_of_a_wheel():
    wheel = Part(
        "wheel",
        Rotor(4, 0.4, 0.05, 0.15, 0.006, facing=0.0),
        Place(on="foot", at=(0.0, -0.3, 1.2)),
        density=500.0,
    )
    piece = design(*tower(6, 0.5, 0.4, 0.25, 1.3), wheel)
    _, remedy = remedy_of(piece, "guys")
    assert remedy.guys.row.height <= 1.2 + 0.1 - 0.4
