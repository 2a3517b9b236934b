"""What must hold of every piece, whatever its sizes."""

from math import radians, sqrt

import numpy as np
import pytest
from designs import SIDES, TOWERS, design, post, tower
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.stability.wind_moments import WindMoments
from yardfast.loads.actions import wind_actions
from yardfast.units.frozen import replace

quickly = settings(max_examples=12, deadline=None)


@quickly
@given(size=st.floats(0.3, 3.0), **{k: v for k, v in TOWERS.items() if k != "sides"})
def test_tipping_gust_goes_with_the_root_of_size_and_mass_with_its_cube(size, **sizes):
    """At equal density M_resist grows by the fourth power and the area moment by the third."""
    one = examine(design(*tower(6, **sizes)))
    other = examine(design(*tower(6, **sizes, size=size)))
    assert other.structure.mass("typical") == pytest.approx(
        one.structure.mass("typical") * size**3, rel=1e-9
    )
    if one.limits.tipping and other.limits.tipping:
        assert other.limits.tipping == pytest.approx(one.limits.tipping * sqrt(size), rel=1e-9)


@pytest.mark.slow
@quickly
@given(wider=st.floats(1.0, 2.0), ground=st.sampled_from(["paving", "wet lawn"]), **TOWERS)
def test_wider_base_never_tips_sooner(wider, ground, sides, foot, **sizes):
    narrow = examine(design(*tower(sides, foot, **sizes), ground=ground)).limits
    wide = examine(design(*tower(sides, foot * wider, **sizes), ground=ground)).limits
    assert wide.tipping is None or wide.tipping >= narrow.tipping * (1 - 1e-9)


@quickly
@given(
    angle=st.floats(0.0, 360.0),
    shift=st.floats(0.0, 0.05),
    ground=st.sampled_from(["paving", "firm lawn", "soft clay"]),
    **TOWERS,
)
def test_turning_the_whole_piece_changes_no_answer(angle, shift, ground, **sizes):
    still = examine(design(*tower(**sizes, shift=shift), ground=ground))
    turned = examine(design(*tower(**sizes, shift=shift), ground=ground, turn=radians(angle)))
    for name in ("tipping", "sliding", "tipping_low", "push"):
        a, b = getattr(still.limits, name), getattr(turned.limits, name)
        assert (a is None and b is None) or a == pytest.approx(b, rel=0.005)
    for one, other in zip(still.checks, turned.checks, strict=True):
        assert one.passes == other.passes or abs(one.utilization - 1) < 0.005
        if one.utilization is not None and other.utilization is not None:
            assert one.utilization == pytest.approx(other.utilization, rel=0.005)


@quickly
@given(
    sides=SIDES,
    across=st.floats(0.1, 0.6),
    height=st.floats(0.3, 2.0),
    lower=st.floats(0.4, 1.0),
)
def test_lower_height_of_the_same_section_never_tips_sooner(sides, across, height, lower):
    tall = examine(design(*post(sides, across, height))).limits.tipping
    short = examine(design(*post(sides, across, height * lower))).limits.tipping
    assert short is None or (tall is not None and short >= tall * (1 - 1e-9))


@quickly
@given(slope=st.floats(0.0, 12.0), **TOWERS)
def test_slope_never_helps(slope, **sizes):
    level = examine(design(*tower(**sizes))).limits
    tilted = examine(design(*tower(**sizes), slope=radians(slope))).limits
    assert tilted.tipping <= (level.tipping or 150.0) * (1 + 1e-9)
    assert tilted.sliding <= (level.sliding or 150.0) * (1 + 1e-9)


@pytest.mark.slow
@quickly
@given(**TOWERS)
def test_softer_ground_never_tips_later(**sizes):
    gusts = [
        examine(design(*tower(**sizes), ground=ground)).limits.tipping
        for ground in ("paving", "firm lawn", "soft clay")
    ]
    known = [gust or 150.0 for gust in gusts]
    assert known[0] >= known[1] * (1 - 1e-9) >= known[2] * (1 - 1e-9)


@quickly
@given(**TOWERS)
def test_range_holds_the_estimate_and_to_act_lies_below(**sizes):
    limits = examine(design(*tower(**sizes))).limits
    if limits.tipping and limits.tipping_high:
        assert limits.tipping_low < limits.tipping < limits.tipping_high
    assert limits.act <= limits.forecast_tipping
    steps = limits.act / (5 * 0.44704)
    assert steps == pytest.approx(round(steps), abs=1e-9)


@quickly
@given(**TOWERS)
def test_a_gust_at_the_limit_just_tips_it(**sizes):
    """The limit is the inverse of the check: at it the bare factor of safety is 1."""
    found = examine(design(*tower(**sizes)))
    if found.limits.tipping is None:
        return
    site = found.site
    at = examine(design(*tower(**sizes), wind=found.limits.tipping, safety=1.0))
    assert site.method == "gust"
    assert at.overturning.bare == pytest.approx(1.0, rel=1e-9)


@pytest.mark.slow
def test_many_gusts_at_once_are_the_gusts_one_by_one():
    found = examine(design(*tower(0, 0.6, 0.35, 0.2, 1.2)))
    exposed, count = found.exposed, len(found.structure.bodies)
    gusts = np.linspace(1.0, 3000.0, 1000)
    factors = {
        "ratio": np.linspace(0.9, 1.0, count),
        "directionality": np.linspace(0.85, 1.0, count),
        "gust": np.linspace(0.85, 0.95, len(exposed.azimuths)),
    }
    together = wind_actions(exposed, gusts, **factors)
    normals = found.standing.normals
    pivot = np.broadcast_to(found.standing.reach, (*together.twist.shape, len(normals)))
    moments = WindMoments.of(together, normals).over(pivot)
    for k in range(0, 1000, 37):
        alone = wind_actions(exposed, np.array(gusts[k]), **factors)
        assert together.force[k] == pytest.approx(alone.force, rel=1e-12)
        assert together.uplift[k] == pytest.approx(alone.uplift, rel=1e-12)
        assert moments[k] == pytest.approx(
            WindMoments.of(alone, normals).over(pivot[k]), rel=1e-9, abs=1e-9
        )


def test_weighed_piece_weighs_what_the_scale_said():
    parts = (*tower(8, 0.6, 0.35, 0.2, 1.2)[:-1],)
    named = tuple(replace(part, density=None, material="softwood plywood") for part in parts)
    found = examine(replace(design(*named), weighed=17.5)).structure
    for weighing in ("light", "typical", "heavy"):
        assert found.mass(weighing) == pytest.approx(17.5)
