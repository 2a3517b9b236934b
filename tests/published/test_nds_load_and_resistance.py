"""Load and resistance factors of NDS beside a worked example and the conversion's own rule."""

from math import inf

import pytest

from yardfast.checks.timber.nds.adjustments import load_and_resistance
from yardfast.checks.timber.nds.fastener_capacity import adjusted_capacity
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units import INCH


@pytest.mark.parametrize(
    ("of", "phi", "printed"),
    [
        # NDS 2018 Tables 2.3.5 and 2.3.6 print these as 2.16 over phi to two places
        # (ASTM D5457, format conversion of resistances)
        ("bending", 0.85, 2.54),
        ("tension", 0.80, 2.70),
        ("shear", 0.75, 2.88),
        ("compression", 0.90, 2.40),
        ("connections", 0.65, 3.32),
    ],
)
def test_every_conversion_is_2p16_over_its_resistance_factor(of, phi, printed):
    assert round(2.16 / phi, 2) == pytest.approx(printed)
    assert load_and_resistance(of) == pytest.approx(printed * phi)


def test_elastic_stability_is_1p5_over_its_resistance_factor():
    """NDS 2018 Tables 2.3.5 and 2.3.6: E_min 1.76, phi 0.85 (ASTM D5457: 1.5 over phi)."""
    assert load_and_resistance("stability") == pytest.approx(1.76 * 0.85)
    assert round(1.5 / 0.85, 2) == 1.76


def test_a_nail_drawn_by_wind():
    """AWC, Structural Wood Design Solved Example Problems, E2.1a, on the strength level.

    8d common nail through a 0.105 in strap into spruce-pine-fir: 3,619.3 N/m by 2.395 in of point
    is 220.2 N at ten years (printed 49 lb); K_F 3.32, phi_z 0.65, lambda of wind 1.0: 475 N. By
    allowable stress design the same nail has 1.6 of it.
    """
    strap = 0.105 * INCH
    driven = Driven(
        joint_material_of("steel"),
        joint_material_of("spruce-pine-fir"),
        0.0,
        inf,
        "side grain",
        plate=strap,
        made_wet=False,
        stays_dry=True,
    )
    nail = fasteners.find_fastener("8d common nail")
    ten_years = 3619.313 * (2.5 * INCH - strap)
    assert adjusted_capacity(nail, driven, "strength").out == pytest.approx(
        ten_years * 2.158, rel=2e-3
    )
    assert adjusted_capacity(nail, driven, "allowable").out == pytest.approx(
        ten_years * 1.6, rel=2e-3
    )
