"""The light tower of the examples worked by hand, step by step, beside what Yardfast says.

Nothing here calls Yardfast's relations: sizes are those of examples/light-tower.toml, formulas are
plane geometry and statics, and the published values are named where they enter. Numbers in the
steps are inches and pounds where a builder would measure, SI from the weights on.
"""

from math import atan2, cos, degrees, pi, radians, sin, sqrt, tan
from pathlib import Path

import numpy as np
import pytest
import shapely
from shapely import affinity

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read

EXAMPLE = Path(__file__).resolve().parents[2] / "examples" / "light-tower.toml"
INCH, PSF, G, RHO = 0.0254, 47.88025898, 9.80665, 1.226
OCT = 8 * tan(pi / 8)  # area of an octagon over its apothem squared

# --- step 1: densities, kg/m3 -----------------------------------------------------------------
PLYWOOD = 36 * 0.45359237 / 0.3048**3  # 36 lb/ft3, HUD residential guide
GREEN = {"loblolly": 0.47, "longleaf": 0.55, "shortleaf": 0.47, "slash": 0.54, "redcedar": 0.31}


def at_12(gb):
    """Wood Handbook ch. 4: G12 = Gb/(1 - 0.265 Gb (1 - 12/30)), rho = 1000 G12 1.12."""
    return 1120 * gb / (1 - 0.265 * gb * (1 - 12 / 30))


PINE = sum(at_12(GREEN[name]) for name in ("loblolly", "longleaf", "shortleaf", "slash")) / 4
CEDAR = at_12(GREEN["redcedar"])
ACRYLIC = (1170 + 1200) / 2  # polymer property tables

# --- step 2: sizes, m -------------------------------------------------------------------------
SHEET, HALF = 0.703 * INCH, 0.451 * INCH  # decimal labels of 23/32 and 15/32, PS 1
Z_FOOT = 1.5 * INCH
Z_TOWER = Z_FOOT + 48 * INCH
Z_GALLERY = Z_TOWER + SHEET
Z_LANTERN = Z_GALLERY + 9 * INCH
Z_EAVES = Z_LANTERN + HALF
Z_ROOF = Z_EAVES + 8 * INCH
TOP = Z_ROOF + 2 * INCH


def frustum(a0, a1, h):
    """Volume and centroid height of an octagonal frustum of apothems a0 and a1."""
    A0, A1 = OCT * a0**2, OCT * a1**2
    root = sqrt(A0 * A1)
    return h / 3 * (A0 + A1 + root), h / 4 * (A0 + 2 * root + 3 * A1) / (A0 + root + A1)


def hollow(outer, inner):
    (v, z), (w, y) = outer, inner
    return v - w, (v * z - w * y) / (v - w)


def weigh():
    """Mass in kg and centroid height in m of each part."""
    lean = sqrt(48**2 + 4**2) / 48  # 1/cos of the lean: 4 in of apothem in 48 in
    t = SHEET * lean
    tower = hollow(
        frustum(9 * INCH, 5 * INCH, 48 * INCH), frustum(9 * INCH - t, 5 * INCH - t, 48 * INCH)
    )
    in_plan = HALF * sqrt(8**2 + 5.5**2) / 8
    inner = 5.5 * INCH - in_plan
    roof = hollow(
        frustum(5.5 * INCH, 0.0, 8 * INCH), frustum(inner, 0.0, 8 * INCH * inner / (5.5 * INCH))
    )
    ring = OCT * (12**2 - 6.5**2) * INCH**2
    lantern = OCT * (4**2 - 3.875**2) * INCH**2 * 9 * INCH
    return {
        "foot": (PINE * ring * Z_FOOT, Z_FOOT / 2),
        "tower": (PLYWOOD * tower[0], Z_FOOT + tower[1]),
        "gallery": (PLYWOOD * OCT * (8.5 * INCH) ** 2 * SHEET, Z_TOWER + SHEET / 2),
        "lantern": (ACRYLIC * lantern, Z_GALLERY + 4.5 * INCH),
        "lamp": (1.5 * 0.45359237, Z_GALLERY + 4 * INCH),
        "eaves": (PLYWOOD * OCT * (6 * INCH) ** 2 * HALF, Z_LANTERN + HALF / 2),
        "roof": (PLYWOOD * roof[0], Z_EAVES + roof[1]),
        "finial": (CEDAR * pi / 6 * (2 * INCH) ** 3, Z_ROOF + INCH),
    }


def octagon_cf(d):
    """ASCE/SEI 7 Fig. 29.4-1, hexagonal or octagonal: 1.0, 1.2, 1.4 at h/D 1, 7, 25 (memory)."""
    return float(np.interp(TOP / d, [1, 7, 25], [1.0, 1.2, 1.4]))


