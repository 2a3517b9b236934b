"""What meets what: plane geometry by hand, one fit of 1/8 in, and graphs worked a second way."""

from math import radians
from pathlib import Path

import numpy as np
import pytest
from designs import design
from garden import each_example
from hypothesis import given, settings
from hypothesis import strategies as st
from joint_designs import POST, joint
from sample_file import HARBOUR_LIGHT

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.cli.commands.new import default_file
from yardfast.cli.starting.pieces import PIECE_KINDS
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.weight import Weight
from yardfast.design.structure import build_structure
from yardfast.statics.contacts.edge import GROUND, Holds
from yardfast.statics.contacts.graph import graph_of
from yardfast.statics.contacts.look_again import look_again
from yardfast.statics.contacts.unsupported import unsupported
from yardfast.units.frozen import replace

BASE = Part("base", Box(1.0, 1.0, 0.2), density=600.0)
BLOCK = Box(0.3, 0.3, 0.4)
RING = Part("ring", Frame(Regular(4, 0.8), 0.1, 0.04), density=600.0)


def graph(*parts):
    return graph_of(build_structure(design(*parts)))


def part(name, shape, **more):
    loose = more.pop("loose", False)
    mass = more.pop("mass", None)
    given = {"mass": mass} if mass is not None else {"density": 500.0}
    return Part(name, shape, Place(**more), loose=loose, **given)


def named(found, edge):
    parts, bodies = found.structure.design.parts, found.structure.bodies
    ends = [edge.of, edge.to]
    return tuple(
        "ground" if k == GROUND else (parts[bodies[k].part].name, bodies[k].copy) for k in ends
    )


def pairs(found):
    """Every edge by the names and copies of its ends, and what it holds."""
    return {(frozenset(named(found, edge)), edge.holds) for edge in found.edges}


def the_edge(found, one, other):
    (edge,) = [
        edge
        for edge in found.edges
        if {end[0] for end in named(found, edge) if end != "ground"} == {one, other}
    ]
    return edge


def the_fault(*parts):
    (fault,) = unsupported(graph(*parts))
    return fault


# --- kinds of edges -------------------------------------------------------------------------------


def test_each_kind_of_edge():
    lamp = part("lamp", Weight(), under="post", at=(0.0, 0.0, -0.1), mass=1.0)
    found = graph(
        BASE,
        part("post", Box(0.1, 0.1, 1.0), on="base"),
        part("pot", Box(0.2, 0.2, 0.2), on="base", at=(0.3, 0.0, 0.0), loose=True),
        lamp,
    )
    assert {(frozenset(named(found, e)), e.holds) for e in found.edges} == {
        (frozenset({("base", 0), "ground"}), Holds.STANDS),
        (frozenset({("post", 0), ("base", 0)}), Holds.ASSUMED),
        (frozenset({("pot", 0), ("base", 0)}), Holds.RESTS),
        (frozenset({("lamp", 0), ("post", 0)}), Holds.HUNG),
    }


def test_a_post_in_the_ground_is_let_into_it_and_a_joint_fastens():
    found = graph_of(examine(read(Path("examples/fingerpost.toml"))).structure)
    kinds = {edge.holds for edge in found.edges}
    assert Holds.EMBEDDED in kinds
    assert Holds.STANDS not in kinds
    assert Holds.FASTENED in kinds


def test_an_edge_keeps_where_the_two_meet():
    """0.3 x 0.3 m at the base's top, square to it."""
    edge = the_edge(
        graph(BASE, part("block", BLOCK, on="base", at=(0.1, 0.2, 0.0))), "block", "base"
    )
    assert edge.face.area.area == pytest.approx(0.09)
    assert edge.face.middle == pytest.approx([0.1, 0.2, 0.2])
    assert edge.face.leaves == pytest.approx([0.0, 0.0, 1.0])


# --- one fit --------------------------------------------------------------------------------------


@pytest.mark.parametrize("gap", [-1.0, 0.0, 1.0, 3.1])
@pytest.mark.parametrize("placed", ["on", "at"])
def test_what_lies_within_an_eighth_of_an_inch_meets(gap, placed):
    block = part("block", BLOCK, on="base", at=(0.0, 0.0, gap / 1000.0))
    if placed == "at":
        block = part("block", BLOCK, at=(0.0, 0.0, 0.2 + gap / 1000.0))
    found = graph(BASE, block)
    assert unsupported(found) == look_again(found) == ()
    edge = the_edge(found, "block", "base")
    assert (edge.apart, edge.holds) == (0.0, Holds.ASSUMED)
    assert [named(found, one) for one in found.held] == [(("block", 0), ("base", 0))]
    assert edge.face.area.area == pytest.approx(0.09)


