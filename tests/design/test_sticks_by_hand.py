"""A stick from one point to another: its section, its axes and where it lies, by hand."""

from math import pi

import numpy as np
import pytest

from yardfast.design.shapes.member import Member

UP = ((0.0, 0.0, 0.0), (0.0, 0.0, 2.0))


@pytest.mark.parametrize(
    ("stick", "area"),
    [
        (Member(*UP, 0.04, 0.09), 0.04 * 0.09),
        (Member(*UP, across=0.05), pi / 4.0 * 0.05**2),
        (Member(*UP, across=0.05, wall=0.004), pi / 4.0 * (0.05**2 - 0.042**2)),
        (Member(*UP, 0.04, 0.09, wall=0.003), 0.04 * 0.09 - 0.034 * 0.084),
    ],
    ids=["lumber", "round", "pipe", "square tube"],
)
def test_a_section_is_its_outside_less_its_bore(stick, area):
    assert stick.section_area == pytest.approx(area, rel=1e-12)
    assert stick.length == pytest.approx(2.0)
    assert stick.moments().volume == pytest.approx(2.0 * area)


@pytest.mark.parametrize(
    ("stick", "least"),
    [
        (Member(*UP, 0.04, 0.09), 0.04),
        (Member(*UP, 0.09, 0.04), 0.04),
        (Member(*UP, across=0.05), 0.05),
    ],
)
def test_the_lesser_width(stick, least):
    assert stick.least_width == least


def test_the_axes_of_a_stick_that_rises_to_the_right():
    """From the origin to (3, 4, 12): 13 long; level and square to it lies (4, -3, 0)/5; the third
    is their product."""
    stick = Member((0.0, 0.0, 0.0), (3.0, 4.0, 12.0), 0.04, 0.09)
    along, level, square = stick.axes
    assert along == pytest.approx(np.array([3.0, 4.0, 12.0]) / 13.0)
    assert level == pytest.approx(np.array([4.0, -3.0, 0.0]) / 5.0)
    assert square == pytest.approx(np.array([36.0, 48.0, -25.0]) / 65.0)
    assert stick.bearings()[0] == pytest.approx(np.arctan2(-3.0, 4.0))


def test_a_plumb_stick_has_its_width_along_x():
    _, level, _ = Member(*UP, 0.04, 0.09).axes
    assert level.tolist() == [1.0, 0.0, 0.0]
    corners = Member(*UP, 0.04, 0.09).from_above().bounds
    assert corners == pytest.approx((-0.02, -0.045, 0.02, 0.045))
