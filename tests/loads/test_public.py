"""Velocity pressure as the public API gives it."""

from fractions import Fraction

import numpy as np
import pytest

import yardfast as yf
from yardfast import units
from yardfast.loads.public import velocity_pressure


def pascal(wind, **given):
    return velocity_pressure(wind, **given).to("Pa").magnitude


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ({"method": "ASCE 7-22"}, 1148),
        ({"method": "ASCE 7-16", "directionality": "square"}, 1033),
        ({"method": "ASCE 7-16", "directionality": 0.90}, 1033),
        ({"method": "ASCE 7-22", "elevation": "5000 ft"}, 958),
    ],
    ids=["7-22", "7-16, square", "7-16, 0.90", "7-22 at 5,000 ft"],
)
def test_105_mph_in_the_open_by_hand(given, expected):
    assert pascal("105 mph", exposure="C", height="5 ft", **given) == pytest.approx(
        expected, abs=0.5
    )


@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ({"method": "gust", "exposure": None}, 412.1),
        ({"method": "gust", "exposure": "shore"}, 412.1),
        ({"method": "forecast", "exposure": "houses and trees"}, 0.57 * 412.1),
        ({"method": "forecast", "exposure": "C"}, 0.85 * 412.1),
        ({"method": "forecast", "exposure": "D"}, 1.03 * 412.1),
        ({"method": "forecast", "exposure": "C", "topographic": 2.0}, 1.70 * 412.1),
    ],
    ids=[
        "gust",
        "gust by the shore",
        "forecast B",
        "forecast C",
        "forecast D",
        "forecast on a crest",
    ],
)
def test_58_mph_by_hand(given, expected):
    """0.613 V^2 is 412.1 Pa; Kz of ASCE/SEI 7 Table 26.10-1."""
    assert pascal("58 mph", height="5 ft", **given) == pytest.approx(expected, abs=0.1)


def test_air_below_the_sea_is_denser():
    given = {"method": "ASCE 7-22", "exposure": "C", "height": "5 ft"}
    assert pascal("105 mph", elevation="-200 ft", **given) > pascal("105 mph", **given)


