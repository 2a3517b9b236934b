"""Plates that lie flat, worked a second way; what stands on them; and what is refused."""

from math import pi

import numpy as np
import pytest
from designs import design
from hypothesis import given, settings
from hypothesis import strategies as st

from yardfast.checks.examination import examine
from yardfast.checks.plates.carried_plate import Carried
from yardfast.checks.plates.decks import rim_line
from yardfast.checks.plates.flat_plates import stands_at
from yardfast.checks.stated.assumed_parts import OfParts, assumed_of_strength
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.weight import Weight
from yardfast.design.structure import build_structure
from yardfast.loads.given import GivenLoad
from yardfast.units.frozen import replace

BASE = Part("foot", Plate(Rectangle(2.4, 2.4), 0.05), material="concrete")
PLY = "softwood plywood"
TOWER = Part("tower", Shell(8, 0.5, 0.5, 0.8, 0.018), Place(on="foot"), material=PLY)
BOX = Part("box", Box(1.0, 0.6, 0.4, 0.018, frozenset({"top"})), Place(on="foot"), material=PLY)


def lid(plan, thickness=0.018, on="tower", material=PLY, **place):
    return Part("lid", Plate(plan, thickness), Place(on=on, **place), material=material)


def judged(*parts, turn=0.0, **site):
    found = examine(design(*parts, turn=turn, **{"wind": 30.0, **site}))
    return {one.name: one for one in found.members.judged}, {
        one.name: one.why for one in found.members.not_judged
    }


def q(wind=30.0):
    return 0.5 * 1.226 * wind**2


def local(h, a, b):
    """Small level roof, a by b m, h up (ASCE/SEI 7-16 Fig. 30.3-2A, -2.3 from memory, -3.2).

    Edge zone 0.6 h deep; in each corner an angle of two arms, 0.6 h by 0.2 h.
    """
    long, deep = (np.minimum(share * h, np.array([a, b]) / 2.0) for share in (0.6, 0.2))
    corners = 4.0 * (long[0] * deep[1] + deep[0] * long[1] - deep[0] * deep[1])
    middle = max(a - 1.2 * h, 0.0) * max(b - 1.2 * h, 0.0)
    return 2.3 + 0.9 * corners / (a * b - middle)


def test_lid_on_a_box_by_hand():
    """Local suction and 0.18 from within over the inside of the box, along the grain or across it.

    0.964 by 0.564 m: 0.964^2/845 is less than 0.564^2/225, so the longer way is taken.
    """
    one = judged(BASE, BOX, lid(Rectangle(1.0, 0.6), on="box"))[0]["lid"]
    assert (one.role, one.where) == ("lid", "between")
    pressure = (local(0.468, 1.0, 0.6) + 0.18) * q()
    assert one.check.demand == pytest.approx(pressure * 0.6 * 0.964**2 / 8.0, rel=1e-6)


def test_what_stands_out_takes_the_greater_suction():
    """0.2 m beyond the box all round; at the corners it is farther: 0.2 times root 2.

    Local suction, which on an overhang has the pressure beneath in it: more than 1.3 and 0.8.
    """
    one = judged(BASE, BOX, lid(Rectangle(1.4, 1.0), on="box"))[0]["lid"]
    assert one.where == "beyond"
    out = 0.2 * np.sqrt(2.0)
    assert one.check.demand == pytest.approx(
        local(0.468, 1.4, 1.0) * q() * 0.6 * out**2 / 2.0, rel=1e-6
    )


def test_floor_over_two_beams_by_hand():
    """Wind gets beneath it: 3.6 q from beam to beam, w s^2/8, or its weight and 2.4 q down.

    ASCE/SEI 7-16 Fig. 30.7-1 zone 3, level (memory)."""
    beams = Part(
        "beams",
        Box(1.2, 0.09, 0.09),
        Place(on="foot", at=(0.0, 0.35, 0.0), mirror=frozenset("y")),
        material="southern pine",
    )
    sheet = replace(lid(Rectangle(1.2, 0.79), on="beams"), mass=10.0)
    one = judged(BASE, beams, sheet)[0]["lid"]
    gap, weight = 0.7 - 0.09, 10.0 * 9.80665 / (1.2 * 0.79)
    up, down = 3.6 * q() * gap**2 / 8.0, (2.4 * q() + weight) * gap**2 / 8.0
    assert one.role == "deck"
    assert one.check.demand == pytest.approx(1.2 * max(up, down), rel=1e-6)
    boards = lid(Rectangle(1.2, 0.79), 0.0254, on="beams", material="western redcedar")
    two = judged(BASE, beams, boards)[0]["lid"]
    assert two.check.unit == "N*m"
    # stud grade of western cedars, 550 psi, wet below 1,150 psi (NDS Supplement 4A, memory)
    S = 1.2 * 0.0254**2 / 6.0
    assert two.check.capacity == pytest.approx(S * 550.0 * 6894.757 * 1.6, rel=1e-5)


