"""Pressure under a block by hand: N/((B - 2 e) L), e = M/N (Meyerhof 1953), against the ground."""

import numpy as np
import pytest

from yardfast.checks.stability.bearing import check_bearing
from yardfast.checks.stability.overturning import Hold
from yardfast.checks.stability.standing import Standing
from yardfast.design.model import Design, Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import Factors
from yardfast.materials import grounds
from yardfast.units.frozen import replace

W = 500.0
STRENGTH = Factors(0.9, 1.2, 1.0, 1.6667, "ASCE/SEI 7-22 2.3.1")
GRAVEL = 143_640.0  # 3,000 psf of 47.880 Pa: IBC 2012 Table 1806.2, class 3


def standing(slope=0.0, ground=None):
    """A block 1 m by 1 m of 500 N on gravel, turned over toward +x alone."""
    block = Part("block", Box(1.0, 1.0, 0.4), mass=W / 9.80665)
    structure = build_structure(Design("block", "metric", (block,), tables={}))
    every = Standing(structure, ground or grounds.find_ground("gravel"), slope)
    lines = np.flatnonzero(every.normals[:, 0] > 1.0 - 1e-9)[:1]
    return every.about(lines)


def wind(over, up=0.0):
    """One direction and case: so much moment in N m toward +x, and suction in N in the middle."""
    none = np.zeros((1, 1))
    tilting = np.array([[[over, 0.0]]])
    return Actions(
        np.array([270.0]),
        np.zeros((1, 1, 2)),
        tilting,
        none,
        none + up,
        np.zeros((1, 1, 2)),
        ("A",),
    )


@pytest.mark.parametrize(
    ("over", "up", "pressure", "dead", "case"),
    [
        (0.0, 0.0, 600.0, 1.2, "A"),  # 600 N on 1 m2
        (120.0, 0.0, 1000.0, 1.2, "A"),  # e 0.2: 600/0.6; by 0.9 450/0.4667 = 964.3
        (120.0, 150.0, 1500.0, 0.9, "A"),  # e 0.4: 300/0.2; by 1.2 450/0.4667
        (20.0, 300.0, 600.0, 1.2, "calm"),  # by 0.9 150/0.7333, by 1.2 300/0.8667
    ],
    ids=["calm", "heavier factor", "lighter factor under suction", "calm is worse"],
)
def test_pressure_is_meyerhofs_by_both_factors_and_in_calm_air(over, up, pressure, dead, case):
    check = check_bearing(standing(), wind(over, up), STRENGTH)
    assert check.demand == pytest.approx(pressure, rel=1e-6)
    assert (check.dead, check.case if up else case) == (dead, case)
    assert check.capacity == pytest.approx(1.6667 * GRAVEL, rel=1e-4)
    assert check.utilization == pytest.approx(pressure / (1.6667 * GRAVEL), rel=1e-4)
    assert check.passes


def test_the_factor_on_wind_counts():
    """0.6 D + 0.6 W of 120 N m: e 72/300 = 0.24, 300/0.52; D + 0.6 W: e 0.144, 500/0.712."""
    allowable = Factors(0.6, 1.0, 0.6, 1.0, "ASCE/SEI 7-22 2.4.1")
    check = check_bearing(standing(), wind(120.0), allowable)
    assert check.demand == pytest.approx(500.0 / 0.712, rel=1e-6)
    assert check.capacity == pytest.approx(GRAVEL, rel=1e-4)


def test_nothing_stays_loaded_beyond_the_edge():
    """450 N half a metre from the edge hold 225 N m: no area carries it then."""
    assert not check_bearing(standing(), wind(225.0), STRENGTH).passes
    check = check_bearing(standing(), wind(225.1), STRENGTH)
    assert check.utilization is None
    assert not check.passes


