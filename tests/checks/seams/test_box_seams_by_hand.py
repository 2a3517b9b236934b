"""Seams of hollow boxes with four walls, which taper: their walls, length and flow, by hand."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.examination import examine
from yardfast.checks.seams.tubes import ends_of, panel_widths, slant
from yardfast.design.model import Part
from yardfast.design.shapes.boxes import Box

TAPERED = Box(0.6, 0.4, 1.2, wall=0.018, top_length=0.3, top_width=0.2)


def test_a_seam_runs_up_the_slope_of_both_walls():
    """From (0.3, 0.2) to (0.15, 0.1) m off the axis over 1.2 m: by Pythagoras in three ways."""
    walls = TAPERED.walls()
    assert walls is not None
    assert slant(walls) == pytest.approx(np.sqrt(0.15**2 + 0.1**2 + 1.2**2), rel=1e-12)
    assert panel_widths(walls)[:2] == (4, 0.6)


def test_the_walls_of_each_end_by_hand():
    """Straight, 0.6 x 0.4 m by 18 mm: L 0.582, W 0.382 to the middle of the walls, and Q / (2 I)
    with Q = t W L / 2 and I = 2 (t W (L/2)^2 + t L^3 / 12)."""
    foot, top = ends_of(Box(0.6, 0.4, 1.2, wall=0.018).walls())
    t, L, W = 0.018, 0.582, 0.382
    for tube in (foot, top):
        for k, (long, wide) in enumerate(((L, W), (W, L))):
            first = t * wide * long / 2.0
            second = 2.0 * (t * wide * (long / 2.0) ** 2 + t * long**3 / 12.0)
            assert tube.share[k] == pytest.approx(first / (2.0 * second), rel=1e-12)
        assert tube.enclosed == pytest.approx(L * W, rel=1e-12)
        assert tube.lean == pytest.approx([0.0, 0.0], abs=1e-15)
    foot, _ = ends_of(TAPERED.walls())
    assert foot.lean == pytest.approx([-0.125, -0.25 / 3.0], rel=1e-12)


@pytest.mark.parametrize("shape", [TAPERED, Box(0.6, 0.4, 1.2, wall=0.018)])
def test_what_the_lean_of_walls_takes_off_the_shear_does_not_count(shape):
    """Walls that lean in take some of a push as they are pressed and drawn: the seams are asked for
    the whole push all the same, that of the wind that asks most of them."""
    part = Part("box", shape, material="softwood plywood", density=550.0)
    found = examine(design(part, wind=30.0))
    (seams,) = found.seams
    force = found.factors.wind * np.abs(found.actions.force)
    foot, _ = ends_of(shape.walls())
    flow = force @ foot.share
    at = np.unravel_index(flow.argmax(), flow.shape)
    assert seams.torque == pytest.approx(0.0, abs=1e-6)
    assert seams.level == 0.0
    assert seams.flow == pytest.approx(flow[at], rel=1e-9)
    assert seams.shear == pytest.approx(np.linalg.norm(force[at]), rel=1e-9)