def test_a_floor_under_a_body_is_one_more_of_its_walls():
    """1.3 q beneath and 0.6 q of the air inside an open-topped body draw it down: 1.9 q w s^2/8.

    Coefficients of single panels of walls (judgements after ASCE/SEI 7 Fig. 30.3-1).
    """
    beams = Part(
        "beams",
        Box(1.2, 0.09, 0.09),
        Place(on="foot", at=(0.0, -0.35, 0.0), count=2, step=(0.0, 0.7, 0.0)),
        material="southern pine",
    )
    deck = replace(lid(Rectangle(1.2, 0.79), on="beams"), place=Place(at=(0.0, 0.0, 0.14)))
    deck = replace(deck, mass=1e-6)
    house = Part(
        "house", Box(1.18, 0.78, 0.4, 0.018, frozenset({"top"})), Place(on="lid"), density=1.0
    )
    one = judged(BASE, beams, deck, house)[0]["lid"]
    gap = 0.7 - 0.09
    assert one.check.demand == pytest.approx(1.9 * q() * 1.2 * gap**2 / 8.0, rel=1e-2)


def test_what_stands_round_the_rim_by_sums_round_the_ring():
    """N/(2 pi r) and M cos/(pi r2) round a ring: they add up to N and M."""
    r, R, N, M = 0.3, 0.2, 120.0, 25.0
    angle = (np.arange(3600) + 0.5) * 2.0 * pi / 3600
    line = N / (2.0 * pi * r) + M * np.cos(angle) / (pi * r**2)
    each = line * r * 2.0 * pi / 3600
    assert each.sum() == pytest.approx(N)
    assert (each * r * np.cos(angle)).sum() == pytest.approx(M)
    carried = Carried(M, N, 0.0, 2.0 * r, np.zeros(2), r - R)
    assert rim_line(carried, N, M, 2.0 * R) == pytest.approx(line.max() * r / R, rel=1e-5)


def test_a_lantern_in_the_middle_bends_the_lid_more():
    plain = judged(BASE, TOWER, lid(Regular(8, 0.5)))[0]["lid"]
    lantern = Part("lantern", Shell(8, 0.2, 0.2, 0.5, 0.012), Place(on="lid"), material=PLY)
    tall = replace(lantern, shape=Shell(8, 0.2, 0.2, 0.9, 0.012))
    one, two = (judged(BASE, TOWER, lid(Regular(8, 0.5)), x)[0]["lid"] for x in (lantern, tall))
    assert plain.check.utilization < one.check.utilization < two.check.utilization


def test_a_body_whose_wall_stands_over_the_wall_below_bends_nothing():
    """Its wall stands on the wall: nothing comes onto the opening, so nothing changes at all."""
    over = Part("upper", Shell(8, 0.5, 0.5, 0.6, 0.018), Place(on="lid"), material=PLY)
    cap = Part("cap", Plate(Regular(8, 0.5), 0.018), Place(on="upper"), material=PLY)
    plain, topped = (
        judged(BASE, TOWER, lid(Regular(8, 0.5)), *more)[0]["lid"] for more in ((), (over, cap))
    )
    assert topped.check.utilization == pytest.approx(plain.check.utilization, rel=1e-9)


def test_a_roof_round_the_rim_pulls_on_the_eaves():
    roof = Part("roof", Cone(8, 0.7, 0.3, 0.012), Place(on="lid"), material=PLY)
    bare, roofed = (
        judged(BASE, TOWER, lid(Regular(8, 0.72)), *more)[0]["lid"] for more in ((), (roof,))
    )
    assert roofed.where == "beyond"
    assert roofed.check.utilization > bare.check.utilization


