"""Joints of whole designs: what is asked of them, what they hold, and what changes that."""

import numpy as np
import pytest
from joint_designs import POST, TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.data.result import Result
from yardfast.statics.tie import share_of

SCREWS = "#10 wood screw 3 in"
BLOCKS = {"fastener": "#8 wood screw 2 1/2 in", "count": 8, "blocks": "spruce-pine-fir"}


def found(text, name=None):
    joints = examine(read_text(text)).joints
    return next(one for one in joints if name in (None, one.row.name))


def joint_check(result):
    return next(check for check in result.checks if check.name.startswith("joint: "))


def check_of(text):
    return found(text).check


def test_a_joint_is_a_check_with_demand_capacity_and_direction():
    check = check_of(TOWER + joint(**BLOCKS))
    assert check.name == "joint: tower to foot"
    assert check.unit == "N"
    assert check.passes
    assert check.utilization == pytest.approx(check.demand / check.capacity)
    assert check.direction_deg is not None
    assert "NDS 2018" in check.source


def test_the_level_force_is_shared_evenly_round_a_ring():
    """Eight of them take an eighth of the wind each on the mean, together all of it.

    Through blocks each gives less along its own screws than across them: alike sides alike.
    """
    one = found(TOWER + joint(**BLOCKS))
    wall, deck = one.place.sets
    assert wall.head_in == "tower"
    assert deck.head_in == "foot"
    case = next(k for k, n in enumerate(one.asked[0].which) if one.asked[0].cases.direction[n] >= 0)
    through = one.asked[0].wrenches["as read"][case]
    tie = one.asked[0].joint.tie
    shared = tie.on_site(share_of(tie, through[None], 8).force[0, :24].reshape(8, 3))
    assert shared[:, :2].sum(axis=0) == pytest.approx(
        through[:2], abs=1e-6 * np.hypot(*through[:2])
    )
    along = shared[:, :2] @ through[:2] / (np.hypot(*through[:2]) ** 2 / 8.0)
    assert along[:4] == pytest.approx(along[4:], rel=1e-3)
    assert along.mean() == pytest.approx(1.0)
    assert one.count == 8
    assert one.spots == 1


def test_nails_in_the_edge_of_a_panel_count_nothing_and_are_told():
    result = Result(examine(read_text(TOWER + joint())))
    check = joint_check(result)
    assert not check.passes
    assert check.utilization is None
    assert any("edge of a panel" in note for note in check.notes)
    assert any("blocks or cleats" in caution for caution in result.cautions)


def test_blocks_inside_hold_where_edges_do_not():
    assert not check_of(TOWER + joint(**{**BLOCKS, "blocks": None})).passes
    assert check_of(TOWER + joint(**BLOCKS)).passes


@pytest.mark.parametrize("fastener", ["16d common nail", SCREWS])
def test_nails_and_screws_in_end_grain_count_nothing_and_are_told(fastener):
    text = POST + joint("block", "plank", fastener, 4, into="end grain")
    result = Result(examine(read_text(text)))
    assert not joint_check(result).passes
    assert any("end grain" in caution for caution in result.cautions)


def test_lag_screws_hold_in_end_grain_by_three_quarters():
    side, end = (
        found(POST + joint("block", "plank", "1/4 lag screw 4 in", 4, into=into)).fasteners.holds
        for into in ("side grain", "end grain")
    )
    assert end.out == pytest.approx(0.75 * side.out)
    assert end.sideways == pytest.approx(0.67 * side.sideways)


def test_screws_in_place_of_as_many_nails_change_the_verdict():
    nails = check_of(POST + joint("block", "plank", "8d common nail", 2))
    screws = check_of(POST + joint("block", "plank", "#8 wood screw 2 1/2 in", 2))
    assert not nails.passes
    assert screws.passes


def test_smooth_nails_outdoors_keep_a_quarter():
    # NDS 2018 Table 11.3.3; ring-shank nails keep all
    wet, dry = (
        found(POST + joint("block", "plank", "8d common nail", 4, **more)).fasteners.holds
        for more in ({}, {"stays_dry": True, "made_wet": False})
    )
    assert wet.out == pytest.approx(0.25 * dry.out)
    assert wet.sideways == pytest.approx(0.7 * dry.sideways)


