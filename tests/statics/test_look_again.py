"""What is read without fault but hardly meant: each note, and what just is none."""

import pytest
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.statics.contacts.graph import graph_of
from yardfast.statics.contacts.look_again import look_again
from yardfast.statics.tables.anchor_table import BallastRow
from yardfast.units.frozen import replace

BASE = Part("base", Box(1.0, 1.0, 0.2), density=600.0)
BLOCK = Part("block", Box(0.3, 0.3, 0.4), Place(on="base"), density=500.0)


def notes(*parts, **more):
    drawn = replace(design(*parts), **more)
    return [(one.part, one.key, one.found) for one in look_again(graph_of(build_structure(drawn)))]


def test_a_plain_piece_has_none():
    assert notes(BASE, BLOCK) == []


@pytest.mark.parametrize(("units", "said"), [("metric", "10 mm"), ("imperial", "0.394 in")])
def test_what_stands_across_a_gap(units, said):
    above = replace(BLOCK, place=Place(on="base", at=(0.0, 0.0, 0.01)))
    found = notes(BASE, above, units=units)
    assert found == [("block", "at", f"{said} above base, with nothing between")]


@pytest.mark.parametrize(("wall", "thickness", "solid"), [
    (None, 0.3, True), (0.018, 0.3, False), (None, 0.018, False),
])  # fmt: skip
def test_a_solid_body_of_a_sheet_material(wall, thickness, solid):
    """The thickest sheet that is sold is less than 1 1/2 in; a box of 12 in is meant hollow."""
    box = Part("box", Box(0.3, 0.3, thickness, wall), Place(on="base"), material="softwood plywood")
    found = notes(BASE, box)
    assert [key for _, key, _ in found] == (["material"] if solid else [])
    wood = replace(box, material="southern pine")
    assert notes(BASE, wood) == []
    assert notes(BASE, replace(box, mass=3.0)) == []


@pytest.mark.parametrize(("long", "told"), [(10.0, False), (10.2, True)])
def test_sizes_that_differ_more_than_tenfold(long, told):
    beam = Part("beam", Box(long, 0.1, 0.1), density=500.0)
    stub = Part("stub", Box(0.1, 0.1, 1.0), Place(on="beam"), density=500.0)
    assert [part for part, _, _ in notes(beam, stub)] == (["beam"] if told else [])
    assert notes(beam) == []


@pytest.mark.parametrize(("z", "told"), [(-0.3, True), (0.0, False)])
def test_a_depth_given_twice(z, told):
    post = Part("post", Box(0.1, 0.1, 2.0), Place(at=(0.0, 0.0, z)), density=500.0, embed=0.6)
    assert [key for _, key, _ in notes(post)] == (["embed"] if told else [])


@pytest.mark.parametrize(("x", "share"), [(0.0, "100"), (0.1, "67"), (0.2, "33"), (0.25, None)])
def test_parts_that_fill_the_same_space(x, share):
    """Of two blocks 0.3 m long, x m apart, (0.3 - x) / 0.3 is in both: plane geometry."""
    other = replace(BLOCK, name="other", place=Place(on="base", at=(x, 0.0, 0.0)))
    found = [(part, said) for part, key, said in notes(BASE, BLOCK, other) if "same space" in said]
    said = f"{share}% of it fills the same space as other, and both are weighed"
    assert found == ([] if share is None else [("block", said)])


@pytest.mark.parametrize(("count", "deep"), [(16, "488 mm"), (14, None)])
def test_ballast_that_lies_deep(count, deep):
    """16 bags of 40 lb at 100 lb a cubic foot on 4 square feet lie 19.2 in deep, 14 16.8 in."""
    foot = Part("foot", Box(0.6096, 0.6096, 0.05), density=600.0)
    row = BallastRow("bags", 18.144, count, "foot")
    found = notes(foot, tables={**design(foot).tables, BallastRow: (row,)})
    said = f"it would lie some {deep} deep on foot"
    assert found == ([] if deep is None else [("bags", "count", said)])


@pytest.mark.parametrize(("density", "told"), [(11300.0, False), (11400.0, True)])
def test_what_weighs_more_than_lead(density, told):
    """Lead is 11,340 kg/m3 (CRC Handbook of Chemistry and Physics)."""
    heavy = replace(BLOCK, density=density)
    assert [key for _, key, _ in notes(BASE, heavy)] == (["density"] if told else [])


@pytest.mark.parametrize(("tall", "embed", "told"), [
    (0.81, 0.0, True), (0.79, 0.0, False), (0.81, 0.3, False),
])  # fmt: skip
def test_a_post_that_stands_on_its_end(tall, embed, told):
    """8 times as high as it is wide, 0.1 m, and alone on the ground (judgement)."""
    post = Part("post", Box(0.1, 0.1, tall), density=500.0, embed=embed)
    found = notes(post, replace(BLOCK, place=Place(on="post")))
    assert found == (
        [("post", "embed", "810 mm high it stands on its end, 100 mm wide")] if told else []
    )


def test_one_of_two_posts_is_no_foot_by_itself():
    posts = [
        Part(f"post {x}", Box(0.1, 0.1, 1.0), Place(at=(x, 0.0, 0.0)), density=500.0)
        for x in (0.0, 0.5)
    ]
    beam = Part("beam", Box(0.6, 0.1, 0.1), Place(at=(0.25, 0.0, 1.0)), density=500.0)
    assert notes(*posts, beam) == []
