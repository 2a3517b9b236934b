"""``yardfast odds``: a file in, what a person reads out."""

import json

import pytest

from yardfast.cli import main
from yardfast.report.told.odds_words import chance_in_words

POST = "examples/fingerpost.toml"


@pytest.mark.parametrize("piece", ["examples/seat-box.toml", "examples/mailbox.toml"])
def test_the_first_screen_says_what_is_asked_and_what_is_left_out(piece, capsys):
    assert main(["odds", piece, "--samples", "512"]) == 0
    out = capsys.readouterr().out
    assert len(out.splitlines()) <= 22
    assert all(len(line) <= 79 for line in out.splitlines())
    for said in ("Asked", "of 100", "tipped by", "slid by", "joint by", "A year", "Leaves out"):
        assert said in out
    assert "untied" in out
    assert "%" not in out


def test_json_has_the_names_that_programs_read(capsys):
    assert main(["odds", POST, "--samples", "512", "--seed", "3", "--format", "json"]) == 0
    found = json.loads(capsys.readouterr().out)
    gusts = [found[f"{name}_forecast_gust_m_s"] for name in ("tipping", "sliding", "joint")]
    assert all(set(each) == {"p5", "p50", "p95"} for each in gusts)
    assert gusts[0]["p5"] < gusts[0]["p50"] < gusts[0]["p95"]
    assert gusts[1] == {"p5": None, "p50": None, "p95": None}  # posts carry it: it does not slide
    assert 0.0 < found["probability_at_asked_wind"] < 1.0
    assert found["per_year"] is None
    assert found["over_years"] is None
    assert found["standard_error"] > 0.0
    assert found["sensitivity"][0]["input"] == "soil"
    assert (found["samples"], found["seed"]) == (512, 3)
    assert all(one["source"] for one in found["inputs"])


def test_inputs_tell_what_varies_and_on_whose_word(capsys):
    assert main(["odds", POST, "--samples", "64", "--inputs"]) == 0
    out = capsys.readouterr().out
    assert "soil: lognormal, 40 % either way. JCSS" in out
    assert "[[odds]]" in out


@pytest.mark.parametrize("typed", ["0", "-1", "many", "1.5"])
def test_samples_are_a_whole_number_from_one(typed, capsys):
    assert main(["odds", POST, "--samples", typed]) == 2
    assert "a whole number from 1" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("chance", "words"),
    [(0.0, "none"), (0.0004, "fewer than 1 of 1,000"), (0.134, "13 of 100"), (1.0, "all")],
)
def test_chances_are_so_many_of_a_hundred(chance, words):
    assert chance_in_words(chance) == words
