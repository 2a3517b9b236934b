"""How stiff things are: the formulas of the books, and tables of torsion."""

import pytest

from yardfast.statics.stiffness import axial_stiffness, slip_modulus, torsion_constant


@pytest.mark.parametrize(
    ("kind", "lead_holes", "K_ser"),
    [
        ("nail", False, 6547.9 * 4.0**0.8 / 30.0),
        ("nail", True, 6547.9 * 4.0 / 23.0),
        ("staple", False, 6547.9 * 4.0**0.8 / 80.0),
        ("bolt", False, 6547.9 * 4.0 / 23.0),
        ("wood screw", False, 6547.9 * 4.0 / 23.0),
    ],
)
def test_slip_modulus_of_the_table(kind, lead_holes, K_ser):
    """EN 1995-1-1 Table 7.1 by hand (memory): 350^1.5 = 6,547.9, d 4 mm, N/mm; K_u two thirds."""
    found = slip_modulus(kind, 4.0e-3, 350.0, 350.0, lead_holes=lead_holes)
    assert float(found) == pytest.approx(K_ser * 1000.0 * 2.0 / 3.0, rel=2e-5)


def test_unlike_woods_take_the_root_of_their_product():
    mixed, alike = slip_modulus("bolt", 0.01, [200.0, 400.0], [800.0, 400.0])
    assert mixed == pytest.approx(alike, rel=1e-12)


def test_a_screw_drawn_along_itself():
    """25 d l: 6 mm, 40 mm of thread: 6,000 N/mm."""
    assert float(axial_stiffness(0.006, 0.04)) == pytest.approx(6.0e6, rel=1e-12)


@pytest.mark.parametrize(
    ("ratio", "factor"), [(1.0, 0.141), (1.5, 0.196), (2.0, 0.229), (4.0, 0.281), (10.0, 0.312)]
)
def test_torsion_of_rectangles(ratio, factor):
    """J = factor b d^3 of Timoshenko's table for rectangular bars (memory), three digits."""
    found = torsion_constant(ratio * 0.05, 0.05, is_round=False, wall=None)
    assert found / (ratio * 0.05**4) == pytest.approx(factor, abs=0.0015)
