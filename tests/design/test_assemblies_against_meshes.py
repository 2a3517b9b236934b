"""Random pieces of several parts, placed, turned and copied, against meshes (manifold3d)."""

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from meshes import filled, placed, projected, volume_and_centre

from yardfast.design.model import Design, Part, Place
from yardfast.design.outlines import outlines
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.roofs import Vault
from yardfast.design.structure import build_structure
from yardfast.loads.seen.visible import silhouette

LENGTH = st.floats(0.1, 0.6)
ANY_SHAPE = st.one_of(
    st.builds(
        lambda n, a, b, h: Shell(n, a, b, h, 0.2 * min(a, b)),
        st.sampled_from([3, 4, 5, 6, 8]),
        LENGTH,
        LENGTH,
        LENGTH,
    ),
    st.builds(lambda n, a, h: Solid(n, a, a / 2, h), st.sampled_from([3, 4, 6, 7]), LENGTH, LENGTH),
    st.builds(lambda n, a, h: Cone(n, a, h, 0.01), st.sampled_from([4, 6, 8]), LENGTH, LENGTH),
    st.builds(lambda a, b, h: Box(a, b, h, 0.02, frozenset({"top"})), LENGTH, LENGTH, LENGTH),
    st.builds(lambda a, b, h: Gable(a, b, h, 0.01), LENGTH, LENGTH, LENGTH),
    st.builds(lambda a, b, h: Plate(Rectangle(a, b), h / 10), LENGTH, LENGTH, LENGTH),
    st.builds(
        lambda n, a, h: Frame(Regular(n, a), 0.02, h / 5),
        st.sampled_from([4, 6, 8]),
        LENGTH,
        LENGTH,
    ),
    st.builds(lambda a, h: Panel(a, h, 0.02), LENGTH, LENGTH),
    st.builds(lambda a, b, h: Vault(a, b, b / 2 + h, 0.01), LENGTH, LENGTH, LENGTH),
    st.builds(lambda a, h: Member((0, 0, 0), (a, 0.1, h), 0.04, 0.08), LENGTH, LENGTH),
    st.builds(lambda a, h: Member((0, 0, 0), (a, 0.1, h), across=0.05), LENGTH, LENGTH),
    st.builds(
        lambda a, h: Cutout(((0, 0), (a, 0), (a / 2, h), (-0.1, h / 2)), 0.02), LENGTH, LENGTH
    ),
)


def _place(at, turn, tilt, count, ring, start, step, mirror, in_a_row):
    """A place with copies round a ring or along a row, or none."""
    copies = {}
    if count > 1:
        copies = {"step": step} if in_a_row else {"ring": ring, "start": start}
        copies["count"] = count
    return Place(at=at, turn=turn, tilt=tilt, mirror=frozenset(mirror), **copies)


PLACE = st.builds(
    _place,
    st.tuples(st.floats(-0.5, 0.5), st.floats(-0.5, 0.5), st.floats(0.1, 0.8)),
    st.floats(0.0, 6.28),
    st.one_of(st.just(0.0), st.floats(-0.6, 0.6)),
    st.integers(1, 4),
    st.floats(0.2, 1.0),
    st.floats(0.0, 6.28),
    st.tuples(st.floats(-0.3, 0.3), st.floats(0.05, 0.3), st.floats(0.0, 0.2)),
    st.sets(st.sampled_from(["x", "y"]), max_size=1),
    st.booleans(),
)
FOOT = Part("foot", Plate(Rectangle(1.0, 0.8), 0.04), density=600.0)


def _compare(shapes, places, turn, azimuth):
    stands = Place(on="foot", turn=0.3, at=(0.1, 0.0, 0.0))
    parts = [FOOT, Part("mast", Solid(6, 0.1, 0.05, 0.7), stands, density=500.0)]
    for k, (shape, place) in enumerate(zip(shapes, places, strict=False)):
        parts.append(Part(f"part {k}", shape, place, density=400.0 + 100.0 * k))
    structure = build_structure(Design("random", "metric", tuple(parts), turn=turn))
    meshes = [placed(body) for body in structure.bodies]
    mass, moment = 0.0, np.zeros(3)
    for body, mesh in zip(structure.bodies, meshes, strict=True):
        volume, centre = volume_and_centre(mesh)
        weight = volume * parts[body.part].density
        mass, moment = mass + weight, moment + weight * centre
    assert structure.mass("typical") == pytest.approx(mass, rel=1e-3)
    assert structure.centre_of_mass("typical") == pytest.approx(moment / mass, abs=1e-3)
    theirs = shapely.union_all(
        [_solid(projected(placed(body, filled), azimuth)) for body in structure.bodies]
    )
    ours = outlines(structure.bodies, np.array([azimuth]))
    seen = silhouette(ours, np.ones(ours.shape))
    assert seen.area[0] == pytest.approx(theirs.area, rel=1e-3)
    assert (seen.side[0], seen.up[0]) == pytest.approx(
        (theirs.centroid.x, theirs.centroid.y), abs=2e-3
    )


def _solid(region):
    return shapely.union_all([shapely.Polygon(p.exterior) for p in shapely.get_parts(region)])


ARGUMENTS = {
    "shapes": st.lists(ANY_SHAPE, min_size=1, max_size=6),
    "places": st.lists(PLACE, min_size=6, max_size=6),
    "turn": st.floats(0.0, 6.28),
    "azimuth": st.floats(0.0, 6.28),
}


@pytest.mark.slow
@settings(max_examples=15, deadline=None)
@given(**ARGUMENTS)
def test_random_pieces_weigh_balance_and_look_as_their_meshes(shapes, places, turn, azimuth):
    _compare(shapes, places, turn, azimuth)


MANY = {
    **ARGUMENTS,
    "shapes": st.lists(ANY_SHAPE, min_size=1, max_size=28),
    "places": st.lists(PLACE, min_size=28, max_size=28),
}


@pytest.mark.slow
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(**MANY)
def test_many_random_pieces_weigh_balance_and_look_as_their_meshes(shapes, places, turn, azimuth):
    _compare(shapes, places, turn, azimuth)
