"""Beams, arms, legs and braces worked by hand from weight and wind; and which are not judged."""

from dataclasses import replace
from math import cos, sin, sqrt

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_places import places
from yardfast.checks.members.carried_down import carry
from yardfast.checks.members.columns import aluminium_column, steel_column
from yardfast.checks.members.legs import pressing
from yardfast.checks.members.load_path import load_path
from yardfast.checks.members.post_strength import post_strength
from yardfast.checks.members.sticks import box_of, stick_of, touch, where_touched
from yardfast.checks.members.uprights import posts_of
from yardfast.design.model import Part, Place
from yardfast.design.placing import Body
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.member import Member as Stick
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.shapes.weight import Weight
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import Factors
from yardfast.materials.lumber import Lumber
from yardfast.materials.metal import Metal

G = 9.80665
PSI = 6894.757293168
FOUR = 3.5 * 0.0254
BASE = Part("foot", Plate(Rectangle(4.0, 1.5), 0.05), material="concrete")
FB, FC, EMIN = 650.0 * PSI, 850.0 * PSI, 0.47e6 * PSI
"""Southern pine, stud, 2x4 and 4x4. NDS Supplement 2018 Table 4B (memory)."""


def post(at, name="post", height=1.2, **more):
    given_ = {"material": "southern pine", **more}
    return Part(name, Box(FOUR, FOUR, height), Place(on="foot", at=(at, 0.0, 0.0)), **given_)


def stick(name, start, end, on, mass=6.0, width=FOUR, depth=FOUR, **more):
    given_ = {"material": "southern pine", "mass": mass, **more}
    shape = Stick(start, end, width, depth, cut=given_.pop("cut", "square"))
    return Part(name, shape, given_.pop("place", Place(on=on)), **given_)


def weight(name, x, on, mass=10.0):
    return Part(name, Weight(), Place(on=on, at=(x, 0.0, 0.0)), mass=mass)


def judged(*parts, turn=0.0, wind=0.5, **site):
    found = examine(design(*parts, turn=turn, wind=wind, **site)).members
    return {one.name: one for one in found.judged}, {one.name: one.why for one in found.not_judged}


def arm(reach=0.8, **more):
    """Return an arm over a post at x = 0, from -0.2 m to ``reach``."""
    return stick(
        "arm",
        (-0.2, 0.0, FOUR / 2.0),
        (reach, 0.0, FOUR / 2.0),
        "post",
        place=Place(on="post", at=(0.0, 0.0, 0.0)),
        **more,
    )


def test_arm_under_weight_alone_by_hand():
    """F x + w o^2/2 from the post's edge; dead load alone holds 0.9, wind 1.6 (NDS Table 2.3.2)."""
    found = judged(BASE, post(0.0), arm(), weight("lamp", 0.4, "arm"))[0]["arm"]
    out = 0.8 - FOUR / 2.0
    M = 10.0 * G * (0.7 - FOUR / 2.0) + 6.0 * G * out**2 / 2.0
    assert found.role == "arm"
    assert found.check.case == "calm"
    assert found.check.demand == pytest.approx(M, rel=1e-6)
    S = FOUR**3 / 6.0
    # square: it turns over sideways only far beyond its strength
    assert found.check.utilization == pytest.approx(M / S / (FB * 0.9), rel=1e-3)


def test_an_arm_of_steel_holds_weight_for_good_as_in_a_gust():
    """First yield over 1.67 (AISC 360-16 F1), no C_D: 33 ksi over S of a tube 60 by 3 mm."""
    tube = Part(
        "arm",
        Stick((-0.2, 0.0, 0.03), (0.8, 0.0, 0.03), across=0.06, wall=0.003),
        Place(on="post"),
        material="steel",
        mass=1.0e-6,
    )
    one = judged(BASE, post(0.0), tube, weight("lamp", 0.4, "arm"))[0]["arm"].check
    M = 10.0 * G * (0.7 - FOUR / 2.0)
    S = np.pi / 32.0 * (0.06**4 - 0.054**4) / 0.06
    assert one.demand == pytest.approx(M, rel=1e-4)
    assert one.utilization == pytest.approx(M / (S * 33_000.0 * PSI / 1.67), rel=1e-4)


