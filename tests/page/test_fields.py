"""The form's fields, and a text with one of them changed: all else of it stays."""

import pytest
from garden import EXAMPLES, each_example

from yardfast.checks.inputs import read_text
from yardfast.design.reader.scan import Spot
from yardfast.design.structure import build_structure
from yardfast.page.edited import with_value
from yardfast.page.fields import fields_of
from yardfast.page.leading import leading

LIGHT = (EXAMPLES[0].parent / "light-tower.toml").read_text(encoding="utf-8")


def _spot(name):
    table, number, key = name.split(".")
    return Spot(table, int(number), key)


def _fields(text):
    return {field.id: field for group in fields_of(text) for field in group.fields}


@each_example
def test_every_field_typed_as_it_stands_leaves_the_design_as_it_was(file):
    text = file.read_text(encoding="utf-8")
    before = read_text(text, str(file))
    for field in _fields(text).values():
        again = with_value(text, _spot(field.id), field.value)
        assert len(again.splitlines()) == len(text.splitlines())
        assert read_text(again, str(file)).parts == before.parts, field.id


@each_example
def test_a_design_has_a_field_for_every_size_of_it(file):
    """What a line of the file says between quote marks with a unit, a field says too."""
    text = file.read_text(encoding="utf-8")
    values = {value for field in _fields(text).values() for value in field.value}
    for line in text.splitlines():
        key, _, value = line.partition("=")
        value = value.strip()
        if value.startswith("'") and key.strip() not in ("outline", "gust_record"):
            assert value[1:].split("'")[0] in values, line


def test_a_changed_value_keeps_comments_and_all_other_lines():
    text = with_value(LIGHT, Spot("part", 0, "across"), ["30 in"])
    new, old = text.splitlines(), LIGHT.splitlines()
    changed = [k for k, line in enumerate(new) if line != old[k]]
    assert [new[k] for k in changed] == [
        "across   = '30 in'               # flat to flat; over points it is 26 in"
    ]


@pytest.mark.parametrize("typed", ['2 ft 6"', "5'-6 1/2\"", "½ in", "1' 3\"", "30"])
def test_what_is_typed_stands_in_the_file_as_it_was_typed(typed):
    text = with_value(LIGHT, Spot("part", 0, "across"), [typed])
    assert _fields(text)["part.0.across"].value == (typed,)


def test_a_line_break_typed_into_a_field_adds_no_line():
    text = with_value(LIGHT, Spot("part", 0, "name"), ["foot'\n[site]\nwind = '1 mph"])
    assert len(text.splitlines()) == len(LIGHT.splitlines())


def test_a_key_that_was_not_there_stands_behind_its_table_and_an_emptied_one_goes():
    text = with_value(LIGHT, Spot("part", 1, "wall"), ["3/4 in"])
    assert "wall = '3/4 in'" in text
    assert text.index("wall = '3/4 in'") < text.index("'gallery'")
    assert with_value(text, Spot("part", 1, "wall"), [""]) == LIGHT


@each_example
def test_foot_body_ground_and_wind_come_first(file):
    text = file.read_text(encoding="utf-8")
    first = leading(build_structure(read_text(text, str(file))))
    there = [name for name in first if name in _fields(text)]
    assert "site.0.wind" in there
    assert "site.0.ground" in there
    assert any(name.startswith("part.") for name in there)


def test_of_the_light_tower_height_foot_and_both_widths_come_first():
    first = leading(build_structure(read_text(LIGHT)))
    there = [name for name in first if name in _fields(LIGHT)]
    assert there[:4] == ["part.1.height", "part.0.across", "part.1.bottom", "part.1.top"]
