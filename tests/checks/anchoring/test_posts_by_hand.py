"""What wind asks of each of two posts in the ground, by hand."""

import numpy as np
import pytest
from designs import design
from once_broken import HEAD, POST

from yardfast.checks.anchoring.embedded_limits import give_way_pressures
from yardfast.checks.anchoring.embedded_posts import Posts, asked_of, check_pull_out, posts_of
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.design.model import Part
from yardfast.design.shapes.bodies import Solid
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import Factors
from yardfast.units.frozen import replace

TWO = np.ones(2)


def posts(x):
    return Posts(
        part=(0, 1),
        points=np.array([[x - 0.5, 0.0], [x + 0.5, 0.0]]),
        depth=0.6 * TWO,
        width=0.1 * TWO,
        end=0.01 * TWO,
        cut=(0.01, 0.01),
        cast=(0.0, 0.0),
        constrained=(False, False),
        bearing=15000.0 * TWO,
    )


def actions(tilt, twist, up=0.0, lifting=(0.0, 0.0)):
    one = np.ones((1, 1))
    return Actions(
        np.zeros(1),
        np.array([[[0.0, 100.0]]]),
        np.array([[tilt]]),
        twist * one,
        up * one,
        np.array([[lifting]]),
        ("A",),
    )


def test_two_posts_share_force_and_moment_and_a_twist_adds_to_the_one_that_is_far():
    """100 N at 1.5 m on two posts a metre apart, 20 N m of twist: 50 -+ 20/1 N, and 75 N m each,
    of which the farther takes its 20 N more at 1.5 m: 105 N m. Wind times 2: twice as much."""
    asked = asked_of(posts(0.0), actions((0.0, 150.0), 20.0), 2.0)
    assert np.sort(asked.force[0, 0]) == pytest.approx([60.0, 140.0], rel=1e-12)
    assert np.sort(asked.moment[0, 0]) == pytest.approx([150.0, 210.0], rel=1e-12)


def test_what_leans_in_blowing_counts_by_the_whole_moment():
    """A moment of 90 to the right and 120 away is one of 150 N m: the arm is 1.5 m as before."""
    asked = asked_of(posts(0.0), actions((90.0, 120.0), 20.0), 1.0)
    assert np.sort(asked.moment[0, 0]) == pytest.approx([75.0, 105.0], rel=1e-12)


def test_a_twist_and_a_lift_count_about_the_middle_of_the_posts():
    """Moved 2 m to the right with all that acts, which then twists 100 N x 2 m more about the
    origin and lifts 60 N x 2 m: the posts are asked for the same."""
    near = asked_of(posts(0.0), actions((0.0, 150.0), 20.0, 60.0, (30.0, 0.0)), 1.0)
    far = asked_of(posts(2.0), actions((0.0, 150.0), 220.0, 60.0, (150.0, 0.0)), 1.0)
    assert far.force == pytest.approx(near.force, rel=1e-12)
    assert far.moment == pytest.approx(near.moment, rel=1e-12)
    assert near.moment[0, 0].min() == pytest.approx(np.hypot(150.0, 30.0) / 2.0, rel=1e-12)


def test_many_pieces_at_once_give_way_each_at_its_own_pressure():
    """What is used grows in a straight line with pressure: earth half or twice as strong gives way
    at half or twice the pressure, and in a wind twice as hard at half of it."""
    found = examine(read_text(HEAD + POST))
    own = posts_of(found.structure, found.standing.ground)
    one = actions((0.0, 150.0), 0.0)
    times = np.array([[1.0, 1.0 / 3.0], [1.0, 2.0]])[..., None]  # directions, cases
    level, tilting = times * one.force[0, 0], times * one.tilting[0, 0]
    none = np.zeros((2, 2))
    azimuths = np.array([0.0, 10.0])
    two = Actions(azimuths, level, tilting, none, none, 0.0 * level, ("A", "B left"))
    soil = np.array([0.5, 1.0, 2.0])[:, None, None]
    q = give_way_pressures(own, found.structure, two, 0.0, np.inf, np.ones((3, 1, 1)), soil)
    assert q.shape == (3, 2)
    assert q[:, 0] == pytest.approx(q[1, 0] * soil[:, 0, 0], rel=1e-9)
    assert q[:, 1] == pytest.approx(q[:, 0] / 2.0, rel=1e-9)
    asked = own.used(np.array([100.0]), np.array([150.0]), 1.0) * q[1, 0]
    assert asked[0] == pytest.approx(1.0, rel=1e-9)


def test_the_post_that_is_asked_most_gives_way_first():
    """Of two that share 100 N and a twist of 20 N m a metre apart the one that takes 70 N."""
    found = examine(read_text(HEAD + POST))
    both, unit = posts(0.0), actions((0.0, 150.0), 20.0)
    q = give_way_pressures(both, found.structure, unit, 0.0, np.inf)
    used = both.used(np.array([70.0, 70.0]), np.array([105.0, 105.0]), 1.0)
    assert q[0] == pytest.approx(1.0 / used[0], rel=1e-9)


@pytest.mark.parametrize(
    ("high", "across", "deep"), [(0.7, 0.2, 0.9), (1.5, 0.3, 1.1), (2.4, 0.1, 0.6)]
)
def test_a_round_post_gives_way_where_its_check_is_used_up_in_whatever_range(high, across, deep):
    """A smooth post takes less once the flow round it has turned (ASCE/SEI 7 Fig. 29.4-1: D sqrt q
    of 5.3 m sqrt(Pa)): 5.3^2 / D^2 Pa. One that stands that long gives way in the second range; at
    the gust that is told, the check of that gust is used up, at the ends by the band of 15 %."""
    part = Part("post", Solid(0, across, across, high + deep), density=500.0, embed=deep)
    part = replace(part, surface="smooth")
    site = {"ground": "firm lawn", "basis": "service", "safety": 1.0}
    least = examine(design(part, **site)).limits
    turned = 5.3 / across / np.sqrt(0.613)
    assert (least.tipping > turned) == (high < 2.0)
    for gust, used in (
        (least.tipping, 1.0),
        (least.tipping_low, 1.0 / 1.15),
        (least.tipping_high, 1.0 / 0.85),
    ):
        found = examine(design(part, wind=gust, **site))
        (check,) = [c for c in found.checks if c.kind is Kind.EMBEDMENT]
        assert check.utilization == pytest.approx(used, rel=1e-9)


@pytest.mark.parametrize("cast", [0.0, 0.3])
def test_what_keeps_a_post_from_being_drawn_out_by_hand(cast):
    """0.9 of what stands on the posts, and of concrete round them, 145 - 62.4 pcf in a hole full
    of water: two of 0.3 m by 0.6 m less the posts, 2 x (pi/4 0.09 - 0.01) x 0.6 m3."""
    block = Part("block", Solid(4, 0.5, 0.5, 0.5), mass=100.0)
    structure = examine(design(block, wind=20.0)).structure
    two = replace(posts(0.0), cast=(cast, cast))
    up = actions((0.0, 100.0), 0.0, up=500.0)
    check = check_pull_out(two, structure, up, Factors(0.9, 1.2, 1.0, 1.0, ""))
    concrete = 2.0 * (np.pi / 4.0 * 0.09 - 0.01) * 0.6 if cast else 0.0
    buoyant = (145.0 - 62.4) * 4.4482216152605 / 0.3048**3
    assert check.demand == pytest.approx(500.0)
    assert check.capacity == pytest.approx(0.9 * (100.0 * 9.80665 + concrete * buoyant))
