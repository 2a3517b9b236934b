"""Stakes pushed sideways in sand and gravel: Broms 1964, beside statics of his earth pressure.

FHWA-HI-97-013 9.7.3.2 prints the closed form Q_u = 0.5 K_p gamma b L^3/(e + L); here the assumed
pressure 3 K_p gamma z is summed in slices about the point, without that form.
"""

import numpy as np
import pytest

from yardfast.checks.anchoring.capacity import stakes
from yardfast.checks.anchoring.capacity.anchor_capacity import anchor_capacity
from yardfast.materials import anchors, grounds

INCH, LBF = 0.0254, 4.4482216152605
GAMMA, KP = 100 * LBF / 0.3048**3, 3.0  # 100 lbf/ft3; tan2(45 + 15) degrees


@pytest.mark.parametrize("e", [0.0, 0.05, 0.4])
@pytest.mark.parametrize(("d", "length"), [(0.019, 0.36), (0.025, 0.9), (0.016, 0.5)])
def test_the_force_balances_the_pressure_about_the_point(d, length, e):
    slices = 20_000
    z = (np.arange(slices) + 0.5) * length / slices
    moment = float(np.sum(3 * KP * GAMMA * z * d * (length - z)) * length / slices)
    found = stakes.sideways_in_sand(d, length, height=e)
    assert found == pytest.approx(moment / (length + e), rel=1e-6)


def test_a_three_quarter_inch_bar_of_eighteen_inches_holds_some_five_pounds():
    """Broms (1964), by hand: 14 in of it in the ground, factor 3; 51 lb were counted once."""
    bar = anchors.find_anchor("steel stake 3/4 in x 18 in")
    for name in ("sand", "gravel"):
        assert anchor_capacity(bar, grounds.find_ground(name)).sideways / LBF == pytest.approx(
            4.253, abs=0.0005
        )
    clay = anchor_capacity(bar, grounds.find_ground("firm lawn")).sideways / LBF
    assert clay == pytest.approx(10 * 1.905 * 35.56 / 3 / LBF, rel=1e-9)  # rows of clay stand


def test_twice_as_long_holds_four_times_and_water_takes_half():
    """H = K_p gamma d l^3/(2 l) grows as l squared where it is pushed at the ground."""
    one, two = stakes.sideways_in_sand(0.025, [0.4, 0.8])
    assert two / one == pytest.approx(4.0)
    high = stakes.sideways_in_sand(0.025, [0.01, 0.02], height=10.0)
    assert high[1] / high[0] == pytest.approx(8.0, rel=2e-3)  # pushed far above it, as l cubed
    assert stakes.sideways_in_sand(0.025, 0.4, wet=True) == pytest.approx(one / 2)


def test_length_beyond_forty_diameters_counts_no_more():
    assert stakes.sideways_in_sand(0.02, 0.8) == stakes.sideways_in_sand(0.02, 1.6)
