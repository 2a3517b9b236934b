"""A short strip that shear governs, not bending: what it is asked for and holds, by hand."""

import pytest

from yardfast.checks.plates.strip_strength import plate_material_of, strip_strength
from yardfast.checks.plates.strips import Acting, Basis, PointForce, Strip, StripWays, judge
from yardfast.design.model import Part
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.loads.combinations import factors
from yardfast.loads.wind.site import Site

THICK, WIDE, SPAN, AT, FORCE = 0.038, 0.14, 0.3, 0.03, 1000.0
STUFF = plate_material_of(
    Part("plank", Plate(Rectangle(SPAN, WIDE), THICK), material="southern pine"), THICK
)


def judged(at):
    load = Acting(0.0, (PointForce(at, FORCE),), "a foot")
    strip = Strip((0.0, SPAN), (0.0, SPAN), WIDE, across=False, named=(load,))
    site = Site(method="gust", wind=1.0, ground="paving", basis="allowable")
    by = Basis(factors(site), "allowable", STUFF, THICK)
    found = judge("plank", StripWays("plank", "", (strip,)), strip, by)
    assert found is not None
    return found, strip_strength(STUFF, THICK, WIDE, False, "allowable")


def test_a_foot_beside_a_support_is_held_by_shear():
    """1 kN 30 mm off one of two supports 300 mm apart: V = 900 N, M = 27 N m; of people C_D is 1.0,
    1.6 times less than under wind (ANSI/AWC NDS-2018 2.3.2 and Table 2.3.2)."""
    found, strength = judged(AT)
    assert found.check.unit == "N"
    assert found.check.demand == pytest.approx(1.6 * FORCE * (SPAN - AT) / SPAN, rel=1e-9)
    assert found.check.capacity == pytest.approx(float(strength.shear), rel=1e-12)
    assert found.check.utilization > 1.6 * FORCE * AT * (SPAN - AT) / SPAN / float(strength.moment)


def test_a_foot_amid_the_span_is_held_by_bending():
    """1 kN amid 300 mm: M = F L / 4 = 75 N m."""
    found, strength = judged(SPAN / 2.0)
    assert found.check.unit == "N*m"
    assert found.check.demand == pytest.approx(1.6 * FORCE * SPAN / 4.0, rel=1e-9)
    assert found.check.capacity == pytest.approx(float(strength.moment), rel=1e-12)