def test_a_post_under_an_arm_holds_its_lean_for_good_by_hand():
    """0.5 m times the weight bends it in calm air: C_D 0.9, and all the weight presses it."""
    lamp = weight("lamp", 0.5, "post", mass=60.0)
    one = judged(BASE, post(0.0, mass=1.0e-6), lamp)[0]["post"].check
    assert one.case == "calm"
    assert one.direction_deg is None
    assert one.demand == pytest.approx(60.0 * G * 0.5, rel=1e-6)
    star = FC * 0.8 * 0.9
    fce = 0.822 * EMIN * 0.9 / (2.1 * 1.2 / FOUR) ** 2
    half = (1.0 + fce / star) / 1.6
    stable = star * (half - sqrt(half**2 - fce / star / 0.8))
    fc, fb = 60.0 * G / FOUR**2, 60.0 * G * 0.5 / (FOUR**3 / 6.0)
    hand = (fc / stable) ** 2 + fb / (FB * 0.9) / (1.0 - fc / fce)
    assert one.utilization == pytest.approx(hand, rel=1e-4)


@pytest.mark.parametrize("share", [0.9, 1.05, 4.0])
@pytest.mark.parametrize("stuff", ["southern pine", "steel", "aluminium"])
def test_a_post_pressed_alone_is_told_in_newtons_up_to_eulers_load_and_beyond(share, stuff):
    """N of P_c, NDS 3.6.3 or E of AISC and ADM, not N m of none; found even where it gives way."""
    (only,) = posts_of(examine(design(BASE, post(0.0, material=stuff))).structure)
    length = 1.2
    strength = post_strength(only.section, stuff, None, length, "allowable")
    if stuff == "southern pine":
        star, fce = FC * 0.8 * 0.9, 0.822 * EMIN * 0.9 / (2.1 * length / FOUR) ** 2
        half = (1.0 + fce / star) / 1.6
        holds = star * (half - sqrt(half**2 - fce / star / 0.8)) * FOUR**2
    else:
        slender = 2.1 * length / (FOUR / sqrt(12.0))
        column = {"steel": steel_column, "aluminium": aluminium_column}[stuff]
        holds = float(column(strength.stuff.strength, strength.elastic, slender))
        holds *= FOUR**2 / strength.stuff.safety
    load = Part("load", Weight(), Place(on="post"), mass=share * holds / G)
    bare = post(0.0, mass=1.0e-6, material=stuff)
    one = judged(BASE, bare, load, wind=0.01)[0]["post"]
    assert one.governs == "pressing"
    assert one.check.unit == "N"
    assert one.check.capacity == pytest.approx(holds, rel=1e-3)
    assert one.check.utilization == pytest.approx(share, rel=1e-3)
    assert one.check.passes == (share < 1.0)


def test_beam_between_two_posts_under_wind_by_hand():
    """Even wind and weight, w L^2/8 each way, summed over F'_b of both ways."""
    beam = stick("beam", (-0.9, 0, 0.045), (0.9, 0, 0.045), "posts", width=FOUR, depth=FOUR)
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", count=2, ring=1.6),
        material="southern pine",
    )
    gust = 25.0
    found = examine(design(BASE, posts, beam, wind=gust))
    one = {each.name: each for each in found.members.judged}["beam"]
    i = [body.part for body in found.structure.bodies].index(2)
    q, o, L = 0.5 * 1.226 * gust**2, 0.1, 1.6
    # a square takes more a little off its face than on it
    wind = np.radians(found.exposed.azimuths)
    seen = FOUR * (np.abs(np.cos(wind)) + FOUR / 1.8 * np.abs(np.sin(wind)))
    pushed = q * found.exposed.coefficient[i] * seen
    w = pushed * np.abs(np.cos(wind))
    down = 6.0 * G / 1.8
    # the ends stand out by 0.1: what they take off the middle
    reach = (L**2 - 4.0 * o**2) / 8.0
    S = FOUR**3 / 6.0
    # what blows along it is taken as pressing or drawing all of it: F_t 400 psi
    drawn = 1.8 * pushed * np.abs(np.sin(wind)) / FOUR**2 / (400.0 * PSI * 1.6)
    use = (w + down) * reach / S / (FB * 1.6) + drawn
    hand, worst = use.max(), use.argmax()
    assert one.role == "beam"
    assert abs(cos(np.radians(one.check.direction_deg))) > 0.95
    assert one.check.utilization == pytest.approx(hand, rel=1e-3)
    assert one.check.demand == pytest.approx(np.hypot(w[worst], down) * reach, rel=1e-3)


