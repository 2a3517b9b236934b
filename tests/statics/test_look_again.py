"""What is read without fault but hardly meant: each note, and what just is none."""

from dataclasses import replace

import pytest
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.structure import build_structure
from yardfast.statics.graph import graph_of
from yardfast.statics.look_again import look_again

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