def test_toe_nails_take_two_thirds_out_and_five_sixths_sideways():
    holds = found(POST + joint("block", "plank", "16d common nail", 4, toe_nailed=True))
    holds = holds.fasteners.holds
    # NDS 2018 12.5.4 and Table 11.3.3: 1.6 x 0.67, no loss when wet; 1.6 x 0.7 x 0.83 sideways
    assert holds.factor_out == pytest.approx(1.6 * 0.67)
    assert holds.factor_sideways == pytest.approx(1.6 * 0.7 * 0.83)
    # a third of 3 1/2 in through the side, the rest of its run at 30 degrees beyond
    assert holds.penetration == pytest.approx((3.5 * np.cos(np.pi / 6) - 3.5 / 3) * 0.0254)


def test_glue_is_shown_and_not_counted():
    plain, glued = (POST + joint("block", "plank", SCREWS, 4, **m) for m in ({}, {"glue": True}))
    assert check_of(plain).utilization == check_of(glued).utilization
    notes = joint_check(Result(examine(read_text(glued)))).notes
    assert any("Glue" in note for note in notes)


def test_a_point_that_hardly_goes_in_counts_nothing():
    one = found(POST + joint("block", "plank", "6d common nail", 4, through="1 1/2 in"))
    assert one.fasteners.holds.reasons == ("too short",)
    assert one.check.capacity == 0.0


def test_a_point_that_comes_out_is_told():
    text = POST + joint("block", "plank", "#8 wood screw 2 in", 4, head_in="block", through="1 in")
    result = Result(examine(read_text(text)))
    assert result.examination.joints[0].fasteners.holds.comes_out
    assert any("points come out" in caution for caution in result.cautions)


def test_a_steel_plate_keeps_the_head_from_pulling_through():
    bare, plated = (
        found(POST + joint("block", "plank", "#8 wood screw 3 in", 4, **more)).fasteners.holds
        for more in ({}, {"steel_plate": "1/8 in"})
    )
    assert np.isfinite(bare.head)
    assert not np.isfinite(plated.head)


def test_bolts_are_held_by_what_their_washers_bear_on():
    # 1 in washers on southern pine, Fc_perp 565 psi (larger sizes 375) x 0.67, hole 5/16 in
    text = POST + joint("block", "plank", "1/4 bolt 21 in", 2, washer="1 in")
    holds = found(text).fasteners.holds
    area = np.pi / 4 * (1 - 0.3125**2)
    assert holds.out == pytest.approx(375 * 0.67 * area * 4.4482216, rel=1e-6)


@pytest.mark.parametrize("more", [8, 16, 24, 48])
def test_more_nails_are_never_used_more(more):
    few = check_of(POST + joint("block", "plank", count=8)).utilization
    many = check_of(POST + joint("block", "plank", count=more)).utilization
    assert many <= few * (1.0 + 1.0e-9)


def test_a_stronger_wind_asks_more():
    calm, strong = (
        check_of(TOWER.replace("58 mph", wind) + joint(**BLOCKS)).demand
        for wind in ("40 mph", "80 mph")
    )
    assert strong > 2.0 * calm


@pytest.mark.parametrize("turn", ["20 deg", "45 deg", "100 deg"])
def test_turning_the_design_changes_no_joint(turn):
    """By whole steps of the winds that are tried; what an octagon shows them is by its outline.

    Its shadow is sought among edges that rounding tells apart: a part in 500.
    """
    text = TOWER + joint(**BLOCKS)
    turned = text.replace("units = 'imperial'", f"units = 'imperial'\nturn = '{turn}'")
    assert check_of(turned).utilization == pytest.approx(check_of(text).utilization, rel=2e-3)


def test_a_slope_adds_the_weights_own_push_and_never_helps():
    level = POST + joint("block", "plank", "16d common nail", 4)
    sloped = level.replace("ground = 'paving'", "ground = 'paving'\nslope = '10 deg'")
    assert check_of(sloped).utilization > check_of(level).utilization


