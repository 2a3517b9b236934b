"""What one anchor holds in a ground, by kinds and grounds."""

import numpy as np
import pytest

from yardfast import references, units
from yardfast.checks.anchoring.capacity.anchor_capacity import anchor_capacity
from yardfast.checks.anchoring.capacity.embedment import force_free, lateral_bearing
from yardfast.checks.anchoring.guys import allowable, line_stiffness
from yardfast.materials import anchors, grounds, guy_lines

LBF, INCH, FOOT = 4.4482216152605, 0.0254, 0.3048
PSF = LBF / FOOT**2
SOILS = ("gravel", "sand", "firm lawn", "wet lawn", "firm clay lawn", "soft clay")


def held(name, ground, **given):
    return anchor_capacity(anchors.find_anchor(name), grounds.find_ground(ground), **given)


def test_a_steel_stake_in_firm_lawn_by_hand():
    """1 in, 32 in in the ground: 0.5 x 25 kPa x pi x 0.0254 x (0.8128 - 0.15) / 3 = 220.4 N up,
    10 N/cm2 x 2.54 x 81.28 / 3 = 688.2 N sideways."""
    stake = held("steel stake 1 in x 36 in", "firm lawn")
    assert stake.straight == pytest.approx(220.4, abs=0.05)
    assert stake.sideways == pytest.approx(688.2, abs=0.05)
    assert stake.factor == 3.0


def test_rain_halves_a_stake_sideways():
    dry, wet = (held("rebar stake 1/2 in x 24 in", g) for g in ("firm lawn", "wet lawn"))
    assert wet.sideways == dry.sideways / 2
    assert wet.straight < dry.straight


@pytest.mark.parametrize("ground", ["sand", "gravel"])
def test_stakes_in_sand_hold_sideways_only(ground):
    stake = held("steel stake 3/4 in x 36 in", ground)
    assert stake.straight == stake.up == 0.0
    assert stake.sideways > 0.0
    assert stake.along(np.radians(45)) == stake.sideways
    assert stake.along(np.radians(75)) == 0.0
    assert stake.reasons == ("nothing straight up",)


def test_a_straight_bar_through_a_hole_does_not_hold_up():
    assert held("steel stake 3/4 in x 24 in", "firm lawn").up == 0.0
    bent = held("rebar stake 1/2 in x 24 in", "firm lawn")
    assert bent.up == bent.straight > 0.0


def test_a_measured_pull_counts_over_two():
    stake = held("steel stake 1 in x 36 in", "firm lawn", measured=600.0)
    assert stake.straight == 300.0
    assert stake.factor == 2.0
    assert stake.sideways == held("steel stake 1 in x 36 in", "firm lawn").sideways


def test_a_screw_anchor_holds_more_than_a_stake_of_its_length():
    for ground in SOILS:
        screw = held("screw anchor 30 in", ground)
        assert screw.straight > held("rebar stake 1/2 in x 36 in", ground).straight


def test_torque_tells_what_a_helical_anchor_holds():
    """10 x 600 ft lb over 2 (ICC-ES AC358; factor with torque read)."""
    anchor = held("helical anchor 5 ft", "firm lawn", torque=600 * LBF * FOOT)
    assert anchor.straight / LBF == pytest.approx(3000)


def test_a_listed_manufactured_home_anchor_works_at_its_rating():
    """3,150 lb working, 4,725 lb ultimate: Illinois 77-870.200, Minnesota 1350.2900."""
    listed = held("manufactured-home anchor", "firm lawn", listed=True)
    assert listed.straight / LBF == pytest.approx(3150)
    assert listed.factor == pytest.approx(1.5)
    unlisted = held("manufactured-home anchor", "firm lawn")
    assert unlisted.straight < listed.straight
    assert held("screw anchor 48 in", "firm lawn", listed=True).straight == unlisted.straight


def test_a_buried_pad_by_hand():
    """12 x 12 x 6 in, underside at 24 in: the prism 2.0 ft3, wedges 4.6188, corners 2.7925, of
    which 0.5 ft3 concrete: (0.5 x 145 + 8.9113 x 90)/1.5 = 583.0 lb; under water 191.5 lb."""
    assert held("buried concrete pad 12 in", "firm lawn").straight / LBF == pytest.approx(
        583.0, abs=0.05
    )
    soaked = held("buried concrete pad 12 in", "firm lawn", saturated=True)
    assert soaked.straight / LBF == pytest.approx(191.5, abs=0.05)
    assert soaked.sideways == 0.0


def test_a_pier_in_sand_holds_by_its_weight_and_sideways_as_a_post():
    """10 x 30 in: 1.3635 ft3 x 145 / 1.5 = 131.8 lb; IBC 1807.3.2.1 with 150 psf/ft."""
    pier = held("concrete pier 10 in x 30 in", "sand")
    assert pier.straight / LBF == pytest.approx(131.8, abs=0.05)
    s = 150 * PSF / FOOT
    assert pier.sideways == pytest.approx(float(force_free(2.5 * FOOT, 0.0, s, 10 * INCH)))