def test_a_heavy_thing_in_the_middle_counts_in_calm_air():
    """Weight alone counts as much more as wood holds less for long: 1.6/0.9 (NDS 2.3.2)."""
    bell = Part("bell", Weight(), Place(on="lid"), mass=60.0)
    one = judged(BASE, TOWER, lid(Regular(8, 0.5)), bell, wind=1.0)[0]["lid"].check
    span = 0.464
    assert one.dead > 0.0
    assert one.demand >= 60.0 * 9.80665 / 2.0 * span / 2.0 * 1.6 / 0.9


@pytest.mark.parametrize(
    ("parts", "why"),
    [
        ((TOWER, lid(Regular(8, 0.5), at=(0.0, 0.0, 0.02))), "held otherwise"),
        ((TOWER, Part("lid", Plate(Regular(8, 0.5), 0.018, hole=0.1), Place(on="tower"),
                      material=PLY)), "held otherwise"),
        ((TOWER, Part("lid", Plate(Regular(8, 0.5), 0.018, solidity=0.5), Place(on="tower"),
                      material=PLY)), "lattice"),
        ((TOWER, lid(Regular(8, 0.5), 0.003)), "no values"),
        ((TOWER, lid(Regular(8, 0.8), 0.02, material="western redcedar")), "across grain"),
    ],
    ids=["across a gap", "a hole", "slats of plywood", "too thin", "boards all round"],
)  # fmt: skip
def test_what_is_not_plain_is_refused(parts, why):
    assert judged(BASE, *parts)[1]["lid"] == why


def test_plates_on_the_ground_and_on_something_solid_are_not_told():
    cap = Part("cap", Plate(Rectangle(0.1, 0.1), 0.02), Place(on="post"), material=PLY)
    post = Part("post", Box(0.1, 0.1, 0.9), Place(on="foot"), material="redwood")
    found, refused = judged(BASE, post, cap)
    assert {"foot", "cap"}.isdisjoint({*found, *refused})


def test_a_lid_on_a_ring_of_lumber_spans_its_opening():
    ring = Part("ring", Frame(Regular(6, 0.6), 0.09, 0.04), Place(on="tower"), material="redwood")
    one = judged(BASE, TOWER, ring, lid(Regular(6, 0.6), on="ring"))[0]["lid"]
    across = (0.6 - 0.18) / np.cos(pi / 6.0)
    width = 0.6
    pressure = one.check.demand * 8.0 / (width * across**2 * q())
    assert pressure == pytest.approx(local(0.908, 0.6, 0.6 / np.cos(pi / 6.0)) + 0.18, rel=1e-3)


@pytest.mark.slow
@settings(max_examples=15, deadline=None)
@given(
    st.sampled_from([4, 6, 8, 12, 0]),
    st.floats(0.3, 0.9),
    st.floats(1.0, 1.4),
    st.sampled_from([(0.0095, 0.012), (0.012, 0.0155), (0.0155, 0.018)]),
    st.floats(0.0, 6.28),
)
def test_thicker_is_never_weaker_larger_never_stronger_and_turned_is_the_same(
    sides, across, out, sheets, turn
):
    def use(thickness, size=1.0, turn=0.0):
        body = Part(
            "tower", Shell(sides, across * size, across * size, 0.5, 0.018), Place(on="foot"),
            material=PLY,
        )  # fmt: skip
        top = lid(Regular(sides, across * out * size), thickness)
        found = judged(BASE, body, top, turn=turn)[0]["lid"]
        return found.check.utilization

    thin, thick = (use(thickness) for thickness in sheets)
    assert thick <= thin * (1.0 + 1e-9)
    assert use(sheets[0], 1.3) >= thin * (1.0 - 1e-9)
    assert use(sheets[0], turn=turn) == pytest.approx(thin, rel=1e-6)


def test_a_deck_rests_on_every_beam_beneath_it_whichever_it_is_said_to_stand_on():
    def beam(name, y):
        shape = Box(1.2, 0.09, 0.09)
        return Part(name, shape, Place(on="foot", at=(0.0, y, 0.0)), material="southern pine")

    deck = lid(Rectangle(1.2, 0.79), on="one", at=(0.0, 0.35, 0.0))
    two = judged(BASE, beam("one", -0.35), beam("other", 0.35), deck)[0]["lid"]
    assert (two.role, two.where) == ("deck", "between")


def test_what_stands_on_a_lid_counts_whatever_it_is_placed_by():
    top = 0.05 + 0.8 + 0.018
    named = Part("lantern", Shell(8, 0.2, 0.2, 0.5, 0.012), Place(on="lid"), material=PLY)
    placed = replace(named, place=Place(at=(0.0, 0.0, top)))
    one, two = (judged(BASE, TOWER, lid(Regular(8, 0.5)), x)[0]["lid"] for x in (named, placed))
    assert two.check.utilization == pytest.approx(one.check.utilization, rel=1e-6)


