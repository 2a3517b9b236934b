"""Boards sawn to an outline, level by level: against plain boards, sums and beams solved apart."""

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.plates.arms import arms_of, levels_of
from yardfast.checks.plates.cutouts import strips_of
from yardfast.checks.plates.strip_beam import bend
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.member import Member as Stick
from yardfast.design.shapes.plans import Rectangle

BASE = Part("foot", Plate(Rectangle(1.6, 1.6), 0.05), material="concrete")
PLY = "softwood plywood"


def board(points, thickness=0.018, holes=(), material=PLY):
    return Part("board", Cutout(points, thickness, holes), Place(on="foot"), material=material)


def rectangle(width, height):
    return ((-width / 2, 0.0), (width / 2, 0.0), (width / 2, height), (-width / 2, height))


def judged(*parts, **site):
    found = examine(design(*parts, **{"wind": 20.0, **site}))
    return {one.name: one for one in found.members.judged}, {
        one.name: one.why for one in found.members.not_judged
    }


def test_a_plain_rectangle_is_judged_as_the_board_that_it_is():
    plain = Part("board", Panel(0.4, 0.9, 0.018), Place(on="foot"), material=PLY)
    sawn = judged(BASE, board(rectangle(0.4, 0.9)))[0]["board"]
    one = judged(BASE, plain)[0]["board"]
    assert (sawn.role, one.role) == ("cut-out", "board on its foot")
    assert sawn.level == 0.0
    assert sawn.check.utilization == pytest.approx(one.check.utilization, rel=1e-4)
    assert sawn.deflection == pytest.approx(one.deflection, rel=1e-3)


def test_moments_of_a_triangle_are_those_of_sums():
    """Point up, b wide and h high: b h/2 of wind at h/3: M = b h^2/6 at its foot."""
    b, h, p = 0.6, 0.9, 250.0
    (strip,) = strips_of(Cutout(((-b / 2, 0.0), (b / 2, 0.0), (0.0, h)), 0.018), None, p)
    (wind,) = strip.lifts
    up, force = np.asarray(strip.edges), wind.pressure * strip.width
    middle, each = 0.5 * (up[1:] + up[:-1]), force * np.diff(up)
    assert each.sum() == pytest.approx(p * b * h / 2.0, rel=1e-6)
    assert (each * middle).sum() == pytest.approx(p * b * h**2 / 6.0, rel=1e-3)
    assert strip.width[100] == pytest.approx(b / 2.0, rel=0.011)
    points = ((-b / 2, 0.0), (b / 2, 0.0), (0.0, h))
    found = examine(design(BASE, board(points), wind=20.0))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(1)
    wind = 0.5 * 1.226 * 20.0**2 * (found.exposed.coefficient * found.exposed.case.max())[i].max()
    assert (one.level, one.governs) == (0.0, "bending")
    assert one.check.demand == pytest.approx(wind * b * h**2 / 6.0, rel=1e-3)


def test_a_waist_governs_and_a_hole_weakens_it():
    waist = (
        (-0.3, 0.0), (0.3, 0.0), (0.3, 0.2), (0.05, 0.3), (0.3, 0.4), (0.3, 1.0),
        (-0.3, 1.0), (-0.3, 0.4), (-0.05, 0.3), (-0.3, 0.2),
    )  # fmt: skip
    one = judged(BASE, board(waist))[0]["board"]
    assert one.level == pytest.approx(0.3, abs=0.01)
    hole = ((-0.02, 0.28), (0.02, 0.28), (0.02, 0.32), (-0.02, 0.32))
    weaker = judged(BASE, board(waist, holes=(hole,)))[0]["board"]
    assert weaker.check.utilization > 1.3 * one.check.utilization


@pytest.mark.parametrize("prop", [0.3, 0.5, 0.8])
def test_a_propped_board_is_the_worse_of_a_fast_and_a_free_foot(prop):
    """An even strip with a tail: over the brace w (h - p)^2/2; a fast foot w p^2/8 less half of it.

    Wood Handbook Table 9-1, fast at one end; a moment at the far end comes down by half.
    """
    h, w, p = 1.0, 0.4, 300.0
    over = p * w * (h - prop) ** 2 / 2.0
    most = []
    for strip in strips_of(Cutout(rectangle(w, h), 0.018), prop, p):
        at = np.unique(np.concatenate([strip.edges, [prop]]))
        n = at.size - 1
        held = np.isin(at, strip.held)
        bent = bend(at, np.ones(n), held, np.full(n, p * w), np.zeros(n + 1), fast=strip.fast)
        most.append(float(np.abs(bent.moment).max()))
    fast = max(over, abs(p * w * prop**2 / 8.0 - over / 2.0))
    assert most[0] == pytest.approx(fast, rel=1e-6)
    assert max(most) >= over * (1.0 - 1e-9)


