"""One joint followed by hand, from the wind to the nail, beside what Yardfast says.

A square post on a plank, four nails from below into blocks of its own wood. Nothing here calls
Yardfast's relations, only its table of densities: formulas are statics and the equations named,
values of NDS are from memory of NDS 2018 unless said otherwise, and each step states its result to
three figures, worked with a calculator; but what four nails and a bed share, by least energy.
"""

from math import cos, pi, radians, sin, sqrt

import numpy as np
import pytest
from pressed import grid, share

from yardfast import materials
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text

DESIGN = """
[design]
name  = 'A post on a plank'
units = 'metric'

[site]
method = 'gust'
wind   = '25 m/s'
ground = 'paving'

[[part]]
name     = 'plank'
shape    = 'plate'
length   = '900 mm'
width    = '900 mm'
thickness = '40 mm'
material = 'southern pine'

[[part]]
name     = 'post'
shape    = 'solid'
on       = 'plank'
sides    = 4
bottom   = '300 mm'
top      = '300 mm'
height   = '1200 mm'
material = 'southern pine'

[[joint]]
name     = 'post to plank'
of       = 'post'
to       = 'plank'
fastener = '20d common nail'
count    = 4
length   = '200 mm'
width    = '200 mm'
into     = 'side grain'
"""

INCH, LBF, PSI = 0.0254, 4.4482216152605, 4.4482216152605 / 0.0254**2
B, H, T = 0.300, 1.200, 0.040  # post's side and height, plank's thickness, m

# --- step 1: the wind on the post, corner on, which pulls one nail most ---------------------------
Q = 0.5 * 1.226 * 25**2  # 383 Pa
CF = 1.0 + 0.1 * ((H + T) / B - 1) / 6  # square, corner on: 1.0 at h/D 1, 1.1 at 7 (ASCE 29.4-1)
F = Q * CF * sqrt(2) * B * H  # 205 N, at half the post's height

# --- step 2: its weight, as light as it may be (basis: service, helping weight over 1.5) ----------
GREEN = (0.47, 0.54, 0.47, 0.54)  # loblolly, longleaf, shortleaf, slash


def light():
    """Wood Handbook ch. 4, at 12 %: the lightest of the four pines, from the tables."""
    G12 = [g / (1 - 0.265 * g * (1 - 12 / 30)) for g in GREEN]
    return 1120 * min(G12)


W = light() * B * B * H * 9.80665  # 603 N
DEAD = W / 1.5  # 402 N

# --- step 3: four nails and the end of the post, which presses where it stands --------------------
M = F * H / 2  # 123 N m about its foot
AT = 0.100  # nails stand at 100 mm either way
RHO = materials.find_material("southern pine").typical
# K_u, two thirds of rho^1.5 d^0.8/30 N/mm (EN 1995-1-1 Table 7.1); nails drawn as pushed: judgement
NAIL = 2 / 3 * RHO**1.5 * 4.8768**0.8 / 30 * 1000  # 1.21e6 N/m
# plank across its grain and post along it, one on the other: E 9 GPa, a thirtieth of it across
BED = 1 / (T / (9e9 / 30) + H / 9e9)  # 3.75e9 Pa/m
SETS = [(1, 1), (3, 1), (1 / 3, 1), (1, 10), (1, 0.1)]
"""What nails and bed may be stiffer and softer; nails both ways as well, by halves of these."""


def pulls(force, wind):
    """The pull in the nail drawn most, by set, on 8 x 8 places of the post's end; wind (2,)."""
    at = np.array([[x, y, 0.0] for x in (-AT, AT) for y in (-AT, AT)])
    cells, even = grid(B, B), BED * B * B / 64
    x, y = wind[0] * force, wind[1] * force
    load = np.array([x, y, -DEAD, -y * H / 2, x * H / 2, 0.0])
    return [share(at, NAIL, NAIL * nail, cells, even * bed, load)[:, 2].max() for nail, bed in SETS]


CORNER = pulls(F, (sqrt(0.5), sqrt(0.5)))
PULL = max(CORNER)  # 219 N, with the softest bed
PUSH = F / 4  # 51 N

# --- step 4: what a 20d common nail holds, inches and pounds -----------------------------------
D, LONG, HEAD = 0.192, 4.0, 0.406  # ASTM F1667
G = 0.55  # southern pine, NDS Table 12.3.3A
SIDE = T / INCH  # 1.57 in of plank
REACH = LONG - SIDE  # 2.43 in into the post, more than 6 D = 1.15 in
CD = 1.6  # wind
OUT = 1380 * G**2.5 * D * REACH * CD * 0.25  # Eq. 12.2-3, made dry and used wet: 57.7 lbf
THROUGH = 690 * pi * HEAD * G**2 * min(SIDE, 2.5 * HEAD) * CD * 0.7  # Eq. 12.2-6: 303 lbf

