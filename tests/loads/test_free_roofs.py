"""Roofs and leaning boards that wind passes beneath: ASCE/SEI 7-16 Fig. 27.3-4 to 27.3-7.

Printed values as two public adoptions have them: CIRSOC 102-2025 Fig. 2.4-4 to 2.4-7 and the
Bangladesh National Building Code 2020 Fig. 6.2.18. Forces on a board of 1 m2 are worked by hand.
"""

from math import cos, radians, sin
from pathlib import Path

import numpy as np
import pytest
import shapely
from designs import design

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.actions import body_actions
from yardfast.loads.asce7.free_roofs import along_coefficients, net_coefficients
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.roofs.roof_wind import level_board
from yardfast.loads.wind.site import Site

EXAMPLES = Path(__file__).parents[2] / "examples"

SHORE = 1.03
"""Kz of exposure D up to 4.6 m (ASCE/SEI 7-16 Table 26.10-1), over 1.0 of open country at 10 m."""

GROUND = Part("sheet", Plate(Rectangle(3.0, 3.0), 1e-6), density=500.0)


@pytest.mark.parametrize(
    ("roof", "wind", "slope", "obstructed", "printed"),
    [
        ("monoslope", "high edge upwind", 30, 0, ((-1.8, -1.8), (-2.5, -0.5))),
        ("monoslope", "low edge upwind", 30, 0, ((2.1, 2.1), (2.6, 1.0))),
        ("monoslope", "high edge upwind", 15, 1, ((-1.1, -1.5), (-2.1, -0.6))),
        ("monoslope", "low edge upwind", 45, 1, ((0.8, -0.9), (2.1, 0.4))),
        ("monoslope", "either edge upwind", 0, 0, ((1.2, 0.3), (-1.1, -0.1))),
        ("pitched", "across the ridge", 22.5, 0, ((1.1, 0.1), (-0.1, -0.8))),
        ("pitched", "across the ridge", 7.5, 1, ((-1.6, -1.0), (-0.9, -1.7))),
        ("troughed", "across the ridge", 30, 0, ((-1.3, -0.3), (-0.1, 0.9))),
    ],
)
def test_rows_are_as_printed(roof, wind, slope, obstructed, printed):
    assert net_coefficients(roof, wind, slope, obstructed) == pytest.approx(np.array(printed))


def test_half_way_between_rows_and_flows_is_half_way():
    """26.25 degrees in clear flow: half of 22.5 and 30; 0.5 obstructed: half of both columns."""
    found = net_coefficients("monoslope", "high edge upwind", 26.25, 0.0)
    assert found[0] == pytest.approx([-1.65, -1.7])
    half = net_coefficients("monoslope", "high edge upwind", 30.0, 0.5)
    assert half[1] == pytest.approx([-2.4, -0.8])


def test_strips_along_the_ridge_are_as_printed():
    """To h -0.8 and 0.8; to 2 h half of that and half of -0.6 and 0.5; obstructed -1.2 and 0.5."""
    assert along_coefficients(1.0, 2.0, 0.0) == pytest.approx([-0.8, 0.8])
    assert along_coefficients(2.0, 1.0, 0.0) == pytest.approx([-0.7, 0.65])
    assert along_coefficients(1.0, 1.0, 1.0) == pytest.approx([-1.2, 0.5])


def roof(shape, **place):
    return Part("roof", shape, Place(**place), density=500.0)


def wrenches(*parts):
    """Actions of 300 Pa on the last part by itself: azimuths, wrench (D, C, 6), names."""
    structure = build_structure(design(GROUND, *parts))
    gust = method_of(Site("gust", 30.0, "paving"), structure.height)
    exposed = expose(structure, bare(structure, [None] * (len(parts) + 1), gust), False)
    ones = np.ones(len(exposed.limit))
    each = body_actions(
        exposed,
        np.array(300.0),
        ratio=ones,
        directionality=ones,
        gust=np.ones(len(exposed.azimuths)),
    )
    return exposed.azimuths, each.wrench[-1], each.names


def at(found, azimuth, case):
    azimuths, wrench, names = found
    d = int(np.argmin(np.abs(azimuths - azimuth)))
    return wrench[d, names.index(f"A, roof {case}")]


def leaning(slope):
    """A thin board 1 m x 1 m at ``slope`` degrees, its low edge 1.8 m up, the high one at -y."""
    tilt = radians(slope - 90.0)
    half = 0.5 * cos(radians(slope))
    return roof(Panel(1.0, 1.0, 1e-5), at=(0.0, half, 1.8), tilt=tilt)


HAND = [
    # azimuth of the high edge is 180 (from -y); up, downwind, height of the downwind force's line
    (180.0, "A", 467.65, 270.0, 2.050, 553.5),
    (180.0, "B", 389.7, 225.0, 2.133, 536.2),
    (0.0, "A", -545.6, 315.0, 2.050, 645.7),
    (0.0, "B", -467.7, 270.0, 1.994, None),
]