def test_on_a_slope_what_presses_is_square_to_it_and_lies_downhill():
    """20 degrees: N = d W cos 20, e = z tan 20 with z = 0.2 m: B - 2 e = 0.8544 m."""
    slope = np.radians(20.0)
    check = check_bearing(standing(slope), wind(0.0), STRENGTH)
    pressing = 1.2 * W * np.cos(slope)
    assert check.demand == pytest.approx(pressing / (1.0 - 0.4 * np.tan(slope)), rel=1e-6)


def test_ground_that_is_too_soft_fails_where_the_quotient_says():
    gravel = grounds.find_ground("gravel")
    rating = replace(gravel.ratings["allowable pressure"], value=599.0)
    soft = replace(gravel, ratings={**gravel.ratings, "allowable pressure": rating})
    rating = replace(rating, value=601.0)
    firm = replace(gravel, ratings={**gravel.ratings, "allowable pressure": rating})
    one = replace(STRENGTH, soil=1.0)
    found = [check_bearing(standing(ground=each), wind(0.0), one) for each in (soft, firm)]
    assert [each.passes for each in found] == [False, True]
    assert found[0].utilization == pytest.approx(600.0 / 599.0, rel=1e-6)


def test_anchors_press_too_and_their_pull_moves_the_resultant():
    """An anchor 0.4 m behind the middle pulls 300 N once it lifts, against 300 N m and d W.

    About the line x: d W x + 300 (x + 0.4) = 300, so x = 180/(d W + 300); then N = d W + 300 on
    twice what is left to the edge: d 0.9: x 0.24, 750/0.52 = 1442; d 1.2: x 0.2, 900/0.6 = 1500.
    """
    held = Hold(lambda pivot: 300.0 * (pivot + 0.4), lambda pivot: 300.0 + 0.0 * pivot)
    check = check_bearing(standing(), wind(300.0), STRENGTH, held)
    assert check.demand == pytest.approx(1500.0, rel=1e-6)
    assert check.dead == 1.2
    gone = check_bearing(standing(), wind(480.0, 50.0), STRENGTH, held)
    assert gone.utilization is None  # 0.9 x 500 x 0.5 + 300 x 0.9 = 495 of 505 N m at the edge
    assert not gone.passes


def test_weight_that_may_be_heavier_presses_as_heavy():
    """A block of pine weighs least, most and as written: the most counts in calm air."""
    block = Part("block", Box(1.0, 1.0, 0.4), material="southern pine, treated")
    structure = build_structure(Design("block", "metric", (block,), tables={}))
    most = structure.weight("heavy")
    assert most > 1.05 * structure.weight("light")
    every = Standing(structure, grounds.find_ground("gravel"), 0.0)
    one = every.about(np.flatnonzero(every.normals[:, 0] > 1.0 - 1e-9)[:1])
    check = check_bearing(one, wind(0.0), STRENGTH)
    assert check.demand == pytest.approx(1.2 * most, rel=1e-9)
    assert check.weighing == "heavy"


def test_weight_that_stands_to_one_side_bears_there_in_calm_air():
    """10 kg over a metre square and 40 kg at 0.25 m: e = 0.2 m of 1 m, so that 1.2 x 490.3 N stand
    on 1 - 2 e: 588.4/0.6 = 980.7 Pa (Meyerhof 1953; ASCE/SEI 7-22 2.3.1)."""
    plate = Part("plate", Box(1.0, 1.0, 0.05), mass=10.0)
    block = Part("block", Box(0.4, 0.4, 0.4), Place(on="plate", at=(0.25, 0.0, 0.0)), mass=40.0)
    structure = build_structure(Design("two", "metric", (plate, block), tables={}))
    every = Standing(structure, grounds.find_ground("gravel"), 0.0)
    lines = np.flatnonzero(every.normals[:, 0] > 1.0 - 1e-9)[:1]
    check = check_bearing(every.about(lines), wind(0.0), STRENGTH)
    assert check.demand == pytest.approx(980.7, abs=0.05)
