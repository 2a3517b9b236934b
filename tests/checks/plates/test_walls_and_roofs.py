"""Walls of boxes and slopes of roofs, worked a second way; and what is refused of them."""

from math import hypot, tan

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.plates.walls import plates_of
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.units.frozen import replace

BASE = Part("foot", Plate(Rectangle(2.4, 2.4), 0.05), material="concrete")
PLY = "softwood plywood"


def body(*open_faces, length=1.0, width=0.6, height=0.5, wall=0.018, material=PLY, **more):
    shape = Box(length, width, height, wall, frozenset(open_faces), **more)
    return Part("body", shape, Place(on="foot"), material=material)


def judged(*parts, turn=0.0, **site):
    found = examine(design(*parts, turn=turn, **{"wind": 30.0, **site}))
    return {one.name: one for one in found.members.judged}, {
        one.name: one.why for one in found.members.not_judged
    }


def q(wind=30.0):
    return 0.5 * 1.226 * wind**2


def test_wall_of_an_open_topped_box_by_hand():
    """Suction 1.3 q and 0.6 q more, from corner to corner of the long wall: w s^2/8."""
    one = judged(BASE, body("top"))[0]["body"]
    assert (one.role, one.where) == ("box wall", "long wall")
    assert one.check.demand == pytest.approx(1.9 * q() * 0.5 * 1.0**2 / 8.0, rel=1e-6)


def test_wind_that_blows_in_at_an_open_side_adds_to_the_suction_on_the_top():
    """1.3 q and 0.6 q more; without a front its top spans from side to side: w s^2/8."""
    one = judged(BASE, body("front"))[0]["body"]
    assert one.where == "top"
    assert one.check.demand == pytest.approx(1.9 * q() * 0.6 * 1.0**2 / 8.0, rel=1e-6)


def test_a_lid_on_an_open_top_takes_the_wind_out_of_it():
    lid = Part("lid", Plate(Rectangle(1.0, 0.6), 0.018), Place(on="body"), material=PLY)
    open_, shut = (judged(BASE, body("top"), *more)[0]["body"] for more in ((), (lid,)))
    assert shut.check.demand / open_.check.demand == pytest.approx(1.3 / 1.9)


def test_a_closed_box_is_judged_the_better_way_of_its_worst_plate():
    """Its top, 1.0 by 0.6: along the grain 1.0^2/845, across it 0.6^2/225; both for each m."""
    one = judged(BASE, body())[0]["body"]
    loads = {
        (1.0, 0.6): min(1.0**2 / 845.0, 0.6**2 / 225.0),
        (1.0, 0.5): min(1.0**2 / 845.0, 0.5**2 / 225.0),
        (0.6, 0.5): min(0.6**2 / 845.0, 0.5**2 / 225.0),
    }
    worst = max(loads.values()) * 1.3 * q() / 8.0
    strip = 0.5 + 0.5 * min((0.6 / 0.0254 - 8.0) / 16.0, 1.0)
    per = 4.4482216152605 * 0.0254 / 0.3048 * 1.6 * 0.75 * strip
    assert one.where == "top"
    assert one.check.utilization == pytest.approx(worst / per, rel=1e-6)


@pytest.mark.parametrize(
    ("parts", "name", "why"),
    [
        ((body("top", "front"),), "body", "free edges"),
        ((body("top", material=None),), "body", "no material"),
        ((body("top", wall=0.003),), "body", "no values"),
        ((body("top", height=1.4, wall=0.02, material="redwood"),), "body", "across grain"),
        (
            (
                body(),
                Part("pot", Box(0.2, 0.2, 0.3, 0.018), Place(on="body"), material=PLY),
            ),
            "body",
            "load on it",
        ),
    ],
    ids=["a corner without walls", "no material", "too thin", "boards across", "something on top"],
)
def test_what_is_not_plain_of_a_box_is_refused(parts, name, why):
    given_ = tuple(
        replace(part, density=600.0) if part.material is None else part for part in parts
    )
    assert judged(BASE, *given_)[1][name] == why