def test_3_3_mm_apart_is_carried_with_a_note_where_it_is_written_on_and_else_floats():
    on = graph(BASE, part("block", BLOCK, on="base", at=(0.0, 0.0, 0.0033)))
    (note,) = look_again(on)
    assert (note.part, note.key) == ("block", "at")
    assert the_edge(on, "block", "base").apart == pytest.approx(0.0033)
    fault = the_fault(BASE, part("block", BLOCK, at=(0.0, 0.0, 0.2033)))
    assert (fault.part, fault.key) == ("block", "at")
    assert "3.3 mm from base" in fault.found


@pytest.mark.parametrize(("gap", "carried"), [(25.4, True), (25.5, False)])
def test_on_carries_across_an_inch_and_no_more(gap, carried):
    found = graph(BASE, part("block", BLOCK, on="base", at=(0.0, 0.0, gap / 1000.0)))
    assert (unsupported(found) == ()) is carried
    assert bool(look_again(found)) is carried
    if not carried:
        (fault,) = unsupported(found)
        assert (fault.part, fault.key) == ("block", "on")
        assert "25.5 mm from base" in fault.found
        assert "3.2 mm" in fault.expected


def test_what_hangs_under_carries_across_an_inch_too():
    arm = part("arm", Box(0.6, 0.1, 0.1), on="post", at=(0.2, 0.0, 0.0))
    post = part("post", Box(0.1, 0.1, 1.0), on="base")
    for gap, carried in ((0.0, True), (0.02, True), (0.03, False)):
        sign = part("sign", Box(0.2, 0.02, 0.2), under="arm", at=(0.3, 0.0, -gap))
        assert (unsupported(graph(BASE, post, arm, sign)) == ()) is carried


# --- holes, roofs over walls, leaning and round things -------------------------------------------


def test_over_the_hole_of_a_ring_a_body_floats_and_beside_it_does_not():
    """The ring's hole is 0.6 m wide: a block of 0.3 m meets no wood of it, one of 0.62 m does."""
    fault = the_fault(RING, part("block", BLOCK, on="ring"))
    assert (fault.part, fault.key) == ("block", "on")
    assert "no wood of it meets ring" in fault.found
    found = graph(RING, part("block", Box(0.62, 0.62, 0.4), on="ring"))
    assert unsupported(found) == ()
    assert the_edge(found, "block", "ring").face.area.area == pytest.approx(0.62**2 - 0.6**2)


def test_a_lid_or_gable_over_walls_is_carried_by_them():
    """A roof 1.0 m wide in plan, hollow, on walls 0.6 m wide: its own walls stand out as eaves."""
    body = part("body", Box(0.6, 0.6, 0.6, 0.02), on="base")
    for roof in (Gable(1.0, 1.0, 0.3, 0.02), Cone(4, 1.0, 0.3, 0.02)):
        found = graph(BASE, body, part("roof", roof, on="body"))
        assert unsupported(found) == ()
        assert the_edge(found, "roof", "body").apart == 0.0
    inside = part("body", Box(0.6, 0.6, 0.6, 0.02, frozenset({"top"})), on="base")
    dropped = part("ring", Shell(4, 0.4, 0.4, 0.1, 0.02), on="body")
    assert the_fault(BASE, inside, dropped).part == "ring"


def test_leaning_legs_and_balls_meet_what_stands_on_them():
    legs = part("legs", Box(0.1, 0.1, 0.5), count=4, ring=1.0, tilt=radians(10))
    top = part("top", Plate(Rectangle(1.2, 1.2), 0.03), on="legs")
    found = graph(legs, top)
    assert unsupported(found) == ()
    assert sum(edge.to != GROUND for edge in found.edges) == 4
    balls = part("balls", Ball(0.1), count=4, ring=1.0)
    found = graph(balls, replace(top, place=Place(on="balls")))
    assert unsupported(found) == ()
    faces = [edge.face for edge in found.edges if edge.to != GROUND]
    assert [face.area.area for face in faces] == [0.0] * 4
    assert sorted(face.middle.round(6).tolist() for face in faces) == [
        [-0.5, 0.0, 0.1],
        [0.0, -0.5, 0.1],
        [0.0, 0.5, 0.1],
        [0.5, 0.0, 0.1],
    ]