def test_beam_over_three_posts_bends_most_over_the_middle():
    """0.125 w L^2 in one piece; each span by itself has the same near its middle: R (R/(2 w) - o).

    Even load is put at the middles of pieces h long, at most a 24th of the beam: between them the
    moment is exact at their ends and w h^2/8 too much, at most, beside their middles.
    """
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", count=3, step=(1.2, 0, 0), at=(-1.2, 0, 0)),
        material="southern pine",
    )
    beam = stick("beam", (-1.2, 0, 0.045), (1.2, 0, 0.045), "posts", mass=20.0)
    one = judged(BASE, posts, beam)[0]["beam"]
    # the outer posts hold it from their middles, half a post from its ends... it ends there
    outer = 1.2 - FOUR / 4.0
    w, o, h = 20.0 * G / 2.4, FOUR / 4.0, 2.4 / 24.0
    R = w * 1.2**2 / (2.0 * outer)
    hand = max(R * (R / (2.0 * w) - o), w * outer**2 / 8.0 - w * o**2 / 4.0)
    assert hand <= one.check.demand <= hand + w * h**2 / 8.0


def test_weights_on_rafters_come_down_through_the_beams():
    """What arrives at the beams of a roof is all the weight of its rafters."""
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", at=(0.8, 0.4, 0.0), mirror=frozenset("xy")),
        material="southern pine",
    )
    beams = stick(
        "beams",
        (-1.0, 0, 0),
        (1.0, 0, 0),
        "posts",
        width=0.038,
        depth=0.14,
        place=Place(on="posts", at=(0.0, 0.4, 0.07), mirror=frozenset("y")),
    )
    rafters = stick(
        "rafters",
        (0, -0.6, 0),
        (0, 0.6, 0),
        "beams",
        width=0.038,
        depth=0.089,
        mass=5.0,
        place=Place(on="beams", at=(-0.9, 0.0, 0.0445), count=4, step=(0.5, 0, 0)),
    )
    found = examine(design(BASE, posts, beams, rafters, wind=0.5))
    path = load_path(found.structure, places(found.structure, "allowable"))
    names = [found.design.parts[body.part].name for body in found.structure.bodies]
    wanted = [i for i, name in enumerate(names) if name == "beams"]
    none = np.zeros((1, 1, 1))
    still = Actions(
        np.zeros(1),
        none[..., None].repeat(2, -1),
        none[..., None].repeat(2, -1),
        none,
        none,
        none[..., None].repeat(2, -1),
        ("A",),
    )
    factors = Factors(1.0, 1.0, 1.0, 1.0, "")
    carried = carry(found.structure, path, wanted, lambda _: still, factors, "allowable")
    landed = np.zeros(3)
    for k, hold in enumerate(path.holds):
        if names[hold.by] == "beams":
            landed += carried.arrives[k][0][0, 0, 0, 0].sum(axis=0)
    assert landed == pytest.approx([0.0, 0.0, -4 * 5.0 * G], abs=1e-6)
    # one beam: half of the rafters, and its own weight w L^2/8 less the ends that stand out
    one = {each.name: each for each in found.members.judged}["beams"]
    own = 6.0 * G / 2.0 * (1.6**2 - 4 * 0.2**2) / 8.0
    assert one.check.demand > own
    at = np.array([-0.9, -0.4, 0.1, 0.6])
    P = 5.0 * G / 2.0
    x = np.linspace(-0.8, 0.8, 1601)
    left = P * (0.8 - at).sum() / 1.6
    M = left * (x + 0.8) - P * np.maximum(x[:, None] - at, 0.0).sum(axis=1)
    M += 6.0 * G / 2.0 * ((1.0**2 - x**2) / 2.0 - 0.2)
    assert one.check.demand == pytest.approx(np.abs(M).max(), rel=2e-3)


def test_legs_that_lean_together_share_by_the_triangle():
    """H/(2 sin) and V/(2 cos) of the lean; square to their plane nothing presses them."""
    lean = 0.35
    u, v = np.array([sin(lean), 0.0, cos(lean)]), np.array([-sin(lean), 0.0, cos(lean)])
    H, V = 40.0, -300.0
    first, second = pressing(u, v, np.array([H, 77.0, V]))
    assert first == pytest.approx(-H / (2.0 * sin(lean)) - V / (2.0 * cos(lean)))
    assert second == pytest.approx(H / (2.0 * sin(lean)) - V / (2.0 * cos(lean)))


