"""What materials' names mean, against the published rows."""

import pytest

from yardfast import materials, references
from yardfast.materials import stock

POUND_PER_CUBIC_FOOT = 0.45359237 / 0.3048**3
CONTRACT = (
    "softwood plywood",
    "marine plywood",
    "OSB",
    "southern pine",
    "southern pine, treated",
    "western redcedar",
    "redwood",
    "spruce-pine-fir",
    "douglas fir",
    "white oak",
    "steel",
    "aluminium",
    "concrete",
    "brick",
    "acrylic",
    "polycarbonate",
    "PVC",
    "HDPE",
)
# typical, light, heavy in kg/m3: means and extremes of the printed densities
PUBLISHED = [
    ("southern pine", (569 + 675 + 569 + 662) / 4, 569, 691, "Wood Handbook 12 % and 19 %"),
    ("southern pine, treated", (569 + 675 + 569 + 662) / 4, 569, 715, "Wood Handbook 30 %"),
    ("redwood", (453 + 403) / 2, 403, 470, "Wood Handbook 12 % and 19 %"),
    ("douglas fir", (543 + 556 + 543 + 517) / 4, 517, 573, "Wood Handbook 12 % and 19 %"),
    ("hem-fir", (504 + 440 + 415) / 3, 415, 521, "Wood Handbook 12 % and 19 %"),
    (
        "spruce-pine-fir",
        (390 + 478 + 453 + 453 + 390 + 440 + 390) / 7,
        390,
        495,
        "Wood Handbook 12 % and 19 %",
    ),
    ("acrylic", 1185, 1170, 1200, "polymer tables"),
    ("polycarbonate", 1205, 1190, 1220, "polymer tables"),
    ("PVC", 1375, 1300, 1450, "polymer tables"),
    ("HDPE", 955, 940, 970, "polymer tables"),
    ("cast iron", 7175, 7100, 7250, "EN 1991-1-1 Annex A"),
    ("stainless steel", 8000, 8000, 8000, "general engineering"),
]
# light and heavy in lb/ft3
PUBLISHED_IN_POUNDS = [
    ("concrete", 144, 150, "ASCE 7 Table C3-2"),
    ("brick", 100, 130, "HUD and ASCE 7 Table C3-2"),
    ("glass", 160, 160, "HUD"),
    ("copper", 556, 556, "HUD"),
    ("granite", 165, 165, "ASCE 7 Table C3-2"),
]


@pytest.mark.parametrize(
    ("name", "typical", "light", "heavy", "source"),
    PUBLISHED,
    ids=[f"{name}, {source}" for name, *_, source in PUBLISHED],
)
def test_three_weights(name: str, typical: float, light: float, heavy: float, source: str) -> None:
    found = materials.find_material(name)
    assert found.typical == pytest.approx(typical, abs=0.5)
    assert found.light == pytest.approx(light, abs=0.5)
    assert found.heavy == pytest.approx(heavy, abs=0.5)


@pytest.mark.parametrize(
    ("name", "light", "heavy", "source"),
    PUBLISHED_IN_POUNDS,
    ids=[f"{name}, {source}" for name, *_, source in PUBLISHED_IN_POUNDS],
)
def test_band_of_what_is_published_in_pounds(
    name: str, light: float, heavy: float, source: str
) -> None:
    found = materials.find_material(name)
    assert found.light / POUND_PER_CUBIC_FOOT == pytest.approx(light, abs=0.5)
    assert found.heavy / POUND_PER_CUBIC_FOOT == pytest.approx(heavy, abs=0.5)


def test_metals_agree_with_both_printed_systems() -> None:
    # HUD prints 492 and 170 lb/ft3, EN 1991-1-1 Annex A 7850 and 2700 kg/m3
    for name, pounds, kilograms in [("steel", 492, 7850), ("aluminium", 170, 2700)]:
        found = materials.find_material(name)
        ends = sorted((pounds * POUND_PER_CUBIC_FOOT, kilograms))
        assert [found.light, found.heavy] == pytest.approx(ends, rel=1e-12)


def test_plywood_weighs_what_the_residential_guide_says() -> None:
    # HUD Residential Structural Design Guide: 36 lb/ft3, which makes a closed box of 3/4 in
    # plywood 48 x 48 x 30 in weigh 156 lb
    found = materials.find_material("softwood plywood")
    assert found.typical / POUND_PER_CUBIC_FOOT == pytest.approx(36, abs=0.5)
    wood = (48 * 48 * 30 - 46.5 * 46.5 * 28.5) / 12**3
    assert wood * found.typical / POUND_PER_CUBIC_FOOT == pytest.approx(156, abs=0.5)


def test_one_published_value_of_wood_takes_a_tenth_either_way() -> None:
    cedar = materials.find_material("western redcedar")
    # Wood Handbook relation, G 0.31: 365 kg/m3 at 12 %, 380 at 19 %
    assert cedar.typical == pytest.approx(365, abs=0.5)
    assert cedar.light == pytest.approx(0.9 * cedar.typical)
    # a tenth denser wood dries to a slightly smaller volume for its gravity: 0.1 % here
    assert cedar.heavy == pytest.approx(1.1 * 380, rel=2e-3)
    assert "10%" in cedar.notes[0]


def test_one_published_value_of_others_has_no_band_and_says_so() -> None:
    assert "one value is published" in materials.find_material("glass").notes[0]


@pytest.mark.parametrize("name", CONTRACT)
def test_names_that_must_exist(name: str) -> None:
    assert name in materials.material_names()


@pytest.mark.parametrize("material", materials.all_materials(), ids=lambda m: m.name)
def test_every_material_is_whole(material: materials.Material) -> None:
    assert 0 < material.light <= material.typical <= material.heavy
    assert material.contact in ("wood", "steel", "concrete", "rubber")
    assert material.confidence in references.CONFIDENCES
    assert material.source
    assert material.stands_for.startswith("stands for ")
    assert material.kind in ("wood", "panel", "metal", "masonry", "plastic")


@pytest.mark.parametrize(
    ("name", "gravity"),
    [
        ("douglas fir", 0.50),
        ("southern pine", 0.55),
        ("southern pine, treated", 0.55),
        ("hem-fir", 0.43),
        ("spruce-pine-fir", 0.42),
        ("western redcedar", 0.36),
        ("white oak", 0.73),
        ("softwood plywood", 0.42),
        ("OSB", 0.50),
        ("steel", None),
    ],
    ids=lambda value: f"NDS 2018 Table 12.3.3A/B {value}",
)
def test_assigned_specific_gravity(name: str, gravity: float | None) -> None:
    assert materials.find_material(name).specific_gravity == gravity


def test_what_has_no_published_friction_says_what_stands_in() -> None:
    for material in materials.all_materials():
        own = material.kind in ("wood", "panel") or material.name in ("steel", "concrete")
        said = any("stand in" in note for note in material.notes)
        assert own or said or material.name == "concrete block", material.name


def test_a_name_that_is_unknown_is_a_key_error() -> None:
    with pytest.raises(KeyError, match="balsa"):
        materials.find_material("balsa")


def test_stock_at_its_actual_measure() -> None:
    # PS 20: a 2x4 is 1 1/2 by 3 1/2 in; PS 1: a 3/4 sheet sold as 23/32 bears the label 0.703 in
    assert stock.lumber_sizes()["2x4"] == pytest.approx((1.5 * 0.0254, 3.5 * 0.0254))
    assert stock.sheet_thicknesses()["3/4 plywood"] == pytest.approx(0.703 * 0.0254)
    assert stock.sheet_thicknesses()["7/16 OSB"] == pytest.approx(0.418 * 0.0254)
