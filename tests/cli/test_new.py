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
from yardfast.cli import main
from yardfast.cli.asked import questions
from yardfast.cli.asked_site import WIND_OF
from yardfast.cli.new import KINDS, default_file
from yardfast.loads.site import Site

# --- the file ---------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_accepted_and_examined(kind):
    found = examine(read_text(default_file(kind)))
    assert found.limits.forecast_tipping is not None
    assert found.limits.forecast_sliding is not None
    assert found.limits.act is not None


@pytest.mark.parametrize("kind", KINDS)
def test_enter_at_every_question_gives_what_a_pipe_gets(kind):
    assert answered(kind)[1] == default_file(kind)


@pytest.mark.parametrize("kind", KINDS)
def test_at_most_eight_questions_are_asked(kind):
    assert sum(question.follows is None for question in questions(kind)) <= 8


@pytest.mark.parametrize("kind", KINDS)
def test_the_file_is_short_lined_and_commented(kind):
    lines = default_file(kind).splitlines()
    assert max(map(len, lines)) <= 100
    assert sum("#" in line for line in lines) > 10
    assert not any('"' in line for line in lines)


@pytest.mark.parametrize("kind", KINDS)
def test_no_map_wind_stands_in_a_file_that_nobody_asked_for_it(kind):
    text = default_file(kind)
    assert "105" not in text
    assert read_text(text).table(Site).method == "forecast"


@pytest.mark.parametrize(
    ("word", "product"),
    [("advisory", "Wind Advisory"), ("warning", "High Wind Warning")],
)
def test_the_gusts_offered_are_those_at_which_warnings_start(word, product):
    # Criteria of the US National Weather Service: tests/published/data/forecast_thresholds.csv
    row = printed.table("forecast_thresholds").one("product", product)
    (number,) = re.findall(r"^(?:>=)?(\d+)", row["gust"])
    assert WIND_OF[word] == f"{number} mph"


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
    assert all(kind in told for kind in KINDS)


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
