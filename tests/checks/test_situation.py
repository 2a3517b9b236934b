"""What is found once, however a piece is held, is what would be found anew: an invariant."""

from pathlib import Path

import numpy as np
import pytest

from yardfast.checks.anchoring.anchor_choice import with_anchors
from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.examination import examine, examine_in
from yardfast.checks.inputs import read, read_text
from yardfast.checks.situation import situation_of, weighted
from yardfast.checks.sizing.laid_weight import with_weight
from yardfast.design.model import Part, Place
from yardfast.design.shapes.weight import Weight
from yardfast.units.frozen import replace, values_by_name

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ["light-tower", "well", "three-pieces"]


def alike(one, other, before):
    """Hold checks to each other; what failed before is not judged again."""
    failed = {check.name for check in before.checks if not check.passes}
    assert [check.name for check in one.checks] == [check.name for check in other.checks]
    for a, b in zip(one.checks, other.checks, strict=True):
        if a.name not in failed or not a.name.startswith("joint"):
            assert (a.demand, a.capacity) == pytest.approx((b.demand, b.capacity), rel=1e-9), a.name


@pytest.mark.parametrize("name", ["light-tower", "well", "head-light"])
def test_a_piece_on_its_anchors_is_found_as_it_would_be_anew(name):
    before = examine(read(EXAMPLES / f"{name}.toml"))
    held = with_anchors(before.design, before.anchors.row)
    alike(examine_in(before.at, held, before), examine_in(situation_of(held), held), before)


@pytest.mark.parametrize("name", NAMES)
def test_weight_laid_on_a_piece_changes_nothing_of_what_the_wind_finds(name):
    before = examine(read(EXAMPLES / f"{name}.toml"))
    heavier = with_weight(before.design, ground_parts(before.structure), 40.0)
    at, anew = weighted(before.at, heavier), situation_of(heavier)
    for field, a in values_by_name(at.exposed).items():
        b = getattr(anew.exposed, field)
        if isinstance(a, np.ndarray) and a.dtype.kind == "f":
            assert np.array_equal(a, b), field
    assert np.array_equal(at.exposed.suction.terms, anew.exposed.suction.terms)
    edges = [
        {(e.of, e.to, e.holds, e.placed, e.apart, e.size) for e in graph.edges}
        for graph in (at.graph, anew.graph)
    ]
    assert edges[0] == edges[1]
    alike(examine_in(at, heavier, before), examine_in(anew, heavier), before)


def test_weight_above_a_joint_has_that_joint_judged_again():
    before = examine(read(EXAMPLES / "light-tower.toml"))
    bag = Part("bag", Weight(), Place(on="gallery", at=(0.1, 0.0, 0.0)), mass=30.0)
    heavier = replace(before.design, parts=(*before.design.parts, bag))
    at = weighted(before.at, heavier)
    found = examine_in(at, heavier, before)
    alike(found, examine_in(situation_of(heavier), heavier), before)
    assert found.joints[0] is not before.joints[0]


MAST = """
[design]
name = 'Guyed mast'
units = 'metric'
[site]
method = 'forecast'
wind = '30 m/s'
exposure = 'open'
ground = 'firm lawn'
[[part]]
name = 'foot'
shape = 'solid'
sides = 4
bottom = '600 mm'
top = '600 mm'
height = '45 mm'
material = 'southern pine'
[[part]]
name = 'mast'
shape = 'solid'
lumber = '4x4'
height = '3 m'
on = 'foot'
material = 'southern pine'
[[joint]]
name = 'mast to foot'
of = 'mast'
to = 'foot'
fastener = '#10 wood screw 3 in'
count = 4
predrilled = true
"""
GUYS = """
[[guy]]
name = 'lines'
line = 'nylon rope 6 mm'
anchor = 'rebar stake 1/2 in x 36 in'
height = '2 m'
radius = '2 m'
out = '40 mm'
count = 4
"""


@pytest.mark.parametrize(("guys", "alone"), [("", True), (GUYS, False)])
def test_lines_pass_a_joint_by(guys, alone):
    """What goes through a mast's foot is told by statics alone, but for what its lines take."""
    (way,) = examine(read_text(MAST + guys)).ways
    assert (way.through[0] is not None) is alone