def test_weight_tires_wood_and_not_steel():
    """P s/4 + w s^2/8 on a strip 0.3 as wide as the opening, of steel half: P 60 kg, the lid 5 kg.

    Wood is stronger along its grain, over the corners, and holds 0.9/1.6 of it for good (NDS 2018
    Table 2.3.2); steel is as strong over the flats and takes the wind's 1.0 q down as well.
    """
    bell = Part("bell", Weight(), Place(on="lid"), mass=60.0)
    wood, steel = (
        judged(BASE, TOWER, replace(one, mass=5.0), bell, wind=1.0)[0]["lid"].check
        for one in (lid(Regular(8, 0.5)), lid(Regular(8, 0.5), 0.004, material="steel"))
    )
    flats, area = 0.5 - 2.0 * 0.018, 2.0 * (np.sqrt(2.0) - 1.0) * 0.5**2
    P, w = 60.0 * 9.80665, 5.0 * 9.80665 / area

    def moment(span, pressure, share=0.5):
        return P * span / 4.0 + pressure * share * span * span**2 / 8.0

    corners = flats / np.cos(pi / 8.0)
    assert wood.demand == pytest.approx(moment(corners, w, 0.3) * 1.6 / 0.9, rel=1e-6)
    assert steel.demand == pytest.approx(moment(flats, w + 1.0 * q(1.0)), rel=1e-6)


def test_a_weight_on_what_stands_out_is_told_with_its_own_factor_and_deflection():
    """20 kg 0.1 m beyond the box, in hardly any wind; the lid weighs 14 kg on 1.4 by 1.0 m.

    They bend a strip 0.2 m wide that stands out 0.2 root 2 m at its corner: P a + w o^2/2, times
    1.6/0.9 for weight alone; its tip sinks by P a^2 (3 o - a)/(6 E I) + w o^4/(8 E I) (Wood
    Handbook Table 9-1). E I is 0.85 of the dry one (APA D510, memory).
    """
    plate = replace(lid(Rectangle(1.4, 1.0), on="box"), mass=14.0)
    bird = Part("bird", Weight(), Place(on="lid", at=(0.6, 0.0, 0.0)), mass=20.0)
    one = judged(BASE, BOX, plate, bird, wind=5.0 / 3.6)[0]["lid"]
    g, a, o = 9.80665, 0.1, 0.2 * np.sqrt(2.0)
    P, w = 20.0 * g, 14.0 * g / 1.4 * 0.2
    assert (one.where, one.check.dead) == ("beyond", 1.0)
    assert one.check.demand == pytest.approx((P * a + w * o**2 / 2.0) * 1.6 / 0.9, rel=1e-5)
    EI = 0.85 * one.stuff.stiffness[1] * 0.2
    sinks = P * a**2 * (3.0 * o - a) / (6.0 * EI) + w * o**4 / (8.0 * EI)
    assert one.deflection == pytest.approx(sinks, rel=1e-5)


def test_wind_that_lifts_what_stands_out_bends_it_by_itself():
    """Local q on 0.2 root 2 m: w o^2/2, its tip rises by w o^4/(8 E I); no weight is told."""
    one = judged(BASE, BOX, lid(Rectangle(1.4, 1.0), on="box"))[0]["lid"]
    w, o = local(0.468, 1.4, 1.0) * q() * 0.6, 0.2 * np.sqrt(2.0)
    assert one.check.dead == 0.0
    EI = 0.85 * one.stuff.stiffness[1] * 0.6
    assert one.deflection == pytest.approx(w * o**4 / (8.0 * EI), rel=1e-6)


INCH, PSI, POUND = 0.0254, 6894.757, 0.45359237
CHEST = Part(
    "box",
    Box(72 * INCH, 12 * INCH, 15 * INCH, 0.75 * INCH, frozenset({"top"})),
    Place(on="foot"),
    material=PLY,
)
CEDAR = lid(Rectangle(72 * INCH, 12 * INCH), 1.0 * INCH, "box", "western redcedar")


