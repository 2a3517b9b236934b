"""How a joint shares what goes through it with the bed it presses on: scipy's least squares."""

import numpy as np
import pressed
import pytest

from yardfast.statics.pressed_joint import share
from yardfast.statics.wrench import motion_rows

LATERAL, AXIAL = 6.0e5, 2.0e6


def springs(screws, cells, bed):
    """The joint's springs: three at each screw, then one that presses at each cell of the bed."""
    points = np.concatenate([np.repeat(screws, 3, axis=0), cells])
    up = np.tile([0.0, 0.0, 1.0], (len(cells), 1))
    along = np.concatenate([np.tile(np.eye(3), (len(screws), 1)), up])
    k = np.r_[np.tile([LATERAL, LATERAL, AXIAL], len(screws)), np.full(len(cells), bed)]
    only_press = np.arange(len(k)) >= 3 * len(screws)
    return motion_rows(along, points, np.zeros(3)), k, only_press


@pytest.mark.parametrize("stiffer", [1.0, 10.0, 100.0])
@pytest.mark.parametrize("count", [1, 2, 5])
def test_any_load_is_shared_as_least_energy_does(count, stiffer):
    rng = np.random.default_rng(count)
    cells = pressed.grid(0.09, 0.07, rows=2)
    near = 0.01 if count == 1 else 0.03  # a bed all round it holds one screw either way
    screws = rng.uniform(-near, near, (count, 3)) * [1.0, 1.0, 0.0]
    bed = stiffer * 5.0e5
    loads = rng.normal(size=(30, 6)) * [300.0, 300.0, 300.0, 30.0, 30.0, 10.0]
    if count == 1:  # one screw holds no twist about itself
        (x, y, _), (along, across) = screws[0], loads[:, :2].T
        loads[:, 5] = x * across - y * along
    rows, k, only_press = springs(screws, cells, bed)
    found = share(rows, k, only_press, loads, 0.05)
    assert not found.lost.any()
    for force, load in zip(found.force, loads, strict=True):
        expected = pressed.share(screws, LATERAL, AXIAL, cells, bed, load)
        own = force[: 3 * count].reshape(count, 3)
        assert own == pytest.approx(expected, abs=1.0e-4 * np.abs(load).max())


def test_one_screw_that_a_narrow_bed_rocks_about_is_held():
    """A leg cut level beneath a ridge, drawn and rocked: no step of a rocking may run away."""
    corners = np.array(
        [
            [0.02445689, 0.005852551, 0.0],
            [-0.01964321, 0.00892769, 0.0],
            [0.02049545, -0.01192963, 0.0],
            [-0.02406474, -0.005653548, 0.0],
        ]
    )
    screw = np.array([[-4.147985e-04, 9.343132e-04, 0.0]])
    rows, k, only_press = springs(screw, corners, 1.0e7)
    load = np.array([[30.75511, 128.0866, -351.2559, 5.738576, -21.49450, 0.0]])
    load[:, 5] = screw[0, 0] * load[:, 1] - screw[0, 1] * load[:, 0]
    found = share(rows, k, only_press, load, 0.0245)
    assert not found.lost.any()
    assert found.force @ rows == pytest.approx(load, abs=1e-9 * np.abs(load).max())
    assert found.force[:, only_press].max() <= 0.0
    expected = pressed.share(screw, LATERAL, AXIAL, corners, 1.0e7, load[0])
    assert found.force[0, :3] == pytest.approx(expected[0], rel=1e-4)
