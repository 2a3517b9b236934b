"""Assemblies in which a simple rule would go wrong: each expectation is from statics or the rule.

Suctions: ASCE/SEI 7 Fig. 27.3-1 (above h/L 1, 1.3 to h/2 from the windward edge and 0.7 beyond, and
0.6 on lee slopes) and wind/local_pressure.csv (judgement); friction: EN 13814 (wood 0.6, steel
lowest 0.1 on paving); Case B: ASCE/SEI 7 Fig. 29.3-1 Note 3.
"""

from math import radians

import numpy as np
import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.shapes.rotor import Rotor
from yardfast.units.frozen import replace

SLAB = Part("slab", Box(1.5, 1.0, 0.1), density=2400.0)
Q = 0.613 * 20.0**2


STEP = (0.52 / 0.6 - 0.5) / 0.5
TOP = 0.26 * (0.9 + 0.4 * STEP) + 0.26 * (0.9 - 0.2 * STEP) + 0.08 * (0.5 + 0.2 * STEP)
"""Suction on a level top 0.52 m up and 0.6 m along the wind, h/L 0.867, per m of width."""


def leeward_and_windward(rise_over_run):
    """Suction on both slopes of a roof of 20 to 45 degrees, wind across the ridge, h/L above 1."""
    slope = np.degrees(np.arctan(rise_over_run))
    return 0.6 + np.interp(slope, [20, 25, 30, 35, 45], [0.7, 0.5, 0.3, 0.2, 0.0])


def named(found, name):
    return next(check for check in found.checks if check.name == name)


def suction(*parts, azimuth=0.0, **site):
    wind = examine(design(*parts, **site)).wind
    i = int(np.argmin(np.abs(wind.azimuths - azimuth)))
    return float(wind.uplift[i]) / Q


def test_what_stands_behind_a_loose_part_takes_none_of_its_wind():
    pot = Part("pot", Box(0.9, 0.2, 0.5), Place(on="slab", at=(0, -0.2, 0)), mass=30.0, loose=True)
    screen = Part("screen", Panel(1.4, 0.5, 0.02), Place(on="slab", at=(0, 0.4, 0)), density=600.0)
    alone, screened = (examine(design(*parts)) for parts in ((SLAB, pot), (SLAB, pot, screen)))
    for name in ("loose: pot", "loose sliding: pot"):
        assert named(screened, name).utilization == pytest.approx(named(alone, name).utilization)


def test_what_stands_on_each_copy_of_a_loose_part_goes_with_it():
    base = Part("base", Box(4.0, 1.0, 0.1), density=2400.0)
    pot = Part("pot", Box(0.4, 0.4, 0.3), Place(on="base"), density=900.0, loose=True)
    fan = Part("fan", Panel(0.6, 1.0, 0.02), Place(on="pot"), density=600.0)
    row = {"count": 2, "ring": 2.0}
    one = examine(design(base, pot, fan))
    two = examine(
        design(
            base,
            replace(pot, place=Place(on="base", **row)),
            replace(fan, place=Place(on="pot", **row)),
        )
    )
    assert named(two, "loose: pot").utilization == pytest.approx(
        named(one, "loose: pot").utilization, rel=0.05
    )


def test_least_wind_of_a_standard_on_a_loose_cap_is_on_the_cap_alone():
    """766 Pa x 0.3 x 0.1 m x 0.05 m by hand; the diagonal sees 0.0424 m2."""
    body = Part("body", Box(1.0, 1.0, 2.0), density=600.0)
    cap = Part("cap", Box(0.3, 0.3, 0.1), Place(on="body"), density=2400.0, loose=True)
    found = examine(
        design(body, cap, method="ASCE 7-22", wind=47.0, exposure="C", basis="strength")
    )
    least = 766.08 * 0.3 * 0.1 * 0.05
    assert least < named(found, "loose: cap").demand < 5 * least


@pytest.mark.parametrize(
    "place",
    [
        Place(on="foot", count=2, ring=1.2, start=radians(90)),
        Place(on="foot", at=(0.0, 0.6, 0.0), mirror=frozenset("y")),
    ],
    ids=["round a ring", "mirrored"],
)
def test_twists_of_two_boards_add_however_they_are_placed(place):
    foot = Part("foot", Box(2.4, 1.3, 0.04), density=600.0)
    board = Part(
        "board",
        Panel(1.0, 1.0, 0.02),
        Place(on="foot", at=(0, -0.6, 0), count=2, step=(0, 1.2, 0)),
        density=600.0,
    )
    in_a_row = examine(design(foot, board))
    otherwise = examine(design(foot, replace(board, place=place)))
    assert otherwise.sliding.case.startswith("B")
    assert otherwise.limits.sliding == pytest.approx(in_a_row.limits.sliding, rel=0.02)


