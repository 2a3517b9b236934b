"""Where two parts meet: level and upright faces, which way they leave, and what they meet."""

import numpy as np
import pytest

from yardfast.checks.timber.terms.joint_material import met
from yardfast.design.model import Design, Part, Place
from yardfast.design.placing import place_parts
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.statics.contacts.meeting import meeting

UP = np.array([0.0, 0.0, 1.0])


def bodies(*parts, turn=0.0):
    return place_parts(Design("met", "metric", parts, turn=turn))


def part(name, shape, material="southern pine", **place):
    return Part(name, shape, Place(**place), material=material)


FOOT = part("foot", Frame(Regular(8, 0.6), 0.14, 0.038))
TOWER = part("tower", Shell(8, 0.46, 0.25, 1.2, 0.018), "softwood plywood", on="foot")
DECK = part("deck", Plate(Regular(8, 0.43), 0.018), "softwood plywood", on="tower")


def test_a_body_on_a_ring_meets_it_by_its_wall():
    foot, tower = bodies(FOOT, TOWER)
    face = meeting(tower, foot)
    assert face.leaves == pytest.approx(UP)
    octagon = 8 * np.tan(np.pi / 8)
    wall = 0.018 * np.hypot(1.2, 0.105) / 1.2
    assert face.area.area == pytest.approx(octagon * (0.23**2 - (0.23 - wall) ** 2), rel=0.01)
    assert face.origin[2] == pytest.approx(0.038)


def test_a_deck_on_a_hollow_body_meets_the_top_of_its_wall_only():
    _, tower, deck = bodies(FOOT, TOWER, DECK)
    octagon = 8 * np.tan(np.pi / 8)
    assert meeting(deck, tower).area.area < 0.4 * octagon * 0.125**2


def test_what_hangs_leaves_downward_in_a_right_handed_plane():
    beam, seat = bodies(
        part("beam", Box(1.0, 0.1, 0.1), at=(0.0, 0.0, 2.0)),
        part("seat", Box(0.5, 0.2, 0.03), under="beam"),
    )
    face = meeting(seat, beam)
    assert face.leaves == pytest.approx(-UP)
    assert np.cross(face.right, face.up) == pytest.approx(face.leaves)
    assert face.area.area == pytest.approx(0.5 * 0.1)


@pytest.mark.parametrize("turn", [0.0, 0.3, 2.0])
def test_a_board_before_a_leg_leaves_to_the_front(turn):
    leg, board = bodies(
        part("leg", Box(0.09, 0.09, 1.5)),
        part("board", Panel(1.0, 0.6, 0.018), at=(0.0, -0.054, 0.8)),
        turn=turn,
    )
    face = meeting(board, leg)
    assert face.leaves == pytest.approx([np.sin(turn), -np.cos(turn), 0.0], abs=1e-6)
    assert np.cross(face.right, face.up) == pytest.approx(face.leaves)
    assert face.area.area == pytest.approx(0.09 * 0.6, rel=0.01)
    middle = face.on_site(np.array([[0.0, 1.1]]))[0]
    assert middle == pytest.approx([0.045 * np.sin(turn), -0.045 * np.cos(turn), 1.1], abs=1e-3)


def test_a_block_inside_a_tower_meets_its_wall():
    _, tower, block = bodies(
        FOOT,
        part("tower", Shell(4, 0.46, 0.46, 1.2, 0.018), "softwood plywood", on="foot"),
        part("block", Box(0.04, 0.04, 0.2), on="foot", at=(0.192, 0.0, 0.0)),
    )
    face = meeting(tower, block)
    assert face.leaves == pytest.approx([1.0, 0.0, 0.0], abs=1e-6)
    assert face.area.area == pytest.approx(0.04 * 0.2, rel=0.02)


def test_parts_that_stand_apart_do_not_meet():
    one, far = bodies(
        part("one", Box(0.1, 0.1, 1.0)), part("far", Box(0.1, 0.1, 1.0), at=(0.2, 0.0, 0.0))
    )
    assert meeting(one, far) is None


def test_walls_within_an_outline_meet_only_where_blocks_bridge():
    house, roof = bodies(
        part("house", Box(0.2, 0.2, 0.2, 0.018)),
        part("roof", Cone(4, 0.3, 0.1, 0.012), on="house"),
    )
    assert meeting(roof, house) is None
    assert meeting(roof, house, bridged=True).leaves == pytest.approx(UP)


