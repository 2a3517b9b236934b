"""`yardfast new`: the file that it writes for each kind, and what it never writes over."""

import os
import re
import select
import subprocess
import sys

import printed
import pytest
from scripted_talk import answered

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.verdict import Word
from yardfast.cli import main
from yardfast.cli.commands.new import default_file, file_of
from yardfast.cli.starting.pieces import PIECE_KINDS, piece
from yardfast.cli.starting.questions import given
from yardfast.design.shapes.hulls import corners
from yardfast.design.structure import build_structure
from yardfast.loads.wind.site import Site

# --- the file ---------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_every_kind_is_accepted_and_examined(kind):
    found = examine(read_text(default_file(kind)))
    assert found.limits.forecast_tipping is not None
    assert found.limits.forecast_sliding is not None
    assert found.limits.act is not None


@pytest.mark.slow
@pytest.mark.parametrize("kind", PIECE_KINDS)
@pytest.mark.parametrize("metric", [False, True], ids=["imperial", "metric"])
def test_a_starting_piece_can_be_held_with_what_is_offered(kind, metric):
    verdict = examine(read_text(default_file(kind, metric))).verdict
    assert verdict.may_be_sold, (verdict.word, [check.name for check in verdict.mend])


def test_rails_and_a_seat_bring_the_anchors_that_they_ask_for():
    assert "[[anchor]]" not in default_file("footbridge")
    for text in (file_of("footbridge", {"rails": "30 in"}), default_file("swing")):
        assert examine(read_text(text)).verdict.word is Word.HELD_DOWN


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_enter_at_every_question_gives_what_a_pipe_gets(kind):
    assert answered(kind)[1] == default_file(kind)


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_at_most_eight_questions_are_asked(kind):
    assert 5 <= sum(not question.when for question in piece(kind).questions) <= 8


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_the_file_is_short_lined_and_commented(kind):
    lines = default_file(kind).splitlines()
    assert max(map(len, lines)) <= 100
    assert sum("#" in line for line in lines) > 10
    assert not any('"' in line for line in lines)


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_no_map_wind_stands_in_a_file_that_nobody_asked_for_it(kind):
    text = default_file(kind)
    assert "105" not in text
    assert read_text(text).table(Site).method == "forecast"


@pytest.mark.parametrize(
    ("number", "product"),
    [("1", "Wind Advisory"), ("2", "High Wind Warning")],
)
def test_the_gusts_offered_are_those_at_which_warnings_start(number, product):
    # Criteria of the US National Weather Service: tests/published/data/forecast_thresholds.csv
    row = printed.table("forecast_thresholds").one("product", product)
    (gust,) = re.findall(r"^(?:>=)?(\d+)", row["gust"])
    assert f"'{gust} mph'" in answered("tower", *[""] * 7, number)[1]


@pytest.mark.slow
@pytest.mark.parametrize(
    ("kind", "lines"),
    [
        ("tower", ["6", "1200 mm", "400 mm, 250 mm", "18 mm marine plywood"]),
        ("well", ["0", "600 mm"]),
        ("post", ["0", "1200 mm"]),
        ("sign", ["1200 mm, 600 mm"]),
        ("arbor", ["1200 mm, 600 mm"]),
        ("wheel", ["6", "1.5 m"]),
    ],
)
def test_answers_in_metric_make_a_metric_design(kind, lines):
    design, text, _ = answered(kind, *lines)
    assert design.units == "metric"
    assert not re.search(r"\d (in|ft)'", re.sub(r"#.*", "", text))
    assert examine(design).limits.act is not None


# --- the command ------------------------------------------------------------------------------


def test_a_pipe_gets_the_defaults_on_standard_output(capsys):
    assert main(["new", "tower"]) == 0
    assert capsys.readouterr().out == default_file("tower")


