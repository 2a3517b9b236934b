"""Closed forms of statics, worked by hand with complete inputs: each number to its digits."""

from math import sqrt

import numpy as np
import pytest
from frames import HARD, Frame

from yardfast.statics.solution import MechanismError, solve
from yardfast.statics.system import FIXED

E = 7.6e9
BIG = 1.0e12
POST = 0.089**4 / 12.0
RAIL = 0.089 * 0.038**3 / 12.0


def test_cantilever_on_four_screws():
    """P L^3/3EI + P L^2/k_t with k_t = 4 k s^2; each screw M/(4 s): statics and beam theory."""
    frame = Frame()
    foot, top = frame.node((0, 0, 0)), frame.node((0, 0, 1.8))
    frame.beam(foot, top, BIG, (E * POST, E * POST), BIG, first=(1, 0, 0))
    screws = [
        frame.spring(FIXED, foot, (x, y, 0), (0, 0, 1), 5.5e6)
        for x in (-0.03, 0.03)
        for y in (-0.03, 0.03)
    ]
    frame.spring(FIXED, foot, (0, 0, 0), (1, 0, 0))
    frame.spring(FIXED, foot, (0, 0, 0), (0, 1, 0))
    frame.spring(FIXED, foot, (1, 0, 0), (0, 1, 0))
    found = solve(frame.system, *frame.loads([{top: ((200, 0, 0), (0, 0, 1.8))}]))
    assert np.abs(found.force[0, screws]) == pytest.approx(3000.0, abs=0.5)
    assert found.motion[0, 6 * top] == pytest.approx(0.042512, abs=5e-7)
    assert found.error.max() < 1e-8


def test_rail_over_three_yielding_posts_pushed_at_the_middle_one():
    """R = P (1/2k + c)/(3/2k + c), c = L^3/6EI, posts 3EI/h^3."""
    frame = Frame()
    h, span = 0.914, 0.762
    tops, feet, held = [], [], []
    for k in range(3):
        foot, top = frame.node((k * span, 0, 0)), frame.node((k * span, 0, h))
        frame.beam(foot, top, BIG, (E * POST, E * POST), BIG, first=(0, 1, 0))
        held.append(frame.fixed(foot, (k * span, 0, 0)))
        tops.append(top)
        feet.append(foot)
    rail = [frame.node((k * span, 0, h)) for k in range(3)]
    for k in range(2):
        frame.beam(rail[k], rail[k + 1], BIG, (E * RAIL, BIG), BIG, first=(0, 1, 0))
    meets = [
        frame.spring(t, r, (k * span, 0, h), (0, 1, 0))
        for k, (t, r) in enumerate(zip(tops, rail, strict=True))
    ]
    for r, k in zip(rail, range(3), strict=True):
        frame.spring(tops[k], r, (k * span, 0, h), (0, 0, 1))
    frame.spring(tops[0], rail[0], (0, 0, h), (1, 0, 0))
    frame.spring(FIXED, rail[0], (0, 1, h), (0, 0, 1))
    found = solve(frame.system, *frame.loads([{rail[1]: ((0, 222.4, 0), (span, 0, h))}]))
    took = np.abs(found.force[0, meets])
    assert took[1] == pytest.approx(179.81, abs=0.005)
    assert took[[0, 2]] == pytest.approx(21.293, abs=0.0005)
    assert abs(found.ends[0, 3, 11]) == pytest.approx(16.225, abs=0.0005)
    assert abs(found.ends[0, 1, 5]) == pytest.approx(164.35, abs=0.005)
    assert found.error.max() < 1e-8


