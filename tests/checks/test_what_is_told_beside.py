"""What is told beside the checks, as data: each where it applies and nowhere else."""

import pytest
from designs import design
from joint_designs import TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.holder import Holder, would_hold
from yardfast.checks.inputs import read_text
from yardfast.checks.not_looked_at import unfastened
from yardfast.checks.stated.assumed_parts import OfParts, assumed_of_parts
from yardfast.checks.stated.from_memory import Value, from_memory
from yardfast.design.model import Part, Place
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.units.frozen import replace

SCREWED = {"fastener": "#8 wood screw 2 1/2 in", "count": 16, "blocks": "spruce-pine-fir"}
PUSH = (
    "[[load]]\nname = '{}'\nforce = '20 lbf'\nat = ['0 in', '-10 in', '{} in']\n"
    "direction = 'back'\n"
)


def assumed(loads):
    pushes = "".join(PUSH.format(f"push {k}", 20 + 4 * k) for k in range(loads))
    found = examine(read_text(TOWER + joint(**SCREWED) + pushes))
    return {one.what for each in assumed_of_parts(found) for one in each}


@pytest.mark.parametrize(
    ("loads", "told"), [(0, None), (1, OfParts.ONE_LOAD), (2, OfParts.SEVERAL_LOADS)]
)
def test_how_long_named_loads_last_is_assumed_of_one_or_of_several(loads, told):
    found = assumed(loads) & {OfParts.ONE_LOAD, OfParts.SEVERAL_LOADS}
    assert found == ({told} if told else set())


@pytest.mark.parametrize(
    ("fastener", "told"), [("16 ga staple 2 in", True), ("8d common nail", False)]
)
def test_that_staples_count_as_nails_is_told_of_staples_alone(fastener, told):
    how = {"fastener": fastener, "count": 16, "blocks": "spruce-pine-fir"}
    found = examine(read_text(TOWER + joint(**how)))
    values = {one.value for one in from_memory(found)}
    assert (Value.STAPLES in values) is told


@pytest.mark.parametrize(
    ("ground", "holder"),
    [("paving", Holder.BOLT), ("firm lawn", Holder.STAKE), ("sand", Holder.GROUND_ANCHOR)],
)
def test_what_would_hold_a_box_by_its_ground(ground, holder):
    """No stake goes into paving, and in sand rods hold nothing straight up (TM 5-818-1)."""
    box = Part("box", Box(0.4, 0.4, 1.0), density=100.0)
    found = examine(design(box, ground=ground, wind=22.0))
    assert would_hold(found) is holder


def test_what_lies_loose_or_fills_another_part_is_fastened_to_nothing():
    """The lid is said to be fastened by nothing; the ball on it is loose, the foot carries all."""
    foot = Part("foot", Plate(Rectangle(0.8, 0.8), 0.05), density=2400.0)
    box = Part("box", Box(0.4, 0.4, 0.5, 0.02), Place(on="foot"), density=500.0)
    ball = Part("ball", Ball(0.2), Place(on="box"), density=500.0, loose=True)
    found = examine(design(foot, box, ball, wind=10.0))
    assert unfastened(found) == ("box",)
    fixed = examine(design(foot, box, replace(ball, loose=False), wind=10.0))
    assert set(unfastened(fixed)) == {"box", "ball"}
