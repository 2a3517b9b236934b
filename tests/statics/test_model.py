"""The model of a design: what loads on bodies do to sticks, joints and the ground."""

import numpy as np
import pytest
import shapely
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.structure import build_structure
from yardfast.statics.building import model_of
from yardfast.statics.contacts.edge import Edge, Holds
from yardfast.statics.contacts.face import Face
from yardfast.statics.model import on_uneven_ground
from yardfast.statics.stiffness import AXIAL, LATERAL
from yardfast.statics.tie import Tie, share_of, stood
from yardfast.statics.wrench import wrench

POST = Part("post", Solid(4, 0.089, 0.089, 1.8), Place(), material="southern pine")
X, Y, Z = np.eye(3)


def face_at(z, half=0.0445):
    return Face(shapely.box(-half, -half, half, half), np.array([0.0, 0.0, z]), X, Y, Z)


def square(half, z=0.0):
    return np.array([[x, y, z] for x in (-half, half) for y in (-half, half)])


def four(stiffness):
    """Four points, far stiffer sideways than what bends above them."""
    n = len(square(0.03))
    return np.tile(stiffness, (n, 1)), np.tile([LATERAL, LATERAL, AXIAL], (n, 1))


def standing(*parts, ties=(), joined=()):
    structure = build_structure(design(*parts))
    feet = [stood(0, square(0.3), np.full((4, 3), 1.0e9))]
    return model_of(structure, ties, joined, feet)


def test_wind_spread_along_a_post_bends_it_as_beam_theory():
    """w L^2/2 and w L at its foot, each screw M/(4 s): four screws alone hold the post."""
    block = Part("block", Plate(Rectangle(0.6, 0.6), 0.1), material="concrete")
    stiff, kind = four([1.0e8, 1.0e8, 5.5e6])
    tie = Tie(1, 0, face_at(0.1), square(0.03, 0.1), stiff, kind, 1.0e-3)
    model = standing(
        block, Part("post", POST.shape, Place(on="block"), material="southern pine"), ties=[tie]
    )
    loads = np.zeros((1, 2, 6))
    w, L = 150.0, 1.8
    loads[0, 1] = wrench([w * L, 0.0, 0.0], [0.0, 0.0, 0.1 + L / 2.0])
    forces = model.solved(loads)
    (post,) = forces.sections
    assert np.hypot(*post.force[0, 0, 4:]) == pytest.approx(w * L**2 / 2.0, rel=1e-6)
    assert np.hypot(*post.force[0, 0, 1:3]) == pytest.approx(w * L, rel=1e-6)
    half = np.abs(post.at - L / 2.0).argmin()
    x = L - post.at[half]
    assert np.hypot(*post.force[0, half, 4:]) == pytest.approx(w * x**2 / 2.0, rel=1e-6)
    assert np.abs(forces.solution.force[0, model.tied[0]][2:12:3]) == pytest.approx(
        w * L**2 / 2.0 / (4.0 * 0.03), rel=1e-4
    )
    assert forces.solution.error.max() < 1e-8


def test_what_goes_through_a_joint_is_what_acts_beyond_it():
    block = Part("block", Plate(Rectangle(0.6, 0.6), 0.1), material="concrete")
    stiff, kind = four([1.0e6, 1.0e6, 5.5e6])
    tie = Tie(1, 0, face_at(0.1), square(0.03, 0.1), stiff, kind, 1.0e9)
    model = standing(
        block, Part("post", POST.shape, Place(on="block"), material="southern pine"), ties=[tie]
    )
    rng = np.random.default_rng(7)
    loads = rng.normal(size=(20, 2, 6)) * [50, 50, 50, 20, 20, 2]
    forces = model.solved(loads)
    assert not forces.solution.lost.any()
    through = forces.through(0)
    F, M = loads[:, 1, :3], loads[:, 1, 3:] - np.cross([0.0, 0.0, 0.1], loads[:, 1, :3])
    assert through == pytest.approx(np.concatenate([F, M], axis=1), abs=1e-6)
    assert forces.solution.error.max() < 1e-8