def test_copies_each_have_their_own_edges_and_one_that_hangs_is_told():
    posts = part("posts", Box(0.1, 0.1, 0.5), count=4, ring=0.8, on="base")
    caps = part("caps", Box(0.14, 0.14, 0.03), count=4, ring=0.8, on="posts")
    found = graph(BASE, posts, caps)
    met = {frozenset(named(found, edge)) for edge in found.edges if edge.to != GROUND}
    assert met == {frozenset({("caps", k), ("posts", k)}) for k in range(4)} | {
        frozenset({("posts", k), ("base", 0)}) for k in range(4)
    }
    three = replace(posts, place=Place(on="base", count=3, ring=0.8))
    assert the_fault(BASE, three, caps).part == "caps"


# --- what floats and what falls off ---------------------------------------------------------------


def test_what_stands_on_something_that_floats_is_not_told_again():
    lantern = part("lantern", BLOCK, on="base", at=(0.0, 0.0, 0.5))
    fault = the_fault(BASE, lantern, part("roof", Cone(4, 0.4, 0.2), on="lantern"))
    assert fault.part == "lantern"


def test_all_that_floats_is_told_at_once():
    faults = unsupported(
        graph(BASE, part("one", BLOCK, at=(0, 0, 1.0)), part("two", BLOCK, at=(0.5, 0, 2.0)))
    )
    assert [fault.part for fault in faults] == ["one", "two"]


@pytest.mark.parametrize(("off", "falls"), [(0.649, False), (0.651, True)])
def test_a_loose_part_whose_weight_lies_beyond_its_seat_falls_off(off, falls):
    """A plank 1.2 m long on a base that ends at 0.5 m: statics, its middle over the edge."""
    plank = part("plank", Box(1.2, 0.2, 0.05), on="base", at=(off - 0.15, 0.0, 0.0), loose=True)
    found = unsupported(graph(BASE, plank))
    assert bool(found) is falls
    if falls:
        assert (found[0].part, found[0].key) == ("plank", "loose")
        assert "1 mm beyond" in found[0].found


def test_what_stands_on_a_loose_part_counts_where_its_weight_lies():
    """A plank of 6 kg in balance, and 3 kg at its end 0.5 m beyond the seat: over all 0.03 m."""
    plank = part("plank", Box(1.2, 0.2, 0.05), on="base", at=(0.3, 0.0, 0.0), loose=True)
    heavy = part("heavy", Weight(), on="plank", at=(0.55, 0.0, 0.0), mass=30.0)
    assert unsupported(graph(BASE, plank)) == ()
    assert the_fault(BASE, plank, heavy).part == "plank"


def test_what_merely_rests_holds_up_nothing_beneath_it_or_beside_it():
    """A loose block beneath a shelf, or against a post, is not held: it presses, no more."""
    post = part("post", Box(0.1, 0.1, 1.0), on="base")
    shelf = part("shelf", Box(0.5, 0.1, 0.03), on="post", at=(0.2, 0.0, 0.0))
    beneath = part("beneath", Box(0.1, 0.1, 0.1), at=(0.3, 0.0, 1.1), loose=True)
    against = part("against", Box(0.1, 0.1, 0.1), at=(0.1, 0.0, 0.6), loose=True)
    for hangs in (beneath, against):
        assert the_fault(BASE, post, shelf, hangs).part == hangs.name
        assert unsupported(graph(BASE, post, shelf, replace(hangs, loose=False))) == ()


def test_wheels_weights_and_what_swings_are_exempt_and_what_hangs_on_them_too():
    post = part("post", Box(0.1, 0.1, 1.0), on="base")
    wheel = part("wheel", Rotor(4, 0.3, 0.05, 0.1, 0.01, 0.0), on="post", at=(0, -0.3, 0.1))
    sign = Part("sign", Panel(0.3, 0.2, 0.02), Place(at=(0, 0, 0.6)), density=500.0, hangs_at=1.1)
    chain = part("chain", Box(0.02, 0.02, 0.1), under="sign", at=(0, 0, -0.2))
    assert unsupported(graph(BASE, post, wheel, sign, chain)) == ()


# --- what goes where ------------------------------------------------------------------------------


