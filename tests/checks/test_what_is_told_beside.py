"""What is told beside the checks, as data: each where it applies and nowhere else."""

import pytest
from joint_designs import TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.stated.assumed_parts import OfParts, assumed_of_parts
from yardfast.checks.stated.from_memory import Value, from_memory

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
