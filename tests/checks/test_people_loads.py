"""What people may do: how hard, how high and to which bodies, by the rule for children."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.acting.people_loads import CLIMB, PUSH, people_loads
from yardfast.checks.acting.point_loads import point_loads
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure

PARTS = (
    Part("slab", Plate(Rectangle(1.0, 1.0), 0.05), material="concrete"),
    Part("tube", Shell(8, 0.4, 0.4, 1.5, 0.02), Place(on="slab"), material="OSB"),
    Part("core", Box(0.1, 0.1, 1.5), Place(on="slab"), material="southern pine"),
)


def test_children_push_and_climb_what_they_reach():
    """76 N level at 1.25 m or the top, 264.8 N down on what tops out below 1.5 m (16 CFR 1261)."""
    found = people_loads(build_structure(design(*PARTS)), "children", "service")
    pushes = [load for _, load, _ in found if load.name == PUSH]
    climbs = [(i, load) for i, load, _ in found if load.name == CLIMB]
    assert {load.force for load in pushes} == {76.0}
    assert {round(load.at[2], 9) for load in pushes} == {0.05, 1.25}
    assert {(i, load.force) for i, load in climbs} == {(0, 264.8)}
    assert people_loads(build_structure(design(*PARTS)), "none", "service") == []


def test_a_push_acts_on_its_own_body_though_another_has_the_same_middle():
    structure = build_structure(design(*PARTS))
    points = point_loads((), people_loads(structure, "public", "service"))
    for load, _ in points.people:
        body, at = points.at[points.place[load]]
        assert structure.design.parts[structure.bodies[body].part].name == load.on
        assert np.asarray(load.at).tolist() == at.tolist()
    assert {body for body, _ in points.at} == {0, 1, 2}


def test_they_push_along_and_climb_on_the_corners_of_a_part_that_stands_askew():
    """A bench 1.0 x 0.2 m turned by 30 degrees: its corners and sides by plane geometry."""
    bench = Part("bench", Box(1.0, 0.2, 0.4), Place(turn=np.radians(30.0)), material="white oak")
    found = people_loads(build_structure(design(bench)), "children", "service")
    c, s = np.cos(np.radians(30.0)), np.sin(np.radians(30.0))
    corners = [(x * c - y * s, x * s + y * c) for x in (-0.5, 0.5) for y in (-0.1, 0.1)]
    climbs = np.array([load.at[:2] for _, load, _ in found if load.name == CLIMB])
    apart = np.linalg.norm(climbs[:, None] - np.array(corners), axis=2)
    assert apart.shape == (4, 4)
    assert apart.min(axis=0).max() < 1e-9
    angles = [np.degrees(np.arctan2(*load.direction[1::-1])) for _, load, _ in found[:8]]
    assert np.mod(angles, 45.0) == pytest.approx(30.0)
