"""Portals, legs and knee braces in one piece, against a plane frame and closed forms."""

from itertools import pairwise
from math import hypot, sqrt

import numpy as np
import pytest
from designs import design
from inside import forces_in, part_sticks, under
from plane_frame import Plane
from stick_designs import BASE, EMIN, FB, FC, FOUR, PSI, G, frame, judged, propped, stick

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.loads.given import GivenLoad
from yardfast.units.frozen import replace

E = 1.3e6 * 0.9 * PSI
"""Southern pine, stud, wet. NDS Supplement 2018 Table 4B (memory)."""
EI = E * FOUR**4 / 12.0
EA = E * FOUR**2
STUB = FOUR / 2.0
"""From the top of a post to the axis of the beam on it, rigid."""


def on_posts(places, load, beam=(0.0, 0.0), posts_EI=EI):
    """A plane frame: posts 1.2 m high on a slab, a 4x4 on them under an even load down, N/m."""
    plane = Plane()
    tops = []
    for x in places:
        foot, top = plane.node(x, 0.0, fast=True), plane.node(x, 1.2 + STUB)
        plane.bar(foot, top, EA, posts_EI, end=(x, 1.2))
        tops.append(top)
    ends = [plane.node(x, 1.2 + STUB) for x in beam if not any(abs(x - p) < 1e-9 for p in places)]
    line = sorted([*tops, *ends], key=lambda n: plane.at[n][0])
    bars = [plane.bar(a, b, EA, EI, load=load) for a, b in pairwise(line)]
    _, forces = plane.solve()
    return plane, forces, bars


def most_in(plane, forces, bars, load):
    """The greatest moment in N m along bars under an even load: at ends, or where V is nothing."""
    found = []
    for k in bars:
        a, b = (plane.at[n][0] for n in plane.bars[k][:2])
        (_, V, M), (_, _, last) = forces[k]
        x = np.clip(V / load, 0.0, b - a) if load else 0.0
        found += [abs(M), abs(last), abs(M - V * x + load * x**2 / 2.0)]
    return max(found)


def test_beam_on_two_posts_under_its_weight_as_a_portal():
    """Corners that nothing lets turn: w L^2/(6 (2 + k)) there, k = L/h of equal sections.

    Kleinlogel's portal with fixed feet, by a plane frame that counts the rigid half of the beam's
    depth over the posts and their shortening. Sections are looked at every quarter between nodes.
    """
    w = 40.0 * G / 1.8
    plane, forces, bars = on_posts((-0.8, 0.8), w, (-0.9, 0.9))
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", at=(-0.8, 0.0, 0.0), count=2, step=(1.6, 0.0, 0.0)),
        material="southern pine",
        mass=1.0e-9,
    )
    beam = stick("beam", (-0.9, 0, STUB), (0.9, 0, STUB), "posts", mass=40.0)
    found = judged(BASE, posts, beam, wind=0.01)[0]
    assert found["beam"].role == "beam"
    most = most_in(plane, forces, bars, w)
    assert most - w * 0.4**2 / 32.0 <= found["beam"].check.demand * (1 + 1e-6)
    assert found["beam"].check.demand <= most * (1 + 1e-4)
    assert found["posts"].check.demand == pytest.approx(abs(forces[0][1][2]), rel=2e-3)


def test_closed_form_of_the_portal_that_the_plane_frame_is_held_against():
    """Kleinlogel: M_B = w L^2/(6 (2 + k)), k = I_b h/(I_c L), fixed feet; long posts, no stub."""
    plane = Plane()
    a, b, c, d = (
        plane.node(*p, fast=p[1] == 0.0) for p in ((0, 0.0), (0, 2.0), (3, 2.0), (3, 0.0))
    )
    bars = [
        plane.bar(*p, 1.0e12, 1.0e4, load=w) for p, w in (((a, b), 0), ((b, c), 90.0), ((d, c), 0))
    ]
    _, forces = plane.solve()
    corner = 90.0 * 9.0 / (6.0 * (2.0 + 2.0 / 3.0))
    assert forces[bars[1]][0][2] == pytest.approx(corner, rel=1e-6)
    assert forces[0][0][2] == pytest.approx(-corner / 2.0, rel=1e-6)


@pytest.mark.parametrize("ends", [1.2, 1.3])
def test_beam_over_three_posts_in_one_piece_with_them(ends):
    """By a plane frame; between the fast ends of w L^2/12 and the loose ones of w L^2/8."""
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", count=3, step=(1.2, 0, 0), at=(-1.2, 0, 0)),
        material="southern pine",
        mass=1.0e-9,
    )
    beam = stick("beam", (-1.3, 0, STUB), (1.3, 0, STUB), "posts", mass=20.0)
    one = judged(BASE, posts, beam, wind=0.01)[0]["beam"]
    w = 20.0 * G / 2.6
    plane, forces, bars = on_posts((-1.2, 0.0, 1.2), w, (-1.3, 1.3))
    hand = most_in(plane, forces, bars, w)
    assert one.check.demand == pytest.approx(hand, rel=1e-4)
    assert w * 1.2**2 / 12.0 < hand < w * 1.2**2 / 8.0
    assert one.at == pytest.approx(1.3, abs=1e-6)


