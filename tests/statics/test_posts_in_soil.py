"""The springs on which a post stands in the ground: subgrade reaction that grows with depth."""

import numpy as np
import pytest
from once_broken import HEAD, POST

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.statics.footings import in_ground
from yardfast.statics.stiffness import stiffness_rule

SIGN = """[[part]]
name = 'sign'
shape = 'panel'
on = 'post'
turn = '90 deg'
width = '600 mm'
height = '400 mm'
thickness = '18 mm'
material = 'softwood plywood'
"""


def test_a_post_stands_on_as_much_as_the_earth_beside_it_gives():
    """k = n_h z for each m of depth (Terzaghi 1955, memory): in all n_h D^2 / 2 each way, half on
    either face, their middle 2/3 D deep."""
    structure = examine(read_text(HEAD + POST)).structure
    foot = in_ground(0, structure.bodies[0])
    whole = stiffness_rule("sideways in soil") * 0.6**2 / 2.0
    for way in (0, 1):
        mine = (np.abs(foot.along[:, way]) > 0.5) & (foot.stiffness > 0.0)
        k, points = foot.stiffness[mine], foot.points[mine]
        assert k.sum() == pytest.approx(whole, rel=1e-9)
        assert (k @ points[:, 2]) / k.sum() == pytest.approx(-0.4, rel=5e-3)
        assert np.unique(points[:, 0].round(9)).tolist() == [-0.045, 0.045]
        assert (k @ points[:, 0]) / k.sum() == pytest.approx(0.0, abs=1e-12)


def test_the_worst_wind_for_a_post_is_told_by_its_direction():
    """A board that stands across x is blown over from right or left: azimuth 90 or 270."""
    found = examine(read_text(HEAD + POST + SIGN))
    (post,) = [c for c in found.checks if c.kind is Kind.EMBEDMENT]
    assert post.direction_deg in (90.0, 270.0)