def test_an_open_front_leaves_the_side_walls_to_floor_and_top():
    held = {
        (one.where, one.held) for one in plates_of(Box(1.0, 0.6, 0.5, 0.018, frozenset({"front"})))
    }
    assert ("short wall", (False, True)) in held
    assert ("long wall", (True, True)) in held


@pytest.mark.slow
@settings(max_examples=20, deadline=None)
@given(
    st.floats(0.4, 1.5),
    st.floats(0.3, 1.2),
    st.floats(0.3, 1.2),
    st.sampled_from([(0.0095, 0.012), (0.012, 0.0155), (0.0155, 0.018)]),
    st.sampled_from([(), ("top",), ("front",), ("top", "bottom")]),
)
def test_thicker_walls_are_never_weaker_nor_larger_boxes_stronger(
    length, width, height, walls, open_faces
):
    def use(wall, size=1.0):
        sizes = {"length": length * size, "width": width * size, "height": height * size}
        part = body(*open_faces, wall=wall, **sizes)
        return judged(BASE, part)[0]["body"].check.utilization

    thin, thick = (use(wall) for wall in walls)
    assert thick <= thin * (1.0 + 1e-9)
    assert use(walls[0], 1.3) >= thin * (1.0 - 1e-9)


@settings(max_examples=10, deadline=None)
@given(st.floats(0.0, 6.28))
def test_turning_a_box_with_a_roof_changes_nothing(turn):
    roof = Part("roof", Gable(1.1, 0.7, 0.3, 0.012), Place(on="body"), material=PLY)
    here, there = (judged(BASE, body(), roof, turn=angle)[0] for angle in (0.0, turn))
    assert set(here) == set(there) == {"body", "roof"}
    for name, one in here.items():
        assert there[name].check.utilization == pytest.approx(one.check.utilization, rel=1e-9)


def test_a_mirrored_box_is_as_strong():
    sides = [
        judged(BASE, body(face, length=0.9, width=0.5))[0]["body"].check.utilization
        for face in ("left", "right")
    ]
    assert sides[0] == pytest.approx(sides[1], rel=1e-12)


def edge_zone(rise, run):
    """Local suction at the ends of ridge and eaves: 3.6 at 20 degrees, 3.2 from 27 on.

    ASCE/SEI 7-16 Fig. 30.3-2B zone 3r and 30.3-2D zone 3e; linear between is a judgement.
    """
    return np.interp(np.degrees(np.arctan2(rise, run)), [20.0, 27.0], [3.6, 3.2])


def test_slopes_by_hand():
    """Local suction and 0.6 q between wall and ridge; beyond the wall on a cantilever: w o^2/2."""
    house, wind = body(length=1.0, width=0.6), 30.0
    slope = hypot(0.3, 0.4)
    roof = Part("roof", Gable(1.0, 0.8, 0.3, 0.018), Place(on="body"), material=PLY)
    one = judged(BASE, house, roof, wind=wind)[0]["roof"]
    inside = slope * 0.6 / 0.8
    local = edge_zone(0.3, 0.4)
    between, eaves = (local + 0.6) * inside**2 / 8.0, local * (slope - inside) ** 2 / 2.0
    assert one.where == "between"
    assert between > eaves
    assert one.check.demand == pytest.approx(between * q(wind) * 1.0, rel=1e-6)
    wide = Part("roof", Gable(1.0, 1.2, 0.3, 0.018), Place(on="body"), material=PLY)
    two = judged(BASE, house, wide, wind=wind)[0]["roof"]
    slope = hypot(0.3, 0.6)
    assert two.where == "eaves"
    assert two.check.demand == pytest.approx(
        max(2.1, edge_zone(0.3, 0.6)) * q(wind) * (slope / 2.0) ** 2 / 2.0, rel=1e-6
    )


