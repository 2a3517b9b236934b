"""Loose parts, swinging parts, coverings and named loads: each against statics by hand."""

from math import pi, sqrt

import numpy as np
import pytest
from designs import design, wind_alone

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.loads.wind.site import Site
from yardfast.units.frozen import replace

G = 9.80665
BASE = Part("base", Box(0.8, 0.8, 0.3), density=2000.0)
UPPER = Part("upper", Box(0.4, 0.4, 0.6), Place(on="base"), density=400.0)


def named(found, name):
    return next(check for check in found.checks if check.name == name)


def test_a_loose_body_tips_about_its_own_foot():
    """W 0.2 over 1.325 (h/D 0.9/0.4) x 0.24 x 0.3 m of its own lever, or its diagonal."""
    found = examine(design(BASE, replace(UPPER, loose=True)))
    weight = 400 * 0.4 * 0.4 * 0.6 * G
    h_over_d = 0.9 / 0.4
    face = 1.3 + 0.1 * (h_over_d - 1) / 6
    q = weight * 0.2 / (face * 0.24 * 0.3)
    assert found.limits.tipping <= sqrt(q / 0.613) * (1 + 1e-9)
    assert found.limits.tipping == pytest.approx(sqrt(q / 0.613), rel=0.02)
    assert found.limits.loose_tips == "upper"
    assert named(found, "loose: upper").utilization > found.overturning.utilization


def test_a_fastened_body_has_no_check_of_its_own_and_the_whole_stands_longer():
    fastened, loose = (
        examine(design(BASE, UPPER)),
        examine(design(BASE, replace(UPPER, loose=True))),
    )
    assert not any(check.name.startswith("loose") for check in fastened.checks)
    assert fastened.limits.tipping > loose.limits.tipping
    assert fastened.overturning == loose.overturning


def test_a_loose_body_slides_on_what_it_stands_on():
    """Wood on wood 0.40 (EN 13814): F <= 0.40 W, on paving the whole has 0.60."""
    found = examine(design(BASE, replace(UPPER, loose=True)))
    check = named(found, "loose sliding: upper")
    weight = 400 * 0.4 * 0.4 * 0.6 * G
    assert check.capacity == pytest.approx(0.40 * weight / 1.5, rel=1e-6)


def test_what_stands_on_a_loose_body_goes_with_it():
    lid = Part("lid", Plate(Rectangle(0.4, 0.4), 0.05), Place(on="upper"), density=2000.0)
    without = examine(design(BASE, replace(UPPER, loose=True)))
    with_lid = examine(design(BASE, replace(UPPER, loose=True), lid))
    assert named(with_lid, "loose sliding: upper").capacity > (
        named(without, "loose sliding: upper").capacity
    )


def test_a_swinging_sign_pulls_at_its_hook():
    board = Part("board", Panel(0.6, 0.4, 0.02), Place(at=(0, 0, 0.9)), density=500.0)
    (fixed, exposed), (swings, _) = (
        wind_alone(design(BASE, board)),
        wind_alone(design(BASE, replace(board, hangs_at=1.6))),
    )
    i = int(np.argmin(np.abs(fixed.azimuths)))
    base = exposed.below[0, i] * exposed.up[0, i]
    area = exposed.below[1, i]
    assert swings.force[i] == pytest.approx(fixed.force[i])
    assert swings.force_height[i] * swings.force[i] == pytest.approx(
        (base + area * 1.6) * 0.613 * 400, rel=1e-6
    )


@pytest.mark.parametrize(
    ("shape", "area", "height"),
    [
        (Gable(2.0, 1.2, 0.8), 2 * 2.0 * 1.0, 0.4),
        (Cone(4, 1.2, 0.8), 4 * 0.5 * 1.2 * 1.0, 0.8 / 3),
        (Cone(0, 1.2, 0.8), pi * 0.6 * 1.0, 0.8 / 3),
    ],
    ids=["gable, slopes of 1 m", "pyramid, slopes of 1 m", "cone, slope of 1 m"],
)
def test_a_covering_adds_its_weight_over_the_slopes(shape, area, height):
    """Plane geometry: a 3-4-5 slope of 1 m; a triangle's centroid at a third of its height."""
    bare = build_structure(design(Part("roof", shape, density=500.0)))
    tiled = build_structure(design(Part("roof", shape, density=500.0, covering=10.0)))
    added = tiled.mass("typical") - bare.mass("typical")
    assert added == pytest.approx(10.0 * area)
    moment = tiled.mass("typical") * tiled.centre_of_mass("typical")[2]
    before = bare.mass("typical") * bare.centre_of_mass("typical")[2]
    assert (moment - before) / added == pytest.approx(height)


def _bench(load):
    seat = Part("seat", Plate(Rectangle(1.2, 0.6), 0.05), Place(on="base"), density=500.0)
    drawn = design(Part("base", Box(0.4, 0.4, 0.4), density=500.0), seat)
    return replace(drawn, tables={**drawn.tables, GivenLoad: (load,)})


def test_somebody_on_the_end_of_a_bench_tips_it():
    """800 N 0.55 m out, 0.35 m beyond the edge: 280 N m against (W 0.2) / 1.5."""
    found = examine(_bench(GivenLoad("sitter", 800.0, (0.55, 0.0, 0.45), (0.0, 0.0, -1.0))))
    check = named(found, "load: sitter")
    weight = 500 * (0.4**3 + 1.2 * 0.6 * 0.05) * G
    assert check.demand == pytest.approx(800 * 0.35)
    assert check.capacity == pytest.approx(weight * 0.2 / 1.5)
    assert not check.passes


def test_somebody_in_the_middle_does_not():
    found = examine(_bench(GivenLoad("sitter", 800.0, (0.0, 0.0, 0.45), (0.0, 0.0, -1.0))))
    assert named(found, "load: sitter").passes


