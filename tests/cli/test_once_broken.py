"""Designs of which a command once fell over: each is answered, or refused with one clear fault."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from once_broken import ANSWERED, FOOT, HEAD, INLAY, REFUSED
from sample_file import HARBOUR_LIGHT

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.cli import main
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
