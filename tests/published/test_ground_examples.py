"""Worked examples with printed answers: tipping, sliding, posts in the ground, guys, ballast.

The tolerance is half a unit in the last printed digit, or what the printed inputs leave open.
"""

from math import cos, radians, sin

import numpy as np
import pytest

from yardfast.checks.anchoring import (
    anchor_group,
    ballast,
    buried_weight,
    embedment,
    guys,
    screw_anchors,
)
from yardfast.checks.overturning import push_that_tips
from yardfast.checks.standing import Standing
from yardfast.design.model import Design, Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.weight import Weight
from yardfast.design.structure import GRAVITY, build_structure
from yardfast.loads.site import Site
from yardfast.materials import grounds

INCH, FOOT, POUND = 0.0254, 0.3048, 0.45359237
LBF = POUND * GRAVITY
PSF, PCF = LBF / FOOT**2, LBF / FOOT**3
KIP_FT = 1000 * LBF * FOOT


def standing(*parts):
    site = Site(method="gust", wind=20.0, ground="paving")
    design = Design("printed example", "imperial", parts, tables={Site: site})
    return Standing(build_structure(design), grounds.find("paving"), 0.0)


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


@pytest.mark.parametrize(("degrees", "pounds"), [(30, 41.9), (0, 30.0), (-30, 29.5)])
def test_inclined_push_that_slides(degrees, pounds):
    """Mississippi State Univ., Virtual Lab of Statics, example 5: 100 lb, 0.3, push downward."""
    t = radians(degrees)
    push = pounds + np.array([-0.05, 0.05])
    stays, slides = ballast.sliding_ballast(push * cos(t), 100 + push * sin(t), 0.3, 1.0)
    assert stays == 0.0
    assert slides > 0.0


def test_wall_on_a_footing_stands_4_2_times():
    """NCARB ARE 4.0 Structural, item 28: 4200 and 1008 kip-ft, factor 4.2."""
    pcf = 150 * POUND / FOOT**3
    wall = standing(
        Part("footing", Box(20 * FOOT, 6 * FOOT, 2 * FOOT), density=pcf),
        Part("wall", Box(16 * FOOT, 1.5 * FOOT, 40 * FOOT), Place(on="footing"), density=pcf),
        Part("load", Weight(), Place(on="wall"), mass=240_000 * POUND),
    )
    along = int(np.argmax(wall.normals[:, 0]))
    hold = wall.hold("typical", wall.reach)[along]
    assert hold / KIP_FT == pytest.approx(4200, abs=0.5)
    push = push_that_tips(wall, "typical", 42 * FOOT)
    assert push == pytest.approx(wall.hold("typical", wall.reach).min() / (42 * FOOT))
    assert hold / (24 * KIP_FT * 42) == pytest.approx(4.2, abs=0.05)


ZEPHYRHILLS = {
    "p. 40": (24.7 * 36.0, 3.4, 3.0, 4.0, 3.54, 3.72),
    "p. 30": (24.7 * 3.2, 3.2, 1.5, 2.67, 1.53, 1.88),
}


@pytest.mark.parametrize("page", ZEPHYRHILLS, ids=lambda p: f"Zephyrhills 178567 {p}")
def test_round_footing_as_on_the_sheet(page):
    """Sealed sign calculations, Florida code 1807.3.2.1: S1 at a third of the PROVIDED depth.

    24.7 psf is printed with one decimal and the load goes on with two digits of a kip, which is
    what the depth is held to.
    """
    P, h, b, provided, sheet, _ = ZEPHYRHILLS[page]
    loads = np.array([P * 24.65 / 24.7, P * 24.75 / 24.7, round(P / 1000, 2) * 1000])
    S1 = 300 * provided / 3
    d = embedment.depth_under_pressure(loads * LBF, h * FOOT, S1 * PSF, b * FOOT) / FOOT
    assert d.min() - 0.005 < sheet < d.max() + 0.005
    assert np.ptp(d) < 0.02


@pytest.mark.parametrize("page", ZEPHYRHILLS, ids=lambda p: f"Zephyrhills 178567 {p}")
def test_round_footing_with_the_pressure_of_its_own_depth(page):
    """The same, S1 at a third of the depth FOUND (recomputed apart): 3.72 and 1.88 ft."""
    P, h, b, _, sheet, found = ZEPHYRHILLS[page]
    d = embedment.depth_free(P * LBF, h * FOOT, 300 * PCF, b * FOOT) / FOOT
    assert d == pytest.approx(found, abs=0.005)
    assert d > sheet


@pytest.mark.parametrize(
    ("diameter", "depth", "pounds"), [(3, 4, 4241), (1.5, 2.67, 708)], ids=["p. 40", "p. 30"]
)
def test_weight_of_the_footings(diameter, depth, pounds):
    """Zephyrhills 178567: 150 pcf there; 145 is what may hold something down (GO 95 48.5)."""
    volume = np.pi * diameter**2 / 4 * depth * FOOT**3
    weight = buried_weight.concrete_weight(volume) * 150 / 145
    assert weight / LBF == pytest.approx(pounds, abs=0.5)


