"""Where fasteners stand: by hand on faces of plain shape."""

import numpy as np
import pytest
import shapely

from yardfast.checks.fasteners import fastener_layout as layout

UP = np.array([0.0, 1.0])
PLATE = shapely.box(0.0, 0.0, 0.4, 0.2)
RING = shapely.Point(0, 0).buffer(0.30, 64).difference(shapely.Point(0, 0).buffer(0.28, 64))
TWO = shapely.union_all([shapely.box(0, 0, 1.0, 0.04), shapely.box(0, 0.5, 1.0, 0.54)])


def test_four_on_a_plate_stand_in_its_corners():
    points = layout.where_nothing_is_said(PLATE, 4, UP)
    assert sorted(map(tuple, points.round(9).tolist())) == [
        (0.02, 0.02),
        (0.02, 0.18),
        (0.38, 0.02),
        (0.38, 0.18),
    ]


def test_one_stands_in_the_middle_and_three_in_a_row():
    assert layout.where_nothing_is_said(PLATE, 1, UP) == pytest.approx(np.array([[0.2, 0.1]]))
    row = layout.where_nothing_is_said(PLATE, 3, UP)
    assert sorted(row[:, 0].tolist()) == pytest.approx([0.02, 0.2, 0.38])
    assert row[:, 1] == pytest.approx([0.1, 0.1, 0.1])


def test_a_ring_is_set_round_the_middle_of_its_wall():
    points = layout.where_nothing_is_said(RING, 12, UP)
    assert np.hypot(*points.T) == pytest.approx(0.29, abs=0.001)
    assert layout.least_spacing(points) == pytest.approx(2 * 0.29 * np.sin(np.pi / 12), rel=0.01)


def test_two_strips_share_evenly_along_their_middles():
    points = layout.where_nothing_is_said(TWO, 10, UP)
    assert sorted(points[:, 1].round(6).tolist()) == [0.02] * 5 + [0.52] * 5
    assert sorted(points[:5, 0].tolist()) == pytest.approx([0.1, 0.3, 0.5, 0.7, 0.9])


def test_as_many_on_each_side_of_a_square_wall():
    wall = shapely.box(0, 0, 0.4, 0.4).difference(shapely.box(0.02, 0.02, 0.38, 0.38))
    points = layout.on_each_side(wall, 8)
    on_a_side = [abs(points - edge) < 1e-9 for edge in (0.01, 0.39)]
    assert [int(side.any(axis=1).sum()) for side in on_a_side] == [4, 4]
    with pytest.raises(ValueError, match="4"):
        layout.on_each_side(wall, 6)


def test_a_round_face_has_no_sides():
    with pytest.raises(ValueError, match=r"\d"):
        layout.on_each_side(RING, 12)


def test_outward_is_square_to_the_nearest_edge():
    points = np.array([[0.2, 0.01], [0.39, 0.1], [0.2, 0.19], [0.01, 0.1]])
    expected = np.array([[0.0, -1.0], [1.0, 0.0], [0.0, 1.0], [-1.0, 0.0]])
    assert layout.outward(PLATE, points) == pytest.approx(expected)


def test_a_row_on_a_square_runs_upward_however_the_square_is_written_and_turned():
    """Common practice: two screws through a post's face stand one above the other."""
    ring = np.array([[0.0, 0.0], [0.09, 0.0], [0.09, 0.09], [0.0, 0.09]])
    for first in range(4):
        for way in (1, -1):
            square = shapely.Polygon(np.roll(ring, first, axis=0)[::way])
            points = layout.where_nothing_is_said(square, 2, UP)
            assert sorted(points.tolist()) == [
                pytest.approx([0.045, 0.02]),
                pytest.approx([0.045, 0.07]),
            ]


def test_out_of_a_strip_is_across_it_however_near_its_end():
    """What is screwed through a sheet at its edge goes through its thickness (common practice)."""
    edge = shapely.box(0.0, 0.0, 0.012, 1.5)
    found = layout.outward(edge, np.array([[0.003, 0.0], [0.009, 1.5], [0.009, 0.7]]))
    assert found == pytest.approx(np.array([[-1.0, 0.0], [1.0, 0.0], [1.0, 0.0]]))
    for off in (-1e-12, 1e-12):
        amid = layout.outward(edge, np.array([[0.006 + off, 0.7]]))
        assert amid == pytest.approx(np.array([[1.0, 0.0]]))
