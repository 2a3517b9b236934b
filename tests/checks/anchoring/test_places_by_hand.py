"""Where things hold and how wide they are against the earth: answered by hand."""

from math import pi, radians, sqrt

import numpy as np
import pytest
from designs import design

from yardfast.checks.anchoring.anchor_choice import places_for
from yardfast.checks.anchoring.capacity.anchor_capacity import anchor_capacity
from yardfast.checks.anchoring.embedded_posts import posts_of
from yardfast.checks.anchoring.ground_parts import ground_parts
from yardfast.checks.anchoring.guy_choice import guy_place
from yardfast.checks.anchoring.held import held_by
from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.structure import build_structure
from yardfast.materials.anchors import find_anchor
from yardfast.materials.grounds import find_ground
from yardfast.statics.contacts.holds_down import anchor_points
from yardfast.statics.tables.anchor_table import AnchorRow, GuyRow
from yardfast.units.frozen import replace


@pytest.mark.parametrize(
    ("shape", "width"),
    [
        (Solid(4, 0.1, 0.1, 2.0), sqrt(2.0) * 0.1),
        (Box(0.1, 0.2, 2.0), sqrt(2.0) * 0.1),
        (Box(0.3, 0.1, 2.0), sqrt(2.0) * 0.1),
        (Solid(0, 0.12, 0.12, 2.0), 0.12),
    ],
)
@pytest.mark.parametrize("turn", [0.0, 30.0])
def test_a_post_is_as_wide_against_the_earth_as_its_diameter_or_diagonal(shape, width, turn):
    """IBC 2018 1807.3.2: the diameter of a round post, the diagonal of a square one; of an oblong
    one that of the square of its lesser side (judgement: not wider than it is), however turned."""
    post = Part("post", shape, Place(turn=radians(turn)), density=500.0, embed=0.6)
    found = posts_of(build_structure(design(post, ground="sand")), find_ground("sand"))
    assert found.width == pytest.approx([width], rel=1e-3)
    assert found.depth == pytest.approx([0.6])


def held(*rows):
    drawn = design(Part("post", Box(0.4, 0.4, 1.6), density=200.0), ground="firm lawn", wind=28.0)
    tables = dict(drawn.tables)
    for kind in {type(row) for row in rows}:
        tables[kind] = tuple(row for row in rows if type(row) is kind)
    found = examine(replace(drawn, tables=tables))
    return found.held.hold_down(found.structure)


def test_stakes_at_the_foot_hold_nothing_beside_guys():
    """They are slack until a line stretches: beside guys only the lines draw on the piece."""
    stakes = AnchorRow("stakes", "rebar stake 1/2 in x 36 in", "corners")
    guys = GuyRow(
        "guys",
        "polyester rope 1/4 in",
        "steel stake 1 in x 36 in",
        height=1.5,
        radius=1.5,
        count=4,
    )
    assert len(held(stakes).anchors) == 4
    both = held(stakes, guys)
    assert both.anchors.shape == (0, 2)
    assert both.tops.shape == (4, 3)
    assert both.along[:, 2].max() < 0.0


@pytest.mark.parametrize("turn", [0.0, 0.7, pi / 2.0])
@pytest.mark.parametrize("at", [(0.0, 0.0), (1.5, -0.4)])
def test_anchors_round_a_round_foot_stand_round_its_middle(turn, at):
    """Wherever it stands and however it is turned: their middle is its middle, at its edge."""
    foot = Part("foot", Plate(Regular(0, 0.8), 0.05), Place(at=(*at, 0.0)), density=2400.0)
    post = Part("post", Box(0.2, 0.2, 1.5), Place(on="foot"), density=500.0)
    found = examine(design(foot, post, ground="firm lawn", turn=turn))
    middle = found.structure.footprint.mean(axis=0)
    places = places_for(found.loaded, "anchors")
    assert {name for name, _ in places} == {"place round it"}
    assert [row.count for _, row in places] == [4, 6, 8]
    for _, row in places:
        points = anchor_points(found.structure, row)
        assert points.mean(axis=0) == pytest.approx(middle, abs=1e-9)
        assert np.hypot(*(points - middle).T) == pytest.approx(0.4, rel=0.01)


