"""The yield modes held against statics, their limits and their symmetries."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from yardfast.checks.timber.nds.dowel_bearing import ACROSS_GRAIN, dowel_bearing
from yardfast.checks.timber.nds.lateral import (
    MODES,
    main_bearing_length,
    single_shear,
)

INCH = 0.0254
THIN = 2.2
"""K_D up to 0.17 in, the same for all modes."""

lengths = st.floats(0.004, 0.12)
strengths = st.floats(10e6, 70e6)
thin_shanks = st.floats(0.0018, 0.17 * INCH)
steels = st.floats(300e6, 900e6)
joints = st.tuples(thin_shanks, lengths, lengths, strengths, strengths, steels)


def by_statics(mode, D, ls, lm, Fes, Fem, Fyb):
    """Balance moments about the shear plane: pressure q, plastic hinges Fyb D^3/6 (Johansen 1949).

    A piece either holds a hinge at the depth P/q where shear vanishes, or is crushed to its far
    face by a straight shank that turns at x = (P/q + l)/2.
    """
    hinges = {"II": (), "IIIm": ("side",), "IIIs": ("main",), "IV": ("side", "main")}[mode]
    pieces = {"side": (Fes * D, ls), "main": (Fem * D, lm)}

    def out_of_balance(P):
        total = -len(hinges) * Fyb * D**3 / 6.0
        for piece, (q, length) in pieces.items():
            x = (P / q + length) / 2.0
            total += P**2 / (2.0 * q) if piece in hinges else q * (x**2 - length**2 / 2.0)
        return total

    most = 1e3 * max(q * length for q, length in pieces.values()) + 1e6
    return brentq(out_of_balance, 0.0, most, xtol=1e-9, rtol=1e-14)


@given(joints)
def test_every_mode_balances(joint):
    D, ls, lm, Fes, Fem, _ = joint
    modes = single_shear(*joint).modes
    assert modes["Im"] * THIN == pytest.approx(D * lm * Fem)
    assert modes["Is"] * THIN == pytest.approx(D * ls * Fes)
    for mode in ("II", "IV"):
        assert modes[mode] * THIN == pytest.approx(by_statics(mode, *joint), rel=1e-6)
    for mode in ("IIIm", "IIIs"):
        assert modes[mode] * THIN == pytest.approx(by_statics(mode, *joint), rel=1e-6)


def test_rigid_shank_in_two_equal_pieces():
    """Johansen 1949: (sqrt 2 - 1) of the crushing load."""
    modes = single_shear(0.003, 0.02, 0.02, 30e6, 30e6, 600e6).modes
    assert modes["II"] == pytest.approx((2.0**0.5 - 1.0) * modes["Im"])


@pytest.mark.parametrize(
    ("changed", "mode"),
    [
        ({"side_length": 1e-4}, "Is"),
        ({"main_length": 1e-4}, "Im"),
        ({"bending_yield": 1e13}, "II"),
        ({"main_length": 1.0, "side_length": 1.0}, "IV"),
        ({"main_length": 1.0, "side_length": 0.012}, "IIIs"),
        ({"main_length": 0.012, "side_length": 1.0}, "IIIm"),
    ],
    ids=["thin side", "thin main", "rigid shank", "slender", "thinnish side", "thinnish main"],
)
def test_limiting_joint_yields_as_it_must(changed, mode):
    joint = {
        "diameter": 0.0033,
        "side_length": 0.02,
        "main_length": 0.02,
        "side_bearing": 25e6,
        "main_bearing": 25e6,
        "bending_yield": 690e6,
    }
    assert single_shear(**{**joint, **changed}).mode == mode


def test_slender_shank_does_not_care_how_thick_the_pieces_are():
    thick, thicker = single_shear(0.003, [0.2, 0.4], [0.3, 0.9], 25e6, 30e6, 690e6).value
    assert thick == pytest.approx(thicker)


@given(joints)
def test_pieces_change_places_with_their_modes(joint):
    D, ls, lm, Fes, Fem, Fyb = joint
    one, other = (
        single_shear(*joint).modes,
        single_shear(D, lm, ls, Fem, Fes, Fyb).modes,
    )
    exchanged = {"Im": "Is", "Is": "Im", "II": "II", "IIIm": "IIIs", "IIIs": "IIIm", "IV": "IV"}
    for mode, swapped in exchanged.items():
        assert one[mode] == pytest.approx(other[swapped], rel=1e-9)


@given(joints, st.sampled_from(range(1, 6)), st.floats(1.0, 3.0))
def test_more_of_anything_never_holds_less(joint, which, factor):
    more = [value * (factor if place == which else 1.0) for place, value in enumerate(joint)]
    assert single_shear(*more).value >= single_shear(*joint).value * (1.0 - 1e-9)


@given(joints, st.floats(0.1, 1.0))
def test_joint_of_half_the_size_holds_a_quarter(joint, scale):
    D, ls, lm, *strength = joint
    smaller = single_shear(scale * D, scale * ls, scale * lm, *strength).value
    assert smaller == pytest.approx(scale**2 * single_shear(*joint).value)


def test_value_is_the_least_mode():
    limits = single_shear(0.003, [0.001, 0.2], [0.3, 0.001], 25e6, 30e6, 690e6)
    assert tuple(limits.modes) == MODES
    assert limits.mode.tolist() == ["Is", "Im"]
    assert limits.value.tolist() == [limits.modes["Is"][0], limits.modes["Im"][1]]


@pytest.mark.parametrize(
    ("inches", "K_D"), [(0.10, 2.2), (0.17, 2.2), (0.20, 2.5), (0.24, 2.9)], ids=str
)
def test_reduction_under_a_quarter_inch(inches, K_D):
    """NDS 2018 Table 12.3.1B: 2.2 up to 0.17 in, then 10 D + 0.5."""
    D = inches * INCH
    modes = single_shear(D, 0.02, 0.03, 25e6, 30e6, 690e6, ACROSS_GRAIN).modes
    assert modes["Is"] == pytest.approx(D * 0.02 * 25e6 / K_D)
    assert modes["IV"] * K_D == pytest.approx(by_statics("IV", D, 0.02, 0.03, 25e6, 30e6, 690e6))


def test_reduction_from_a_quarter_inch_grows_across_the_grain():
    """NDS 2018 Table 12.3.1B: 4, 3.6, 3.2 times 1 + 0.25 theta/90."""
    D = 0.00635
    joint = (D, 0.02, 0.03, 25e6, 30e6, 310e6)
    for angle, K_theta in ((0.0, 1.0), (np.pi / 4.0, 1.125), (ACROSS_GRAIN, 1.25)):
        modes = single_shear(*joint, angle).modes
        assert modes["Im"] * 4.0 * K_theta == pytest.approx(D * 0.03 * 30e6)
        assert modes["II"] * 3.6 * K_theta == pytest.approx(by_statics("II", *joint))
        for mode in ("IIIm", "IIIs", "IV"):
            assert modes[mode] * 3.2 * K_theta == pytest.approx(by_statics(mode, *joint))


def test_thin_root_of_a_thick_screw_takes_both_reductions():
    """NDS 2018 Table 12.3.1B note 1: K_D K_theta."""
    D = 0.173 * INCH
    modes = single_shear(D, 0.02, 0.03, 25e6, 30e6, 480e6, ACROSS_GRAIN, 0.25 * INCH).modes
    assert modes["Is"] * 2.23 * 1.25 == pytest.approx(D * 0.02 * 25e6)


def test_dowel_bearing_turns_from_along_to_across():
    """Hankinson's formula at 45 degrees is the harmonic mean."""
    along, between, across = dowel_bearing(0.5, 0.0127, [0.0, np.pi / 4.0, ACROSS_GRAIN])
    assert along > between > across
    assert between == pytest.approx(2.0 / (1.0 / along + 1.0 / across))


