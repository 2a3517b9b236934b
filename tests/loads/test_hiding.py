"""What hides what: by where bodies stand, held against meshes of a general library (manifold3d).

The rule is a judgement: what stands before a body with a clear gap of at
most a tenth of its own lesser width hides it; beyond that each takes its full wind, or with shelter
asked for what ISO 4302 leaves.
"""

from math import cos, pi, radians, sin

import numpy as np
import pytest
from designs import design, wind_alone
from hypothesis import example, given, settings
from hypothesis import strategies as st
from manifold3d import Manifold
from meshes import mesh_of

from yardfast.checks.examination import examine
from yardfast.design.faults import DesignError
from yardfast.design.model import Part, Place
from yardfast.design.outlines import outlines
from yardfast.design.placing import place_parts
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle
from yardfast.loads.seen.depth import least_widths
from yardfast.loads.seen.hiding import CLOSE, MOST_LOOKS, hidden, visible
from yardfast.units.frozen import replace

BASE = Part("base", Plate(Rectangle(6.0, 6.0), 0.02), density=7850.0)
LENGTHS = st.floats(0.05, 1.2)
TURNS = st.floats(0.0, 3.0)


def at(found, azimuth, values):
    return values[int(np.argmin(np.abs(found.azimuths - azimuth)))]


def boards(gap, **site):
    """Two boards a metre square and 20 mm thick, ``gap`` m clear behind one another."""
    two = [
        Part(name, Panel(1.0, 1.0, 0.02), Place(on="base", at=(0.0, y, 0.0)), density=500.0)
        for name, y in (("front", 0.0), ("back", gap + 0.02))
    ]
    return examine(design(BASE, *two, **site)).wind


def test_boards_hide_each_other_up_to_a_tenth_of_their_width_and_not_beyond():
    one, near, far = boards(0.0), boards(0.1), boards(0.1001)
    assert at(near, 0, near.force) == pytest.approx(at(one, 0, one.force), rel=1e-9)
    alone = at(one, 0, one.force) - at(far, 0, far.force) / 2.0
    edge_of_base = 2.0 * at(one, 0, one.force) - at(far, 0, far.force)
    assert alone == pytest.approx(edge_of_base / 2.0)
    assert 0.0 < edge_of_base < 0.1 * at(one, 0, one.force)


def test_shelter_that_is_asked_for_counts_on_one_base_too():
    """ISO 4302 prints 0.10 for a solid front at a gap of half its width (the table in use)."""
    plain, sheltered = boards(0.5), boards(0.5, sheltering=True)
    board = at(plain, 0, plain.force) - at(boards(0.0), 0, boards(0.0).force)
    left = at(plain, 0, plain.force) - at(sheltered, 0, sheltered.force)
    assert left == pytest.approx((1.0 - 0.10) * board, rel=1e-3)


def test_a_board_that_others_stand_against_hides_what_is_close_through_it():
    """Boards at the front and back of a block: on each line of the wind one of them counts."""
    block = Part("block", Box(1.0, 0.6, 1.0), Place(on="base"), density=500.0)
    faces = [
        Part(f"board {y}", Panel(1.0, 1.0, 0.02), Place(on="base", at=(0, y, 0)), density=500.0)
        for y in (-0.31, 0.31)
    ]
    whole, one = (examine(design(BASE, block, *some)).wind for some in (faces, faces[:1]))
    assert at(whole, 0, whole.force) == pytest.approx(at(one, 0, one.force), rel=1e-9)