@pytest.mark.parametrize(("wide", "use"), [(0.3, 1.7), (0.01, 3.1)], ids=["a chest", "a stone"])
def test_a_lid_of_boards_shares_nothing_between_them_by_hand(wide, use):
    """1 in cedar, 72 by 12 in on a box of 3/4 in, 140 lb in its middle: P s/4 + w s^2/8.

    Over S F'_b, stud grade of western cedars 550 psi, C_D 1.6 (memory). On all of the opening's
    other side 1.7, on one board of 5 1/2 in 3.1; what stays asks 1.6/0.9 times that (NDS 2.3.2).
    Half of the span, 35 in, was taken once.
    """
    stone = Part("stone", Box(wide, 12 * INCH, 0.2), Place(on="lid"), mass=140 * POUND)
    one = judged(BASE, CHEST, replace(CEDAR, mass=8.0), stone, wind=0.1)[0]["lid"].check
    span, strip = 70.5 * INCH, min(max(wide, 5.5 * INCH), 10.5 * INCH)
    P, w = 140 * POUND * 9.80665, 8.0 * 9.80665 / (72 * 12 * INCH**2)
    moment = P * (span - wide) / 4.0 + w * strip * span**2 / 8.0
    point = P * span / 4.0 + w * strip * span**2 / 8.0
    holds = strip * INCH**2 / 6.0 * 550 * PSI * 1.6
    assert point / holds == pytest.approx(use, abs=0.05)
    assert one.utilization == pytest.approx(moment / holds * 1.6 / 0.9, rel=1e-4)


def under(*parts, load, **site):
    whole = design(*parts, **site)
    found = examine(replace(whole, tables={**whole.tables, GivenLoad: (load,)}))
    return {one.name: one for one in found.members.judged}


def test_somebody_on_a_lid_of_boards_sits_on_one_of_them():
    """140 lb in the middle of the same lid: C_D 1.0, and of the opening's other side 2.6."""
    top = 0.05 + 16 * INCH
    sits = GivenLoad("somebody", 140 * POUND * 9.80665, (0.0, 0.0, top), (0.0, 0.0, -1.0), "lid")
    one = under(BASE, CHEST, replace(CEDAR, mass=1e-6), load=sits, wind=0.1)["lid"]
    moment = 140 * POUND * 9.80665 * 70.5 * INCH / 4.0
    all_of_it, board = (wide * INCH**3 / 6.0 * 550 * PSI for wide in (10.5, 5.5))
    assert moment / all_of_it == pytest.approx(2.6, abs=0.05)
    assert (one.loads, one.check.load) == (("somebody",), "somebody")
    assert one.check.utilization == pytest.approx(moment / board, rel=1e-4)


def test_somebody_on_a_sheet_is_carried_by_what_is_there_by_hand():
    """A narrow opening caps the strip along the grain, 1.764 m long, at its other side, 0.264 m.

    P s/4 over it, at C_D 1.0 for the 1.6 of wind (NDS 2018 Table 2.3.2); of 18 mm plywood, in
    strips so narrow 0.575 of 845 lbf-in/ft (APA D510, memory). Across the grain: 0.079 m, 225.
    """
    narrow = replace(BOX, shape=Box(1.8, 0.3, 0.4, 0.018, frozenset({"top"})))
    top = replace(lid(Rectangle(1.8, 0.3), on="box"), mass=1.0e-6)
    sits = GivenLoad("somebody", 600.0, (0.0, 0.0, 0.47), (0.0, 0.0, -1.0), "lid")
    one = under(BASE, narrow, top, load=sits, wind=0.1)["lid"].check
    ways = {
        600.0 * 1.764 / 4.0: 0.264 * 845.0 * (0.5 + (0.264 / INCH - 8) / 32),
        600.0 * 0.264 / 4.0: 0.0792 * 225.0 * 0.5,
    }
    moment = min(ways, key=lambda each: each / ways[each])
    assert one.demand == pytest.approx(moment * 1.6, rel=1e-5)
    per_metre = 4.4482216 * INCH / 0.3048 * 1.6 * 0.75
    assert one.capacity == pytest.approx(ways[moment] * per_metre, rel=1e-3)


