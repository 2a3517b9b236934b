"""Posts and arms worked by hand from weight and wind; how slender they may be."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from stick_designs import BASE, EMIN, FB, FC, FOUR, PSI, G, arm, judged, post, weight

from yardfast.checks.members.columns import aluminium_column, steel_column
from yardfast.checks.members.post_strength import post_strength
from yardfast.checks.members.uprights import Section
from yardfast.design.model import Part, Place
from yardfast.design.shapes.member import Member as Stick
from yardfast.design.shapes.weight import Weight


def test_arm_under_weight_alone_by_hand():
    """F x + w o^2/2 from the post's axis; dead load alone holds 0.9, wind 1.6 (NDS Table 2.3.2)."""
    found = judged(BASE, post(0.0), arm(), weight("lamp", 0.4, "arm"))[0]["arm"]
    M = 10.0 * G * 0.7 + 6.0 * G * 0.8**2 / 2.0
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
    M = 10.0 * G * 0.7
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
    length = 1.2
    section = Section(np.array([1.0, 0.0]), FOUR, FOUR)
    strength = post_strength(section, stuff, None, length, "allowable")
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