def test_a_deadman_holds_a_guy_and_nothing_straight_up():
    """TM 5-5420-278-10: 950 psf at 3 ft and 45 degrees, 8 in x (3 - 1) ft, over 3: 422.2 lb."""
    log = held("buried log 8 in x 3 ft", "firm lawn", depth=3 * FOOT)
    assert log.along(np.radians(45)) / LBF == pytest.approx(422.2, abs=0.05)
    assert log.up == 0.0
    with pytest.raises(ValueError, match="depth"):
        held("buried log 8 in x 3 ft", "firm lawn")


def test_paving_takes_bolts_and_nothing_else():
    for name in anchors.anchor_names():
        bolt = anchors.find_anchor(name).group == "slab bolt"
        for ground in ("paving", "firm lawn"):
            if bolt == (ground == "paving"):
                assert held(name, ground, depth=0.6).spacing > 0.0
            else:
                with pytest.raises(ValueError, match="does not hold"):
                    held(name, ground, depth=0.6)


def test_bolts_reach_no_deeper_than_their_slab_allows():
    """Two thirds of the slab: ACI 318M-19 17.9.4, recalled."""
    for anchor in map(anchors.find_anchor, anchors.anchor_names()):
        if anchor.group == "slab bolt":
            assert anchor.embedded <= 2 / 3 * anchor.thickness


@pytest.mark.parametrize("name", anchors.anchor_names())
def test_wetter_ground_never_holds_more(name):
    if anchors.find_anchor(name).group == "slab bolt":
        dry = wet = held(name, "paving")
    else:
        dry, wet = (held(name, g, depth=0.6) for g in ("firm lawn", "wet lawn"))
    for kind in ("straight", "sideways", "up"):
        assert getattr(wet, kind) <= getattr(dry, kind)
    assert wet.confidence in references.CONFIDENCES
    assert wet.source


@pytest.mark.parametrize(
    ("ground", "psf_per_ft"),
    [("gravel", 200), ("sand", 150), ("firm lawn", 100), ("firm clay lawn", 100)],
    ids=lambda value: f"IBC 2012 Table 1806.2 {value}",
)
def test_lateral_bearing_is_the_presumptive_value(ground, psf_per_ft):
    found = lateral_bearing(grounds.find_ground(ground))
    assert found == pytest.approx(psf_per_ft * units.factor("psf/ft"))
    assert lateral_bearing(grounds.find_ground(ground), doubled=True) == 2 * found


def test_softer_ground_bears_less_sideways_and_paving_says_nothing():
    firm = lateral_bearing(grounds.find_ground("firm lawn"))
    assert lateral_bearing(grounds.find_ground("wet lawn")) == pytest.approx(
        firm * 25.7 / 71.82, rel=1e-3
    )  # as 5.14 x 15 kPa / 3 stands to 1,500 psf
    assert lateral_bearing(grounds.find_ground("soft clay")) < firm / 2
    assert lateral_bearing(grounds.find_ground("paving")) is None


def test_a_guy_is_as_good_as_its_knot():
    """Knots in Use 4th ed. p. 9: bowline 70 percent, reef knot 50."""
    rope = guy_lines.find_line("polyester rope 1/4 in")
    assert allowable(rope, guy_lines.end("bowline")) / LBF == pytest.approx(1650 * 0.7 / 5)
    assert allowable(rope) / LBF == pytest.approx(1650 * 0.5 / 5)
    with pytest.raises(ValueError, match="cable"):
        allowable(rope, guy_lines.end("clips"))


def test_a_longer_line_is_softer():
    rope = guy_lines.find_line("nylon rope 1/4 in")
    assert line_stiffness(rope.stiffness, 4.0) == pytest.approx(rope.stiffness / 4.0)


def test_stakes_stand_apart_and_from_an_edge_by_their_length_in_the_ground():
    """US Navy NAVEDTRA 14251 ch. 6: as far apart as they reach down; 36 in less 4 in stand out."""
    stake = held("steel stake 1 in x 36 in", "firm lawn")
    assert stake.spacing == pytest.approx(32.0 * INCH)


@pytest.mark.parametrize(
    ("name", "ground", "cohesion", "governs"),
    [
        ("concrete pier 8 in x 24 in", "firm lawn", 25.0e3, "skin"),
        ("concrete pier 8 in x 24 in", "firm clay lawn", 50.0e3, "earth"),
        ("concrete pier 12 in x 48 in", "firm lawn", 25.0e3, "skin"),
    ],
)
def test_a_pier_is_lifted_with_the_earth_round_it_or_slips_out_of_it(
    name, ground, cohesion, governs
):
    """CPUC General Order 95 rule 48.5: 145 and 90 pcf, planes 30 degrees off the vertical, over
    1.5; on its skin half of the cohesion but on the first 0.15 m, over 3 (judgement, as stakes)."""
    anchor = anchors.find_anchor(name)
    d, length = anchor.diameter, anchor.embedded
    t, pcf = np.tan(np.radians(30.0)), LBF / FOOT**3
    own = np.pi * d**2 / 4.0 * length * 145.0 * pcf / 1.5
    cone = np.pi * d * length**2 * t / 2.0 + np.pi * length**3 * t**2 / 3.0
    lifted = {
        "earth": cone * 90.0 * pcf / 1.5,
        "skin": 0.5 * cohesion * np.pi * d * (length - 0.15) / 3.0,
    }
    assert min(lifted, key=lifted.get) == governs
    assert held(name, ground).straight == pytest.approx(own + lifted[governs], rel=1e-6)