def frame(mass=60.0):
    legs = stick(
        "legs",
        (0.8, 0.6, 0.0),
        (0.8, 0.05, 1.6),
        None,
        mass=1.0e-6,
        cut="level",
        place=Place(mirror=frozenset("xy")),
        embed=0.2,
    )
    beam = stick(
        "beam",
        (-1.0, 0, 0),
        (1.0, 0, 0),
        "legs",
        mass=mass,
        place=Place(on="legs", at=(0, 0, FOUR / 2.0)),
    )
    return legs, beam


def test_legs_of_a_frame_under_weight_by_hand():
    """A quarter of the weight over the cosine presses each: N of F'_c A (NDS 3.6.3), K_e 2.1."""
    legs, beam = frame()
    found = judged(legs, beam, wind=0.01, ground="firm lawn")[0]
    L = sqrt(0.55**2 + 1.6**2)
    fc = 60.0 * G / 4.0 / (1.6 / L) / FOUR**2
    # southern pine F_c 850 psi wet 0.8, for good 0.9; E_min 0.9 of wet wood, as stiff for good
    star = FC * 0.8 * 0.9
    fce = 0.822 * EMIN * 0.9 / (2.1 * L / FOUR) ** 2
    r = fce / star
    C_P = (1 + r) / 1.6 - sqrt(((1 + r) / 1.6) ** 2 - r / 0.8)
    one = found["legs"]
    assert one.role == "leg of a pair"
    assert one.check.case == "calm"
    assert one.governs == "pressing"
    assert one.check.unit == "N"
    assert one.check.demand == pytest.approx(60.0 * G / 4.0 / (1.6 / L), rel=1e-4)
    assert one.check.capacity == pytest.approx(star * C_P * FOUR**2, rel=1e-4)
    assert one.check.utilization == pytest.approx(fc / (star * C_P), rel=1e-4)
    assert one.slender == pytest.approx(2.1 * L / FOUR, rel=1e-6)


def test_wind_along_the_beam_bends_the_legs_and_across_it_presses_them():
    legs, beam = frame(mass=5.0)
    found = examine(design(legs, beam, wind=30.0, ground="firm lawn"))
    one = {each.name: each for each in found.members.judged}["legs"]
    # along the beam (from 90 or 270 degrees) the legs bend; across it they are a triangle
    assert abs(sin(np.radians(one.check.direction_deg))) > 0.5


SWING = """
[design]
name  = 'Frame'
units = 'metric'
[site]
method = 'gust'
wind   = '20 mph'
ground = 'firm lawn'
[[part]]
name = 'legs'
shape = 'member'
from = ['0.8 m', '0.6 m', '0 m']
to = ['0.8 m', '0.05 m', '1.6 m']
width = '89 mm'
depth = '89 mm'
cut = 'level'
mirror = ['x', 'y']
material = 'southern pine'
{legs}
[[part]]
name = 'beam'
shape = 'member'
from = ['-1.0 m', '0 m', '0 m']
to = ['1.0 m', '0 m', '0 m']
width = '89 mm'
depth = '89 mm'
on = 'legs'
at = ['0 m', '0 m', '44 mm']
material = 'southern pine'
[[load]]
name = 'along'
force = '400 N'
at = ['0 m', '0 m', '1.6 m']
direction = 'right'
{more}
"""
SOLE = """
[[part]]
name = 'sole'
shape = 'plate'
length = '2 m'
width = '1.6 m'
thickness = '38 mm'
material = 'southern pine'
"""
SCREWED = """
[[joint]]
name = 'legs to sole'
of = 'legs'
to = 'sole'
fastener = '#10 wood screw 4 in'
count = 2
"""