def test_a_rafter_loads_the_beams_that_it_lies_on_and_their_posts():
    """All that is put on comes down: the feet take all the weight, each beam half of the rafters'.

    Symmetric, so that a quarter of all goes down each post; the beams bend no less than pinned
    ones would between their quarter's fixed ends and no more than simple ones.
    """
    posts = Part(
        "posts",
        Box(FOUR, FOUR, 1.2),
        Place(on="foot", at=(0.8, 0.4, 0.0), mirror=frozenset("xy")),
        material="southern pine",
        mass=1.0e-9,
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
        place=Place(on="beams", at=(-0.9, 0.0, 0.0445), count=4, step=(0.6, 0, 0)),
    )
    forces = forces_in(design(BASE, posts, beams, rafters, wind=0.01))
    k = under(forces)
    pressed = [forces.sections[i].force[k, 0, 0] for i in part_sticks(forces, "posts")]
    assert pressed == pytest.approx([-(2 * 6.0 + 4 * 5.0) * G / 4.0] * 4, rel=1e-6)
    found = {
        one.name: one
        for one in examine(design(BASE, posts, beams, rafters, wind=0.01)).members.judged
    }
    # simple spans of 1.6 m with 0.2 m beyond: the loads at their places, two ends at most fast
    at, P, w = np.array([-0.9, -0.3, 0.3, 0.9]), 5.0 * G / 2.0, 6.0 * G / 2.0
    x = np.linspace(-0.8, 0.8, 1601)
    M = P * 2.0 * (x + 0.8) - P * np.maximum(x[:, None] - at, 0.0).sum(axis=1)
    M += w * ((1.0**2 - x**2) / 2.0 - 0.2)
    assert 0.0 < found["beams"].check.demand < np.abs(M).max() + P * 0.1 + w * 0.02
    assert {one.role for one in found.values()} == {"post", "beam"}


def test_legs_of_a_frame_under_weight_by_hand():
    """A quarter of the weight over the cosine presses each; K_e 2.1, since it may sway along.

    What bends of a leg takes of the load no more than 12 I/(A L^2) over the tangent squared: what
    it gives across itself beside along. N of F'_c A is NDS 3.6.3.
    """
    legs, beam = frame()
    found = judged(BASE, legs, beam, wind=0.01)[0]
    L = sqrt(0.55**2 + 1.6**2)
    one = found["legs"]
    assert one.role == "leg"
    assert one.check.case == "calm"
    across = FOUR**2 / L**2 * (1.6 / 0.55) ** 2
    assert one.forces[0] == pytest.approx(-60.0 * G / 4.0 / (1.6 / L), rel=across)
    # southern pine F_c 850 psi wet 0.8, for good 0.9; E_min 0.9 of wet wood, as stiff for good
    star = FC * 0.8 * 0.9
    fce = 0.822 * EMIN * 0.9 / (2.1 * one.slender * FOUR / 2.1 / FOUR) ** 2
    r = fce / star
    C_P = (1 + r) / 1.6 - sqrt(((1 + r) / 1.6) ** 2 - r / 0.8)
    fc = -one.forces[0] / FOUR**2
    fb = np.abs(one.forces[4:]).sum() / (FOUR**3 / 6.0) / (FB * 0.9) / (1.0 - fc / fce)
    assert one.check.utilization == pytest.approx(
        max(fc / (star * C_P), (fc / (star * C_P)) ** 2 + fb), rel=5e-3
    )
    assert one.slender == pytest.approx(2.1 * L / FOUR, rel=0.02)


def test_a_pair_of_legs_carries_what_pushes_it_in_its_plane_as_an_a_frame():
    """H/(2 sin) in each leg, one drawn and one pressed; hinged (hand case 5): 696 N of 400 N.

    With corners that do not turn their bending takes a share of 12 I/A over (L tan)^2 at most.
    """
    leg = stick(
        "legs",
        (0.6, 0.0, 0.0),
        (0.0, 0.0, 2.0),
        None,
        mass=1.0e-9,
        cut="level",
        place=Place(mirror=frozenset("x")),
    )
    whole = design(leg, wind=0.01)
    push = GivenLoad("push", 400.0, (0.0, 0.0, 2.0), (1.0, 0.0, 0.0), "legs")
    forces = forces_in(replace(whole, tables={**whole.tables, GivenLoad: (push,)}))
    k = under(forces, "push")
    L = hypot(0.6, 2.0)
    middle = len(forces.sections[0].at) // 2
    drawn = sorted(forces.sections[i].force[k, middle, 0] for i in part_sticks(forces, "legs"))
    share = FOUR**2 / L**2 * (2.0 / 0.6) ** 2
    assert pytest.approx(696.02, abs=0.005) == 400.0 / 2.0 / (0.6 / L)
    assert drawn == pytest.approx([-696.02, 696.02], rel=share)