@pytest.mark.parametrize(
    ("span", "height"),
    [
        (0.0, 1.33),  # two thirds of 2 m, in whole centimetres
        (0.3, 1.5),  # of 2.25 m, with the wheel; its tips turn down to 1.65 m
        (0.9, 0.95),  # down to 1.05 m, and 0.1 m clear of them
    ],
)
def test_guys_start_at_two_thirds_and_clear_of_what_turns(span, height):
    """Common practice, and a hand's breadth (judgement); the hub is 1.95 m up."""
    post = Part("post", Box(0.1, 0.1, 2.0), density=500.0)
    wheel = Rotor(4, span, 0.05, 0.08, 0.002, yaws=True)
    hub = Part("wheel", wheel, Place(at=(0.0, -0.1, 1.95)), mass=1.0)
    found = examine(design(post, *([hub] if span else []), ground="firm lawn"))
    row = guy_place(found.loaded)
    assert row.height == pytest.approx(height, abs=1e-9)
    assert row.radius == pytest.approx(height + row.out, abs=0.0101)  # at 45 degrees, rounded up
    assert row.radius - row.out >= height - 1e-9


def test_the_top_of_what_it_stands_on_is_that_of_the_highest_foot():
    feet = [
        Part(f"pad {k}", Box(0.3, 0.3, h), Place(at=(0.5 * k, 0.0, 0.0)), density=2000.0)
        for k, h in enumerate((0.06, 0.1))
    ]
    posts = [
        Part(f"post {k}", Box(0.1, 0.1, 1.0), Place(on=f"pad {k}"), density=500.0) for k in (0, 1)
    ]
    ground = ground_parts(build_structure(design(*feet, *posts)))
    assert ground.feet == (0, 1)
    assert ground.top == pytest.approx(0.1)
    assert ground.low == pytest.approx([-0.15, -0.15])
    assert ground.high == pytest.approx([0.65, 0.15])


@pytest.mark.parametrize(("beside", "share"), [(0.2032, 0.25), (0.4064, 0.5), (None, 1.0)])
def test_the_nearest_of_all_anchors_tells_what_each_of_a_row_holds_sideways(beside, share):
    """Two metres apart they hold in full; another a quarter of their 0.8128 m in the ground beside
    one of them leaves each of that row a quarter (NAVEDTRA 14251: as far apart as they reach)."""
    kind = "rebar stake 1/2 in x 36 in"
    rows = [AnchorRow("corners", kind, "corners")]
    if beside is not None:
        rows.append(AnchorRow("one more", kind, at=(1.0 - beside, 1.0, 0.0), ring=0.0, count=1))
    drawn = design(Part("box", Box(2.0, 2.0, 0.5), density=50.0), ground="firm lawn", wind=20.0)
    found = held_by(
        replace(drawn, tables={**drawn.tables, AnchorRow: tuple(rows)}),
        build_structure(drawn),
        find_ground("firm lawn"),
    )
    alone = anchor_capacity(find_anchor(kind), find_ground("firm lawn")).sideways
    assert found.anchors[0].holds.sideways == pytest.approx(share * alone, rel=1e-6)


@pytest.mark.parametrize(("radius", "out"), [(1.5, 0.0), (1.7, 0.2)])
def test_a_guy_rises_from_its_stake_to_where_it_is_tied(radius, out):
    """1.5 m up over 1.5 m: at 45 degrees, 2.121 m long, whether it is tied in the middle or 0.2 m
    out of it."""
    row = GuyRow(
        "guys",
        "polyester rope 1/4 in",
        "steel stake 1 in x 36 in",
        height=1.5,
        radius=radius,
        count=4,
        out=out,
    )
    drawn = design(Part("post", Box(0.4, 0.4, 1.6), density=200.0), ground="firm lawn")
    (guys,) = held_by(
        replace(drawn, tables={**drawn.tables, GuyRow: (row,)}),
        build_structure(drawn),
        find_ground("firm lawn"),
    ).guys
    assert guys.elevation == pytest.approx(pi / 4.0)
    assert guys.length == pytest.approx(1.5 * sqrt(2.0))
    assert np.hypot(*guys.tops[0, :2]) == pytest.approx(out, abs=1e-9)
