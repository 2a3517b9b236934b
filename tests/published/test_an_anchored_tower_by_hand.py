"""One tower held by four stakes, followed by hand from the wind to each stake.

Inputs: a solid block 0.5 x 0.5 x 1.5 m of 150 kg/m3 (no lid for the wind to lift), on a firm lawn,
in a gust of 20 m/s at the piece itself (method "gust"); stakes of 1 in, 32 in in the ground, with a
head, one at each corner. Service basis: 1.5 on what helps. Each step names where it comes from.
"""

from math import cos, hypot, pi, radians, sin, sqrt

import pytest
import shapely
import shapely.affinity

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text

G = 9.80665
V, B, HEIGHT = 20.0, 0.5, 1.5
FILE = """
[design]
name = 'Held tower'
units = 'metric'

[site]
method = 'gust'
wind = '20 m/s'
ground = 'firm lawn'

[[part]]
name = 'tower'
shape = 'box'
length = '500 mm'
width = '500 mm'
height = '1500 mm'
density = '150 kg/m^3'

[[anchor]]
name = 'stakes'
kind = 'steel stake 1 in x 36 in'
where = 'corners'
"""


def interpolated(h_over_d, low, high):
    """ASCE/SEI 7 Fig. 29.4-1 (memory): square, between h/D = 1 and 7."""
    return low + (high - low) * (h_over_d - 1) / 6


Q = 0.613 * V**2
"""Velocity pressure of the gust at the piece (ASCE/SEI 7 Eq. 26.10-1, its air at sea level)."""
W = 150 * B * B * HEIGHT * G
"""Its weight in N; the density is given, so there is no band."""
FACE = interpolated(HEIGHT / B, 1.3, 1.4) * B * HEIGHT
DIAGONAL = interpolated(HEIGHT / B, 1.0, 1.1) * sqrt(2) * B * HEIGHT
"""Cf times area in m2 square on and on the diagonal, each on the projected area."""
YIELD = 5.14 * 25e3  # Prandtl's bearing capacity of loam with s_u 25 kPa, Pa


def cap_centroid(line, area):
    """Distance of the centroid of the square's cap of ``area`` m2 beyond a line, by bisection."""
    turned = shapely.affinity.rotate(
        shapely.box(-B / 2, -B / 2, B / 2, B / 2), -line, origin=(0, 0)
    )
    low, high = -B, B
    for _ in range(60):
        middle = (low + high) / 2
        cap = turned.intersection(shapely.box(middle, -B, B, B))
        low, high = (middle, high) if cap.area > area else (low, middle)
    return cap.centroid.x


CORNERS = [(x * B / 2, y * B / 2) for x in (-1, 1) for y in (-1, 1)]


def pulls(off, line):
    """Straight and level pull in N on each stake; wind ``off`` the face, in degrees.

    What presses on the ground, W/1.5, is carried by the cap of the foot that yields beyond a
    ``line`` in the same degrees; its centroid is the line of turning (Meyerhof 1953).
    """
    share = sin(radians(90 * off / 45)) ** 2  # between face and diagonal (judgement)
    force, pressing = Q * (FACE + (DIAGONAL - FACE) * share), W / 1.5
    pivot = cap_centroid(line, pressing / YIELD)
    net = force * cos(radians(off - line)) * HEIGHT / 2 - pressing * pivot
    c, s = cos(radians(line)), sin(radians(line))
    distance = [max(pivot - x * c - y * s, 0.0) for x, y in CORNERS]
    straight = [net * d / sum(d * d for d in distance) for d in distance]  # elastic
    friction = 0.40 * pressing  # wood on lawn, the lower of those published
    left = max(force - friction, 0.0)
    # the foot presses on the corners before it, square to what it presses on: askew by 45 degrees
    ahead = cos(radians(off)), sin(radians(off))
    cosines = [max((x * ahead[0] + y * ahead[1]) / hypot(x, y), 0.0) for x, y in CORNERS]
    level = [left * c / sum(c * c for c in cosines) for c in cosines]
    return straight, level


WINDS, LINES = range(0, 50, 5), range(0, 50, 5)


STRAIGHT = 0.5 * 25000 * pi * 0.0254 * (32 * 0.0254 - 0.15) / 3
"""0.5 s_u pi d (l - 0.15 m) over 3; firm lawn counts as medium clay, 25 kPa."""
LEVEL = 10e4 * 0.0254 * 32 * 0.0254 / 3 * min(B / (32 * 0.0254), 1.0)
"""10 N/cm2 of diameter times length, over 3; nearer than its length to the next, in proportion."""
HEAD = 600 * 4.4482216152605
"""A head 2 in across on wood (NDS perpendicular to grain, wet; memory)."""


@pytest.fixture(scope="module")
def found():
    return examine(read_text(FILE))


def named(found, name):
    return next(check for check in found.checks if check.name == name)


def test_untied_it_tips(found):
    assert found.needs_anchors
    assert found.structure.weight("typical") == pytest.approx(W)


def test_each_stake_is_asked_for_what_the_hand_finds(found):
    wanted = {(off, line): pulls(off, line) for off in WINDS for line in LINES}
    used = {
        case: max(T / STRAIGHT + H / LEVEL for T, H in zip(*both, strict=True))
        for case, both in wanted.items()
    }
    check = named(found, "anchor: stakes")
    assert check.demand == pytest.approx(max(used.values()), rel=1e-4)
    head = named(found, "anchor head: stakes")
    assert head.demand == pytest.approx(max(max(T) for T, _ in wanted.values()), rel=1e-4)
    assert head.capacity == pytest.approx(HEAD)


def test_what_a_stake_holds_is_as_by_hand(found):
    holds = found.held.anchors[0].holds
    assert holds.straight == pytest.approx(STRAIGHT)
    assert holds.sideways == pytest.approx(LEVEL)