def _portal(feet="fixed", turn=None):
    """h 2.0, L 1.2 m; posts 89 x 89, beam 38 x 140 on edge; 300 N at beam level, half a corner."""
    frame = Frame()
    h, L, Ib = 2.0, 1.2, 0.038 * 0.14**3 / 12.0
    foot = [frame.node((x, 0, 0)) for x in (0, L)]
    head = [frame.node((x, 0, h)) for x in (0, L)]
    for a, b in zip(foot, head, strict=True):
        frame.beam(a, b, BIG, (E * POST, E * POST), BIG, first=(1, 0, 0))
    frame.beam(*head, BIG, (E * Ib, BIG), BIG)
    for a, x in zip(foot, (0, L), strict=True):
        if feet == "fixed":
            frame.fixed(a, (x, 0, 0))
        else:
            frame.pinned(a, FIXED, (x, 0, 0))
            frame.flat(a, (x, 0, 0))
        if turn is not None:
            frame.spring(FIXED, a, (x, 0, 1), (1, 0, 0), turn)
    for b, x in zip(head, (0, L), strict=True):
        frame.spring(FIXED, b, (x, 0, h), (0, 1, 0))
    push = {b: ((150, 0, 0), (x, 0, h)) for b, x in zip(head, (0, L), strict=True)}
    return frame, solve(frame.system, *frame.loads([push]))


def test_portal_with_fixed_feet():
    _, found = _portal()
    assert np.abs(found.ends[0, 0, [4, 5]]).max() == pytest.approx(158.51, abs=0.005)
    assert np.abs(found.ends[0, 0, [10, 11]]).max() == pytest.approx(141.49, abs=0.005)
    assert abs(found.ends[0, 0, 0]) == pytest.approx(235.81, abs=0.005)
    assert found.ends[0, 0, 0] == pytest.approx(-found.ends[0, 1, 0], rel=1e-9)


def test_portal_with_pinned_feet():
    _, found = _portal("pinned")
    assert np.abs(found.ends[0, 0, [10, 11]]).max() == pytest.approx(300.0, abs=0.05)
    assert np.abs(found.ends[0, 0, [4, 5]]).max() == pytest.approx(0.0, abs=1e-3)
    assert abs(found.ends[0, 0, 0]) == pytest.approx(500.0, abs=0.05)
    assert found.motion[0, 6 * 2] == pytest.approx(0.011883, abs=5e-7)


def test_portal_on_turning_springs_lies_between_and_moves_evenly():
    corners = [
        np.abs(_portal("pinned", turn)[1].ends[0, 0, [10, 11]]).max()
        for turn in (1e1, 1e3, 1e4, 1e5, 1e6, 1e9)
    ]
    assert (np.diff(corners) < 0.0).all()
    assert corners[0] < 300.0
    assert corners[-1] == pytest.approx(141.49, abs=0.005)


def _knee_braced(pulls=True, big=BIG):
    frame = Frame()
    frame.hard = min(HARD, big)
    h, L, a = 2.0, 1.2, 0.45
    posts, heads = [], []
    for x in (0, L):
        foot, knee, head = (frame.node((x, 0, z)) for z in (0, h - a, h))
        frame.beam(foot, knee, big, (E * POST, E * POST), big, first=(1, 0, 0))
        frame.beam(knee, head, big, (E * POST, E * POST), big, first=(1, 0, 0))
        frame.pinned(foot, FIXED, (x, 0, 0))
        for node, z in ((foot, 0), (knee, h - a), (head, h)):
            frame.flat(node, (x, 0, z))
        posts.append((foot, knee))
        heads.append(head)
    beam = [frame.node((x, 0, h)) for x in (0, a, L - a, L)]
    Ib = 0.038 * 0.14**3 / 12.0
    for k in range(3):
        frame.beam(beam[k], beam[k + 1], big, (E * Ib, BIG), BIG)
    for node, x in zip(beam, (0, a, L - a, L), strict=True):
        frame.flat(node, (x, 0, h))
    for head, node, x in ((heads[0], beam[0], 0), (heads[1], beam[3], L)):
        frame.pinned(node, head, (x, 0, h))
    braces = []
    for (_, knee), x, node, along in ((posts[0], 0, beam[1], a), (posts[1], L, beam[2], L - a)):
        low, high = frame.node((x, 0, h - a)), frame.node((along, 0, h))
        braces.append(frame.beam(low, high, big, (1e3, 1e3), 1e3, first=(0, 1, 0)))
        frame.pinned(low, knee, (x, 0, h - a))
        if pulls or x:
            frame.pinned(high, node, (along, 0, h))
        for one, at in ((low, (x, 0, h - a)), (high, (along, 0, h))):
            frame.flat(one, at)
    return frame, heads, braces


