"""What grounds' names mean, against the published rows."""

import math

import printed
import pytest

from yardfast import references
from yardfast.materials import grounds

CONTRACT = ("paving", "gravel", "sand", "firm lawn", "wet lawn", "firm clay lawn", "soft clay")
PSF = 0.45359237 * 9.80665 / 0.3048**2

# ground and contact: the surfaces under which friction_coefficients.csv prints them
SURFACES = {
    "wood": ("wood", "timber, perpendicular to grain"),
    "steel": ("steel", "steel, plain unrusted", "steel sheet pile"),
    "concrete": ("concrete", "formed concrete"),
    "rubber": ("rubber",),
}
BENEATH = {
    "paving": ("concrete", "cast concrete", "trowelled concrete"),
    "gravel": ("sand and gravel", "clean gravel, gravel-sand, well graded rock fill"),
    "sand": ("sand and gravel", "clean sand, silty sand-gravel, single size rock fill"),
    "firm lawn": ("loam (at least stiff-plastic)",),
    "wet lawn": ("clay (at least stiff-plastic)",),
    "firm clay lawn": ("clay (at least stiff-plastic)",),
    "soft clay": ("clay (at least stiff-plastic)",),
}


def published(ground: str, contact: str) -> list[float]:
    return [
        float(row["mu_low"])
        for row in printed.table("friction_coefficients").rows
        if row["surface_a"] in SURFACES[contact]
        and row["surface_b"] in BENEATH[ground]
        and row["mu_low"]
        and "allowable" not in row["kind"]
    ]


@pytest.mark.parametrize("ground", CONTRACT)
@pytest.mark.parametrize("contact", ["wood", "steel", "concrete", "rubber"])
def test_friction_is_the_lowest_published(ground: str, contact: str) -> None:
    found = published(ground, contact)
    friction = grounds.find_ground(ground).friction[contact]
    if contact == "wood" and ground in ("gravel", "sand"):
        # EN 13814 prints 0.65; 2/3 phi (Broms) with phi 30 to 34 degrees gives 0.36 to 0.42
        assert friction.coefficient == pytest.approx(0.40)
        assert 0.36 <= friction.coefficient <= math.tan(math.radians(2 / 3 * 34)) < min(found)
        assert "0.65" in friction.note
    elif (ground, contact) == ("paving", "wood"):
        assert friction.state == "wet"
        assert friction.coefficient < min(found)  # 0.60 dry, EN 13814
    elif found:
        assert friction.coefficient == min(found)
    else:
        assert contact == "rubber"
        assert friction.coefficient == grounds.find_ground(ground).friction["wood"].coefficient
        assert "no published value" in friction.source


@pytest.mark.parametrize(
    ("ground", "contact", "coefficient"),
    [
        ("paving", "wood", 0.40),  # wet: two thirds of the lowest dry value (judgement)
        ("paving", "steel", 0.10),
        ("paving", "concrete", 0.40),
        ("paving", "rubber", 0.30),
        ("firm lawn", "wood", 0.40),
        ("firm lawn", "steel", 0.20),
        ("firm clay lawn", "wood", 0.25),
        ("firm clay lawn", "concrete", 0.25),
    ],
    ids=lambda value: f"EN 13814 Table 3, Birmingham tests, SFU notes {value}",
)
def test_friction_of_printed_pairs(ground: str, contact: str, coefficient: float) -> None:
    assert grounds.find_ground(ground).friction[contact].coefficient == coefficient


def test_wet_grass_says_that_the_clay_row_stands_in() -> None:
    wet, clay = grounds.find_ground("wet lawn"), grounds.find_ground("firm clay lawn")
    for contact, friction in wet.friction.items():
        assert friction.coefficient == clay.friction[contact].coefficient
        assert "clay row stands in" in friction.note
        assert friction.confidence == "judgement"


CLAYS = ("firm lawn", "wet lawn", "firm clay lawn", "soft clay")


@pytest.mark.parametrize(
    ("ground", "psf"),
    [("gravel", 3000), ("sand", 2000), ("firm clay lawn", 1500)],
    ids=lambda value: f"IBC 2012 Table 1806.2 {value}",
)
def test_allowable_pressure_is_the_presumptive_value(ground: str, psf: float) -> None:
    found = grounds.find_ground(ground)
    assert found.allowable_pressure / PSF == pytest.approx(psf)
    row = next(
        row
        for row in references.table("ground/ibc_presumptive_soil").rows
        if row["class"].startswith(str(found.ibc_class))
    )
    assert float(row["vertical_psf"]) == psf


def test_paving_is_concrete_that_does_not_yield() -> None:
    # 0.3 f'c (ACI 318 working stress) of 2500 psi
    paving = grounds.find_ground("paving")
    assert paving.allowable_pressure / PSF == pytest.approx(0.3 * 2500 * 144)
    assert paving.yield_pressure is None
    assert paving.undrained_strength is None
    assert not paving.stakes_possible


