"""What a builder looks up of a nail or screw, and what the screen answers."""

import json

import pytest

from yardfast.cli import main

POUND_FORCE = 4.4482216152605
PER_INCH = POUND_FORCE / 0.0254


def listed(capsys, *words):
    assert main(["fasteners", *words, "--format", "json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_one_lookup_answers_for_one_nail_in_one_wood(capsys):
    """8d common in western cedars, G 0.36: 14 lb/in in NDS 2018 Table 12.2C."""
    (nail,) = listed(capsys, "8d common", "--wood", "western redcedar")
    assert nail["name"] == "8d common nail"
    assert nail["specific_gravity"] == pytest.approx(0.36)
    assert nail["withdrawal_N_per_m"] / PER_INCH == pytest.approx(14, abs=0.5)
    assert main(["fasteners", "8d common", "--wood", "western redcedar"]) == 0
    shown = capsys.readouterr().out
    assert "8d common nail" in shown
    assert "10d common nail" not in shown
    for word in ("lb/in", "N/mm", "Wind: times 1.6", "Table 12.3.3A", "3/4 in (19 mm)"):
        assert word in shown


@pytest.mark.parametrize(("wood", "gravity"), [("southern pine", 0.55), ("spruce-pine-fir", 0.42)])
def test_a_screw_in_builders_words_is_drawn_from_its_wood(capsys, wood, gravity):
    """W = 2850 G^2 D lb/in of thread (NDS 2018 Eq. 12.2-2), D 0.164 in of a No. 8 screw."""
    (screw,) = listed(capsys, "2 1/2 in no 8 wood screw", "--wood", wood)
    drawn = screw["withdrawal_N_per_m"] / PER_INCH
    assert drawn == pytest.approx(2850.0 * gravity**2 * 0.164, rel=1e-4)
    (plain,) = listed(capsys, "2 1/2 in no 8 wood screw")
    assert plain["withdrawal_N_per_m"] is None


def test_everything_fits_a_screen_and_carries_its_sources(capsys):
    assert main(["fasteners", "--wood", "western redcedar"]) == 0
    shown = capsys.readouterr().out
    assert max(map(len, shown.splitlines())) <= 80
    found = listed(capsys, "--wood", "western redcedar")
    assert len(found) > 80
    flat = " ".join(shown.split())
    for each in found:
        assert each["name"] in shown
        assert each["source"] in flat
    assert {each["kind"] for each in found} == {
        *("nail", "wood screw", "deck screw", "lag screw", "bolt", "staple"),
    }


def test_without_a_wood_sizes_alone_are_listed(capsys):
    found = listed(capsys)
    assert {each["withdrawal_N_per_m"] for each in found} == {None}
    assert main(["fasteners"]) == 0
    shown = capsys.readouterr().out
    assert "lb/in" not in shown
    assert "--wood" in shown


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (["16d"], {f"16d {sort} nail" for sort in ("common", "box", "sinker", "finish")}),
        (["#8"], {"#8 wood screw", "#8 deck screw"}),
        (
            ["SINKER"],
            {f"{size} sinker nail" for size in ("6d", "7d", "8d", "10d", "12d", "16d", "20d")},
        ),
        (["#8 wood screw 2 in"], {"#8 wood screw 2 in"}),
        (["3/8 x 4 in lag"], {"3/8 x 4 in lag"}),
    ],
    ids=lambda words: words[0] if isinstance(words, list) else "",
)
def test_a_name_picks_what_holds_every_word_or_reads_as_a_design_does(capsys, words, names):
    assert {each["name"] for each in listed(capsys, *words)} == names


def test_a_thicker_board_leaves_less_of_the_nail(capsys):
    thin, thick = (
        listed(capsys, "8d common", "--wood", "douglas fir", "--side", side)[0]
        for side in ("1/2 in", "1 1/2 in")
    )
    assert thin["penetration_m"] - thick["penetration_m"] == pytest.approx(0.0254)
    assert thin["head_pull_through_N"] < thick["head_pull_through_N"]
    (short,) = listed(capsys, "8d common", "--wood", "douglas fir", "--side", "2 in")
    assert short["lateral_N"] is None
    assert "too short" in short["no_lateral_because"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--wood", "western redceder"], "did you mean 'western redcedar'?"),
        (["--wood", "zzz"], "there are:"),
        (["--wood", "steel"], "no specific gravity"),
        (["--wood", "black locust"], "no specific gravity"),
        (["--side", "5"], "5 in"),
        (["--side", "0 in"], "above 0"),
        (["--side", "2 ft"], "at most 1 ft"),
        (["8d comon"], "did you mean 'common'?"),
        (["glue"], "not a word known"),
        (["\x1b[31m"], "\\x1b"),
        (["8d common", "extra"], "unrecognized"),
    ],
    ids=lambda words: " ".join(words) if isinstance(words, list) else "",
)
def test_what_is_not_known_is_answered_on_standard_error(capsys, words, said):
    assert main(["fasteners", *words]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert said in err
    assert "Traceback" not in err
    assert "\x1b" not in err
