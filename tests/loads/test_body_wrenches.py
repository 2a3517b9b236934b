"""The wind on each body by itself: its force and line of action, and that they make up the whole.

Statics: the moment of a force about the origin is r x F, and wrenches about one point add.
"""

import numpy as np
import pytest
from designs import design
from garden import each_example

from yardfast.checks.inputs import read
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.actions import body_actions, wind_actions
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site


def exposed_of(design):
    surfaces = [part.surface for part in design.parts]
    structure = build_structure(design)
    gust = method_of(Site("gust", 30.0, "paving"), structure.height)
    return expose(structure, bare(structure, surfaces, gust), False)


def drawn(exposed):
    """Factors drawn at random, as a method would give them."""
    rng = np.random.default_rng(7)
    count = len(exposed.limit)
    return {
        "ratio": rng.uniform(0.8, 1.0, count),
        "directionality": rng.uniform(0.85, 1.0, count),
        "gust": rng.uniform(0.85, 0.95, len(exposed.azimuths)),
    }


def plain(exposed):
    ones = np.ones(len(exposed.limit))
    return {"ratio": ones, "directionality": ones, "gust": np.ones(len(exposed.azimuths))}


@each_example
def test_the_bodies_of_an_example_make_up_the_whole(file):
    exposed, pressure = exposed_of(read(file)), np.array([37.0, 410.0])
    factors = drawn(exposed)
    each = body_actions(exposed, pressure, **factors)
    whole = wind_actions(exposed, pressure, **factors)
    assert each.names == whole.names
    assert each.wrench.shape == (2, len(exposed.limit), *whole.twist.shape[1:], 6)
    size = np.abs(whole.wrench).max()
    assert each.wrench.sum(axis=1) == pytest.approx(whole.wrench, rel=1e-9, abs=1e-9 * size)
    assert each.tilting.sum(axis=1) == pytest.approx(whole.tilting, rel=1e-9, abs=1e-9 * size)


def test_a_body_alone_is_pushed_through_its_middle():
    """A post at (2, 1) in wind from the front: Mx = -z Fy, My = 0, Mz = x Fy."""
    post = Part("post", Solid(4, 0.2, 0.2, 1.0), Place(at=(2.0, 1.0, 0.0)), density=500.0)
    base = Part("base", Plate(Rectangle(5.0, 4.0), 1e-6), density=500.0)
    exposed = exposed_of(design(base, post))
    each = body_actions(exposed, np.array(1.0), **plain(exposed))
    d = int(np.argmin(np.abs(exposed.azimuths - 180.0)))
    fx, fy, fz, mx, my, mz = each.wrench[1, d, 0]
    assert (fx, fz, my) == pytest.approx((0.0, 0.0, 0.0), abs=1e-12)
    assert fy > 0.0
    assert mx == pytest.approx(-0.5 * fy)
    assert mz == pytest.approx(2.0 * fy)


def test_a_boards_cases_move_its_line_of_action():
    """Case B stands 0.2 B off the middle (ASCE/SEI 7 Fig. 29.3-1 Note 3)."""
    board = Part("board", Panel(1.0, 0.6, 0.02), Place(at=(0.0, 0.0, 0.5)), density=500.0)
    feet = Part("feet", Shell(4, 0.3, 0.3, 0.5, 0.02), density=500.0)
    exposed = exposed_of(design(feet, board))
    each = body_actions(exposed, np.array(1.0), **plain(exposed))
    d = int(np.argmin(np.abs(exposed.azimuths - 180.0)))
    moved = [each.wrench[1, d, s, 5] / each.wrench[1, d, s, 1] for s in range(3)]
    assert sorted(moved) == pytest.approx([-0.2, 0.0, 0.2], abs=1e-9)
