"""`yardfast label`: a listing's text from a file, rows for a folder, the shop, and refusals."""

import csv
import io
import json
import shutil
import tomllib
from pathlib import Path

import pytest
from sample_file import HARBOUR_LIGHT
from verdict_designs import SOLID_AS_ROCK, STANDS

import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.cli import main

EXAMPLES = Path(__file__).parents[2] / "examples"
NEEDED = ("short", "long", "height", "push", "anchors", "fingerprint", "not checked")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    for name, text in (
        ("light", HARBOUR_LIGHT),
        ("block", STANDS),
        ("rock", SOLID_AS_ROCK),
        ("wrong", HARBOUR_LIGHT.replace("'20 in'", "20")),
    ):
        (tmp_path / f"{name}.toml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(capsys, *words):
    status = main(["label", *words])
    out, err = capsys.readouterr()
    return status, out, err


def rows(text):
    return list(csv.DictReader(io.StringIO(text)))


def test_one_file_prints_both_texts_each_on_a_line_of_its_own(folder, capsys):
    status, out, err = run(capsys, "light.toml")
    assert (status, err) == (0, "")
    lines = out.splitlines()
    assert [lines[0].split(",")[0], lines[3].split(",")[0]] == ["Short", "Long"]
    short, long = lines[1], lines[4]
    assert len(short) <= 160
    assert len(long) <= 700
    assert lines[0] == f"Short, {len(short)} of 160 characters"
    assert "Harbour light" in short


@pytest.mark.slow
def test_rows_read_back_say_what_the_result_says(capsys, monkeypatch):
    monkeypatch.chdir(EXAMPLES.parent)
    status, out, _ = run(capsys, "examples", "--format", "csv")
    assert status == 1  # some of them are not ready for a buyer
    table = rows(out)
    files = sorted(
        each.name for each in EXAMPLES.glob("*.toml") if examine(read(each)).verdict.may_be_sold
    )
    assert [Path(row["file"]).name for row in table] == files
    for row in table:
        assert all(row[column] for column in NEEDED)
        result = yf.check(row["file"]).to_dict()
        text = tomllib.loads(Path(row["file"]).read_text(encoding="utf-8"))
        metric = text["design"]["units"] == "metric"
        speed, unit = (1 / 3.6, "km/h") if metric else (0.44704, "mph")
        limits = result["limits"]
        own = {"B": "houses and trees", "C": "open ground", "D": "shore", "open": "open ground"}
        where = text["site"].get("exposure", "open")
        act = row[f"act at ({own.get(where, where)})"]
        steps = int(limits["act_forecast_gust_m_s"] / speed / 5.0 + 1e-6)
        assert act == f"{5 * steps} {unit}"
        assert f"over {act} are forecast" in row["short"]
        assert f"over {act} are forecast" in row["long"]
        for column, key in (("tips at", "tipping"), ("slides at", "sliding")):
            gust = limits[f"forecast_{key}_gust_m_s"]
            over = "over " if gust is None else ""
            assert row[column] == f"{over}{int((gust or 150.0) / speed + 1e-6)} {unit}"
        assert row["fingerprint"] == result["fingerprint"]
        assert row["name"] == result["name"]
        mass = result["geometry"]["mass_kg"] / (1.0 if metric else 0.45359237)
        digits = 1 if metric and mass < 10.0 else 0
        assert row["weight"] == f"{mass:,.{digits}f} {'kg' if metric else 'lb'}"
        acts = [
            int(row[f"act at ({place})"].split()[0])
            for place in ("houses and trees", "open ground", "shore")
        ]
        assert acts == sorted(acts, reverse=True)


def test_faulty_files_are_named_and_the_others_still_come_out(folder, capsys):
    status, out, err = run(capsys, ".", "--format", "csv")
    assert status == 2
    assert [row["file"] for row in rows(out)] == ["block.toml", "light.toml"]
    assert "wrong.toml" in err
    assert "'20 in'" in err or "20" in err
    assert "rock.toml: no text for a listing, act-at is missing" in err


def test_json_has_an_object_for_each_file_with_texts_faults_or_the_reason(folder, capsys):
    status, out, _ = run(capsys, "light.toml", "wrong.toml", "rock.toml", "--format", "json")
    assert status == 2
    light, wrong, rock = json.loads(out)
    assert light["short"].startswith("Harbour light: ")
    assert wrong["faults"][0]["key"] == "across"
    assert rock["missing"] == "act-at"
    status, out, _ = run(capsys, "light.toml", "--format", "json")
    assert json.loads(out) == light
    assert run(capsys, "wrong.toml", "--format", "json")[:2] == (2, "")


def test_a_piece_without_a_gust_to_act_at_is_refused(folder, capsys):
    status, out, err = run(capsys, "rock.toml")
    assert (status, out) == (1, "")
    assert "act-at is missing" in err


def test_a_file_is_never_written_over_unless_told_to(folder, capsys):
    kept = folder / "labels.csv"
    kept.write_text("mine", encoding="utf-8")
    words = ("light.toml", "--format", "csv", "-o", "labels.csv")
    status, out, err = run(capsys, *words)
    assert (status, out) == (2, "")
    assert "--force" in err
    assert kept.read_text(encoding="utf-8") == "mine"
    assert run(capsys, *words, "--force")[0] == 0
    assert rows(kept.read_text(encoding="utf-8"))[0]["name"] == "Harbour light"


@pytest.mark.parametrize("output", ["nowhere/labels.csv", ".", "", "a\0b"])
def test_a_place_that_cannot_be_written_is_told_before_any_work(folder, capsys, output):
    status, out, err = run(capsys, "light.toml", "-o", output)
    assert (status, out) == (2, "")
    assert "Nothing was written" in err


def test_the_name_of_the_file_says_its_format_unless_one_is_typed(folder, capsys):
    assert run(capsys, "light.toml", "-o", "labels.csv")[0] == 0
    assert len(rows((folder / "labels.csv").read_text(encoding="utf-8"))) == 1
    assert run(capsys, "light.toml", "-o", "labels.json")[0] == 0
    assert json.loads((folder / "labels.json").read_text(encoding="utf-8"))["short"]
    assert run(capsys, "light.toml", "-o", "light.txt")[0] == 0
    assert (folder / "light.txt").read_text(encoding="utf-8").startswith("Short, ")


def test_a_design_is_never_written_over_by_its_own_text(folder, capsys):
    status, out, err = run(capsys, "light.toml", "-o", "./light.toml", "--force")
    assert (status, out) == (2, "")
    assert "does not end in .txt or .csv or .json" in err
    assert (folder / "light.toml").read_text(encoding="utf-8") == HARBOUR_LIGHT


def test_the_shop_is_read_once_and_its_faults_are_told_once(folder, capsys):
    (folder / "shop.toml").write_text("makr = 'Works'\n", encoding="utf-8")
    status, out, err = run(capsys, "light.toml", "block.toml")
    assert (status, out) == (2, "")
    assert err.count("makr") == 2  # where it stands, and what was read
    (folder / "shop.toml").write_text("maker = 'Works'\ncountry = 'US'\n", encoding="utf-8")
    status, out, err = run(capsys, "light.toml", "block.toml", "shop.toml")
    assert (status, err) == (0, "")
    assert out.count("Made by Works.") == 2
    assert out.count("Call 811 days before") == 2


def test_words_of_the_shop_without_room_are_left_out_aloud(folder, capsys):
    words = "We paint each one by hand. " * 7
    (folder / "shop.toml").write_text(f"wording = '{words}'\ncontact = '{words}'\n", "utf-8")
    status, out, err = run(capsys, "light.toml")
    assert status == 0
    assert out.count("We paint each one") in (0, 7)
    assert "no room in the long text for" in err


def test_a_shop_is_no_design(folder, capsys):
    shutil.copy("light.toml", "shop.toml")
    status, out, err = run(capsys, "shop.toml")
    assert (status, out) == (2, "")
    assert "the shop's file" in err
    (folder / "shop.toml").write_text("maker = 'Works'\n", encoding="utf-8")
    assert main(["check", "light.toml", "block.toml", "shop.toml"]) == 1
    assert "shop" not in capsys.readouterr().err


def test_a_folder_without_designs_is_a_fault(folder, capsys):
    (folder / "empty").mkdir()
    status, out, err = run(capsys, "empty")
    assert (status, out) == (2, "")
    assert "a folder without any" in err


def test_a_name_that_promises_too_much_is_a_fault_of_its_file(folder, capsys):
    text = HARBOUR_LIGHT.replace("'Harbour light'", "'Storm-proof light'")
    (folder / "proud.toml").write_text(text, encoding="utf-8")
    status, out, err = run(capsys, "proud.toml", "light.toml", "--format", "csv")
    assert status == 2
    assert [row["name"] for row in rows(out)] == ["Harbour light"]
    assert "proud.toml" in err
    assert "line 2  design, name" in err
    assert "'storm-proof'" in err


def test_a_name_full_of_marks_comes_back_from_the_table_as_it_was(folder, capsys):
    name = 'Light, "the; old" <b>&amp;</b> =1+1'
    text = HARBOUR_LIGHT.replace("'Harbour light'", f"'{name}'")
    (folder / "marks.toml").write_text(text, encoding="utf-8")
    _, out, _ = run(capsys, "marks.toml", "--format", "csv")
    assert rows(out)[0]["name"] == name
