"""A design file becomes a Design: the sample, place, weight, and what the file leaves open."""

from math import radians

import pytest
from sample_file import HARBOUR_LIGHT, altered, design, one_part

from yardfast.checks.inputs import read
from yardfast.design.model import Place
from yardfast.design.shapes.bodies import Shell
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Regular
from yardfast.loads.wind.site import Site

INCH = 0.0254  # international inch, exact


def test_the_sample_reads_as_it_is_written() -> None:
    found = design()
    foot, tower, gallery, roof = found.parts
    assert (found.name, found.units, found.file) == ("Harbour light", "imperial", "piece.toml")
    # A dressed 2x4 is 1 1/2 in by 3 1/2 in: American Softwood Lumber Standard PS 20.
    assert isinstance(foot.shape, Frame)
    assert foot.shape.plan == Regular(8, pytest.approx(20 * INCH))
    assert foot.shape.width == pytest.approx(3.5 * INCH)
    assert foot.shape.height == pytest.approx(1.5 * INCH)
    assert isinstance(tower.shape, Shell)
    sizes = (tower.shape.bottom, tower.shape.top, tower.shape.height, tower.shape.wall)
    assert sizes == pytest.approx((16 * INCH, 9 * INCH, 48 * INCH, 0.75 * INCH))
    assert isinstance(gallery.shape, Plate)
    assert gallery.shape.thickness == pytest.approx(0.75 * INCH)
    assert isinstance(roof.shape, Cone)
    assert roof.shape.wall == pytest.approx(0.5 * INCH)
    assert [part.place.on for part in found.parts] == [None, "foot", "tower", "gallery"]
    assert foot.material == "southern pine, treated"


def test_the_sample_names_its_wind_and_ground() -> None:
    found = design().table(Site)
    assert found.wind == pytest.approx(58 * 0.44704)  # international mile, exact
    assert (found.method, found.exposure, found.ground) == ("forecast", "C", "firm lawn")
    assert (found.basis, found.safety) == ("service", 1.5)


def test_lumber_is_repeated_back_at_its_actual_measure() -> None:
    assert design().notes == ("foot: 2x4 flat is 3 1/2 in wide and 1 1/2 in high",)


def test_feet_and_a_bare_number_are_repeated_back_as_inches() -> None:
    found = design(altered("'48 in'", "'5 ft 6'"))
    tower = found.parts[1].shape
    assert isinstance(tower, Shell)
    assert tower.height == pytest.approx(66 * INCH)
    assert any("height" in note and "5 ft 6 in" in note for note in found.notes)


def test_the_file_is_read_from_disk_with_its_text_kept(tmp_path) -> None:
    file = tmp_path / "light.toml"
    file.write_text(HARBOUR_LIGHT, encoding="utf-8")
    found = read(file)
    assert found.file == str(file)
    assert found.text == HARBOUR_LIGHT
    assert found.parts == design().parts


@pytest.mark.parametrize(
    "spoilt",
    [
        pytest.param("\ufeff" + HARBOUR_LIGHT, id="byte order mark"),
        pytest.param(HARBOUR_LIGHT.replace("\n", "\r\n"), id="line ends of Windows"),
        pytest.param(HARBOUR_LIGHT.replace("\n", "\r"), id="line ends of old"),
        pytest.param(HARBOUR_LIGHT.replace("   = ", "\t=\t"), id="tabs"),
        pytest.param(HARBOUR_LIGHT.replace(" = ", "\u00a0=\u00a0"), id="no-break spaces"),
        pytest.param(HARBOUR_LIGHT.rstrip("\n"), id="no last line end"),
        pytest.param(HARBOUR_LIGHT.replace("'58 mph'", '"""58 mph"""'), id="three quote marks"),
        pytest.param(HARBOUR_LIGHT.replace("'open'", "'Open'"), id="a capital in a choice"),
        pytest.param(HARBOUR_LIGHT.replace("[[part]]", "[[ part ]] # a part"), id="heading spaced"),
    ],
)
def test_what_editors_do_to_a_file_does_not_matter(spoilt: str) -> None:
    found = design(spoilt)
    assert found.parts == design().parts
    assert found.table(Site) == design().table(Site)


def test_order_in_the_file_is_free() -> None:
    head, foot, rest = HARBOUR_LIGHT.split("[[part]]", 2)
    moved = f"{head}[[part]]{rest}\n[[part]]{foot}"
    assert [part.name for part in design(moved).parts] == ["tower", "gallery", "roof", "foot"]


def test_design_keys_are_read() -> None:
    text = altered(
        "units = 'imperial'",
        "units = 'metric'\nturn = '45 deg'\nweighed = '40 lb'\nmaker = 'B. Rowe'\nformat = 1",
    )
    found = design(text)
    assert found.turn == pytest.approx(radians(45))
    assert found.weighed == pytest.approx(40 * 0.45359237)  # international pound, exact
    assert (found.units, found.maker) == ("metric", "B. Rowe")


def test_what_the_file_leaves_open_stays_open() -> None:
    found = design()
    assert (found.weighed, found.maker) == (None, None)
    tower = found.parts[1]
    assert (tower.density, tower.mass, tower.contact, tower.surface) == (None, None, None, None)
    place = found.table(Site)
    assert (place.slope, place.elevation, place.topographic, place.people) == (None,) * 4
    assert (place.hurricane, place.country, place.return_period) == (None, None, None)
    assert not place.basis_given
    assert not place.safety_given


def test_place_keys_are_read() -> None:
    part = one_part(
        "shape = 'ball'\nacross = '6 in'\nat = ['-1 ft', '0 in', '2 in']\nturn = '-90 deg'\n"
        "count = 4\nring = '24 in'\nstart = '45 deg'"
    )
    assert part.place == Place(
        on=None,
        at=(pytest.approx(-12 * INCH), 0.0, pytest.approx(2 * INCH)),
        turn=pytest.approx(radians(-90)),
        count=4,
        ring=pytest.approx(24 * INCH),
        start=pytest.approx(radians(45)),
    )


def test_a_list_may_run_over_several_lines() -> None:
    part = one_part("shape='ball'\nacross='6 in'\nat = [ # right\n '1 in',\n'2 in', '3 in',\n]")
    assert part.place.at == pytest.approx((1 * INCH, 2 * INCH, 3 * INCH))


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ("material = 'OSB'", ("OSB", None, None)),
        ("density = '600 kg/m^3'", (None, 600.0, None)),
        ("mass = '5 kg'", (None, None, 5.0)),
        ("material = 'OSB'\nmass = '5 kg'", ("OSB", None, 5.0)),
        ("density = '600 kg/m^3'\nmass = '5 kg'", (None, 600.0, 5.0)),
        ("material = 'osb'", ("OSB", None, None)),
    ],
)
def test_weight_is_given_by_material_density_or_mass(keys, expected) -> None:
    part = one_part(f"shape = 'ball'\nacross = '6 in'\n{keys}")
    assert (part.material, part.density, part.mass) == expected


def test_round_parts_say_how_smooth_they_are() -> None:
    keys = "shape='solid'\nsides=0\nbottom='8 in'\ntop='8 in'\nheight='4 ft'\nsurface='very rough'"
    assert one_part(keys).surface == "very rough"


def test_contact_is_kept() -> None:
    assert one_part("shape='ball'\nacross='6 in'\ncontact='rubber'").contact == "rubber"


def test_marks_within_names_are_kept() -> None:
    text = altered("'Harbour light'", "\"Nan's 'light' = [nice] # 1\"")
    assert design(text).name == "Nan's 'light' = [nice] # 1"
