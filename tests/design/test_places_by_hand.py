"""Where parts come to stand, and on what, by hand."""

from math import pi

import numpy as np
import pytest
from sample_file import part_text

from yardfast.checks.inputs import read_text
from yardfast.design import plane
from yardfast.design.model import Design, Part, Place
from yardfast.design.outlines import round_in_plan
from yardfast.design.placing import coincide, place_parts
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.roofs import Vault
from yardfast.design.shapes.rotor import Rotor

INCH = 0.0254


def test_what_stands_on_several_stands_on_the_highest_of_their_tops():
    """Two posts 30 in high, the second 6 in higher: 36 in; their middle is 5 in to the right."""
    text = part_text(
        "shape='box'\nlumber='4x4'\nheight='30 in'\ncount=2\nstep=['10 in', '0 in', '6 in']"
    ).replace("'piece'", "'post'")
    text += "[[part]]\nname='cap'\nshape='ball'\nacross='2 in'\non='post'\nmaterial='OSB'\n"
    (*_, cap) = place_parts(read_text(text))
    assert cap.bottom / INCH == pytest.approx(36.0)
    assert cap.origin[0] / INCH == pytest.approx(5.0)


@pytest.mark.parametrize("height", [0.5, 0.8])
def test_a_hollow_barrel_stands_on_the_feet_of_its_two_walls(height):
    """1 m wide, round or on straight sides, 2 m long, walls of 20 mm: two feet of 2 m by 20 mm."""
    foot = Vault(2.0, 1.0, height, 0.02).contact()
    assert foot.area == pytest.approx(2 * 2.0 * 0.02, rel=1e-9)
    assert foot.bounds == pytest.approx((-1.0, -0.5, 1.0, 0.5))


def test_a_wheel_mirrored_onto_itself_is_told_apart_from_one_beside_it():
    """Copies fill one place where every corner of one lies on a corner of the other: two hundred
    blades on the mirror's plane do, a metre off it none."""
    wheel = Rotor(200, 0.3, 0.02, 0.03, 0.002, yaws=True)
    for away, alike in ((0.0, True), (1.0, False)):
        place = Place(at=(away, 0.0, 0.0), mirror=frozenset("x"))
        assert coincide(wheel, place) is alike
    box = Box(1.0, 0.5, 0.2)
    assert coincide(box, Place(mirror=frozenset("x")))
    assert not coincide(box, Place(turn=0.3, mirror=frozenset("x")))


def test_a_round_cone_is_as_wide_in_plan_as_its_foot():
    """Its tip alone is a corner; the rectangle round it is that of the circle of its foot."""
    cone = Part("cone", Cone(0, 0.4, 0.5), Place(at=(1.0, 0.0, 0.0)), density=500.0)
    (body,) = place_parts(Design("cone", "metric", (cone,)))
    corners = round_in_plan(body)
    assert corners.min(axis=0) == pytest.approx([0.8, -0.2])
    assert corners.max(axis=0) == pytest.approx([1.2, 0.2])


@pytest.mark.parametrize("height", [0.4, 0.6])
def test_the_round_of_a_barrel_by_hand(height):
    """0.8 m wide, 1.5 m long: half a circle of radius r has the length pi r, its middle 2 r/pi
    above its springing, which lies r below the top."""
    area, middle = Vault(1.5, 0.8, height).slopes()
    assert area == pytest.approx(pi * 0.4 * 1.5)
    assert middle == pytest.approx(height - 0.4 + 0.8 / pi)


def test_how_far_points_lie_from_the_edge_along_a_way():
    """In a square of a metre; a point beside it whose way does not meet it lies no way off."""
    square = plane.box(0.0, 0.0, 1.0, 1.0)
    points = np.array([[0.25, 0.5], [0.75, 0.1], [0.5, 3.0]])
    found = plane.clear_along(points, np.array([1.0, 0.0]), square)
    assert found == pytest.approx([0.75, 0.25, 0.0])