def arbor(*, on):
    """Four posts 0.9 m apart, beams over them, lattices between them, rafters across."""

    def place(below, x, y, z):
        return Place(on=below, at=(x, y, 0.0)) if on else Place(at=(x, y, z))

    posts = [
        Part(f"post {x} {y}", Solid(4, 0.09, 0.09, 2.0), place("base", x, y, 0.02), density=400.0)
        for x in (-0.6, 0.6)
        for y in (-0.45, 0.45)
    ]
    beams = [
        Part(
            f"beam {y}",
            Box(1.6, 0.04, 0.14),
            Place(on=f"post -0.6 {y}", at=(0.6, 0.0, 0.0)) if on else Place(at=(0.0, y, 2.02)),
            density=400.0,
        )
        for y in (-0.45, 0.45)
    ]
    lattices = [
        Part(
            f"lattice {x}",
            Panel(0.8, 1.6, 0.012, 0.5),
            replace(place("base", x, 0.0, 0.02), turn=pi / 2.0),
            density=400.0,
        )
        for x in (-0.6, 0.6)
    ]
    ends = ((0.0, -0.6, 0.0), (0.0, 0.6, 0.0))
    rafters = Part(
        "rafters",
        Member(*ends, 0.04, 0.09),
        replace(
            Place(on="beam -0.45", at=(-0.7, 0.45, 0.045)) if on else Place(at=(-0.7, 0.0, 2.205)),
            count=7,
            step=(1.4 / 6.0, 0.0, 0.0),
        ),
        density=400.0,
    )
    return design(BASE, *posts, *beams, *lattices, rafters)


def test_an_arbor_takes_the_same_wind_by_on_and_by_at():
    one, other = (examine(arbor(on=on)).wind for on in (True, False))
    assert one.azimuths == pytest.approx(other.azimuths)
    for values in ("force", "force_height", "uplift", "area"):
        assert getattr(one, values) == pytest.approx(getattr(other, values), rel=1e-9, abs=1e-9)


def test_posts_of_an_arbor_each_take_their_wind():
    """Four posts a pace apart, wind along their row: the pair behind takes as much as the front."""

    def force(*places):
        posts = [
            Part(f"p{k}", Solid(4, 0.09, 0.09, 2.0), Place(on="base", at=(*p, 0.0)), density=400.0)
            for k, p in enumerate(places)
        ]
        return examine(design(BASE, *posts)).wind.force[0]

    base = examine(design(BASE)).wind.force[0]
    two, four = (
        force((-0.6, 0.5), (0.6, 0.5)),
        force((-0.6, 0.5), (0.6, 0.5), (-0.6, -0.5), (0.6, -0.5)),
    )
    assert four - base == pytest.approx(2.0 * (two - base))


SHAPES = st.one_of(
    st.builds(Box, LENGTHS, LENGTHS, LENGTHS),
    st.builds(Solid, st.sampled_from([0, 3, 4, 6, 8]), LENGTHS, LENGTHS, LENGTHS),
    st.builds(Panel, LENGTHS, LENGTHS, st.floats(0.01, 0.05)),
    st.builds(Cone, st.sampled_from([0, 4, 8]), LENGTHS, LENGTHS),
)
PLACED = st.tuples(
    SHAPES, st.floats(-0.8, 0.8), st.floats(-0.8, 0.8), st.floats(0.0, 0.5), TURNS, st.floats(0, 1)
)


def placed(drawn, on=None, up=0.0):
    shape, x, y, z, turn, tilt = drawn
    lean = tilt if tilt > 0.5 else 0.0
    place = Place(on=on, at=(x, y, z + up), turn=turn, tilt=lean)
    return Part(f"part {x} {y} {z}", shape, place, density=500.0)