def test_a_file_is_written_once_and_never_silently_over(tmp_path, capsys):
    file = tmp_path / "light.toml"
    assert main(["new", "tower", "-o", str(file)]) == 0
    assert str(file) in capsys.readouterr().out
    assert file.read_text(encoding="utf-8") == default_file("tower")
    file.write_text("mine", encoding="utf-8")
    assert main(["new", "post", "-o", str(file)]) == 2
    told = capsys.readouterr()
    assert "exists already" in told.err
    assert told.out == ""
    assert file.read_text(encoding="utf-8") == "mine"
    assert main(["new", "post", "-o", str(file), "--force"]) == 0
    assert file.read_text(encoding="utf-8") == default_file("post")


@pytest.mark.parametrize(
    ("word", "near"),
    [("towr", "tower"), ("windmil", "wheel"), ("lighthouse", "tower"), ("pergola", "arbor")],
)
def test_an_unknown_kind_offers_the_nearest(word, near, capsys):
    assert main(["new", word]) == 2
    told = capsys.readouterr()
    assert f"Did you mean {near}?" in told.err
    assert told.out == ""


def test_no_kind_in_a_pipe_names_the_kinds(capsys):
    assert main(["new"]) == 2
    told = capsys.readouterr().err
    assert all(kind in told for kind in PIECE_KINDS)


