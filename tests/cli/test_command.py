"""The command as it is typed: what goes where, and the exit status."""

import json
import os
import shlex
import subprocess
import sys

import pytest
import verdict_designs

from yardfast.cli import main
from yardfast.cli.command_table import COMMANDS


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "harbour.toml").write_text(verdict_designs.HARBOUR, encoding="utf-8")
    (tmp_path / "stands.toml").write_text(verdict_designs.STANDS, encoding="utf-8")
    wrong = verdict_designs.HARBOUR.replace("'20 in'", "20").replace("'48 in'", "'48 lb'")
    (tmp_path / "wrong.toml").write_text(wrong, encoding="utf-8")
    return tmp_path


def typed(*words, **environment):
    """Run the command as its own process."""
    env = {**os.environ, "PYTHONUTF8": "0", **environment}
    return subprocess.run(
        [sys.executable, "-m", "yardfast", *words],
        capture_output=True,
        env=env,
        check=False,
        timeout=120,
    )


@pytest.mark.parametrize(
    ("files", "status"),
    [
        (["stands.toml"], 0),
        (["harbour.toml"], 1),
        (["wrong.toml"], 2),
        (["missing.toml"], 2),
        (["."], 2),
        (["stands.toml", "harbour.toml"], 1),
        (["stands.toml", "wrong.toml", "harbour.toml"], 2),
    ],
)
def test_exit_status_is_the_worst_of_all_files(folder, files, status, capsys):
    assert main(["check", *files]) == status
    assert main(["check", "--format", "json", *files]) == status


def test_a_wrong_file_leaves_standard_output_empty(folder, capsys):
    for form in ("text", "json"):
        main(["check", "wrong.toml", "--format", form])
        out, err = capsys.readouterr()
        assert out == ""
        assert "wrong.toml: 2 things to put right; nothing was worked out yet." in err
        assert "line 15  foot, across" in err
        assert "you wrote  20\n" in err
        assert "line 26  tower, height" in err


def test_json_of_one_file_is_an_object_with_the_file_as_given(folder, capsys):
    main(["check", "./harbour.toml", "--format", "json"])
    out, err = capsys.readouterr()
    assert json.loads(out)["file"] == "./harbour.toml"
    assert err == ""


def test_json_of_several_files_is_an_array_in_the_order_given(folder, capsys):
    main(["check", "stands.toml", "wrong.toml", "harbour.toml", "--format", "json"])
    found = json.loads(capsys.readouterr().out)
    assert [each["file"] for each in found] == ["stands.toml", "wrong.toml", "harbour.toml"]
    assert set(found[1]) == {"file", "faults"}
    for fault in found[1]["faults"]:
        assert set(fault) == {"line", "part", "key", "found", "expected", "hint"}
    assert found[1]["faults"][0]["line"] == 15


def test_several_files_are_shown_at_a_glance(folder, capsys):
    main(["check", "stands.toml", "harbour.toml"])
    out = capsys.readouterr().out
    assert out.index("Harbour light") < out.index("Piece")
    assert "act at" in out


@pytest.mark.parametrize(
    ("option", "said"),
    [
        ("--engineer", "For engineers"),
        ("--assumed", "- The ground is taken as level"),
        ("--cautions", "- Nobody holds it up in wind"),
    ],
)
def test_options_unfold_what_is_short_otherwise(folder, capsys, option, said):
    main(["check", "harbour.toml"])
    assert said not in capsys.readouterr().out
    main(["check", "harbour.toml", option])
    assert said in capsys.readouterr().out


def test_a_pipe_gets_no_colour_and_80_columns(folder):
    done = typed("check", "harbour.toml", COLUMNS="200", FORCE_COLOR="1")
    text = done.stdout.decode()
    assert done.returncode == 1
    assert "\x1b" not in text
    assert max(map(len, text.splitlines())) <= 80


def test_a_terminal_gets_the_same_words_in_colour(folder, monkeypatch, capsys):
    main(["check", "harbour.toml"])
    plain = capsys.readouterr().out
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("FORCE_COLOR", "1")
    monkeypatch.delenv("NO_COLOR", raising=False)
    main(["check", "harbour.toml"])
    coloured = capsys.readouterr().out
    assert "\x1b[" in coloured
    assert _without_colour(coloured) == plain
    monkeypatch.setenv("NO_COLOR", "1")
    main(["check", "harbour.toml"])
    assert capsys.readouterr().out == plain


def _without_colour(text):
    import re

    return re.sub(r"\x1b\[[\d;]*m", "", text)


def test_an_ascii_screen_does_not_end_the_run(folder):
    text = verdict_designs.STANDS.replace("'Piece'", "'Kräuter–Turm ☀'")
    (folder / "sun.toml").write_text(text, encoding="utf-8")
    done = typed("check", "sun.toml", LANG="C", LC_ALL="C", PYTHONIOENCODING="ascii")
    assert done.returncode == 0
    assert done.stdout.startswith(b"Kr?uter?Turm ?")
    assert done.stderr == b""


def test_control_characters_of_a_file_never_reach_the_screen(folder, capsys):
    text = verdict_designs.STANDS.replace("'firm lawn'", '"mud\\u001b[31m and more"')
    (folder / "odd.toml").write_text(text, encoding="utf-8")
    assert main(["check", "odd.toml"]) == 2
    err = capsys.readouterr().err
    assert "\x1b" not in err
    assert "\\x1b" in err


