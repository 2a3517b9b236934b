"""What stakes at the corners are asked for, by hand; and where a stake stands against wood."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.checks.judged.judging import Kind
from yardfast.checks.stability.remedies import on_wood
from yardfast.design import plane
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.statics.contacts.fit import HEAD_REACH


def test_two_stakes_on_the_far_side_share_what_is_missing_of_the_moment():
    """A light box 0.8 m deep on hard ground: what tips it beyond its weight, M, is held by the two
    corners 0.8 m from the line of turning alone, M / (2 x 0.8 m) each, wherever it stands."""
    place = Place(at=(3.0, 2.0, 0.0))
    found = examine(design(Part("box", Box(1.2, 0.8, 2.0), place, mass=20.0), wind=40.0))
    (tips,) = [c for c in found.checks if c.kind is Kind.OVERTURNING]
    missing = tips.demand - tips.capacity
    assert missing > 0.0
    assert found.remedies.stakes.pull == pytest.approx(missing / 1.6, rel=1e-6)
    assert len(found.remedies.stakes.points) == 4


@pytest.mark.parametrize(("share", "stands"), [(0.99, True), (1.01, False)])
def test_a_stake_stands_against_wood_within_reach_of_its_head(share, stands):
    wood = plane.box(0.0, 0.0, 1.0, 1.0)
    points = np.array([[0.5, 0.5], [1.0 + share * HEAD_REACH, 0.5]])
    assert on_wood(points, wood) is stands
    assert on_wood(points, None)