@pytest.mark.parametrize(
    ("shape", "material", "direction", "thickness", "into"),
    [
        (Plate(Regular(8, 0.43), 0.018), "softwood plywood", UP, 0.018, "panel face"),
        (Plate(Regular(8, 0.43), 0.025), "western redcedar", -UP, 0.025, "side grain"),
        (Shell(8, 0.46, 0.25, 1.2, 0.018), "softwood plywood", UP, 1.2, "panel edge"),
        (Shell(8, 0.46, 0.25, 1.2, 0.018), "softwood plywood", [1, 0, 0], 0.018, "panel face"),
        (Shell(8, 0.46, 0.25, 1.2, 0.018), "western redcedar", UP, 1.2, "end grain"),
        (Solid(4, 0.09, 0.09, 1.5), "southern pine", UP, 1.5, "end grain"),
        (Solid(4, 0.09, 0.09, 1.5), "southern pine", [0, 1, 0], 0.09, "side grain"),
        (Frame(Regular(8, 0.6), 0.14, 0.038), "southern pine", -UP, 0.038, "side grain"),
        (Box(0.6, 0.1, 0.05), "southern pine", UP, 0.05, "side grain"),
        (Box(0.6, 0.1, 0.05), "southern pine", [1, 0, 0], 0.6, "end grain"),
        (Box(0.6, 0.3, 0.4, 0.018, frozenset(["top"])), "marine plywood", UP, 0.018, "panel face"),
        (Box(0.6, 0.3, 0.4, 0.018, frozenset(["top"])), "marine plywood", -UP, 0.4, "panel edge"),
        (Panel(1.0, 0.6, 0.018), "marine plywood", [0, 1, 0], 0.018, "panel face"),
        (Panel(1.0, 0.6, 0.018), "marine plywood", UP, 0.6, "panel edge"),
        (Member((0, 0, 0), (2, 0, 0), 0.04, 0.09), "southern pine", UP, 0.09, "side grain"),
        (Member((0, 0, 0), (2, 0, 0), 0.04, 0.09), "southern pine", [0, 1, 0], 0.04, "side grain"),
        (Member((0, 0, 0), (2, 0, 0), 0.04, 0.09), "southern pine", [1, 0, 0], 2.0, "end grain"),
    ],
)
def test_what_a_fastener_meets(shape, material, direction, thickness, into):
    only = part("only", shape, material)
    found = met(bodies(only)[0], only, np.asarray(direction, dtype=float))
    assert found.thickness == pytest.approx(thickness)
    assert found.into == into


def test_planks_on_one_another_meet_all_over():
    plank = Plate(Rectangle(0.6, 0.2), 0.03)
    low, high = bodies(part("low", plank), part("high", plank, on="low"))
    assert meeting(high, low).area.area == pytest.approx(0.12)


@pytest.mark.parametrize("deep", [0.01, 0.03])
def test_a_leaning_stick_that_goes_into_a_block_meets_it_in_the_blocks_face(deep):
    """Whichever is named first: the block's top, 0.3 m up, cut by a stick 40 mm square that leans
    30 degrees: 40 mm by 40 mm over the cosine. It leaves the other way, that is all."""
    block = part("block", Box(0.4, 0.4, 0.3))
    way = np.array([np.sin(np.pi / 6.0), 0.0, np.cos(np.pi / 6.0)])
    start = np.array([0.0, 0.0, 0.3]) - deep / way[2] * way
    stick = part("stick", Member(tuple(start), tuple(start + 0.8 * way), 0.04, 0.04))
    one, other = bodies(block, stick)
    here, there = meeting(one, other), meeting(other, one)
    area = 0.04 * 0.04 / np.cos(np.pi / 6.0)
    for face in (here, there):
        assert face.area.area == pytest.approx(area, rel=1e-6)
        assert face.middle == pytest.approx([0.0, 0.0, 0.3], abs=1e-6)
    assert here.leaves == pytest.approx([0.0, 0.0, -1.0])
    assert there.leaves == pytest.approx([0.0, 0.0, 1.0])