@pytest.mark.parametrize(("azimuth", "case", "up", "downwind", "z", "moment"), HAND)
def test_leaning_board_by_hand(azimuth, case, up, downwind, z, moment):
    """Monoslope 30 degrees, 1 x 1 m, low edge 1.8 m up, 300 Pa, G 1, clear flow."""
    fx, fy, fz, mx, my, mz = at(wrenches(leaning(30.0)), azimuth, case)
    sense = 1.0 if azimuth == 180.0 else -1.0
    assert fz == pytest.approx(up, abs=0.05)
    assert sense * fy == pytest.approx(downwind, abs=0.05)
    assert (fx, my, mz) == pytest.approx((0.0, 0.0, 0.0), abs=0.05)
    # the line of action: Mx = y Fz - z Fy, along the slope z = 2.05 - (y) tan 30
    slope = np.tan(radians(30.0))
    y = (mx + 2.05 * fy) / (fz + slope * fy)
    assert 2.05 - slope * y == pytest.approx(z, abs=5e-4)
    if moment is not None:
        assert abs(mx) == pytest.approx(moment, abs=0.1)


@pytest.mark.slow
@pytest.mark.parametrize("azimuth", [0.0, 90.0, 180.0])
def test_no_jump_as_a_board_leans_more(azimuth):
    """From level to upright by half a degree: a step moves no force by more than 0.19 q A.

    Between 0 and 7.5 degrees the figure itself goes from +1.2 to -0.6: 0.24 a degree.
    """
    found = []
    for slope in np.arange(0.25, 90.0, 0.5):
        each = wrenches(leaning(slope))
        found.append([at(each, azimuth, case)[:3] / 300.0 for case in ("A", "B")])
    steps = np.abs(np.diff(np.array(found), axis=0)).max(axis=(1, 2))
    assert steps.max() < 0.19


def test_no_jump_in_direction():
    """By at most 5 degrees round boards, gables and slabs: under 18 % of the greatest a step."""
    for part in (leaning(30.0), leaning(4.0), roof(Gable(1.0, 0.8, 0.3, 0.02), at=(0, 0, 1.0))):
        _, wrench, _ = wrenches(part)
        steps = np.abs(np.diff(wrench[:, :, :3], axis=0)).max(axis=(1, 2))
        assert steps.max() < 0.18 * np.abs(wrench[:, :, :3]).max()


def test_no_jump_as_the_space_beneath_fills():
    """A box beneath grows by 1 % of the width: the lift moves by at most 0.06 q A a step."""
    found = []
    for width in np.arange(0.40, 0.80, 0.01):
        box = Part("box", Box(width, 1.0, 1.5), Place(at=(0, 0, 0)), density=500.0)
        found.append(at(wrenches(box, leaning(15.0)), 180.0, "B")[2] / 300.0)
    assert np.abs(np.diff(found)).max() < 0.06


def test_nearly_level_roofs_are_tried_both_ways():
    """At 2 degrees all directions know a case that lifts and one that presses."""
    for slope in (0.0, 2.0, 6.0):
        _, wrench, _ = wrenches(leaning(slope))
        assert (wrench[..., 2].max(axis=1) > 0.0).all()
        assert (wrench[..., 2].min(axis=1) < 0.0).all()


def test_level_roof_takes_the_level_row_on_its_halves():
    """1.2 on the windward half, 0.3 on the other: 0.75 q A down, its line 0.15 m upwind."""
    part = roof(Plate(Rectangle(1.0, 1.0), 1e-5), at=(0.0, 0.0, 1.0))
    _, _, fz, mx, *_ = at(wrenches(part), 0.0, "A")
    assert fz / 300.0 == pytest.approx(-0.75)
    assert mx / fz == pytest.approx(
        0.25 * (1.2 - 0.3) / 1.5, rel=1e-3
    )  # y of the line, toward +y: upwind
    lifted = at(wrenches(part), 0.0, "lifted")
    assert lifted[2] / 300.0 == pytest.approx(0.8)


@pytest.mark.parametrize("azimuth", [0.0, 90.0, 180.0, 270.0])
def test_a_level_slab_takes_the_level_row_as_a_plate_does(azimuth):
    """A rail or slab in the air is a level roof of the same plan, whichever way the wind blows.

    Clear flow: 0.75 on it in case A (Fig. 27.3-4, 1.2 and 0.3 on the halves), 0.6 off it in B.
    """
    rail = roof(Box(0.9, 0.045, 0.09), at=(0.0, 0.0, 0.5))
    found = wrenches(rail)
    assert at(found, azimuth, "A")[2] / 300.0 == pytest.approx(-0.75 * 0.9 * 0.045)
    assert at(found, azimuth, "B")[2] / 300.0 == pytest.approx(0.6 * 0.9 * 0.045)


