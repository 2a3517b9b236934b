"""Withdrawal and lateral values as the public API gives them."""

import pytest

from yardfast import units
from yardfast.checks.timber.nds.fastener_capacity import adjusted_capacity
from yardfast.checks.timber.nds.fastener_values import SIDE_THICKNESS, fastener_listing, value_of
from yardfast.checks.timber.nds.public import lateral, withdrawal
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units.frozen import replace

PRINTED = {"Im": 658, "Is": 235, "II": 219, "IIIm": 230, "IIIs": 105, "IV": 118}
"""AWC Structural Wood Design Examples E2.2 (memory), 10d common through 3/4 in Douglas fir."""

NAIL = {
    "diameter": "0.148 in",
    "side_thickness": "3/4 in",
    "main_bearing_length": "2.102 in",
    "specific_gravity_side": 0.50,
    "specific_gravity_main": 0.50,
    "bending_yield": "90000 psi",
}


@pytest.mark.parametrize(
    ("kind", "diameter", "G", "printed"),
    [
        ("lag screw", "3/8 in", 0.73, 538),
        ("lag screw", "1/2 in", 0.73, 668),
        ("lag screw", "5/16 in", 0.71, 450),
        ("nail", "0.131 in", 0.71, 77),
        ("wood screw", "0.164 in", 0.73, 249),
    ],
)
def test_withdrawal_is_the_printed_one(kind, diameter, G, printed):
    """NDS 2018 Tables 12.2A (seen), 12.2B and 12.2C (memory)."""
    W = withdrawal(kind, diameter, G)
    assert W.to("lbf/in").magnitude == pytest.approx(printed, abs=0.5)


def test_every_mode_is_the_printed_one():
    found = lateral(**NAIL)
    in_pounds = {mode: value.to("lbf").magnitude for mode, value in found.modes.items()}
    assert in_pounds == pytest.approx(PRINTED, abs=0.5)
    assert found.mode == "IIIs"
    assert found.value.to("lbf").magnitude == pytest.approx(105, abs=0.5)


def test_quantities_and_text_give_the_same():
    metric = {
        "diameter": units.quantity(0.0037592, "length"),
        "side_thickness": "19.05 mm",
        "main_bearing_length": units.quantity(0.0533908, "length", "cm"),
        "specific_gravity_side": 0.50,
        "specific_gravity_main": 0.50,
        "bending_yield": units.quantity(620528155.6371504, "pressure"),
    }
    expected = lateral(**NAIL).value.to("N").magnitude
    assert lateral(**metric).value.to("N").magnitude == pytest.approx(expected)
    one, other = withdrawal("nail", "3.3274 mm", 0.42), withdrawal("nail", "0.131 in", 0.42)
    assert one.to("N/m").magnitude == pytest.approx(other.to("N/m").magnitude)


def test_grain_counts_from_a_quarter_inch_on_and_across_is_taken():
    """NDS 2018 Table 12A, 1/2 in bolt, 1 1/2 in members, G 0.55: 530 along, 250 across, to 10."""
    bolt = {
        **NAIL,
        "diameter": "1/2 in",
        "side_thickness": "1 1/2 in",
        "main_bearing_length": "1 1/2 in",
        "specific_gravity_side": 0.55,
        "specific_gravity_main": 0.55,
        "bending_yield": "45000 psi",
    }
    along = lateral(**bolt, grain_angle_side="0 deg", grain_angle_main="0 deg")
    assert lateral(**bolt).value.to("lbf").magnitude == pytest.approx(250, abs=5)
    assert along.value.to("lbf").magnitude == pytest.approx(530, abs=5)
    nail = lateral(**NAIL, grain_angle_side="0 deg", grain_angle_main="0 deg")
    assert nail.value.to("N").magnitude == lateral(**NAIL).value.to("N").magnitude


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (("tack", "0.1 in", 0.4), "kind: found 'tack', expected one of \"nail\""),
        ((["nail"], "0.1 in", 0.4), "kind: found .'nail'., expected one of \"nail\""),
        (("nail", ["0.1 in"], 0.4), "diameter: 'list' is not a length"),
        (("nail", "0.1 in", [0.4]), "specific_gravity: found .0.4."),
        (("nail", "0 in", 0.4), "diameter: found '0 in', expected a length above 0"),
        (("nail", "0.1", 0.4), "diameter: .*with its unit"),
        (("nail", 0.1, 0.4), "diameter: "),
        (("nail", "0.1 lb", 0.4), "diameter: .*a mass"),
        (("nail", "0.1 in", "0.4"), "specific_gravity: found '0.4'"),
        (("nail", "0.1 in", True), "specific_gravity: found True"),
        (("nail", "0.1 in", 42), "specific_gravity: found 42, expected from 0.2 to 1"),
        (("nail", "0.1 in", float("nan")), "specific_gravity: found nan"),
    ],
)
def test_wrong_argument_of_withdrawal_is_refused_by_name(arguments, named):
    with pytest.raises(ValueError, match=named):
        withdrawal(*arguments)


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"diameter": "0 in"}, "diameter: found '0 in'"),
        ({"side_thickness": "-1 in"}, "side_thickness: "),
        ({"main_bearing_length": "0 mm"}, "main_bearing_length: found '0 mm'"),
        ({"bending_yield": "90000 lbf"}, "bending_yield: .*a force"),
        ({"specific_gravity_side": None}, "specific_gravity_side: found None"),
        ({"specific_gravity_main": 0.0}, "specific_gravity_main: found 0"),
        ({"grain_angle_side": "120 deg"}, "grain_angle_side: found '120 deg'"),
        ({"grain_angle_main": "90"}, "grain_angle_main: "),
    ],
)
def test_wrong_argument_of_lateral_is_refused_by_name(changed, named):
    with pytest.raises(ValueError, match=named):
        lateral(**{**NAIL, **changed})


