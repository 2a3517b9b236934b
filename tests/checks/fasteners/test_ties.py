"""Ties of joints: which of several bolts bear, and what blocks do to a pull."""

import numpy as np
import pytest
import shapely
from inside import forces_in
from joint_designs import TOWER, joint

from yardfast.checks.examination import examine
from yardfast.checks.fasteners.ties import Fastened
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_check import TieDemand, _held
from yardfast.checks.judged.judging import Kind
from yardfast.statics.contacts.face import Face
from yardfast.statics.stiffness import AXIAL, LATERAL
from yardfast.statics.tie import Tie

X, Y, Z = np.eye(3)


def test_of_four_bolts_any_one_may_not_bear_yet():
    """Four at (+-20, +-30 mm), 500 N along y at 300 mm: 1,114.27 N by hand, J 0.0052 m2.

    With one not bearing the other three take 1,819 to 1,843 N at worst: elastic vector analysis.
    """
    points = np.array([[x, y, 0.0] for x in (-0.02, 0.02) for y in (-0.03, 0.03)])
    face = Face(shapely.box(-0.05, -0.05, 0.05, 0.05), np.zeros(3), X, Y, Z)
    tie = Tie(
        1,
        0,
        face,
        points,
        np.full((4, 3), 1.0e6),
        np.tile([LATERAL, LATERAL, AXIAL], (4, 1)),
        1.0e6,
        slips=np.ones(4, dtype=bool),
    )
    wrench = np.array([[0.0, 500.0, 0.0, 0.0, 0.0, 500.0 * 0.3]])
    asked = TieDemand(Fastened((), tie, None), np.zeros(1, dtype=int), {"as read": wrench}, None)
    worst = [np.linalg.norm(held[0], axis=1).max() for held in _held(asked)[1]]
    assert worst[0] == pytest.approx(1114.27, abs=0.005)
    assert len(worst) == 5
    assert min(worst[1:]) == pytest.approx(1819.0, abs=0.5)
    assert max(worst[1:]) == pytest.approx(1843.0, abs=0.5)


def test_what_goes_through_blocks_shears_one_of_its_two_sets_whichever_way_it_pulls():
    """Across the wall and into the ring: what draws the one pushes the other sideways."""
    how = {"fastener": "#8 wood screw 2 1/2 in", "count": 8, "blocks": "spruce-pine-fir"}
    (found,) = forces_in(read_text(TOWER + joint(**how))).joints
    wall, ring = found.places[0].sets
    assert np.abs(wall.draws @ found.tie.face.leaves).max() == pytest.approx(0.0, abs=1e-9)
    assert np.abs(ring.draws @ found.tie.face.leaves).min() == pytest.approx(1.0)
    assert (found.tie.kind == LATERAL).all()


def test_the_span_over_sets_of_stiffness_ends_at_what_is_told_as_used():
    """What a joint is used by is the most that any set asks of it; as read it lies within."""
    how = {"fastener": "#8 wood screw 2 1/2 in", "count": 16, "blocks": "spruce-pine-fir"}
    found = examine(read_text(TOWER.replace("58 mph", "40 mph") + joint(**how)))
    (check,) = [one for one in found.checks if one.kind is Kind.JOINT]
    low, high = check.envelope
    assert 0.0 < check.utilization < 1.0
    assert high == pytest.approx(check.utilization, rel=1e-9)
    assert low <= check.as_read <= high
