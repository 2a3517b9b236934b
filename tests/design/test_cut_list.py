"""What a design is sawn from: kinds of pieces, stock by stock, larger than a sheet, blocks."""

import numpy as np
import pytest
from designs import design

from yardfast.design.cutting.blocks import face_turn
from yardfast.design.cutting.cut_list import cut_list
from yardfast.design.cutting.sawn import sawn_from
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.structure import build_structure

PLY = "softwood plywood"


def listed(*parts):
    return cut_list(build_structure(design(*parts)))


def board(width, length, thickness=0.018, material=PLY, name="board", **place):
    plate = Plate(Rectangle(length, width), thickness)
    return Part(name, plate, Place(**place), material=material)


def test_stock_is_gathered_by_material_and_thickness():
    found = listed(
        board(0.5, 0.5, name="a"),
        board(0.5, 0.6, name="b", at=(1.0, 0.0, 0.0)),
        board(0.5, 0.5, 0.012, name="c", at=(2.0, 0.0, 0.0)),
        board(0.5, 0.5, material="acrylic", name="d", at=(3.0, 0.0, 0.0)),
        board(0.5, 0.5, material="white oak", name="e", at=(4.0, 0.0, 0.0)),
        board(0.5, 0.5, 0.2, material="concrete", name="f", at=(5.0, 0.0, 0.0)),
    )
    groups = [[cut.part.name for cut in group.cuts] for group in found.flats]
    assert groups == [["a", "b"], ["c"], ["d"], ["e"]]
    assert [group.sheets for group in found.flats] == [1, 1, 1, 0]
    assert [other.part.name for other in found.others] == ["f"]
    assert found.sheets == 3
    sheet = 1.22 * 2.44
    assert found.waste == pytest.approx(1.0 - (0.25 + 0.3 + 0.25 + 0.25) / (3 * sheet))


def test_a_mast_longer_than_the_sheet_is_joined_of_lengths_that_keep_its_taper():
    found = listed(Part("mast", Shell(6, 0.6, 0.3, 2.8, 0.012), material=PLY))
    (group,) = found.flats
    (cut,) = group.cuts
    assert (cut.across, cut.along, cut.seams) == (1, 2, 1)
    assert cut.whole_on is not None
    assert cut.whole_on.name == "1220x3050 mm"
    assert group.layout is not None
    laid = [one.blank for sheet in group.layout.sheets for one in sheet]
    assert len(laid) == 12
    bottom, top, length = cut.blank()
    assert sum(blank.area for blank in laid) == pytest.approx(6 * (bottom + top) / 2 * length)
    assert {round(blank.top, 9) for blank in laid if blank.bottom == bottom} == {
        round((bottom + top) / 2, 9)
    }


def test_a_floor_wider_and_longer_than_the_sheet_is_joined_both_ways():
    (group,) = listed(board(2.0, 4.0)).flats
    (cut,) = group.cuts
    assert (cut.across, cut.along, cut.seams) == (2, 2, 3)
    assert cut.whole_on is None


def test_a_wide_taper_is_turned_across_the_grain_where_it_fits_only_so():
    (group,) = listed(Part("skirt", Shell(3, 1.0, 0.8, 0.3, 0.012), material=PLY)).flats
    (cut,) = group.cuts
    assert cut.piece.bottom > 1.22
    assert (cut.turned, cut.seams) == (True, 0)


def test_fewer_sheets_do_where_the_grain_may_run_either_way():
    # 0.8 m by 1.15 m on 1.22 m by 2.44 m: with the grain two, one behind the other; across it
    # three, 3 x 0.8 m and two cuts being 2.406 m
    (group,) = listed(board(0.8, 1.15, count=3, step=(2.0, 0.0, 0.0))).flats
    assert group.sheets == 2
    assert group.free_sheets == 1


def test_boards_weigh_what_their_shapes_do():
    shapes = (
        Plate(Regular(8, 0.5), 0.02, 0.2),
        Plate(Regular(0, 0.5), 0.02, 0.2),
        Plate(Rectangle(1.0, 0.5), 0.02, solidity=0.7),
        Panel(1.0, 0.5, 0.02, 0.5),
        Cutout(((0, 0), (1, 0), (0.4, 1)), 0.02, (((0.3, 0.1), (0.5, 0.1), (0.4, 0.3)),)),
        Rotor(7, 0.5, 0.05, 0.12, 0.002, facing=0.0, solidity=0.9),
        Box(1.0, 0.5, 0.04),
    )
    for shape in shapes:
        (one,) = sawn_from(shape).boards
        assert one.copies * one.volume == pytest.approx(shape.moments().volume, rel=1e-12)


def test_a_round_board_is_as_wide_as_its_diameter():
    (one,) = sawn_from(Plate(Regular(0, 0.5), 0.02)).boards
    assert (one.bottom, one.length) == (pytest.approx(0.5), pytest.approx(0.5))


@pytest.mark.parametrize(
    ("sides", "tilt"), [(3, -30.0), (4, 0.0), (5, 18.0), (6, 30.0), (8, 45.0), (12, 60.0)]
)
def test_the_saw_stands_square_less_the_turn_to_cut_a_blocks_next_face(sides, tilt):
    # plane geometry: neighbouring faces turn by 360/n, and the blade stands on the table that
    # the first face lies on; an octagon from a square blank is the well-known 45 deg
    block = sawn_from(Solid(sides, 0.1, 0.1, 0.5)).block
    assert block is not None
    assert np.degrees(block.tilt) == pytest.approx(tilt, abs=1e-9)


@pytest.mark.parametrize(
    "shape", [Solid(6, 0.2, 0.1, 0.3), Cone(5, 0.2, 0.1), Solid(3, 0.1, 0.2, 0.2)]
)
def test_a_tapered_blocks_faces_turn_as_those_of_its_mesh(shape):
    import trimesh

    block = sawn_from(shape).block
    assert block is not None
    hull = trimesh.convex.convex_hull(shape.hulls()[0].points)
    side = np.abs(hull.face_normals[:, 2]) < 0.99
    both = side[hull.face_adjacency].all(axis=1)
    angles = hull.face_adjacency_angles[both]
    found = angles[angles > 1e-6]
    assert found == pytest.approx(block.turn, abs=1e-6)
    assert block.turn == pytest.approx(face_turn(shape.sides, block.lean))


def test_a_hip_that_is_solid_turns_as_its_mesh_does():
    import trimesh

    box = Box(0.5, 0.3, 0.2, None, frozenset(), 0.3, 0.1)
    block = sawn_from(box).block
    assert block is not None
    hull = trimesh.convex.convex_hull(box.outer().hull().points)
    side = np.abs(hull.face_normals[:, 2]) < 0.99
    angles = hull.face_adjacency_angles[side[hull.face_adjacency].all(axis=1)]
    assert angles[angles > 1e-6] == pytest.approx(block.turn, abs=1e-6)
