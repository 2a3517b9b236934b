"""A command that is interrupted at any moment leaves a file whole or as it was, and no other."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from yardfast.cli.files import written
from yardfast.cli.files.written import write

POSIX = pytest.mark.skipif(sys.platform == "win32", reason="needs signals of POSIX")
NEW, OLD = "new\n" * 30_000, "old\n"


class Stopped(BaseException):
    """As a person's interrupt, of no kind that the code could know."""


def stopped_at(line, does):
    """Call, with an end at the nth line of the module that writes; return whether it came to it."""
    left = line

    def each_line(frame, event, arg):
        nonlocal left
        if event == "line":
            left -= 1
            if left == 0:
                raise Stopped
        return each_line

    def each_call(frame, event, arg):
        return each_line if frame.f_code.co_filename == written.__file__ else None

    sys.settrace(each_call)
    try:
        does()
    except Stopped:
        return True
    finally:
        sys.settrace(None)
    return False


@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")  # not closed
@pytest.mark.parametrize("force", [False, True])
@pytest.mark.parametrize("second_names", [True, False], ids=["links", "no links"])
def test_an_end_at_any_line_leaves_it_whole_or_as_it_was(
    tmp_path, monkeypatch, force, second_names
):
    if not second_names:

        def unable(beside, target):
            raise PermissionError(1, "Operation not permitted")

        monkeypatch.setattr("os.link", unable)
    ends = 0
    for line in range(1, 200):
        file = tmp_path / f"{line}.txt"
        if force:
            file.write_text(OLD, encoding="utf-8")
        if not stopped_at(line, lambda file=file: write(file, NEW, force=force)):
            break
        ends += 1
        if file.exists():
            assert file.read_text(encoding="utf-8") in ((OLD, NEW) if force else (NEW,))
        elif force:
            pytest.fail("the file that was given up is gone")
    else:
        pytest.fail("it never came to an end")
    assert ends > 15
    assert file.read_text(encoding="utf-8") == NEW
    left = [each.name for each in tmp_path.iterdir() if each.name.startswith(".")]
    assert len(left) <= 1  # an end on the very line that tidies up


@pytest.mark.slow
@POSIX
@pytest.mark.parametrize("force", [False, True])
def test_what_is_killed_at_any_line_leaves_the_file_whole_or_as_it_was(tmp_path, force):
    """As on a loss of power: nothing runs any more, not even what tidies up."""
    for line in range(1, 200):
        file = tmp_path / f"{line}.txt"
        if force:
            file.write_text(OLD, encoding="utf-8")
        child = os.fork()
        if not child:
            code = 1
            try:
                code = _dies_at(line, lambda file=file: write(file, NEW, force=force))
            finally:
                os._exit(code)
        _, status = os.waitpid(child, 0)
        if file.exists():
            assert file.read_text(encoding="utf-8") in ((OLD, NEW) if force else (NEW,))
        else:
            assert not force
        if os.waitstatus_to_exitcode(status) == 0:
            break
    assert file.read_text(encoding="utf-8") == NEW


def _dies_at(line, does):
    left = line

    def each_line(frame, event, arg):
        nonlocal left
        if event == "line":
            left -= 1
            if left == 0:
                os._exit(9)
        return each_line

    sys.settrace(
        lambda frame, event, arg: (
            each_line if frame.f_code.co_filename == written.__file__ else None
        )
    )
    does()
    sys.settrace(None)
    return 0


def in_a_child(does):
    """Return the exit status of a process that does only so much."""
    child = os.fork()
    if not child:
        code = 1
        try:
            does()
            code = 0
        except SystemExit as leaving:
            code = leaving.code
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


@POSIX
@pytest.mark.parametrize("moment", ["os.fsync", "os.link"])
def test_one_that_is_told_to_end_puts_away_what_it_began(tmp_path, monkeypatch, moment):
    usual = getattr(os, moment[3:])

    def told_to_end(*given):
        os.kill(os.getpid(), signal.SIGTERM)
        return usual(*given)

    monkeypatch.setattr(moment, told_to_end)
    file = tmp_path / "light.toml"
    assert in_a_child(lambda: write(file, NEW)) == 128 + signal.SIGTERM
    assert [each.name for each in tmp_path.iterdir()] in ([], ["light.toml"])
    assert not file.exists() or file.read_text(encoding="utf-8") == NEW


@pytest.mark.slow
@POSIX
@pytest.mark.parametrize("force", [False, True])
def test_of_two_that_write_one_file_one_is_whole(tmp_path, force):
    """Without --force the first to finish has it, and the other is told so."""
    for k in range(20):
        file, go = tmp_path / f"{k}.txt", time.monotonic() + 0.02
        children = []
        for who in range(2):
            child = os.fork()
            if not child:
                try:
                    while time.monotonic() < go:
                        pass
                    told = write(file, f"{who}\n" * 50_000, force=force)
                    os._exit(bool(told))
                finally:
                    os._exit(9)
            children.append(child)
        ended = sorted(os.waitstatus_to_exitcode(os.waitpid(each, 0)[1]) for each in children)
        assert ended == ([0, 0] if force else [0, 1])
        assert file.read_text(encoding="utf-8") in ("0\n" * 50_000, "1\n" * 50_000)
    assert len(list(tmp_path.iterdir())) == 20


@POSIX
@pytest.mark.slow
@pytest.mark.parametrize("ends", [signal.SIGTERM, signal.SIGKILL], ids=str)
def test_a_signal_at_random_moments_leaves_whole_files_or_none(tmp_path, ends):
    """Slow: a process for each moment, every command that writes."""
    example = Path(__file__).resolve().parents[2] / "examples" / "light-tower.toml"
    text = example.read_text(encoding="utf-8")
    commands = {
        "new": (["new", "tower", "-o", "out.toml"], "out.toml"),
        "draw": (["draw", "piece.toml", "-o", "out.svg"], "out.svg"),
        "size": (["size", "piece.toml", "--write", "big.toml", "--remedy", "ballast"], "big.toml"),
    }
    for name, (words, out) in commands.items():
        whole = None
        for moment in (None, 0.3, 0.8, 0.95, 1.0):
            folder = tmp_path / f"{name}-{moment}"
            folder.mkdir()
            (folder / "piece.toml").write_text(text, encoding="utf-8")
            start = time.perf_counter()
            with subprocess.Popen(
                [sys.executable, "-m", "yardfast", *words],
                cwd=folder,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
            ) as process:
                if moment is None:
                    process.wait()
                    spent, whole = time.perf_counter() - start, (folder / out).read_bytes()
                    continue
                time.sleep(moment * spent)
                process.send_signal(ends)
                process.wait(20)
            assert (folder / "piece.toml").read_text(encoding="utf-8") == text
            assert not (folder / out).exists() or (folder / out).read_bytes() == whole
            left = {each.name for each in folder.iterdir()} - {"piece.toml", out}
            assert ends == signal.SIGKILL or not left
