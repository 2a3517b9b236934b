"""One seam followed by hand, from the wind to the screw, beside what Yardfast says.

A straight six-sided body, open above, on a slab; its panels are screwed to cleats of redcedar in
the corners. Nothing here calls Yardfast's relations: the flow comes from a numerical integration
round the wall, formulas are statics and the equations named, values of NDS are from memory of NDS
2018, and each step states its result to three figures, worked with a calculator.
"""

from math import pi, sqrt, tan

import numpy as np
import pytest
from seam_flow import PER_SIDE, flow_by_integration

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text

DESIGN = """
[design]
name  = 'A straight light'
units = 'metric'

[site]
method = 'gust'
wind   = '25 m/s'
ground = 'paving'

[[part]]
name     = 'slab'
shape    = 'plate'
sides    = 6
across   = '900 mm'
thickness = '50 mm'
material = 'concrete'

[[part]]
name     = 'tower'
shape    = 'shell'
on       = 'slab'
sides    = 6
bottom   = '400 mm'
top      = '400 mm'
height   = '1200 mm'
wall     = '18 mm'
material = 'softwood plywood'

[[seam]]
part     = 'tower'
fastener = '#8 wood screw 2 in'
spacing  = '250 mm'
cleat    = 'western redcedar'
"""

INCH, LBF = 0.0254, 4.4482216152605
ACROSS, H, T, FOOT, EVERY = 0.400, 1.200, 0.018, 0.050, 0.250  # m

# --- step 1: the wind on the body ---------------------------------------------------------------
Q = 0.5 * 1.226 * 25**2  # 383 Pa
CF = 1.0 + 0.2 * ((H + FOOT) / ACROSS - 1) / 6  # hexagon: 1.0 at h/D 1, 1.2 at 7 (ASCE 29.4-1)
F = Q * CF * ACROSS / (3**0.5 / 2) * H  # widest over its corners: 227 N; no load factor on wind


# --- step 2: along a seam at the foot -----------------------------------------------------------
def along():
    """The greatest flow at any corner, the force turned through a seam's share of the circle."""
    apothem = (ACROSS - T) / 2
    turned = pi / 2 + pi / 6 + np.linspace(0, pi / 3, 61)
    flows = [flow_by_integration(6, apothem, T, F, way)[0][::PER_SIDE] for way in turned]
    return float(np.abs(flows).max())


FLOW = along()  # 357 N/m

# --- step 3: a panel pulls at its edges ----------------------------------------------------------
PULL = (1.3 + 0.6) * Q * ACROSS * tan(pi / 6) / 2  # suction, more as it is open above: 84 N/m
# and each panel, as the wall of a tank, is stretched by pressure times its apothem: 145 N/m
HOOP = (1.3 + 0.6) * Q * ACROSS / 2

# --- step 4: what a #8 wood screw holds, inches and pounds ---------------------------------------
D, ROOT, HEAD, LONG = 0.164, 0.131, 0.292, 2.0  # flat head at its least (industry table)
SUNK = 0.100  # height of a flat head, ASME B18.6.1 and B18.6.3
PANEL, CEDAR = 0.42, 0.36  # NDS Tables 12.3.3A and B
SIDE = T / INCH  # 0.709 in of panel
REACH = LONG - SIDE  # 1.29 in into the cleat, all of it thread (two thirds of the length, 1.33)
CD, CM = 1.6, 0.7  # wind; used wet
OUT = 2850 * CEDAR**2 * D * REACH * CD * CM  # Eq. 12.2-2: 87.6 lbf
THROUGH = 690 * pi * HEAD * PANEL**2 * (SIDE - SUNK) * CD * CM  # Eq. 12.2-6: 76.1 lbf
FES = 50 * round(16600 * PANEL**1.84 / 50)  # 3350 psi
FEM = 50 * round(16600 * CEDAR**1.84 / 50)  # 2550 psi
FYB, KD = 90000, 2.2  # Appendix I, 0.142 to 0.177 in; Table 12.3.1B up to 0.17 in
LS, LM = SIDE, REACH - D  # less half the tip of 2 D


