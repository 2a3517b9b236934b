"""`yardfast check FOLDER`: every design beneath it, whatever is wrong with one of them."""

import csv
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from sample_file import HARBOUR_LIGHT
from verdict_designs import STANDS

import yardfast as yf
from yardfast.cli import main
from yardfast.cli.commands import catalogue


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with a piece that stands, one that does not, one that cannot be read."""
    (tmp_path / "lights" / "old").mkdir(parents=True)
    (tmp_path / "lights" / "block.toml").write_text(STANDS, encoding="utf-8")
    (tmp_path / "lights" / "old" / "light.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    (tmp_path / "lights" / "shop.toml").write_text("maker = 'Harbour'\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "lights"


def spoil(folder):
    (folder / "six.toml").write_text(HARBOUR_LIGHT.replace("'20 in'", "20"), encoding="utf-8")


def run(capsys, *words):
    status = main(["check", *words])
    out, err = capsys.readouterr()
    return status, out, err


def test_every_design_beneath_is_in_the_table_and_the_shop_is_none(folder, capsys):
    status, out, err = run(capsys, "lights")
    assert (status, err) == (1, "")
    assert "light.toml   Harbour light" in out
    assert "block.toml" in out
    assert "shop.toml" not in out
    assert "2 pieces: " in out


def test_one_bad_file_never_stops_the_rest(folder, capsys):
    spoil(folder)
    status, out, err = run(capsys, "lights")
    assert status == 2
    assert "1 to put right" in out
    assert "Harbour light" in out
    assert "foot, across" in err


def test_json_is_one_array_in_the_order_of_the_files(folder, capsys):
    spoil(folder)
    status, out, _ = run(capsys, "lights", "--format", "json")
    found = json.loads(out)
    assert status == 2
    names = [Path(one["file"]).name for one in found]
    assert names == ["block.toml", "light.toml", "six.toml"]
    assert found[1] == yf.check("lights/old/light.toml").to_dict()
    assert found[2]["faults"][0]["key"] == "across"


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_as_many_processes_as_are_asked_for_give_the_same(folder, capsys, jobs):
    spoil(folder)
    _, alone, _ = run(capsys, "lights", "--format", "json")
    status, out, _ = run(capsys, "lights", "--format", "json", "-j", jobs)
    assert (status, out) == (2, alone)


@pytest.mark.parametrize("jobs", ["0", "-1", "two", "1000", "9" * 5000])
def test_processes_that_cannot_be_are_refused(folder, capsys, jobs):
    status, out, err = run(capsys, "lights", "-j", jobs)
    assert (status, out) == (2, "")
    assert "a whole number from 1 to 256" in err


def test_a_row_for_each_design_is_written_for_spreadsheets(folder, capsys):
    spoil(folder)
    assert run(capsys, "lights", "--csv", "out.csv")[0] == 2
    with Path("out.csv").open(encoding="utf-8", newline="") as opened:
        rows = {Path(row["file"]).name: row for row in csv.DictReader(opened)}
    light = yf.check("lights/old/light.toml").to_dict()
    assert rows["light.toml"]["word"] == light["verdict"]["word"]
    act = light["limits"]["act_forecast_gust_m_s"]
    assert float(rows["light.toml"]["act_forecast_gust_m_s"]) == pytest.approx(act, rel=1e-5)
    assert float(rows["light.toml"]["mass_kg"]) == pytest.approx(
        light["geometry"]["mass_kg"], rel=1e-5
    )
    assert rows["six.toml"]["faults"].startswith("1: foot, across: ")
    status, _, err = run(capsys, "lights", "--csv", "out.csv")
    assert status == 2
    assert "exists already" in err
    assert run(capsys, "lights", "--csv", "out.csv", "--force")[0] == 2
    assert "kept as it is" in run(capsys, "lights", "--csv", "lights/block.toml", "--force")[2]


def test_a_folder_without_designs_and_a_closed_one_are_told(folder, capsys, monkeypatch):
    (folder / "empty").mkdir()
    status, out, err = run(capsys, "lights/empty")
    assert (status, out) == (2, "")
    assert "a folder without any" in err

    def walk(top, onerror):
        onerror(PermissionError(13, "Permission denied", f"{top}/closed"))
        yield str(top), [], ["block.toml"]

    monkeypatch.setattr(os, "walk", walk)
    status, out, err = run(capsys, "lights")
    assert status == 2
    assert "lights/closed: a closed folder" in err
    assert "1 piece: " in out


def test_a_file_that_vanishes_meanwhile_is_told_in_its_place(folder, capsys, monkeypatch):
    seen = catalogue.finished

    def finished(*given):
        (folder / "old" / "light.toml").unlink(missing_ok=True)
        return seen(*given)

    monkeypatch.setattr(catalogue, "finished", finished)
    status, out, err = run(capsys, "lights", "--format", "json")
    assert status == 2
    assert [len(one.get("faults", [])) for one in json.loads(out)] == [0, 1]
    assert "light.toml" in err


@pytest.mark.slow
def test_a_process_that_ends_takes_no_other_design_with_it(folder, capsys, monkeypatch):
    monkeypatch.setattr(catalogue, "_whole", ends_at_light)
    status, out, err = run(capsys, "lights", "--format", "json", "-j", "2")
    block, light = json.loads(out)
    assert status == 2
    assert block == {"passes": True}
    assert "its process ended" in light["faults"][0]["found"]
    assert "its process ended" in err


def ends_at_light(one):
    if "light.toml" in str(one[1]):
        os.kill(os.getpid(), signal.SIGKILL)
    return catalogue.Brief(True, None, {"passes": True}, ())


@pytest.mark.slow
@pytest.mark.parametrize("jobs", ["1", "2"])
def test_what_is_done_is_kept_when_somebody_stops_it(folder, jobs):
    for k in range(40):
        (folder / f"{k:02}.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    command = [sys.executable, "-m", "yardfast", "check", "lights", "--format", "json", "-j", jobs]
    with Path("out.json").open("w") as out:
        process = subprocess.Popen(
            [*command, "--csv", "out.csv"], stdout=out, stderr=subprocess.PIPE, text=True
        )
        while Path("out.json").stat().st_size < 200 and process.poll() is None:
            time.sleep(0.01)  # until the first design is out
        process.send_signal(signal.SIGINT)
        _, err = process.communicate(timeout=120)
    assert process.returncode == 130
    assert "Traceback" not in err
    done = json.loads(Path("out.json").read_text(encoding="utf-8"))
    assert 1 <= len(done) < 42
    assert f"stopped; {len(done)} of 42 were checked" in err
    with Path("out.csv").open(encoding="utf-8", newline="") as opened:
        assert len(list(csv.DictReader(opened))) == len(done)


def test_progress_is_told_on_a_terminal_alone(folder, capsys, monkeypatch):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    told = run(capsys, "lights")[2]
    assert "1 of 2 checked" in told
    assert told.endswith("\r")