def test_a_brace_helps_and_posts_or_loads_are_refused():
    points = rectangle(0.3, 1.0)
    brace = Part(
        "brace",
        Stick((0.0, 0.3, 0.0), (0.0, 0.02, 0.5), 0.04, 0.02, cut="level"),
        Place(on="foot"),
        material="redwood",
    )
    alone, held = (judged(BASE, board(points), *more)[0]["board"] for more in ((), (brace,)))
    assert held.role == "propped cut-out"
    assert held.check.utilization < 0.6 * alone.check.utilization
    post = Part(
        "post", Box(0.05, 0.05, 1.2), Place(on="foot", at=(0.0, 0.034, 0.0)), material="redwood"
    )
    assert judged(BASE, board(points), post)[1]["board"] == "held otherwise"
    bird = Part("bird", Box(0.1, 0.1, 0.1), Place(on="board"), material="redwood")
    assert judged(BASE, board(points), bird)[1]["board"] == "load on it"


def test_what_has_no_published_strength_is_named():
    points = rectangle(0.3, 1.0)
    assert judged(BASE, board(points, 0.003))[1]["board"] == "no values"
    assert judged(BASE, board(points, 0.018, material="PVC"))[1]["board"] == "no values"
    assert judged(BASE, board(rectangle(1.0, 0.4), 0.02, material="redwood"))[1]["board"] == (
        "across grain"
    )


@pytest.mark.slow
@settings(max_examples=15, deadline=None)
@given(st.lists(st.floats(0.05, 0.4), min_size=4, max_size=7), st.floats(0.3, 1.2))
def test_mirrored_outlines_are_as_strong_and_thicker_ones_stronger(halves, height):
    up = np.linspace(0.0, height, len(halves))
    right = [(half, float(z)) for half, z in zip(halves, up, strict=True)]
    skew = [(-0.6 * half, float(z)) for half, z in zip(halves, up, strict=True)]
    points = (*right, *reversed(skew))
    mirrored = tuple((-x, z) for x, z in reversed(points))
    one, other, thick = (
        judged(BASE, board(p, t))[0]["board"].check.utilization
        for p, t in ((points, 0.012), (mirrored, 0.012), (points, 0.018))
    )
    assert other == pytest.approx(one, rel=1e-6)
    assert thick <= one


def test_a_figure_that_stands_on_nothing_is_refused():
    hung = Part(
        "board", Cutout(rectangle(0.3, 0.5), 0.018), Place(at=(0.0, 0.0, 0.6)), material=PLY
    )
    back = Part("back", Box(0.6, 0.3, 0.9), Place(on="foot", at=(0.0, 0.16, 0.0)), material=PLY)
    assert judged(BASE, back, hung)[1]["board"] == "held otherwise"


def test_a_figure_propped_at_its_very_top_is_judged_too():
    back = Part("back", Box(0.5, 0.3, 0.7), Place(on="foot", at=(0.0, 0.159, 0.0)), material=PLY)
    one = judged(BASE, back, board(rectangle(0.3, 0.7)))[0]["board"]
    assert one.role == "propped cut-out"
    load = one.check.demand * 8.0 / 0.7**2  # w p^2/8, at a fast foot or between two supports
    EI = 0.85 * one.stuff.stiffness[0] * 0.3
    bends = {0.0: 1 / 185.0, 0.35: 5 / 384.0}  # Wood Handbook Table 9-1; Design Aid 6, figure 18
    at = min(bends, key=lambda level: abs(level - one.level))
    assert one.deflection == pytest.approx(bends[at] * load * 0.7**4 / EI, rel=2e-3)


POST_AND_ARM = (
    (-0.1, 0.0), (0.1, 0.0), (0.1, 0.7), (0.6, 0.7), (0.6, 0.78), (0.1, 0.78),
    (0.1, 0.9), (-0.1, 0.9),
)  # fmt: skip
"""A board 0.2 m wide with an arm 0.08 m deep that reaches 0.5 m out to one side."""


def test_an_arm_bends_at_its_root_and_twists_what_carries_it_by_hand():
    """The arm's root: F l/2 upright; the neck below: M = F z and T = F e, by sums of areas."""
    arms = arms_of(Cutout(POST_AND_ARM, 0.018))
    root = np.flatnonzero((np.abs(arms.level - 0.74) < 1e-6) & (arms.rise < 1e-9))
    far = root[arms.moment[root].argmax()]
    assert arms.width[far] == pytest.approx(0.08)
    assert arms.moment[far] == pytest.approx(0.08 * 0.5**2 / 2.0, rel=1e-9)
    assert arms.twist[far] == pytest.approx(0.0, abs=1e-9)
    levels = levels_of(Cutout(POST_AND_ARM, 0.018), 90, None)
    area = 0.2 * 0.9 + 0.08 * 0.5
    assert levels.shear[0] == pytest.approx(area, rel=1e-6)
    assert levels.twist[0] == pytest.approx(0.08 * 0.5 * 0.35, rel=1e-6)
    assert levels.twist[85] == pytest.approx(0.0, abs=1e-9)
    assert levels.width[50] == pytest.approx(0.2)