def test_what_a_body_carries_and_what_lies_beneath():
    found = graph(
        BASE,
        part("legs", Box(0.1, 0.1, 0.5), on="base", count=2, step=(0.6, 0.0, 0.0), at=(-0.3, 0, 0)),
        part("top", Box(0.8, 0.3, 0.05), on="legs"),
        part("pot", BLOCK, on="top"),
    )
    base, left, right, top, pot = range(5)
    assert found.steps() == [0, 1, 1, 2, 3]
    assert found.carried(left).tolist() == [False, True, False, False, False]
    assert found.carried(top).tolist() == [False, False, False, True, True]
    assert found.carried(base).all()
    assert set(found.beneath(pot)) == {pot, top, left, right, base}


BODIES = st.lists(
    st.tuples(*(st.integers(-2, 2) for _ in range(2)), st.integers(0, 3), st.booleans()),
    min_size=1,
    max_size=8,
)


def blocks(places):
    """Blocks of 0.2 m on a grid of 0.15 m, some loose, over a base that most of them reach."""
    return [BASE] + [
        part(f"b{k}", Box(0.2, 0.2, 0.2), at=(0.15 * x, 0.15 * y, 0.2 + 0.19 * z), loose=loose)
        for k, (x, y, z, loose) in enumerate(places)
    ]


def reachable(found, without):
    """Bodies that the ground holds up when one is taken away: edge by edge, until none is added."""
    ways = [(e.to, e.of) for e in found.edges if e.bears_up]
    ways += [(e.of, e.to) for e in found.edges if e.to != GROUND and e.bears_down]
    reached = {GROUND}
    while True:
        more = {b for a, b in ways if a in reached and b != without} - reached
        if not more:
            return reached
        reached |= more


@settings(max_examples=25, deadline=None)
@given(BODIES)
def test_carried_and_steps_are_those_of_taking_bodies_away(places):
    found = graph(*blocks(places))
    count = len(found.structure.bodies)
    whole = reachable(found, None)
    steps = found.steps()
    assert {k for k in range(count) if steps[k] >= 0} == whole - {GROUND}
    for i in range(count):
        left = reachable(found, i)
        goes = {k for k in range(count) if k == i or (k in whole and k not in left)}
        assert set(np.flatnonzero(found.carried(i))) == goes
        nearer = [steps[j] for j in found.borne[i] if steps[j] >= 0]
        if steps[i] > 0:
            assert steps[i] == 1 + min(nearer)
        assert all(steps[j] < max(steps[i], 1) for j in found.beneath(i)[1:])


@settings(max_examples=15, deadline=None)
@given(BODIES, st.floats(0.0, 6.28), st.randoms())
def test_turned_and_reordered_the_graph_is_the_same(places, turn, random):
    parts = blocks(places)
    mixed = parts.copy()
    random.shuffle(mixed)
    plain, other = graph(*parts), graph_of(build_structure(design(*mixed, turn=turn)))
    assert pairs(plain) == pairs(other)
    assert len(plain.held) == len(other.held)
    assert {f.part for f in unsupported(plain)} == {f.part for f in unsupported(other)}
    for one in plain.edges:
        if one.to != GROUND and one.face.deep == 0.0:
            (same,) = [e for e in other.edges if set(named(other, e)) == set(named(plain, one))]
            assert same.face.area.area == pytest.approx(one.face.area.area, abs=1e-7)


@settings(max_examples=10, deadline=None)
@given(st.floats(0.05, 0.5), st.floats(0.1, 0.5))
def test_mirrored_copies_meet_what_those_written_out_meet(x, wide):
    """One beam reflected, or two beams: the same edges, in the same number."""
    beam = part("beam", Box(0.2, wide, 0.1), at=(x, 0.0, 0.2), mirror=frozenset("x"))
    left = part("left", Box(0.2, wide, 0.1), at=(-x, 0.0, 0.2))
    right = part("right", Box(0.2, wide, 0.1), at=(x, 0.0, 0.2))
    top = part("top", Box(1.0, 0.2, 0.05), at=(0.0, 0.0, 0.3))
    one, two = graph(BASE, beam, top), graph(BASE, left, right, top)
    areas = [sorted(e.face.area.area for e in g.edges if e.to != GROUND) for g in (one, two)]
    assert areas[0] == pytest.approx(areas[1])
    assert len(one.held) == len(two.held)


# --- what is held without a joint ----------------------------------------------------------------