@pytest.mark.parametrize(
    ("legs", "more", "stays"),
    [
        ("", "", False),
        ("on = 'sole'", SOLE, False),
        ("on = 'sole'", SOLE + SCREWED, True),
        ("embed = '0.2 m'", "", True),
    ],
    ids=["on the lawn", "on a base", "screwed to a base", "in the ground"],
)
def test_legs_whose_feet_nothing_holds_are_not_judged_as_if_held_fast(legs, more, stays):
    """Statics: a hinge holds no moment. Of 400 N along the beam each leg would carry 100 N L."""
    found = examine(read_text(SWING.format(legs=legs, more=more))).members
    one = {each.name: each for each in found.judged}.get("legs")
    why = {each.name: each.why for each in found.not_judged}.get("legs")
    assert why == (None if stays else "feet not held")
    assert (one is not None) == stays
    if one is not None:
        assert one.check.load == "along"
        # ends cut level reach some 2 mm beyond the line between their middles
        assert one.check.demand == pytest.approx(100.0 * sqrt(0.55**2 + 1.6**2), rel=2e-3)


@pytest.mark.parametrize(
    "thin",
    [{"width": FOUR, "depth": 0.0381}, {"material": "redwood"}, {"grade": "No. 2"}],
    ids=["section", "wood", "grade"],
)
def test_a_pair_of_unlike_legs_is_not_judged_by_the_better(thin):
    """One cannot stand for the other: the thin one would be told the strength of the thick."""

    def leg(name, side, **more):
        return stick(name, (0.0, side * 0.8, 0.0), (0.0, side * 0.015, 1.9), None, **given_, **more)

    given_ = {"cut": "level", "place": Place(), "mass": 1.0e-6, "embed": 0.2}
    found, not_judged = judged(leg("a", 1.0), leg("b", -1.0), ground="firm lawn")
    assert set(found) == {"a", "b"}
    found, not_judged = judged(leg("a", 1.0), leg("b", -1.0, **thin), ground="firm lawn")
    assert found == {}
    assert not_judged == {"a": "unlike legs", "b": "unlike legs"}


def propped(**more):
    brace = stick(
        "brace",
        (FOUR / 2.0, 0.0, 0.84),
        (FOUR / 2.0 + 0.4, 0.0, 1.24),
        None,
        mass=1.0e-6,
        width=FOUR,
        depth=0.04,
        place=Place(),
        cut="plumb",
        **more,
    )
    return BASE, post(0.0), arm(mass=1.0e-6), weight("lamp", 0.4, "arm", mass=80.0), brace


def test_brace_that_props_an_arm_by_hand():
    """The arm's moment about the post's edge over its lever to the brace, and sin 45 degrees.

    Fastened at the post alone the arm counts without it; the brace as if it alone held the arm.
    """
    found = judged(*propped())[0]
    assert found["brace"].role == "brace"
    body = Body(0, 0, propped()[-1].shape, np.eye(3), np.zeros(3))
    level = 1.25 + FOUR / 2.0
    shape = Stick((-0.2, 0.0, level), (0.8, 0.0, level), FOUR, FOUR)
    bar = stick_of(Body(0, 0, shape, np.eye(3), np.zeros(3)))
    low, high = where_touched(bar, box_of(body))
    lever = (low + high) / 2.0 - 0.2 - FOUR / 2.0
    assert 0.36 < lever + FOUR / 2.0 < 0.5
    N = 80.0 * G * (0.7 - FOUR / 2.0) / lever / sin(np.pi / 4.0)
    # K_e 1.0 between its ends, 40 mm thick; dead load alone, C_D 0.9 on F_c* but not on F_cE
    fc = N / (FOUR * 0.04)
    brace = stick_of(body)
    spots = [where_touched(brace, box_of(one)) for one in _bodies(*propped()[1:3])]
    span = abs(sum(spots[1]) - sum(spots[0])) / 2.0
    out = max(min(spots[0][0], spots[1][0]), brace.length - max(spots[0][1], spots[1][1]))
    fce = 0.822 * EMIN * 0.9 / (max(span, 2.1 * out) / 0.04) ** 2
    star = FC * 0.8 * 0.9
    half = (1.0 + fce / star) / 1.6
    stable = star * (half - sqrt(half**2 - fce / star / 0.8))
    assert found["brace"].check.case == "calm"
    assert found["brace"].governs == "pressing"
    assert found["brace"].check.demand == pytest.approx(N, rel=2e-3)
    assert found["brace"].check.utilization == pytest.approx(fc / stable, rel=2e-3)
    assert found["arm"].beside == ("brace",)