def test_quantities_and_text_give_the_same():
    q = velocity_pressure("58 mph", method="forecast", exposure="open", height="20 ft")
    metric = velocity_pressure(
        units.quantity(25.92832, "speed"),
        method="forecast",
        exposure="C",
        height=units.quantity(6.096, "length"),
    )
    assert metric.to("Pa").magnitude == pytest.approx(q.to("Pa").magnitude)


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"method": "ASCE 7-10"}, "method: found 'ASCE 7-10', expected one of"),
        ({"exposure": "A"}, "exposure: found 'A', expected one of"),
        ({"exposure": None}, "exposure: found None, expected one of"),
        ({"wind": "58 ft"}, "wind: .*speed"),
        ({"wind": "-5 mph"}, "wind: "),
        ({"height": "5"}, "height: "),
        ({"height": 5.0}, "height: "),
        ({"elevation": "5 mph"}, "elevation: "),
        ({"elevation": "40000 ft"}, "elevation: found '40000 ft', expected from -2,000 to 30,000"),
        ({"elevation": "-5000 ft"}, "elevation: found '-5000 ft', expected from -2,000 to 30,000"),
        ({"height": "3281 ft"}, "height: found '3281 ft', expected from 0 to 3,280 ft"),
        ({"method": ["gust"]}, "method: found .'gust'., expected one of"),
        ({"exposure": ["C"]}, "exposure: found .'C'., expected one of"),
        ({"exposure": {"C": 1}}, "exposure: found .'C': 1., expected one of"),
        ({"topographic": True}, "topographic: found True, expected a number above 0"),
        ({"topographic": None}, "topographic: found None, expected a number above 0"),
        ({"topographic": 10**400}, "topographic: found 10*…, expected a number above 0"),
        ({"method": "ASCE 7-16", "directionality": ["square"]}, "directionality: found .'square'"),
        ({"wind": ["58 mph"]}, "wind: "),
        ({"topographic": 0.0}, "topographic: found 0.0, expected a number above 0"),
        ({"topographic": "1"}, "topographic: found '1', expected a number above 0"),
        ({"directionality": 0.9}, "directionality: found 0.9, expected none with method"),
        ({"method": "gust", "topographic": 1.2}, "topographic: found 1.2, expected 1.0 with"),
        ({"method": "ASCE 7-22", "directionality": "square"}, "directionality: found 'square'"),
        ({"method": "ASCE 7-16"}, "directionality: found None, expected with method"),
        ({"method": "ASCE 7-16", "directionality": "sqare"}, "directionality: found 'sqare'"),
        ({"method": "ASCE 7-16", "directionality": 1.5}, "directionality: found 1.5"),
        ({"method": "ASCE 7-16", "directionality": True}, "directionality: found True"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_wrong_argument_is_refused_by_name(changed, named):
    given = {"wind": "58 mph", "method": "forecast", "exposure": "C", "height": "5 ft", **changed}
    with pytest.raises(ValueError, match=named):
        velocity_pressure(given.pop("wind"), **given)


@pytest.mark.parametrize("Kzt", [np.float32(1.25), np.int64(2), Fraction(5, 4), 2])
def test_any_real_number_serves_as_a_factor(Kzt):
    given = {"method": "forecast", "exposure": "C", "height": "5 ft"}
    level = pascal("58 mph", **given)
    assert pascal("58 mph", topographic=Kzt, **given) == pytest.approx(float(Kzt) * level)
    site = {"method": "ASCE 7-16", "exposure": "C", "height": "5 ft"}
    half = pascal("105 mph", directionality=np.float32(0.5), **site)
    assert half == pytest.approx(pascal("105 mph", directionality=0.5, **site))


@pytest.mark.parametrize("method", ["ASCE 7-16", "ASCE 7-22"])
def test_height_is_taken_as_far_as_the_standard_s_formula(method):
    # ASCE/SEI 7-16: z_g of Table 26.11-1, 900 ft in C; 7-22: Note 1 of Table 26.10-1, 3,280 ft.
    highest = {"ASCE 7-16": 900, "ASCE 7-22": 3280}[method]
    Kd = {"ASCE 7-16": 1.0, "ASCE 7-22": None}[method]
    given = {"method": method, "exposure": "C", "directionality": Kd}
    assert pascal("105 mph", height=f"{highest} ft", **given) > 0.0
    with pytest.raises(ValueError, match=f"height: .* to {highest:,} ft"):
        pascal("105 mph", height=f"{highest + 1} ft", **given)
    assert pascal("58 mph", method="gust", exposure=None, height="5000 ft") > 0.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: yf.Q(10**400, "mph"),
        lambda: yf.Q(10**5000, "mph"),
        lambda: yf.velocity_pressure(
            yf.Q(1e308, "m/s"), method="gust", exposure=None, height="1 m"
        ),
        lambda: yf.velocity_pressure(
            "50 m/s", method="ASCE 7-22", exposure="C", height="3 m", topographic=1e308
        ),
        lambda: yf.velocity_pressure(
            "50 m/s", method="ASCE 7-22", exposure="C", height="3 m", topographic=10**5000
        ),
        lambda: yf.withdrawal("nail", yf.Q(1e308, "m"), 0.5),
        lambda: yf.withdrawal("nail", yf.Q(1e-308, "m"), 0.5),
        lambda: yf.lateral(yf.Q(1e200, "m"), "1 in", "1 in", 0.5, 0.5, "100000 psi"),
        lambda: yf.embedment(yf.Q(1e300, "N"), yf.Q(1e300, "m"), "100 lbf/ft^3", "1 ft"),
        lambda: yf.return_period(yf.Q(1e300, "mph"), {10: "50 mph", 50: "70 mph"}),
        lambda: yf.return_period("60 mph", {10**400: "50 mph", 50: "70 mph"}),
        lambda: yf.return_period("60 mph", {10**5000: "50 mph", 50: "70 mph"}),
    ],
)
def test_numbers_beyond_the_floats_are_refused_by_name(call):
    with pytest.raises(ValueError, match=r"found|is not") as refused:
        call()
    assert len(str(refused.value)) < 300


def test_return_periods_beyond_what_can_be_counted_are_told_without_a_warning():
    # Linear in ln T: halfway between two speeds lies the geometric mean of their periods.
    assert yf.return_period("60 mph", {1e300: "50 mph", 1e308: "70 mph"}) == pytest.approx(1e304)
    # Two values all but alike: the speed of either is its period, and no step is taken beyond.
    close = {10: "60 mph", 10.0000001: "60.0000001 mph"}
    assert yf.return_period("60 mph", close) == pytest.approx(10.0)
    with pytest.raises(ValueError, match="gust: found"):
        yf.return_period("90 mph", close)
