"""Worked examples with printed answers, and hand checks worked apart from the code."""

import math

import numpy as np
import pytest

from yardfast.loads.asce7 import velocity_pressure as asce7
from yardfast.loads.asce7.gust_effect import gust_factor_used, rigid_gust_factor
from yardfast.loads.coefficients import force_coefficients, signs
from yardfast.loads.wind.dynamic_pressure import (
    dynamic_pressure,
    forecast_to_object,
)

FOOT = 0.3048
INCH = 0.0254
MPH = 0.44704
LBF = 4.4482216152605
G_EARTH = 9.80665


def test_kassimali_roof_pressure():
    """The same with Kh 0.80, Kd 0.85, 51 m/s: 1084.2 N/m2, worked by hand (not printed there)."""
    assert asce7.asce7_velocity_pressure(51, 0.80, Kd=0.85) == pytest.approx(1084.2, abs=0.05)


@pytest.mark.parametrize(
    ("edition", "kind", "feet_above_sea", "pascal"),
    [("7-22", None, 0, 1148), ("7-16", "square", 0, 1033), ("7-22", None, 5000, 958)],
)
def test_velocity_pressure_of_105_mph(edition, kind, feet_above_sea, pascal):
    """Exposure C, 5 ft up, worked by hand: 0.613 x 0.85 x 46.939^2, and its Kd 0.90, Ke 0.834."""
    q = asce7.asce7_velocity_pressure(
        105 * MPH,
        asce7.exposure_coefficient(5 * FOOT, "C", edition),
        Ke=asce7.elevation_factor(feet_above_sea * FOOT),
        Kd=1.0 if kind is None else asce7.directionality(kind, edition),
    )
    assert q == pytest.approx(pascal, abs=0.5)


@pytest.mark.parametrize(
    ("exposure", "ratio"),
    [("B", 0.755), ("C", 0.922), ("D", 1.015)],
)
def test_forecast_gust_near_the_ground(exposure, ratio):
    """Square roots of ASCE/SEI 7 Table 26.10-1 up to 15 ft (memory), by hand to three digits."""
    Kz = asce7.exposure_coefficient(4 * FOOT, exposure)
    assert forecast_to_object(1.0, Kz) == pytest.approx(ratio, abs=0.0005)


def test_hexagonal_post_by_hand():
    """12 in flat to flat, 48 in, 600 kg/m3: tips at 22.33 m/s, forecast 24.22 (C), 29.58 (B)."""
    across, height = 12 * INCH, 48 * INCH
    weight = 600 * math.sqrt(3) / 2 * across**2 * height * G_EARTH
    Cf = force_coefficients.hexagon_or_octagon(height / across)
    assert Cf == pytest.approx(1.1)
    corner_to_corner = across * 2 / math.sqrt(3)
    q = weight * across / 2 / (Cf * corner_to_corner * height * height / 2)
    gust = math.sqrt(q / dynamic_pressure(1.0))
    assert gust == pytest.approx(22.33, abs=0.005)
    for exposure, forecast in (("C", 24.22), ("B", 29.58)):
        Kz = asce7.exposure_coefficient(height, exposure)
        assert gust / forecast_to_object(1.0, Kz) == pytest.approx(forecast, abs=0.005)
    slides = math.sqrt(0.4 * weight / (Cf * corner_to_corner * height) / dynamic_pressure(1.0))
    assert slides == pytest.approx(28.25, abs=0.005)


def test_square_post_on_an_octagon_tips_over_its_diagonal():
    """12 x 12 x 48 in on an octagon 24 in x 1 1/2 in; coefficients by hand from Fig. 29.4-1."""
    side, across, top = 12 * INCH, 24 * INCH, 49.5 * INCH
    face = force_coefficients.square_face(top / side)
    diagonal = force_coefficients.square_diagonal(top / side)
    assert face == pytest.approx(1.352, abs=0.0005)
    assert diagonal == pytest.approx(1.052, abs=0.0005)
    assert force_coefficients.hexagon_or_octagon(top / across) == pytest.approx(1.035, abs=0.0005)
    assert diagonal * math.sqrt(2) * side > face * side


def test_round_post_by_hand():
    """200 x 1400 mm, 103.93 kg, rough: 32.56 m/s, below the switch at 5.3."""
    Cf = force_coefficients.round_section(7.0, "rough", False)
    assert Cf == pytest.approx(0.8)
    q = 103.93 * G_EARTH * 0.1 / (Cf * 0.2 * 1.4 * 0.7)
    assert math.sqrt(q / dynamic_pressure(1.0)) == pytest.approx(32.56, abs=0.005)
    assert q < force_coefficients.round_limit_pressure(0.2)


def test_sign_by_hand():
    """4 x 2 ft, lower edge 3 ft up, 105 mph, C, 7-22: Cf 1.75, G 0.911, 259.9 lbf."""
    Cf = signs.solid_sign(4 / 2, 2 / 5)
    G = rigid_gust_factor(5 * FOOT, 4 * FOOT, "C")
    assert Cf == pytest.approx(1.75, abs=0.005)
    assert pytest.approx(0.911, abs=0.0005) == G
    assert gust_factor_used(5 * FOOT, 4 * FOOT, "C") == G
    q = asce7.asce7_velocity_pressure(105 * MPH, asce7.exposure_coefficient(5 * FOOT, "C"))
    force = q * asce7.directionality("sign") * G * Cf * 8 * FOOT**2
    assert force / LBF == pytest.approx(259.9, abs=0.05)


def test_sign_at_the_ground_has_its_resultant_above_the_middle():
    """ASCE/SEI 7 Fig. 29.3-1 Note 3: 0.05 h at s/h = 1, nothing otherwise (memory)."""
    assert signs.resultant_rise(np.array([0.5, 1.0]), 6.0) == pytest.approx([0.0, 0.3])
    assert signs.case_b_eccentricity(5.0) == pytest.approx(1.0)