def test_a_level_pull_tips_by_its_height_and_turns_with_the_piece():
    load = GivenLoad("rope", 100.0, (0.0, 0.0, 0.6), (1.0, 0.0, 0.0))
    calm = _bench(load)
    calm = replace(calm, tables={**calm.tables, Site: replace(calm.table(Site), wind=0.1)})
    straight = named(examine(calm), "load: rope")
    turned = named(examine(replace(calm, turn=0.5)), "load: rope")
    assert straight.demand == pytest.approx(100 * 0.6)
    assert turned.utilization == pytest.approx(straight.utilization, rel=1e-9)


FIGURE = Part("figure", Box(0.4, 0.4, 0.6), density=400.0, loose=True)


def stands_on(below, figure=FIGURE):
    """Return a figure's own check on what carries it, the whole bolted down by its weight."""
    return named(
        examine(design(below, replace(figure, place=Place(on=below.name)))), "loose: figure"
    )


def test_a_loose_figure_is_judged_on_the_top_of_a_tapered_pedestal():
    """W half its width over what it stands on: 0.1 m on a top of 0.2 m, whatever the foot is.

    The wind on it is that of its height, so a taller pedestal alone would change it: both are 1 m.
    """
    weight = 400 * 0.4 * 0.4 * 0.6 * G
    tapered = Part("pedestal", Solid(4, 0.8, 0.2, 1.0), density=2000.0)
    plumb = Part("pedestal", Box(0.2, 0.2, 1.0), density=9000.0)
    on_its_top, on_a_post = stands_on(tapered), stands_on(plumb)
    assert on_its_top.capacity == pytest.approx(on_a_post.capacity, rel=1e-6)
    assert on_its_top.capacity <= weight * 0.1


def test_a_loose_figure_on_a_cone_tips_at_a_touch():
    """A point beds in by 10 mm (judgement): half of 0.8 m over 0.8 m, 5 mm to each side."""
    weight = 400 * 0.4 * 0.4 * 0.6 * G
    found = stands_on(Part("cone", Cone(0, 0.8, 0.8), density=2000.0))
    assert found.capacity <= weight * 0.0051
    assert not found.passes


def test_a_loose_figure_on_a_ring_stands_on_its_wood_and_not_its_hole():
    """A body 0.4 m wide on a ring of 0.3 m within: pressed at 0.05 m on two sides, hull 0.4 m."""
    ring = Part("ring", Frame(Rectangle(0.6, 0.6), 0.15, 0.1), density=2000.0)
    figure = examine(design(ring, replace(FIGURE, place=Place(on="ring")))).loose[0]
    assert figure.standing.contact.area == pytest.approx(0.4**2 - 0.3**2)
    assert figure.standing.structure.footprint == pytest.approx(
        np.array(figure.standing.structure.footprint).clip(-0.2, 0.2)
    )


def test_a_loose_figure_over_two_slippery_things_slides_on_the_worse():
    """Wood on wood 0.40; wood on steel less (EN 13814): the least counts."""
    beams = [
        Part(name, Box(0.2, 0.6, 0.2), Place(at=(x, 0.0, 0.0)), density=3000.0, contact=kind)
        for name, x, kind in (("wood", -0.2, "wood"), ("steel", 0.2, "steel"))
    ]
    figure = replace(FIGURE, place=Place(at=(0.0, 0.0, 0.2)))
    mixed = named(examine(design(*beams, figure)), "loose sliding: figure")
    all_steel = [replace(beam, contact="steel") for beam in beams]
    assert mixed.capacity == pytest.approx(
        named(examine(design(*all_steel, figure)), "loose sliding: figure").capacity
    )


def test_the_parts_that_carry_a_named_load_are_those_that_it_goes_down_through():
    """A load on a shelf that stands on one of two posts goes through that post alone."""
    posts = [
        Part(name, Box(0.1, 0.1, 1.0), Place(on="base", at=(x, 0.0, 0.0)), density=500.0)
        for name, x in (("left", -0.3), ("right", 0.3))
    ]
    shelf = Part("shelf", Box(0.2, 0.1, 0.05), Place(at=(0.3, 0.0, 1.3)), density=500.0)
    drawn = design(BASE, *posts, shelf)
    load = GivenLoad("pot", 50.0, (0.3, 0.0, 1.35), (0.0, 0.0, -1.0))
    found = examine(replace(drawn, tables={**drawn.tables, GivenLoad: (load,)}))
    assert found.loads[0].path == ("shelf", "right", "base")


def test_loads_that_it_stands_each_alone_may_tip_it_together():
    """Each asks 0.7 of W 0.2 over 1.5, 0.35 m beyond the edge: both of them 1.4."""
    seat = GivenLoad("one", 60.0, (0.55, 0.0, 0.45), (0.0, 0.0, -1.0), "seat")
    drawn = _bench(seat)
    calm = replace(drawn.table(Site), wind=0.1)
    weight = (0.4**3 + 1.2 * 0.6 * 0.05) * 500.0 * G
    hold = weight * 0.2 / 1.5
    size = 0.7 * hold / 0.35
    loads = tuple(replace(seat, name=name, force=size) for name in ("one", "other"))
    alone = examine(replace(drawn, tables={**drawn.tables, Site: calm, GivenLoad: loads[:1]}))
    both = examine(replace(drawn, tables={**drawn.tables, Site: calm, GivenLoad: loads}))
    assert named(alone, "load: one").utilization == pytest.approx(0.7, rel=1e-3)
    for name in ("one", "other"):
        assert named(both, f"load: {name}").utilization == pytest.approx(1.4, rel=1e-3)
