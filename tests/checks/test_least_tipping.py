"""The least pressure that tips is found among a few directions: the same as among all of them."""

import numpy as np
import pytest
from designs import TOWERS, design, tower
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.limits import stages
from yardfast.checks.overturning import tipping_pressure, tipping_pressures
from yardfast.checks.standing import Standing
from yardfast.design.model import Part, Place
from yardfast.design.shapes.flat import Panel
from yardfast.design.structure import build_structure
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.site import Site
from yardfast.materials import grounds


@settings(max_examples=4, deadline=None)
@given(
    st.fixed_dictionaries(TOWERS),
    st.sampled_from(["wet lawn", "soft clay", "paving"]),
    st.floats(0.0, 80.0),
)
def test_looking_at_a_few_directions_finds_the_least_of_all(sizes, ground, tilt):
    """The leaning board beside the tower is lifted and pressed, as the wind blows."""
    board = Part(
        "board",
        Panel(0.5, 0.5, 0.02),
        Place(at=(0.7, 0.0, 1.0), tilt=np.radians(tilt)),
        density=500.0,
    )
    structure = build_structure(design(*tower(**sizes), board, ground=ground))
    standing = Standing(structure, grounds.find(ground), 0.0)
    wind = method_of(Site("gust", 20.0, ground), structure.height)
    exposed = expose(structure, bare(structure, [None] * 5, wind), False)
    for stage in stages(standing, exposed, slides=False):
        given_ = (standing, stage.actions, "typical", stage.low, stage.high)
        every, one = tipping_pressures(*given_), tipping_pressure(*given_)
        assert one.pressure == pytest.approx(float(every.min()), rel=1e-9)
        if np.isfinite(one.pressure):
            there = every[one.direction, :, one.line].min()
            assert there == pytest.approx(one.pressure, rel=1e-9)