POSTS = Part(
    "posts", Box(0.09, 0.09, 1.0), Place(count=4, ring=1.1, start=radians(45)), density=500.0
)


@pytest.mark.parametrize(
    "shape", [Plate(Rectangle(1.0, 1.0), 0.03), Box(1.0, 1.0, 0.03), Solid(4, 1.0, 1.0, 0.03)]
)
def test_a_roof_on_posts_is_lifted_whatever_shape_it_is_written_as(shape):
    assert suction(POSTS, Part("roof", shape, Place(on="posts"), density=500.0)) == pytest.approx(
        0.8
    )


def test_a_solid_cap_closes_a_hollow_body():
    body = Part("body", Shell(4, 0.4, 0.4, 0.8, 0.02), density=500.0)
    cap = Part("cap", Box(0.4, 0.4, 0.03), Place(on="body"), density=500.0)
    assert suction(body, cap) == pytest.approx(1.3 * 0.16)


def test_a_finial_block_on_a_post_takes_none():
    post = Part("post", Box(0.3, 0.3, 1.0), density=500.0)
    block = Part("block", Box(0.3, 0.3, 0.1), Place(on="post"), density=500.0)
    assert suction(post, block) == 0.0


def test_lids_of_copied_bodies_are_lids():
    bar = Part("bar", Panel(1.45, 0.2, 0.02), Place(at=(0.0, 0.0, 0.2)), density=500.0)
    body = Part("body", Box(0.6, 0.6, 0.5), Place(count=2, ring=2.0), density=500.0)
    hollow = replace(body, shape=Box(0.6, 0.6, 0.5, 0.02, frozenset({"top"})))
    cap = Part(
        "cap", Plate(Rectangle(0.6, 0.6), 0.02), Place(on="body", count=2, ring=2.0), density=500.0
    )
    assert suction(hollow, cap, bar) == pytest.approx(2 * 0.6 * TOP)


def test_a_closed_box_on_legs_is_a_closed_top():
    legs = Part(
        "legs", Box(0.09, 0.09, 0.3), Place(count=4, ring=0.9, start=radians(45)), density=500.0
    )
    house = Part("house", Box(0.7, 0.7, 0.7, 0.02), Place(on="legs"), density=500.0)
    assert suction(legs, house) == pytest.approx(0.7 * (1.3 * 0.5 + 0.7 * 0.2))


def test_a_deck_between_body_and_roof_keeps_the_overhang():
    body = Part("body", Box(0.6, 0.6, 0.8, 0.02, frozenset({"top"})), density=500.0)
    roof = Part("roof", Gable(1.0, 1.0, 0.3), Place(on="body"), density=500.0)
    deck = Part("deck", Plate(Rectangle(1.0, 1.0), 0.02), Place(on="body"), density=500.0)
    frame = Part("frame", Frame(Rectangle(0.6, 0.6), 0.05, 0.04), Place(on="body"), density=500.0)
    expected = (leeward_and_windward(0.3 / 0.5) / 2.0) * 1.0 + 0.8 * 0.6 * 0.2
    assert suction(body, roof) == pytest.approx(expected)
    assert suction(body, deck, replace(roof, place=Place(on="deck"))) == pytest.approx(expected)
    assert suction(body, frame, replace(roof, place=Place(on="frame"))) == pytest.approx(expected)


def test_open_courses_keep_the_suction_on_the_floor():
    floor = Part("floor", Plate(Rectangle(0.5, 0.5), 0.02), density=500.0)
    course = Part("course", Shell(4, 0.45, 0.45, 0.4, 0.02), Place(on="floor"), density=500.0)
    upper = Part("upper", Shell(4, 0.45, 0.45, 0.4, 0.02), Place(on="course"), density=500.0)
    inside = 0.6 * 0.41**2
    assert suction(floor, course) == pytest.approx(inside)
    assert suction(floor, course, upper) == pytest.approx(inside)


