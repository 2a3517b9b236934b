"""`yardfast stale`: which printed sheets no longer say what their designs say now."""

import csv
import json

import pytest
from sample_file import HARBOUR_LIGHT
from verdict_designs import STANDS

import yardfast as yf
from yardfast.cli import main
from yardfast.references import fingerprint as tables


@pytest.fixture
def folder(tmp_path, monkeypatch, capsys):
    (tmp_path / "light.toml").write_text(HARBOUR_LIGHT, encoding="utf-8")
    (tmp_path / "block.toml").write_text(STANDS, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(["label", ".", "--format", "csv", "-o", "labels.csv"]) == 0
    capsys.readouterr()
    return tmp_path


def run(capsys, *words):
    status = main(["stale", *words])
    out, err = capsys.readouterr()
    return status, out, err


def wider(folder):
    text = HARBOUR_LIGHT.replace("'20 in'", "'22 in'")
    (folder / "light.toml").write_text(text, encoding="utf-8")


def test_what_has_not_changed_still_holds(folder, capsys):
    status, out, err = run(capsys, "labels.csv")
    assert (status, err) == (0, "")
    assert out.count("   the print is current\n") == 2
    assert "2 sheets: the print is current." in out


def test_a_changed_design_is_stale_and_its_changed_figures_are_told(folder, capsys):
    with (folder / "labels.csv").open(encoding="utf-8", newline="") as opened:
        before = {row["name"]: row for row in csv.DictReader(opened)}
    wider(folder)
    status, out, _ = run(capsys, "labels.csv")
    assert status == 1
    assert out.startswith("Harbour light")
    assert "STALE" in out
    assert "the design has changed" in out
    now = yf.check("light.toml").to_dict()["limits"]["forecast_tipping_gust_m_s"] / 0.44704
    printed = before["Harbour light"]["tips at"]
    assert f"tips at: printed {printed}, now {int(now)} mph" in out
    assert "1 of 2 sheets is stale" in out


def test_a_comment_makes_a_sheet_stale_though_every_figure_is_the_same(folder, capsys):
    (folder / "light.toml").write_text(HARBOUR_LIGHT + "# oiled in May\n", encoding="utf-8")
    status, out, _ = run(capsys, "labels.csv")
    assert status == 1
    assert "every figure printed is the same" in out


def test_changed_tables_are_told_apart_from_a_changed_design(folder, capsys, monkeypatch):
    monkeypatch.setattr(yf.references, "digest", lambda: "another")
    status, out, _ = run(capsys, "labels.csv")
    assert status == 1
    assert out.count("the tables of Yardfast, or its version, have changed") == 2
    assert "the design has changed" not in out
    wider(folder)
    assert "the design has changed and the tables" in run(capsys, "labels.csv")[1]
    assert tables.digest() != "another"


def test_a_fingerprint_read_from_a_sheet_is_compared_with_its_design(folder, capsys):
    now = yf.check("light.toml").fingerprint
    assert run(capsys, "light.toml", now.upper())[0] == 0
    status, out, _ = run(capsys, "light.toml", "0123456789ab", "labels.csv")
    assert status == 1
    assert "the design, or the tables or version of Yardfast, has changed" in out
    assert "1 of 3 sheets is stale" in out


def test_json_lists_every_sheet(folder, capsys):
    wider(folder)
    status, out, _ = run(capsys, "labels.csv", "--format", "json")
    assert status == 1
    sheets = {sheet["name"]: sheet for sheet in json.loads(out)["sheets"]}
    assert sheets["Harbour light"]["stale"] is True
    assert "tips at" in {figure["column"] for figure in sheets["Harbour light"]["figures"]}
    assert sheets["Piece"]["stale"] is False


def test_designs_are_found_beside_the_table_from_any_folder(folder, capsys, monkeypatch):
    elsewhere = folder / "elsewhere"
    elsewhere.mkdir()
    monkeypatch.chdir(elsewhere)
    assert run(capsys, "../labels.csv")[0] == 0


@pytest.mark.parametrize(
    ("table", "says"),
    [
        ("name,fingerprint\nx,0123456789ab\n", "a column 'file'"),
        ("file,fingerprnt\nlight.toml,0123456789ab\n", "'fingerprnt'?"),
        ("file,fingerprint\nlight.toml,0123\n", "a fingerprint: 12 figures"),
        ("file,fingerprint\n,0123456789ab\n", "the name of a design file"),
        ("file,fingerprint\n", "no rows"),
        ("", "a column 'file'"),
        ("file,fingerprint\ngone.toml,0123456789ab\n", "no such file"),
        ("file,fingerprint\n\0,0123456789ab\n", "a file that can be read"),
    ],
)
def test_a_table_that_cannot_be_used_is_a_fault(folder, capsys, table, says):
    (folder / "odd.csv").write_text(table, encoding="utf-8")
    status, out, err = run(capsys, "odd.csv")
    assert (status, out) == (2, "")
    assert says in err


def test_faults_do_not_hide_the_other_sheets(folder, capsys):
    (folder / "block.toml").unlink()
    status, out, err = run(capsys, "labels.csv")
    assert status == 2
    assert "Harbour light" in out
    assert "block.toml" in err


@pytest.mark.parametrize(
    "words", [["light.toml"], ["light.toml", "0123"], ["0123456789ab"], ["no"]]
)
def test_what_was_typed_wrongly_is_answered(folder, capsys, words):
    status, out, err = run(capsys, *words)
    assert (status, out) == (2, "")
    assert "needed" in err


def test_a_file_whose_name_looks_like_a_formula_is_found_again(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    for name in ("=light.toml", "'quoted.toml"):
        (tmp_path / name).write_text(STANDS, encoding="utf-8")
    assert main(["label", "=light.toml", "'quoted.toml", "--format", "csv", "-o", "l.csv"]) == 0
    assert "'=light.toml" in (tmp_path / "l.csv").read_text(encoding="utf-8")
    capsys.readouterr()
    status, out, err = run(capsys, "l.csv")
    assert (status, err) == (0, "")
    assert "2 sheets: the print is current." in out