@pytest.mark.parametrize(("azimuth", "coefficient"), [(0.0, 0.8), (90.0, 0.85)])
def test_the_rail_of_the_signpost_is_lifted_by_hand(azimuth, coefficient):
    """910 x 45 mm, 105 mm up between two legs: a level roof that wind passes beneath.

    Onto the board the space beneath is clear: 0.8 (Fig. 27.3-7, its width under h). End on the
    legs fill it: the mean of 0.5 and 1.2 and of 1.1 and 0.6 (Fig. 27.3-4), which is more than
    (0.15 x 1.2 + 0.15 x 0.9 + 0.61 x 0.6) / 0.91 = 0.75 along it. Nothing else there is lifted.
    """
    piece = read(EXAMPLES / "signpost.toml")
    wind = examine(piece).wind
    q = 0.5 * 1.226 * (75.0 / 3.6) ** 2 * SHORE
    d = int(np.argmin(np.abs(wind.azimuths - azimuth)))
    assert wind.uplift[d] == pytest.approx(coefficient * 0.91 * 0.045 * q, rel=2e-3)


def test_pitched_roof_takes_its_figure_normal_to_each_slope():
    """30 degrees, Case A 1.3 and 0.3 across the ridge: down 1.6 and downwind 1.0 times A sin 30."""
    rise = 0.5 * np.tan(radians(30.0))
    part = roof(Gable(1.0, 1.0, rise, 1e-4), at=(0.0, 0.0, 1.5))
    slope = 0.5 / cos(radians(30.0))
    _, fy, fz, *_ = at(wrenches(part), 180.0, "A")
    assert fz / 300.0 == pytest.approx(-1.6 * slope * cos(radians(30.0)), rel=1e-6)
    assert fy / 300.0 == pytest.approx(1.0 * slope * sin(radians(30.0)), rel=1e-6)


def test_a_board_against_a_house_is_a_closed_roof_however_it_is_placed():
    """A lean-to on a hollow box is lifted as its top, written `on` it or placed there."""
    house = Part("house", Box(0.8, 0.8, 1.0, 0.02), density=500.0)
    tilt = radians(75.0)
    on = roof(Panel(0.8, 0.8, 0.01), on="house", tilt=tilt)
    there = roof(Panel(0.8, 0.8, 0.01), at=(0.0, 0.0, 1.0), tilt=tilt)
    for part in (on, there):
        names = wrenches(house, part)[2]
        assert names == (
            "A",
            "B left",
            "B right",
            *(f"{c}, suction" for c in ("A", "B left", "B right")),
        )


def test_pressing_can_govern_what_stands_on_posts():
    """The board of the hand case over a foot: pressing from the low edge turns it over most."""
    foot = Part("foot", Plate(Rectangle(1.2, 1.2), 0.05), density=2400.0)
    post = Part("post", Box(0.09, 0.09, 2.0), Place(on="foot"), density=500.0)
    found = examine(design(foot, post, leaning(30.0)))
    assert "roof" in found.overturning.case


def test_a_gust_at_the_limit_just_tips_what_wind_presses_into_soft_ground():
    """The limit is the inverse of the check: at it the bare factor of safety is 1."""
    foot = Part("foot", Plate(Rectangle(0.8, 0.8), 0.05), density=2400.0)
    post = Part("post", Box(0.09, 0.09, 2.0), Place(on="foot"), density=500.0)
    parts = (foot, post, leaning(30.0))
    limit = examine(design(*parts, ground="wet lawn")).limits.tipping
    at_it = examine(design(*parts, ground="wet lawn", wind=limit, safety=1.0))
    assert at_it.overturning.bare == pytest.approx(1.0, rel=1e-6)


def test_between_level_and_the_first_printed_slope_half_of_each_counts():
    """3.75 degrees, half way from level to 7.5: half of the level row, half of the row at 7.5.

    Wind square to the low edge, clear: level A 1.2 and 0.3; "low edge upwind" 7.5 A 0.6 and 1.2
    pressing (Fig. 27.3-4, typed here again), each half of the board.
    """
    printed = net_coefficients("monoslope", "low edge upwind", 7.5, 0.0)[0]
    slope = radians(3.75)
    found = at(wrenches(leaning(3.75)), 0.0, "A")[2] / 300.0
    level, leans = 0.5 * (1.2 + 0.3), 0.5 * float(printed.sum())
    assert found == pytest.approx(-0.5 * (level + leans) * cos(slope), rel=1e-6)


def test_what_is_level_is_a_board_that_is_pushed_straight_up_or_down():
    board = level_board(shapely.box(0.0, 0.0, 2.0, 1.0), 1.5)
    assert board.up.tolist() == [0.0, 0.0, 1.0]
    assert board.place(np.array([[1.0, 0.5]])).tolist() == [[1.0, 0.5, 1.5]]
    assert board.slope == 0.0
