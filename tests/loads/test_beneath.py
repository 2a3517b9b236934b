"""A board with nothing open beneath it is a wall from the ground: ASCE/SEI 7-16 Fig. 29.3-1.

At s/h 1 and B/s 2 the figure prints 1.40, at s/h 0.9 1.50; Note 3 lifts the resultant 0.05 h.
"""

import numpy as np
import pytest
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.site import Site

BOARD = Panel(2.0, 1.0, 1e-4)


def board(*beneath, up, method="gust"):
    part = Part("board", BOARD, Place(at=(0.0, 0.0, up)), density=500.0)
    sheet = Part("sheet", Plate(Rectangle(3.0, 3.0), 1e-7), density=500.0)
    parts = (sheet, *beneath, part)
    structure = build_structure(design(*parts))
    gust = method_of(Site(method, 30.0, "paving", exposure="C"), structure.height)
    found = expose(structure, bare(structure, [None] * len(parts), gust), False)
    d = int(np.argmin(np.abs(found.azimuths - 180.0)))
    return float(found.below[-1, d] / 2.0), float(found.rise[-1])


def test_a_foot_plate_beneath_a_board_leaves_it_a_wall():
    foot = Part("foot", Plate(Rectangle(2.2, 0.4), 0.1), density=500.0)
    cf, rise = board(foot, up=0.1)
    assert cf == pytest.approx(1.40, abs=1e-3)
    assert rise == pytest.approx(0.05 * 1.1)
    plain, plain_rise = board(up=1e-9)
    assert cf == pytest.approx(plain, abs=1e-3)
    assert plain_rise == pytest.approx(0.05)


def test_every_book_that_takes_the_figure_knows_what_fills_the_space_beneath():
    foot = Part("foot", Plate(Rectangle(2.2, 0.4), 0.1), density=500.0)
    by_gust = board(foot, up=0.1)
    for method in ("forecast", "ASCE 7-22", "ASCE 7-16"):
        assert board(foot, up=0.1, method=method) == pytest.approx(by_gust, rel=1e-12)


def test_a_board_on_posts_is_a_sign():
    """s/h 1/1.111 = 0.9 but for the posts' share of the width, a tenth: 0.91."""
    post = Part("post", Box(0.1, 0.1, 1.0 / 9.0), Place(count=2, ring=1.8), density=500.0)
    cf, rise = board(post, up=1.0 / 9.0)
    assert cf == pytest.approx(1.49, abs=2e-3)
    assert rise == pytest.approx(0.05 * 0.1 * 10.0 / 9.0, abs=1e-4)


def test_no_jump_as_the_gap_closes():
    """A plinth rises beneath a board 0.3 m up by 5 mm a step: Cf moves by at most 0.01."""
    found = [
        board(Part("plinth", Box(2.0, 0.3, height), density=500.0), up=0.3)
        for height in np.arange(0.005, 0.3001, 0.005)
    ]
    steps = np.abs(np.diff(np.array(found), axis=0)).max(axis=0)
    assert steps[0] < 0.01
    assert steps[1] < 0.004
    assert found[-1] == pytest.approx((1.40, 0.065), abs=1e-3)


def test_what_stands_before_a_board_does_not_fill_what_is_beneath_it():
    box = Part("box", Box(2.0, 0.3, 0.3), Place(at=(0.0, -0.6, 0.0)), density=500.0)
    assert board(box, up=0.3) == pytest.approx(board(up=0.3))