def test_knee_braced_bent_on_pinned_feet():
    """Post moment at the knee H/2 (h - a), brace H h sqrt2/(2 a), foot vertical H h/L."""
    frame, heads, braces = _knee_braced()
    case = {b: ((150, 0, 0), (x, 0, 2.0)) for b, x in zip(heads, (0, 1.2), strict=True)}
    found = solve(frame.system, *frame.loads([case]))
    assert np.abs(found.ends[0, 0, [10, 11]]).max() == pytest.approx(232.5, abs=0.05)
    assert np.abs(found.ends[0, braces, 0]) == pytest.approx(300 * 2 * sqrt(2) / 0.9, abs=0.005)
    assert found.ends[0, braces[0], 0] * found.ends[0, braces[1], 0] < 0.0
    assert abs(found.ends[0, 0, 0]) == pytest.approx(500.0, abs=0.05)


def test_knee_braced_bent_without_the_brace_that_pulls_is_a_mechanism():
    # a brace that hangs from its knee alone, and a corner that is hinged: both may move
    frame, heads, _ = _knee_braced(pulls=False, big=1.0e8)
    case = {b: ((150, 0, 0), (x, 0, 2.0)) for b, x in zip(heads, (0, 1.2), strict=True)}
    with pytest.raises(MechanismError):
        solve(frame.system, *frame.loads([case]))


def test_aframe():
    frame = Frame()
    feet = [frame.node((x, 0, 0)) for x in (-0.6, 0.6)]
    tops = [frame.node((0, 0, 2.0)) for _ in range(2)]
    legs = [
        frame.beam(a, b, BIG, (1e4, 1e4), 1e4, first=(0, 1, 0))
        for a, b in zip(feet, tops, strict=True)
    ]
    for a, x in zip(feet, (-0.6, 0.6), strict=True):
        frame.pinned(a, FIXED, (x, 0, 0))
    frame.pinned(tops[1], tops[0], (0, 0, 2.0))
    for node in (*feet, *tops):
        frame.flat(node, frame.nodes[node])
    found = solve(frame.system, *frame.loads([{tops[0]: ((400, 0, 0), (0, 0, 2.0))}]))
    assert np.abs(found.ends[0, legs, 0]) == pytest.approx(696.02, abs=0.005)
    vertical = np.abs(found.ends[0, legs, 0]) * 2.0 / np.hypot(0.6, 2.0)
    assert vertical == pytest.approx(666.67, abs=0.005)


ON_FIVE = {
    0.16: (40, 120, 200, 280, 360),
    0.20: (0, 100, 200, 300, 400),
    0.25: (0, 25, 175, 325, 475),
    0.30: (0, 0, 83.33, 333.33, 583.33),
    0.39: (0, 0, 0, 50, 950),
}


@pytest.mark.parametrize("stiffness", [2e4, 2e6, 2e9])
def test_rigid_block_on_five_springs_that_only_press(stiffness):
    """1,000 N at e: forces independent of k, none from e = 0.4 on."""
    frame = Frame()
    block = frame.node((0, 0, 0))
    five = [
        frame.spring(FIXED, block, (x, 0, 0), (0, 0, 1), stiffness, True)
        for x in (-0.4, -0.2, 0.0, 0.2, 0.4)
    ]
    frame.flat(block, (0, 0, 0))
    frame.spring(FIXED, block, (0, 0, 0), (1, 0, 0))
    places = [*ON_FIVE, 0.41, 0.6]
    found = solve(frame.system, *frame.loads([{block: ((0, 0, -1000), (e, 0, 0))} for e in places]))
    for n, e in enumerate(ON_FIVE):
        assert -found.force[n, five] == pytest.approx(ON_FIVE[e], abs=0.005)
    assert found.lost.tolist() == [False] * 5 + [True] * 2
    if stiffness == 2e6:
        assert found.motion[2, 2] + 0.4 * found.motion[2, 4] == pytest.approx(0.0625e-3, abs=5e-8)


