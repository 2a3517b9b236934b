"""Load cases: what acts at once, what it weighs, and for how long; against sums by hand."""

from math import cos, radians, sin

import numpy as np
import pytest
from designs import design

from yardfast.checks.acting.borne import Borne
from yardfast.checks.acting.design_wind import design_actions, wind_on_bodies
from yardfast.checks.acting.load_cases import downward, load_cases, load_sets, most_used_cases
from yardfast.checks.acting.point_loads import point_loads
from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.loads.combinations import factors
from yardfast.loads.exposed import bare, expose
from yardfast.loads.given import GivenLoad
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site
from yardfast.units.arrays import first_greatest, to_rank, where_greatest

G = 9.80665
BASES = ["service", "allowable", "strength"]
PUSH = GivenLoad("push", 250.0, (0.3, -0.2, 1.1), (0.6, -0.48, 0.64))
LEAN = GivenLoad("lean", 100.0, (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
TUG = GivenLoad("tug", 50.0, (0.0, 0.0, 0.5), (1.0, 0.0, 0.0))


def of(basis):
    return factors(Site("forecast", 20.0, "gravel", basis=basis))


def two(slope=0.0, basis="strength", named=()):
    """A block on a post, and the load cases of a wind from two sides."""
    parts = (
        Part("post", Box(0.2, 0.2, 1.0), mass=10.0),
        Part("block", Box(0.4, 0.4, 0.5), Place(on="post", at=(0.05, 0.0, 0.0)), mass=4.0),
    )
    structure = build_structure(design(*parts))
    wind = np.zeros((1, 2, 1, 2, 6))
    wind[0, :, 0, :, 0] = [[30.0, 12.0], [-30.0, -12.0]]
    borne = [Borne(one, 1, "block", ("block", "post"), 0.0) for one in named]
    cases = load_cases(
        structure,
        wind,
        np.array([270.0, 90.0]),
        ("A",),
        of(basis),
        basis,
        point_loads(borne, ()),
        slope,
    )
    return structure, cases


@pytest.mark.parametrize("basis", BASES)
def test_wind_meets_light_and_heavy_weight_and_calm_air_lasts(basis):
    """ASCE/SEI 7 2.3.1 and 2.4.1: 0.9 D + W, 1.2 D + W, 1.4 D; 0.6 D + 0.6 W, D + 0.6 W, D."""
    helping, hurting, wind, alone = {
        "strength": (0.9, 1.2, 1.0, 1.4),
        "allowable": (0.6, 1.0, 0.6, 1.0),
        "service": (1.0 / 1.5, 1.0, 1.0, 1.0),
    }[basis]
    light, heavy, calm = load_sets(of(basis), basis)
    assert (light.weighing, light.dead, light.wind) == ("light", pytest.approx(helping), wind)
    assert (heavy.weighing, heavy.dead, heavy.wind) == ("heavy", pytest.approx(hurting), wind)
    assert (calm.weighing, calm.dead, calm.wind) == ("heavy", pytest.approx(alone), 0.0)
    assert [one.is_calm for one in (light, heavy, calm)] == [False, False, True]
    assert {one.live for one in (light, heavy, calm)} == {0.0}


@pytest.mark.parametrize(("basis", "permanent", "normal"), [
    ("allowable", 1.6 / 0.9, 1.6), ("service", 1.6 / 0.9, 1.6), ("strength", 1.0 / 0.6, 1.0 / 0.8),
])  # fmt: skip
def test_what_lasts_is_compared_with_what_holds_for_as_long(basis, permanent, normal):
    """NDS 2018 Table 2.3.2: C_D 1.6, 1.0, 0.9; Table N3: lambda 1.0, 0.8, 0.6 (memory)."""
    light, heavy, calm, *loads = load_sets(of(basis), basis, [PUSH], [(LEAN, 1.25)])
    assert light.longer == heavy.longer == 1.0
    assert calm.longer == pytest.approx(permanent)
    alone = [one.longer for one in loads if not one.wind]
    assert alone == pytest.approx([normal, normal, 1.25, 1.25])
    # beside wind a load lasts as a gust does
    assert {one.longer for one in loads if one.wind} == {1.0}


@pytest.mark.parametrize(("basis", "pairs"), [
    ("strength", {(1.0, 1.0)}), ("allowable", {(0.45, 0.75)}), ("service", {(0.75, 0.75)}),
])  # fmt: skip
def test_a_load_and_wind_at_once_by_their_companion_factors(basis, pairs):
    """1.2 D + W + L (ASCE/SEI 7 2.3.1), D + 0.75 L + 0.45 W (2.4.1); on light weight too."""
    both = [one for one in load_sets(of(basis), basis, [PUSH]) if one.loads and one.wind]
    assert {(one.wind, one.live) for one in both} == pairs
    assert [one.weighing for one in both] == ["light", "heavy"]


def test_named_loads_act_each_alone_and_all_at_once():
    sets = load_sets(of("strength"), "strength", [PUSH, LEAN, TUG])[3:]
    sets = [one for one in sets if not one.wind]
    acting = [tuple(load.name for load in one.loads) for one in sets]
    assert acting == [
        *[("push",)] * 2, *[("lean",)] * 2, *[("tug",)] * 2, *[("push", "lean", "tug")] * 2
    ]  # fmt: skip
    assert [one.weighing for one in sets] == ["light", "heavy"] * 4
    assert {one.live for one in sets} == {1.6}
    assert sets[-1].name == "all 3 named loads"


def test_each_body_is_given_its_own_weight_and_wind():
    structure, cases = two()
    assert len(cases.loads) == 2 * 2 + 1
    light, heavy = structure.body_mass[0] * G, structure.body_mass[2] * G
    first = cases.loads[0].reshape(2, 6)
    assert first[:, 2] == pytest.approx(-0.9 * light)
    assert first[:, 0] == pytest.approx([30.0, 12.0])
    # the block stands 0.05 m off: its weight turns by that about y, x into z
    assert first[1, 4] == pytest.approx(0.05 * 0.9 * light[1], rel=1e-9)
    calm = cases.loads[-1].reshape(2, 6)
    assert calm[:, 2] == pytest.approx(-1.4 * heavy)
    assert calm[:, 0] == pytest.approx(0.0)
    assert [cases.azimuth(k) for k in range(5)] == [270.0, 90.0, 270.0, 90.0, None]
    assert [cases.name(k) for k in range(5)] == ["A", "A", "A", "A", "calm"]
    assert cases.longer == pytest.approx([1.0, 1.0, 1.0, 1.0, 1.0 / 0.6])


def test_named_loads_stand_after_the_bodies_at_their_own_places():
    _, cases = two(named=[PUSH, LEAN])
    assert cases.loads.shape[1] == 6 * (2 + 2)
    alone = next(k for k, n in enumerate(cases.of) if cases.sets[n].loads == (PUSH,))
    force = 1.6 * 250.0 * np.array(PUSH.direction)
    assert cases.loads[alone, 12:15] == pytest.approx(force)
    assert cases.loads[alone, 15:18] == pytest.approx(np.cross(PUSH.at, force))
    assert cases.loads[alone, 18:] == pytest.approx(0.0)
    both = next(k for k, n in enumerate(cases.of) if cases.sets[n].loads == (PUSH, LEAN))
    assert cases.loads[both, 18:] == pytest.approx(1.6 * np.r_[0.0, 100.0, 0.0, -100.0, 0.0, 0.0])
    assert not cases.loads[alone, [0, 6]].any()  # without wind


def test_on_a_slope_weight_pulls_toward_eight_sides():
    """Its part along the slope W sin, square to it W cos, whichever way the slope falls."""
    a = radians(10.0)
    ways = downward(a)
    assert ways[:, 2] == pytest.approx(-cos(a))
    assert np.hypot(ways[:, 0], ways[:, 1]) == pytest.approx(sin(a))
    assert len({tuple(np.round(way, 9)) for way in ways}) == 8
    structure, cases = two(slope=a)
    weight = structure.body_mass[2, 0] * G * 1.4
    calm = cases.loads[cases.of == 2].reshape(-1, 2, 6)[:, 0]
    assert len(calm) == 8
    assert np.linalg.norm(calm[:, :3], axis=1) == pytest.approx(weight)
    # as much as it leans is asked at its middle, 0.5 m up
    assert np.hypot(calm[:, 3], calm[:, 4]) == pytest.approx(weight * sin(a) * 0.5)


def test_the_greatest_uses_are_found_once_of_alike_ones():
    """Symmetric winds use a piece alike: only the first of them is looked at closely."""
    used = np.array([0.5, 0.9, 0.9, 0.2, 0.9 * (1 - 1e-9), 0.7, np.inf])
    assert most_used_cases(used, 3).tolist() == [6, 1, 5]
    assert most_used_cases(used, 10).tolist() == [6, 1, 5, 0, 3]
    assert most_used_cases(np.zeros(4), 2).tolist() == [0]


@pytest.mark.parametrize("noise", [0.0, 1e-12, -1e-12, 1e-8, -1e-8])
def test_which_of_alike_cases_is_told_does_not_hang_on_rounding(noise):
    """Whichever of two winds that do the same comes out greater by rounding, the first is told."""
    used = np.array([0.2, 0.9 * (1.0 + noise), 0.9, 0.5, 0.9 * (1.0 - noise)])
    assert most_used_cases(used, 3).tolist() == [1, 3, 0]
    assert where_greatest(used[None]) == (0, 1)
    assert first_greatest(used) == 1
    assert to_rank(used[1]) == to_rank(used[2]) or abs(noise) > 1e-9


def test_the_least_wind_acts_on_each_body_and_on_the_whole_outline_alike():
    """16 psf (766.1 Pa) level on two boxes, one on the other, at each's middle (ASCE 7 29.7)."""
    low = Part("low", Box(1.0, 1.0, 0.5), density=500.0)
    high = Part("high", Box(0.4, 0.4, 1.0), Place(on="low"), density=500.0)
    piece = design(low, high, method="ASCE 7-22", wind=30.0, exposure="C", basis="allowable")
    structure = build_structure(piece)
    book = method_of(piece.table(Site), structure.height)
    exposed = expose(structure, bare(structure, [None, None], book), False)
    wrench, names = wind_on_bodies(exposed, book)
    assert names[-1] == "minimum"
    north = int(np.argmin(np.abs(exposed.azimuths)))
    p = 16.0 * 47.880259
    assert book.minimum == pytest.approx(p, rel=1e-6)
    F, up = p * np.array([0.5, 0.4]), np.array([0.25, 1.0])
    assert wrench[-1, north, -1, :, 1] == pytest.approx(-F, rel=1e-6)
    assert wrench[-1, north, -1, :, 3] == pytest.approx(F * up, rel=1e-6)
    whole = design_actions(exposed, book).wrench[:, :, -1]
    assert wrench[:, :, -1].sum(axis=-2) == pytest.approx(whole, rel=1e-6, abs=1e-6)


def test_what_presses_down_is_the_weight_of_every_body_and_calm_air_lifts_none():
    """Of two boxes of 20 and 30 kg, one on the other: 50 kg x 9.80665 in calm air, and two thirds
    of it beside a wind by a factor of safety of 1.5."""
    parts = (
        Part("low", Box(0.5, 0.5, 0.2), mass=20.0),
        Part("high", Box(0.5, 0.5, 1.0), Place(on="low"), mass=30.0),
    )
    cases = examine(design(*parts)).at.cases
    weight = 50.0 * 9.80665
    assert cases.downward[cases.calm] == pytest.approx(weight, rel=1e-9)
    assert cases.downward.min() == pytest.approx(weight / 1.5, rel=1e-3)
    assert cases.downward.max() == pytest.approx(weight, rel=1e-3)