def octagon(across):
    corners = pi / 8 * (1 + 2 * np.arange(8))
    return shapely.Polygon(
        np.column_stack([np.cos(corners), np.sin(corners)]) * across / 2 / cos(pi / 8)
    )


def width(across, angle):
    """What an octagon shows across a wind: the circumscribed circle's chord nearest square on."""
    return across / cos(pi / 8) * cos(angle % (pi / 4) - pi / 8)


def pushes(angle):
    """(force, height) of each part in a wind of 1 Pa; ``angle`` is the wind's own plan angle.

    ``width`` is taken square to the wind: for an octagon the direction across is again one of its
    own directions, so face on it shows its flats.
    """
    trapezoid = (18 + 10) / 2 * INCH
    z_trapezoid = Z_FOOT + 48 * INCH / 3 * (18 + 2 * 10) / (18 + 10)
    share = width(1.0, angle)
    return [
        (octagon_cf(24 * INCH) * 24 * INCH * share * Z_FOOT, Z_FOOT / 2),
        (octagon_cf(trapezoid) * trapezoid * share * 48 * INCH, z_trapezoid),
        (octagon_cf(17 * INCH) * 17 * INCH * share * SHEET, Z_TOWER + SHEET / 2),
        (octagon_cf(8 * INCH) * 8 * INCH * share * 9 * INCH, Z_GALLERY + 4.5 * INCH),
        (octagon_cf(12 * INCH) * 12 * INCH * share * HALF, Z_LANTERN + HALF / 2),
        (octagon_cf(5.5 * INCH) * 5.5 * INCH * share * 8 * INCH, Z_EAVES + 8 * INCH / 3),
        (0.7 * pi * INCH**2, Z_ROOF + INCH),
    ]


def suction(angle):
    """Uplift of 1 Pa in m2 and its first moment in m3.

    ASCE/SEI 7 Fig. 27.3-1 at h/L above 1: every top here is shorter than half its height, so 1.3 on
    what is level. The roof's faces lean 55.5 degrees: 0.6 where the wind leaves them, nothing where
    it meets them, 1.3 along it, by cos2 of the angle; and from 45 to 60 degrees it all fades
    (judgements). Upwind overhangs take 0.8 beneath as well (27.3.3).
    """
    wind = np.array([cos(angle), sin(angle)])
    total, moment = 0.0, np.zeros(2)

    def add(region, coefficient):
        nonlocal total, moment
        total += coefficient * region.area
        moment = moment + coefficient * region.area * np.array(region.centroid.coords[0])

    # the gallery beyond the lantern, over the tower; eaves beyond the roof, over the lantern
    for deck, body, over in ((17, 10, 8), (12, 8, 11)):
        exposed = octagon(deck * INCH).difference(octagon(over * INCH))
        add(exposed, 1.3)
        support = octagon(body * INCH)
        reach = affinity.translate(support, *(-2 * wind))
        beneath = exposed if over < body else octagon(deck * INCH)
        upwind = beneath.difference(support).intersection(support.union(reach).convex_hull)
        add(upwind, 0.8)
    fade = (60 - degrees(atan2(8, 5.5))) / 15
    for k in range(8):
        fall = pi / 4 * k
        corners = [(0, 0), *(_corner(fall + turn) for turn in (-pi / 8, pi / 8))]
        face = shapely.Polygon(corners)
        along = wind @ np.array([cos(fall), sin(fall)])
        add(face, fade * (along**2 * (0.6 if along > 0 else 0.0) + (1 - along**2) * 1.3))
    return total, moment


def _corner(turn):
    return 5.5 * INCH / cos(pi / 8) * cos(turn), 5.5 * INCH / cos(pi / 8) * sin(turn)


PARTS = weigh()
MASS = sum(mass for mass, _ in PARTS.values())
CENTRE = sum(mass * z for mass, z in PARTS.values()) / MASS


@pytest.fixture(scope="module")
def found():
    return examine(read(EXAMPLE))


def test_each_part_weighs_as_by_hand(found):
    masses = found.structure.part_mass[1]
    for part, mass in zip(found.design.parts, masses, strict=True):
        assert mass == pytest.approx(PARTS[part.name][0], rel=1e-4), part.name
    assert found.structure.mass("typical") == pytest.approx(MASS, rel=1e-4)
    assert found.structure.centre_of_mass("typical")[2] == pytest.approx(CENTRE, rel=1e-4)


