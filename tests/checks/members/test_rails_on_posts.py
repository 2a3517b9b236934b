"""A slender rail over three posts: each post against what statics leaves it, by hand."""

from functools import cache

import numpy as np
import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_check import again
from yardfast.checks.joints.joint_places import places
from yardfast.checks.members.rails_on_posts import spanned_by
from yardfast.checks.members.uprights import posts_of
from yardfast.loads.actions import Actions
from yardfast.report.result import Result

G = 9.80665
PSI = 6894.757293168
INCH = 0.0254
FOUR = 3.5 * INCH


def fence(load="", rail="1.5 in", wind="6 m/s", count=3, apart=2000, mass="10 kg", tail=""):
    reach = (count - 1) * apart / 2
    return f"""
[design]
name  = 'A rail on posts'
units = 'metric'

[site]
method = 'gust'
wind   = '{wind}'
ground = 'paving'

[[part]]
name      = 'slab'
shape     = 'plate'
length    = '9 m'
width     = '3 m'
thickness = '100 mm'
material  = 'concrete'

[[part]]
name     = 'post'
shape    = 'box'
on       = 'slab'
length   = '3 1/2 in'
width    = '3 1/2 in'
height   = '1.2 m'
at       = ['{-reach} mm', '0 mm', '0 mm']
count    = {count}
step     = ['{apart} mm', '0 mm', '0 mm']
material = 'southern pine'
mass     = '1 g'

[[part]]
name     = 'rail'
shape    = 'box'
on       = 'post'
length   = '{2 * reach + 89} mm'
width    = '3 1/2 in'
height   = '{rail}'
material = 'southern pine'
mass     = '{mass}'
{tail}
[[joint]]
name     = 'rail to post'
of       = 'rail'
to       = 'post'
fastener = '3/8 lag screw 6 in'
count    = 1
{load}
"""


def pushed(x, force=600.0, way="back"):
    return f"""
[[load]]
name = 'push'
force = '{force} N'
at = ['{x} mm', '0 mm', '1.319 m']
direction = '{way}'
on = 'rail'
"""


@cache
def found(text):
    return examine(read_text(text))


def post_of(text):
    return next(one for one in found(text).members.judged if one.name == "post").check


def test_a_push_over_the_middle_post_goes_into_it_by_hand():
    """600 N at the middle of 1.5x3.5 over 4x4 posts at 2 m: all of it, not a third.

    The rail's middle is 1.219 m up, the slab's top 0.1: M = F z; over S F'_b of 650 psi (stud
    southern pine, memory), C_D 1.0 in place of 1.6.
    """
    one = post_of(fence(pushed(0.0), mass="1 g"))
    M = 600.0 * 1.219
    assert one.load == "push"
    assert one.demand == pytest.approx(M, rel=1e-3)
    assert one.utilization == pytest.approx(M / (FOUR**3 / 6.0 * 650.0 * PSI), rel=5e-3)


def test_it_is_told_how_posts_under_a_rail_share():
    told = Result(found(fence(pushed(0.0))))
    notes = next(one for one in told.checks if one.name == "member: post").notes
    assert any("three posts sharing alike or as a slender rail leaves it" in one for one in notes)
    assert any("span by span, and in one piece" in one for one in told.assumptions)
    two = Result(found(fence(pushed(0.0), count=2)))
    assert not any("span by span, and in one piece" in one for one in two.assumptions)


@pytest.mark.parametrize("x", [1000.0, 1500.0])
def test_a_push_between_posts_is_shared_by_the_lever_or_in_one_piece(x):
    """The nearest post: by the lever, or as one piece over three supports takes it, or rigid.

    In one piece, P at a from the end of two spans L: the outer R = P b (4 L^2 - a (L + a))/(4 L^3),
    the middle P a (3 L^2 - a^2)/(2 L^3) (AWC Design Aid 6, 2007, figure 30; memory), b = L - a.
    """
    P, L = 600.0, 2.0
    a = L - x / 1000.0
    b = L - a
    middle = [P * a / L, P * a * (3.0 * L**2 - a**2) / (2.0 * L**3), P / 3.0]
    outer = [P * b / L, P * b * (4.0 * L**2 - a * (L + a)) / (4.0 * L**3), P / 3.0 + P * b / 4.0]
    one = post_of(fence(pushed(x), mass="1 g"))
    assert one.demand == pytest.approx(max(*middle, *outer) * 1.219, rel=1e-3)


def test_two_posts_are_left_to_the_lever():
    """Half each in the middle, and three quarters by a quarter off it: by statics alone."""
    for x, share in ((0.0, 0.5), (500.0, 0.75)):
        one = post_of(fence(pushed(x), count=2, mass="1 g"))
        assert one.demand == pytest.approx(600.0 * share * 1.219, rel=2e-3)


