"""What the first screen says is what the JSON and the sheet say: kinds, words, beginners."""

import json
import re
from math import floor
from pathlib import Path

import pytest
import word_designs
from slips import FILES

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.verdict import GOOD, HOLDABLE, Word
from yardfast.cli import main
from yardfast.cli.commands.new import default_file
from yardfast.cli.starting.pieces import PIECE_KINDS
from yardfast.design.faults import DesignError
from yardfast.design.reader.mending import with_changes
from yardfast.design.reader.scan import seen
from yardfast.report.data.result import Result
from yardfast.report.printed.sheet import sheet_object
from yardfast.report.screens.first_screen import first_screen

MPH = 0.44704  # international mile in m over 3600 s, exact
KMH = 1.0 / 3.6
CHOSEN = (
    ("'2x6'", "'2x6 flat'"),
    ("'1x2'", "'1x2 flat'"),
    ("'Treated Pine'", "'southern pine, treated'"),
    ("'50%'", "0.5"),
    ("width = '3.5'", "sides = 4\nbottom = '3 1/2 in'\ntop = '3 1/2 in'"),
    ("size = ['20\"', '7\"', '9\"']\n", ""),
    ("width = 7\nheight = 9\n", "width = '7 in'\nheight = '9 in'\n"),
    ("mass = '5'", "mass = '5 lb'"),
    ("count = '1'\n", ""),
    ("shape = 'solid'\nfrom", "shape = 'member'\nfrom"),
    ("(9 in, 9 in, 0)", "['9 in', '9 in', '0.1 in']"),
    ("(2 in, 2 in, 6 ft)", "['2 in', '2 in', '6 ft']"),
    ("diameter", "across"),
    ("on = 'leg'\nmat", "on = 'leg'\nat = ['2 in', '2 in', '0 in']\nmat"),
    ("# Bob's windmill\nname = Bob's windmill", '[design]\nname = "Bob\'s windmill"'),
    ("units = inches", "units = 'imperial'"),
    ("weather forecast", "'forecast'"),
    ('size = 24"\nthickness = 3/4"', "length = '24 in'\nwidth = '24 in'\nheight = '3/4 in'"),
    (
        "tapered box\nbottom = '16\"'\ntop = '8\"'",
        "'box'\nlength = '16 in'\nwidth = '16 in'\ntop_length = '8 in'\ntop_width = '8 in'",
    ),
)
"""What beginners write at last where the answer asks them, or tells what is needed."""

TEXTS = {kind: default_file(kind) for kind in PIECE_KINDS}
TEXTS |= {f"{word}, {why}": text for (word, why), text in word_designs.TEXTS.items()}


def faults(text):
    try:
        read_text(text, "piece.toml")
    except DesignError as error:
        return error.faults
    return ()


def put_right(text):
    """Return a beginner's text with what is sure, or told, put in, and then what they choose."""
    for _ in range(2):
        for _ in range(8):
            told = [fault.change for fault in faults(text) if fault.change]
            sure = [change for change in told if change.sure] or told[:1]
            text = with_changes(seen(text), sure)
        for old, new in CHOSEN:
            text = text.replace(old, new)
    return text


def flat(lines):
    return " ".join(" ".join(lines).split())


def agree(text):
    found = examine(read_text(text))
    screen = flat(line.text for line in first_screen(found, 70))
    result, page = Result(found).to_dict(), sheet_object(found, "letter")
    word = result["verdict"]["word"]
    assert f"{word.upper()} " in screen
    why = result["verdict"]["why"].removesuffix(".")
    # the sentence ends in what is not fastened, which the screen may tell in its rows
    assert re.split(r", if |[,:] ", why[len(word) :].strip(" ,:"))[0] in screen
    ready = word in GOOD | HOLDABLE
    assert (page["draft"] is None) == ready
    if not ready:
        assert word in page["draft"].casefold()
        return
    act = result["limits"]["act_forecast_gust_m_s"]
    one, unit = (KMH, "km/h") if found.design.units == "metric" else (MPH, "mph")
    told = 5 * floor(act / one / 5.0 + 1.0e-9)
    if told:
        assert f"gusts over {told} {unit}" in screen
        assert f"{told} {unit}" in [row[0] for row in page["rows"]]
    pull = re.search(r"pull up with (\d+ (?:lb|kg))", screen)
    assert bool(pull) == any("straight up to" in step for step in page["steps"])
    if pull:
        assert any(f"straight up to {pull[1]}" in step for step in page["steps"])
    never = dict(page["sections"])["Not looked at"]
    is_told = "people" in result["verdict"]["not_looked_at"]
    assert is_told == ("; people" in screen) == ("; people" in never)


@pytest.mark.parametrize("name", TEXTS)
def test_a_piece_is_told_alike_on_screen_in_json_and_on_paper(name):
    agree(TEXTS[name])


def bare(text):
    """Return a text without blanks and marks: a screen breaks lines, and shows what was typed."""
    return re.sub(r"[\s'\"]", "", text)


def told_of(fault):
    """Return what a fault of JSON has to say on a screen: where it is, and what was found there."""
    line = [f"line {fault['line']}"] if fault["line"] is not None else []
    names = ", ".join(filter(None, (fault["part"], fault["key"])))
    return [*line, names, fault["found"]]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_beginners_file_is_told_alike_as_it_is_and_once_it_is_put_right(
    file, tmp_path, monkeypatch, capsys
):
    monkeypatch.chdir(tmp_path)
    text = file.read_text(encoding="utf-8")
    Path("piece.toml").write_text(text, encoding="utf-8")
    said = []
    for command in (
        ["check", "piece.toml"],
        ["check", "piece.toml", "--format", "json"],
        ["sheet", "piece.toml", "-o", "piece.pdf"],
        ["label", "piece.toml"],
    ):
        assert main(command) == 2
        said.append(capsys.readouterr().err)
    assert f"{len(faults(text))} things to put right" in said[0]
    assert said == said[:1] * len(said)
    Path("other.toml").write_text(TEXTS["sign"], encoding="utf-8")
    assert main(["check", "piece.toml", "other.toml", "--format", "json"]) == 2
    (told, *_) = json.loads(capsys.readouterr().out)
    assert main(["check", "piece.toml", "--all"]) == 2
    screen, rest = bare(capsys.readouterr().err), 0
    for words in (bare(words) for fault in told["faults"] for words in told_of(fault)):
        rest = screen.index(words, rest) + len(words)  # one behind the other, as in the file
    whole = put_right(text)
    assert faults(whole) == ()
    agree(whole)


def test_every_word_of_the_list_is_reached_by_a_design():
    assert {word for word, _ in word_designs.TEXTS} == set(Word)
    for (word, reason), text in word_designs.TEXTS.items():
        verdict = examine(read_text(text)).verdict
        assert (verdict.word, verdict.reason) == (word, reason)
