"""A piece made taller, by hand: all above its foot by one factor, all else as it was."""

import pytest

from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.sizing.other_height import with_height
from yardfast.design.model import Design, Part, Place
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Regular
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.statics.tables.anchor_table import GuyRow
from yardfast.units.frozen import replace

FOOT = Part("foot", Plate(Regular(4, 1.0), 0.1), density=2400.0)
POST = Part("post", Solid(4, 0.1, 0.1, 0.9), Place(on="foot"), mass=3.0)


def taller(height, *more, tables=None):
    """Return the parts by name, and the tables, of a foot and post 1 m tall made ``height`` m."""
    design = Design("post", "metric", (FOOT, POST, *more), tables=tables or {})
    found = with_height(design, ground_parts(build_structure(design)), height)
    return None if found is None else ({part.name: part for part in found.parts}, found)


@pytest.mark.parametrize("height", [0.5, 1.0, 1.9, 40.0])
def test_what_stands_on_the_foot_is_scaled_and_its_given_mass_with_it(height):
    parts, _ = taller(height)
    factor = (height - 0.1) / 0.9
    assert parts["foot"] == FOOT
    assert parts["post"].shape.height == pytest.approx(0.9 * factor, rel=1e-9)
    assert parts["post"].shape.bottom == 0.1
    assert parts["post"].mass == pytest.approx(3.0 * factor, rel=1e-9)


def test_heights_above_ground_move_above_the_foot_and_none_below_it():
    """Twice as high above the foot's 0.1 m: 0.3 m comes to 0.5, 0.05 m stays."""
    rungs = Part(
        "rungs",
        Box(0.3, 0.05, 0.04),
        Place(at=(0.2, 0.0, 0.3), count=3, step=(0.05, 0.0, 0.1)),
        density=500.0,
    )
    peg = Part("peg", Box(0.02, 0.02, 0.02), Place(at=(0.6, 0.0, 0.05)), density=500.0)
    ball = Part("ball", Ball(0.2), Place(on="post"), mass=1.0)
    lamp = Part("lamp", Ball(0.1), Place(on="foot", at=(0.3, 0.0, 0.4)), mass=2.0, hangs_at=0.6)
    load = GivenLoad("pull", 100.0, (0.0, 0.0, 0.8), (1.0, 0.0, 0.0))
    low = replace(load, name="kick", at=(0.0, 0.0, 0.06))
    guy = GuyRow("guys", "nylon rope 1/4 in", "rebar stake 1/2 in x 24 in", 0.7, 1.2, 4)
    tables = {GivenLoad: (load, low), GuyRow: (guy,)}
    parts, design = taller(2.1, rungs, peg, ball, lamp, tables=tables)  # 1.2 m with the ball
    assert parts["post"].shape.height == pytest.approx(1.8)
    assert parts["rungs"].place.at == pytest.approx((0.2, 0.0, 0.5))
    assert parts["rungs"].place.step == pytest.approx((0.05, 0.0, 0.2))
    assert parts["peg"].place.at == (0.6, 0.0, 0.05)
    assert (parts["ball"].shape, parts["ball"].mass) == (ball.shape, 1.0)
    assert parts["lamp"].place.at == pytest.approx((0.3, 0.0, 0.8))
    assert parts["lamp"].hangs_at == pytest.approx(1.1)
    assert parts["lamp"].mass == 2.0
    pulled, kicked = design.several(GivenLoad)
    assert pulled.at == pytest.approx((0.0, 0.0, 1.5))
    assert kicked.at == low.at
    assert design.several(GuyRow)[0].height == pytest.approx(1.3)


def test_nothing_is_lower_than_its_foot_or_a_hundred_times_as_high():
    assert taller(0.1) is None
    assert taller(0.1 + 0.9 * 0.002) is not None
    assert taller(0.1 + 0.9 * 200.0) is None


def test_walls_that_would_leave_no_hollow_are_not_made():
    """A roof's slope comes down to its walls: a shell 3 mm high with walls of 25 mm stays one."""
    hood = Part("hood", Shell(4, 0.4, 0.1, 0.4, 0.02), Place(on="post"), density=500.0)
    assert taller(1.4, hood) is not None
    assert taller(0.11, hood) is None


def test_a_piece_that_was_weighed_is_read_by_the_scale_again():
    """Wood that weighs 5/4 of its table does so twice as high too, and what has a mass keeps it."""
    wood = Part("wood", Solid(4, 0.2, 0.2, 0.9), Place(on="foot"), material="western redcedar")
    design = Design("wood", "metric", (FOOT, POST, wood))
    masses = build_structure(design).part_mass[1]
    foot, table = float(masses[0]), float(masses[2])
    weighed = replace(design, weighed=foot + 3.0 + 1.25 * table)
    found = with_height(weighed, ground_parts(build_structure(weighed)), 1.9)
    assert found is not None
    assert found.weighed == pytest.approx(foot + 6.0 + 2.5 * table)
