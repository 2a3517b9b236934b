"""Small questions of the checks, each answered by hand: quarters, steps, feet, the worse of two."""

from math import pi

import numpy as np
import pytest
from designs import design

from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.examination import examine
from yardfast.checks.judged.build_steps import down, up
from yardfast.checks.judged.judging import Kind
from yardfast.checks.sides import Over, goes_over, quarter_of
from yardfast.checks.strength import worse_of
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.asce7.velocity_pressure import exposure_coefficient
from yardfast.units.frozen import replace

FOOT = Part("foot", Plate(Rectangle(0.8, 0.8), 0.05), density=2400.0)
BOX = Part("box", Box(0.4, 0.3, 0.5, 0.018), Place(on="foot"), material="softwood plywood")


@pytest.mark.parametrize(
    ("turn", "bearing", "quarter"),
    [
        (0.0, 0.0, "back"),
        (0.0, 90.0, "right"),
        (0.0, 22.4, "back"),
        (0.0, 22.6, "back right"),
        # turned a quarter to the left, seen from above: its back looks west, its right side north
        (pi / 2.0, 270.0, "back"),
        (pi / 2.0, 0.0, "right"),
        (pi / 2.0, 90.0, "front"),
    ],
)
def test_a_quarter_goes_with_the_piece_as_it_is_turned(turn, bearing, quarter):
    assert quarter_of(examine(design(FOOT, BOX, turn=turn)), bearing) == quarter


@pytest.mark.parametrize(
    ("value", "step", "reach", "held"),
    [
        (1.05, 0.1, 11, 10),
        (1.0, 0.1, 10, 10),
        (0.3, 0.1, 3, 3),
        (0.0, 0.1, 0, 0),
        (0.99, 1.0, 1, 0),
    ],
)
def test_steps_reach_a_value_or_are_held_by_it(value, step, reach, held):
    """0.1 three times is 0.30000000000000004: rounding makes no step of its own."""
    assert (up(value, step), down(value, step)) == (reach, held)


@pytest.mark.parametrize(
    ("height", "carries", "is_foot"),
    [(0.1, True, True), (1.0, True, False), (0.1, False, False), (1.0, False, False)],
)
def test_a_foot_is_low_and_carries_something(height, carries, is_foot):
    """Low: no higher than half its lesser width, here 0.4 m across."""
    block = Part("block", Box(0.4, 0.4, height), density=2400.0)
    top = Part("top", Box(0.2, 0.2, 0.2), Place(on="block"), density=500.0)
    ground = ground_parts(build_structure(design(block, *([top] if carries else []))))
    assert ground.touching == (0,)
    assert ground.feet == ((0,) if is_foot else ())


def test_the_worse_of_two_ways_to_stand_is_the_worse_of_each_check():
    """Of each joint and stick the check that asks more, whichever way it is; what is lost in one
    way is lost, and the greater error counts."""
    post = Part("post", Solid(4, 0.09, 0.09, 1.2), Place(on="foot"), material="southern pine")
    found = examine(design(FOOT, post, wind=30.0))
    (one,) = found.ways
    (stick,) = [each for each in one.sticks if each.name == "post"]
    heavier = replace(stick, check=replace(stick.check, utilization=2.0 * stick.check.utilization))
    worse = replace(one, sticks=(heavier,), error=2.0, lost=True)
    one = replace(one, sticks=(stick,), error=1.0, lost=False)
    for both in ((one, worse), (worse, one)):
        found_ = worse_of(both)
        assert found_.sticks == (heavier,)
        assert (found_.error, found_.lost) == (2.0, True)
    assert worse_of((one,)) is one
    assert np.isclose(heavier.check.utilization, 2.0 * stick.check.utilization)


def test_what_slides_first_slides_in_the_wind_on_its_broad_side():
    """A box 2 m by 0.3 m: wind along y, from 0 or 180 degrees, pushes it most."""
    found = examine(design(Part("box", Box(2.0, 0.3, 0.5), mass=60.0)))
    assert found.limits.sliding_azimuth % 180.0 == pytest.approx(0.0, abs=1e-6)
    assert found.limits.tipping_azimuth % 180.0 == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(
    ("board", "over"), [(0.0, Over.ANY_SIDE), (0.5, Over.QUARTER)], ids=["alike", "a board on it"]
)
def test_over_any_side_where_wind_is_alike_toward_every_side(board, over):
    """A six-sided post is alike toward six sides, at 30 degrees and each 60; with a board not."""
    post = Part("post", Solid(6, 0.3, 0.3, 1.2), density=500.0)
    sign = Part("sign", Box(max(board, 0.01), 0.01, 0.3), Place(on="post"), density=1.0)
    found = examine(design(post, *([sign] if board else [])))
    assert goes_over(found, 30.0) is goes_over(found, 210.0) is over


def test_posts_need_anchors_where_one_of_their_checks_fails():
    """Too shallow for the wind, heavy enough not to be drawn out: one check fails, one passes."""
    post = Part("post", Solid(4, 0.1, 0.1, 2.0), density=2000.0, embed=0.2)
    board = Part("board", Box(1.0, 0.05, 0.8), Place(at=(0.0, 0.075, 0.9)), density=500.0)
    found = examine(design(post, board, ground="firm lawn", wind=30.0))
    passes = {c.kind: c.passes for c in found.checks if c.kind in (Kind.EMBEDMENT, Kind.PULL_OUT)}
    assert passes[Kind.EMBEDMENT] is False
    assert found.needs_anchors


@pytest.mark.parametrize("exposure", ["B", "C", "D"])
def test_the_forecast_that_tips_is_the_gust_at_the_piece_over_its_ratio(exposure):
    """The gust at the piece tips it wherever it stands; the forecast that brings it is so many
    times as strong as the ratio is less than 1: sqrt(K_z), 1.0 at 33 ft over open country."""
    box = Part("box", Box(0.6, 0.4, 1.0), mass=30.0)
    found = examine(design(box, method="forecast", exposure=exposure)).limits
    assert found.ratio == pytest.approx(float(exposure_coefficient(1.0, exposure)) ** 0.5, rel=1e-9)
    assert found.forecast_tipping == pytest.approx(found.tipping / found.ratio, rel=1e-12)
    assert found.forecast_sliding == pytest.approx(found.sliding / found.ratio, rel=1e-12)
