"""Beam relations held against numerical integration and the constants of the Wood Handbook."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from yardfast.checks.members import bending
from yardfast.checks.timber.nds import beams

sizes = st.floats(0.01, 0.3)
lengths = st.floats(0.2, 4.0)
loads = st.floats(1.0, 5000.0)
EI = 4000.0


@given(sizes, sizes)
def test_moments_of_area_by_integration(width, depth):
    inertia = quad(lambda y: width * y**2, -depth / 2.0, depth / 2.0)[0]
    assert bending.rectangle_inertia(width, depth) == pytest.approx(inertia)
    assert bending.rectangle_modulus(width, depth) == pytest.approx(inertia / (depth / 2.0))
    unit = quad(lambda y: 2.0 * np.sqrt(max(1.0 - y**2, 0.0)) * y**2, -1.0, 1.0)[0]
    disc = unit * (depth / 2.0) ** 4
    assert bending.round_inertia(depth) == pytest.approx(disc, rel=1e-6)
    assert bending.round_inertia(depth, depth / 2.0) == pytest.approx(disc * 15.0 / 16.0, rel=1e-6)


def test_deflection_constant_of_the_wood_handbook():
    """Wood Handbook FPL-GTR-190 Table 9-1 (memory): W L^3/(3 E I), W at the end."""
    found = bending.cantilever_deflection(100.0, 2.0, 2.0, EI)
    assert found == pytest.approx(100.0 * 2.0**3 / (3.0 * EI))


@given(st.floats(0.05, 1.8), lengths, loads)
def test_cantilever_bends_as_its_curvature_adds_up(share, length, force):
    """Two integrations of M/(E I) from the fixed end, the force within the length or beyond it."""
    at = share * length

    def curved(x, y):
        return [y[1], force * max(at - x, 0.0) / EI]

    bent = min(at, length)  # beyond the force it runs on straight: no step across the kink
    at_force = solve_ivp(
        curved, (0.0, bent), [0.0, 0.0], rtol=1e-10, atol=0.0, first_step=bent / 50
    )
    y, slope = at_force.y[:, -1]
    found = bending.cantilever_deflection(force, at, length, EI)
    assert found == pytest.approx(y + slope * (length - bent), rel=1e-6)


@given(st.floats(1e6, 5e7), st.floats(1e6, 1e9))
def test_beam_stability_is_the_lesser_root(strength, buckling):
    """Eq. 3.3-6 solves 0.95 C^2 - (1 + r) C + r = 0, r = F_bE/F_b*: Ylinen's interaction."""
    r = buckling / strength
    root = np.roots([0.95, -(1.0 + r), r]).real.min()
    found = beams.beam_stability(strength, buckling)
    assert found == pytest.approx(root, rel=1e-6)
    assert 0.0 < found <= 1.0


def test_stability_at_its_limits():
    """A stocky member keeps its strength; a slender one keeps what turns it over sideways."""
    assert beams.beam_stability(1.0e7, 1.0e12) == pytest.approx(1.0, abs=1e-4)
    assert beams.beam_stability(1.0e9, 1.0e5) * 1.0e9 == pytest.approx(1.0e5, rel=1e-3)


def test_slenderness_changes_rule_at_seven_depths():
    """NDS 2018 Table 3.3.3, cantilever with a load at its end (memory)."""
    b, d = 0.038, 0.089
    assert beams.slenderness(6.9 * d, b, d) ** 2 * b**2 / d == pytest.approx(1.87 * 6.9 * d)
    assert beams.slenderness(8.0 * d, b, d) ** 2 * b**2 / d == pytest.approx(14.52 * d)
    assert beams.buckling_stress(4.0e9, 10.0) == pytest.approx(4.8e7)


def test_bent_both_ways_adds_up_and_grows_near_turning_over():
    assert beams.both_ways_use(2.0, 4.0, 3.0, 6.0, np.inf) == pytest.approx(1.0)
    assert beams.both_ways_use(2.0, 4.0, 3.0, 6.0, 4.0) == pytest.approx(0.5 + 0.5 / 0.75)
    assert beams.both_ways_use(2.0, 4.0, 3.0, 6.0, 2.0) == np.inf


def test_arrays_equal_the_loop_over_their_values():
    rng = np.random.default_rng(5)
    a, b, c, d = rng.uniform(0.1, 3.0, (4, 1000))
    for relation, given_ in (
        (bending.rectangle_modulus, (a, b)),
        (bending.rectangle_inertia, (a, b)),
        (bending.round_inertia, (a + b, b)),
        (bending.cantilever_deflection, (a, b, c, d)),
        (beams.slenderness, (a, b, c)),
        (beams.buckling_stress, (a, b)),
        (beams.beam_stability, (a, b)),
        (beams.both_ways_use, (a, b, c, d, a + b)),
    ):
        one_by_one = [float(relation(*each)) for each in zip(*given_, strict=True)]
        np.testing.assert_allclose(relation(*given_), one_by_one, rtol=1e-12)


@pytest.mark.parametrize("wrong", [0.0, -1.0])
def test_sizes_are_above_nought(wrong):
    with pytest.raises(ValueError, match="above 0"):
        bending.rectangle_modulus(wrong, 1.0)
    with pytest.raises(ValueError, match="above 0"):
        beams.beam_stability(1.0, wrong)


@pytest.mark.parametrize(
    ("over_depth", "effective"), [(5.0, 2.06 * 5), (10.0, 1.63 * 10 + 3), (20.0, 1.84 * 20)]
)
def test_slenderness_between_supports_by_the_table(over_depth, effective):
    """R_B = sqrt(l_e d / b^2); l_e 2.06 l_u below 7 d, 1.63 l_u + 3 d up to 14.3 d, 1.84 l_u beyond
    (ANSI/AWC NDS-2018 Table 3.3.3 note 1, memory)."""
    b, d = 0.038, 0.14
    found = beams.slenderness_between(over_depth * d, b, d)
    assert found == pytest.approx(np.sqrt(effective * d * d / b**2), rel=1e-12)