def test_tank_kept_down_by_concrete():
    """FEMA P-259 (3rd ed. 2012) Appendix C, example C7: 2,048 lb of buoyancy, 23.4 ft3."""
    volume = 250 * 0.134 * FOOT**3
    pull = buried_weight.flotation(volume, 670 * LBF, 62.4 * PCF)
    # printed as 2,048 from 2,047.53; the unrounded product is 2,047.52
    assert pull / LBF == pytest.approx(2048, abs=0.5)
    concrete = buried_weight.sinking_volume(pull, 150 * PCF, 62.4 * PCF)
    assert concrete / FOOT**3 == pytest.approx(23.4, abs=0.05)


def test_balloon_on_three_guys():
    """Baker and Haynes, Engineering Statics, ch. 3, Balloon: 464, 402 and 309 lb."""
    top = np.array([0.0, 30.0, 0.0])
    pegs = np.array([(-20, 0, 0), (30, 0, 20), (0, 0, -20)])
    found = guys.three_guys(pegs - top, [0.0, 900.0, 0.0])
    assert found == pytest.approx([464, 402, 309], abs=0.5)


@pytest.mark.parametrize(("spacing", "force"), [(2.50, 10.0), (1.50, 16.67)])
def test_scaffold_leg_pulled_up(spacing, force):
    """Gerüstbau 05/2023 p. 14: 25 kNm over the spacing of the legs, 10.0 and 16.67 kN."""
    digit = 0.05 if force == 10.0 else 0.005
    assert anchor_group.tensions(25.0, [spacing, 0.0])[0] == pytest.approx(force, abs=digit)


def test_scaffold_ballast_and_sliding():
    """The same: 5.50 kN net, over 0.9 6.11 kN at the outer leg; 3.10 kN rubs, 2.50 asked.

    The permanent 4.50 kN stands over the lifted leg; allowable H = 0.4 x 11.61/1.5.
    """
    assert ballast.least_ballast(25.0, 4.50 * 2.50, 2.50, 1.0) == pytest.approx(5.50, abs=0.005)
    assert ballast.least_ballast(25.0, 4.50 * 2.50, 2.50, 0.9) == pytest.approx(6.11, abs=0.005)
    mu = 0.4 / 1.5
    none, some = ballast.sliding_ballast(np.array([3.095, 3.105]), 11.61, mu, 1.0)
    assert none == 0.0
    assert some > 0.0
    assert ballast.sliding_ballast(2.50, 11.61, mu, 1.0) == 0.0


@pytest.mark.parametrize(
    ("depth_mm", "shape", "Nq", "newton"), [(100, 1.48, 3.70, 63), (300, 2.44, 14.47, 738)]
)
def test_plate_anchor_in_dense_sand(depth_mm, shape, Nq, newton):
    """Niroumand 2017, Appendix G, Meyerhof and Adams 1968: plate of 100 mm, Ku tan(phi) 0.92.

    0.92 and the shape are printed with two and three digits, which is what Nq is held to. The unit
    weight is not printed: 17.0 kN/m3 makes the deeper force from its Nq and is tried on both.
    """
    H, B = depth_mm / 1000, 0.1
    low = screw_anchors.sand_factor(H, B, B, 0.915, shape - 0.005)
    high = screw_anchors.sand_factor(H, B, B, 0.925, shape + 0.005)
    assert low - 0.005 < Nq < high + 0.005
    assert low * 17000 * H * B * B - 0.5 < newton < high * 17000 * H * B * B + 0.5
    if depth_mm == 300:
        exact = screw_anchors.sand_factor(H, B, B, 0.92, shape)
        assert exact == pytest.approx(14.47, abs=0.005)


def test_shape_of_plates_in_dense_sand_grows_with_depth():
    """The same table: s 1.48 and 2.44 at H/B 1 and 3 are 1 + 0.48 H/B."""
    assert np.array([1.48, 2.44]) == pytest.approx(1 + 0.48 * np.array([1, 3]))


def test_eight_anchors_in_three_rows():
    """By hand: rows of 3, 2, 3 at 2, 12, 22 in, sum d2 1,752 in2; 3,000 in lbf."""
    d = np.repeat([2.0, 12.0, 22.0], [3, 2, 3])
    found = anchor_group.tensions(3000.0, d)
    assert found == pytest.approx(np.repeat([3.42, 20.55, 37.67], [3, 2, 3]), abs=0.005)
    assert anchor_group.moment_held(37.67, d) == pytest.approx(3000, abs=0.5)


@pytest.mark.parametrize(("torque", "pounds"), [(300, 3000), (475, 4750)])
def test_helical_anchor_holds_ten_times_its_torque(torque, pounds):
    """Working rule of installers: ultimate (lb) = 10 x torque (ft lb), 1 1/2 in square shaft."""
    assert screw_anchors.torque_strength(torque * LBF * FOOT) / LBF == pytest.approx(pounds)
