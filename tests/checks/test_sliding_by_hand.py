"""Sliding on a slope, by hand: which of the two factors on dead load governs, and by how much."""

from math import cos, radians, sin

import numpy as np
import pytest

from yardfast.checks.examination import examine
from yardfast.checks.stability.sliding import check_sliding
from yardfast.design.model import Design, Part
from yardfast.design.shapes.boxes import Box
from yardfast.loads.actions import Actions
from yardfast.loads.wind.site import Site

BLOCK = Part("block", Box(1.0, 1.0, 0.4), mass=500 / 9.80665)
SLOPE = radians(20)


def sliding(held):
    site = Site(method="gust", wind=0.001, ground="gravel", slope=SLOPE, basis="strength")
    found = examine(Design("on a slope", "metric", (BLOCK,), tables={Site: site}))
    return check_sliding(found.standing, found.actions, found.factors, held)


@pytest.mark.parametrize(
    ("held", "dead"), [(0.0, 0.9), (500.0, 1.2)], ids=["untied, alike", "held, the heavier"]
)
def test_dead_load_that_hurts_governs_where_something_holds_besides(held, dead):
    """W 500 N, mu 0.40, 20 degrees, no wind: d W sin over 0.4 d W cos + held, d 0.9 or 1.2.

    ASCE/SEI 7-22 2.3.1. Untied both factors give tan 20/0.4 = 0.910; held by 500 N, 1.2 asks
    205.2 N of 725.5 N (0.283), 0.9 only 153.9 N of 669.1 N (0.230).
    """
    check = sliding(held)
    demand = dead * 500 * sin(SLOPE)
    grip = 0.4 * dead * 500 * cos(SLOPE) + held
    assert check.utilization == pytest.approx(demand / grip, rel=1e-6)
    if held:
        assert check.demand == pytest.approx(205.2, abs=0.05)
        assert check.capacity == pytest.approx(725.5, abs=0.05)
        assert check.utilization == pytest.approx(0.283, abs=0.0005)


def test_dead_load_that_helps_governs_where_suction_lifts():
    """150 N level and 200 N up, on the flat: 150 of 0.4 (0.9 x 500 - 200) = 100 N, 1.5.

    By 1.2 it would be 150 of 0.4 (600 - 200) = 160 N, 0.94, and stand: ASCE/SEI 7-22 2.3.1.
    """
    site = Site(method="gust", wind=0.001, ground="gravel", basis="strength")
    found = examine(Design("level", "metric", (BLOCK,), tables={Site: site}))
    none, up = np.zeros((1, 1)), np.full((1, 1), 200.0)
    force = np.array([[[150.0, 0.0]]])
    blown = Actions(np.array([270.0]), force, 0.2 * force, none, up, np.zeros((1, 1, 2)), ("A",))
    check = check_sliding(found.standing, blown, found.factors)
    assert (check.demand, check.capacity) == pytest.approx((150.0, 100.0), rel=1e-4)
    assert (check.dead, check.passes) == (0.9, False)


def blown(force, up):
    site = Site(method="gust", wind=0.001, ground="gravel", basis="strength")
    found = examine(Design("level", "metric", (BLOCK,), tables={Site: site}))
    none, level = np.zeros((1, 1)), np.array([[[force, 0.0]]])
    actions = Actions(
        np.array([270.0]), level, 0.2 * level, none, none + up, np.zeros((1, 1, 2)), ("A",)
    )
    return found, actions


@pytest.mark.parametrize(
    ("force", "up", "held", "bare"), [(150.0, 700.0, 300.0, 2.0), (0.5, 0.0, 0.0, 400.0)]
)
def test_the_bare_factor_is_what_holds_over_what_pushes(force, up, held, bare):
    """W 500 N, mu 0.40. Lifted by 700 N nothing rubs, and 300 N of anchors hold 150 N twice; not
    lifted 0.4 x 500 = 200 N hold a breath of 0.5 N four hundred times."""
    found, actions = blown(force, up)
    check = check_sliding(found.standing, actions, found.factors, held)
    assert check.bare == pytest.approx(bare, rel=1e-4)
