"""Level sections and shared space of parts, round ones too, by formulas and by meshes."""

from math import pi

import numpy as np
import pytest
from meshes import filled, placed

from yardfast.design import plane
from yardfast.design.model import Design, Part, Place
from yardfast.design.overlaps import overlaps
from yardfast.design.placing import Body, about_z, toward_y
from yardfast.design.sections import section
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.edges import edges_of
from yardfast.design.shapes.hulls import Disc, Hull
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.design.structure import build_structure

SHAPES = {
    "ball": Ball(0.5),
    "hollow ball": Ball(0.5, 0.06),
    "round tower": Shell(0, 0.5, 0.3, 0.8, 0.05),
    "pointed round": Cone(0, 0.6, 0.3),
    "dome": Dome(0.6, 0.2, 0.03),
    "vault": Vault(0.6, 0.3, 0.25, 0.03),
    "octagonal tower": Shell(8, 0.4, 0.23, 0.6, 0.03),
    "pole": Member((0.4, 0.3, 0.1), (0.1, 0.0, 0.9), across=0.12),
    "pole cut level": Member((0.4, 0.3, 0.0), (0.1, 0.0, 0.7), across=0.12, cut="level"),
    "pole cut plumb": Member((0.0, 0.0, 0.2), (0.4, 0.3, 0.7), across=0.12, cut="plumb"),
}


def shared(*parts):
    found = overlaps(build_structure(Design("met", "metric", parts)))
    return {(one.first, one.second): one.volume for one in found}


def part(name, shape, **place):
    return Part(name, shape, Place(**place), density=500.0)


@pytest.mark.slow
@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("lean", [0.0, 0.35])
def test_a_level_section_is_that_of_the_mesh(name, lean):
    """manifold3d slices the same shape, cut out of planes and spheres of its own."""
    rotation = np.diag([-1.0, 1.0, 1.0]) @ about_z(0.7) @ toward_y(lean)
    body = Body(0, 0, SHAPES[name], rotation, np.array([0.1, 0.0, 0.2]))
    mesh = placed(body)
    for part_up in (0.04, 0.3, 0.62, 0.93):
        z = body.bottom + part_up * (body.top - body.bottom)
        ours, theirs = section(body, z), mesh.slice(z).area()
        assert ours.area == pytest.approx(theirs, rel=4e-3, abs=2e-5)


def test_nothing_is_cut_above_and_below():
    for shape in SHAPES.values():
        body = Body(0, 0, shape, toward_y(0.3), np.zeros(3))
        assert section(body, body.bottom - 0.001).is_empty
        assert section(body, body.top + 0.001).is_empty


def test_a_ball_half_sunk_in_the_side_of_a_post_shares_half_of_itself():
    """2/3 pi r3, half of a ball."""
    radius = 0.06
    post = part("post", Box(0.3, 0.3, 1.2))
    ball = part("ball", Ball(2.0 * radius), at=(0.15, 0.02, 0.7))
    assert shared(post, ball)["post", "ball"] == pytest.approx(2 / 3 * pi * radius**3, rel=1e-3)


def test_a_ball_half_sunk_in_the_top_of_a_post_shares_half_of_itself():
    radius = 0.06
    post = part("post", Solid(0, 0.3, 0.3, 1.2))
    ball = part("ball", Ball(2.0 * radius), at=(0.01, 0.02, 1.2 - radius))
    assert shared(post, ball)["post", "ball"] == pytest.approx(2 / 3 * pi * radius**3, rel=1e-3)


def test_each_ball_of_a_ring_counts():
    radius = 0.06
    post = part("post", Box(0.3, 0.3, 1.2))
    balls = part("balls", Ball(2.0 * radius), at=(0.0, 0.0, 0.7), ring=0.3, count=4)
    found = shared(post, balls)["post", "balls"]
    assert found == pytest.approx(4 * 2 / 3 * pi * radius**3, rel=1e-3)


@pytest.mark.slow
@pytest.mark.parametrize(
    "other",
    [
        part("other", Ball(0.12), at=(0.05, 0.0, 0.25)),
        part("other", Solid(0, 0.1, 0.08, 0.4), at=(0.06, 0.02, 0.1), tilt=0.6),
        part("other", Dome(0.3, 0.12), at=(0.05, 0.02, 0.25), tilt=0.2),
        part("other", SHAPES["pole cut plumb"], at=(-0.2, -0.15, 0.0)),
        part("other", Vault(0.3, 0.1, 0.2), at=(0.1, 0.0, 0.2)),
    ],
    ids=["ball", "leaning round post", "leaning dome", "pole", "vault"],
)
@pytest.mark.parametrize("post", [Box(0.15, 0.15, 0.5), Solid(0, 0.16, 0.12, 0.5)])
def test_the_space_that_parts_share_is_that_of_meshes(post, other):
    """manifold3d intersects both."""
    parts = part("post", post), other
    one, two = build_structure(Design("met", "metric", parts)).bodies
    theirs = (placed(one, filled) ^ placed(two, filled)).volume()
    assert theirs > 1e-5
    assert shared(*parts)["post", "other"] == pytest.approx(theirs, rel=5e-3)


def test_edges_hold_what_every_pair_of_corners_would():
    """A narrow circle between two wide ones lies within; one out of line joins each to each."""
    up = [Disc((0.0, 0.0, z), r) for z, r in ((0.0, 1.0), (1.0, 0.2), (2.0, 1.0))]
    aside = Disc((0.5, 0.0, 2.0), 1.0)
    for discs, across in ((tuple(up), 2.0), ((up[0], up[1], aside), 2.25)):
        edges = edges_of(Hull(discs=discs))
        rise = edges.ends[:, 2] - edges.starts[:, 2]
        crossing = (edges.starts[:, 2] < 1.0) & (edges.ends[:, 2] > 1.0)
        t = ((1.0 - edges.starts[:, 2]) / np.where(rise, rise, 1.0))[:, None]
        cut = (edges.starts + t * (edges.ends - edges.starts))[crossing]
        assert plane.hull(cut[:, :2]).area == pytest.approx(pi, rel=1e-3), across
