"""Pieces that are held down: by hand from statics, and in equilibrium."""

import json
from math import atan2, cos, pi, sin
from types import SimpleNamespace

import numpy as np
import pytest
from designs import design, tower
from hypothesis import example, given, settings
from hypothesis import strategies as st
from joint_designs import TOWER

from yardfast.checks.anchoring.anchored import hold_of
from yardfast.checks.anchoring.capacity import stakes
from yardfast.checks.anchoring.capacity.anchor_capacity import anchor_capacity
from yardfast.checks.anchoring.held import Guys, held_by
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Remark
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.materials import anchors, guy_lines
from yardfast.materials.grounds import find_ground
from yardfast.report.data.result import Result
from yardfast.statics.tables.anchor_table import AnchorRow, BallastRow, GuyRow
from yardfast.units.frozen import replace

G = 9.80665
KIND = "rebar stake 1/2 in x 36 in"
POST = Part("post", Box(0.4, 0.4, 1.6), density=200.0)


def with_rows(drawn, *rows):
    tables = dict(drawn.tables)
    for kind in {type(row) for row in rows}:
        tables[kind] = tuple(row for row in rows if type(row) is kind)
    return replace(drawn, tables=tables)


def named(found, name):
    return next(check for check in found.checks if check.name == name)


def test_four_corner_stakes_share_a_tilt_by_hand():
    """A square post about one of its sides: two stakes at 0.4 m and two at the edge itself.

    A rod holds nothing straight up in gravel, so the pull is measured: 600 N over 2 is 300 N, less
    than a bent head's 140 lbf. At the limit 2 x 300 x 0.4 = 240 N m.
    """
    row = AnchorRow("stakes", KIND, "corners", measured=600.0)
    found = examine(with_rows(design(POST, ground="gravel", wind=28.0), row))
    hold = hold_of(found.held, found.standing, found.factors)
    about_its_sides = hold.moment(found.standing.reach)[:4]
    assert about_its_sides == pytest.approx(np.full(4, 240.0))
    assert found.needs_anchors
    assert named(found, "overturning").utilization < found.overturning.utilization


def test_each_stake_is_asked_for_its_share_of_what_is_left():
    """Net moment over the two far stakes' levers, plus what friction leaves sideways."""
    row = AnchorRow("stakes", KIND, "corners", measured=600.0)
    found = examine(with_rows(design(POST, ground="paving", wind=28.0), replace(row, kind=BOLT)))
    net = found.overturning.demand - found.overturning.capacity
    pull = net / (2 * 0.4)
    left = max(found.sliding.demand - found.sliding.capacity, 0.0) / 4
    bolt = anchor_capacity(anchors.find_anchor(BOLT), find_ground("paving"), measured=600.0)
    used = pull / bolt.straight + left / bolt.sideways
    check = named(found, "anchor: stakes")
    assert check.demand == pytest.approx(used, rel=0.02)
    assert check.demand >= pull / bolt.straight


BOLT = "bolt 3/8 in into a slab"


def test_a_stake_on_paving_is_refused_in_words():
    with pytest.raises(DesignError) as caught:
        examine(with_rows(design(POST, ground="paving"), AnchorRow("pegs", KIND, "corners")))
    (fault,) = caught.value.faults
    assert (fault.part, fault.key, fault.hint) == ("pegs", "kind", "bolts into the slab")


def test_guys_take_the_moment_by_hand():
    """Three guys at 120 degrees, one straight to windward: M = T h cos a, its top on the axis.

    From the side opposite, two share it. The worst pull is the larger of the two cases.
    """
    row = GuyRow("guys", CABLE, KIND, height=1.5, radius=1.5, count=3)
    found = examine(with_rows(design(POST, ground="firm lawn", wind=30.0), row))
    check = named(found, "guy: guys")
    a = atan2(1.5, 1.5)
    weight = 200 * 0.4 * 0.4 * 1.6 * G
    assert check.remark is Remark.GROUND_ANCHOR
    assert check.capacity == pytest.approx(
        anchor_capacity(anchors.find_anchor(KIND), find_ground("firm lawn")).along(a), rel=1e-9
    )
    # the piece would lean on the edge 0.2 m from the axis where every guy is attached
    least = (found.overturning.demand - weight * 0.2 / 1.5) / (1.5 * cos(a) + 0.2 * sin(a))
    assert least * 0.9 < check.demand < least * 2.1


CABLE = guy_lines.line_names()[-1]


