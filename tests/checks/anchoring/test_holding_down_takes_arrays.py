"""Every relation of holding down gives for an array what it gives for each of its values."""

import numpy as np
import pytest

from yardfast.checks.anchoring import anchor_group, guys
from yardfast.checks.anchoring.capacity import (
    ballast,
    buried_weight,
    deadman,
    embedment,
    screw_anchors,
    slab_bolts,
    stakes,
)
from yardfast.loads.wind import how_often

N = 1000
draw = np.random.default_rng(11).uniform
flags = np.random.default_rng(12).random(N) < 0.5

RELATIONS = {
    "stake sideways": (stakes.sideways_strength, draw(0.005, 0.1, N), draw(0, 2, N), flags),
    "stake straight": (
        stakes.straight_strength,
        draw(0.005, 0.1, N),
        draw(0, 2, N),
        draw(0, 9e4, N),
    ),
    "stake used": (stakes.stake_utilization, *(draw(0, 500, N) for _ in range(4))),
    "stake slanting": (
        stakes.slanting_allowable,
        draw(0, np.pi / 2, N),
        draw(0, 500, N),
        draw(0, 500, N),
    ),
    "out of a slope": (
        lambda *x: stakes.on_a_slope(*x)[0],
        draw(0, 500, N),
        draw(-500, 500, N),
        draw(0, 0.5, N),
    ),
    "along a slope": (
        lambda *x: stakes.on_a_slope(*x)[1],
        draw(0, 500, N),
        draw(-500, 500, N),
        draw(0, 0.5, N),
    ),
    "depth, free": (
        embedment.depth_free,
        draw(0, 50000, N),
        draw(0, 6, N),
        draw(5000, 60000, N),
        draw(0.05, 1, N),
    ),
    "depth, constrained": (
        embedment.depth_constrained,
        draw(0, 90000, N),
        draw(5000, 60000, N),
        draw(0.05, 1, N),
    ),
    "depth under a pressure": (
        embedment.depth_under_pressure,
        draw(0, 5000, N),
        draw(0, 6, N),
        draw(5000, 60000, N),
        draw(0.05, 1, N),
    ),
    "force, free": (
        embedment.force_free,
        draw(0, 6, N),
        draw(0, 6, N),
        draw(5000, 60000, N),
        draw(0.05, 1, N),
    ),
    "moment, constrained": (
        embedment.moment_constrained,
        draw(0, 6, N),
        draw(5000, 60000, N),
        draw(0.05, 1, N),
    ),
    "clay factor": (screw_anchors.clay_factor, draw(0, 2, N), draw(0.05, 0.3, N)),
    "sand factor": (
        screw_anchors.sand_factor,
        draw(0, 1, N),
        draw(0.05, 0.3, N),
        draw(0.3, 0.6, N),
        draw(0.3, 1, N),
        draw(1, 3, N),
    ),
    "helix in sand": (
        screw_anchors.sand_strength,
        draw(0, 2, N),
        draw(0.05, 0.3, N),
        draw(4000, 16000, N),
    ),
    "torque": (screw_anchors.torque_strength, draw(0, 5000, N), draw(10, 60, N)),
    "lifted volume": (
        buried_weight.lifted_volume,
        draw(0, 1, N),
        draw(0, 4, N),
        draw(0, 2, N),
        draw(0, 1, N),
    ),
    "concrete": (buried_weight.concrete_weight, draw(0, 2, N), flags),
    "earth": (buried_weight.earth_weight, draw(0, 2, N), flags),
    "buried block": (
        buried_weight.block_strength,
        draw(0, 1, N),
        draw(0, 4, N),
        draw(0.05, 0.3, N),
        draw(0.3, 2, N),
        flags,
    ),
    "overburden": (buried_weight.overburden, draw(0, 2, N), flags),
    "deadman": (deadman.holding_power, draw(0, 3, N), draw(0, np.pi / 4, N), flags),
    "log": (deadman.log_strength, draw(0, 9e4, N), draw(0.05, 0.5, N), draw(0.1, 3, N)),
    "breakout": (slab_bolts.breakout_strength, draw(0, 0.2, N), draw(1e7, 5e7, N)),
    "lever of a guy": (
        guys.lever,
        draw(0, 5, N),
        draw(0, 1.5, N),
        draw(-3, 3, N),
        draw(0, 2, N),
    ),
    "line": (guys.line_allowable, draw(0, 9e4, N), draw(0, 1, N), draw(0, 1, N), draw(1, 12, N)),
    "least ballast": (
        ballast.least_ballast,
        draw(0, 900, N),
        draw(0, 900, N),
        draw(-1, 2, N),
        draw(0.5, 1, N),
    ),
    "sliding ballast": (
        ballast.sliding_ballast,
        draw(0, 900, N),
        draw(-90, 900, N),
        draw(0.1, 1, N),
        draw(0.5, 1, N),
    ),
    "left to stakes": (anchor_group.left_to_stakes, draw(0, 900, N), draw(0, 900, N)),
    "years between": (
        lambda v: how_often.years_between(v, [2, 10, 50], [20, 27, 33]),
        draw(15, 40, N),
    ),
}


@pytest.mark.parametrize("name", RELATIONS)
def test_array_equals_loop_over_its_values(name):
    relation, *arguments = RELATIONS[name]
    at_once = relation(*arguments)
    one_by_one = [float(relation(*values)) for values in zip(*arguments, strict=True)]
    assert at_once.shape == (N,)
    np.testing.assert_allclose(at_once, one_by_one, rtol=1e-13, atol=1e-12, equal_nan=False)


@pytest.mark.parametrize("name", [name for name in RELATIONS if len(RELATIONS[name]) > 2])
def test_arguments_broadcast_as_gusts_by_directions(name):
    relation, first, second, *others = RELATIONS[name]
    result = relation(first[:5, None], second[None, :7], *(other[:7] for other in others))
    assert result.shape == (5, 7)
    expected = relation(first[3], second[4], *(other[4] for other in others))
    np.testing.assert_allclose(result[3, 4], expected, rtol=1e-13, atol=1e-12)


GROUPS = {
    "tensions of anchors": (anchor_group.anchor_tensions, (draw(0, 900, N), draw(-1, 2, (N, 6)))),
    "moment held": (anchor_group.moment_held, (draw(0, 900, (N, 6)), draw(-1, 2, (N, 6)))),
    "tensions of guys": (
        guys.guy_tensions,
        (draw(0, 900, N), draw(-1, 2, (N, 6)), draw(1e3, 1e5, (N, 6))),
    ),
    "helices": (
        screw_anchors.bearing_strength,
        tuple(draw(0, 9, (N, 3)) for _ in range(5)),
    ),
}


@pytest.mark.parametrize("name", GROUPS)
def test_groups_at_once_equal_group_by_group(name):
    relation, arguments = GROUPS[name]
    at_once = relation(*arguments)
    one_by_one = [relation(*values) for values in zip(*arguments, strict=True)]
    np.testing.assert_allclose(at_once, one_by_one, rtol=1e-13, atol=1e-12)


def test_level_shares_at_once_equal_load_by_load():
    points = draw(-1, 1, (5, 2))
    force, twist = draw(-900, 900, (N, 2)), draw(-900, 900, N)
    at_once = anchor_group.level_shares(points, force, twist)
    one_by_one = [
        anchor_group.level_shares(points, f, t) for f, t in zip(force, twist, strict=True)
    ]
    np.testing.assert_allclose(at_once, one_by_one, rtol=1e-12, atol=1e-9)
