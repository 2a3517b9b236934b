"""Suction on closed tops: ASCE/SEI 7-16 Fig. 27.3-1 in strips along the wind.

Coefficients are those that a public adoption prints (Bangladesh National Building Code 2020 Fig.
6.2.6); the means and moments are sums over the strips, worked by hand.
"""

from math import radians

import numpy as np
import pytest
import shapely
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.gables import Gable
from yardfast.design.structure import build_structure
from yardfast.loads.asce7.closed_tops import (
    mean_strip_suction,
    roof_suction,
    strip_suction,
    suction_across_ridge,
)
from yardfast.loads.asce7.tops import ASCE7_TOPS
from yardfast.loads.roofs.uplift import closed_top

FRONT = np.array([[0.0, 1.0]])


@pytest.mark.parametrize(
    ("h_over_L", "printed"),
    [(0.2, (0.9, 0.9, 0.5, 0.3)), (0.5, (0.9, 0.9, 0.5, 0.3)), (1.0, (1.3, 0.7, 0.7, 0.7))],
)
def test_strips_are_as_printed(h_over_L, printed):
    assert strip_suction(h_over_L) == pytest.approx(printed)


@pytest.mark.parametrize(
    ("slope", "h_over_L", "printed"),
    [
        (10, 0.25, (0.7, 0.3)),
        (10, 1.0, (1.3, 0.7)),
        (20, 0.5, (0.4, 0.6)),
        (30, 1.0, (0.3, 0.6)),
        (45, 0.5, (0.0, 0.6)),
    ],
)
def test_slopes_are_as_printed(slope, h_over_L, printed):
    assert suction_across_ridge(slope, h_over_L) == pytest.approx(printed)


HAND = [
    (0.762, 1.2192, 0.7844, 0.8869),
    (0.2, 1.2, 0.4333, 0.5333),
    (0.5, 1.0, 0.70, 0.80),
    (0.75, 1.0, 0.8625, 0.9703),
    (1.0, 1.0, 1.00, 1.15),
    (1.0, 0.5, 1.30, 1.30),
]


@pytest.mark.parametrize(("h", "L", "mean", "by_moment"), HAND)
def test_level_top_has_the_mean_and_the_moment_of_its_strips(h, L, mean, by_moment):
    """Mean coefficient, and the even one of equal moment about the lee edge."""
    box = Part("box", Box(0.8, L, h, 0.02), density=500.0)
    body = build_structure(design(box)).bodies[0]
    top = shapely.box(-0.4, -L / 2, 0.4, L / 2)
    area, moment = closed_top(body, top, top, FRONT, ASCE7_TOPS)
    assert area[0] / (0.8 * L) == pytest.approx(mean, abs=5e-5)
    about_lee = area[0] * L / 2 - moment[0, 1]
    assert about_lee / (0.8 * L * L / 2) == pytest.approx(by_moment, abs=5e-5)
    assert float(mean_strip_suction(0.0, L, h, L)) == pytest.approx(mean, abs=5e-5)


def test_a_top_part_of_which_is_covered_keeps_its_strips():
    """h 0.5, L 1: the lee half is covered, so 0.9 on all that is left."""
    box = Part("box", Box(0.8, 1.0, 0.5, 0.02), density=500.0)
    body = build_structure(design(box)).bodies[0]
    top, left = shapely.box(-0.4, -0.5, 0.4, 0.5), shapely.box(-0.4, -0.5, 0.4, 0.0)
    area, _ = closed_top(body, top, left, FRONT, ASCE7_TOPS)
    assert area[0] == pytest.approx(0.9 * 0.4)


def tops(shape_of, values, azimuth=0.0, place=Place):
    found = []
    for value in values:
        body = build_structure(
            design(
                Part("below", Box(1.0, 1.0, 0.6, 0.02), density=500.0),
                Part("top", shape_of(value), place(on="below"), density=500.0),
            )
        ).bodies[1]
        plan = body.in_plan(body.shape.from_above())
        wind = np.array([[-np.sin(radians(azimuth)), -np.cos(radians(azimuth))]])
        found.append(closed_top(body, plan, plan, wind, ASCE7_TOPS)[0][0] / plan.area)
    return np.array(found)


@pytest.mark.parametrize("azimuth", [0.0, 37.0, 90.0])
def test_no_jump_as_a_roof_grows_steeper(azimuth):
    """From level to 65 degrees by half a degree: at most 0.09 a step, and nothing from 60 on."""
    slopes = np.arange(0.5, 65.0, 0.5)
    mean = tops(lambda a: Gable(1.2, 1.0, 0.5 * np.tan(radians(a))), slopes, azimuth)
    assert np.abs(np.diff(mean)).max() < 0.09
    assert mean[slopes >= 60.0] == pytest.approx(0.0)


def test_no_jump_as_a_top_rises_or_grows():
    """h/L from 0.1 to 3 by 0.5 %: the mean moves by at most 0.02 a step."""
    ratio = np.exp(np.arange(np.log(0.1), np.log(3.0), 0.005))
    mean = mean_strip_suction(0.0, 1.0, ratio, 1.0)
    assert np.abs(np.diff(mean)).max() < 0.02


def test_no_jump_in_direction():
    """By one degree round a box, a gable and a cone: at most 3 % of the greatest."""
    for shape in (Box(1.5, 0.7, 0.5, 0.02), Gable(1.5, 0.7, 0.2), Cone(6, 0.9, 0.2, 0.02)):
        body = build_structure(design(Part("p", shape, density=500.0))).bodies[0]
        plan = body.in_plan(shape.from_above())
        angles = np.radians(np.arange(0.0, 361.0))
        wind = -np.column_stack([np.sin(angles), np.cos(angles)])
        area, moment = closed_top(body, plan, plan, wind, ASCE7_TOPS)
        assert np.abs(np.diff(area)).max() < 0.03 * area.max()
        assert np.abs(np.diff(moment, axis=0)).max() < 0.03 * area.max()


def test_suction_on_a_slope_lies_between_across_and_along_the_ridge():
    strip = np.array(1.3)
    across = float(roof_suction(30.0, np.array(1.0), np.array(1.0), strip))
    along = float(roof_suction(30.0, np.array(0.0), np.array(1.0), strip))
    assert (across, along) == pytest.approx((0.3, 1.3))
    assert float(roof_suction(30.0, np.array(-1.0), np.array(1.0), strip)) == pytest.approx(0.6)
