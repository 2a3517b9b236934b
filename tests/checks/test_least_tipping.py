"""The least pressure that tips is found among a few directions: the same as among all of them."""

import numpy as np
import pytest
from designs import TOWERS, design, tower
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.acting.design_wind import design_wind
from yardfast.checks.examination import examine
from yardfast.checks.limits import stages
from yardfast.checks.stability.overturning import check_overturning
from yardfast.checks.stability.standing import Standing
from yardfast.checks.stability.tipping import tipping_pressure, tipping_pressures
from yardfast.checks.stability.wind_moments import WindMoments
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.flat import Panel
from yardfast.design.structure import build_structure
from yardfast.loads.combinations import factors
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site
from yardfast.materials import grounds
from yardfast.units.arrays import distinct


def tower_and_board(sizes, ground, tilt):
    """A tower with a leaning board beside it: how it stands, what it offers, and the wind."""
    place = Place(at=(0.7, 0.0, 1.0), tilt=np.radians(tilt))
    board = Part("board", Panel(0.5, 0.5, 0.02), place, density=500.0)
    structure = build_structure(design(*tower(**sizes), board, ground=ground))
    wind = method_of(Site("gust", 20.0, ground), structure.height)
    exposed = expose(structure, bare(structure, [None] * 5, wind), False)
    return Standing(structure, grounds.find_ground(ground), 0.0), exposed, wind


@pytest.mark.slow
@settings(max_examples=4, deadline=None)
@given(
    st.fixed_dictionaries(TOWERS),
    st.sampled_from(["wet lawn", "soft clay", "paving"]),
    st.floats(0.0, 80.0),
)
def test_looking_at_a_few_directions_finds_the_least_of_all(sizes, ground, tilt):
    """The leaning board beside the tower is lifted and pressed, as the wind blows."""
    standing, exposed, _ = tower_and_board(sizes, ground, tilt)
    for stage in stages(standing, exposed, slides=False):
        given_ = (standing, stage.actions, "typical", stage.low, stage.high)
        every, one = tipping_pressures(*given_), tipping_pressure(*given_)
        assert one.pressure == pytest.approx(float(every.min()), rel=1e-9)
        if np.isfinite(one.pressure):
            there = every[one.direction, :, one.line].min()
            assert there == pytest.approx(one.pressure, rel=1e-9)


@pytest.mark.slow
@settings(max_examples=6, deadline=None)
@given(
    st.fixed_dictionaries(TOWERS),
    st.sampled_from(["wet lawn", "soft clay", "paving"]),
    st.floats(0.0, 80.0),
)
def test_a_bound_leaves_out_no_wind_that_turns_it_over_most(sizes, ground, tilt):
    """Each wind alone is worked out whole: the worst of them is that of all."""
    standing, exposed, wind = tower_and_board(sizes, ground, tilt)
    actions = design_wind(exposed, wind)[1]
    used = factors(Site("gust", 20.0, ground))
    each = [
        check_overturning(standing, actions.some(np.array([row])), used)
        for row in range(actions.uplift.size)
    ]
    whole = check_overturning(standing, actions, used)
    most = max(one.demand / max(one.capacity, 1.0e-12) for one in each)
    assert whole.demand / max(whole.capacity, 1.0e-12) == pytest.approx(most, rel=1e-9)


def test_what_presses_into_soft_ground_balances_at_the_least_pressure():
    """At the pressure that is told wind and weight hold each other to a billionth, by moments about
    the line that lies where that pressure puts it."""
    sizes = {"sides": 4, "foot": 0.6, "bottom": 0.4, "top": 0.25, "height": 1.2}
    standing, exposed, _ = tower_and_board(sizes, "soft clay", 40.0)
    (stage, *_) = list(stages(standing, exposed, slides=False))
    winds = WindMoments.of(stage.actions, standing.normals)
    q = tipping_pressures(standing, stage.actions, "typical", 0.0, np.inf)
    weighing = standing.weight("typical")
    pressed = (winds.uplift < 0.0) & np.isfinite(q)
    assert pressed.any()
    at = np.where(np.isfinite(q), q, 0.0)
    pivot = standing.pivot(weighing.force[..., None] - at * winds.uplift)
    over, hold = at * winds.over(pivot), np.maximum(standing.hold(weighing, pivot), 0.0)
    assert over[pressed] == pytest.approx(hold[pressed], rel=1e-7)


@pytest.mark.parametrize("tilt", [20.0, 40.0, 70.0])
@pytest.mark.parametrize("foot", [0.5, 0.8])
def test_the_least_of_winds_that_press_and_winds_that_lift(tilt, foot):
    """On soft clay, of a piece that some winds press down and others lift: the least of all."""
    sizes = {"sides": 4, "foot": foot, "bottom": 0.4, "top": 0.25, "height": 1.2}
    standing, exposed, _ = tower_and_board(sizes, "soft clay", tilt)
    for stage in stages(standing, exposed, slides=False):
        given_ = (standing, stage.actions, "typical", stage.low, stage.high)
        every, one = tipping_pressures(*given_), tipping_pressure(*given_)
        assert one.pressure == pytest.approx(float(every.min()), rel=1e-9)


def test_light_it_tips_before_a_round_section_switches_and_heavy_after_it():
    """A log of 300 mm, 1 m high, upright on paving: W D/2 = c_f q D H H/2 about its edge, c_f 15 %
    off either way, q = rho v2/2 with rho 1.226 kg/m3. Whatever its ends lie on either side of."""
    log = Part("log", Solid(0, 0.3, 0.3, 1.0), density=300.0)
    found = examine(design(log, ground="paving"))
    limits, (switch,) = found.limits, distinct(found.exposed.limit)
    coefficient = float(found.exposed.coefficient.max())
    weight = 300.0 * np.pi / 4.0 * 0.3**2 * 9.80665

    def gust(strength):
        return np.sqrt(weight * 0.15 / (strength * coefficient * 0.3 * 0.5) * 2.0 / 1.226)

    assert limits.tipping == pytest.approx(gust(1.0), rel=1e-6)
    assert limits.tipping_low == pytest.approx(gust(1.15), rel=1e-6)
    assert limits.tipping_high == pytest.approx(gust(0.85), rel=1e-6)
    assert gust(1.0) < np.sqrt(2.0 * switch / 1.226) < gust(0.85)