def modes():
    """NDS Table 12.3.1A; the root of the thread bears and bends."""
    re, rt, d = FEM / FES, LM / LS, ROOT
    k1 = (sqrt(re + 2 * re**2 * (1 + rt + rt**2) + rt**2 * re**3) - re * (1 + rt)) / (1 + re)
    k2 = -1 + sqrt(2 * (1 + re) + 2 * FYB * (1 + 2 * re) * d**2 / (3 * FEM * LM**2))
    k3 = -1 + sqrt(2 * (1 + re) / re + 2 * FYB * (2 + re) * d**2 / (3 * FEM * LS**2))
    return {
        "Im": d * LM * FEM / KD,
        "Is": d * LS * FES / KD,
        "II": k1 * d * LS * FES / KD,
        "IIIm": k2 * d * LM * FEM / ((1 + 2 * re) * KD),
        "IIIs": k3 * d * LS * FEM / ((2 + re) * KD),
        "IV": d**2 / KD * sqrt(2 * FEM * FYB / (3 * (1 + re))),
    }


SIDEWAYS = min(modes().values()) * CD * CM

# --- step 5: both at once (Eq. 12.4-1, Hankinson), and never less than either alone --------------
TENSION, SHEAR = PULL * EVERY, sqrt(FLOW**2 + HOOP**2) * EVERY  # 21 N and 96 N
R = sqrt(TENSION**2 + SHEAR**2)
HELD = min(OUT, THROUGH) * LBF
BOTH = (TENSION**2 / HELD + SHEAR**2 / (SIDEWAYS * LBF)) / R
USED = max(BOTH, TENSION / HELD, SHEAR / (SIDEWAYS * LBF))


@pytest.fixture(scope="module")
def seam():
    return examine(read_text(DESIGN)).fastened_seams[0]


@pytest.mark.parametrize(
    ("found", "calculator"),
    [
        (Q, 383.0),
        (F, 227.4),
        (PULL, 84.0),
        (HOOP, 145.5),
        (OUT, 87.6),
        (THROUGH, 76.1),
        (modes()["IV"], 72.7),
        (FLOW, 357.2),
        (TENSION, 21.0),
    ],
)
def test_the_steps_are_those_of_a_calculator(found, calculator):
    assert found == pytest.approx(calculator, rel=0.005)


def test_shear_and_flow_are_those_by_hand(seam):
    assert seam.seams.shear == pytest.approx(F, rel=1e-6)
    assert seam.seams.flow == pytest.approx(FLOW, rel=1e-4)  # as fine as the integration is
    assert seam.seams.pull == pytest.approx(PULL, rel=1e-6)
    assert seam.seams.hoop == pytest.approx(HOOP, rel=1e-6)


def test_each_screw_is_asked_and_holds_what_it_does_by_hand(seam):
    assert seam.tension == pytest.approx(TENSION, rel=1e-6)
    assert seam.shear == pytest.approx(SHEAR, rel=1e-4)
    assert seam.holds.out / LBF == pytest.approx(OUT, rel=1e-6)
    assert seam.holds.head / LBF == pytest.approx(THROUGH, rel=1e-6)
    assert seam.holds.sideways / LBF == pytest.approx(SIDEWAYS, rel=1e-6)
    assert seam.holds.mode == min(modes(), key=modes().get)


def test_demand_capacity_and_use_are_those_by_hand(seam):
    check = seam.check
    assert check.name == "seam: tower"
    assert check.utilization == pytest.approx(USED, rel=1e-4)
    assert check.demand == pytest.approx(R, rel=1e-4)
    assert check.capacity == pytest.approx(R / USED, rel=1e-4)
    assert check.passes