@pytest.mark.parametrize("of", ["southern pine", "steel"])
def test_a_brace_tires_as_its_own_stuff_does_whatever_the_arm_is_made_of(of):
    """What lies on it for good asks 1.6/0.9 more of wood (NDS 2018 Table 2.3.2), none of steel."""
    *rest, brace = propped(material=of)
    parts = {one.name: one for one in rest}
    uses: list[float] = []
    for stuff in ("southern pine", "steel"):
        bar = replace(parts["arm"], material=stuff)
        found = judged(*(bar if one.name == "arm" else one for one in rest), brace)[0]
        uses.append(found["brace"].check.utilization)
        assert type(found["arm"].stuff) is (Metal if stuff == "steel" else Lumber)
    assert uses[0] == pytest.approx(uses[1], rel=1e-6)


def test_wood_more_slender_than_columns_may_be_fails_where_it_is_pressed():
    """NDS 2018 3.7.1.4: l_e/d of 50 at most. 2.1 x 2.4 m over 89 mm is 57, whatever it holds."""
    slender = 2.1 * 2.4 / FOUR
    fce = 0.822 * EMIN * 0.9 / slender**2
    star = FC * 0.8 * 0.9
    half = (1.0 + fce / star) / 1.6
    holds = star * (half - sqrt(half**2 - fce / star / 0.8)) * FOUR**2
    for share, governs in ((0.05, "pressing"), (0.2, "slenderness"), (1.5, "pressing")):
        load = Part("load", Weight(), Place(on="post"), mass=share * holds / G)
        bare = post(0.0, height=2.4, mass=1.0e-6)
        one = judged(BASE, bare, load, wind=0.01)[0]["post"]
        assert one.governs == governs
        assert one.check.passes == (governs == "pressing" and share < 1.0)
        assert one.slender == pytest.approx(slender, rel=1e-6)
        if governs == "slenderness":
            assert one.check.utilization == pytest.approx(slender / 50.0, rel=1e-6)
            assert one.check.demand == pytest.approx(slender, rel=1e-6)
            assert one.check.capacity == 50.0
    # of metal no such limit is held: AISC 360-16 E2 only recommends one
    tube = post(0.0, height=2.4, mass=1.0e-6, material="steel")
    assert judged(BASE, tube, load, wind=0.01)[0]["post"].governs == "pressing"


def test_slender_legs_and_braces_fail_like_posts():
    """1 1/2 in thick: 2.1 x 1.69 m is 93 times that, a brace of 2.2 m 58 times."""
    thin = {"width": 0.0381, "depth": 0.0381}
    legs, beam = frame(mass=100.0)
    slim = replace(legs, shape=replace(legs.shape, width=0.0381, depth=0.0381))
    found = judged(slim, beam, wind=0.01, ground="firm lawn")[0]["legs"]
    assert found.governs == "slenderness"
    assert found.check.demand == pytest.approx(2.1 * sqrt(0.55**2 + 1.6**2) / 0.0381, rel=1e-6)
    brace = stick(
        "brace",
        (FOUR / 2.0, 0.0, 0.44),
        (FOUR / 2.0 + 1.6, 0.0, 2.04),
        None,
        mass=1.0e-6,
        place=Place(),
        cut="plumb",
        **thin,
    )
    lamp = weight("lamp", 0.3, "arm", mass=60.0)
    found = judged(BASE, post(0.0, height=2.0), arm(2.4, mass=1.0e-6), lamp, brace)[0]["brace"]
    assert found.governs == "slenderness"
    assert not found.check.passes
    assert 50.0 < found.check.demand == pytest.approx(found.slender)


def _bodies(*parts):
    found = examine(design(BASE, *parts, wind=0.5)).structure
    names = [part.name for part in found.design.parts]
    return [body for body in found.bodies if names[body.part] != "foot"]


def test_a_brace_in_a_frame_that_something_else_holds_too_is_not_judged():
    other = post(0.75, name="far post")
    assert judged(*propped(), other)[1]["brace"] == "braces more"


@settings(max_examples=8, deadline=None)
@given(st.integers(1, 71).map(lambda step: np.radians(5.0 * step)))
def test_turning_the_whole_changes_no_beam(turn):
    """By whole steps of the winds that are tried, so that the same winds blow on it."""
    parts = (BASE, post(0.0), arm(), weight("lamp", 0.4, "arm"))
    here, there = (judged(*parts, turn=angle, wind=20.0)[0]["arm"] for angle in (0.0, turn))
    assert there.check.utilization == pytest.approx(here.check.utilization, rel=1e-9)