def held(found):
    return {frozenset(named(found, edge)) for edge in found.held}


@pytest.mark.parametrize("how", ["on", "at"])
def test_a_roof_on_posts_is_held_by_all_of_them_however_it_is_placed(how):
    posts = part("posts", Box(0.1, 0.1, 0.5), count=4, ring=0.8, on="base")
    place = {"on": "posts"} if how == "on" else {"at": (0.0, 0.0, 0.7)}
    found = graph(BASE, posts, part("roof", Box(1.0, 1.0, 0.05), **place))
    assert {frozenset({("roof", 0), ("posts", k)}) for k in range(4)} <= held(found)


def test_boards_side_by_side_brace_nothing_and_like_posts_both_hold_what_is_between():
    two = {"on": "base", "at": (-0.4, 0.0, 0.0), "count": 2, "step": (0.8, 0.0, 0.0)}
    four = {"on": "joists", "at": (0.0, -0.2, 0.0), "count": 4, "step": (0.0, 0.1, 0.0)}
    joists = part("joists", Box(0.05, 0.9, 0.1), **two)
    boards = part("boards", Box(1.0, 0.1, 0.02), **four)
    found = held(graph(BASE, joists, boards))
    assert not any({name for name, _ in pair} == {"boards"} for pair in found)
    assert len(found) == 2 + 8
    posts = part("posts", Box(0.1, 0.1, 0.5), **two)
    axle = part("axle", Box(0.7, 0.05, 0.05), at=(0.0, 0.0, 0.5))
    fast = graph(BASE, posts, axle)
    assert len([e for e in fast.edges if "axle" in {n[0] for n in named(fast, e)}]) == 2
    assert len([pair for pair in held(fast) if ("axle", 0) in pair]) == 2


# --- every piece that is offered ------------------------------------------------------------------


@each_example
def test_no_example_has_a_part_that_floats_or_needs_a_second_look(file):
    found = graph_of(examine(read(file)).structure)
    assert unsupported(found) == ()
    assert look_again(found) == ()


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_no_kind_that_is_offered_has_a_part_that_floats(kind):
    found = graph_of(examine(read_text(default_file(kind))).structure)
    assert unsupported(found) == ()
    assert look_again(found) == ()


@pytest.mark.parametrize(("gap", "meets"), [("1/8 in", True), ("5/32 in", False), ("2 in", False)])
def test_a_joint_across_a_gap_is_a_fault_that_tells_it(gap, meets):
    """5/32 in is 4 mm: a packer is drawn or named."""
    text = POST.replace("height   = '20 in'", f"height   = '20 in'\nat = ['0 in', '0 in', '{gap}']")
    text += joint("block", "plank", fastener="#8 wood screw 3 in", count=6)
    if meets:
        assert unsupported(graph_of(build_structure(read_text(text)))) == ()
        examine(read_text(text))
        return
    with pytest.raises(DesignError) as wrong:
        examine(read_text(text))
    (fault,) = wrong.value.faults
    assert (fault.part, fault.found) == ("block to plank", "plank")
    assert fault.expected == "a part that touches block"
    assert "apart" in fault.hint


def test_a_copy_that_misses_what_its_joint_fastens_it_to_is_told():
    """Two blocks 6 in long on a plank 24 in long: the second, 30 in off, misses it by 15 in."""
    head, block = POST.split("name     = 'block'")
    block = block.replace("length   = '24 in'", "length   = '6 in'")
    copies = "name     = 'block'\ncount    = 2\nstep     = ['30 in', '0 in', '0 in']"
    text = head + copies + block + joint("block", "plank", fastener="#8 wood screw 3 in", count=4)
    with pytest.raises(DesignError) as wrong:
        examine(read_text(text))
    (fault,) = wrong.value.faults
    assert (fault.part, fault.key) == ("block", "on")
    assert "15 in from plank" in fault.found


def test_a_floating_part_of_a_file_is_told_with_its_line():
    text = HARBOUR_LIGHT.replace("'20 in'", "'32 in'")
    with pytest.raises(DesignError) as wrong:
        examine(read_text(text, "light.toml"))
    (fault,) = wrong.value.faults
    line = text[: text.index("on       = 'foot'")].count("\n") + 1
    assert (fault.file, fault.line, fault.part, fault.key) == ("light.toml", line, "tower", "on")
    assert "no wood of it meets foot" in fault.found