def test_a_deck_in_one_piece_over_three_beams_by_hand():
    """w s^2/8 over the middle beam; somebody in one bay 13/64 P s, on 0.3 of the span (Design Aid
    6, figure 29; the load in the middle of one of two spans)."""
    beams = Part(
        "beams",
        Box(1.2, 0.09, 0.09),
        Place(on="foot", at=(0.0, -0.6, 0.0), count=3, step=(0.0, 0.6, 0.0)),
        material="southern pine",
    )
    deck = replace(
        lid(Rectangle(1.2, 1.29), on="beams", at=(0.0, 0.6, 0.0)), place=Place(at=(0.0, 0.0, 0.14))
    )
    deck = replace(deck, mass=1e-6)
    gap = 0.6 - 0.09
    calm = judged(BASE, beams, deck)[0]["lid"]
    assert (calm.role, calm.check.demand) == ("deck", pytest.approx(3.6 * q() * 1.2 * gap**2 / 8))
    sits = GivenLoad("somebody", 900.0, (0.0, 0.3, 0.16), (0.0, 0.0, -1.0), "lid")
    one = under(BASE, beams, deck, load=sits, wind=0.1)["lid"]
    assert one.check.demand == pytest.approx(13 / 64 * 900.0 * gap * 1.6, rel=1e-6)


@pytest.mark.parametrize("x", [-0.3, 0.0, 0.2])
def test_a_weight_off_the_middle_is_carried_where_it_stands(x):
    """P a b/s: the way along the grain, over 0.964 m, or across it."""
    bird = Part("bird", Weight(), Place(on="lid", at=(x, 0.1, 0.0)), mass=40.0)
    top = replace(lid(Rectangle(1.0, 0.6), on="box"), mass=1.0e-6)
    one = judged(BASE, BOX, top, bird, wind=0.1)[0]["lid"].check
    P, a = 40.0 * 9.80665, 0.964 / 2.0 + x
    assert one.demand == pytest.approx(P * a * (0.964 - a) / 0.964 * 1.6 / 0.9, rel=1e-5)


def test_it_is_told_where_the_way_of_the_grain_decides():
    """Turned, the deck over two beams bends along its grain, 845 of 225 lbf-in/ft as strong."""
    beams = Part(
        "beams",
        Box(1.2, 0.09, 0.09),
        Place(on="foot", at=(0.0, 0.35, 0.0), mirror=frozenset("y")),
        material="southern pine",
    )
    deck = lid(Rectangle(1.2, 0.79), on="beams")
    uses = {
        wind: judged(BASE, beams, deck, wind=wind)[0]["lid"] for wind in (20.0, 60.0, 80.0, 140.0)
    }
    for one in uses.values():
        turned = one.check.utilization * 225.0 / 845.0
        assert one.by_grain == ((one.check.utilization <= 1.0) != (turned <= 1.0))
    assert {one.by_grain for one in uses.values()} == {False, True}
    fails = examine(design(BASE, beams, deck, wind=next(w for w, u in uses.items() if u.by_grain)))
    said = [one for one in assumed_of_strength(fails) if one.what is OfParts.FACE_GRAIN_TURNED]
    assert len(said) == 1
    assert said[0].slots["deciding"] == ("lid",)


def test_what_stands_out_beyond_the_last_beam_by_hand():
    """0.4 m beyond a beam: w o^2/2 of the load on what stands out; no more than the sheet's own
    thickness beyond it is no span, and only w s^2/8 between the beams is left.

    Up: 3.6 q on all of it, as on every part of a small free roof (ASCE/SEI 7-16 Fig. 30.7-1 zone
    3, level, a copy), more than an overhang of a closed one takes.
    """
    for out, governs in ((0.4, "out"), (0.017, "between")):
        beams = Part(
            "beams",
            Box(1.2, 0.06, 0.09),
            Place(on="foot", at=(0.0, -0.25, 0.0), count=2, step=(0.0, 0.5, 0.0)),
            material="southern pine",
        )
        width = 0.5 + 0.06 + 2.0 * out
        sheet = replace(lid(Rectangle(1.2, width), on="beams"), mass=1e-6)
        one = judged(BASE, beams, sheet)[0]["lid"]
        up = 3.6 * q()
        lever = out**2 / 2.0 if governs == "out" else 0.44**2 / 8.0
        assert one.check.demand == pytest.approx(1.2 * up * lever, rel=1e-4)


@pytest.mark.parametrize(("off", "stands"), [(0.0019, True), (-0.0019, True), (0.0021, False)])
def test_a_body_stands_on_a_level_within_two_millimetres(off, stands):
    """A shim: twice the millimetre within which edges count as one (judgement in plates)."""
    place = Place(at=(0.0, 0.0, 0.5 + off))
    body = build_structure(design(BASE, Part("box", Box(0.2, 0.2, 0.2), place, density=500.0)))
    assert stands_at(body.bodies[-1], 0.5) is stands