@pytest.mark.parametrize(
    ("changed", "why"),
    [
        ({"material": "brick"}, "no values"),
        ({"material": "PVC"}, "no values"),
        ({"material": None, "density": 500.0, "mass": None}, "no material"),
    ],
    ids=["no lumber", "plastic", "no material"],
)
def test_sticks_without_published_strength_are_not_judged(changed, why):
    found, not_judged = judged(BASE, post(0.0), arm(**changed))
    assert "arm" not in found
    assert not_judged["arm"] == why


def test_a_leg_that_leans_alone_is_not_judged():
    legs, beam = frame()
    alone = Part("legs", legs.shape, Place(mirror=frozenset("x")), material="southern pine")
    other = Part("block", Box(0.1, 0.1, 1.6), Place(at=(0.0, -0.3, 0.0)), material="concrete")
    board = Part("top", Plate(Rectangle(2.0, 0.9), 0.03), Place(on="block"), material="OSB")
    assert judged(alone, other, board)[1]["legs"] == "leans alone"
    assert beam.name == "beam"


def test_what_lies_on_the_ground_or_along_another_does_not_span():
    skid = Part("skid", Box(1.5, 0.09, 0.09), material="southern pine")
    found, not_judged = judged(
        skid, Part("rail", Box(1.5, 0.09, 0.09), Place(on="skid"), material="southern pine")
    )
    assert found == {}
    assert not_judged == {"rail": "held along"}


def test_boxes_that_are_turned_touch_only_where_they_do():
    """Against the least distance between points of both, sampled densely."""
    rng = np.random.default_rng(11)
    grid = np.array(np.meshgrid(*[np.linspace(-1, 1, 9)] * 3)).reshape(3, -1).T
    for _ in range(60):
        bodies = []
        for _ in range(2):
            turn = np.linalg.qr(rng.normal(size=(3, 3)))[0]
            sizes = rng.uniform(0.1, 0.6, 3)
            bodies.append(Body(0, 0, Box(*sizes), turn, rng.uniform(-0.5, 0.5, 3)))
        one, other = (box_of(body) for body in bodies)
        points = [b.middles[0] + (grid * b.half) @ b.axes for b in (one, other)]
        inside = np.abs((points[0] - other.middles[0]) @ other.axes.T) <= other.half
        back = np.abs((points[1] - one.middles[0]) @ one.axes.T) <= one.half
        if inside.all(axis=1).any() or back.all(axis=1).any():
            assert touch(one, other)[0]
        gap = np.linalg.norm(points[0][:, None] - points[1][None], axis=-1).min()
        if gap > 0.3:
            assert not touch(one, other)[0]


def test_where_a_beam_is_touched_is_read_off_the_drawing():
    shape = Stick((-1.0, 0.0, 0.0), (1.0, 0.0, 0.0), 0.05, 0.1)
    beam = stick_of(Body(0, 0, shape, np.eye(3), np.zeros(3)))
    post_ = box_of(Body(1, 0, Solid(4, 0.1, 0.1, 1.0), np.eye(3), np.array([0.3, 0.0, -1.05])))
    assert where_touched(beam, post_) == pytest.approx((1.25, 1.35))
    far = box_of(Body(1, 0, Solid(4, 0.1, 0.1, 1.0), np.eye(3), np.array([0.3, 0.2, -1.05])))
    assert where_touched(beam, far) is None


def bearers(lamp, mass, count=3, apart=1.8):
    """Return bearers between two posts each, and square over them a joist; all 4x4."""
    places = [(n - (count - 1) / 2.0) * apart for n in range(count)]
    held = [
        Part(
            f"posts {n}",
            Box(FOUR, FOUR, 1.2),
            Place(on="foot", at=(x, -0.8, 0.0), count=2, step=(0.0, 1.6, 0.0)),
            material="southern pine",
        )
        for n, x in enumerate(places)
    ]
    ends = (0.0, -0.9, FOUR / 2.0), (0.0, 0.9, FOUR / 2.0)
    held += [stick(f"bearer {n}", *ends, f"posts {n}", mass=1.0e-6) for n in range(count)]
    ends = (places[0], 0.0, FOUR / 2.0), (places[-1], 0.0, FOUR / 2.0)
    on = Place(on="bearer 1", at=(-places[1], 0.0, 0.0))
    joist = stick("joist", *ends, "bearer 1", mass=120.0, place=on)
    wide = Part("foot", Plate(Rectangle(6.0, 3.0), 0.05), material="concrete")
    return [wide, *held, joist, weight("lamp", lamp, "joist", mass=mass)]


