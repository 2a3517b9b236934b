"""A check explained: the steps of the calculation, each input with where it came from."""

import json
import re
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.cli import main
from yardfast.report.calculation.explained import (
    NoCheckError,
    explained,
    explained_object,
)
from yardfast.report.data.result_schema import result_schema
from yardfast.report.messages.formulas import FORMULAS

TOWER = "examples/light-tower.toml"
TYPESET = Path(__file__).parents[2] / "report" / "templates" / "calculation.typ"
PIECES = ("light-tower", "fingerpost", "three-pieces", "light-tower-asce")


def test_plain_formulas_are_those_on_paper_with_the_same_numbers():
    """Each formula of the template by name, with the values that stand in it."""
    typeset = {
        name: set(re.findall(r"#v?m?\(?v\.(\w+)", body))
        for name, body in re.findall(r'^  "([\w ]+)": v => (.*)$', TYPESET.read_text(), re.M)
    }
    plain = {name: set(re.findall(r"\{(\w+)\}", text)) for name, text in FORMULAS.items()}
    assert plain == typeset


@pytest.fixture(scope="module")
def examined():
    return {name: examine(read(f"examples/{name}.toml")) for name in PIECES}


@pytest.mark.parametrize("name", PIECES)
def test_every_check_is_explained_and_every_line_is_the_one_named(name, examined):
    found = examined[name]
    rows = found.design.text.splitlines()
    for check in found.checks:
        said = explained_object(found, check.name)
        assert said["relation"]
        assert said["source"]
        assert (said["demand"], said["capacity"]) == (check.demand, check.capacity)
        assert {one["what"] for one in said["inputs"]} >= {"site wind", "factor on wind"}
        for one in said["inputs"]:
            if one["line"] is not None:
                key = one["what"].split()[-1]
                typed = rows[one["line"] - 1]
                assert re.match(rf"\s*{key}\s*=", typed)
                assert one["value"] in typed
            elif one["from"].startswith("references/"):
                assert one["source"]
                assert one["confidence"]
            else:
                assert one["from"] == "not given"
        assert all(len(line.text) <= 79 for line in explained(found, check.name))


def test_overturning_of_the_light_tower_is_worked_again_from_what_is_printed(examined):
    """M_o = gamma_W (M_w + U a), M_r = gamma_D W (d cos - z sin): statics, digit by digit."""
    said = explained_object(examined["light-tower"], "overturning")
    steps = {
        one["formula"].partition(" =")[0]: one["values"]
        for part in said["relation"]
        for one in part["steps"]
        if "formula" in one
    }
    o, r = ({k: float(v) for k, v in steps[name].items()} for name in ("M_o", "M_r"))
    assert o["M"] == pytest.approx(o["w"] * (o["Mw"] + o["U"] * o["a"]), abs=0.1)
    assert r["M"] == pytest.approx(
        r["D"] * r["W"] * (r["d"] * r["cos"] - r["z"] * r["sin"]), rel=2e-3
    )
    assert o["M"] / r["M"] == pytest.approx(said["utilization"], rel=1e-3)
    table = next(one for one in said["inputs"] if one["what"] == "yield pressure of firm lawn")
    assert table["from"] == "references/ground/ground_values: firm lawn, yield pressure"


def test_friction_is_told_for_sliding_and_the_slope_that_is_not_given(examined):
    said = explained_object(examined["light-tower"], "sliding")
    by_name = {one["what"]: one for one in said["inputs"]}
    assert "friction of wood on firm lawn" in by_name
    assert by_name["site slope"]["from"] == "not given"
    assert by_name["site wind"]["value"] == "'58 mph'"


def test_a_name_that_is_none_offers_the_nearest(examined):
    with pytest.raises(NoCheckError, match="did you mean 'overturning'"):
        explained_object(examined["light-tower"], "overturnin")


def test_the_command_explains_as_text_and_in_the_json(capsys):
    assert main(["check", TOWER, "--explain", "sliding"]) == 1
    out = capsys.readouterr().out
    assert out.startswith("sliding, explained")
    assert "line 10 of the file" in out
    asked = ["check", TOWER, "--explain", "sliding", "--explain", "joint: tower to foot"]
    assert main([*asked, "--format", "json"]) == 1
    found = json.loads(capsys.readouterr().out)
    assert [one["name"] for one in found["explained"]] == ["sliding", "joint: tower to foot"]
    schema = result_schema()
    assert [error.message for error in Draft202012Validator(schema).iter_errors(found)] == []
    found["explained"][0]["inputs"][0]["line"] = "nine"
    assert list(Draft202012Validator(schema).iter_errors(found))
    assert main(["check", TOWER, "--explain", "slipping"]) == 2
    assert "no check is called 'slipping'" in capsys.readouterr().err
    assert main(["check", TOWER, TOWER, "--explain", "sliding"]) == 2