@pytest.mark.slow
@settings(max_examples=15, deadline=None)
@example([(Box(0.75, 0.5, 0.25), 0.5, 0.0, 0.0, 1.0, 1.0), (Box(0.0625, 1, 1), 0, 0, 0, 0, 0)])
@example(
    [  # its outlines cross themselves by rounding once two of them are taken off
        (Box(1.0, 1.0, 0.25), 0.0, 0.0, 0.25, 0.0, 0.0),
        (Box(1.0, 0.25, 1.125), 0.0, -0.5, 0.0, 0.0, 0.75),
        (Solid(0, 1.0, 1.0, 1.0), 0.0, 0.0, 0.3125, 0.0, 0.0),
        (Box(1.0, 1.0, 1.0), 0.0, 0.0, 0.0, 0.0, 0.0),
    ]
)
@example(
    [  # mended, one of them has a line beside its area
        (Box(1.0, 1.0, 0.25), 0.0, 0.0, 0.25, 0.0, 0.0),
        (Box(1.0, 1.125, 0.25), 0.0, -0.5, 0.0, 0.0, 0.72265625),
        (Solid(0, 1.0, 1.0, 1.0), 0.0, 0.0, 0.3125, 0.0, 0.0),
        (Box(1.0, 1.0, 1.0), 0.0, 0.0, 0.0, 0.0, 0.0),
    ]
)
@given(st.lists(PLACED, min_size=2, max_size=4, unique_by=lambda one: one[1:4]))
def test_what_hides_what_does_not_ask_how_it_was_written(drawn):
    (one, seen), (other, also) = (
        wind_alone(design(BASE, *(placed(each, on, up) for each in drawn)))
        for on, up in (("base", 0.0), (None, 0.02))
    )
    assert one.azimuths == pytest.approx(other.azimuths)
    assert seen.below == pytest.approx(also.below, rel=1e-9, abs=1e-9)
    assert seen.up == pytest.approx(also.up, rel=1e-9, abs=1e-9)


def on_site(body) -> Manifold:
    matrix = np.column_stack([body.rotation, body.origin])
    return mesh_of(body.shape).transform(matrix)


@settings(max_examples=40, deadline=None)
@given(PLACED, PLACED, st.floats(0.0, 2.0 * pi))
def test_what_is_hidden_is_what_meshes_swept_along_the_wind_share(first, second, azimuth):
    """The shadow of what one mesh shares with the other, swept a tenth of both widths along."""
    bodies = place_parts(design(placed(first), placed(second)))
    ways = np.array([azimuth])
    seen = outlines(bodies, ways)
    coefficient = np.array([[2.0], [1.0]])
    found = visible(seen, hidden(bodies, seen, coefficient, ways), np.array([True, True]))
    wind = -np.array([sin(azimuth), cos(azimuth), 0.0])
    gap = CLOSE * least_widths(seen[:, 0])
    meshes = [on_site(body) for body in bodies]
    swept = Manifold.batch_hull(
        [meshes[0].translate(gap[0] * wind), meshes[0].translate(-gap[1] * wind)]
    )
    shared = swept ^ meshes[1]
    turned = shared.rotate((0.0, 0.0, np.degrees(azimuth))).rotate((90.0, 0.0, 0.0))
    shadow = turned.project().area()
    size = seen[1, 0].area
    assert size - found[1, 0].area == pytest.approx(shadow, abs=0.02 * size + 1e-5)
    assert found[0, 0].area == pytest.approx(seen[0, 0].area)


def test_narrowest_gap_that_an_outline_passes_through():
    """A stick 1.0 by 0.1 that leans 30 degrees: 0.1, though the box round it is far wider."""
    lean = Place(turn=pi / 2.0, tilt=radians(30.0))
    bodies = place_parts(design(Part("stick", Box(0.1, 0.1, 1.0), lean, density=500.0)))
    assert least_widths(outlines(bodies, np.array([0.0]))[0]) == pytest.approx([0.1])


def test_more_in_one_another_than_is_looked_at_is_refused_by_number():
    """Of n posts about one middle each stands in each other one: n (n - 1) / 2 pairs, 5,995 of
    110; they took minutes, and the weight of all counted."""
    posts = [
        Part(f"post {k}", Box(0.1, 0.1, 1.0), Place(on="base", turn=radians(k)), density=500.0)
        for k in range(110)
    ]
    with pytest.raises(DesignError) as refused:
        wind_alone(design(BASE, *posts))
    (fault,) = refused.value.faults
    assert fault.found.startswith("5,995 pairs of parts")
    assert f"at most {MOST_LOOKS:,} comparisons" in fault.expected
    assert fault.part == "post 109"