@pytest.mark.parametrize("azimuth", [0.0, 15.0, 22.5])
def test_wind_on_it_is_as_by_hand(found, azimuth):
    """58 mph forecast over open ground is 58 sqrt(0.85) = 53.5 mph at the tower: 350 Pa."""
    q = 0.5 * RHO * (58 * 0.44704) ** 2 * 0.85
    i = int(np.argmin(np.abs(found.wind.azimuths - azimuth)))
    angle = radians(270.0 - azimuth)
    force = sum(f for f, _ in pushes(angle))
    moment = sum(f * z for f, z in pushes(angle))
    assert found.wind.pressure == pytest.approx(q, rel=1e-9)
    assert found.wind.force[i] == pytest.approx(q * force, rel=1e-6)
    assert found.wind.force_height[i] == pytest.approx(moment / force, rel=1e-6)
    assert found.wind.uplift[i] == pytest.approx(q * suction(angle)[0], rel=1e-6)


def _cap_centroid(normal_angle, area):
    """How far along the normal the centroid of the cap of that area of the foot's ring lies."""
    ring = octagon(24 * INCH).difference(octagon(13 * INCH))
    turned = affinity.rotate(ring, -normal_angle, origin=(0, 0), use_radians=True)
    low, high = 0.0, turned.bounds[2]
    for _ in range(40):
        line = (low + high) / 2
        cap = turned.intersection(shapely.box(line, -1, 1, 1))
        low, high = (line, high) if cap.area > area else (low, line)
    return cap.centroid.x


YIELD = 5.14 * 25e3  # Prandtl's bearing capacity of loam with s_u 25 kPa, Pa


def _tips_at(angle, normal_angle):
    """The pressure at which M_over = W d about the line, the ground giving way at N/q_u."""
    yield_pressure = YIELD
    weight, q = MASS * G, 0.0
    normal = np.array([cos(normal_angle), sin(normal_angle)])
    toward = cos(angle - normal_angle)
    up, up_moment = suction(angle)
    side = sum(f * z for f, z in pushes(angle)) * toward
    for _ in range(30):
        pivot = _cap_centroid(normal_angle, (weight - q * up) / yield_pressure)
        before, q = q, weight * pivot / (side + up * pivot - float(up_moment @ normal))
        if abs(q - before) < 1e-9 * q:
            break
    return q


def test_it_starts_to_tip_at_the_gust_found_by_hand(found):
    """All directions by 7.5 degrees against lines by 5: an octagon repeats every 45."""
    winds = [radians(a) for a in (270.0, 255.0, 247.5, 240.0)]
    pressures = [
        _tips_at(wind, wind + radians(offset)) for wind in winds for offset in (-10, -5, 0, 5, 10)
    ]
    by_hand = sqrt(2 * min(pressures) / RHO)
    # the program tries lines at multiples of 5 degrees and edge normals only: not deeper, but near
    assert found.limits.tipping == pytest.approx(by_hand, rel=2e-3)
    toward = found.standing.normals[found.limits.tipping_line]
    line = float(np.arctan2(toward[1], toward[0]))
    same = _tips_at(radians(270.0 - found.limits.tipping_azimuth), line)
    assert found.limits.tipping == pytest.approx(sqrt(2 * same / RHO), rel=1e-6)


def test_it_slides_at_the_gust_found_by_hand(found):
    """q (F + mu U) = mu W with mu 0.40 (EN 13814, wood on loam): the least of all directions."""
    least = np.inf
    for azimuth in np.arange(0.0, 360.0, 2.5):
        angle = radians(270.0 - azimuth)
        force = sum(f for f, _ in pushes(angle))
        least = min(least, 0.4 * MASS * G / (force + 0.4 * suction(angle)[0]))
    assert found.limits.sliding == pytest.approx(sqrt(2 * least / RHO), rel=1e-6)


def test_the_push_and_the_gust_to_act_at_are_as_by_hand(found):
    """Push at 5 ft: W d / 1.524 m. To act at: the least of the limits over sqrt 1.5 and of the
    range's low ends, as a forecast gust over sqrt 0.85, down to 5 mph."""
    yield_pressure = YIELD
    pivots = [_cap_centroid(radians(5.0 * k), MASS * G / yield_pressure) for k in range(9)]
    assert found.limits.push == pytest.approx(MASS * G * min(pivots) / 1.524, rel=1e-6)
    limits = found.limits
    gusts = (
        limits.tipping / sqrt(1.5),
        limits.sliding / sqrt(1.5),
        limits.tipping_low,
        limits.sliding_low,
    )
    mph = min(gusts) / sqrt(0.85) / 0.44704
    assert limits.act / 0.44704 == pytest.approx(5 * (mph // 5))