def test_direction_does_not_matter_under_a_quarter_inch():
    assert len(set(dowel_bearing(0.5, 0.0063, [0.0, 0.5, ACROSS_GRAIN]).tolist())) == 1


@given(st.floats(0.2, 0.8), st.floats(0.00635, 0.0254), st.floats(0.0, 1.57))
def test_across_the_grain_is_the_weakest_from_a_quarter_inch(G, D, angle):
    assert dowel_bearing(G, D) <= dowel_bearing(G, D, angle) * (1.0 + 1e-12)


def test_bearing_length_loses_half_the_tip():
    assert main_bearing_length(0.05, 0.006) == pytest.approx(0.047)
    assert main_bearing_length(0.05, 0.0) == pytest.approx(0.05)
    assert main_bearing_length(0.001, 0.006) == 0.0


def test_array_equals_loop_over_its_values():
    random, n = np.random.default_rng(11), 1000
    arguments = (
        random.uniform(0.002, 0.02, n),
        random.uniform(0.005, 0.1, n),
        random.uniform(0.005, 0.1, n),
        random.uniform(10e6, 70e6, n),
        random.uniform(10e6, 70e6, n),
        random.uniform(300e6, 900e6, n),
        random.uniform(0.0, ACROSS_GRAIN, n),
    )
    at_once = single_shear(*arguments)
    one_by_one = [single_shear(*values) for values in zip(*arguments, strict=True)]
    np.testing.assert_allclose(at_once.value, [float(x.value) for x in one_by_one], rtol=1e-13)
    assert at_once.mode.tolist() == [str(x.mode) for x in one_by_one]
    G, D, angle = random.uniform(0.3, 0.75, n), arguments[0], arguments[-1]
    np.testing.assert_allclose(
        dowel_bearing(G, D, angle),
        [float(dowel_bearing(*each)) for each in zip(G, D, angle, strict=True)],
        rtol=1e-13,
    )


def test_arguments_broadcast():
    limits = single_shear(np.full((5, 1), 0.003), 0.02, np.full(7, 0.03), 25e6, 30e6, 690e6)
    assert {value.shape for value in limits.modes.values()} == {(5, 7)}
    assert limits.mode.shape == (5, 7)


@pytest.mark.parametrize("place", range(6))
def test_nothing_may_be_zero(place):
    joint = [0.003, 0.02, 0.03, 25e6, 30e6, 690e6]
    joint[place] = 0.0
    with pytest.raises(ValueError, match="found 0, expected above 0"):
        single_shear(*joint)