def test_round_parts_in_one_another_count_by_the_cuts_that_they_take():
    """Of 14 balls round a ring each stands in each other, and on the base: 91 and 14 pairs, from 76
    sides some 8,000 comparisons, but each takes some forty cuts. Twenty of them took 25 s."""
    ring = Place(at=(0.0, 0.0, 0.02), count=14, ring=0.5)
    balls = Part("balls", Ball(0.5), ring, density=100.0)
    with pytest.raises(DesignError) as refused:
        wind_alone(design(BASE, balls))
    (fault,) = refused.value.faults
    assert fault.found == "105 pairs of parts in or close behind one another"
    assert fault.part == "balls"


def test_posts_in_one_another_take_the_wind_of_their_common_outline():
    """What is together counts once: of four posts 100 mm wide and 1 m high, each 20 mm to the right
    of the one before, 160 mm x 1 m; the last, of the greatest coefficient, keeps its own."""
    posts = [
        Part(f"post {k}", Box(0.1, 0.1, 1.0), Place(at=(0.02 * k, 0.005 * k, 0.0)), density=500.0)
        for k in range(4)
    ]
    bodies = place_parts(design(*posts))
    ways = np.zeros(1)
    seen = outlines(bodies, ways)
    coefficient = np.array([[1.0], [2.0], [3.0], [4.0]])
    rest = visible(seen, hidden(bodies, seen, coefficient, ways), np.ones(4, dtype=bool))
    assert [each.area for each in rest[:, 0]] == pytest.approx([0.02, 0.02, 0.02, 0.1], rel=1e-9)


def test_of_two_that_take_alike_the_one_named_first_takes_the_wind():
    """Two boards alike flush behind one another, seen from either side: the first named shows all.

    So the rule has it; the whole takes the same, but each is judged by what blows on it.
    """
    two = [
        Part(name, Panel(1.0, 1.0, 0.02), Place(on="base", at=(0.0, y, 0.0)), density=500.0)
        for name, y in (("one", 0.0), ("other", 0.02))
    ]
    _, exposed = wind_alone(design(BASE, *two))
    for azimuth in (0.0, 180.0):
        d = int(np.argmin(np.abs(exposed.azimuths - azimuth)))
        assert exposed.area[1:, d] == pytest.approx([1.0, 0.0], abs=1e-9)


@pytest.mark.parametrize("gap", [0.002, 0.0045, 0.0055, 0.03])
@pytest.mark.parametrize("turn", [0.0, 17.0])
def test_bodies_that_a_plane_parts_are_looked_at_no_further(gap, turn, monkeypatch):
    """A screen of slats, 50 mm wide: those 5 mm apart and less hide each other on slanting winds.

    Whether a plane parts two of them is asked first; that leaves out none that is together.
    """
    step = 0.05 + gap
    slats = Part(
        "slats",
        Box(0.05, 0.9, 0.05),
        Place(at=(-0.2, 0.0, 0.5), turn=radians(turn), count=8, step=(step, 0.0, 0.0)),
        density=500.0,
    )
    bodies = place_parts(design(BASE, slats))
    azimuths = np.radians(np.arange(0.0, 360.0, 15.0))
    seen = outlines(bodies, azimuths)
    rank = np.tile(np.arange(len(bodies), 0.0, -1.0)[:, None], (1, len(azimuths)))

    def areas():
        left = visible(seen, hidden(bodies, seen, rank, azimuths), np.ones(len(bodies), dtype=bool))
        return np.array([[region.area for region in row] for row in left])

    with_planes = areas()
    up = np.array([[0.0, 0.0, 1.0]])
    monkeypatch.setattr("yardfast.loads.seen.hiding.faces_look", lambda bodies: up)
    assert with_planes == pytest.approx(areas(), abs=1e-12)
    whole = np.array([[region.area for region in row] for row in seen])
    room = step * cos(radians(turn)) - 0.05
    assert (with_planes.sum() < 0.999 * whole.sum()) == (room <= 0.005)
