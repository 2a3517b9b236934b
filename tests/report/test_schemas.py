"""The schemas of design file and result, tried by an independent validator (jsonschema)."""

import json
import tomllib
from datetime import date
from pathlib import Path

import pytest
from any_design import any_design
from garden import EXAMPLES, each_example
from jsonschema import Draft202012Validator
from sample_file import HARBOUR_LIGHT, faults
from word_designs import TEXTS

import yardfast as yf
from yardfast.checks.inputs import read_text
from yardfast.checks.odds.odds import odds
from yardfast.cli import main
from yardfast.report.data.design_schema import design_schema
from yardfast.report.data.odds_record import odds_object, odds_schema
from yardfast.report.data.result_schema import result_schema

DESIGN, RESULT, ODDS = (
    Draft202012Validator(one) for one in (design_schema(), result_schema(), odds_schema())
)


def as_json(value):
    """TOML's own days as text; everything else is JSON already."""
    if isinstance(value, dict):
        return {key: as_json(each) for key, each in value.items()}
    if isinstance(value, list):
        return [as_json(each) for each in value]
    return value.isoformat() if isinstance(value, date) else value


def wrong(text):
    return sorted(error.json_path for error in DESIGN.iter_errors(as_json(tomllib.loads(text))))


def test_all_are_schemas():
    Draft202012Validator.check_schema(design_schema())
    Draft202012Validator.check_schema(odds_schema())
    Draft202012Validator.check_schema(result_schema())


@each_example
def test_every_example_is_one_and_so_is_its_result(file):
    assert wrong(file.read_text(encoding="utf-8")) == []
    found = yf.check(file).to_dict()
    assert [error.message for error in RESULT.iter_errors(found)] == []


@pytest.mark.parametrize("seed", range(60))
def test_what_the_reader_takes_of_random_files_the_schema_takes(seed):
    text = any_design(seed)
    if not faults(text):
        assert wrong(text) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("sides    = 8", "sides    = 2"),
        ("sides    = 8", "sides    = 8.5"),
        ("across   = '20 in'", "across   = 20"),
        ("across   = '20 in'", "acros    = '20 in'"),
        ("shape    = 'frame'", "shape    = 'blob'"),
        ("lumber   = '2x4 flat'", "wall     = '1 in'"),
        ("[site]", "[sight]"),
        ("units = 'imperial'", "units = 'cubits'"),
        ("ground   = 'firm lawn'", "ground   = 'mud'"),
        ("on       = 'foot'", "on       = 'foot'\nat = ['1 in', '1 in']"),
        ("on       = 'foot'", "on       = 'foot'\nloose = 'yes'"),
    ],
)
def test_what_the_reader_refuses_for_its_form_the_schema_refuses(old, new):
    text = HARBOUR_LIGHT.replace(old, new, 1)
    assert text != HARBOUR_LIGHT
    assert wrong(HARBOUR_LIGHT) == []
    assert faults(text)
    assert wrong(text)


def test_a_result_that_lost_a_key_or_has_text_for_a_number_is_none():
    found = yf.check(read_text(HARBOUR_LIGHT)).to_dict()
    assert RESULT.is_valid(found)
    lost = json.loads(json.dumps(found))
    del lost["limits"]["push_N"]
    assert not RESULT.is_valid(lost)
    text = json.loads(json.dumps(found))
    text["geometry"]["mass_kg"] = "51 lb"
    assert not RESULT.is_valid(text)


def beside(found, schema, path):
    """Yield the path of every key that the schema does not name."""
    known = schema.get("properties", {})
    for each in schema.get("anyOf", ()):
        known = known or each.get("properties", {})
    if isinstance(found, dict):
        for key, value in found.items():
            yield from beside(value, known.get(key, {}), f"{path}.{key}")
            if key not in known:
                yield f"{path}.{key}"
    elif isinstance(found, list):
        for value in found:
            yield from beside(value, schema.get("items", {}), path)


@pytest.mark.slow
def test_every_key_of_a_result_is_in_its_schema():
    for file in EXAMPLES[:6]:
        assert list(beside(yf.check(file).to_dict(), result_schema(), "")) == []


def test_every_word_of_the_verdict_is_in_the_schema():
    for text in TEXTS.values():
        assert RESULT.is_valid(yf.check(read_text(text)).to_dict())


GUSTS = HARBOUR_LIGHT.replace("[site]", "[site]\ngusts = { 10 = '60 mph', 50 = '75 mph' }", 1)


def told_of(design):
    """Return the odds of a design as a program reads them."""
    return odds_object(design, odds(design, samples=64)[1])


@pytest.mark.parametrize(
    "piece", ["light-tower", "fingerpost", "heron", GUSTS], ids=lambda piece: piece[:12]
)
def test_odds_are_as_their_schema_says(piece):
    of_file = Path(yf.__file__).parent / "examples" / f"{piece}.toml"
    found = told_of(read_text(GUSTS) if piece == GUSTS else yf.read(of_file))
    assert (found["per_year"] is None) == (piece != GUSTS)
    assert [error.message for error in ODDS.iter_errors(found)] == []
    assert list(beside(found, odds_schema(), "")) == []


@pytest.mark.parametrize(
    ("key", "wrong"),
    [
        ("probability_at_asked_wind", 1.5),
        ("probability_at_asked_wind", None),
        ("asked_forecast_gust_m_s", "58 mph"),
        ("years", 0),
        ("sensitivity", [{"input": "luck", "share": 0.5}]),
        ("tipping_forecast_gust_m_s", {"p5": 1.0, "p50": 2.0}),
        ("format", 2),
    ],
)
def test_odds_that_are_none_are_refused(key, wrong):
    found = told_of(read_text(HARBOUR_LIGHT))
    assert ODDS.is_valid(found)
    assert not ODDS.is_valid({**found, key: wrong})
    assert not ODDS.is_valid({name: each for name, each in found.items() if name != key})


@pytest.mark.parametrize(
    ("of", "title"), [("design", "design file"), ("result", "result"), ("odds", "odds")]
)
def test_the_command_prints_them(capsys, of, title):
    assert main(["schema", of]) == 0
    assert json.loads(capsys.readouterr().out)["title"] == f"Yardfast {title}, format 1"
