"""Loose parts under people and named loads: statics of one block on its seat, by hand."""

import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.loads.given import GivenLoad
from yardfast.loads.wind.site import Site
from yardfast.units.frozen import replace

G = 9.80665
PEDESTAL = Part("pedestal", Box(0.6, 0.6, 0.5), density=2000.0)
FIGURE = Part("figure", Box(0.2, 0.2, 0.6), Place(on="pedestal"), density=500.0, loose=True)
WEIGHT = 500.0 * 0.2 * 0.2 * 0.6 * G


def found_with(people=None, loads=(), figure=FIGURE):
    drawn = design(PEDESTAL, figure)
    site = replace(drawn.tables[Site], people=people)
    return examine(replace(drawn, tables={**drawn.tables, Site: site, GivenLoad: tuple(loads)}))


def named(found, name):
    return next(check for check in found.checks if check.name == name)


def test_children_push_a_light_figure_off_a_heavy_pedestal():
    """16 CFR 1261.5: 76 N at its top, 1.1 m up, 0.6 m over its seat; W 0.1 / 1.5 holds."""
    found = found_with("children")
    tips, slides = named(found, "loose: figure"), named(found, "loose sliding: figure")
    assert tips.load == "push"
    assert tips.demand == pytest.approx(76.0 * 0.6)
    assert tips.capacity == pytest.approx(WEIGHT * 0.1 / 1.5)
    assert slides.load == "push"
    assert slides.demand == pytest.approx(76.0)
    assert slides.capacity == pytest.approx(0.40 * WEIGHT / 1.5, rel=1e-6)
    assert not tips.passes
    assert not slides.passes
    assert named(found, "push").passes  # the pedestal with all that is on it


def test_the_push_that_tips_it_is_the_least_of_all_that_stands_loose():
    found = found_with()
    assert found.limits.push == pytest.approx(WEIGHT * 0.1 / 0.6, rel=1e-6)
    assert found.limits.push_height == pytest.approx(1.1)
    fastened = found_with(figure=replace(FIGURE, loose=False))
    assert fastened.limits.push > 20.0 * found.limits.push


def test_a_child_that_climbs_on_its_edge_does_not_tip_what_lies_over_its_seat():
    """264.8 N on the corner of a figure that is no wider than its seat presses it down."""
    climbed = found_with("children", figure=replace(FIGURE, density=60000.0))
    assert named(climbed, "loose: figure").utilization < 1.0


@pytest.mark.parametrize("out", [0.15, 0.25])
def test_a_load_that_hangs_off_its_side(out):
    """100 N down, beyond the edge of the seat at 0.1 m."""
    load = GivenLoad("basket", 100.0, (out, 0.0, 1.1), (0.0, 0.0, -1.0), "figure")
    check = named(found_with(loads=[load]), "loose: figure")
    wind = named(found_with(), "loose: figure")
    alone = 100.0 * (out - 0.1)
    # together by D + 0.75 L + 0.75 W (ASCE/SEI 7 2.4.1), weight over the factor of safety as alone
    both = 0.75 * alone + 0.75 * wind.demand
    assert check.load == "basket"
    assert check.demand == pytest.approx(max(alone, both), rel=1e-6)
    assert check.capacity == pytest.approx(WEIGHT * 0.1 / 1.5)


def test_wind_still_counts_where_it_asks_more():
    load = GivenLoad("leaf", 0.01, (0.0, 0.0, 1.1), (0.0, 0.0, -1.0), "figure")
    with_load, without = (
        named(each, "loose: figure") for each in (found_with(loads=[load]), found_with())
    )
    assert with_load.load == ""
    assert with_load == without


def test_what_acts_on_another_part_does_not_ask_the_loose_one():
    load = GivenLoad("pot", 400.0, (0.25, 0.25, 0.5), (0.0, 0.0, -1.0), "pedestal")
    assert named(found_with(loads=[load]), "loose: figure").load == ""
