"""Twist: the stress that it makes, how much wood holds of it, and an arm that is twisted."""

from math import pi

import numpy as np
import pytest
from designs import design
from stick_designs import BASE, FOUR, PSI, G, arm, post, weight

from yardfast.checks.examination import examine
from yardfast.checks.members.torsion import torsion_share, torsion_stress
from yardfast.checks.members.uprights import Section
from yardfast.design.model import Part, Place
from yardfast.design.shapes.weight import Weight
from yardfast.materials import lumber, metal

ALONG = np.array([1.0, 0.0])
WOOD = lumber.find_lumber("southern pine", FOUR, FOUR)


def exact(sides):
    """k of T/(k a b^2), a/b = ``sides``: Saint-Venant's series (Timoshenko & Goodier, art. 109)."""
    n = np.arange(1, 40, 2)
    over = np.minimum(n * pi * sides / 2.0, 300.0)
    stiff = (1.0 - 192.0 / pi**5 / sides * (np.tanh(over) / n**5).sum()) / 3.0
    return stiff / (1.0 - 8.0 / pi**2 * (1.0 / (n**2 * np.cosh(over))).sum())


@pytest.mark.parametrize(("sides", "k"), [(1.0, 0.208), (2.0, 0.246), (10.0, 0.312)])
def test_the_series_is_that_of_the_printed_table(sides, k):
    """Timoshenko & Goodier, art. 109 (memory)."""
    assert exact(sides) == pytest.approx(k, abs=0.5e-3)


@pytest.mark.parametrize("sides", [1.0, 1.2, 1.5, 2.0, 3.0, 4.0, 5.0, 10.0])
def test_stress_of_rectangles_by_the_exact_solution(sides):
    """Roark's polynomial lies within 0.3 % of the exact solution."""
    b = 0.038
    for section in (Section(ALONG, sides * b, b), Section(ALONG, b, sides * b)):
        found = float(torsion_stress(section, 20.0))
        true = 20.0 / (exact(sides) * sides * b**3)
        assert -3e-3 <= found / true - 1.0 <= 3e-3
        assert float(torsion_stress(section, -20.0)) == found


def test_stress_of_a_rod_and_of_tubes():
    """16 T/(pi D^3); a thin tube T/(2 A t) (Bredt), round ones exact."""
    assert float(torsion_stress(Section(ALONG, 0.05, 0.05, True), 30.0)) == pytest.approx(
        16.0 * 30.0 / (pi * 0.05**3)
    )
    thin = float(torsion_stress(Section(ALONG, 0.05, 0.05, True, 0.001), 30.0))
    assert thin == pytest.approx(30.0 / (2.0 * pi * 0.0245**2 * 0.001), rel=0.03)
    square = float(torsion_stress(Section(ALONG, 0.06, 0.04, False, 0.002), 30.0))
    assert square == pytest.approx(30.0 / (2.0 * 0.058 * 0.038 * 0.002))


def test_how_much_of_its_shear_strength_wood_holds_in_twist():
    """EN 1995-1-1 6.1.8: k_shape 1.2 round; of a rectangle the lesser of its two editions.

    1 + 0.15 h/b up to 2.0 (2004, in open programs) or 1 + 0.05 h/b up to 1.3 (A2:2014, memory).
    Metal yields alike.
    """
    assert torsion_share(Section(ALONG, 0.09, 0.09, True), WOOD) == 1.2
    assert torsion_share(Section(ALONG, 0.14, 0.07), WOOD) == pytest.approx(1.10)
    assert torsion_share(Section(ALONG, 0.038, 0.38), WOOD) == 1.3
    assert torsion_share(Section(ALONG, 0.14, 0.07), metal.find_metal("steel")) == 1.0


def test_a_lamp_beside_an_arm_twists_it():
    """W e all along the arm from the lamp to the post, and not beyond; shear and twist add.

    F'_v 175 psi of southern pine (memory), wet 0.97; it lasts: C_D 0.9. Bent by the same lamp as by
    one on its axis.
    """
    aside = Part("lamp", Weight(), Place(on="arm", at=(0.4, 0.25, 0.0)), mass=60.0)
    found = {}
    for name, lamp in (("on", weight("lamp", 0.4, "arm", mass=60.0)), ("aside", aside)):
        whole = examine(design(BASE, post(0.0), arm(mass=1.0e-6), lamp, wind=0.01))
        found[name] = next(one for one in whole.members.judged if one.name == "arm")
    here = np.abs(found["aside"].forces)
    assert here[3] == pytest.approx(60.0 * G * 0.25, rel=1e-6)
    assert found["on"].forces[3] == pytest.approx(0.0, abs=1e-9)
    shear = 1.5 * 60.0 * G / FOUR**2
    twist = 60.0 * G * 0.25 / (0.208 * FOUR**3) / 1.05
    use = (shear + twist) / (175.0 * 0.97 * 0.9 * PSI)
    bent = found["on"].check.utilization
    assert found["aside"].check.utilization == pytest.approx(max(use, bent), rel=3e-3)
    assert use > bent