def test_a_knee_braced_arm_by_a_plane_frame():
    """Post 1.2 m, arm out of its top, brace at 45 degrees, all in one piece, 80 kg 0.7 m out.

    The brace begins at the post's side, 0.79 m up, and ends plumb 0.4 m out; it meets the arm from
    where its upper face does, 28.3 mm above its axis, to its end: at the middle of that.
    """
    found = judged(*propped(), wind=0.01)[0]
    plane = Plane()
    knee_up, ends_out, ends_up = 0.79, STUB + 0.4, 1.19
    meets = (ends_out + STUB + 1.2 - 0.02 * sqrt(2.0) - knee_up) / 2.0
    foot, top = plane.node(0.0, 0.0, fast=True), plane.node(0.0, 1.2 + STUB)
    knee, out, tip = (
        plane.node(0.0, knee_up),
        plane.node(meets, 1.2 + STUB),
        plane.node(0.7, 1.2 + STUB),
    )
    plane.bar(foot, knee, EA, EI)
    plane.bar(knee, top, EA, EI, end=(0.0, 1.2))
    order = sorted([top, out, tip], key=lambda n: plane.at[n][0])
    for a, b in pairwise(order):
        plane.bar(a, b, EA, EI)
    thin = FOUR * 0.04
    bends = E * thin * 0.04**2 / 12.0
    ends = (STUB, knee_up), (ends_out, ends_up)
    brace = plane.bar(knee, out, E * thin, bends, *ends)
    plane.load(tip, down=80.0 * G)
    _, forces = plane.solve()
    assert found["brace"].forces[0] == pytest.approx(forces[brace][0][0], rel=1e-4)
    assert found["brace"].role == "brace"
    # it takes the greater part of what the arm alone would take by the post
    alone = judged(*propped()[:-1], wind=0.01)[0]["arm"]
    assert found["arm"].check.demand < alone.check.demand


@pytest.mark.parametrize("push", [300.0, -300.0])
def test_a_portal_pushed_at_its_beam(push):
    """Fixed feet, no rigid stub (hand case 3): 158.51 at the foot, 141.49 at the corner, 235.81 N.

    The design's beam lies on its posts: its axis stands 70 mm, rigid, above them.
    """
    L, h, stub = 1.2, 2.0, 0.07
    side, deep, thick = 0.089, 0.14, 0.038
    Ic, Ib = side**4 / 12.0, thick * deep**3 / 12.0
    bare, (a, b, c, d) = Plane(), range(4)
    for x, z in ((0.0, 0.0), (0.0, h), (L, h), (L, 0.0)):
        bare.node(x, z, fast=z == 0.0)
    for one, other, bends in ((a, b, Ic), (b, c, Ib), (d, c, Ic)):
        bare.bar(one, other, 1.0e12, 7.6e9 * bends)
    for corner in (b, c):
        bare.load(corner, along=150.0)
    _, forces = bare.solve()
    assert np.abs(forces[0, :, 2]) == pytest.approx([158.51, 141.49], abs=0.006)
    assert forces[0, 0, 0] == pytest.approx(235.81, abs=0.006)

    plane = Plane()
    for x, z in ((0.0, 0.0), (0.0, h + stub), (L, h + stub), (L, 0.0)):
        plane.node(x, z, fast=z == 0.0)
    plane.bar(a, b, E * side**2, E * Ic, end=(0.0, h))
    plane.bar(b, c, E * thick * deep, E * Ib)
    plane.bar(d, c, E * side**2, E * Ic, end=(L, h))
    for corner in (b, c):
        plane.load(corner, along=push / 2.0)
    _, forces = plane.solve()

    posts = Part(
        "posts",
        Box(side, side, h),
        Place(on="foot", at=(-L / 2.0, 0.0, 0.0), count=2, step=(L, 0.0, 0.0)),
        material="southern pine",
        mass=1.0e-9,
    )
    beam = Part(
        "beam", Box(L + 0.2, thick, deep), Place(on="posts"), material="southern pine", mass=1.0e-9
    )
    pushes = tuple(
        GivenLoad(name, 150.0, (x, 0.0, 0.05 + h + stub), (np.sign(push), 0.0, 0.0), "beam")
        for name, x in (("near", -L / 2.0), ("far", L / 2.0))
    )
    whole = design(BASE, posts, beam, wind=0.01)
    whole = replace(whole, tables={**whole.tables, GivenLoad: pushes})
    inside = forces_in(whole)
    k = under(inside, "near", "far")
    first = inside.sections[part_sticks(inside, "posts")[0]].force[k]
    assert first[0, 0] == pytest.approx(forces[0, 0, 0], rel=1e-6)
    assert np.abs(first[[0, -1], 5]) == pytest.approx(np.abs(forces[0, :, 2]), rel=1e-6)
    found = {one.name: one for one in examine(whole).members.judged}
    assert found["posts"].check.load == "near and far"
    assert found["posts"].check.demand == pytest.approx(abs(forces[0, 0, 2]), rel=1e-6)
    assert found["beam"].check.demand == pytest.approx(abs(forces[1, 0, 2]), rel=1e-6)
    # how much of it there is does not hang on any stiffness of joints: there are none
    assert found["posts"].check.envelope[1] == pytest.approx(
        found["posts"].check.envelope[0], rel=1e-6
    )
