"""What holds a piece down balances what lifts it, and more of it never holds less."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from yardfast.checks.anchoring import anchor_group, guys
from yardfast.checks.anchoring.capacity import (
    ballast,
    buried_weight,
    deadman,
    embedment,
    screw_anchors,
    stakes,
)

FOOT = 0.3048
metres = st.floats(0.05, 6.0)
newtons = st.floats(1.0, 50_000.0)
bearing = st.floats(5_000.0, 60_000.0)


@given(
    moment=newtons,
    distance=st.lists(st.floats(-1.0, 3.0), min_size=1, max_size=9),
)
def test_anchors_balance_the_moment(moment, distance):
    assume(max(distance) > 0.01)
    T = anchor_group.anchor_tensions(moment, distance)
    d = np.array(distance)
    assert T @ d == pytest.approx(moment, rel=1e-9)
    assert (T[d <= 0.0] == 0.0).all()


@given(capacity=newtons, distance=st.lists(st.floats(0.02, 3.0), min_size=1, max_size=9))
def test_the_farthest_anchor_reaches_its_capacity_first(capacity, distance):
    held = anchor_group.moment_held(capacity, distance)
    T = anchor_group.anchor_tensions(held, distance)
    assert T.max() == pytest.approx(capacity, rel=1e-9)
    assert T[np.argmax(distance)] == T.max()


def test_an_anchor_more_never_draws_the_others_harder():
    d = np.array([0.3, 0.6])
    before = anchor_group.anchor_tensions(100.0, d).max()
    for more in np.linspace(0.0, 0.6, 30):
        assert anchor_group.anchor_tensions(100.0, [*d, more]).max() <= before + 1e-12


def test_without_an_anchor_that_pulls_the_need_is_infinite():
    assert np.isinf(anchor_group.anchor_tensions(10.0, [-0.2, 0.0])).all()
    assert anchor_group.moment_held(500.0, [-0.2, 0.0]) == 0.0
    assert (anchor_group.anchor_tensions(0.0, [-0.2, 0.0]) == 0.0).all()


@given(
    force=st.tuples(st.floats(-900, 900), st.floats(-900, 900)),
    twist=st.floats(-500, 500),
    seed=st.integers(0, 1000),
    count=st.integers(2, 8),
)
def test_stakes_balance_force_and_twist(force, twist, seed, count):
    draw = np.random.default_rng(seed).uniform
    points, k = draw(-1, 1, (count, 2)), draw(1, 5, count)
    H = anchor_group.level_shares(points, force, twist, k)
    scale = 1e-9 * (1.0 + np.hypot(*force) + abs(twist)) * 10
    assert H.sum(axis=0) + np.array(force) == pytest.approx(np.zeros(2), abs=scale)
    arm = points - k @ points / k.sum()
    turning = (arm[:, 0] * H[:, 1] - arm[:, 1] * H[:, 0]).sum()
    assert turning + twist == pytest.approx(0.0, abs=scale)


def test_a_twist_about_one_point_is_refused():
    with pytest.raises(ValueError, match="twist"):
        anchor_group.level_shares([[0.5, 0.5]], [1.0, 0.0], 3.0)
    alone = anchor_group.level_shares([[0.5, 0.5]], [1.0, 0.0])
    assert alone == pytest.approx(np.array([[-1.0, 0.0]]))


@given(moment=newtons, seed=st.integers(0, 1000), count=st.integers(1, 6))
def test_guys_balance_the_moment_and_slack_ones_do_nothing(moment, seed, count):
    draw = np.random.default_rng(seed).uniform
    h, a, psi, x = draw(1, 3, count), draw(0.3, 1.2, count), draw(-3, 3, count), draw(0, 1, count)
    r = guys.lever(h, a, psi, x)
    assume(r.max() > 0.05)
    T = guys.guy_tensions(moment, r, draw(1e3, 1e5, count))
    assert (T[r <= 0.0] == 0.0).all()
    assert (T[r > 0.0] > 0.0).all()
    # the same in space: each pull crossed with its place about the lee edge (along y at x = 0)
    pull = T[:, None] * np.column_stack(
        [-np.cos(a) * np.cos(psi), np.cos(a) * np.sin(psi), -np.sin(a)]
    )
    place = np.column_stack([-x, np.zeros(count), h])
    about_y = (place[:, 2] * pull[:, 0] - place[:, 0] * pull[:, 2]).sum()
    assert -about_y == pytest.approx(moment, rel=1e-9)


def test_one_guy_straight_to_windward_is_the_textbook_guy():
    """T = M/(h cos a) from the edge itself; statics."""
    a = np.radians(45)
    found = guys.guy_tensions(700.0, guys.lever([2.0], a, 0.0, 0.0))
    assert found == pytest.approx([700 / (2 * np.cos(a))])


@given(seed=st.integers(0, 10_000))
def test_three_guys_and_their_load_leave_no_force(seed):
    draw = np.random.default_rng(seed).uniform
    angles = np.radians([0, 120, 240]) + draw(-0.4, 0.4, 3)
    ways = np.column_stack([np.cos(angles), np.sin(angles), -draw(0.3, 3, 3)])
    along = ways / np.linalg.norm(ways, axis=1)[:, None]
    held = draw(0.0, 1000.0, 3)
    load = -held @ along
    T = guys.three_guys(ways, load)
    assert np.allclose(T, held, rtol=1e-9, atol=1e-6)
    assert T @ along + load == pytest.approx(np.zeros(3), abs=1e-9 * np.linalg.norm(load))


def test_guys_do_not_push():
    ways = [[1, 0, -1], [-1, 1, -1], [-1, -1, -1]]
    with pytest.raises(ValueError, match="push"):
        guys.three_guys(ways, [0.0, 0.0, -10.0])
    with pytest.raises(ValueError, match="plane"):
        guys.three_guys([[1, 0, -1], [-1, 0, -1], [0, 0, -1]], [0.0, 0.0, 10.0])


@given(force=newtons, height=st.floats(0.0, 6.0), s=bearing, b=st.floats(0.05, 1.0))
def test_the_depth_found_bears_its_own_pressure(force, height, s, b):
    """Eq. 18-1 written out with S1 at a third of the depth, counted to 12 ft."""
    d = embedment.depth_free(force, height, s, b)
    S1 = s * min(d, 12 * FOOT) / 3
    A = 2.34 * force / (S1 * b)
    assert d == pytest.approx(0.5 * A * (1 + (1 + 4.36 * height / A) ** 0.5), rel=1e-9)
    assert embedment.force_free(d, height, s, b) == pytest.approx(force, rel=1e-9)


@given(moment=newtons, s=bearing, b=st.floats(0.05, 1.0))
def test_the_constrained_depth_bears_its_own_pressure(moment, s, b):
    d = embedment.depth_constrained(moment, s, b)
    S3 = s * min(d, 12 * FOOT)
    assert d == pytest.approx((4.25 * moment / (S3 * b)) ** 0.5, rel=1e-9)
    assert embedment.moment_constrained(d, s, b) == pytest.approx(moment, rel=1e-9)


@given(force=newtons, height=metres, s=bearing, b=st.floats(0.05, 1.0))
def test_deeper_for_more_force_higher_up_in_softer_ground_on_a_thinner_post(force, height, s, b):
    d = embedment.depth_free(force, height, s, b)
    assert embedment.depth_free(1.1 * force, height, s, b) > d
    assert embedment.depth_free(force, 1.1 * height, s, b) > d
    assert embedment.depth_free(force, height, 0.9 * s, b) > d
    assert embedment.depth_free(force, height, s, 0.9 * b) > d
    assert embedment.depth_free(force, height, 2.0 * s, b) < d


def test_nothing_asked_needs_no_depth():
    assert embedment.depth_free(0.0, 1.0, 20000.0, 0.1) == 0.0
    assert embedment.depth_constrained(0.0, 20000.0, 0.1) == 0.0


def test_depth_is_continuous_where_counting_ends():
    """12 ft: the cubic and the equation with a constant pressure meet."""
    P = embedment.force_free(12 * FOOT, 2.0, 20000.0, 0.3)
    below, above = (embedment.depth_free(P * f, 2.0, 20000.0, 0.3) for f in (1 - 1e-9, 1 + 1e-9))
    assert below == pytest.approx(12 * FOOT, rel=1e-7)
    assert above == pytest.approx(12 * FOOT, rel=1e-7)


@given(d=st.floats(0.005, 0.1), length=st.floats(0.2, 2.0), s_u=st.floats(5e3, 9e4))
def test_thicker_longer_drier_stiffer_never_holds_less(d, length, s_u):
    side, up = stakes.sideways_strength(d, length), stakes.straight_strength(d, length, s_u)
    assert stakes.sideways_strength(1.1 * d, length) > side
    assert stakes.sideways_strength(d, 1.1 * length) >= side
    assert stakes.sideways_strength(d, length, True) == side / 2
    assert stakes.straight_strength(1.1 * d, length, s_u) > up
    assert stakes.straight_strength(d, 1.1 * length, s_u) > up
    assert stakes.straight_strength(d, length, 1.1 * s_u) > up


def test_nothing_holds_straight_up_in_sand_or_in_the_loose_top():
    assert stakes.straight_strength(0.02, 1.0, 0.0) == 0.0
    assert stakes.straight_strength(0.02, 0.15, 50_000.0) == 0.0


def test_half_of_each_uses_all_of_a_stake():
    assert stakes.stake_utilization(50.0, 100.0, 100.0, 200.0) == 1.0
    assert stakes.stake_utilization(0.0, 100.0, 0.0, 200.0) == 0.5
    assert np.isinf(stakes.stake_utilization(1.0, 0.0, 0.0, 200.0))


@given(up=newtons, side=newtons)
def test_steeper_pulls_beyond_slanting_hold_no_more_than_sideways(up, side):
    angles = np.radians(np.arange(0, 91))
    holds = stakes.slanting_allowable(angles, up, side)
    assert (holds[:61] == side).all()
    assert (holds <= side * (1 + 1e-12)).all()
    assert holds[-1] == pytest.approx(min(up, side), rel=1e-9)


def test_a_pull_up_or_below_level_is_refused():
    with pytest.raises(ValueError, match="elevation"):
        stakes.slanting_allowable(-0.1, 1.0, 1.0)
    with pytest.raises(ValueError, match="elevation"):
        stakes.slanting_allowable(1.6, 1.0, 1.0)


@given(up=newtons, downhill=st.floats(-900, 900), slope=st.floats(0, 0.5))
def test_a_slope_turns_a_pull_and_keeps_its_size(up, downhill, slope):
    out, along = stakes.on_a_slope(up, downhill, slope)
    assert np.hypot(out, along) == pytest.approx(np.hypot(up, downhill))
    # uphill and out of the ground again: turned back
    back = stakes.on_a_slope(out, along, -slope)
    assert back == pytest.approx((up, downhill), abs=1e-9 * (up + abs(downhill)))


@given(r=st.floats(0.05, 0.5), depth=st.floats(0.1, 2.0))
def test_lifted_earth_under_a_round_pad_is_a_frustum(r, depth):
    """Volume of a frustum of a cone, pi D/3 (R2 + R r + r2), 30 degrees."""
    R = r + depth * np.tan(np.radians(30))
    frustum = np.pi * depth / 3 * (R**2 + R * r + r**2)
    assert buried_weight.lifted_volume(np.pi * r**2, 2 * np.pi * r, depth) == pytest.approx(frustum)


@given(side=st.floats(0.1, 1.0), depth=st.floats(0.2, 2.0))
def test_water_takes_its_own_weight_from_what_is_buried(side, depth):
    dry = buried_weight.block_strength(side**2, 4 * side, 0.1, depth)
    wet = buried_weight.block_strength(side**2, 4 * side, 0.1, depth, True)
    water = 62.4 * 157.08746384624618 * buried_weight.lifted_volume(side**2, 4 * side, depth)
    assert dry - wet == pytest.approx(water)
    assert buried_weight.block_strength(side**2, 4 * side, 0.1, 1.1 * depth) > dry


def test_a_pad_cannot_stand_out_of_the_ground():
    with pytest.raises(ValueError, match="thickness"):
        buried_weight.block_strength(0.1, 1.2, 0.3, 0.2)


def test_deep_plates_hold_nine_times_the_strength():
    assert screw_anchors.clay_factor(0.5, 0.1) == 9.0
    assert screw_anchors.clay_factor(5.0, 0.1) == 9.0
    assert screw_anchors.clay_factor(0.25, 0.1) == 4.5
    # A 9 s_u by hand: 4 in on 1/2 in shaft, 25 kPa
    area = screw_anchors.helix_area(0.1016, 0.0127)
    assert area == pytest.approx(0.0079806, abs=5e-8)
    found = screw_anchors.bearing_strength([area], 25e3, 9.0, 0.0, 0.0)
    assert found == pytest.approx(1795.6, abs=0.05)


def test_sand_counts_no_deeper_than_shallow_plates():
    at = screw_anchors.sand_strength(np.array([0.2, 0.3, 0.5, 5.0]), 0.1016, 14_000.0)
    assert at[0] < at[1] < at[2] == at[3]


@given(depth=st.floats(0.1, 3.0), length=st.floats(0.4, 3.0))
def test_a_log_holds_more_the_deeper_and_the_longer_it_lies(depth, length):
    power = deadman.holding_power(depth, np.radians(30))
    one, two = (deadman.log_strength(power, 0.2, each) for each in (length, 2.0 * length))
    # TM 5-5420-278-10, WP 0035: but for its first foot each metre holds HP D_f
    assert two - one == pytest.approx(power * 0.2 * length)
    assert deadman.holding_power(1.1 * depth, np.radians(30)) >= power
    assert deadman.holding_power(depth, np.radians(40)) <= power


def test_a_steep_pull_on_a_deadman_is_refused():
    with pytest.raises(ValueError, match="45"):
        deadman.holding_power(1.0, np.radians(50))


@given(over=newtons, resist=newtons, arm=metres, helping=st.floats(0.5, 1.0))
def test_the_least_ballast_just_balances(over, resist, arm, helping):
    B = ballast.least_ballast(over, resist, arm, helping)
    left = over - resist - helping * B * arm
    if B > 0.0:
        assert left == pytest.approx(0.0, abs=1e-9 * (over + resist))
    else:
        assert left <= 0.0


def test_ballast_beyond_the_edge_never_helps():
    assert np.isinf(ballast.least_ballast(2.0, 1.0, -0.1, 0.6))
    assert ballast.least_ballast(1.0, 2.0, -0.1, 0.6) == 0.0


RELATIONS_REFUSE = {
    "stake": lambda: stakes.sideways_strength(0.0, 1.0),
    "stake depth": lambda: stakes.straight_strength(0.1, -1.0, 1.0),
    "post": lambda: embedment.depth_free(1.0, 1.0, 0.0, 0.1),
    "post width": lambda: embedment.depth_constrained(1.0, 1.0, 0.0),
    "helix": lambda: screw_anchors.helix_area(0.1, 0.1),
    "floating block": lambda: buried_weight.sinking_volume(1.0, 5.0, 9.0),
    "moment": lambda: anchor_group.anchor_tensions(-1.0, [1.0]),
    "line": lambda: guys.line_allowable(1.0, 1.5, 1.0),
    "factor": lambda: ballast.least_ballast(1.0, 0.0, 1.0, 0.0),
}


@pytest.mark.parametrize("name", RELATIONS_REFUSE)
def test_what_cannot_be_is_refused(name):
    with pytest.raises(ValueError, match="expected"):
        RELATIONS_REFUSE[name]()
