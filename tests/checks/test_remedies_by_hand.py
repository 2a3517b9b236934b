"""What stakes at the corners are asked for, by hand; and where a stake stands against wood."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.checks.judged.judging import Kind
from yardfast.checks.stability.remedies import on_wood, stake_points
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


@pytest.mark.parametrize(
    ("sides", "on_legs", "count", "places"),
    [
        (3, False, 3, "corner"),
        (4, False, 4, "corner"),
        (5, False, 3, "second side"),
        (8, False, 4, "second side"),
        (12, False, 6, "second side"),
        (14, False, 4, "quarter"),
        (16, False, 4, "quarter"),
        (4, True, 4, "corner"),
        (5, True, 5, "corner"),
        (12, True, 12, "corner"),
        (14, True, 4, "quarter"),
    ],
)
def test_where_stakes_go_by_the_sides_of_a_foot(sides, on_legs, count, places):
    """At the middle of each second side, where wood is; on legs at the corners: common practice.

    Those at quarters stand as far apart as a quarter of the sides lets them.
    """
    angles = 2.0 * np.pi * np.arange(sides) / sides
    ring = np.column_stack([np.cos(angles), np.sin(angles)])
    legs = plane.union_of([plane.disc_region(corner, 0.01) for corner in ring])
    points, where = stake_points(ring, legs if on_legs else None)
    assert (len(points), where) == (count, places)
    if places != "corner":
        assert np.linalg.norm(points, axis=1) == pytest.approx(np.cos(np.pi / sides))
    if places == "quarter":
        found = np.degrees(np.unwrap(np.arctan2(points[:, 1], points[:, 0])))
        assert np.diff(found) == pytest.approx(360.0 / sides * (sides // 4))


def test_a_foot_as_wide_as_the_moment_needs_by_hand():
    """Hard ground, by moments: what holds goes with the width b, W b/2. What turns it over by
    M_over at b 0.8 m needs 0.8 M_over / M_hold, wherever the piece stands."""
    for x, y in ((0.0, 0.0), (3.0, 2.0)):
        box = Part("box", Box(1.2, 0.8, 2.0), Place(at=(x, y, 0.0)), mass=60.0)
        found = examine(design(box, wind=40.0))
        (tips,) = [c for c in found.checks if c.kind is Kind.OVERTURNING]
        needed = 0.8 * tips.demand / tips.capacity
        assert tips.demand > tips.capacity
        assert found.remedies.base_width == pytest.approx(needed, rel=1e-6)


def test_stakes_share_what_friction_leaves_of_the_push():
    """A quarter each of what pushes it beyond mu W, by its own check."""
    found = examine(design(Part("box", Box(1.2, 0.8, 2.0), mass=20.0), wind=40.0))
    (slides,) = [c for c in found.checks if c.kind is Kind.SLIDING]
    left = slides.demand - slides.capacity
    assert left > 0.0
    assert found.remedies.stakes.sideways == pytest.approx(left / 4.0, rel=1e-9)
