"""What winds do about a line, and which of them turns over most: by hand, statics."""

import numpy as np
import pytest

from yardfast.checks.stability.wind_moments import WindMoments
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import Factors

NORMALS = np.array([[1.0, 0.0], [0.0, 1.0]])
FACTORS = Factors(0.9, 1.2, 1.5, 1.0, "EN 1990")
"""Wind counts one and a half times."""


def winds():
    """Two directions, one case: tilting toward x and y in N m, suction in N off the middle."""
    return Actions(
        np.array([270.0, 180.0]),
        np.zeros((2, 1, 2)),
        np.array([[[100.0, 10.0]], [[90.0, 80.0]]]),
        np.zeros((2, 1)),
        np.array([[20.0], [60.0]]),
        np.array([[[4.0, 0.0]], [[0.0, -6.0]]]),
        ("A",),
    )


def test_a_moment_is_tilting_and_suction_about_where_the_line_lies():
    """At 0.5 m: 100 + 20 x 0.5 - 4 = 106 and 90 + 60 x 0.5 = 120 N m toward x."""
    over = WindMoments.of(winds(), NORMALS).over(np.array([0.5, 0.5]))
    assert over[:, 0] == pytest.approx(np.array([[106.0, 20.0], [120.0, 116.0]]))
    assert WindMoments.of(winds(), NORMALS).some(np.array([2])).over(np.array([0.2])) == (
        pytest.approx(102.0)
    )


def test_the_worst_by_line_is_factored_and_knows_its_direction():
    """Toward x the second wind leads, 1.5 x 120 = 180 N m at 0.5 m, 1.5 x 102 = 153 at 0.2 m."""
    worst, direction = WindMoments.of(winds(), NORMALS).worst_by_line(np.array([0.5, 0.5]), FACTORS)
    assert direction.tolist() == [[1, 1]]
    assert worst.over(np.array([0.5, 0.5]))[0] == pytest.approx([180.0, 174.0])
    assert worst.over(np.array([0.2, 0.2]))[0] == pytest.approx([153.0, 147.0])
    assert worst.uplift[0] == pytest.approx([90.0, 90.0])
    first, direction = WindMoments.of(winds(), NORMALS).worst_by_line(np.array([0.0, 0.5]), FACTORS)
    assert direction.tolist() == [[0, 1]]  # at the middle 100 - 4 = 96 N m is more than 90
    assert first.tilting[0, 0] == pytest.approx(150.0)