@pytest.mark.parametrize("mass", [1.0e-6, 900.0 / G])
def test_the_middle_of_three_bearers_takes_what_one_piece_leaves_it(mass):
    """10/8 w L (AWC Design Aid 6, 2007, figure 29; memory) and all that stands over it.

    The joist ends over the middle of the outer bearers: half of those is what it rests on, and it
    stands out by half of that, o: 3 w o^2/(2 L) less by three moments. The bearer spans 1.6 m and
    takes all in the middle: R L/4 over S F'_b, C_D 0.9.
    """
    found = judged(*bearers(0.0, mass))[0]
    w, o = 120.0 * G / 3.6, FOUR / 4.0
    L = 1.8 - o
    M = (1.25 * w * L - 1.5 * w * o**2 / L + mass * G) * 1.6 / 4.0
    middle = found["bearer 1"].check
    assert middle.demand == pytest.approx(M, rel=1e-4)
    assert middle.utilization == pytest.approx(M / (FOUR**3 / 6.0) / (FB * 0.9), rel=5e-3)
    # rigid, the outer ones take a third; in one piece or span by span less
    outer = (120.0 + mass) * G / 3.0 * 1.6 / 4.0
    for name in ("bearer 0", "bearer 2"):
        assert found[name].check.demand == pytest.approx(outer, rel=1e-4)


def test_bearers_under_the_end_take_more_than_as_of_a_rigid_piece():
    """What stands over an outer support goes into it: with a rigid piece 5/6 of it would."""
    found = judged(*bearers(1.8 - FOUR / 4.0, 1000.0))[0]
    least = 1000.0 * G * 1.6 / 4.0
    assert found["bearer 2"].check.demand > least
    assert found["bearer 0"].check.demand < found["bearer 1"].check.demand


def test_two_bearers_share_by_the_lever_alone():
    """The lamp 0.3 m off the middle of 1.8 m: statics leaves no choice."""
    two = bearers(0.3, 100.0, count=2)
    found = judged(*two)[0]
    L = 1.8 - FOUR / 2.0
    R = 60.0 * G + 100.0 * G * (L / 2.0 + 0.3) / L
    assert found["bearer 1"].check.demand == pytest.approx(R * 1.6 / 4.0, rel=1e-4)


@pytest.mark.parametrize("lamp", [-1.0, 0.0, 0.7])
def test_each_way_to_share_balances_what_comes_down(lamp):
    """Forces and moments of what arrives at three bearers: as the joist and its lamp bring."""
    structure = examine(design(*bearers(lamp, 100.0), wind=0.5)).structure
    names = [structure.design.parts[body.part].name for body in structure.bodies]
    held = [names.index(f"bearer {n}") for n in range(3)]
    path = load_path(structure, places(structure, "service"))
    rng = np.random.default_rng(5)
    flat = (2, 3, 1)
    gust = Actions(
        np.zeros(3),
        rng.normal(0.0, 90.0, (*flat, 2)),
        rng.normal(0.0, 90.0, (*flat, 2)),
        rng.normal(0.0, 20.0, flat),
        rng.normal(0.0, 50.0, flat),
        rng.normal(0.0, 20.0, (*flat, 2)),
        ("A",),
    )
    factors = Factors(1.0, 1.0, 1.0, 1.0, "")
    brought = carry(structure, path, held, lambda _: gust, factors, "service")
    assert len(brought.sets) == 9
    force = moment = 0.0
    for k, hold in enumerate(path.holds):
        if hold.by in held:
            passed, rest = brought.arrives[k]
            force = force + passed.sum(axis=-2)
            moment = moment + np.cross(hold.points, passed).sum(axis=-2) + rest
    own = [brought.own[names.index(name)] for name in ("joist", "lamp")]
    np.testing.assert_allclose(force, own[0].force + own[1].force, atol=1e-8)
    np.testing.assert_allclose(moment, own[0].moment + own[1].moment, atol=1e-7)