def test_listing_shows_what_each_holds_in_a_wood():
    """NDS 2018 Table 12.2C, D 0.131 in, G 0.42: 21 lb/in (memory)."""
    values = {each.fastener.name: each.withdrawal for each in fastener_listing("spruce-pine-fir")}
    assert values["8d common nail"] * 0.0254 / 4.4482216 == pytest.approx(21, abs=0.5)
    # two legs of 1380 G^2.5 D by hand: 19.7 lb/in
    assert values["16 ga staple"] * 0.0254 / 4.4482216 == pytest.approx(19.7, abs=0.05)
    assert values["1/2 bolt"] is None
    assert {each.withdrawal for each in fastener_listing()} == {None}


def test_listing_in_what_takes_no_fastener_is_refused():
    with pytest.raises(ValueError, match="'concrete'"):
        fastener_listing("concrete")
    with pytest.raises(KeyError):
        fastener_listing("balsa")


WITH_A_VALUE = [one for one in fastener_listing("southern pine") if one.lateral is not None]


@pytest.mark.parametrize("one", WITH_A_VALUE, ids=lambda one: one.fastener.name)
def test_listing_and_joint_push_a_fastener_sideways_alike(one):
    """Through 3/4 in of southern pine into the same, across the grain: less the factors of use."""
    wood = joint_material_of("southern pine")
    long = replace(one.fastener, length=SIDE_THICKNESS + one.penetration)
    across = one.fastener.kind == "staple"
    driven = Driven(wood, wood, SIDE_THICKNESS, 1.0, "side grain", crown_across=across)
    joint = adjusted_capacity(long, driven, "allowable")
    assert joint.sideways / joint.factor_sideways == pytest.approx(one.lateral, rel=1e-12)
    assert joint.mode == one.mode


def test_a_screw_of_a_quarter_inch_across_its_thread_bears_by_that_across_the_grain():
    """NDS 2018 12.3.3 and Table 12.3.1B note 1 (memory), worked in inches and pounds, mode IIIs.

    #18: D 0.294 in, root 0.232 in, 60,000 psi (Table I1, 0.273 to 0.344 in). Table 12L ends at
    #14, under 1/4 in either way: it cannot tell. The 1/4 in lag screw of Table 12J can.
    """
    G, D, Dr, ls, Fyb = 0.5, 0.294, 0.232, 0.75, 60_000.0
    Fe = 50.0 * round(6100.0 * G**1.45 / D**0.5 / 50.0)
    k3 = -1.0 + (4.0 + 2.0 * Fyb * 3.0 * Dr**2 / (3.0 * Fe * ls**2)) ** 0.5
    pounds = k3 * Dr * ls * Fe / (3.0 * (10.0 * Dr + 0.5) * 1.25)
    found = value_of(fasteners.find_fastener("#18 wood screw 3 in"), G)
    assert found.mode == "IIIs"
    assert found.lateral == pytest.approx(pounds * 4.4482216152605, rel=1e-6)
