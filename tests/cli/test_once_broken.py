"""Designs of which a command once fell over: each is answered, or refused with one clear fault."""

import json
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from once_broken import (
    ANSWERED,
    DUMBBELLS,
    EXTREME_STAKES,
    FOOT,
    HEAD,
    INLAY,
    ON_A_LINE,
    REFUSED,
    in_the_ground,
)
from sample_file import HARBOUR_LIGHT

from yardfast.checks.examination import examine
from yardfast.checks.fasteners.fastener_layout import evenly
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.cli import main
from yardfast.design import plane
from yardfast.design.faults import DesignError

COMMANDS = (
    "check piece.toml",
    "check piece.toml --all --engineer",
    "check piece.toml --format json",
    "size piece.toml --format json",
    "draw piece.toml --text",
    "draw piece.toml -o out.svg",
    "sheet piece.toml -o out.pdf --draft",
    "sheet piece.toml -o full.pdf --full --draft",
    "label piece.toml",
    "compare piece.toml --format json",
)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("YARDFAST_DEBUG", "1")  # a fault of ours comes out as what it is
    return tmp_path


@pytest.mark.slow
@pytest.mark.parametrize("what", ANSWERED)
def test_every_command_answers(folder, capsys, what):
    (folder / "piece.toml").write_text(ANSWERED[what], encoding="utf-8")
    for command in COMMANDS:
        assert main(command.split()) in (0, 1), command
        shown = capsys.readouterr().out
        if "json" in command:
            json.loads(shown, parse_constant=pytest.fail)


@pytest.mark.parametrize("what", REFUSED)
def test_what_cannot_be_is_refused_in_one_sentence(what):
    text, part, expected = REFUSED[what]
    with pytest.raises(DesignError) as refused:
        examine(read_text(text))
    (fault,) = refused.value.faults
    assert fault.part == part
    assert expected in fault.expected


def test_a_foot_too_narrow_for_a_bolt_through_it_is_offered_none_there():
    # A bolt stands 40 mm within the edge: a foot of less than 80 mm has no such place, and four
    # of them find room 120 mm apart.
    for width, offered in ((79, False), (200, True)):
        text = ANSWERED["a foot on paving too narrow for a bolt through it"]
        found = examine(read_text(text.replace("70 mm", f"{width} mm").replace("1200", "300")))
        assert (found.anchors is not None) == offered


def test_a_contact_that_falls_apart_takes_as_many_fasteners_on_either_side():
    """Edges moved in by 20 mm leave of each field of 200 mm a square of 160 mm, and nothing of the
    neck of 10 mm: six fasteners stand 4 x 160 / 3 mm apart along the two, three on each."""
    fields = [plane.box(-0.1, y, 0.1, y + 0.2) for y in (0.0, 0.4)]
    points = evenly(
        plane.union_of([*fields, plane.box(-0.005, 0.2, 0.005, 0.4)]), 6, np.array([0.0, 1.0])
    )
    for middle in (0.1, 0.5):
        off = np.abs(points - [0.0, middle])
        own = off[:, 1] < 0.15
        assert own.sum() == 3
        assert off[own].max(axis=1) == pytest.approx(0.08, abs=1e-9)
    (joint,) = examine(read_text(DUMBBELLS)).joints
    assert joint.count == 6


def test_a_figure_thin_as_a_sheet_stands_in_the_ground_and_one_like_a_hair_does_not():
    # the weight of what was drawn: (0.3 + 0.6) / 2 m x 0.9 m x 0.5 mm of steel, 7850 kg/m3
    found = examine(read_text(in_the_ground("0.5 mm", "300 mm")))
    assert found.structure.mass("typical") == pytest.approx(0.405 * 0.0005 * 7850.0, rel=2e-3)
    assert _told(found)


@pytest.mark.parametrize("what", EXTREME_STAKES)
def test_stakes_however_they_stand_are_asked_for_what_is_a_number(what):
    found = examine(read_text(EXTREME_STAKES[what]))
    (asked,) = [check for check in found.checks if check.kind is Kind.ANCHOR]
    assert _told(found)
    assert asked.passes == (what in ("in no wind", "pulled by a ship"))


def _told(found) -> bool:
    """Whether every check is told in numbers, and fails where what is asked has no end."""
    assert not np.isnan([n for c in found.checks for n in (c.demand, c.capacity, c.rank)]).any()
    return all(np.isfinite(c.demand) or not c.passes for c in found.checks)


def test_what_rests_on_a_line_has_the_little_that_it_beds_in():
    """A loose cap on the ridge of a hip 400 mm wide and 300 mm high: 10 mm down, where it beds in,
    that is 400 x 10 / 300 mm wide, and half of it is the arm of its weight."""
    found = examine(read_text(ON_A_LINE))
    (cap,) = [c for c in found.checks if c.kind is Kind.LOOSE]
    weight = found.structure.body_mass[0, 1] * 9.80665
    assert not cap.passes
    assert cap.capacity == pytest.approx(cap.dead * weight * 0.4 * 10.0 / 300.0 / 2.0, rel=1e-6)


def test_a_weight_below_the_ground_gets_no_wind():
    found = examine(read_text(ANSWERED["ballast below the ground beside a post"]))
    without = examine(read_text(ANSWERED["ballast below the ground beside a post"].split("[[b")[0]))
    assert found.wind.force.max() == pytest.approx(without.wind.force.max(), rel=1e-12)


def test_a_plate_within_an_opening_hangs_in_the_air():
    with pytest.raises(DesignError) as raised:
        examine(read_text(HEAD + FOOT + INLAY))
    (fault,) = raised.value.faults
    assert (fault.part, fault.key) == ("inlay", "on")


def test_what_nothing_moves_is_drawn_with_that_said(folder, capsys):
    (folder / "slab.toml").write_text(ANSWERED["a slab that neither tips nor slides"])
    assert main(["draw", "slab.toml", "-o", "slab.svg"]) == 0
    assert "Neither tips nor slides at any width" in (folder / "slab.svg").read_text()


def test_the_same_pattern_is_the_same_file_whatever_settings_lie_beside_it(folder):
    (folder / "piece.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    for name in ("one.dxf", "two.dxf"):
        assert main(["cuts", "piece.toml", "-o", name]) == 0
    pattern = (folder / "one.dxf").read_bytes()
    assert pattern == (folder / "two.dxf").read_bytes()
    settings = folder / "ezdxf.ini"
    command = [sys.executable, "-m", "yardfast", "cuts", "piece.toml", "-o", "three.dxf"]
    settings.write_text("[core]\nwrite_fixed_meta_data_for_testing = maybe\n")
    assert subprocess.run(command, capture_output=True, check=False).returncode == 0
    assert pattern == (folder / "three.dxf").read_bytes()
    settings.write_text("no settings at all\n")
    ran = subprocess.run([*command, "--force"], capture_output=True, check=False, text=True)
    assert (ran.returncode, "Traceback" in ran.stderr) == (2, False)
    assert "ezdxf.ini" in ran.stderr