def test_held_together_is_one_rigid_piece_and_a_ring_of_lumber_is_its_sides():
    ring = Part("ring", Frame(Regular(8, 0.8), 0.089, 0.038), material="southern pine, treated")
    cap = Part("cap", Plate(Regular(8, 0.8), 0.02), Place(on="ring"), material="softwood plywood")
    structure = build_structure(design(ring, cap))
    face = Face(shapely.Polygon(Regular(8, 0.8).corners()), np.array([0.0, 0.0, 0.038]), X, Y, Z)
    feet = [
        stood(0, np.column_stack([Regular(8, 0.7).corners(), np.zeros(8)]), np.full((8, 3), 1e6))
    ]
    loads = np.random.default_rng(3).normal(size=(10, 2, 6)) * 40.0
    apart = model_of(structure, (), (), feet).system
    held = model_of(structure, (), (Edge(1, 0, Holds.ASSUMED, face),), feet)
    assert len(apart.beams.length) >= 8
    assert held.piece_of[1][0] in held.piece_of[0]
    forces = held.solved(loads)
    assert forces.solution.error.max() < 1e-8
    up = forces.solution.force.reshape(10, 8, 3).sum(axis=1)
    assert -up == pytest.approx(-loads[:, :, :3].sum(axis=1), abs=1e-6)


@pytest.mark.parametrize(("rows", "pull"), [(4, 2297.0), (8, 2166.4), (16, 2164.0)])
def test_a_joint_on_its_bed_shares_as_the_whole_system_does(rows, pull):
    """One screw amid a square foot of 89 mm, pressed 100 N, moment 80 N m: worked by hand."""
    tie = Tie(
        1,
        0,
        face_at(0.0),
        np.zeros((1, 3)),
        np.array([[1.0e6, 1.0e6, 6.0e6]]),
        np.array([[LATERAL, LATERAL, AXIAL]]),
        27.0e6 / 0.089**2,
    )
    found = share_of(tie, np.array([[0.0, 0.0, -100.0, 0.0, 80.0, 0.0]]), rows)
    assert found.force[0, 2] == pytest.approx(pull, abs=0.05)
    assert not found.lost[0]
    assert (found.force[0, 3:] <= 0.0).all()


def test_a_twist_that_a_single_screw_cannot_hold_is_told():
    tie = Tie(
        1,
        0,
        face_at(0.0),
        np.zeros((1, 3)),
        np.array([[1.0e6, 1.0e6, 6.0e6]]),
        np.array([[LATERAL, LATERAL, AXIAL]]),
        1.0e9,
    )
    found = share_of(tie, np.array([[0, 0, -100.0, 0, 0, 5.0], [0, 0, -100.0, 0, 0, 0]]), 8)
    assert found.lost.tolist() == [True, False]


@pytest.mark.parametrize(
    ("gap", "low", "beside"), [(0.0, 25.0, 25.0), (3e-3, 17.5, 32.5), (0.02, 0.0, 50.0)]
)
def test_a_foot_over_low_ground_bears_once_the_piece_has_come_down_to_it(gap, low, beside):
    """A stiff slab on four springs, 100 N in its middle: statics of four springs, one with a gap.

    Moments about each diagonal: the low foot and that across take the same, and so do the others.
    The slab is flat: 2 R/k + gap = 2 S/k, R + S = 50 N, k 10,000 N/m; 10 mm and it bears nothing.
    """
    slab = Part("slab", Plate(Rectangle(1.0, 1.0), 0.1), material="concrete")
    corners = [[x, y, 0.0] for x, y in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5))]
    feet = [stood(0, np.array([at]), np.full((1, 3), 1.0e4), stands=True) for at in corners]
    model = model_of(build_structure(design(slab)), (), (), feet)
    level = model.solved(np.array([[[0.0, 0.0, -100.0, 0.0, 0.0, 0.0]]]))
    found = on_uneven_ground(level, 0, gap).solution
    assert -found.force[0, 2::3] == pytest.approx([low, beside, low, beside], abs=1e-6)
    assert found.error.max() < 1e-8
