"""The thrust of roofs without ties, by balance of all its hinges, and the walls that take it."""

from math import hypot

import numpy as np
import pytest
from designs import design
from hypothesis import given
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.plates.strip_strength import edge_strength, plate_material_of
from yardfast.checks.plates.thrust import laid_thrust, pressed_thrust
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.plans import Rectangle

BASE = Part("foot", Plate(Rectangle(3.0, 3.0), 0.05), material="concrete")
PLY = "softwood plywood"


def reactions(points, forces, ridge, foot):
    """Four reactions of a frame of three hinges: three sums of all of it, and one of its half."""
    right = np.column_stack([points, forces])
    whole = np.vstack([right, right * [-1, 1, -1, 1]])
    x, z = foot
    A = np.array(
        [[1, 0, 1, 0], [0, 1, 0, 1], [-z, x, -z, -x], [-(z - ridge), x, 0, 0]], dtype=float
    )
    F = whole[:, 2:].sum(axis=0)
    M = (whole[:, 0] * whole[:, 3] - whole[:, 1] * whole[:, 2]).sum()
    half = (points[:, 0] * forces[:, 1] - (points[:, 1] - ridge) * forces[:, 0]).sum()
    return np.linalg.solve(A, -np.array([F[0], F[1], M, half]))


SHARES = st.floats(0.5, 1.0), st.floats(0.3, 0.95)


@given(st.floats(0.3, 1.2), st.floats(0.1, 1.5), *SHARES, st.booleans())
def test_thrust_is_the_reaction_of_a_frame_of_three_hinges(half, height, share, knee, bent):
    """Right foot's level reaction, forces of many short pieces of both slopes added up."""
    corners = [[0.0, height], [half, 0.0]]
    if bent:
        corners.insert(1, [knee * half, height * (1.0 - 0.4 * knee)])
    slope, reach = np.array(corners), share * half
    along = np.linspace(0.0, len(slope) - 1.0, 4001)
    walk = np.column_stack([np.interp(along, np.arange(len(slope)), slope[:, k]) for k in (0, 1)])
    step, middle = np.diff(walk, axis=0), 0.5 * (walk[1:] + walk[:-1])
    long = np.hypot(*step.T)
    foot = reach, float(np.interp(reach, slope[:, 0], slope[:, 1]))
    if height - foot[1] < 0.05 * height:
        return
    for forces, found in (
        (np.column_stack([step[:, 1], -step[:, 0]]), pressed_thrust(slope, reach)),
        (np.column_stack([0.0 * long, -long]), laid_thrust(slope, reach)),
    ):
        inward = reactions(middle, forces, height, foot)[0]  # level, at the foot to the right
        assert found == pytest.approx(-inward, rel=1e-4, abs=1e-4)


def test_a_straight_roof_is_the_arch_of_the_handbook():
    """H = w L^2/(8 f) of an even load w on the plan, span L, rise f (statics)."""
    slope = np.array([[0.0, 0.4], [0.7, 0.0]])
    w = hypot(0.4, 0.7) / 0.7
    assert laid_thrust(slope, 0.7) == pytest.approx(w * 1.4**2 / (8.0 * 0.4))


def body(*open_faces, **more):
    return Part("body", Box(1.6, 0.8, 0.7, 0.018, frozenset(open_faces)), Place(on="foot"),
                material=PLY, **more)  # fmt: skip


def roof(height=0.3, length=1.7, **more):
    return Part("roof", Gable(length, 0.9, height, 0.012), Place(on="body"), material=PLY, **more)


def found(*parts):
    one = examine(design(BASE, *parts, wind=30.0))
    return {each.name: each for each in one.members.judged}["body"]


def test_the_upper_edge_of_an_open_box_under_a_roof_by_hand():
    """0.175 of its span deep: 1.9 q on it, 1.9 q or 0.4 q on the slopes, and their weight."""
    one = found(body("top"), roof(mass=20.0))
    assert one.where == "upper edge"
    q, depth, reach, f = 0.5 * 1.226 * 30.0**2, 0.175 * 1.6, 0.4, 0.3 * 0.4 / 0.45
    s = hypot(0.45, 0.3)
    per_pascal = (0.45 * reach - s**2 / 2.0) / f
    laid = 20.0 * 9.80665 / (2.0 * s * 1.7) * (s * reach - s * 0.45 / 2.0) / f
    wind = 1.9 * q * depth + max(0.4 * q * per_pascal, -1.9 * q * per_pascal)
    assert one.check.demand == pytest.approx((wind + laid) * 1.6**2 / 8.0, rel=1e-6)
    assert one.check.capacity == pytest.approx(845 * 0.37068471 * 1.6 * 0.75 * depth, rel=1e-5)


def test_a_box_with_a_top_of_its_own_holds_its_edges():
    assert found(body(), roof()).where != "upper edge"
    flatter, steeper = (found(body("top"), roof(h, mass=60.0)).check.demand for h in (0.2, 0.45))
    assert flatter > steeper


def test_a_shallow_wall_that_its_roof_lifts_bends_in_its_own_plane_by_hand():
    """1.9 q on half of a roof 0.9 m wide, w L^2/8; 6 F_b,across S/t^2 of the sheet on t d^2/6.

    A wall twice as high holds four times as much (statics).
    """
    low = Part(
        "body", Box(1.6, 0.8, 0.06, 0.018, frozenset({"top"})), Place(on="foot"), material=PLY
    )
    one = found(low, roof())
    assert one.where == "lifted edge"
    q = 0.5 * 1.226 * 30.0**2
    assert one.check.demand == pytest.approx(1.9 * q * 0.45 * 1.6**2 / 8.0, rel=1e-6)
    higher = found(Part("body", Box(1.6, 0.8, 0.12, 0.018, frozenset({"top"})), Place(on="foot"),
                        material=PLY), roof())  # fmt: skip
    assert higher.where != "lifted edge" or higher.check.utilization < one.check.utilization / 3.5


@pytest.mark.parametrize("material", ["softwood plywood", "aluminium", "acrylic"])
def test_what_bends_on_edge_holds_with_the_square_of_its_depth(material):
    stuff = plate_material_of(
        Part("wall", Plate(Rectangle(1.0, 1.0), 0.018), material=material), 0.018
    )
    one, two = (edge_strength(stuff, 0.018, np.array([d]), 1.0, "service") for d in (0.04, 0.08))
    assert float(two.moment[0] / one.moment[0]) == pytest.approx(4.0, rel=0.01)
    flat = edge_strength(stuff, 0.018, np.array([0.018]), 1.0, "service")
    assert 0.0 < float(flat.moment[0]) < np.inf
