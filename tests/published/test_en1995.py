"""EN 1995-1-1 against printed answers and against the yield theory that NDS prints otherwise.

P&K: Porteous and Kermani, Structural Timber Design to Eurocode 5 (2007), example 10.13.5, a public
extract. Open: worked cases in the test data of an open library for EN 1995-1-1, two digits printed.
"""

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.checks.joints.combined import squares_use
from yardfast.checks.timber.en1995.axial import (
    head_pull_through,
    nail_depth_factor,
    nail_withdrawal,
    screw_withdrawal,
)
from yardfast.checks.timber.en1995.lateral import johansen, under_plate, yield_moment
from yardfast.checks.timber.en1995.members import (
    both_ways,
    column_factor,
    size_factor,
    turning_factor,
)
from yardfast.checks.timber.en1995.stuff import find_class, k_mod
from yardfast.checks.timber.nds.lateral import single_shear

NMM2 = 1.0e6


def test_nails_in_withdrawal_as_printed():
    """P&K: 2.65 x 40 mm nail, plywood 15 mm on C18; 25 mm is 9.43 d, and 62 mm apart hold 0.36.

    Service class 3, instantaneous load (k_mod 0.90), gamma_M 1.3, driven near fibre saturation.
    """
    d, reach = 0.00265, 0.025
    assert reach / d == pytest.approx(9.43, abs=0.005)
    assert nail_depth_factor(reach, d) == pytest.approx(9.43 / 4.0 - 2.0, abs=0.002)
    F = nail_withdrawal(d, reach, find_class("C18").density, wet=True)
    k = k_mod("solid", "instantaneous", dry=False)
    assert k == 0.90
    assert F * k / 1.3 / 0.36 == pytest.approx(62.0, abs=0.5)


def test_short_smooth_nails_hold_nothing_and_from_12_diameters_all():
    assert nail_depth_factor(0.0231, 0.003) == 0.0
    assert nail_depth_factor(0.024, 0.003) == pytest.approx(0.0)
    assert nail_depth_factor(0.036, 0.003) == pytest.approx(1.0)
    assert nail_depth_factor(0.06, 0.003) == 1.0


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("C16", (16, 8.5, 17, 2.2, 3.2, 8000, 5400, 310)),
        ("C18", (18, 10, 18, 2.2, 3.4, 9000, 6000, 320)),
        ("C24", (24, 14.5, 21, 2.5, 4.0, 11000, 7400, 350)),
        ("D30", (30, 18, 24, 5.3, 3.9, 11000, 9200, 530)),
    ],
)
def test_classes_are_as_printed(name, values):
    """EN 338:2016 Table 1, as an open library holds it."""
    one = find_class(name)
    found = (one.bending, one.tension, one.compression, one.across, one.shear)
    found = (*found, one.stiffness, one.least_stiffness)
    assert [each / NMM2 for each in found] == pytest.approx(values[:-1])
    assert one.density == values[-1]


TENSION = [
    ("C24", 100, 200, 0.6, 0.75),
    ("C24", 100, 100, 0.6, 1.38),
    ("C24", 200, 600, 0.6, 0.12),
    ("D30", 80, 120, 0.8, 0.90),
    ("D30", 100, 160, 0.8, 0.56),
    ("D30", 200, 300, 0.8, 0.15),
]


@pytest.mark.parametrize(("name", "b", "h", "k", "printed"), TENSION)
def test_drawn_pieces_as_printed(name, b, h, k, printed):
    """Open: 100 kN along b x h mm, gamma_M 1.3."""
    strength = find_class(name).tension * float(size_factor(h / 1000.0)) * k / 1.3
    assert 1.0e5 / (b * h * 1.0e-6) / strength == pytest.approx(printed, abs=0.005)


PRESSED = [
    ("C24", 100, 200, 0.6, 0.52),
    ("C24", 100, 100, 0.6, 1.03),
    ("C24", 200, 600, 0.6, 0.09),
    ("D30", 80, 120, 0.8, 0.71),
    ("D30", 100, 160, 0.8, 0.42),
    ("D30", 200, 300, 0.8, 0.11),
]


@pytest.mark.parametrize(("name", "b", "h", "k", "printed"), PRESSED)
def test_pressed_pieces_as_printed(name, b, h, k, printed):
    """Open: 100 kN along b x h mm that cannot give way, gamma_M 1.3."""
    used = 1.0e5 / (b * h * 1.0e-6) / (find_class(name).compression * k / 1.3)
    assert used == pytest.approx(printed, abs=0.005)


BENT = [
    ("D30", 100, 160, 0.8, 0.90),
    ("C24", 100, 200, 0.6, 1.03),
    ("C24", 100, 100, 0.6, 3.20),
    ("C24", 200, 600, 0.6, 0.07),
    ("D30", 80, 120, 0.8, 1.87),
    ("D30", 200, 300, 0.8, 0.13),
]


