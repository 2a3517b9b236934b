"""What a person and a program read of fastened seams."""

import json
import re

import numpy as np
import pytest
from bare_checks import bare_check
from pages import words
from seam_designs import seam, tower

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.cli import main, screen
from yardfast.report.data.result import Result
from yardfast.report.printed.sheet import sheet
from yardfast.report.told.passing_words import named, passing

WEAK = seam(fastener="6d common nail", spacing="12 in")
SECOND = """
[[part]]
name     = 'lantern'
shape    = 'shell'
on       = 'tower'
sides    = 8
bottom   = '9 in'
top      = '9 in'
height   = '9 in'
wall     = '1/2 in'
material = 'softwood plywood'

"""


@pytest.fixture
def run(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(screen, "screen_columns", lambda: 70)  # no picture between the words

    def run(text, *arguments):
        file = tmp_path / "piece.toml"
        file.write_text(text, encoding="utf-8")
        status = main([arguments[0], str(file), *arguments[1:]])
        return status, capsys.readouterr().out

    return run


def test_seams_that_fail_come_with_what_would_hold(run):
    status, out = run(tower("100 mph") + WEAK, "check")
    plain = " ".join(out.split())
    assert status == 1
    assert "COMES APART" in plain
    assert "1 body with seams is too weak for 100 mph" in plain
    assert "use 6d common nails, one every" in plain
    assert all(len(line) <= 80 for line in out.splitlines())
    _, out = run(tower("100 mph") + WEAK, "check", "--numbers")
    (row,) = [line for line in out.splitlines() if line.startswith("  seams  ")]
    assert row.endswith("no")


def test_cleats_are_named_where_nothing_counts(run):
    _, out = run(tower() + seam(cleat=None), "check", "--all")
    plain = " ".join(out.split())
    assert "set a cleat inside each corner (cleat = 'spruce-pine-fir')" in plain
    assert "What fastens 'seams of tower' is driven into the edge of a panel" in plain


def test_how_thick_cleats_have_to_be_and_how_short_a_point_is_stand_on_the_screen(run):
    text = tower() + seam(fastener="16 ga staple 3/4 in", cleat="redwood")
    _, out = run(text, "check")
    plain = " ".join(out.split())
    # 14 legs of 0.0625 in (16 gage) have to go in; a wall of 3/4 in takes all of 3/4 in
    assert "too short: 7/8 in must be in the cleat, this has 0 in; use 16 ga staples" in plain
    # what is 1 3/4 in long reaches 1 in beyond a wall of 3/4 in
    spaced = r"use 16 ga staples 1 3/4 in long, one every [\d /]+ in.*\(cleats at least"
    assert re.search(spaced, plain)
    _, out = run(tower() + seam(fastener="#8 wood screw 2 in"), "check", "--assumed")
    assert "at least 1 1/4 in thick" in " ".join(out.split())


def test_what_is_known_of_brads_stands_among_what_was_assumed(run):
    _, out = run(tower() + seam(fastener="18 ga brad 2 in"), "check", "--assumed")
    # Appendix I of NDS 2018 prints no wire below 0.099 in (memory)
    assert "18 ga brads 2 in: head doubtful; steel as of the thinnest nail" in " ".join(out.split())
    _, out = run(tower() + seam(fastener="8d common nail"), "check", "--assumed")
    assert "steel as of the thinnest nail" not in " ".join(out.split())


def test_an_engineer_reads_what_is_asked_and_held(run):
    _, out = run(tower() + seam(), "check", "--engineer", "--assumed")
    plain = " ".join(out.split())
    assert "seam: tower: utilization" in plain
    assert "one every 8 in along each of 8 seams in each panel" in plain
    assert "into a cleat of redwood (at least as thick as that)" in plain
    assert "judged above as they are fastened" in plain
    assert "Seams of 'tower': each panel by a row of its own" in plain


def test_a_program_reads_the_same(run):
    _, out = run(tower() + seam(), "check", "--format", "json")
    found = json.loads(out)
    check = next(each for each in found["checks"] if each["name"] == "seam: tower")
    (one,) = found["seams"]
    fastened = one["fastened"]
    assert fastened["spacing_m"] == pytest.approx(8 * 0.0254)
    sideways = np.hypot(one["flow_N_m"], one["hoop_N_m"])
    assert fastened["shear_N"] == pytest.approx(sideways * 8 * 0.0254)
    assert fastened["tension_N"] == pytest.approx(one["pull_N_m"] * 8 * 0.0254)
    asked = fastened["tension_N"] ** 2 + fastened["shear_N"] ** 2
    assert asked == pytest.approx(check["demand"] ** 2)
    assert fastened["utilization"] == check["utilization"]
    _, out = run(tower(), "check", "--format", "json")
    assert json.loads(out)["seams"][0]["fastened"] is None


@pytest.mark.slow
def test_sizing_tells_the_spacing_that_would_hold(run):
    _, out = run(tower("100 mph") + WEAK, "size", "--all")
    assert "\nSeams\n" in out
    assert "use 6d common nails, one every" in out
    _, out = run(tower("100 mph") + WEAK, "size", "--format", "json")
    (one,) = json.loads(out)["seams"]
    assert one["part"] == "tower"
    assert not one["passes"]
    assert {remedy["kind"] for remedy in one["remedies"]} >= {"nearer", "screws"}
    assert all(remedy["utilization"] <= 1.0 for remedy in one["remedies"])
    _, out = run(tower() + seam(), "size", "--all")
    assert "seams of tower: hold, at" in out


def test_only_seams_that_nothing_fastens_are_said_not_to_be_judged():
    def unjudged(text):
        remarks = Result(examine(read_text(text))).not_checked
        return " ".join(remark for remark in remarks if "seams" in remark)

    assert "The seams of tower and lantern were not judged" in unjudged(tower() + SECOND)
    assert "The seams of lantern were not judged" in unjudged(tower() + SECOND + seam())
    assert "were not judged" not in unjudged(tower() + seam())


def test_the_sheet_says_whose_seams_were_checked():
    def said(text):
        return words(sheet(examine(read_text(text)), "letter"))

    assert "Seams of tower checked." in said(tower() + seam())
    assert "too weak for 100 mph" in said(tower("100 mph") + WEAK)
    assert "Seams of" not in said(tower())


def test_checks_of_seams_have_plain_names():
    assert named(bare_check("seam: tower")) == "seams of tower"
    assert passing([bare_check("seam: tower")]) == "tower keeps its panels together"


def test_a_named_load_is_said_not_to_be_asked_of_the_seams():
    load = "[[load]]\nname = 'swing'\nforce = '20 lbf'\nat = ['0 in', '0 in', '30 in']\n"
    load += "direction = 'right'\n"

    def unchecked(text):
        return Result(examine(read_text(text))).not_checked

    words = "Seams are judged by the wind alone: what 'swing' asks of them was not checked."
    assert words in unchecked(tower() + seam() + load)
    assert words not in unchecked(tower() + load)
    assert words not in unchecked(tower() + seam())