def test_wind_on_a_long_rail_leaves_the_middle_post_its_share():
    """10/8 w L on the middle of three, w L of each span by itself; all three balance the wind."""
    examined = found(fence(wind="20 m/s"))
    structure = examined.structure
    joined = places(structure, "service")
    groups = posts_of(structure)
    names = [structure.design.parts[body.part].name for body in structure.bodies]

    def blow(some):
        """Return 300 N level, even along the rail, and 30 N level on each post at mid-height."""
        force = np.array([0.0, 0.0])
        tilting, twist = np.zeros(2), 0.0
        for i in np.flatnonzero(some):
            if names[i] == "slab":
                continue
            low, high = structure.bodies[i].extent
            x, z = (low[0] + high[0]) / 2.0, (low[2] + high[2]) / 2.0
            push = 300.0 if names[i] == "rail" else 30.0
            force = force + np.array([0.0, push])
            tilting = tilting + np.array([0.0, push * z])
            twist += push * x
        shape = (1, 1, 1)
        none = np.zeros((*shape, 2))
        return Actions(
            np.zeros(1),
            none + force,
            none + tilting,
            np.zeros(shape) + twist,
            np.zeros(shape),
            none,
            ("A",),
        )

    (ways,) = spanned_by(structure, joined, groups, blow, "service").values()
    L, o = 2.0, 0.0445
    w = 300.0 / (2.0 * L + 2.0 * o)
    one_piece = 1.25 * w * L - 1.5 * w * o**2 / L
    for way, middle in zip(ways, (w * L - w * o**2 / L, one_piece), strict=True):
        taken = [float(share.force[0, 0, 0, 1]) for share in way.wind]
        assert sum(taken) == pytest.approx(390.0)
        assert taken[1] == pytest.approx(middle + 30.0, rel=1e-6)
        assert taken[0] == pytest.approx(taken[2])
        moments = [float(share.moment[0, 0, 0, 1]) for share in way.wind]
        # the rail's middle, and half the height of a post
        assert sum(moments) == pytest.approx(300.0 * (1.2 + 0.75 * INCH) + 90.0 * 0.6)
        weighs = [-float(share.up[0, 0, 0]) for share in way.weight]
        heavy = float(structure.part_mass[2].sum() - structure.part_mass[2, 0]) * G
        assert sum(weighs) == pytest.approx(heavy, rel=1e-6)
        assert weighs[1] == pytest.approx(heavy * middle / 300.0, rel=1e-3)


def joint_of(text):
    return found(text).joints[0]


def test_the_screw_over_the_middle_post_takes_a_push_there_by_hand():
    """600 N at the middle of the rail: its screw takes all sideways, not a third.

    The push is 0.75 in above the post; the rail tips about the edge of that post's top, 1.75 in
    from the screw but for the 10 mm of it that bear: T = F h/(b/2 - 10 mm).
    """
    joint = joint_of(fence(pushed(0.0), mass="1 g"))
    assert joint.shear == pytest.approx(600.0, rel=1e-3)
    assert joint.tension == pytest.approx(600.0 * 0.75 * INCH / (FOUR / 2.0 - 0.010), rel=1e-2)
    assert joint.at[0] == pytest.approx(0.0, abs=1e-6)
    assert (joint.count, joint.spots) == (3, 3)


def test_screws_of_two_posts_share_a_push_as_ever():
    joint = joint_of(fence(pushed(500.0), count=2, mass="1 g"))
    assert joint.shear == pytest.approx(600.0 * 0.75, rel=1e-3)


def test_what_lifts_the_middle_of_a_rail_draws_its_screw_alone():
    """Less the rail's own weight over the middle post: 10/8 w L and less, light."""
    joint = joint_of(fence(pushed(0.0, way="up")))
    light = 0.6 * 10.0 * G * 1.25 / 2.0
    assert 600.0 - 1.1 * light < joint.tension <= 600.0
    assert joint.check.load == "push"


def test_sizing_a_joint_along_a_rail_keeps_its_places():
    """Two screws at each post in place of one: the one over the middle takes half."""
    text = fence(pushed(0.0), mass="1 g")
    two = text.replace("count    = 1", "count    = 2")
    examined = found(text)
    own = list(places(found(two).structure, "service"))
    again_two = again(examined.joints[0], own, examined.factors)
    assert again_two.count == 6
    assert again_two.check.utilization == pytest.approx(joint_of(two).check.utilization, rel=1e-9)
    assert again_two.shear == pytest.approx(300.0, rel=1e-3)
