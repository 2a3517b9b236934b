"""How fasteners share a load: by equilibrium, and by groups worked out on paper."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.checks.joints import fastener_group


def convex(seed, corners):
    """Return the corners of a convex face, counter-clockwise, none more than a half turn apart."""
    rng = np.random.default_rng(seed)
    even = 2.0 * np.pi * np.arange(corners) / corners
    angles = np.sort(even + rng.uniform(-0.3, 0.3, corners) * 2.0 * np.pi / corners)
    size = rng.uniform(0.05, 1.0)
    return size * np.column_stack([np.cos(angles), np.sin(angles)]) + rng.normal(size=2)


def within(seed, corners, count):
    """Return points inside a convex face."""
    shares = np.random.default_rng(seed + 1).dirichlet(np.ones(len(corners)), size=count)
    return shares @ corners


@given(
    seed=st.integers(0, 10**6),
    sides=st.integers(3, 12),
    count=st.integers(1, 20),
)
def test_pulls_are_in_equilibrium_and_press_within_the_face(seed, sides, count):
    face = convex(seed, sides)
    points = within(seed, face, count)
    rng = np.random.default_rng(seed + 2)
    pull = 100.0 * rng.normal(size=30)
    moment = pull[:, None] * face.mean(axis=0) + 100.0 * rng.normal(size=(30, 2))
    found = fastener_group.pulls(points, face, pull, moment)
    size = np.abs(pull) + np.linalg.norm(moment, axis=1)
    assert (found.tension >= 0.0).all()
    assert np.abs(found.tension.sum(axis=1) - found.pressing - pull).max() <= 1e-9 * size.max()
    turning = found.tension @ points - found.pressing[:, None] * found.press_at
    assert np.abs(turning - moment).max() <= 1e-9 * size.max()
    assert (found.pressing >= -1e-7 * size).all()
    pressed = found.pressing > 1e-6 * size
    along = np.roll(face, -1, axis=0) - face
    normals = np.column_stack([along[:, 1], -along[:, 0]])
    normals /= np.linalg.norm(normals, axis=1)[:, None]
    beyond = found.press_at @ normals.T - (normals * face).sum(axis=1)
    assert (beyond[pressed].max(axis=1, initial=-1.0) <= 1e-6).all()


@given(seed=st.integers(0, 10**6), count=st.integers(2, 20))
def test_forces_along_the_face_are_in_equilibrium(seed, count):
    rng = np.random.default_rng(seed)
    points = rng.normal(size=(count, 2))
    force, twist = 100.0 * rng.normal(size=(30, 2)), 100.0 * rng.normal(size=30)
    each = fastener_group.shares(points, force, twist)
    assert each.sum(axis=1) == pytest.approx(force, abs=1e-8)
    turned = (points[:, 0] * each[..., 1] - points[:, 1] * each[..., 0]).sum(axis=1)
    assert turned == pytest.approx(twist, abs=1e-8)


@given(seed=st.integers(0, 10**6), count=st.integers(3, 20))
def test_what_hangs_is_in_equilibrium(seed, count):
    rng = np.random.default_rng(seed)
    points = rng.normal(size=(count, 3))
    force, moment = 100.0 * rng.normal(size=(30, 3)), 100.0 * rng.normal(size=(30, 3))
    each = fastener_group.hung(points, force, moment)
    held = np.isfinite(each).all(axis=(1, 2))
    assert each[held].sum(axis=1) == pytest.approx(force[held], abs=1e-7)
    turned = np.cross(points, each[held]).sum(axis=1)
    assert turned == pytest.approx(moment[held], abs=1e-6)


SQUARE = np.array([[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1]])
"""A face of 200 mm by 200 mm."""


def test_two_rows_draw_by_their_distance_from_the_pressed_edge():
    # By hand: 20 N m turns it about the edge x = 0.1; four screws at x = -0.08 and 0.04 stand 0.18
    # and 0.06 from it. T = M a / sum a2 = 20 x 0.18 / (2 x 0.18^2 + 2 x 0.06^2) = 50 N and 16.67 N.
    points = np.array([[-0.08, -0.05], [-0.08, 0.05], [0.04, -0.05], [0.04, 0.05]])
    found = fastener_group.pulls(points, SQUARE, 0.0, [-20.0, 0.0])
    assert found.tension == pytest.approx([50.0, 50.0, 50.0 / 3.0, 50.0 / 3.0])
    assert found.pressing == pytest.approx(133.333, abs=0.001)
    assert found.press_at == pytest.approx([0.1, 0.0])


def test_a_load_within_the_face_draws_nothing():
    points = np.array([[-0.08, 0.0], [0.08, 0.0]])
    found = fastener_group.pulls(points, SQUARE, -100.0, [-100.0 * 0.05, 0.0])
    assert found.tension == pytest.approx([0.0, 0.0])
    assert found.press_at == pytest.approx([0.05, 0.0])


def test_a_pull_in_the_middle_is_shared_evenly():
    found = fastener_group.pulls(0.8 * SQUARE, SQUARE, 100.0, [0.0, 0.0])
    assert found.tension == pytest.approx(25.0 * np.ones(4))
    assert found.pressing == pytest.approx(0.0, abs=1e-9)


def test_a_slanting_moment_presses_on_the_corner():
    # By symmetry about the diagonal: it presses on (0.1, 0.1), the far screw draws most.
    found = fastener_group.pulls(0.8 * SQUARE, SQUARE, 0.0, [-10.0, -10.0])
    assert found.press_at == pytest.approx([0.1, 0.1])
    a = np.array([0.36, 0.2, 0.04, 0.2]) / np.sqrt(2.0)
    assert found.tension == pytest.approx(10.0 * np.sqrt(2.0) * a / (a**2).sum())


def test_an_off_centre_force_turns_the_group_about_its_centroid():
    # By hand: 100 N up, 0.3 m to the right of four screws on a square of 0.2 m: 25 N each, and
    # M r / sum r2 = 30 x 0.1414 / (4 x 0.02) = 53.03 N square to the arm. Right ones: 37.5 + 25 up.
    points = np.array([[-0.1, -0.1], [0.1, -0.1], [0.1, 0.1], [-0.1, 0.1]])
    each = fastener_group.shares(points, [0.0, 100.0], 30.0)
    assert each[1] == pytest.approx([37.5, 62.5])
    assert each[3] == pytest.approx([-37.5, -12.5])


def test_one_screw_takes_no_twist():
    assert not np.isfinite(fastener_group.shares([[0.1, 0.0]], [10.0, 0.0], 5.0)).any()
    assert fastener_group.shares([[0.1, 0.0]], [0.0, 10.0], 1.0) == pytest.approx(
        np.array([[0.0, 10.0]])
    )


def test_two_points_hold_no_turn_about_the_line_between_them():
    points = [[0.0, 0.0, 0.0], [1.0, 0.0, 0.0]]
    assert not np.isfinite(fastener_group.hung(points, [0.0, 0.0, 10.0], [5.0, -5.0, 0.0])).any()
    held = fastener_group.hung(points, [0.0, 0.0, 10.0], [0.0, -5.0, 0.0])
    assert held == pytest.approx(np.array([[0.0, 0.0, 5.0], [0.0, 0.0, 5.0]]))


def test_many_loads_are_as_one_by_one():
    rng = np.random.default_rng(3)
    pull, moment = rng.normal(size=(5, 200)), rng.normal(size=(5, 200, 2))
    whole = fastener_group.pulls(0.8 * SQUARE, SQUARE, pull, moment).tension
    for i in range(0, 200, 37):
        one = fastener_group.pulls(0.8 * SQUARE, SQUARE, pull[2, i], moment[2, i])
        assert one.tension == pytest.approx(whole[2, i])


@pytest.mark.parametrize("face", [SQUARE[:2], np.empty((0, 2))])
def test_a_face_without_width_is_refused(face):
    with pytest.raises(ValueError, match="three corners"):
        fastener_group.pulls(SQUARE, face, 1.0, [0.0, 0.0])
