"""What winds do about a line, and which of them turns over most: by hand, statics."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.acting.design_wind import design_wind
from yardfast.checks.stability.wind_moments import WindMoments
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import Factors
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site

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


def test_a_round_part_is_tried_just_before_its_flow_narrows_at_its_own_height():
    """Beside a square post 12 m tall a drum 0.5 m high and 0.6 m across, by EN 1991-1-4: its
    pressure is less than that at the top, so that it switches when the top has more than its limit.
    All that blows at that pressure is one of the gusts, by sums of coefficient, area and pressure.
    """
    base = Part("base", Plate(Rectangle(3.0, 1.5), 0.05), density=2400.0)
    post = Part("post", Box(0.1, 0.1, 12.0), Place(on="base", at=(-1, 0, 0)), density=500.0)
    drum = Part("drum", Solid(0, 0.6, 0.6, 0.5), Place(on="base", at=(1, 0, 0)), density=500.0)
    parts = (base, post, drum)
    structure = build_structure(design(*parts))
    method = method_of(
        Site("EN 1991-1-4", 30.0, "paving", terrain="II", basis="EQU"), structure.height
    )
    exposed = expose(structure, bare(structure, [None] * 3, method), False)
    _, actions = design_wind(exposed, method)
    top = float(method.pressure(np.array(exposed.height)))
    share = method.pressure(exposed.pressure_height) / top
    limit = exposed.limit[2]
    assert share[2] < 0.95
    assert np.isfinite(limit)
    assert limit / share[2] < top
    d = int(np.argmin(np.abs(exposed.azimuths - 0.0)))
    before = (exposed.below[:, d] * share).sum() * limit / share[2]
    tried = np.linalg.norm(actions.force[:, d, 0], axis=-1)
    assert np.isclose(tried, before, rtol=1e-6).any()
    narrowed = np.where(exposed.limit <= top * share, exposed.above[:, d], exposed.below[:, d])
    after = (narrowed * share).sum() * top
    assert tried[-1] == pytest.approx(after, rel=1e-6)
