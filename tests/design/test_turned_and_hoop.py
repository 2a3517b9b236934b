"""What is turned on a lathe, and the hoop: weighed, read, drawn, sawn or said not to be."""

from math import pi

import numpy as np
import pytest
from meshes import placed, projected
from sample_file import faults, one_part, part_text, the_fault

from yardfast.checks.inputs import read_text
from yardfast.design.cutting.cut_list import cut_list
from yardfast.design.outlines import outlines
from yardfast.design.placing import Body, toward_y
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.hoop import Hoop
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.turned import Turned
from yardfast.design.structure import build_structure
from yardfast.report.fastening.cut_words import other_words
from yardfast.report.wording.amounts import Amounts

INCH = 0.0254  # international inch, exact

TURNED = "shape='turned'\nprofile=[['2 in','0 in'],['2 in','1 in'],['1 in','1 in'],['1 in','8 in']]"
HOOP = "shape='hoop'\nacross='20 in'\nbar='2 in'"


@pytest.mark.parametrize(
    ("section", "area"),
    [
        (Regular(0, 0.04), pi / 4.0 * 0.04**2),
        (Rectangle(0.03, 0.05), 0.03 * 0.05),
        (Regular(6, 0.04), 2.0 * 3.0**0.5 * 0.02**2),  # hexagon of apothem a: 2 sqrt(3) a2
    ],
)
def test_a_hoop_weighs_its_section_times_the_way_of_its_centroid(section, area):
    """Pappus's second theorem: V = 2 pi R A."""
    found = Hoop(0.5, section).moments()
    assert found.volume == pytest.approx(2.0 * pi * 0.5 * area, rel=1e-12)
    assert found.first[:2] == pytest.approx([0.0, 0.0], abs=1e-15)


def test_a_torus_is_that_of_the_formula():
    """V = 2 pi2 R r2 (Beyer, CRC Standard Mathematical Tables, solids); a pipe's bore is empty."""
    assert Hoop(0.4, Regular(0, 0.06)).moments().volume == pytest.approx(
        2.0 * pi**2 * 0.4 * 0.03**2, rel=1e-12
    )
    pipe = Hoop(0.4, Regular(0, 0.06), 0.01).moments().volume
    assert pipe == pytest.approx(2.0 * pi**2 * 0.4 * (0.03**2 - 0.02**2), rel=1e-12)


def test_a_straight_profile_is_a_post_and_a_step_is_two():
    straight, post = Turned(((0.1, 0.0), (0.06, 0.8))), Solid(0, 0.2, 0.12, 0.8)
    assert straight.moments().volume == pytest.approx(post.moments().volume, rel=1e-12)
    assert straight.moments().first == pytest.approx(post.moments().first, rel=1e-12)
    stepped = Turned(((0.1, 0.0), (0.1, 0.2), (0.05, 0.2), (0.05, 1.0))).moments()
    low, high = pi * 0.1**2 * 0.2, pi * 0.05**2 * 0.8
    assert stepped.volume == pytest.approx(low + high, rel=1e-12)
    assert stepped.first[2] == pytest.approx(low * 0.1 + high * 0.6, rel=1e-12)


def test_a_turned_body_weighs_its_half_section_times_the_way_of_its_centroid():
    """Pappus once more: a triangle from the axis to (0.3, 0.2), centroid 0.1 from the axis."""
    found = Turned(((0.0, 0.0), (0.3, 0.2), (0.0, 0.6))).moments().volume
    assert found == pytest.approx(2.0 * pi * 0.1 * (0.5 * 0.6 * 0.3), rel=1e-12)


def test_wind_goes_through_a_hoop_that_stands():
    body = Body(0, 0, Hoop(0.3, Regular(0, 0.03)), toward_y(pi / 2.0), np.array([0.0, 0.0, 0.5]))
    ours = outlines([body], np.array([0.0]))[0][0]
    assert ours.area == pytest.approx(pi * (0.315**2 - 0.285**2), rel=2e-3)
    assert len(ours.interiors) == 1
    # straight pieces: a 72-gon leaves the circle by 0.3 mm, 1 % of so thin a bar
    assert ours.symmetric_difference(projected(placed(body), 0.0)).area <= 1e-2 * ours.area


def test_they_are_read_as_they_are_written():
    shape = one_part(TURNED).shape
    assert isinstance(shape, Turned)
    profile = [(2, 0), (2, 1), (1, 1), (1, 8)]
    assert np.array(shape.profile) == pytest.approx(np.array(profile) * INCH)
    hoop = one_part(HOOP).shape
    assert isinstance(hoop, Hoop)
    assert (hoop.radius, hoop.across) == pytest.approx((9 * INCH, 20 * INCH))
    flat = one_part("shape='hoop'\nacross='20 in'\nwidth='1/4 in'\nheight='2 in'").shape
    assert isinstance(flat, Hoop)
    assert flat.section == Rectangle(0.25 * INCH, 2 * INCH)
    assert flat.tall == pytest.approx(2 * INCH)


def test_a_profile_begins_where_its_foot_is():
    shape = one_part("shape='turned'\nprofile=[['2 in','5 in'],['1 in','9 in']]").shape
    assert isinstance(shape, Turned)
    assert shape.profile[0][1] == 0.0
    assert shape.height == pytest.approx(4 * INCH)


def points(*pairs):
    return "[" + ",".join(f"['{r} in','{z} in']" for r, z in pairs) + "]"


@pytest.mark.parametrize(
    ("keys", "key", "found", "expected"),
    [
        (f"profile={points((2, 0))}", "profile", "1 points", "at least 2 points"),
        (f"profile={points((2, 0), (-1, 4))}", "profile", "point 2", "a radius of 0 or more"),
        (f"profile={points((2, 0), (1, 4), (2, 3))}", "profile", "point 3", "from the foot up"),
        (f"profile={points((2, 3), (1, 3))}", "profile", "0 in high", "a size of"),
        (f"profile={points((2, 0), (0, 3), (0, 5))}", "profile", "points 2 and 3", "thickness"),
        ("", "profile", "no 'profile'", "its radius and height"),
    ],
)
def test_a_profile_that_cannot_be_turned_is_told(keys, key, found, expected):
    fault = the_fault(part_text(f"shape='turned'\n{keys}"))
    assert fault.key == key
    assert found in fault.found
    assert expected in fault.expected


@pytest.mark.parametrize(
    ("keys", "key", "expected"),
    [
        ("across='20 in'\nbar='10 in'", "bar", "half of its width"),
        ("across='20 in'\nbar='2 in'\nwidth='1 in'", "width", "not both"),
        ("across='20 in'\nwidth='1 in'", None, "height"),
        ("across='20 in'\nbar='2 in'\nwall='1 in'", "wall", "less than"),
        ("across='20 in'", None, "bar"),
    ],
)
def test_a_hoop_that_cannot_be_made_is_told(keys, key, expected):
    told = faults(part_text(f"shape='hoop'\n{keys}"))
    assert told
    assert any(expected in f"{one.key} {one.found} {one.expected}" for one in told)
    assert key is None or told[0].key == key


@pytest.mark.parametrize("keys", [TURNED, HOOP])
def test_they_are_said_not_to_be_sawn(keys):
    cuts = cut_list(build_structure(read_text(part_text(keys))))
    assert "not sawn" in " ".join(other_words(one, Amounts(False)) for one in cuts.others)