def test_an_arm_that_reaches_far_out_governs_and_a_plain_board_is_as_before():
    """A thin arm under wind: F l/2 over its depth; of plywood across the grain of the face."""
    found = examine(design(BASE, board(POST_AND_ARM), wind=25.0))
    one = {each.name: each for each in found.members.judged}["board"]
    i = [body.part for body in found.structure.bodies].index(1)
    p = 0.5 * 1.226 * 25.0**2 * found.exposed.coefficient[i].max() * found.exposed.case[i].max()
    psi_in = 4.4482216152605 * 0.0254 / 0.3048 * 1.6 * 0.75 * 0.5
    root = p * 0.08 * 0.5**2 / 2.0 / (225.0 * psi_in * 0.08)
    foot = p * (0.2 * 0.9**2 / 2.0 + 0.08 * 0.5 * 0.74) / (845.0 * psi_in * 0.2)
    twist = p * 0.08 * 0.5 * 0.35 * 3.0 / (75.0 * 175.12684 * 1.6 * 0.75 * 0.018 * 0.2)
    slides = p * 0.22 / (300.0 * 14.593903 * 1.6 * 0.75 * 0.2)
    assert one.check.utilization == pytest.approx(max(root, foot, twist + slides), rel=0.03)
    assert (
        one.governs
        == {root: "bending", foot: "bending", twist + slides: "twist"}[
            max(root, foot, twist + slides)
        ]
    )


@pytest.mark.parametrize("slope", [0.3, 0.8, 1.5])
def test_a_slanting_arm_bends_square_to_itself(slope):
    """An arm of constant depth at a slope: of its root p d l^2/2, the cut square to its sides."""
    d, reach = 0.06, 0.6
    way = np.array([1.0, slope]) / np.hypot(1.0, slope)
    aside = np.array([-way[1], way[0]]) * d
    a = np.array([0.1, 0.4])
    b = a + way * reach
    points = (
        (-0.1, 0.0), (0.1, 0.0), tuple(a), tuple(b), tuple(b + aside),
        tuple(a + aside), (float((a + aside)[0]), 1.2), (-0.1, 1.2),
    )  # fmt: skip
    arms = arms_of(Cutout(points, 0.018))
    square = np.abs(arms.width - d) < 2e-4
    found = arms.moment[square].max()
    assert found == pytest.approx(d * reach**2 / 2.0, rel=1e-9)
    assert arms.rise[square][arms.moment[square].argmax()] == pytest.approx(way[1] ** 2, abs=1e-2)


def test_boards_of_lumber_are_not_judged_with_arms_across_their_grain():
    plain = judged(BASE, board(rectangle(0.3, 0.9), 0.02, material="redwood"))[0]
    assert plain["board"].governs == "bending"
    armed = judged(BASE, board(POST_AND_ARM, 0.02, material="redwood"))[1]
    assert armed["board"] == "across grain"


def test_a_hole_weakens_an_arm_and_a_prop_under_it_is_no_free_end():
    hole = ((0.12, 0.71), (0.16, 0.71), (0.16, 0.77), (0.12, 0.77))
    whole, holed = (
        judged(BASE, board(POST_AND_ARM, holes=holes))[0]["board"].check.utilization
        for holes in ((), (hole,))
    )
    assert holed > 1.5 * whole
    held = arms_of(Cutout(POST_AND_ARM, 0.018), [np.array([0.6, 0.7])])
    root = (np.abs(held.level - 0.74) < 1e-6) & (held.rise < 1e-9)
    assert not (held.moment[root] > 0.5 * 0.08 * 0.5**2 / 2.0).any()


def test_a_prop_is_found_where_the_board_stands_wherever_that_is():
    """Nothing but the place changes: 0.3 m beside the middle, of a board here or 0.5 m away."""

    def propped(x):
        points = rectangle(1.0, 0.8)
        figure = Part(
            "board", Cutout(points, 0.018), Place(on="foot", at=(x, 0.0, 0.0)), material=PLY
        )
        back = Part(
            "back", Box(0.1, 0.2, 0.4), Place(on="foot", at=(x + 0.3, 0.109, 0.0)), material=PLY
        )
        return judged(BASE, figure, back)[0]["board"]

    here, there = propped(0.0), propped(-0.25)
    assert here.role == there.role == "propped cut-out"
    assert there.check.demand == pytest.approx(here.check.demand, rel=1e-6)
    assert there.check.utilization == pytest.approx(here.check.utilization, rel=1e-6)
