"""When a piece sways aside under what it carries, against closed forms of elastic stability."""

from itertools import pairwise
from math import pi

import numpy as np
import pytest
from frames import Frame

from yardfast.statics.buckling import critical, geometry, stands_times
from yardfast.statics.solution import solve
from yardfast.statics.system import FIXED

EI, EA, GJ, L = 4.0e4, 1.0e9, 1.0e4, 2.0
DOWN = np.array([0.0, 0.0, -1.0])


def times(frame, acting):
    """Return how many times loads may come; both questions agree on it."""
    system = frame.system
    loads, fixed = frame.loads([{piece: (F, at) for piece, at, F in acting}])
    found = solve(system, loads, fixed)
    on, at, forces = (np.array(part) for part in zip(*acting, strict=True))
    G = geometry(system, found.force[0], found.ends[0], (on, at, forces))
    least = critical(system, {}, G)
    if np.isfinite(least):
        assert stands_times(system, {}, G, 0.999 * least)[0]
        assert not stands_times(system, {}, G, 1.001 * least)[0]
    return least


def upright(frame, x):
    """A column of four beams, its foot held fast."""
    nodes = [frame.node((x, 0.0, z)) for z in np.linspace(0.0, L, 5)]
    for a, b in pairwise(nodes):
        frame.beam(a, b, EA, (EI, EI), GJ, first=(1.0, 0.0, 0.0))
    frame.fixed(nodes[0], (x, 0.0, 0.0))
    return nodes


def test_a_column_that_stands_out():
    """P = pi^2 E I / (4 L^2) (Euler); four cubics come within a thousandth."""
    frame = Frame()
    top = upright(frame, 0.0)[-1]
    found = times(frame, [(top, np.array([0.0, 0.0, L]), DOWN)])
    assert found == pytest.approx(pi**2 * EI / (4.0 * L**2), rel=1.0e-3)


def test_two_columns_under_a_stiff_beam_sway():
    """Fixed below, guided above: P = pi^2 E I / L^2 each (Euler's fourth case)."""
    frame = Frame()
    tops = [upright(frame, x)[-1] for x in (0.0, 3.0)]
    frame.beam(*tops, EA, (1.0e9, 1.0e9), 1.0e9)
    for top, x in zip(tops, (0.0, 3.0), strict=True):
        frame.flat(top, (x, 0.0, L))
    acting = [(top, np.array([x, 0.0, L]), DOWN) for top, x in zip(tops, (0.0, 3.0), strict=True)]
    assert times(frame, acting) == pytest.approx(pi**2 * EI / L**2, rel=1.0e-3)


@pytest.mark.parametrize("height", [0.5, 1.0, 2.0])
def test_a_stiff_block_on_two_springs(height):
    """It turns about its foot: W h = k b^2 / 2 of springs b apart (statics of the turned block)."""
    frame = Frame()
    block = frame.node((0.0, 0.0, 0.0))
    k, b = 1.0e5, 0.4
    frame.pinned(block, FIXED, (0.0, 0.0, 0.0))
    for y in (-b / 2.0, b / 2.0):
        frame.spring(FIXED, block, (0.0, y, 0.0), (0.0, 0.0, 1.0), frame.hard)
    for x in (-b / 2.0, b / 2.0):
        frame.spring(FIXED, block, (x, 0.0, 0.0), (0.0, 0.0, 1.0), k)
    frame.spring(FIXED, block, (1.0, 0.0, 0.0), (0.0, 1.0, 0.0))
    found = times(frame, [(block, np.array([0.0, 0.0, height]), DOWN)])
    assert found == pytest.approx(k * b**2 / 2.0 / height, rel=1.0e-6)


def test_a_block_hung_below_its_springs_never_sways_aside():
    frame = Frame()
    block = frame.node((0.0, 0.0, 0.0))
    frame.fixed(block, (0.0, 0.0, 0.0), k=1.0e5)
    acting = [(block, np.array([0.0, 0.0, -1.0]), DOWN)]
    assert times(frame, acting) == np.inf
