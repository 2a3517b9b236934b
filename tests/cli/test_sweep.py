"""`yardfast sweep`: a design at many sizes, each as if its file had been changed by hand."""

import csv
import json
from pathlib import Path

import pytest
from sample_file import HARBOUR_LIGHT

import yardfast as yf
from yardfast.cli import main

WIDTH = "foot.across=20 in..22 in"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    (tmp_path / "light.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys, *words):
    status = main(["sweep", "light.toml", *words])
    out, err = capsys.readouterr()
    return status, out, err


def by_hand(folder, *changes):
    text = HARBOUR_LIGHT
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    (folder / "changed.toml").write_text(text, encoding="utf-8")
    return yf.check("changed.toml").to_dict()


def test_each_size_is_what_the_changed_file_gives(folder, capsys):
    status, out, _ = run(capsys, "--vary", WIDTH, "--steps", "3", "--format", "json")
    assert status == 0
    rows = json.loads(out)["rows"]
    assert [row["values"]["foot.across"] for row in rows] == ["20 in", "21 in", "22 in"]
    for row in rows:
        one = by_hand(folder, ("'20 in'", f"'{row['values']['foot.across']}'"))
        for key in ("forecast_tipping_gust_m_s", "act_forecast_gust_m_s"):
            assert row[key] == one["limits"][key]
        assert row["mass_kg"] == one["geometry"]["mass_kg"]
        assert row["word"] == one["verdict"]["word"]
    tips = [row["forecast_tipping_gust_m_s"] for row in rows]
    assert tips == sorted(tips)


def test_two_sizes_make_a_grid_the_last_varying_fastest(folder, capsys):
    words = ("--vary", WIDTH, "--vary", "tower.height=3 ft..4 ft", "--steps", "2")
    rows = json.loads(run(capsys, *words, "--format", "json")[1])["rows"]
    assert [tuple(row["values"].values()) for row in rows] == [
        *(("20 in", "3 ft"), ("20 in", "4 ft"), ("22 in", "3 ft"), ("22 in", "4 ft")),
    ]
    one = by_hand(folder, ("'20 in'", "'22 in'"), ("'48 in'", "'3 ft'"))
    assert rows[2]["forecast_tipping_gust_m_s"] == one["limits"]["forecast_tipping_gust_m_s"]


def test_a_key_right_beneath_its_heading_is_found(folder, capsys):
    """Where it was not, the line would stand twice; a next table's key of that name is not it."""
    file = folder / "light.toml"
    text = HARBOUR_LIGHT.replace("[site]\n", "[site]\nwind = '40 mph'\n", 1)
    file.write_text(text.replace("wind     = '58 mph'", "#", 1), encoding="utf-8")
    words = ("--vary", "site.wind=40 mph..50 mph", "--steps", "2", "--format", "json")
    status, out, err = run(capsys, *words)
    assert (status, err) == (0, "")
    rows = json.loads(out)["rows"]
    assert [row["values"]["site.wind"] for row in rows] == ["40 mph", "50 mph"]
    for row in rows:
        one = by_hand(folder, ("'58 mph'", f"'{row['values']['site.wind']}'"))
        assert row["word"] == one["verdict"]["word"]


def test_wind_counts_and_keys_that_are_not_written_yet_are_varied_too(folder, capsys):
    rows = json.loads(
        run(capsys, "--vary", "site.wind=10 mph..90 mph", "--steps", "2", "--format", "json")[1]
    )["rows"]
    assert rows[0]["passes"]
    assert not rows[1]["passes"]
    rows = json.loads(
        run(capsys, "--vary", "tower.sides=6..8", "--steps", "3", "--format", "json")[1]
    )["rows"]
    assert [row["values"]["tower.sides"] for row in rows] == [6, 7, 8]
    one = by_hand(folder, ("'48 in'", "'48 in'\nturn = '10 deg'"))
    rows = json.loads(
        run(capsys, "--vary", "tower.turn=10 deg..20 deg", "--steps", "2", "--format", "json")[1]
    )["rows"]
    assert rows[0]["forecast_tipping_gust_m_s"] == one["limits"]["forecast_tipping_gust_m_s"]


def test_what_cannot_be_made_stands_in_its_row_with_why(folder, capsys):
    status, out, _ = run(capsys, "--vary", "foot.across=2 in..20 in", "--steps", "2")
    assert status == 0
    assert "CANNOT BE MADE" in out
    assert "At 2 in (foot, " in out
    rows = json.loads(
        run(capsys, "--vary", "foot.across=2 in..20 in", "--steps", "2", "--format", "json")[1]
    )["rows"]
    assert rows[0]["word"] == "cannot be made"
    assert rows[0]["faults"]
    assert rows[1]["faults"] == []


def test_table_and_pictures_are_written_whole_and_never_over_a_file(folder, capsys):
    words = ("--vary", WIDTH, "--steps", "3", "--csv", "out.csv", "-o", "out.svg")
    assert run(capsys, *words)[0] == 0
    with Path("out.csv").open(encoding="utf-8", newline="") as opened:
        rows = list(csv.DictReader(opened))
    assert [row["foot.across"] for row in rows] == ["20 in", "21 in", "22 in"]
    svg = Path("out.svg").read_text(encoding="utf-8")
    assert all(f">{words}</text>" in svg for words in ("tips", "slides", "act at", "21 in"))
    status, _, err = run(capsys, *words)
    assert status == 2
    assert "exists already" in err
    status, _, err = run(capsys, *words[:4], "--csv", "light.toml", "--force")
    assert status == 2
    assert "a file of the design itself" in err
    assert (folder / "light.toml").read_text(encoding="utf-8") == HARBOUR_LIGHT
    field = (*words[:2], "--vary", "tower.height=3 ft..4 ft", "--steps", "2", "-o", "field.png")
    assert run(capsys, *field)[0] == 0
    assert Path("field.png").read_bytes().startswith(b"\x89PNG")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--vary", "across=1 in..2 in"], "a part and its key, from and to"),
        (["--vary", "foot.across=1 in"], "a part and its key, from and to"),
        (["--vary", "foot.across=1 in..2 lb"], "of one kind"),
        (["--vary", "foot.across=1..2 in"], "with its unit"),
        (["--vary", "foot.across=2 in..2 in"], "two ends that differ"),
        (["--vary", "foot.across=2 in..1e999 in"], "is not a number with its unit"),
        (["--vary", "boot.across=1 in..2 in"], "a part to vary: foot, tower"),
        (["--vary", "foot.acros=1 in..2 in"], "acros"),
        (["--vary", WIDTH, "--vary", WIDTH], "two sizes that differ"),
        (["--vary", WIDTH, "--steps", "1"], "a whole number from 2 to 200"),
        (["--vary", WIDTH, "--vary", "foot.sides=3..60", "--steps", "99"], "at most 1,000 designs"),
        (["--vary", "foot.name=1..2"], "part 1, name"),
        (["--vary", "design.name=1..2"], "line 2  name"),
    ],
)
def test_what_is_no_size_to_vary_is_told(folder, capsys, words, said):
    status, out, err = run(capsys, *words)
    assert (status, out) == (2, "")
    assert said in err.replace("\n  ", " ")
