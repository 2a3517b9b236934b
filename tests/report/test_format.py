"""Format 1 of design file and result: what others read and write by name stays as it is.

The names stand here as they were given out: to be added to, and never changed within the format.
"""

import json
from pathlib import Path

import pytest
from sample_file import HARBOUR_LIGHT, faults

import yardfast as yf
from yardfast.checks.inputs import SPECS, read_text
from yardfast.design.file.part_table import every_key
from yardfast.design.reader.schema import TableSpec
from yardfast.report.data.design_schema import design_schema
from yardfast.report.data.odds_record import odds_object
from yardfast.report.data.result_record import RESULT_FORMAT
from yardfast.report.data.result_schema import result_schema

GIVEN_OUT = json.loads((Path(__file__).parent / "format_1.json").read_text(encoding="utf-8"))


def paths(schema, path=""):
    """Yield every name of a schema that a result must have, as a path."""
    for each in schema.get("anyOf", ()):
        yield from paths(each, path)
    for key in schema.get("required", ()):
        yield f"{path}.{key}"
        yield from paths(schema["properties"][key], f"{path}.{key}")
    if "items" in schema:
        yield from paths(schema["items"], f"{path}[]")


def test_a_result_has_every_name_that_format_1_gave_out():
    assert RESULT_FORMAT == 1
    assert set(GIVEN_OUT["result"]) <= set(paths(result_schema()))


def test_a_result_says_its_format():
    assert yf.check(read_text(HARBOUR_LIGHT)).to_dict()["format"] == 1


def test_a_design_file_may_hold_every_key_that_format_1_gave_out():
    """By the schema, and of parts, whose keys go by shape, by the reader."""
    for name, table in design_schema()["properties"].items():
        keys = every_key() if name == "part" else table.get("items", table)["properties"]
        assert set(GIVEN_OUT["design"][name]) <= set(keys), name


def test_every_table_of_the_reader_is_among_those_given_out():
    """A table that is new is added to the list, so that it is kept from then on."""
    specs: tuple[TableSpec, ...] = SPECS
    for spec in specs:
        assert {key.name for key in spec.keys} <= set(GIVEN_OUT["design"][spec.name]), spec.name


def test_a_file_that_says_its_format_is_read():
    assert not faults(HARBOUR_LIGHT.replace("[design]", "[design]\nformat = 1", 1))


@pytest.mark.parametrize("said", ["2", "0", "-1", "1.5", "'1'"])
def test_a_file_of_another_format_is_one_fault_that_says_which_there_is(said):
    text = HARBOUR_LIGHT.replace("[design]", f"[design]\nformat = {said}", 1)
    (fault,) = faults(text)
    assert fault.key == "format"


def test_the_odds_have_the_names_that_were_given_out():
    from yardfast.checks.odds.odds import odds

    found, told = odds(read_text(HARBOUR_LIGHT), samples=8)
    assert set(GIVEN_OUT["odds"]) <= set(odds_object(found.design, told))