def test_a_roof_let_into_its_body_counts_once():
    body = Part("body", Box(0.6, 0.6, 0.6, 0.02), density=500.0)
    roof = Part("roof", Gable(0.6, 0.6, 0.2), Place(on="body", at=(0, 0, -0.02)), density=500.0)
    assert suction(body, roof) == pytest.approx(leeward_and_windward(0.2 / 0.3) * 0.18)


def test_boards_that_lie_on_the_ground_take_none():
    lower = Part("lower", Plate(Rectangle(0.9, 0.9), 0.02), density=500.0)
    upper = Part("upper", Plate(Rectangle(0.8, 0.8), 0.02), Place(on="lower"), density=500.0)
    flat = Part("flat", Panel(0.9, 0.9, 0.02), Place(tilt=radians(90)), density=500.0)
    assert suction(lower, upper) == 0.0
    assert suction(flat) == 0.0


def test_a_wheel_never_takes_wind_off_what_it_stands_before():
    post = Part("post", Box(0.3, 0.3, 2.0), density=500.0)
    wheel = Part(
        "wheel",
        Rotor(8, 0.5, 0.1, 0.2, 0.01, 0.0),
        Place(on="post", at=(0.0, 0.2, -0.5)),
        density=500.0,
    )
    bare, with_wheel = examine(design(post)).wind, examine(design(post, wheel)).wind
    assert (with_wheel.force >= bare.force * (1 - 1e-9)).all()


def test_feet_that_rub_differently_turn_the_piece_as_it_slides():
    """Wood 0.6 and steel 0.1 at 1 m to either side: the least work is found to be 0.11 of N."""
    wood = Part("wood", Box(0.1, 0.1, 0.1), Place(at=(-1, 0, 0)), density=500.0)
    steel = Part("steel", Box(0.1, 0.1, 0.1), Place(at=(1, 0, 0)), density=500.0, contact="steel")
    board = Part("board", Panel(2.1, 0.5, 0.02), Place(at=(0, 0, 0.1)), density=500.0)
    found = examine(design(wood, steel, board))
    face_on = found.wind.azimuths == 0.0
    assert found.standing.rubs_evenly is False
    assert face_on.any()
    share = found.free[1].capacity / (found.structure.weight("light") * found.free[1].dead)
    assert share < 0.2


BIRD = ((0, 0), (0.2, 0.5), (-0.2, 0.5))
PIN = ((0, 0), (0.0001, 0.5), (-0.0001, 0.5))


@pytest.mark.parametrize(
    "feet",
    [
        Part("legs", Box(0.1, 0.1, 0.5), Place(count=4, ring=1.0, tilt=radians(10)), density=500.0),
        Part("feet", Ball(0.1), Place(count=4, ring=1.0), density=500.0),
        Part(
            "birds",
            Cutout(((0, 0), (0.2, 0.5), (-0.2, 0.5)), 0.02),
            Place(count=4, ring=1.0),
            density=500.0,
        ),
    ],
    ids=["leaning legs", "balls", "points"],
)
@pytest.mark.parametrize("ground", ["paving", "firm lawn"])
def test_feet_on_edges_and_points_bed_in_and_are_judged(feet, ground):
    top = Part("top", Plate(Rectangle(1.1, 1.1), 0.03), Place(on=feet.name), density=500.0)
    found = examine(design(feet, top, ground=ground))
    # points sink into a lawn until they find hold: nothing is left to tip about
    assert found.limits.tipping >= 0.0
    assert found.standing.contact.area > 0.0


def test_a_loose_ball_is_refused_in_words():
    ball = Part("ball", Ball(0.2), Place(on="slab"), density=500.0, loose=True)
    bedded = examine(design(SLAB, ball))
    assert named(bedded, "loose: ball").utilization > 0.0
    pin = Part(
        "pin",
        Cutout(((0, 0), (0.0001, 0.5), (-0.0001, 0.5)), 1e-5),
        Place(on="slab"),
        density=500.0,
        loose=True,
    )
    with pytest.raises(DesignError) as caught:
        examine(design(SLAB, pin))
    assert caught.value.faults[0].part == "pin"


def test_a_loose_part_on_the_ground_rubs_as_the_ground_does():
    pot = Part("pot", Box(0.4, 0.4, 0.6), density=900.0)
    plain = examine(design(pot, ground="wet lawn"))
    loose = examine(design(replace(pot, loose=True), ground="wet lawn"))
    assert named(loose, "loose sliding: pot").utilization == pytest.approx(
        plain.sliding.utilization, rel=1e-6
    )
