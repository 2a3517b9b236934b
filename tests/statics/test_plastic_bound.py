"""A bound from the other side: what a joint holds if its fasteners yield, never less than elastic.

By the static theorem of plasticity any forces in balance that nothing exceeds are a lower bound of
what is held at collapse, so that the elastic limit lies at or below the plastic one (Prager & Hodge
1951; scipy's linear programming). Dead load stays, the rest grows; no friction; sideways strength
is a polygon round the circle, and pull and push do not lower each other: all to the upper side.
"""

import numpy as np
import pytest
import shapely
from scipy.optimize import brentq, linprog

from yardfast.statics.contacts.face import Face
from yardfast.statics.stiffness import AXIAL, LATERAL, SETS
from yardfast.statics.tie import Tie, Variant, share_of

X, Y, Z = np.eye(3)
PULL, PUSH = 900.0, 600.0
SIDES = 16
ROWS = 8


def drawn(rng):
    """Return a joint of 2 to 8 screws on a face, dead load and what grows beside it."""
    long, wide = rng.uniform(0.06, 0.3, 2)
    face = Face(shapely.box(-long / 2, -wide / 2, long / 2, wide / 2), np.zeros(3), X, Y, Z)
    n = int(rng.integers(2, 9))
    points = np.column_stack([rng.uniform(-0.45, 0.45, (n, 2)) * [long, wide], np.zeros(n)])
    stiff = np.tile(10.0 ** rng.uniform([5.8, 0.0, 6.0], [6.8, 0.1, 7.2]), (n, 1))
    stiff[:, 1] = stiff[:, 0]
    kind = np.tile([LATERAL, LATERAL, AXIAL], (n, 1))
    tie = Tie(1, 0, face, points, stiff, kind, 10.0 ** rng.uniform(8.0, 10.0))
    dead = np.array([0.0, 0.0, -rng.uniform(20.0, 200.0), 0.0, 0.0, 0.0])
    live = rng.normal(size=6) * [60.0, 60.0, 60.0, 15.0, 15.0, 3.0]
    return tie, dead, live


def use(tie, load, name):
    """T/W + V/Z of the screw used most, elastic, on a bed that only presses."""
    shared = share_of(tie, load[None], ROWS, [Variant(SETS[name])])
    assert not shared.lost[0]
    held = shared.force[0, : 3 * len(tie.points)].reshape(-1, 3)
    return float((np.maximum(held[:, 2], 0.0) / PULL + np.hypot(*held[:, :2].T) / PUSH).max())


def plastic(tie, dead, live):
    """The greatest factor on ``live`` in balance with any forces within their strengths."""
    cells, _ = tie.face.bed(ROWS)
    n, m = len(tie.points), len(cells)
    at = np.concatenate([np.repeat(tie.points, 3, axis=0), cells])
    ways = np.concatenate([np.tile(np.eye(3), (n, 1)), np.tile(Z, (m, 1))])
    rows = np.hstack([ways, np.cross(at, ways)])
    # forces of the piece on its springs are the load: fasteners either way, the bed pressed
    balance = np.hstack([rows.T, -live[:, None]])
    turns = 2.0 * np.pi * np.arange(SIDES) / SIDES
    polygon = np.zeros((n * SIDES, 3 * n + m + 1))
    for k in range(n):
        polygon[k * SIDES : (k + 1) * SIDES, 3 * k : 3 * k + 2] = np.column_stack(
            [np.cos(turns), np.sin(turns)]
        )
    bounds = [(None, None), (None, None), (None, PULL)] * n + [(None, 0.0)] * m + [(0.0, 1.0e4)]
    found = linprog(
        np.r_[np.zeros(3 * n + m), -1.0],
        A_ub=polygon,
        b_ub=np.full(n * SIDES, PUSH),
        A_eq=balance,
        b_eq=dead,
        bounds=bounds,
    )
    assert found.success
    return float(found.x[-1])


@pytest.mark.parametrize("seed", range(10))
def test_what_is_held_elastically_is_never_more_than_at_collapse(seed):
    rng = np.random.default_rng(seed)
    for _ in range(10):
        tie, dead, live = drawn(rng)
        most = plastic(tie, dead, live)
        name = str(rng.choice(list(SETS)))
        if use(tie, dead + 1.0e3 * live, name) <= 1.0:
            continue
        elastic = brentq(lambda f, *a: use(a[0], a[1] + f * a[2], a[3]) - 1.0, 0.0, 1.0e3,
                         args=(tie, dead, live, name), xtol=1e-9)  # fmt: skip
        assert elastic <= most * (1.0 + 1.0e-6)


def test_one_row_of_screws_yields_all_at_once_where_it_is_pulled_straight():
    """n W of pull through their middle, elastic and plastic alike."""
    face = Face(shapely.box(-0.1, -0.1, 0.1, 0.1), np.zeros(3), X, Y, Z)
    points = np.array([[-0.05, 0.0, 0.0], [0.0, 0.0, 0.0], [0.05, 0.0, 0.0]])
    kind = np.tile([LATERAL, LATERAL, AXIAL], (3, 1))
    tie = Tie(1, 0, face, points, np.full((3, 3), 2.0e6), kind, 1.0e9)
    live = np.array([0.0, 0.0, 1.0, 0.0, 0.0, 0.0])
    assert plastic(tie, np.zeros(6), live) == pytest.approx(3.0 * PULL)
    assert use(tie, 3.0 * PULL * live, "as read") == pytest.approx(1.0)
