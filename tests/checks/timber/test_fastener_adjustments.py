"""Adjustment factors of NDS, and pull and push together."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.checks.joints.combined import USE, nails_use, screws_use
from yardfast.checks.timber.nds import adjustments


@pytest.mark.parametrize(
    ("load", "C_D"),
    [("wind or earthquake", 1.6), ("snow", 1.15), ("normal", 1.0), ("permanent", 0.9)],
)
def test_load_duration_is_the_printed_one(load, C_D):
    """NDS 2018 Table 2.3.2 (memory)."""
    assert adjustments.load_duration(load) == C_D


@pytest.mark.parametrize(
    ("load", "kind", "dry", "drying", "wetting", "wet"),
    [
        ("withdrawal", "smooth nail", 1.0, 0.25, 0.25, 1.0),
        ("withdrawal", "ring-shank nail", 1.0, 1.0, 1.0, 1.0),
        ("withdrawal", "toe-nailed", 1.0, 1.0, 1.0, 1.0),
        ("withdrawal", "screw", 1.0, 1.0, 0.7, 0.7),
        ("pull-through", "any", 1.0, 1.0, 0.7, 0.7),
        ("lateral", "under 1/4 in", 1.0, 0.7, 0.7, 0.7),
        ("lateral", "1/4 in and over", 1.0, 0.4, 0.7, 0.7),
    ],
)
def test_wet_service_is_the_printed_one(load, kind, dry, drying, wetting, wet):
    """NDS 2018 Table 11.3.3 (memory; 0.25 seen as AWC wrote it); pull-through: judgement."""
    found = [
        adjustments.wet_service(load, kind, made_wet=made, used_wet=used)
        for made, used in ((False, False), (True, False), (False, True), (True, True))
    ]
    assert found == [dry, drying, wetting, wet]


def test_heat_end_grain_and_toe_nails():
    """NDS 2018 Table 11.3.4; 12.2.1.2, 12.2 (seen); 12.5.2; 12.5.4 (0.67 seen)."""
    assert adjustments.temperature(70.0, wet=True) == 1.0
    assert adjustments.temperature(110.0, wet=False) == 0.8
    assert adjustments.temperature(125.0, wet=True) == 0.7
    with pytest.raises(ValueError, match="found 130 F"):
        adjustments.temperature(130.0, wet=False)
    assert adjustments.end_grain("withdrawal", "lag screw") == 0.75
    assert adjustments.end_grain("withdrawal", "nail") == 0.0
    assert adjustments.end_grain("withdrawal", "wood screw") == 0.0
    assert adjustments.end_grain("lateral", "any") == 0.67
    assert adjustments.toe_nail("withdrawal") == 0.67
    assert adjustments.toe_nail("lateral") == 0.83


def test_strength_basis_is_2_16_times_the_reference():
    """NDS 2018 Tables 2.3.5, 2.3.6: 3.32 x 0.65 = 2.158; commonly quoted as 2.16/phi."""
    assert adjustments.load_and_resistance() == pytest.approx(2.16, abs=0.005)
    assert adjustments.load_and_resistance() / 0.65 == pytest.approx(2.16 / 0.65, abs=0.005 / 0.65)


def test_unknown_case_is_refused_by_name():
    with pytest.raises(KeyError, match="staple"):
        adjustments.end_grain("withdrawal", "staple")
    with pytest.raises(KeyError, match="gust"):
        adjustments.load_duration("gust")


resistances = st.floats(1.0, 1e4)
angles = st.floats(0.0, np.pi / 2.0)


@given(st.floats(0.1, 1e4), angles, resistances, resistances)
def test_use_is_load_over_the_printed_resistance_at_its_angle(R, alpha, W, Z):
    """NDS 2018 Eq. 12.4-1 and 12.4-2."""
    T, V = R * np.sin(alpha), R * np.cos(alpha)
    screws = W * Z / (W * np.cos(alpha) ** 2 + Z * np.sin(alpha) ** 2)
    nails = W * Z / (W * np.cos(alpha) + Z * np.sin(alpha))
    assert screws_use(T, V, W, Z) == pytest.approx(R / screws, rel=1e-9)
    assert nails_use(T, V, W, Z) == pytest.approx(R / nails, rel=1e-9)


@given(angles, resistances, resistances)
def test_nails_are_never_used_less_than_screws(alpha, W, Z):
    T, V = 100.0 * np.sin(alpha), 100.0 * np.cos(alpha)
    assert nails_use(T, V, W, Z) >= screws_use(T, V, W, Z) * (1.0 - 1e-12)


@pytest.mark.parametrize("use", [nails_use, screws_use])
def test_one_load_alone_is_judged_alone(use):
    assert use(50.0, 0.0, 100.0, 40.0) == pytest.approx(0.5)
    assert use(0.0, 10.0, 100.0, 40.0) == pytest.approx(0.25)
    assert use(0.0, 10.0, 0.0, 40.0) == pytest.approx(0.25)
    assert use(0.0, 0.0, 0.0, 0.0) == 0.0
    assert use(1.0, 10.0, 0.0, 40.0) == np.inf


@pytest.mark.parametrize("use", [nails_use, screws_use])
def test_array_equals_loop_over_its_values(use):
    random = np.random.default_rng(3)
    arguments = [random.uniform(0.0, 500.0, 1000) for _ in range(4)]
    one_by_one = [float(use(*each)) for each in zip(*arguments, strict=True)]
    np.testing.assert_allclose(use(*arguments), one_by_one, rtol=1e-13)


def test_negative_load_is_refused():
    for use in USE.values():
        with pytest.raises(ValueError, match="tension: found -1"):
            use(-1.0, 0.0, 1.0, 1.0)
