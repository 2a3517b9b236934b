"""Stakes hold sideways where the foot bears on them: statics of a square foot, by hand."""

from math import sqrt

import numpy as np
import pytest
from designs import design

from yardfast.checks.anchoring.anchor_group import bearing_shares, level_held
from yardfast.checks.examination import examine
from yardfast.design.model import Part
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.statics.contacts.holds_down import ways_out
from yardfast.statics.tables.anchor_table import AnchorRow
from yardfast.units.frozen import replace

SIDES = np.array([[1.0, 0.0], [0.0, 1.0], [-1.0, 0.0], [0.0, -1.0]])
CORNERS = np.array([[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]]) / sqrt(2.0)
FOOT = Part("foot", Box(0.6, 0.6, 0.1), density=500.0)


def test_one_of_four_at_the_sides_bears():
    """Pushed along x it lies on the stake before it alone."""
    assert bearing_shares(SIDES, [300.0, 0.0]) == pytest.approx([300.0, 0.0, 0.0, 0.0])
    # askew it shifts k d along each: N = F cos 30 on one and F sin 30 on the other
    push = 300.0 * np.array([np.cos(np.pi / 6), np.sin(np.pi / 6)])
    assert bearing_shares(SIDES, push)[:2] == pytest.approx([300.0 * sqrt(0.75), 150.0])


def test_two_of_four_at_the_corners_bear_askew():
    """F = 2 N cos 45, square to the corner's diagonal faces: N = F/sqrt(2)."""
    found = bearing_shares(CORNERS, [300.0, 0.0])
    assert found == pytest.approx([300.0 / sqrt(2.0), 0.0, 0.0, 300.0 / sqrt(2.0)])


def test_bolts_through_the_foot_share_alike_whichever_way():
    assert bearing_shares(np.zeros((4, 2)), [0.0, -300.0]) == pytest.approx([75.0] * 4)


def test_two_on_one_side_hold_nothing_the_other_way():
    one_side = np.array([[1.0, 0.0], [1.0, 0.0]])
    assert np.isinf(bearing_shares(one_side, [-1.0, 0.0])).all()
    assert level_held(one_side, [100.0, 100.0], [-1.0, 0.0]) == 0.0
    assert level_held(one_side, [100.0, 100.0], [1.0, 0.0]) == pytest.approx(200.0)
    # where no way is given, the least of all
    assert level_held(one_side, [100.0, 100.0], [0.0, 0.0]) == 0.0


def test_what_is_held_is_the_inverse_of_what_is_shared():
    ways = np.array([[3.0, 1.0], [-2.0, 0.5], [0.0, 4.0]])
    held = level_held(CORNERS, [80.0, 90.0, 100.0, 110.0], ways)
    unit = ways / np.linalg.norm(ways, axis=1)[:, None]
    share = bearing_shares(CORNERS, held[:, None] * unit)
    assert (share / np.array([80.0, 90.0, 100.0, 110.0])).max(axis=1) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("at", "out"),
    [
        ((0.3, 0.1), (1.0, 0.0)),
        ((-0.3, 0.0), (-1.0, 0.0)),
        ((0.31, 0.0), (1.0, 0.0)),
        ((0.3, 0.3), (sqrt(0.5), sqrt(0.5))),
        ((0.2, 0.1), (0.0, 0.0)),  # through the wood
    ],
)
def test_which_way_an_anchor_stands_against_the_foot(at, out):
    structure = build_structure(design(FOOT))
    assert ways_out(structure, np.array([at]))[0] == pytest.approx(np.array(out), abs=1e-9)


def pushed(where, ways=(1.0, 0.0)):
    """Return the sliding of a foot on firm lawn that a load of 600 N pushes level."""
    drawn = design(FOOT, ground="firm lawn", wind=1.0)
    row = AnchorRow("stakes", "rebar stake 12 mm x 600 mm", **where)
    load = GivenLoad("rope", 600.0, (0.0, 0.0, 0.05), (*ways, 0.0))
    return examine(replace(drawn, tables={**drawn.tables, AnchorRow: (row,), GivenLoad: (load,)}))


def test_a_named_pull_is_held_by_the_stakes_before_it():
    """What friction leaves: two corner stakes hold sqrt(2) of one, of four at the sides one."""
    frictions: list[float] = []
    for where, stakes in (("corners", sqrt(2.0)), ("sides", 1.0)):
        found = pushed({"where": where})
        one = found.held.each("sideways")[0] * found.factors.soil
        check = next(each for each in found.checks if each.name == "load: rope")
        assert check.slots == ("sliding",)
        frictions.append(check.capacity - stakes * one)
    assert frictions[0] == pytest.approx(frictions[1], rel=1e-6)
    assert frictions[0] > 0.0


def test_stakes_on_one_side_are_told_to_hold_nothing_the_other_way():
    at = {"at": (0.3, 0.0, 0.0)}
    held, left = (pushed(at, ways) for ways in ((1.0, 0.0), (-1.0, 0.0)))
    one = held.held.each("sideways")[0] * held.factors.soil
    there, back = (
        next(each for each in found.checks if each.name == "load: rope") for found in (held, left)
    )
    assert there.capacity - back.capacity == pytest.approx(one, rel=1e-6)
