"""Boards and lattices between, at and beyond their printed values."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.coefficients import signs

ratios = st.floats(0.02, 80.0)
clearances = st.floats(0.01, 1.0)
solidities = st.floats(0.0, 1.0)
solid_coefficients = st.floats(1.3, 1.95)


def test_solid_sign_is_linear_both_ways():
    """ASCE/SEI 7 Fig. 29.3-1 Note 5, between s/h 0.5 and 0.7, B/s 0.5 and 1 (memory)."""
    assert signs.solid_sign(0.75, 0.6) == pytest.approx((1.75 + 1.75 + 1.70 + 1.65) / 4)
    assert signs.solid_sign([0.75, 0.8], 0.7) == pytest.approx([1.675, 1.67])


def test_solid_sign_is_held_at_the_edges_of_the_table():
    assert signs.solid_sign([0.001, 45, 400], 0.05) == pytest.approx([1.95, 1.95, 1.95])
    assert signs.solid_sign([0.001, 400], 1.0) == pytest.approx([1.80, 1.30])


@given(ratios, clearances, clearances)
def test_sign_higher_above_the_ground_never_takes_less(ratio, a, b):
    near, clear = sorted((a, b), reverse=True)
    assert signs.solid_sign(ratio, clear) >= signs.solid_sign(ratio, near) - 1e-12


@given(ratios, clearances)
def test_solid_sign_stays_within_what_is_printed(ratio, clearance):
    assert 1.30 - 1e-12 <= signs.solid_sign(ratio, clearance) <= 1.95 + 1e-12


def test_case_c_exists_from_a_width_of_twice_the_height():
    mean, eccentricity = signs.case_c([1.999, 2.0], 0.5)
    assert np.isnan([mean[0], eccentricity[0]]).all()
    assert np.isfinite([mean[1], eccentricity[1]]).all()


@given(st.floats(2.0, 44.0), clearances)
def test_case_c_never_jumps(ratio, clearance):
    here, beside = (np.array(signs.case_c(x, clearance)) for x in (ratio, ratio + 1e-7))
    assert beside == pytest.approx(here, abs=1e-6)


@given(st.floats(2.0, 100.0), clearances)
def test_case_c_pushes_hardest_toward_the_windward_edge(ratio, clearance):
    _, eccentricity = signs.case_c(ratio, clearance)
    assert 0.0 < eccentricity < 0.5


def test_resultant_rises_although_height_over_top_is_a_rounding_below_1():
    assert signs.resultant_rise(np.nextafter(1.0, 0.0), 2.0) == pytest.approx(0.1)


@given(
    solidities, solidities, solid_coefficients, st.sampled_from(["flat", "round"]), st.booleans()
)
def test_more_solid_lattice_never_takes_less_wind(a, b, solid, members, above):
    thin, dense = sorted((a, b))
    assert signs.open_sign(thin, solid, members, above) <= signs.open_sign(
        dense, solid, members, above
    )


@given(st.floats(0.0, 0.7, exclude_max=True), solid_coefficients)
def test_flat_lattice_never_jumps_below_the_solid_class(eps, solid):
    beside = np.nextafter(eps, 0.0)
    assert signs.open_sign(eps, solid) == pytest.approx(signs.open_sign(beside, solid), abs=1e-12)


@given(st.floats(0.7, 1.0, exclude_max=True), solid_coefficients)
def test_lattice_never_jumps_within_the_solid_class(eps, solid):
    beside = np.nextafter(eps, 1.0)
    assert signs.open_sign(eps, solid) == pytest.approx(signs.open_sign(beside, solid), abs=1e-12)


def test_more_open_class_governs_just_past_a_bound():
    """ASCE/SEI 7 Fig. 29.4-2 (memory): 2.0 x 0.1 to 0.111, 1.8 x 0.3 to 0.3375."""
    assert signs.open_sign([0.1, 0.105, 0.115], 1.8) == pytest.approx([0.2, 0.2, 1.8 * 0.115])
    assert signs.open_sign([0.3, 0.33, 0.34], 1.8) == pytest.approx([0.54, 0.54, 1.6 * 0.34])


def test_dense_lattice_before_the_lowest_board_takes_no_less_than_the_densest_open_one():
    """ASCE/SEI 7 Fig. 29.4-2 (memory): 1.6 x 0.7 exceeds 1.30 x 0.836."""
    assert signs.open_sign([0.7, 0.71], 1.30) == pytest.approx([1.12, 1.12])


def test_dense_lattice_is_a_solid_sign_with_openings():
    """ASCE/SEI 7 Fig. 29.3-1 Note 2 (memory): 1.8 x 0.911 at 0.8, 1.8 at 1."""
    assert signs.open_sign([0.8, 1.0], 1.8) == pytest.approx([1.8 * 0.911, 1.8], abs=0.001)


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: signs.solid_sign(0.0, 0.5), "B/s: found 0"),
        (lambda: signs.solid_sign(1.0, 0.0), "s/h: found 0"),
        (lambda: signs.case_c(3.0, 1.1), "s/h: found 1.1"),
        (lambda: signs.openings_factor(1.01), "solidity: found 1.01"),
        (lambda: signs.open_sign(-0.1, 1.8), "solidity: found -0.1"),
        (lambda: signs.open_sign(0.1, 1.8, "oval"), 'members: found "oval"'),
    ],
    ids=["width", "on no ground", "below the ground", "too solid", "below nothing", "members"],
)
def test_what_no_figure_covers_is_refused_by_name(call, named):
    with pytest.raises(ValueError, match=named):
        call()