@pytest.mark.parametrize("where", [".", "no/such/folder/light.toml", "nul\0.toml"])
def test_a_place_that_cannot_be_written_is_said_in_one_line(where, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(["new", "tower", "-o", where]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of POSIX")
@pytest.mark.parametrize("leaving", [b"\x03", b"\x04"], ids=["Ctrl-C", "end of input"])
def test_leaving_at_a_terminal_writes_nothing(leaving, tmp_path):
    file = tmp_path / "light.toml"
    status, errors, screen = at_terminal(["new", "tower", "-o", str(file)], [b"6\n", leaving])
    assert status == 2
    assert "nothing was written" in errors
    assert len(errors.strip().splitlines()) == 1
    assert "1 of 8" in screen
    assert not file.exists()


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of POSIX")
def test_a_terminal_is_asked_for_the_kind_too(tmp_path):
    file = tmp_path / "piece.toml"
    status, errors, screen = at_terminal(["new", "-o", str(file)], [b"3\n"] + [b"\n"] * 9)
    assert (status, errors) == (0, "")
    assert "8 of 8" in screen
    assert file.read_text(encoding="utf-8") == default_file("post")


def at_terminal(arguments, keys):
    """Run the command at a terminal of its own and type keys, each after a prompt."""
    import pty

    ours, theirs = pty.openpty()
    program = (
        "import fcntl, signal, sys, termios; fcntl.ioctl(0, termios.TIOCSCTTY, 0);"
        # tests that a shell runs in the background hand on that Ctrl-C is to be ignored
        "signal.signal(signal.SIGINT, signal.default_int_handler);"
        f"from yardfast.cli import main; sys.exit(main({arguments!r}))"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", program],
        stdin=theirs,
        stdout=theirs,
        stderr=subprocess.PIPE,
        start_new_session=True,
    )
    os.close(theirs)
    screen = ""
    for key in keys:
        screen += _until(": ", ours)
        os.write(ours, key)
    screen += _until(None, ours)
    errors = process.communicate(timeout=20)[1]
    os.close(ours)
    return process.returncode, errors.decode(), screen


def _until(end, terminal):
    """Return what a terminal shows until it ends so, or is closed; fail after a while."""
    seen = ""
    while end is None or not seen.endswith(end):
        if not select.select([terminal], [], [], 20.0)[0]:
            pytest.fail(f"nothing more came after {seen!r}")
        try:
            more = os.read(terminal, 4096).decode()
        except OSError:  # how Linux says that the other end is closed
            more = ""
        if not more:
            return seen
        seen += more
    return seen


# --- the pieces -------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_metric_people_get_metric_sizes_lumber_and_sheets(kind):
    text = default_file(kind, metric=True)
    assert read_text(text).units == "metric"
    plain = re.sub(r"#.*", "", text)
    assert not re.search(r"\d (in|ft|lb|mph)\b(?<!58 mph)|\d/\d|'\d+x\d+( flat| on edge)?'", plain)
    assert examine(read_text(text)).limits.act is not None


@pytest.mark.parametrize("kind", PIECE_KINDS)
def test_every_size_that_is_asked_changes_the_file(kind):
    usual = default_file(kind)
    for place, question in enumerate(piece(kind).questions):
        if question.when or question.takes not in OTHER:
            continue
        typed = {question.slot: OTHER[question.takes](question)}
        assert file_of(kind, typed) != usual, (place, question.slot)


def _larger(question):
    answers = given(piece_of(question).questions, {}, False)
    return ", ".join(
        f"{1.25 * float(answers.values[name]) / 0.0254:.0f} in" for name in question.slot.split(",")
    )


def piece_of(question):
    return next(piece(kind) for kind in PIECE_KINDS if question in piece(kind).questions)


OTHER = {
    "length": _larger,
    "lengths": _larger,
    "length or none": lambda _: "7 in",
    "sides": lambda _: "6",
    "walls": lambda _: "5/8 plywood",
    "widths": lambda _: "19 in, 11 in",
    "foot": lambda _: "50 in, 2x8 flat",
    "standing lumber": lambda _: "6x6",
    "lying lumber": lambda _: "2x8 on edge",
    "material": lambda _: "white oak",
    "wheel": lambda _: "40 in, 8 blades",
}


@pytest.mark.parametrize(
    ("kind", "typed", "part", "height"),
    [
        # sizes by plain geometry from what was answered
        ("obelisk", {"height": "7 ft"}, "legs", 1.5 + 84.0),
        ("obelisk", {"height": "7 ft", "built": "boards"}, "body", 1.5 + 84.0),
        ("planter", {"long,wide,high": "40 in, 20 in, 18 in", "trellis": "60 in"}, "trellis", 60.0),
        ("a-frame", {"width,height": "24 in, 50 in", "spread": "28 in"}, "boards", 1.5 + 48.0),
        ("crossed boards", {"height": "60 in"}, "board", 3.5 + 60.0),
        ("mailbox", {"height": "44 in"}, "arm", 44.0),
        ("swing", {"height": "80 in"}, "legs", 80.0),
    ],
)
def test_a_piece_is_as_high_as_was_answered(kind, typed, part, height):
    structure = build_structure(read_text(file_of(kind, typed)))
    names = [each.name for each in structure.design.parts]
    tops = [
        max(float(body.place(corners(hull))[:, 2].max()) for hull in body.shape.hulls())
        for body in structure.bodies
        if names[body.part] == part
    ]
    thick = 0.6 if kind == "a-frame" else 0.01  # the upper edge of a leaning board is 1/2 in thick
    assert max(tops) / 0.0254 == pytest.approx(height, abs=thick)


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal of POSIX")
def test_the_answer_comes_straight_after_and_one_number_is_changed(tmp_path):
    file = tmp_path / "light.toml"
    keys = [b"\n"] * 8 + [b"2\n", b"30 in\n", b"\n"]
    status, errors, screen = at_terminal(["new", "tower", "-o", str(file)], keys)
    assert (status, errors) == (0, "")
    assert file.read_text(encoding="utf-8") == file_of("tower", {"height": "30 in"})
    assert screen.count("Change one and look again?") == 2
    assert screen.count("Garden tower") >= 2


def test_without_standard_input_the_defaults_are_written(tmp_path):
    program = "import sys; from yardfast.cli import main; sys.exit(main(['new', 'tower']))"
    done = subprocess.run(
        ["/bin/sh", "-c", '"$0" -c "$1" <&-', sys.executable, program],
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == default_file("tower")