@pytest.mark.parametrize("ground", CLAYS)
def test_clay_yields_at_its_bearing_capacity(ground: str) -> None:
    # Prandtl: (2 + pi) s_u, never the unconfined strength 2 s_u
    found = grounds.find_ground(ground)
    assert found.undrained_strength is not None
    assert found.yield_pressure == pytest.approx(round(2 + math.pi, 2) * found.undrained_strength)


@pytest.mark.parametrize("ground", CLAYS)
def test_clay_is_allowed_a_third_of_its_capacity_and_no_more_than_the_code(ground: str) -> None:
    clay = grounds.find_ground(ground)
    assert clay.yield_pressure is not None
    third = min(clay.yield_pressure / 3.0, 1500 * PSF)  # IBC 2012 Table 1806.2 class 5
    assert clay.allowable_pressure == pytest.approx(third, abs=50.0)  # printed to 0.1 kPa


def test_a_wet_lawn_is_as_soft_as_its_strength_says() -> None:
    """5.14 s_u and a third of it (Prandtl, by hand): 15 kPa is 1,610 psf, and 540 psf allowed."""
    wet, clay = grounds.find_ground("wet lawn"), grounds.find_ground("soft clay")
    assert wet.allowable_pressure / PSF == pytest.approx(540, abs=5)
    assert wet.yield_pressure is not None
    assert wet.yield_pressure / PSF == pytest.approx(1610, abs=5)
    for quantity in ("allowable pressure", "yield pressure", "undrained strength"):
        assert clay.ratings[quantity].value <= wet.ratings[quantity].value


@pytest.mark.parametrize("ground", ["gravel", "sand"])
def test_elsewhere_the_factor_of_the_presumptive_value_is_taken_back(ground: str) -> None:
    found = grounds.find_ground(ground)
    assert found.yield_pressure == pytest.approx(3.0 * found.allowable_pressure)


@pytest.mark.parametrize(
    ("ground", "low", "high"),
    [
        ("firm lawn", 24, 48),
        ("wet lawn", 12, 24),
        ("firm clay lawn", 48, 96),
        ("soft clay", 12, 24),
    ],
    ids=lambda value: f"TM 5-818-1 Table 2-2 {value}",
)
def test_strength_lies_in_the_class_of_the_field_cue(ground: str, low: float, high: float) -> None:
    found = grounds.find_ground(ground)
    assert found.undrained_strength is not None
    assert 1000 * low <= found.undrained_strength <= 1000 * high
    assert "thumb" in found.field_cue


def test_softer_or_wetter_ground_never_bears_more() -> None:
    order = ("paving", "gravel", "sand", "firm lawn", "wet lawn", "soft clay")
    pressures = [grounds.find_ground(name).allowable_pressure for name in order]
    assert pressures == sorted(pressures, reverse=True)


def test_nothing_holds_straight_up_in_sand_gravel_and_paving() -> None:
    holds = {name for name in CONTRACT if grounds.find_ground(name).straight_pull}
    assert holds == {"firm lawn", "wet lawn", "firm clay lawn", "soft clay"}
    for name in ("paving", "gravel", "sand"):
        assert grounds.find_ground(name).stakes_note


def test_names_are_the_contracted_ones() -> None:
    assert tuple(grounds.ground_names()) == CONTRACT
    assert [ground.name for ground in grounds.all_grounds()] == list(CONTRACT)


def test_every_rating_has_its_source() -> None:
    for ground in grounds.all_grounds():
        for rated in (*ground.friction.values(), *ground.ratings.values()):
            assert rated.source
            assert rated.confidence in references.CONFIDENCES


def test_a_name_that_is_unknown_is_a_key_error() -> None:
    with pytest.raises(KeyError, match="mud"):
        grounds.find_ground("mud")


def test_friction_on_paving_is_wet_or_says_that_it_is_dry() -> None:
    """Gusts come with rain: a published wet value where there is one, else the note tells."""
    for friction in grounds.find_ground("paving").friction.values():
        assert friction.state in ("wet", "dry")
        assert friction.state in friction.note
    states = {kind: one.state for kind, one in grounds.find_ground("paving").friction.items()}
    assert states == {"wood": "wet", "steel": "dry", "concrete": "dry", "rubber": "wet"}


@pytest.mark.parametrize(
    ("name", "stakes", "pull"),
    [
        ("paving", False, False),
        ("sand", True, False),
        ("gravel", True, False),
        ("firm lawn", True, True),
    ],
)
def test_which_grounds_take_stakes_and_hold_them_straight_up(name, stakes, pull):
    """Rods hold nothing straight up in what has no cohesion (US Army TM 5-818-1); none is driven
    into paving."""
    ground = grounds.find_ground(name)
    assert (ground.stakes_possible, ground.straight_pull) == (stakes, pull)