@pytest.mark.slow
@settings(max_examples=20, deadline=None)
@given(
    sides=st.sampled_from([4, 6, 8]),
    count=st.integers(3, 8),
    start=st.floats(0.0, 6.0),
    ring=st.floats(0.3, 0.6),
)
@example(sides=8, count=3, start=1.1e-308, ring=0.5)
def test_anchors_at_their_limit_balance_the_moment_that_they_are_said_to_hold(
    sides, count, start, ring
):
    """Forces T_i = lambda x_i about the edge: their moment is that of hold_of, to 1e-9."""
    row = AnchorRow("stakes", KIND, None, (0.0, 0.0, 0.0), ring, count, start)
    drawn = with_rows(design(*tower(sides, 0.6, 0.35, 0.2, 1.2), ground="firm lawn"), row)
    found = examine(drawn)
    held = held_by(found.design, found.structure, found.standing.ground)
    hold = hold_of(held, found.standing, found.factors)
    pivot = found.standing.reach
    lever = np.maximum(pivot[:, None] - found.standing.normals @ held.points.T, 0.0)
    capacity = held.each("up")[0]
    tension = capacity * lever / lever.max(axis=1, keepdims=True)
    assert hold.moment(pivot) == pytest.approx((tension * lever).sum(axis=1), rel=1e-9)
    assert hold.pull(pivot) == pytest.approx(tension.sum(axis=1), rel=1e-9)


def test_anchors_never_change_what_it_does_untied():
    plain = design(*tower(8, 0.6, 0.35, 0.2, 1.2), ground="firm lawn")
    tied = with_rows(plain, AnchorRow("stakes", KIND, "second sides"))
    one, other = examine(plain), examine(tied)
    assert one.limits == other.limits
    assert one.free == other.free


def test_weight_laid_on_the_foot_counts_and_is_no_wind_area():
    foot = Part("foot", Plate(Rectangle(0.8, 0.8), 0.04), density=600.0)
    body = Part("body", Shell(4, 0.4, 0.4, 1.0, 0.02), Place(on="foot"), density=600.0)
    plain = design(foot, body)
    laid = examine(with_rows(plain, BallastRow("bags", 18.0, 3, inside="body")))
    bare = examine(plain)
    assert laid.structure.mass("light") == pytest.approx(bare.structure.mass("light") + 54.0)
    assert laid.wind.force == pytest.approx(bare.wind.force)
    assert laid.limits.tipping > bare.limits.tipping
    z = laid.structure.part_centre[-1][2]
    assert z == pytest.approx(0.04)


def test_bags_loose_in_a_ring_without_a_floor_are_refused():
    ring = Part("foot", Frame(Rectangle(0.8, 0.8), 0.09, 0.04), density=600.0)
    body = Part("body", Shell(4, 0.4, 0.4, 1.0, 0.02), Place(on="foot"), density=600.0)
    with pytest.raises(DesignError) as caught:
        examine(with_rows(design(ring, body), BallastRow("bags", 18.0, 3, inside="body")))
    assert "floor" in caught.value.faults[0].expected


def test_a_slope_asks_more_of_the_stakes():
    row = AnchorRow("stakes", KIND, "corners")
    level = examine(with_rows(design(POST, ground="firm lawn", wind=25.0), row))
    tilted = examine(with_rows(design(POST, ground="firm lawn", wind=25.0, slope=pi / 18), row))
    assert named(tilted, "anchor: stakes").demand > named(level, "anchor: stakes").demand


def test_a_pull_without_bound_on_level_ground_stays_what_it_is():
    up, along = stakes.on_a_slope(np.inf, 30.0, 0.0)
    assert (float(up), float(along)) == (np.inf, 30.0)
    up, along = stakes.on_a_slope(np.inf, 30.0, 0.1)
    assert (float(up), float(along)) == (np.inf, -np.inf)
    up, along = stakes.on_a_slope(30.0, -np.inf, [0.0, 0.1])
    assert (up.tolist(), along.tolist()) == ([30.0, np.inf], [-np.inf, -np.inf])


def test_one_stake_at_an_edge_is_told_to_hold_too_little_and_no_number_is_none():
    """Wind from its side of the foot finds no stake before it: its pull has no bound."""
    stake = (
        "[[anchor]]\nname = 'stake'\nkind = 'rebar stake 5/8 in x 36 in'\n"
        "at = ['12 in', '0 in', '0 in']\n"
    )
    found = examine(read_text(TOWER + stake))
    asked = named(found, "anchor: stake")
    assert (asked.demand, asked.utilization, asked.passes) == (np.inf, None, False)
    json.dumps(Result(found).to_dict(), allow_nan=False)


def test_a_pull_parts_on_a_slope_by_statics():
    # 100 N straight up on a slope of 3 in 4 (sine 0.6, cosine 0.8): 80 N out of it, 60 N up along.
    up, along = stakes.on_a_slope(100.0, 0.0, np.arctan(0.75))
    assert (float(up), float(along)) == pytest.approx((80.0, -60.0))


@pytest.mark.parametrize(("line", "soil", "least"), [(900.0, 1.0, 500.0), (300.0, 1.0, 300.0)])
def test_a_guy_holds_the_lesser_of_its_line_and_its_stake(line, soil, least):
    """A stake that holds 500 N along the guy: a line of 900 N leaves that, one of 300 N less."""
    stake = SimpleNamespace(along=lambda elevation: 500.0)
    one = Guys("g", np.zeros((1, 3)), np.zeros((1, 2)), 0.7, 2.0, line, 1.0e5, stake)
    assert one.held(soil) == least
    assert one.held(0.5) == min(line, 250.0)