FE = 50 * round(16600 * G**1.84 / 50)  # 5550 psi, both pieces
FYB, KD = 80000, 10 * D + 0.5  # Appendix I, 0.177 to 0.236 in; Table 12.3.1B: 2.42
LS, LM = SIDE, REACH - D  # less half the tip of 2 D


def modes():
    """NDS Table 12.3.1A with Re = 1."""
    rt = LM / LS
    k1 = (sqrt(1 + 2 * (1 + rt + rt**2) + rt**2) - (1 + rt)) / 2
    k2 = -1 + sqrt(4 + 2 * FYB * 3 * D**2 / (3 * FE * LM**2))
    k3 = -1 + sqrt(4 + 2 * FYB * 3 * D**2 / (3 * FE * LS**2))
    return {
        "Im": D * LM * FE / KD,
        "Is": D * LS * FE / KD,
        "II": k1 * D * LS * FE / KD,
        "IIIm": k2 * D * LM * FE / (3 * KD),
        "IIIs": k3 * D * LS * FE / (3 * KD),
        "IV": D**2 / KD * sqrt(2 * FE * FYB / (3 * 2)),
    }


SIDEWAYS = min(modes().values()) * CD * 0.7  # 208 lbf

# --- step 5: both at once (Eq. 12.4-2): T/W + V/Z ------------------------------------------------
R = sqrt(PULL**2 + PUSH**2)
USED = PULL / (min(OUT, THROUGH) * LBF) + PUSH / (SIDEWAYS * LBF)


@pytest.fixture(scope="module")
def joint():
    return examine(read_text(DESIGN)).joints[0]


@pytest.mark.parametrize(
    ("found", "calculator"),
    [
        (Q, 383.0),
        (F, 205.2),
        (W, 603.0),
        (M, 123.1),
        (NAIL, 1.214e6),
        (PULL, 218.5),
        (OUT, 57.7),
        (THROUGH, 303.0),
        (modes()["IV"], 185.0),
        (USED, 0.908),
    ],
)
def test_the_steps_are_those_of_a_calculator(found, calculator):
    assert found == pytest.approx(calculator, rel=0.005)


def test_the_wind_comes_corner_on(joint):
    assert joint.check.direction_deg % 90.0 == pytest.approx(45.0)


def test_the_far_nail_is_pulled_and_pushed_as_by_hand(joint):
    assert joint.tension == pytest.approx(PULL, rel=1e-4)
    assert joint.shear == pytest.approx(PUSH, rel=1e-6)


def used_under(degrees):
    """Wind so many degrees off the face: F on it by 1.3 to 1.4 of ASCE 29.4-1, from face to corner
    by sin2 of twice that; with the bed as read, stiffest and softest as ``pulls``."""
    on_face = Q * (1.3 + 0.1 * ((H + T) / B - 1) / 6) * B * H
    turned = radians(degrees)
    force = on_face + sin(2 * turned) ** 2 * (F - on_face)
    pulled = pulls(force, (cos(turned), sin(turned)))
    return np.array(pulled) / (min(OUT, THROUGH) * LBF) + force / 4 / (SIDEWAYS * LBF)


def test_the_least_and_the_greatest_use_are_told(joint):
    # with the stiffest bed wind some way off the face asks most
    worst = np.max([used_under(degrees) for degrees in range(0, 50, 5)], axis=0)
    assert joint.check.envelope == pytest.approx((worst.min(), worst.max()), rel=1e-4)
    # as read it is wind 30 degrees off the face
    assert joint.check.as_read == pytest.approx(used_under(30.0)[0], rel=1e-4)


def test_each_nail_holds_what_it_holds_by_hand(joint):
    holds = joint.fasteners.holds
    assert holds.out / LBF == pytest.approx(OUT, rel=1e-6)
    assert holds.head / LBF == pytest.approx(THROUGH, rel=1e-6)
    assert holds.sideways / LBF == pytest.approx(SIDEWAYS, rel=1e-6)
    assert holds.mode == min(modes(), key=modes().get)


def test_demand_capacity_and_use_are_those_by_hand(joint):
    check = joint.check
    assert check.utilization == pytest.approx(USED, rel=1e-4)
    assert check.demand == pytest.approx(R, rel=1e-4)
    assert check.capacity == pytest.approx(R / USED, rel=1e-4)
    assert check.passes