@pytest.mark.parametrize(("name", "b", "h", "k", "printed"), BENT)
def test_pieces_bent_both_ways_as_printed(name, b, h, k, printed):
    """Open: 5 kN m and 2 kN m about the axes of b x h mm, gamma_M 1.3."""
    wide, deep = b / 1000.0, h / 1000.0
    strength = find_class(name).bending * k / 1.3
    one = 5.0e3 / (wide * deep**2 / 6.0) / (strength * float(size_factor(deep)))
    other = 2.0e3 / (deep * wide**2 / 6.0) / (strength * float(size_factor(wide)))
    assert float(both_ways(one, other)) == pytest.approx(printed, abs=0.005)


SIZES = st.floats(0.005, 0.1)


@given(
    st.floats(0.002, 0.012), SIZES, SIZES, st.floats(10, 60), st.floats(10, 60), st.floats(300, 900)
)
def test_johansen_is_the_yield_theory_of_nds(d, side, main, f1, f2, bends):
    """The same six modes as NDS 12.3.1, which prints them otherwise and over R_d instead.

    M_y = F_yb D^3/6; EN adds 5 % to one hinge and 15 % to two (8.6). Under 1/4 in R_d is one K_D.
    """
    R_d = 2.2 if d <= 0.17 * 0.0254 else (10.0 * d / 0.0254 + 0.5 if d < 0.25 * 0.0254 else None)
    if R_d is None:
        return
    ours = johansen(d, side, main, f1 * NMM2, f2 * NMM2, bends * NMM2 * d**3 / 6.0)
    nds = single_shear(d, side, main, f1 * NMM2, f2 * NMM2, bends * NMM2, pi / 2.0).modes
    more = {"IIIm": 1.05, "IIIs": 1.05, "IV": 1.15}
    for mode, value in ours.items():
        assert float(value) == pytest.approx(float(nds[mode]) * R_d * more.get(mode, 1.0), rel=1e-6)


def test_a_thick_plate_holds_root_two_times_a_thin_one_of_a_slender_nail():
    """2.3 over 1.15 sqrt 2: what two hinges hold over one (EN 1995-1-1 8.9, 8.10)."""
    args = 0.003, 0.06
    f, M = 20.0 * NMM2, yield_moment(0.003, "nail")
    thin, thick = (min(under_plate(*args, t, f, M).values()) for t in (0.001, 0.003))
    assert thick / thin == pytest.approx(2.0**0.5)
    between = min(under_plate(*args, 0.00225, f, M).values())
    assert between == pytest.approx(0.5 * (thin + thick))


def test_yield_moment_of_a_nail_by_hand():
    """0.3 x 600 x 2.65^2.6 N mm (Eq. 8.14)."""
    assert yield_moment(0.00265, "nail") * 1000.0 == pytest.approx(180.0 * 2.65**2.6)


def test_heads_and_screws_by_hand():
    """70e-6 x 350^2 x 6^2 N; 0.52 x 6^-0.5 x 40^-0.1 x 350^0.8 x 6 x 40 x 6/8 N, four n^-0.1."""
    assert head_pull_through(0.006, 350.0, wet=False) == pytest.approx(8.575 * 36.0)
    one = 0.52 * 6**-0.5 * 40**-0.1 * 350**0.8 * 6 * 40 * 0.75
    assert screw_withdrawal(0.006, 0.04, 350.0, 1) == pytest.approx(one)
    assert screw_withdrawal(0.006, 0.04, 350.0, 4) == pytest.approx(one * 4**-0.1)


@given(st.floats(5.0, 40.0), st.floats(0.31, 6.0))
def test_k_c_is_the_lesser_root_of_its_quadratic(strength, ratio):
    """(1 - k)(1/l^2 - k) = 0.2 (l - 0.3) k/l^2: Ayrton and Perry's, solved otherwise than 6.25."""
    k = float(column_factor(strength, strength / ratio**2))
    left = (1.0 - k) * (ratio**-2 - k)
    assert left == pytest.approx(0.2 * (ratio - 0.3) * k / ratio**2, abs=1e-9)
    assert 0.0 < k <= min(1.0, ratio**-2)


def test_a_stocky_column_keeps_its_strength_and_a_slender_one_nearly_eulers():
    assert float(column_factor(20.0, 20.0 / 0.3**2)) == 1.0
    assert float(column_factor(20.0, 20.0 / 6.0**2)) * 36.0 == pytest.approx(1.0, abs=0.2)


def test_k_crit_has_no_jump():
    """0.75 and 1.4 are where its branches meet (6.34)."""
    ratio = np.array([0.75 - 1e-9, 0.75 + 1e-9, 1.4 - 1e-9, 1.4 + 1e-9, 3.0])
    found = turning_factor(20.0, 20.0 / ratio**2)
    assert found[:2] == pytest.approx([0.9975, 0.9975], abs=0.003)
    assert found[2] == pytest.approx(found[3], abs=0.001)
    assert found[4] == pytest.approx(1.0 / 9.0)


def test_pull_and_push_add_up_as_squares():
    """0.6 and 0.8 used alone are 1 together (Eq. 8.28)."""
    assert float(squares_use(60.0, 160.0, 100.0, 200.0)) == pytest.approx(1.0)
