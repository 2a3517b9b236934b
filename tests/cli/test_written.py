"""What a command writes: whole or not at all, and never over a file that nobody gave up."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
import verdict_designs

from yardfast.cli import main
from yardfast.cli.commands.new import default_file
from yardfast.cli.files.written import write

POSIX = pytest.mark.skipif(sys.platform == "win32", reason="needs limits of POSIX")

ON_A_FULL_DISK = (
    "import resource, sys; from yardfast.cli import main;"
    "resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)); sys.exit(main(sys.argv[1:]))"
)
"""No file may grow beyond 100 bytes, as on a disk that is full after them."""


def full(folder, *words):
    """Run the command where a file cannot grow; return its status and what it complains of."""
    done = subprocess.run(
        [sys.executable, "-B", "-c", ON_A_FULL_DISK, *words],
        cwd=folder,
        capture_output=True,
        check=False,
    )
    assert done.stdout == b""
    return done.returncode, done.stderr.decode()


@POSIX
@pytest.mark.parametrize("force", [[], ["--force"]])
def test_a_full_disk_leaves_no_stump_of_a_new_file(tmp_path, force):
    status, told = full(tmp_path, "new", "tower", "-o", "light.toml", *force)
    assert status == 2
    assert "Nothing was written" in told
    assert list(tmp_path.iterdir()) == []


@POSIX
def test_a_full_disk_spoils_no_file_that_force_gives_up(tmp_path):
    (tmp_path / "light.toml").write_text("mine", encoding="utf-8")
    status, told = full(tmp_path, "new", "tower", "-o", "light.toml", "--force")
    assert status == 2
    assert "cannot be written" in told
    assert [file.name for file in tmp_path.iterdir()] == ["light.toml"]
    assert (tmp_path / "light.toml").read_text(encoding="utf-8") == "mine"


@POSIX
def test_a_full_disk_leaves_no_stump_of_a_changed_design(tmp_path):
    (tmp_path / "light.toml").write_text(verdict_designs.HARBOUR, encoding="utf-8")
    words = ["--write", "heavy.toml", "--remedy", "ballast"]
    status, told = full(tmp_path, "size", "light.toml", *words)
    assert status == 2
    assert "Nothing was written" in told
    assert [file.name for file in tmp_path.iterdir()] == ["light.toml"]


@pytest.mark.parametrize(
    "name", ["x" * 400 + ".toml", "nul\0.toml", "half\ud800.toml", "no/a.toml"]
)
@pytest.mark.parametrize("command", ["new", "new --force", "size"])
def test_a_name_that_no_file_can_have_is_said_in_a_line(
    tmp_path, monkeypatch, capsys, name, command
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "light.toml").write_text(verdict_designs.HARBOUR, encoding="utf-8")
    words = {
        "new": ["new", "tower", "-o", name],
        "new --force": ["new", "tower", "-o", name, "--force"],
        "size": ["size", "light.toml", "--write", name, "--remedy", "ballast"],
    }[command]
    assert main(words) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert len(err.splitlines()) == 1
    assert "fault of yardfast itself" not in err
    assert err.rstrip().endswith("Nothing was written.")
    assert [file.name for file in tmp_path.iterdir()] == ["light.toml"]


@POSIX
def test_force_keeps_the_rights_of_a_file_and_follows_a_link(tmp_path):
    file, link = tmp_path / "light.toml", tmp_path / "link.toml"
    file.write_text("mine", encoding="utf-8")
    file.chmod(0o640)
    link.symlink_to(file)
    assert main(["new", "tower", "-o", str(link), "--force"]) == 0
    assert link.is_symlink()
    assert file.read_text(encoding="utf-8") == default_file("tower")
    assert file.stat().st_mode & 0o777 == 0o640


@POSIX
def test_a_link_that_leads_nowhere_is_kept(tmp_path, capsys):
    link = tmp_path / "link.toml"
    link.symlink_to(tmp_path / "gone.toml")
    assert main(["new", "tower", "-o", str(link)]) == 2
    assert "exists already" in capsys.readouterr().err
    assert not (tmp_path / "gone.toml").exists()


@POSIX
def test_a_device_is_written_to_and_never_replaced(tmp_path):
    file = tmp_path / "pipe"
    os.mkfifo(file)
    reader = os.open(file, os.O_RDONLY | os.O_NONBLOCK)
    assert main(["new", "tower", "-o", str(file), "--force"]) == 0
    assert os.read(reader, 100_000).decode() == default_file("tower")
    assert file.is_fifo()
    os.close(reader)


@pytest.mark.parametrize("second_names", [True, False], ids=["links", "no links"])
def test_a_file_that_comes_meanwhile_is_kept(tmp_path, monkeypatch, second_names):
    # Another program takes the name between the question and the writing.
    file = tmp_path / "light.toml"

    def late(beside, target):
        file.write_text("mine", encoding="utf-8")
        if not second_names:
            raise PermissionError(1, "Operation not permitted")
        raise FileExistsError(17, "File exists")

    monkeypatch.setattr("os.link", late)
    assert "exists already" in write(file, "text")
    assert file.read_text(encoding="utf-8") == "mine"
    assert list(tmp_path.iterdir()) == [file]


def test_bytes_and_text_are_written_on_a_disk_without_second_names(tmp_path, monkeypatch):
    def unable(beside, target):
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr("os.link", unable)
    assert write(tmp_path / "sheet.pdf", b"\x00\xff") == ""
    assert write(tmp_path / "label.txt", "½ in\n") == ""
    assert (tmp_path / "sheet.pdf").read_bytes() == b"\x00\xff"
    assert (tmp_path / "label.txt").read_bytes() == "½ in\n".encode()
    assert len(list(tmp_path.iterdir())) == 2


HERON = """
[design]
name = 'Heron'
units = 'imperial'
[site]
method = 'forecast'
wind = '58 mph'
exposure = 'open'
ground = 'firm lawn'
[[part]]
name = 'foot'
shape = 'plate'
length = '24 in'
width = '20 in'
thickness = '2 in'
material = 'concrete'
[[part]]
name = 'heron'
shape = 'cutout'
on = 'foot'
outline = 'heron.svg'
height = '20 in'
thickness = '3/4 in'
material = 'softwood plywood'
"""
SQUARE = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0H10V30H0Z"/></svg>'


@pytest.mark.parametrize("force", [[], ["--force"]])
@pytest.mark.parametrize("way", ["itself", "link", "second name", "dots"])
@pytest.mark.parametrize(
    ("command", "kept"),
    [
        (["draw", "heron.toml", "-o", "out.svg"], "heron.svg"),
        (["draw", "heron.toml", "-o", "out.svg"], "heron.toml"),
        (["cuts", "heron.toml", "-o", "out.svg"], "heron.svg"),
        (["sheet", "heron.toml", "-o", "out.pdf"], "heron.toml"),
        (["label", "heron.toml", "-o", "out.txt"], "heron.toml"),
        (["label", ".", "-o", "out.csv"], "heron.svg"),
        (["label", ".", "-o", "out.csv"], "shop.toml"),
    ],
)
def test_no_file_of_the_design_is_written_over(
    command, kept, way, force, tmp_path, monkeypatch, capsys
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "heron.toml").write_text(HERON, encoding="utf-8")
    (tmp_path / "heron.svg").write_text(SQUARE, encoding="utf-8")
    (tmp_path / "shop.toml").write_text("maker = 'Works'\n", encoding="utf-8")
    before = (tmp_path / kept).read_bytes()
    out = command[-1]
    if way == "link":
        (tmp_path / out).symlink_to(kept)
    elif way == "second name":
        (tmp_path / out).hardlink_to(tmp_path / kept)
    else:
        out = kept if way == "itself" else f"../{tmp_path.name}/./{kept}"
        if not kept.endswith(Path(command[-1]).suffix):
            return
    assert main([*command[:-1], out, *force]) == 2
    told = capsys.readouterr().err
    assert "a file of the design itself" in told
    assert "--force" not in told
    assert (tmp_path / kept).read_bytes() == before


@pytest.mark.skipif(sys.platform != "linux", reason="needs names of any bytes")
@pytest.mark.parametrize("form", ["csv", "json", "text"])
def test_names_that_are_not_utf8_are_written_and_told(form, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    name = os.fsdecode(b"light\xff.toml")
    Path(name).write_text(
        HERON.replace(
            "outline = 'heron.svg'",
            "points = [['0 in', '0 in'], ['5 in', '0 in'], ['5 in', '20 in']]",
        ).replace("height = '20 in'", ""),
        encoding="utf-8",
    )
    out = os.fsdecode(b"out\xfe.txt")
    assert main(["label", name, "-o", out, "--format", form]) == 0
    assert Path(out).read_bytes().decode("utf-8")
    assert main(["new", "tower", "-o", os.fsdecode(b"new\xff.toml")]) == 0
    told = capsys.readouterr()
    assert "yardfast itself" not in told.err