def test_six_faults_are_shown_then_how_many_more_and_all_if_asked(folder, capsys):
    part = "[[part]]\nname = 'p{0}'\nshape = 'blob'\n"
    text = verdict_designs.STANDS + "".join(part.format(i) for i in range(30))
    (folder / "many.toml").write_text(text, encoding="utf-8")
    assert main(["check", "many.toml"]) == 2
    err = capsys.readouterr().err
    assert err.count("you wrote  blob") == 6
    assert "... and 24 more (--all)." in err
    assert main(["check", "many.toml", "--all"]) == 2
    assert capsys.readouterr().err.count("you wrote  blob") == 30


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"\x00\x01\x02", b"", b"\x80abc", b"=" * 99])
def test_files_that_are_no_designs_are_faults(folder, capsys, content):
    (folder / "odd.toml").write_bytes(content)
    assert main(["check", "odd.toml"]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert "odd.toml" in err
    assert "Traceback" not in err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["chek", "x"], "did you mean 'check'?"),
        (["grond"], "did you mean 'grounds'?"),
        (["harbour.toml"], "yardfast check harbour.toml"),
        (["zzz"], f"there are: {', '.join(COMMANDS)}"),
        (["check"], "FILE"),
        (["check", "x.toml", "--formt"], "--formt"),
        (["check", "x.toml", "--format", "xml"], "xml"),
    ],
)
def test_a_wrong_command_is_answered_on_standard_error(folder, capsys, words, said):
    assert main(words) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert said in err


def test_alone_it_prints_a_short_menu(capsys):
    assert main([]) == 0
    out = capsys.readouterr().out
    assert len(out.splitlines()) < 17
    for command in COMMANDS:
        if command in (
            "stale",
            "sweep",
            "odds",
            "verify",
            "schema",
        ):  # told by help, and by the pages
            continue
        assert f"yardfast {command}" in out


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_with_an_example(capsys, command):
    assert main([command, "--help"]) == 0
    assert f"Example: yardfast {command}" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("names", ["materials", "grounds", "fasteners"])
def test_listings_carry_a_source_for_each_name(capsys, names):
    assert main([names]) == 0
    shown = capsys.readouterr().out
    assert max(map(len, shown.splitlines())) <= 80
    assert main([names, "--format", "json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert len(found) >= 7
    for each in found:
        assert each["source"]
        assert each["name"] in shown


def test_a_reader_that_hangs_up_ends_it_quietly(folder):
    running = subprocess.Popen(
        [sys.executable, "-m", "yardfast", "materials"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    running.stdout.close()
    err = running.stderr.read()
    running.stderr.close()
    assert running.wait(timeout=60) != 0
    assert err == b""


@pytest.mark.skipif(sys.platform == "win32", reason="needs a full device of POSIX")
@pytest.mark.parametrize("words", [["materials"], ["check", "harbour.toml"], ["--help"], []])
def test_a_full_disk_is_told_as_one(folder, words):
    plain = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
    with open("/dev/full", "w", encoding="utf-8") as full:
        done = subprocess.run(
            [sys.executable, "-m", "yardfast", *words],
            stdout=full,
            stderr=subprocess.PIPE,
            env=plain,
            check=False,
        )
    assert done.returncode == 2
    assert done.stderr == b"yardfast: the answer cannot be shown: No space left on device\n"


@pytest.mark.skipif(sys.platform == "win32", reason="needs a shell of POSIX")
@pytest.mark.parametrize(
    ("closed", "told"),
    [(">&-", b"standard output is closed"), ("2>&-", b""), (">&- 2>&-", b"")],
)
@pytest.mark.parametrize("words", [["check", "harbour.toml"], ["check", "missing.toml"]])
def test_closed_streams_end_it_without_a_traceback(folder, words, closed, told):
    line = shlex.join([sys.executable, "-m", "yardfast", *words]) + f" {closed}"
    done = subprocess.run(["sh", "-c", line], capture_output=True, check=False)
    assert done.returncode == (1 if closed == "2>&-" and words[1] == "harbour.toml" else 2)
    assert told in done.stderr
    assert b"fault of yardfast itself" not in done.stderr
    assert b"Traceback" not in done.stderr


def test_an_interrupt_ends_it_quietly(monkeypatch, capsys):
    def interrupted(arguments):
        raise KeyboardInterrupt

    monkeypatch.setattr("yardfast.cli.commands.listing.materials", interrupted)
    assert main(["materials"]) == 130
    assert capsys.readouterr().err == ""


def test_our_own_fault_is_said_to_be_ours(monkeypatch, capsys):
    def broken(arguments):
        raise ZeroDivisionError("by nought")

    monkeypatch.delenv("YARDFAST_DEBUG", raising=False)
    monkeypatch.setattr("yardfast.cli.commands.listing.materials", broken)
    assert main(["materials"]) == 2
    assert "a fault of yardfast itself" in capsys.readouterr().err


@pytest.mark.parametrize("words", [["--version"], ["--help"], ["check", "--help"], ["chek"], []])
def test_what_needs_no_numbers_imports_none(words):
    code = (
        "import sys; from yardfast.cli import main; main(sys.argv[1:]); "
        "print([m for m in ('numpy', 'rich', 'pint', 'shapely', 'scipy') if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *words], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_check_in_a_pipe_imports_neither_pint_nor_rich_nor_scipy(folder):
    code = (
        "import sys; from yardfast.cli import main; main(['check', 'harbour.toml']); "
        "print([m for m in ('rich', 'pint', 'scipy', 'matplotlib') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"
