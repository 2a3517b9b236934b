"""EN 1991-1-4 between and beyond its printed values."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.en1991 import (
    basic_velocity,
    boards,
    edged_sections,
    peak_pressure,
    roofs,
    round_sections,
    slenderness,
)

heights = st.floats(0.0, 199.0)
TERRAINS = ("0", "I", "II", "III", "IV")


def test_terrains_are_the_five_of_the_standard():
    assert peak_pressure.terrains() == TERRAINS


@given(heights, st.sampled_from(TERRAINS))
def test_pressure_never_falls_with_height(z, terrain):
    lower, upper = peak_pressure.peak_velocity_pressure(26.0, [z, z + 1.0], terrain)
    assert lower <= upper


@given(heights)
def test_rougher_ground_never_has_more_pressure(z):
    pressures = [float(peak_pressure.peak_velocity_pressure(26.0, z, t)) for t in TERRAINS]
    assert pressures == sorted(pressures, reverse=True)


@given(heights, st.floats(1.0, 60.0), st.floats(0.2, 3.0))
def test_pressure_goes_with_the_square_of_the_speed(z, speed, times):
    one = peak_pressure.peak_velocity_pressure(speed, z, "II")
    assert peak_pressure.peak_velocity_pressure(speed * times, z, "II") == pytest.approx(
        one * times**2
    )


@given(heights, st.floats(1.0, 60.0))
def test_gust_of_the_peak_pressure_is_mean_wind_and_seven_turbulences(z, speed):
    """q_p = (1 + 7 I_v) rho v_m^2/2, so the gust is v_m sqrt(1 + 7 I_v) (Eq. 4.8)."""
    gust = peak_pressure.gust_of_pressure(peak_pressure.peak_velocity_pressure(speed, z, "III"))
    v_m = peak_pressure.mean_speed(speed, z, "III")
    I_v = peak_pressure.turbulence_intensity(z, "III")
    assert gust == pytest.approx(v_m * np.sqrt(1.0 + 7.0 * I_v))


def test_annex_may_say_turbulence_density_and_orography():
    plain = peak_pressure.peak_velocity_pressure(26.0, 5.0, "II")
    thinner = peak_pressure.peak_velocity_pressure(26.0, 5.0, "II", density=1.2)
    assert thinner == pytest.approx(plain * 1.2 / 1.25)
    calm = peak_pressure.peak_velocity_pressure(26.0, 5.0, "II", turbulence=0.0)
    assert calm == pytest.approx(0.625 * peak_pressure.mean_speed(26.0, 5.0, "II") ** 2)
    crest = peak_pressure.peak_velocity_pressure(26.0, 5.0, "II", orography=1.2)
    assert plain * 1.2 < crest < plain * 1.2**2


@given(st.floats(0.002, 0.6))
def test_probability_and_factor_are_inverse(p):
    factor = basic_velocity.probability_factor(p)
    assert basic_velocity.yearly_probability(factor) == pytest.approx(p)


def test_basic_velocity_is_that_of_fifty_years():
    assert basic_velocity.probability_factor(0.02) == pytest.approx(1.0)
    assert basic_velocity.basic_velocity(26.0, 0.9, 0.95, 1.04) == pytest.approx(
        26.0 * 0.9 * 0.95 * 1.04
    )


@given(st.floats(1.0, 70.0), st.floats(1.0, 70.0), st.floats(0.0, 1.0))
def test_more_slender_never_takes_less(a, b, solidity):
    low, high = sorted((a, b))
    less, more = slenderness.end_effect_factor([low, high], solidity)
    assert less <= more + 1e-15  # equal where the curve is level, but for the last digit


@given(st.floats(1.0, 70.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_more_solid_is_never_less_lessened(slender, a, b):
    low, high = sorted((a, b))
    open_, solid = slenderness.end_effect_factor(slender, [low, high])
    assert solid <= open_ <= 1.0


@given(st.floats(0.05, 60.0))
def test_rectangle_has_no_jump(ratio):
    here, beside = edged_sections.rectangle([ratio, ratio * 1.001], 1.0)
    assert abs(here - beside) < 0.005


@pytest.mark.parametrize("sides", range(5, 40))
def test_more_sides_never_take_more(sides):
    for reynolds in (1e4, 2.7e5, 1e6):
        fewer, more = (
            edged_sections.polygon_force_coefficient(n, reynolds) for n in (sides, sides + 1)
        )
        assert more <= fewer


@given(st.floats(1e-5, 0.1), st.floats(1e4, 1e7))
def test_cylinder_lies_between_its_bounds(k_over_b, reynolds):
    c = round_sections.cylinder(reynolds, k_over_b)
    assert 0.3 < c <= 1.2


@given(st.floats(1e-5, 0.05), st.floats(1e-5, 0.05), st.floats(1e4, 1e7))
def test_rougher_cylinder_never_takes_less(a, b, reynolds):
    low, high = sorted((a, b))
    assert round_sections.cylinder(reynolds, low) <= round_sections.cylinder(reynolds, high)


@given(st.floats(1e-5, 0.05))
def test_cylinder_falls_up_to_where_its_drop_ends_and_then_rises(k_over_b):
    end = round_sections.drop_ends(k_over_b)
    before, at, after = round_sections.cylinder([end * 0.9, end, end * 3.0], k_over_b)
    assert before >= at
    assert after >= at - 1e-6


def test_ball_near_the_ground_takes_more():
    """EN 1991-1-4 7.10: 1.6 times as much where the gap is not above b/2."""
    near, clear = round_sections.sphere([0.1, 0.6], 1.0)
    assert near == pytest.approx(1.6 * clear)


def test_ball_takes_at_least_what_rough_ones_were_measured_to():
    """Measured rough spheres stand at 0.40 to 0.47 (OpenStax 0.45; Hoerner)."""
    assert round_sections.sphere(1.0, 1.0) >= 0.47


@given(st.floats(0.1, 30.0))
def test_wall_has_no_jump_in_its_length(ratio):
    here, beside = boards.wall([ratio, ratio * 1.001], 1.0)[0]
    assert abs(here - beside) < 0.005


@given(st.floats(0.3, 30.0))
def test_wall_is_pushed_toward_its_windward_end(ratio):
    mean, off = boards.wall(ratio, 1.0)
    assert 1.2 <= mean <= 3.4
    assert 0.0 <= off <= 0.25


@given(st.floats(0.05, 0.6), st.floats(0.05, 0.6))
def test_more_lath_never_takes_less(a, b):
    low, high = sorted((a, b))
    assert boards.plane_lattice(low, 2.0, 1.0) <= boards.plane_lattice(high, 2.0, 1.0) + 1e-12


@given(st.sampled_from(roofs.CANOPIES), st.floats(0.0, 1.2), st.floats(0.0, 1.0))
def test_free_roof_has_no_jump_and_keeps_its_signs(kind, angle, blockage):
    here, beside = (roofs.canopy(kind, a, blockage) for a in (angle, angle + 1e-4))
    assert np.abs(np.subtract(here, beside)).max() < 0.005
    assert here[0] > 0.0 > here[1]


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: peak_pressure.roughness_factor(1.0, "V"), 'terrain: found "V"'),
        (lambda: peak_pressure.roughness_factor(-1.0, "II"), "height"),
        (lambda: peak_pressure.roughness_factor(201.0, "II"), "at most 200 m"),
        (lambda: peak_pressure.mean_speed(-1.0, 1.0, "II"), "speed"),
        (lambda: basic_velocity.basic_velocity(26.0, direction=0.0), "direction"),
        (lambda: basic_velocity.probability_factor(1.0), "probability"),
        (lambda: basic_velocity.probability_factor(1.0 - 1e-12, shape=0.5), "probability"),
        (lambda: edged_sections.polygon_force_coefficient(4, 1e5), "sides: found 4"),
        (lambda: edged_sections.rectangle(0.0, 1.0), "depth"),
        (lambda: round_sections.cylinder(0.0, 1e-3), "reynolds"),
        (lambda: round_sections.surface_roughness("velvet"), 'surface: found "velvet"'),
        (lambda: slenderness.effective_slenderness(1.0, 1.0, "flat"), "kind"),
        (lambda: boards.wall_coefficients(3.0, 0.7), "solidity"),
        (lambda: roofs.canopy("hip", 0.1, 0.0), "kind"),
        (lambda: roofs.canopy("monopitch", -0.1, 0.0), "angle"),
        (lambda: roofs.flat_roof_suction("J", 1.0), "zone"),
    ],
)
def test_what_lies_outside_is_refused_by_name(call, named):
    with pytest.raises(ValueError, match=named):
        call()


def test_canopies_are_told_by_their_angle_in_radians():
    assert roofs.canopy("monopitch", math.radians(30.0), 0.0)[1] == pytest.approx(-1.8)