def test_each_basis_has_its_own_factors():
    text = POST + joint("block", "plank", "16d common nail", 8)
    service = found(text).fasteners.holds
    named = text.replace("ground = 'paving'", "ground = 'paving'\nbasis = 'strength'")
    strength = found(named).fasteners.holds
    # K_F phi lambda = 3.32 x 0.65 x 1.0 in place of C_D = 1.6 (NDS 2018 Tables 2.3.5, 2.3.6, N3)
    assert strength.out / service.out == pytest.approx(3.32 * 0.65 / 1.6)


def test_what_stands_above_is_carried_by_every_joint_beneath():
    roof = """[[part]]
name = 'roof'
shape = 'cone'
on = 'tower'
sides = 8
bottom = '14 in'
height = '9 in'
wall = '1/2 in'
material = 'softwood plywood'

"""
    low, high = (check_of(text + joint(**BLOCKS)).demand for text in (TOWER, TOWER + roof))
    assert high > low


PROPPED = """
[design]
name  = 'Two frames that prop each other'
units = 'metric'

[site]
method = 'gust'
wind   = '20 m/s'
ground = 'paving'

[[part]]
name     = 'sill'
shape    = 'plate'
length   = '2 m'
width    = '2 m'
thickness = '40 mm'
material = 'southern pine'

[[part]]
name     = 'left'
shape    = 'box'
on       = 'sill'
at       = ['-500 mm', '0 mm', '0 mm']
length   = '90 mm'
width    = '90 mm'
height   = '1500 mm'
material = 'southern pine'

[[part]]
name     = 'right'
shape    = 'box'
on       = 'sill'
at       = ['500 mm', '0 mm', '0 mm']
length   = '90 mm'
width    = '90 mm'
height   = '1500 mm'
material = 'southern pine'

[[part]]
name     = 'beam'
shape    = 'box'
on       = 'left'
at       = ['500 mm', '0 mm', '0 mm']
length   = '1200 mm'
width    = '90 mm'
height   = '400 mm'
material = 'southern pine'

"""
LAGS = {"fastener": "3/8 lag screw 6 in", "count": 4}


def test_frames_that_prop_each_other_are_asked_alike():
    """Mirror images under winds from all sides: what one is asked the other is."""
    joints = (
        joint("left", "sill", **LAGS)
        + joint("right", "sill", **LAGS)
        + joint("beam", "left", "3/8 lag screw 20 in", 2)
        + joint("beam", "right", "3/8 lag screw 20 in", 2)
    )
    left, right = (found(PROPPED + joints, f"{side} to sill") for side in ("left", "right"))
    assert left.check.utilization == pytest.approx(right.check.utilization, rel=1e-6)
    # a frame asks less of each foot than a post alone with half of the beam's wind would
    assert left.check.demand > 0.0


def test_a_part_without_joint_is_listed_as_not_checked():
    result = Result(examine(read_text(POST + joint("block", "plank", SCREWS, 4))))
    assert not any("fastened" in line for line in result.not_checked)
    bare = Result(examine(read_text(POST)))
    assert any("fastened to one another" in line for line in bare.not_checked)


def test_values_from_memory_that_govern_are_named():
    result = Result(examine(read_text(POST + joint("block", "plank", "8d box nail", 4))))
    named = " ".join(result.unverified)
    assert "8d box nails" in named
    assert "factor CM" not in named  # Table 11.3.3 was read in a copy
    assert "pulls out" not in named  # and Eq. 12.2-3


def test_a_joint_takes_part_in_the_whole_answer():
    plain = Result(examine(read_text(POST)))
    nailed = Result(examine(read_text(POST + joint("block", "plank", "8d common nail", 2))))
    assert plain.passes
    assert not nailed.passes
    told = nailed.to_text()
    assert "COMES APART   1 joint is too weak for 46 mph" in told
    assert "use 8d common" in told
    assert "for it are too weak" not in told
