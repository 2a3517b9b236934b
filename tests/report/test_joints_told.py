"""What a person and a program read of joints."""

import json
import re

import pytest
from joint_designs import POST, TOWER, joint

from yardfast.cli import main, screen
from yardfast.report.fastening.fastener_words import plural

NAILS = joint("block", "plank", "8d common nail", 2)


@pytest.fixture
def run(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(screen, "screen_columns", lambda: 70)  # no picture between the words

    def run(text, *arguments):
        file = tmp_path / "piece.toml"
        file.write_text(text, encoding="utf-8")
        status = main([arguments[0], str(file), *arguments[1:]])
        return status, capsys.readouterr().out

    return run


def test_a_joint_that_fails_comes_with_what_would_hold(run):
    status, out = run(POST + NAILS, "check")
    assert status == 1
    assert "COMES APART" in out
    plain = " ".join(" ".join(re.split(r"  +[|+]", line)[0] for line in out.splitlines()).split())
    assert "use 8d common nails, 4 of them" in plain
    assert "#6 wood screws 1 3/4 in long, 2 of them" in plain
    assert all(len(line) <= 80 for line in out.splitlines())


def test_the_table_has_a_line_for_each_joint(run):
    _, out = run(POST + NAILS, "check", "--numbers")
    (line,) = [line for line in out.splitlines() if line.startswith("  joint ")]
    assert "block to plank" in line
    assert line.endswith("no")


@pytest.mark.slow
def test_blocks_are_named_where_an_edge_holds_nothing(run):
    status, out = run(TOWER + joint(), "check")
    assert status == 1
    plain = " ".join(out.split())
    # through the 1 1/2 in ring and into the blocks: 2 1/2 in leave 1 in, through 3/4 in walls 1 3/4
    assert "set blocks inside, at least 1 3/4 in thick, each part to them by" in plain


def test_how_thick_blocks_have_to_be_stands_beside_what_would_hold(run):
    weak = joint(fastener="#8 wood screw 2 1/2 in", count=2, blocks="redwood")
    _, out = run(TOWER.replace("58 mph", "90 mph") + weak, "check")
    plain = " ".join(out.split())
    # through the 3/4 in wall of the tower the point of 2 1/2 in stands 1 3/4 in deep
    assert "use #8 wood screws 2 1/2 in long, 6 of them" in plain
    assert "(blocks at least 1 3/4 in thick)" in plain


def test_a_point_that_goes_in_too_little_comes_with_both_lengths(run):
    _, out = run(POST + joint("block", "plank", "#14 wood screw 1 1/2 in", 2), "check")
    # six diameters of 0.242 in are 1.452 in; through 3/4 in of plank 3/4 in is left
    assert "too short: 1 1/2 in must be in block, this has 3/4 in; use #14" in " ".join(out.split())


def test_an_engineer_reads_mode_factors_and_both_bases(run):
    _, out = run(POST + NAILS, "check", "--engineer")
    plain = " ".join(out.split())
    assert "mode IIIs" in plain
    assert "(Wood Handbook), over a factor of 5" in plain
    assert "judged by NDS" in plain


def test_a_program_reads_the_same(run):
    _, out = run(POST + NAILS, "check", "--format", "json")
    found = json.loads(out)
    (one,) = found["joints"]
    check = next(each for each in found["checks"] if each["name"] == "joint: block to plank")
    assert one["fastener"] == "8d common nail"
    assert one["tension_N"] ** 2 + one["shear_N"] ** 2 == pytest.approx(check["demand"] ** 2)
    assert one["withdrawal_N"] < one["mean_withdrawal_N"]
    # an average ultimate over five is more than what NDS leaves of a nail that gets wet
    assert not check["passes"]


def test_sizing_tells_every_joint(run):
    status, out = run(POST + NAILS, "size", "--all")
    assert status == 0
    assert "\nJoints\n" in out
    assert "use 8d common nails, 4 of them" in out


def test_sizing_as_json_keeps_joints_apart_from_remedies(run):
    _, out = run(POST + NAILS, "size", "--format", "json")
    found = json.loads(out)
    assert {remedy["kind"] for remedy in found["remedies"]} <= {
        "base width",
        "ballast",
        "anchors",
        "guys",
        "height",
        "wind",
    }
    (one,) = found["joints"]
    assert [remedy["kind"] for remedy in one["remedies"]] == ["more", "larger", "screws"]
    assert all(remedy["utilization"] <= 1.0 for remedy in one["remedies"])
    assert one["remedies"][0]["next_smaller_passes"] is False


def test_a_joint_that_holds_says_how_far_it_is_used(run):
    _, out = run(POST + joint("block", "plank", "#10 wood screw 3 in", 4), "size", "--all")
    assert "block to plank: holds, at" in out


def test_several_pieces_say_whether_their_joints_were_checked(tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(screen, "screen_columns", lambda: 70)
    texts = {"bare": POST, "nailed": POST + joint("block", "plank", "#10 wood screw 3 in", 4)}
    files = []
    for name, text in texts.items():
        files.append(tmp_path / f"{name}.toml")
        files[-1].write_text(text.replace("A block", name), encoding="utf-8")
    main(["check", *map(str, files)])
    out = " ".join(capsys.readouterr().out.split())
    assert "2 pieces" in out
    main(["check", str(files[0])])
    assert "if the block is fastened" in " ".join(capsys.readouterr().out.split())
    main(["check", str(files[1])])
    assert "one joint checked, holds." in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize(
    ("one", "several"),
    [
        ("8d common nail", "8d common nails"),
        ("#10 wood screw 3 in", "#10 wood screws 3 in"),
        ("1/4 lag screw 5 in", "1/4 lag screws 5 in"),
        ("16d sinker", "16d sinker"),
    ],
)
def test_a_fastener_named_in_the_plural(one, several):
    assert plural(one) == several
