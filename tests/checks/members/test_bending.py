"""Beam relations held against numerical integration and the constants of the Wood Handbook."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from yardfast.checks.members import bending

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


@given(sizes, sizes, loads)
def test_greatest_shear_stress_by_the_first_moment(width, depth, force):
    """V Q/(I b) at mid-depth, Q the first moment of the half above it."""
    Q = quad(lambda y: width * y, 0.0, depth / 2.0)[0]
    inertia = quad(lambda y: width * y**2, -depth / 2.0, depth / 2.0)[0]
    found = bending.rectangle_shear_stress(force, width, depth)
    assert found == pytest.approx(force * Q / (inertia * width))


@pytest.mark.parametrize(
    ("support", "k"),
    [
        ("cantilever, load at its end", 1 / 3),
        ("cantilever, even load", 1 / 8),
        ("span, even load", 5 / 384),
    ],
)
def test_deflection_constants_of_the_wood_handbook(support, k):
    """Wood Handbook FPL-GTR-190 Table 9-1 (memory): k_b of W L^3/(E I), W the whole load."""
    L, W = 2.0, 100.0
    if support.startswith("span"):
        found = bending.span_deflection(W / L, L, EI)
    elif support.endswith("even load"):
        found = bending.overhang_deflection(W / L, L, EI)
    else:
        found = bending.cantilever_deflection(W, L, L, EI)
    assert found == pytest.approx(k * W * L**3 / EI)


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


@given(st.floats(0.05, 1.8), lengths, loads)
def test_what_turns_a_cantilever_is_two_forces_close_together(share, length, moment):
    """A moment is a force down at one place and the like up just before it: M = F d, d to 0."""
    at, d = share * length, 1e-5 * length
    out, back = (
        bending.cantilever_deflection(moment / d, at + end, length, EI) for end in (d / 2, -d / 2)
    )
    found = bending.turned_deflection(moment, at, length, EI)
    assert found == pytest.approx(float(out - back), rel=1e-4)


def test_strip_moments_by_integration():
    """Half the load as reaction; the moment at mid-span, and at the root of an overhang."""
    w, s = 120.0, 1.4
    middle = w * s / 2.0 * s / 2.0 - quad(lambda x: w * (s / 2.0 - x), 0.0, s / 2.0)[0]
    assert bending.span_moment(w, s) == pytest.approx(middle)
    root = quad(lambda x: w * x, 0.0, s)[0]
    assert bending.overhang_moment(w, s) == pytest.approx(root)


@given(st.floats(1e6, 5e7), st.floats(1e6, 1e9))
def test_beam_stability_is_the_lesser_root(strength, buckling):
    """Eq. 3.3-6 solves 0.95 C^2 - (1 + r) C + r = 0, r = F_bE/F_b*: Ylinen's interaction."""
    r = buckling / strength
    root = np.roots([0.95, -(1.0 + r), r]).real.min()
    found = bending.beam_stability(strength, buckling)
    assert found == pytest.approx(root, rel=1e-6)
    assert 0.0 < found <= 1.0


def test_stability_at_its_limits():
    """A stocky member keeps its strength; a slender one keeps what turns it over sideways."""
    assert bending.beam_stability(1.0e7, 1.0e12) == pytest.approx(1.0, abs=1e-4)
    assert bending.beam_stability(1.0e9, 1.0e5) * 1.0e9 == pytest.approx(1.0e5, rel=1e-3)


def test_slenderness_changes_rule_at_seven_depths():
    """NDS 2018 Table 3.3.3, cantilever with a load at its end (memory)."""
    b, d = 0.038, 0.089
    assert bending.slenderness(6.9 * d, b, d) ** 2 * b**2 / d == pytest.approx(1.87 * 6.9 * d)
    assert bending.slenderness(8.0 * d, b, d) ** 2 * b**2 / d == pytest.approx(14.52 * d)
    assert bending.buckling_stress(4.0e9, 10.0) == pytest.approx(4.8e7)


def test_bent_both_ways_adds_up_and_grows_near_turning_over():
    assert bending.both_ways_use(2.0, 4.0, 3.0, 6.0, np.inf) == pytest.approx(1.0)
    assert bending.both_ways_use(2.0, 4.0, 3.0, 6.0, 4.0) == pytest.approx(0.5 + 0.5 / 0.75)
    assert bending.both_ways_use(2.0, 4.0, 3.0, 6.0, 2.0) == np.inf


def test_arrays_equal_the_loop_over_their_values():
    rng = np.random.default_rng(5)
    a, b, c, d = rng.uniform(0.1, 3.0, (4, 1000))
    for relation, given_ in (
        (bending.rectangle_modulus, (a, b)),
        (bending.rectangle_inertia, (a, b)),
        (bending.round_inertia, (a + b, b)),
        (bending.rectangle_shear_stress, (a, b, c)),
        (bending.cantilever_deflection, (a, b, c, d)),
        (bending.turned_deflection, (a, b, c, d)),
        (bending.overhang_deflection, (a, b, c)),
        (bending.span_moment, (a, b)),
        (bending.overhang_moment, (a, b)),
        (bending.span_deflection, (a, b, c)),
        (bending.slenderness, (a, b, c)),
        (bending.buckling_stress, (a, b)),
        (bending.beam_stability, (a, b)),
        (bending.both_ways_use, (a, b, c, d, a + b)),
    ):
        one_by_one = [float(relation(*each)) for each in zip(*given_, strict=True)]
        np.testing.assert_allclose(relation(*given_), one_by_one, rtol=1e-12)


@pytest.mark.parametrize("wrong", [0.0, -1.0])
def test_sizes_are_above_nought(wrong):
    with pytest.raises(ValueError, match="above 0"):
        bending.rectangle_modulus(wrong, 1.0)
    with pytest.raises(ValueError, match="above 0"):
        bending.beam_stability(1.0, wrong)
