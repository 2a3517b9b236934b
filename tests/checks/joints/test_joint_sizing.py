"""What would make a joint hold: checked forward by the same check, the next smaller failing."""

import pytest
from joint_designs import POST, TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_sizing import Why, size_joint
from yardfast.checks.joints.larger_fasteners import SPACING

NAILS = POST.replace("46 mph", "70 mph")


def sized(text):
    found = examine(read_text(text))
    return size_joint(found.structure, found.joints[0], found.factors, found.site.basis)


def check_with(fastener, count):
    return examine(read_text(NAILS + joint("block", "plank", fastener, count))).joints[0].check


@pytest.fixture(scope="module")
def remedies():
    return {one.kind: one for one in sized(NAILS + joint("block", "plank", count=4)).remedies}


def test_there_are_more_larger_and_screws(remedies):
    assert set(remedies) == {"more", "larger", "screws"}
    assert remedies["more"].count > 4
    assert remedies["larger"].fastener.length > 2.5 * 0.0254
    assert remedies["screws"].fastener.kind == "wood screw"


@pytest.mark.parametrize("kind", ["more", "larger", "screws"])
def test_each_holds_when_it_is_written_into_the_file(remedies, kind):
    remedy = remedies[kind]
    check = check_with(remedy.fastener.name, remedy.count)
    assert check.passes
    assert check.utilization == pytest.approx(remedy.found.check.utilization, rel=1e-9)


def test_the_next_smaller_number_fails(remedies):
    assert not check_with("8d common nail", remedies["more"].count - 2).passes
    assert not remedies["more"].before.check.passes


def test_the_next_smaller_nail_fails(remedies):
    assert not remedies["larger"].before.check.passes


def test_they_stand_apart_enough(remedies):
    for remedy in remedies.values():
        assert remedy.found.spacing >= SPACING * remedy.fastener.diameter


def test_a_joint_that_holds_needs_nothing():
    found = sized(POST + joint("block", "plank", "#10 wood screw 3 in", 8))
    assert found.remedies == ()
    assert found.why is None


@pytest.mark.parametrize(
    ("text", "why"),
    [
        (TOWER + joint(), Why.PANEL_EDGE),
        (POST + joint("block", "plank", "#8 wood screw 3 in", 4, into="end grain"), Why.END_GRAIN),
    ],
)
def test_what_no_number_mends_is_said(text, why):
    found = sized(text)
    assert found.remedies == ()
    assert found.why is why
