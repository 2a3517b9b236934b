"""Panels sawn at their bevels and put together give back the body, as meshes (manifold3d)."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from manifold3d import Manifold
from meshes import mesh_of
from refolding import outward_normals, refolded, sawn

from yardfast.design.cutting.panels import compound_bevel, half_turn, seam_gap
from yardfast.design.cutting.sawn import sawn_from
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.gables import Gable

BODIES = {
    "octagonal tower": Shell(8, 0.4572, 0.254, 1.2192, 0.0179),
    "straight hexagon": Shell(6, 0.3, 0.3, 0.5, 0.012),
    "straight heptagon": Shell(7, 0.3, 0.3, 0.5, 0.02),
    "flared triangle": Shell(3, 0.3, 0.5, 0.4, 0.02),
    "square tower": Shell(4, 0.76, 0.2, 1.83, 0.012),
    "pentagon whose walls meet inside": Shell(5, 0.4, 0.02, 0.3, 0.03),
    "flared square whose walls meet inside": Shell(4, 0.02, 0.4, 0.3, 0.03),
    "octagonal roof": Cone(8, 0.28, 0.2, 0.0115),
    "triangular roof": Cone(3, 0.28, 0.2, 0.0115),
    "closed box": Box(1.2, 0.5, 0.4, 0.018),
    "cube": Box(0.2, 0.2, 0.2, 0.018),
    "open-topped box": Box(0.5, 0.9, 0.5, 0.02, frozenset({"top"})),
    "box open front and bottom": Box(0.9, 0.4, 0.5, 0.02, frozenset({"front", "bottom"})),
    "tapered box": Box(0.9, 0.6, 0.5, 0.02, frozenset(), 0.5, 0.3),
    "tapered box open to the right": Box(0.9, 0.6, 0.5, 0.02, frozenset({"right"}), 0.5, 0.3),
    "flared box open left and front": Box(
        0.5, 0.4, 0.5, 0.02, frozenset({"left", "front"}), 0.7, 0.5
    ),
    "hollow hip roof": Box(0.9, 0.6, 0.3, 0.015, frozenset({"bottom"}), 0.4, 0.0),
    "hip the other way": Box(0.6, 0.9, 0.3, 0.015, frozenset(), 0.0, 0.4),
    "rectangle to a point": Box(0.9, 0.6, 0.3, 0.015, frozenset({"bottom"}), 0.0, 0.0),
    "two slopes": Gable(1.0, 0.8, 0.4, 0.019),
    "gambrel": Gable(1.0, 0.8, 0.5, 0.019, 0.5, 0.3),
}
NEAR = 1.0e-6
"""Of a volume: what the mesh library's own tolerance leaves."""


def check_refolds(shape):
    pieces = refolded(shape)
    whole = mesh_of(shape)
    volume = whole.volume()
    for panel in sawn_from(shape).panels:
        assert panel.volume == pytest.approx(sawn(panel).volume(), rel=NEAR)
    assert sum(piece.volume() for piece in pieces) == pytest.approx(volume, rel=NEAR)
    together = Manifold.batch_boolean(pieces, _add())
    assert together.volume() == pytest.approx(volume, rel=NEAR)
    # moved by some micrometres, so that no two faces coincide: what is left are films so thin
    moved = whole.translate((1.0e-6, 2.0e-6, 1.5e-6))
    film = 4.0e-6 * whole.surface_area()
    assert (together - moved).volume() <= film
    assert (moved - together).volume() <= film


def _add():
    from manifold3d import OpType

    return OpType.Add


@pytest.mark.parametrize("shape", BODIES.values(), ids=BODIES)
def test_panels_put_together_are_the_body(shape):
    check_refolds(shape)


@settings(max_examples=40, deadline=None)
@given(
    st.integers(3, 14),
    st.floats(0.15, 0.8),
    st.floats(0.15, 0.8),
    st.floats(0.1, 2.0),
    st.floats(0.005, 0.03),
)
def test_any_tower_refolds(sides, bottom, top, height, wall):
    shape = Shell(sides, bottom, top, height, wall)
    assume(shape.inner().bottom > 0.0 or shape.inner().top > 0.0)
    check_refolds(shape)


@settings(max_examples=40, deadline=None)
@given(
    st.floats(0.3, 1.0),
    st.floats(0.3, 1.0),
    st.floats(0.3, 1.0),
    st.floats(0.2, 1.0),
    st.floats(0.2, 1.0),
    st.sets(st.sampled_from(["front", "back", "left", "right", "top", "bottom"]), max_size=3),
)
def test_any_box_refolds(length, width, height, top_length, top_width, opened):
    shape = Box(length, width, height, 0.018, frozenset(opened), top_length, top_width)
    assume(sawn_from(shape).panels)
    check_refolds(shape)


@pytest.mark.parametrize("shape", [BODIES["octagonal tower"], BODIES["octagonal roof"]])
def test_the_dihedral_angle_is_a_half_turn_less_two_bevels(shape):
    (panel,) = sawn_from(shape).panels
    normals = outward_normals(shape)
    for one, other in zip(normals, normals[1:] + normals[:1], strict=True):
        turn = np.arccos(one @ other)
        assert turn == pytest.approx(2.0 * panel.bevel, abs=1.0e-12)