@pytest.mark.parametrize(("rows", "pull"), [(4, 2297.0), (8, 2166.4), (16, 2164.0)])
def test_one_screw_in_the_middle_of_a_square_foot(rows, pull):
    """89 mm, pressed 100 N, moment 80 N m: rows of equal tributary width; screw 6e6 N/m."""
    frame = Frame()
    foot = frame.node((0, 0, 0))
    at = (np.arange(rows) + 0.5) / rows * 0.089 - 0.0445
    for x in at:
        frame.spring(FIXED, foot, (x, 0, 0), (0, 0, 1), 27e6 / rows, True)
    screw = frame.spring(FIXED, foot, (0, 0, 0), (0, 0, 1), 6e6)
    frame.flat(foot, (0, 0, 0))
    frame.spring(FIXED, foot, (0, 0, 0), (1, 0, 0))
    case = {foot: ((0, 0, -100), (0.8, 0, 0))}
    found = solve(frame.system, *frame.loads([case]))
    assert found.force[0, screw] == pytest.approx(pull, abs=0.05)


def test_springs_at_the_corners_alone_pull_too_little():
    frame = Frame()
    foot = frame.node((0, 0, 0))
    for x in (-0.0445, 0.0445):
        frame.spring(FIXED, foot, (x, 0, 0), (0, 0, 1), 13.5e6, True)
    screw = frame.spring(FIXED, foot, (0, 0, 0), (0, 0, 1), 6e6)
    frame.flat(foot, (0, 0, 0))
    frame.spring(FIXED, foot, (0, 0, 0), (1, 0, 0))
    found = solve(frame.system, *frame.loads([{foot: ((0, 0, -100), (0.8, 0, 0))}]))
    assert found.force[0, screw] == pytest.approx(1697.8, abs=0.05)


def test_prying():
    """1,000 N at the heel, 25 mm from the bolt and 60 mm from the toe: T = 1,000 * 60/35."""
    frame = Frame()
    bracket = frame.node((0, 0, 0))
    toe = frame.spring(FIXED, bracket, (0.06, 0, 0), (0, 0, 1), HARD, True)
    bolt = frame.spring(FIXED, bracket, (0.025, 0, 0), (0, 0, 1), 1e8)
    frame.flat(bracket, (0, 0, 0))
    frame.spring(FIXED, bracket, (0, 0, 0), (1, 0, 0))
    found = solve(frame.system, *frame.loads([{bracket: ((0, 0, 1000), (0, 0, 0))}]))
    assert found.force[0, bolt] == pytest.approx(1714.3, abs=0.05)
    assert -found.force[0, toe] == pytest.approx(714.3, abs=0.05)


@pytest.mark.parametrize("times", [1.0, 3.0, 1.0 / 3.0])
def test_rigid_lateral_group(times):
    """J 0.0052 m2; the worst of four screws 1,114.27 N, whatever their stiffness."""
    frame = Frame()
    plate = frame.node((0, 0, 0))
    places = [(x, y, 0) for x in (-0.02, 0.02) for y in (-0.03, 0.03)]
    pairs = [
        [frame.spring(FIXED, plate, at, way, 1e6, kind="lateral") for way in np.eye(3)[:2]]
        for at in places
    ]
    for off in ((0, 0, 0), (1, 0, 0), (0, 1, 0)):
        frame.spring(FIXED, plate, off, (0, 0, 1))
    loads = frame.loads([{plate: ((0, 500, 0), (0.3, 0, 0))}])
    found = solve(frame.system, *loads, ({"lateral": times},))
    took = np.abs(np.array([found.force[0, pair] for pair in pairs]))
    worst = took[np.hypot(*took.T).argmax()]
    assert worst == pytest.approx((865.38, 701.92), abs=0.005)
    assert np.hypot(*worst) == pytest.approx(1114.27, abs=0.005)


