"""`yardfast size --kind`: the table of base widths before there is a design."""

import json
import re

import pytest

from yardfast.cli import main


def said(capsys, *words):
    """Run the command; return its status, standard output and standard error."""
    status = main(["size", *words])
    told = capsys.readouterr()
    return status, told.out, told.err


TOWER = ["--kind", "tower", "--sides", "6", "--height", "30 in", "--body", "18 in, 10 in"]


def test_a_kind_gets_a_table_of_base_widths(capsys):
    status, out, err = said(capsys, *TOWER, "--ground", "paving", "--wind", "40 mph")
    lines = out.splitlines()
    assert (status, err) == (0, "")
    assert max(map(len, lines)) <= 80
    for word in ("foot", "weight", "tips", "slides", "act at", "pushed over by", "Taken: "):
        assert word in out
    assert sum(" lb " in line for line in lines[4:14]) == 9
    assert "slides before it tips" in out
    assert "40 mph" in out
    assert "low in the 18 in foot" in " ".join(out.split())


def test_a_kind_as_json_is_what_a_file_of_it_gives(capsys):
    words = [*TOWER, "--foot", "24 in, 2x6 flat", "--ground", "paving", "--format", "json"]
    status, out, _ = said(capsys, *words)
    found = json.loads(out)
    assert status == 0
    assert (found["format"], found["kind"]) == (1, "tower")
    assert found["curve"][0]["value"] == pytest.approx(24 * 0.0254)
    assert len(found["curve"]) == 9
    assert found["ballast"]["unit"] == "kg"


def test_metric_sizes_give_a_metric_table(capsys):
    words = ("--kind", "post", "--sides", "4", "--height", "900 mm", "--body", "140 mm")
    status, out, _ = said(capsys, *words, "--ground", "paving")
    assert status == 0
    assert " kg" in out
    assert "km/h" in out
    assert " lb" not in out


@pytest.mark.slow
@pytest.mark.parametrize(("height", "eaves"), [("24 in", "66 in"), ("6 ft", "114 in")])
def test_eaves_that_nobody_gave_are_above_the_wall(capsys, height, eaves):
    words = ("--kind", "well", "--sides", "6", "--height", height, "--body", "18 in, 10 in")
    status, out, err = said(capsys, *words)
    assert (status, err) == (0, "")
    assert f"eaves {eaves}" in out


def test_a_default_that_does_not_go_with_the_sizes_is_named(capsys):
    words = ("--kind", "wheel", "--sides", "4", "--height", "6 in", "--body", "18 in, 10 in")
    status, out, err = said(capsys, *words)
    assert (status, out) == (2, "")
    assert "'Wheel: its width over all, and its blades', not given" in err
    assert "clear the ground" in err


def test_what_was_typed_is_said_again_and_the_next_command_stands_last(capsys):
    _, out, _ = said(capsys, *TOWER, "--wind", "58 mph")
    *_, last = out.splitlines()
    assert last == "Next: yardfast new tower"
    told = " ".join(out.split())
    assert "sides 6; height 30 in; body 18 in, 10 in; wind 58 mph." in told
    assert "over: above 335 mph" in told  # 150 m/s


def test_anchors_are_named_with_the_pull_on_each(capsys):
    _, out, _ = said(capsys, *TOWER, "--wind", "58 mph")
    assert re.search(
        r"anchored: \w+ (stake|ground anchor)s? .* each holds [\d,]+ lb up", _flat(out)
    )
    _, calm, _ = said(capsys, *TOWER, "--wind", "10 mph")
    assert "anchored" not in calm


def _flat(text):
    return " ".join(text.split())
