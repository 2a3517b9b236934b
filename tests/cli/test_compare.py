"""``yardfast compare``: a piece by every book, or two designs, for a person and a program."""

import json
from pathlib import Path

import pytest

from yardfast.cli import main

EXAMPLES = Path(__file__).parents[2] / "examples"
TOWER = EXAMPLES / "light-tower.toml"
ALL = ["forecast", "gust", "ASCE 7-22", "ASCE 7-16", "EN 1991-1-4"]


def compared(capsys, *files):
    assert main(["compare", *map(str, files), "--format", "json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_forecast_site_is_judged_by_every_book(capsys):
    """The forecast gust is V of ASCE 7, and v_b sqrt(c_e(10 m, II)) = 1.534 v_b of EN 1991-1-4."""
    books = {one["method"]: one for one in compared(capsys, TOWER)["books"]}
    assert list(books) == ALL
    gust = books["forecast"]["wind_m_s"]
    assert books["ASCE 7-22"]["wind_m_s"] == pytest.approx(gust)
    assert books["EN 1991-1-4"]["wind_m_s"] == pytest.approx(gust / 1.534, rel=1e-3)
    assert books["gust"]["velocity_pressure_Pa"] == pytest.approx(
        books["forecast"]["velocity_pressure_Pa"]
    )
    for one in books.values():
        force = one["coefficient"] * one["velocity_pressure_Pa"] * one["projected_area_m2"]
        assert one["force_N"] == pytest.approx(force)
    assert books["EN 1991-1-4"]["basis"] == "EQU"
    assert books["EN 1991-1-4"]["load_over_weight_factor"] == pytest.approx(1.5 / 0.9)


def test_what_it_says_of_its_own_book_is_what_check_says(capsys):
    own = compared(capsys, TOWER)["books"][0]
    main(["check", str(TOWER), "--format", "json"])
    checked = json.loads(capsys.readouterr().out)
    limits = checked["limits"]
    assert own["forecast_tipping_gust_m_s"] == limits["forecast_tipping_gust_m_s"]
    assert own["act_forecast_gust_m_s"] == limits["act_forecast_gust_m_s"]
    assert own["force_N"] == pytest.approx(max(checked["wind"]["force_N"]))


def test_a_map_speed_goes_into_no_other_map(capsys):
    found = compared(capsys, EXAMPLES / "light-tower-asce.toml")["books"]
    assert [one["method"] for one in found] == ["ASCE 7-22", "gust", "ASCE 7-16"]
    assert found[0]["wind_m_s"] == found[2]["wind_m_s"]


def test_a_gust_at_the_piece_stands_alone(capsys, tmp_path):
    file = tmp_path / "piece.toml"
    file.write_text(TOWER.read_text().replace("'forecast'", "'gust'"))
    found = compared(capsys, file)
    assert [one["method"] for one in found["books"]] == ["gust"]
    assert "Only its own book" in found["why"]


def test_a_hill_of_one_book_is_not_read_by_another(capsys, tmp_path):
    file = tmp_path / "piece.toml"
    file.write_text(TOWER.read_text().replace("[site]", "[site]\ntopographic = 1.3"))
    assert [one["method"] for one in compared(capsys, file)["books"]] == ALL[:-1]


def test_people_read_a_line_each_and_why(capsys):
    assert main(["compare", str(TOWER)]) == 0
    said = capsys.readouterr().out
    for name in ALL:
        assert f"\n  {name} " in said
    assert "10 m up over open country" in " ".join(said.split())
    assert max(len(line) for line in said.splitlines()) <= 90


def test_the_european_book_brings_its_own_book_of_timber(capsys):
    """NDS 2018 Table 11.3.3: 0.4 for bolts and lag screws that may dry in their wood."""
    found = compared(capsys, EXAMPLES / "mailbox.toml")
    books = {one["method"]: one for one in found["books"]}
    assert {one["timber"] for name, one in books.items() if name != "EN 1991-1-4"} == {"NDS"}
    assert books["EN 1991-1-4"]["timber"] == "EN 1995-1-1"
    assert "judged by EN 1995-1-1, else by NDS: joint arm to post" in found["wood"]
    assert "keep 0.4 of their hold by NDS" in found["wood"]
    assert "in end grain hold no pull by EN 1995-1-1" in found["wood"]
    assert compared(capsys, EXAMPLES / "light-tower-asce.toml")["wood"] == ""


@pytest.mark.slow
def test_what_comes_loose_by_one_book_is_told_rather_than_its_joints(capsys):
    """Rails hang by lag screws in end grain, which hold no pull (EN 1995-1-1 8.7.2)."""
    found = compared(capsys, EXAMPLES / "footbridge.toml")
    assert "by EN 1995-1-1 it comes loose at rails, so that" in found["wood"]
    european = next(one for one in found["books"] if one["method"] == "EN 1991-1-4")
    assert european["most_used"] is None


def test_two_designs_say_what_changed_and_what_it_did(capsys, tmp_path):
    wider = tmp_path / "wider.toml"
    wider.write_text(TOWER.read_text().replace("'24 in'", "'36 in'", 1))
    found = compared(capsys, TOWER, wider)
    assert found["changed"] == [
        {"table": "part", "name": "foot", "key": "across", "before": "24 in", "after": "36 in"}
    ]
    one, other = found["designs"]
    assert other["forecast_tipping_gust_m_s"] > one["forecast_tipping_gust_m_s"]
    assert other["mass_kg"] > one["mass_kg"]
    assert main(["compare", str(TOWER), str(wider)]) == 0
    said = capsys.readouterr().out
    assert "part foot, across: 24 in -> 36 in" in said


def test_the_same_design_twice_changed_in_nothing(capsys):
    assert main(["compare", str(TOWER), str(TOWER)]) == 0
    said = capsys.readouterr().out
    assert "Nothing changed" in said
    assert said.count("the same") == 6


def test_a_wrong_file_is_told_and_nothing_is_shown(capsys, tmp_path):
    wrong = tmp_path / "wrong.toml"
    wrong.write_text("[design]\n")
    assert main(["compare", str(TOWER), str(wrong)]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "wrong.toml" in told.err