def test_lateral_group_with_one_screw_not_yet_bearing():
    places = [(x, y, 0) for x in (-0.02, 0.02) for y in (-0.03, 0.03)]
    most = []
    for slack in range(4):
        frame = Frame()
        plate = frame.node((0, 0, 0))
        pairs = [
            [frame.spring(FIXED, plate, at, way, 1e6) for way in np.eye(3)[:2]]
            for k, at in enumerate(places)
            if k != slack
        ]
        for off in ((0, 0, 0), (1, 0, 0), (0, 1, 0)):
            frame.spring(FIXED, plate, off, (0, 0, 1))
        found = solve(frame.system, *frame.loads([{plate: ((0, 500, 0), (0.3, 0, 0))}]))
        most.append(max(np.hypot(*found.force[0, pair]) for pair in pairs))
    assert min(most) == pytest.approx(1819, abs=0.5)
    assert max(most) == pytest.approx(1843, abs=0.5)


def test_rigid_post_in_ground_that_stiffens_with_depth():
    """n_h z per m of depth, 200 N at 1.2 m, 0.75 m deep: turns at A/B, moment 8.5 % higher."""
    frame = Frame()
    post = frame.node((0, 0, 0))
    n_h, d, many = 4e6, 0.75, 3000
    depth = (np.arange(many) + 0.5) / many * d
    soil = [frame.spring(FIXED, post, (0, 0, -z), (1, 0, 0), n_h * z * d / many) for z in depth]
    frame.spring(FIXED, post, (0, 0, 0), (0, 0, 1))
    for off in ((0, 0, 0), (1, 0, 0), (0, 0, 1)):
        frame.spring(FIXED, post, off, (0, 1, 0))
    found = solve(frame.system, *frame.loads([{post: ((200, 0, 0), (0, 0, 1.2))}]))
    u, turn = found.motion[0, 0], found.motion[0, 4]
    assert u == pytest.approx(5.01e-3, abs=5e-6)
    assert turn == pytest.approx(9.67e-3, abs=5e-6)
    assert u / turn == pytest.approx(0.5184, abs=5e-5)
    assert 200.0 / (u + 1.2 * turn) == pytest.approx(12035, rel=5e-5)
    zero = int(np.flatnonzero(200.0 - np.cumsum(found.force[0, soil]) <= 0.0)[0])
    assert depth[zero] == pytest.approx(0.1583, abs=3e-4)
    at = depth[zero] + d / many / 2.0
    moment = (
        200.0 * (1.2 + at) - (found.force[0, soil][: zero + 1] * (at - depth[: zero + 1])).sum()
    )
    assert moment == pytest.approx(260.43, abs=0.005)


@pytest.mark.parametrize(
    ("push", "stands"), [(100, True), (149.9, True), (150.1, False), (300, False)]
)
def test_free_standing_portal(push, stands):
    """500 N, pinned feet merely resting: the windward foot leaves at H = W L/2h = 150 N."""
    frame = Frame()
    h, L, Ib = 2.0, 1.2, 0.038 * 0.14**3 / 12.0
    foot = [frame.node((x, 0, 0)) for x in (0, L)]
    head = [frame.node((x, 0, h)) for x in (0, L)]
    for a, b in zip(foot, head, strict=True):
        frame.beam(a, b, BIG, (E * POST, E * POST), BIG, first=(1, 0, 0))
    frame.beam(*head, BIG, (E * Ib, BIG), BIG)
    rests = []
    for a, x in zip(foot, (0, L), strict=True):
        rests.append(frame.spring(FIXED, a, (x, 0, 0), (0, 0, 1), 1e7, True))
        frame.spring(FIXED, a, (x, 0, 0), (1, 0, 0))
        frame.flat(a, (x, 0, 0))
    case = {b: ((push / 2.0, 0, -250), (x, 0, h)) for b, x in zip(head, (0, L), strict=True)}
    found = solve(frame.system, *frame.loads([case]))
    assert bool(found.lost[0]) is not stands
    if stands:
        expected = 250 - push * h / L, 250 + push * h / L
        assert -found.force[0, rests] == pytest.approx(expected, abs=0.05)