def test_ends_beyond_the_gable_walls_stand_out_too():
    roof = Part("roof", Gable(1.8, 0.62, 0.25, 0.018), Place(on="body"), material=PLY)
    one = judged(BASE, body(length=1.0), roof)[0]["roof"]
    assert one.where == "ends"
    slope = hypot(0.25, 0.31)
    assert one.check.demand == pytest.approx(
        edge_zone(0.25, 0.31) * q() * slope * 0.4**2 / 2.0, rel=1e-6
    )


def test_in_calm_air_a_heavy_roof_is_judged_by_its_weight():
    roof = Part("roof", Gable(1.0, 0.6, 0.3, 0.018), Place(on="body"), covering=40.0, material=PLY)
    calm = judged(BASE, body(), roof, wind=2.0)[0]["roof"].check
    windy = judged(BASE, body(), replace(roof, covering=0.0))[0]["roof"].check
    slope = hypot(0.3, 0.3)
    weight = (40.0 + 0.018 * 576.665) * 9.80665
    assert calm.demand >= weight * slope**2 / 8.0
    assert calm.dead > 0.0
    assert windy.dead == 0.0


@pytest.mark.parametrize(
    ("roof", "why"),
    [
        (Gable(1.0, 0.7, 0.4, 0.012, 0.4, 0.25), "knee"),
        (Cone(0, 0.6, 0.4, 0.012), "curved"),
        (Dome(0.6, 0.2, 0.012), "curved"),
        (Vault(1.0, 0.6, 0.4, 0.012), "curved"),
        (Gable(1.0, 0.7, 0.4, 0.003), "no values"),
    ],
    ids=["gambrel", "round cone", "dome", "vault", "foil"],
)
def test_roofs_that_are_not_plain_are_refused(roof, why):
    part = Part("roof", roof, Place(on="body"), material=PLY)
    assert judged(BASE, body(), part)[1]["roof"] == why


def test_a_roof_on_single_posts_is_refused():
    posts = Part(
        "posts",
        Box(0.09, 0.09, 1.2),
        Place(on="foot", count=2, step=(0.8, 0.0, 0.0), at=(-0.4, 0.0, 0.0)),
        material="southern pine",
    )
    roof = Part("roof", Gable(1.0, 0.7, 0.3, 0.018), Place(on="posts"), material=PLY)
    assert judged(BASE, posts, roof)[1]["roof"] == "at points"


def test_pointed_roof_by_hand():
    """One side of a hexagon at the eave, w s^2/8: local suction and 0.18 from within.

    Where it stands out beyond its tower 2.1, no more.
    """
    tower = Part("tower", Shell(6, 0.5, 0.5, 0.8, 0.018), Place(on="foot"), material=PLY)
    for across in (0.5, 0.6):
        pressure = edge_zone(0.3, across / 2.0) + 0.18
        roof = Part("roof", Cone(6, across, 0.3, 0.012), Place(on="tower"), material=PLY)
        one = judged(BASE, tower, roof)[0]["roof"]
        side, slope = across * tan(np.pi / 6.0), hypot(0.3, across / 2.0)
        assert one.role == "roof panel"
        assert one.check.demand == pytest.approx(pressure * q() * slope * side**2 / 8.0, rel=1e-6)


def test_a_roof_that_wind_gets_under_is_lifted_more():
    posts = Part(
        "posts",
        Box(0.05, 0.05, 1.0),
        Place(on="foot", count=4, ring=0.6, start=np.pi / 4.0),
        material="southern pine",
    )
    cap = Part("cap", Plate(Regular(6, 0.8), 0.018), Place(on="posts"), material=PLY)
    roof = Part("roof", Cone(6, 0.8, 0.3, 0.012), Place(on="cap"), material=PLY)
    one = judged(BASE, posts, cap, roof)[0]["roof"]
    side, slope = 0.8 * tan(np.pi / 6.0), hypot(0.3, 0.4)
    assert one.check.demand == pytest.approx(
        (edge_zone(0.3, 0.4) + 0.6) * q() * slope * side**2 / 8.0, rel=1e-6
    )
