"""Worked examples with printed answers: tipping, sliding, posts in the ground, guys, ballast.

The tolerance is half a unit in the last printed digit, or what the printed inputs leave open.
"""

import numpy as np
import pytest

from yardfast.checks.anchoring import anchor_group
from yardfast.checks.anchoring.capacity import ballast, embedment, screw_anchors
from yardfast.checks.stability.overturning import push_that_tips
from yardfast.checks.stability.standing import Standing
from yardfast.design.model import Design, Part
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import GRAVITY, build_structure
from yardfast.loads.wind.site import Site
from yardfast.materials import grounds

INCH, FOOT, POUND = 0.0254, 0.3048, 0.45359237
LBF = POUND * GRAVITY
PSF, PCF = LBF / FOOT**2, LBF / FOOT**3
KIP_FT = 1000 * LBF * FOOT


def standing(*parts):
    site = Site(method="gust", wind=20.0, ground="paving")
    design = Design("printed example", "imperial", parts, tables={Site: site})
    return Standing(build_structure(design), grounds.find_ground("paving"), 0.0)


BLOCK = Part("block", Box(32 * INCH, 32 * INCH, 72 * INCH), mass=250 * POUND)


def test_block_at_rest_neither_tips_nor_slides():
    """Mississippi State Univ., Virtual Lab of Statics, horizontal surface, example 1: at rest.

    Recomputed: 250 lb and 0.3 rub 75.0 lb; 60 lb tip it from 66.7 in up.
    """
    block = standing(BLOCK)
    assert push_that_tips(block, "typical", 60 * INCH) > 60 * LBF
    assert push_that_tips(block, "typical", 66.65 * INCH) > 60 * LBF
    assert push_that_tips(block, "typical", 66.75 * INCH) < 60 * LBF
    lacking = ballast.sliding_ballast(np.array([60.0, 74.95, 75.05]), 250.0, 0.3, 1.0)
    assert (lacking > 0.0).tolist() == [False, False, True]


ZEPHYRHILLS = {
    "p. 40": (24.7 * 36.0, 3.4, 3.0, 4.0, 3.54, 3.72),
    "p. 30": (24.7 * 3.2, 3.2, 1.5, 2.67, 1.53, 1.88),
}


@pytest.mark.parametrize("page", ZEPHYRHILLS, ids=lambda p: f"Zephyrhills 178567 {p}")
def test_round_footing_with_the_pressure_of_its_own_depth(page):
    """The same, S1 at a third of the depth FOUND (recomputed apart): 3.72 and 1.88 ft."""
    P, h, b, _, sheet, found = ZEPHYRHILLS[page]
    d = embedment.depth_free(P * LBF, h * FOOT, 300 * PCF, b * FOOT) / FOOT
    assert d == pytest.approx(found, abs=0.005)
    assert d > sheet


def test_shape_of_plates_in_dense_sand_grows_with_depth():
    """The same table: s 1.48 and 2.44 at H/B 1 and 3 are 1 + 0.48 H/B."""
    assert np.array([1.48, 2.44]) == pytest.approx(1 + 0.48 * np.array([1, 3]))


def test_eight_anchors_in_three_rows():
    """By hand: rows of 3, 2, 3 at 2, 12, 22 in, sum d2 1,752 in2; 3,000 in lbf."""
    d = np.repeat([2.0, 12.0, 22.0], [3, 2, 3])
    found = anchor_group.anchor_tensions(3000.0, d)
    assert found == pytest.approx(np.repeat([3.42, 20.55, 37.67], [3, 2, 3]), abs=0.005)
    assert anchor_group.moment_held(37.67, d) == pytest.approx(3000, abs=0.5)


@pytest.mark.parametrize(("torque", "pounds"), [(300, 3000), (475, 4750)])
def test_helical_anchor_holds_ten_times_its_torque(torque, pounds):
    """Working rule of installers: ultimate (lb) = 10 x torque (ft lb), 1 1/2 in square shaft."""
    assert screw_anchors.torque_strength(torque * LBF * FOOT) / LBF == pytest.approx(pounds)


def test_scaffold_stands_where_friction_takes_more_than_is_asked():
    """Gerüstbau 05/2023 p. 14: 3.10 kN rub, 2.50 asked."""
    assert ballast.sliding_ballast(2.50, 11.61, 0.4 / 1.5, 1.0) == 0.0


def test_block_rubs_as_much_as_its_friction():
    """By hand: 0.3 x 100 lb = 30 lb, a hair more slides."""
    stays, slides = ballast.sliding_ballast(np.array([29.99, 30.01]), 100.0, 0.3, 1.0)
    assert stays == 0.0
    assert slides > 0.0
