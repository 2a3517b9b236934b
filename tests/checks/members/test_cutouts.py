"""Boards sawn to an outline, level by level: against plain boards, sums and beams solved apart."""

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.members.cutouts import levels_of
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
    b, h = 0.6, 0.9
    found = levels_of(Cutout(((-b / 2, 0.0), (b / 2, 0.0), (0.0, h)), 0.018), None)
    assert found.moment[0] == pytest.approx(b * h**2 / 6.0, rel=1e-3)
    assert found.shear[0] == pytest.approx(b * h / 2.0, rel=1e-6)
    assert found.width[100] == pytest.approx(b / 2.0, rel=1e-6)


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


def propped(width, length, prop, fast):
    """Return the moments (n,) of a beam under 1 Pa, held at its foot and at ``prop``: stiffness."""
    n = 180
    x = np.linspace(0.0, length, n + 1)
    size = 2 * (n + 1)
    K, F = np.zeros((size, size)), np.zeros(size)
    for k in range(n):
        h = x[k + 1] - x[k]
        ke = np.array(
            [
                [12, 6 * h, -12, 6 * h],
                [6 * h, 4 * h**2, -6 * h, 2 * h**2],
                [-12, -6 * h, 12, -6 * h],
                [6 * h, 2 * h**2, -6 * h, 4 * h**2],
            ]
        ) / h**3  # fmt: skip
        fe = width(x[k] + h / 2) * h * np.array([0.5, h / 12, 0.5, -h / 12])
        at = slice(2 * k, 2 * k + 4)
        K[at, at] += ke
        F[at] += fe
    at_prop = int(np.argmin(np.abs(x - prop)))
    held = [0, 2 * at_prop] + ([1] if fast else [])
    free = np.setdiff1d(np.arange(size), held)
    u = np.zeros(size)
    u[free] = np.linalg.solve(K[np.ix_(free, free)], F[free])
    curved = np.gradient(u[1::2], x)
    return x, np.abs(curved)


@pytest.mark.parametrize("fast", [True, False], ids=["fast foot", "free foot"])
@pytest.mark.parametrize("prop", [0.3, 0.5, 0.8])
def test_below_a_brace_no_less_is_asked_than_of_a_beam_on_two_supports(prop, fast):
    """Against a beam solved by its stiffness matrix, its foot fast or free to turn.

    The most by hand: w (h - p)^2/2 over the brace, or w p^2/8 at a fast foot (Wood Handbook Table
    9-1, fast at one end), where half of the brace's moment comes down at most.
    """
    h, w = 1.0, 0.4
    found = levels_of(Cutout(rectangle(w, h), 0.018), prop)
    x, moment = propped(lambda _: w, h, prop, fast)
    asked = np.interp(x, found.up, found.moment)
    clear = (np.abs(x - prop) > 0.02) & (x < 0.97)
    assert (asked[clear] >= moment[clear] * (1.0 - 0.02) - 1e-4).all()
    over, at_foot = w * (h - prop) ** 2 / 2.0, w * prop**2 / 8.0
    assert found.moment.max() == pytest.approx(max(over, at_foot, over / 2.0), rel=1e-6)


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
    assert one.deflection == 0.0
