"""Many pieces at once tip and slide where each of them does by itself, on any ground and slope."""

import numpy as np
import pytest
from designs import TOWERS, design, tower
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.limits import stages
from yardfast.checks.odds.gives import FreeStanding
from yardfast.checks.odds.varied import Varied, varied_inputs
from yardfast.checks.spread import INPUTS, published
from yardfast.checks.stability.sliding import sliding_pressures
from yardfast.checks.stability.standing import Standing
from yardfast.checks.stability.tipping import tipping_pressure
from yardfast.design.model import Part, Place
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.flat import Panel
from yardfast.design.structure import build_structure
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site
from yardfast.materials import grounds
from yardfast.units.frozen import replace

KINDS = ("wood", "masonry", "measured", "")
ENDS = ("density", "thickness", "moisture", "soil")


def drawn(count: int, seed: int) -> np.ndarray:
    return np.random.default_rng(seed).random((count, len(INPUTS)))


def corners() -> np.ndarray:
    ends = np.full((16, len(INPUTS)), 0.5)
    grid = np.stack(np.meshgrid(*[[1e-8, 1.0 - 1e-8]] * 4), axis=-1).reshape(16, 4)
    ends[:, [INPUTS.index(name) for name in ENDS]] = grid
    return ends


def alone(standing: Standing, exposed, inputs: Varied, k: int, kinds) -> tuple[float, float]:
    """The pressures of one piece, its bodies weighed and its ground changed one by one."""
    structure = standing.structure
    heavier = np.array([inputs.heavier[kind][k] for kind in kinds])
    ground = standing.ground
    if ground.yield_pressure is not None:
        rating = ground.ratings["yield pressure"]
        firmer = replace(rating, value=rating.value * float(inputs.soil[k]))
        ground = replace(ground, ratings={**ground.ratings, "yield pressure": firmer})
    one = replace(
        standing,
        structure=replace(structure, body_mass=structure.body_mass * heavier),
        ground=ground,
    )
    tips, slides = np.inf, np.inf
    for stage in stages(one, exposed):
        actions = stage.actions.times(float(inputs.coefficient[k]))
        bounds = stage.low, stage.high
        share = stage.share * float(inputs.friction[k])
        tips = min(tips, tipping_pressure(one, actions, "typical", *bounds).pressure)
        slides = min(slides, sliding_pressures(one, actions, "typical", share, *bounds).min())
    return float(tips), float(slides)


def each_by_itself(sizes, ground, tilt, slope, seed):
    """A leaning board to one side is lifted and pressed, a ball beyond it switches with the gust,
    both of another material than the tower, so that the balance point moves."""
    place = Place(at=(0.7, 0.0, 1.0), tilt=np.radians(tilt))
    board = Part("board", Panel(0.5, 0.5, 0.02), place, material="western redcedar")
    ball = Part("ball", Ball(0.25), Place(at=(-0.5, 0.3, 1.6)), material="concrete")
    parts = (*tower(**sizes), board, ball)
    structure = build_structure(design(*parts, ground=ground))
    standing = Standing(structure, grounds.find_ground(ground), slope)
    wind = method_of(Site("gust", 20.0, ground), structure.height)
    exposed = expose(structure, bare(structure, [None] * len(parts), wind), False)
    extremes = varied_inputs(published(), KINDS, corners())
    body = FreeStanding(standing, stages(standing, exposed), extremes)
    inputs = varied_inputs(published(), KINDS, drawn(2, seed))
    tips, slides = body.pressures(inputs)
    kinds = [*["measured"] * len(tower(**sizes)), "wood", "masonry"]
    for k in range(2):
        each = alone(standing, exposed, inputs, k, kinds)
        assert (tips[k], slides[k]) == pytest.approx(each, rel=1e-9)


TOWER = {"sides": 8, "foot": 0.6, "bottom": 0.3, "top": 0.2, "height": 1.0}


def test_many_at_once_are_each_by_itself_on_a_slope_that_gives():
    each_by_itself(TOWER, "wet lawn", 40.0, 0.08, 1)


@pytest.mark.slow
@settings(max_examples=12, deadline=None)
@given(
    st.fixed_dictionaries(TOWERS),
    st.sampled_from(["wet lawn", "soft clay", "gravel", "paving"]),
    st.floats(0.0, 80.0),
    st.sampled_from([0.0, 0.08]),
    st.integers(0, 99),
)
def test_many_at_once_are_each_by_itself(sizes, ground, tilt, slope, seed):
    each_by_itself(sizes, ground, tilt, slope, seed)
