"""`yardfast mend` as a person types it: what it shows, asks, writes, and leaves alone."""

import os
import pty
import subprocess
import sys
from contextlib import suppress

import pytest
from sample_file import HARBOUR_LIGHT, altered

from yardfast.cli import main

WRONG = altered(
    "material = 'softwood plywood'", "matrial = plywood # cheap", altered("'48 in'", "4 ft 6 in")
).replace("sides    = 8\nacross   = '20 in'", "sides    = '8'\nacross   = 20")


@pytest.fixture(autouse=True)
def file(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "light.toml"
    path.write_bytes(WRONG.replace("\n", "\r\n").encode())
    return path


def test_what_is_sure_is_written_and_nothing_else(file, capsys):
    assert main(["mend", "light.toml", "--yes"]) == 2
    out, err = capsys.readouterr()
    assert "'8'  ->  8" in out
    was, now = WRONG.splitlines(), file.read_bytes().decode().split("\r\n")
    changed = {k for k, (a, b) in enumerate(zip(was, now, strict=False)) if a != b}
    assert {was[k].split("=")[0].strip() for k in changed} == {"sides", "height", "matrial"}
    assert "# cheap" in "\n".join(now)
    assert any(line.startswith("across   = 20 ") for line in now)
    assert "you wrote  20" in err
    assert (file.parent / "light.toml.old").read_bytes() == WRONG.replace("\n", "\r\n").encode()


def test_a_file_that_then_reads_ends_well_and_a_second_time_finds_nothing(file, capsys):
    file.write_text(altered("'48 in' ", "48 in "), encoding="utf-8")
    assert main(["mend", "light.toml", "--yes"]) == 0
    assert file.read_text(encoding="utf-8") == HARBOUR_LIGHT
    capsys.readouterr()
    assert main(["mend", "light.toml", "--yes"]) == 0
    assert "nothing to mend" in capsys.readouterr().out
    assert sorted(each.name for each in file.parent.iterdir()) == ["light.toml", "light.toml.old"]


def test_an_old_text_is_never_lost_to_a_later_one(file):
    (file.parent / "light.toml.old").write_text("mine", encoding="utf-8")
    main(["mend", "light.toml", "--yes"])
    assert (file.parent / "light.toml.old").read_text(encoding="utf-8") == "mine"
    assert (file.parent / "light.toml.old2").exists()


def test_in_a_pipe_nothing_is_written_without_yes(file, capsys, monkeypatch):
    before = file.read_bytes()
    with open(os.devnull, encoding="utf-8") as nothing:
        for stdin in (nothing, None):
            monkeypatch.setattr(sys, "stdin", stdin)
            assert main(["mend", "light.toml"]) == 2
            assert "yardfast mend light.toml --yes" in capsys.readouterr().err
    assert file.read_bytes() == before
    assert not (file.parent / "light.toml.old").exists()


@pytest.mark.parametrize(
    ("answers", "changed"),
    [
        (b"n\nn\nn\n", set()),
        (b"y\nn\nn\n", {"sides"}),
        (b"what\nn\ny\nn\n", {"height"}),
        (b"n\nall\n", {"height", "matrial"}),
        (b"y\n\x04", set()),
    ],
)
def test_each_change_is_asked_for_at_a_terminal(file, answers, changed):
    before = file.read_bytes()
    parent, child = pty.openpty()
    run = subprocess.Popen(
        [sys.executable, "-m", "yardfast", "mend", "light.toml"],
        stdin=child,
        stdout=child,
        stderr=child,
    )
    os.close(child)
    os.write(parent, answers)
    said = b""
    with suppress(OSError):  # the other end is closed
        while part := os.read(parent, 4096):
            said += part
    os.close(parent)
    assert run.wait(timeout=60) == 2
    now, was = file.read_bytes().split(b"\r\n"), before.split(b"\r\n")
    keys = {a.split(b"=")[0].strip().decode() for a, b in zip(was, now, strict=True) if a != b}
    assert keys == changed, said.decode()


def test_what_cannot_be_read_is_said_plainly(file, capsys):
    file.write_bytes(b"\xff\xfe\x00")
    assert main(["mend", "light.toml", "--yes"]) == 2
    assert main(["mend", "nowhere.toml", "--yes"]) == 2
    assert "Traceback" not in capsys.readouterr().err
