"""Whole structures worked by hand, each step from the inputs (the sums stand in the docstrings).

Coefficients: ASCE/SEI 7 Fig. 29.4-1 and 29.3-1, written from memory in references/wind.
"""

from math import cos, radians, sin

import numpy as np
import pytest
from designs import design, wind_alone

from yardfast.checks.examination import examine
from yardfast.design.model import Design, Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Regular
from yardfast.loads.asce7.velocity_pressure import asce7_velocity_pressure, exposure_coefficient
from yardfast.loads.wind.site import Site

INCH, FOOT, POUND, MPH, LBF = 0.0254, 0.3048, 0.45359237, 0.44704, 4.4482216152605


def examined(*parts, **site):
    given = {"method": "gust", "wind": 20.0, "ground": "paving", **site}
    return examine(Design("by hand", "metric", tuple(parts), tables={Site: Site(**given)}))


HEXAGON = Part("post", Solid(6, 12 * INCH, 12 * INCH, 48 * INCH), density=600.0)


def test_hexagonal_post_tips_at_the_object():
    """A = 6 tan 30 a2 = 0.080456 m2, W = 577.2 N, M = W a = 87.97 N m; Cf 1.1 (h/D 4) on
    0.35195 x 1.2192 m at 0.6096 m: 0.28774 q. q = 305.7 Pa, V = 22.33 m/s."""
    assert examined(HEXAGON).limits.tipping == pytest.approx(22.33, abs=0.005)


@pytest.mark.parametrize(("exposure", "gust"), [("C", 24.22), ("B", 29.58)])
def test_hexagonal_post_tips_in_the_forecast_gust(exposure, gust):
    """22.33 / sqrt(Kz), Kz 0.85 and 0.57 (ASCE/SEI 7 Table 26.10-1)."""
    limits = examined(HEXAGON, exposure=exposure).limits
    assert limits.forecast_tipping == pytest.approx(gust, abs=0.005)


def test_hexagonal_post_slides():
    """mu W = 0.4 x 577.2 = 230.9 N over 1.1 x 0.35195 x 1.2192 = 0.47201 m2: 28.25 m/s."""
    assert examined(HEXAGON, ground="gravel").limits.sliding == pytest.approx(28.25, abs=0.005)


def test_square_post_on_an_octagon_tips_along_its_diagonal():
    """W = 735.48 N, arm 12 in; Cf 1.05208 x 12 sqrt2 x 48 in at 25.5 in and 1.03542 x 24 x 1.5 in
    at 0.75 in: 21,881.8 in3. V = 31.9352 m/s; stated as 31.93 (on the edge of rounding)."""
    plate = Part("plate", Plate(Regular(8, 24 * INCH), 1.5 * INCH), density=600.0)
    post = Part("post", Box(12 * INCH, 12 * INCH, 48 * INCH), Place(on="plate"), density=600.0)
    result = examined(plate, post)
    assert result.limits.tipping == pytest.approx(31.9352, abs=0.00005)
    assert result.limits.tipping_azimuth % 90.0 == pytest.approx(45.0)


def test_round_post_tips_at_the_lower_root():
    """W R = 101.92 N m over 0.8 x 0.2 x 1.4 x 0.7 = 0.1568 m3: q = 650 Pa, 32.56 m/s; there
    D sqrt q = 5.1 is still below the limit of 5.3."""
    post = Part("post", Solid(0, 0.2, 0.2, 1.4), mass=103.93, surface="rough")
    assert examined(post).limits.tipping == pytest.approx(32.56, abs=0.005)


def test_sign_takes_the_force_of_case_a():
    """105 mph, Exposure C, 7-22: q 1148 Pa, Kd 0.85, G 0.911, Cf 1.75 (s/h 0.4, B/s 2) on 8 ft2:
    259.9 lbf at 4 ft. The thin plate beneath it takes about 0.3 lbf of its own; what carries the
    board is not drawn, so the wind alone is asked."""
    q = float(asce7_velocity_pressure(105 * MPH, exposure_coefficient(5 * FOOT, "C")))
    plate = Part("plate", Plate(Regular(4, 0.5), 1e-6), density=7850.0)
    board = Part(
        "board", Panel(4 * FOOT, 2 * FOOT, 0.01), Place(at=(0, 0, 3 * FOOT)), density=600.0
    )
    site = {"ground": "paving", "wind": 105 * MPH, "exposure": "C", "basis": "allowable"}
    wind, _ = wind_alone(design(plate, board, method="ASCE 7-22", **site))
    face_on = int(np.flatnonzero(wind.azimuths == 0.0)[0])
    assert q == pytest.approx(1148, abs=0.5)
    assert wind.force[face_on] / LBF == pytest.approx(259.9, abs=0.05)
    assert wind.force_height[face_on] == pytest.approx(4 * FOOT, rel=1e-4)


def test_block_slides_down_a_slope():
    """W 500 N, mu 0.40, 5 degrees: 0.4 W cos - W sin = 155.7 N."""
    assert 500 * (0.4 * cos(radians(5)) - sin(radians(5))) == pytest.approx(155.7, abs=0.05)
    block = Part("block", Box(1.0, 1.0, 0.4), mass=500 / 9.80665)
    limits = examined(block, ground="gravel", slope=radians(5)).limits
    # Cf 1.3 on 0.4 m2 face on; along the diagonal 1.0 on 0.5657 m2, more
    assert 0.613 * limits.sliding**2 * 0.4 * np.sqrt(2) == pytest.approx(155.7, abs=0.05)


CLOSED = Part("box", Box(4 * FOOT, 4 * FOOT, 2.5 * FOOT, 0.75 * INCH), mass=156 * POUND)


def test_closed_box_tips_sooner_for_the_suction_on_its_lid():
    """W 693.9 N x 0.6096 m over 1.3 x 0.92903 x 0.381 + 0.8869 x 1.48645 x 0.6096: 52.3 mph.

    0.8869 is the even coefficient of equal moment of the strips of ASCE/SEI 7 Fig. 27.3-1.
    """
    assert examined(CLOSED).limits.tipping / MPH == pytest.approx(52.3, abs=0.05)


def test_box_without_a_lid_tips_later():
    """Without suction 87 mph: the same box solid, at the same weight."""
    solid = Part("box", Box(4 * FOOT, 4 * FOOT, 2.5 * FOOT), mass=156 * POUND)
    assert examined(solid).limits.tipping / MPH == pytest.approx(87, abs=0.5)


@pytest.mark.parametrize(
    ("basis", "utilization"), [("allowable", 0.952), ("strength", 1.058), ("service", 1.429)]
)
def test_bases_of_judgement_differ_as_worked_by_hand(basis, utilization):
    """M_over 1000 N m, M_resist 1050 N m: 0.6/0.6, 1/0.9 and 1.5 times 1000/1050."""
    width, height = 0.5, 1.0
    speed = np.sqrt(1000.0 / (0.5 * 1.3 * width * height) / 0.613)  # h/D 2: Cf 1.3167
    weight = 1050.0 / (width / 2)
    post = Part("post", Box(width, width, height), mass=weight / 9.80665)
    cf = 1.3 + 0.1 / 6.0
    check = examined(post, wind=speed * np.sqrt(1.3 / cf), basis=basis).overturning
    assert check.demand / check.wind == pytest.approx(1000.0, rel=1e-9)
    assert check.utilization == pytest.approx(utilization, abs=0.0005)