def test_the_outer_faces_of_the_whole_meet_at_the_dihedral():
    # measured on the union of the panels by trimesh: normals of its large outer faces
    import trimesh

    shape = BODIES["octagonal tower"]
    (panel,) = sawn_from(shape).panels
    raw = Manifold.batch_boolean(refolded(shape), _add()).to_mesh()
    mesh = trimesh.Trimesh(raw.vert_properties[:, :3], raw.tri_verts, process=False)
    outside = mesh.triangles_center - [0.0, 0.0, shape.height / 2]
    facing = np.einsum("ij,ij->i", mesh.face_normals, outside) > 0.0
    leaning = np.abs(mesh.face_normals[:, 2] - np.sin(panel.lean)) < 1e-4
    normals = mesh.face_normals[facing & leaning & (mesh.area_faces > 0.01)]
    bearings = np.arctan2(normals[:, 1], normals[:, 0]) % (2 * np.pi)
    order = normals[np.argsort(bearings)]
    angles = np.degrees(np.arccos(np.clip((order * np.roll(order, -1, axis=0)).sum(axis=1), -1, 1)))
    seams = angles[angles > 1.0]
    assert len(seams) == shape.sides
    assert seams == pytest.approx(2.0 * np.degrees(panel.bevel), abs=0.01)


def test_neighbouring_panels_only_touch():
    pieces = refolded(BODIES["octagonal tower"])
    for one, other in combinations(pieces, 2):
        assert (one ^ other).volume() < 1.0e-9


def test_a_regular_body_and_any_two_faces_give_one_bevel():
    for shape in (Shell(5, 0.4, 0.2, 0.9, 0.01), Cone(6, 0.3, 0.1, 0.01)):
        (panel,) = sawn_from(shape).panels
        normals = outward_normals(shape)
        assert half_turn(normals[0], normals[1]) == pytest.approx(panel.bevel, abs=1e-12)


def test_straight_bodies_have_the_plain_mitre_and_square_ends():
    for sides in range(3, 13):
        (panel,) = sawn_from(Shell(sides, 0.3, 0.3, 0.5, 0.01)).panels
        assert np.degrees(panel.bevel) == pytest.approx(180.0 / sides)
        assert (panel.lean, panel.edges.bottom, panel.edges.top) == (0.0, 0.0, 0.0)


def test_the_blank_holds_both_faces():
    import shapely

    for shape in BODIES.values():
        for panel in sawn_from(shape).panels:
            bottom, top, length = panel.blank()
            out = max(0.0, -panel.thickness * np.tan(panel.edges.bottom))
            out = min(out, length - panel.length)
            corners = [[-bottom / 2, 0], [bottom / 2, 0], [top / 2, length], [-top / 2, length]]
            blank = shapely.Polygon(np.array(corners) - [0.0, out]).buffer(1e-9)
            for depth in np.linspace(0.0, panel.thickness, 5):
                face = panel.face_at(depth)
                if len(face):
                    assert blank.contains(shapely.Polygon(face))


def test_what_is_solid_round_or_closed_up_has_no_panels():
    for shape in (
        Solid(8, 0.2, 0.2, 1.0),
        Shell(0, 0.3, 0.3, 1.0, 0.01),
        Cone(0, 0.3, 0.3, 0.01),
        Cone(8, 0.3, 0.3),
        Box(0.3, 0.3, 0.3),
        Box(0.3, 0.3, 0.3, 0.15),
        Gable(1.0, 0.8, 0.4),
    ):
        assert sawn_from(shape).panels == ()


# --- relations -----------------------------------------------------------------------------------


def test_bevels_of_many_bodies_at_once_are_those_one_by_one():
    sides = np.arange(3, 1003) % 58 + 3
    lean = np.linspace(-0.5, 1.2, 1000)
    one_by_one = [compound_bevel(int(n), float(a)) for n, a in zip(sides, lean, strict=True)]
    assert compound_bevel(sides, lean) == pytest.approx(np.array(one_by_one), abs=1e-14)


def test_the_gap_of_a_wrong_setting_is_measured_between_two_sawn_panels():
    # two panels of an octagon sawn at 22 deg instead of 22.5 and held at their right corner:
    # the distance between the two cuts, at the face that does not touch, by coordinates
    bevel, set_at, thick = np.radians(22.5), np.radians(22.0), 0.019
    half = np.radians(90.0 - 22.5)  # between the seam, inward, and each panel
    inner = []
    for way in (1.0, -1.0):
        along = np.array([np.cos(half), way * np.sin(half)])  # along each panel, from the seam
        inward = np.array([np.sin(half), -way * np.cos(half)])
        inner.append(along * thick * np.tan(set_at) + inward * thick)
    apart = inner[0][1] - inner[1][1]
    assert seam_gap(bevel, set_at, thick) == pytest.approx(apart, rel=1e-12)
    many = seam_gap(np.full(1000, bevel), np.linspace(0.3, 0.5, 1000), thick)
    assert many[7] == pytest.approx(seam_gap(bevel, np.linspace(0.3, 0.5, 1000)[7], thick))
