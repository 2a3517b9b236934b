"""The sentence behind the word: the same in the JSON, on screens and for programs."""

import pytest
import word_designs
from bare_checks import bare_check

import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.verdict import Reason, Word, verdict_of
from yardfast.report.advice.mends import times
from yardfast.report.advice.verdict_words import fails
from yardfast.report.advice.what_to_do import untied
from yardfast.report.data.result import Result
from yardfast.report.messages.messages import WHY
from yardfast.report.told.facts import facts_of
from yardfast.units.frozen import replace


def found_of(*key):
    return examine(read_text(word_designs.TEXTS[key]))


@pytest.mark.parametrize(("word", "reason"), word_designs.TEXTS, ids=str)
def test_the_json_bears_the_word_and_why(word, reason):
    said = Result(found_of(word, reason)).to_dict()["verdict"]
    assert said["word"] == word
    assert said["why"].startswith(f"{word[0].upper()}{word[1:]}")
    assert said["why"].endswith(".")
    assert said["why"].count(".") == 1
    assert "{" not in said["why"]


def test_every_reason_has_its_message_and_no_message_is_without_a_design():
    assert set(WHY) == set(word_designs.TEXTS)


def test_a_joint_that_was_not_given_is_told_with_the_word():
    text = word_designs.TEXTS[Word.WEIGH_IT_DOWN, Reason.MOVES]
    assert Result(examine(read_text(text))).verdict.why.endswith("if the vane is fastened.")
    whole = Result(found_of(Word.STANDS, Reason.NOTHING_FAILS)).verdict.why
    assert "fastened" not in whole


def test_what_fails_is_counted_by_kind_and_cause():
    found = found_of(Word.STANDS, Reason.NOTHING_FAILS)
    names = ("joint: a", "joint: b", "member: c", "loose: d", "loose sliding: d", "load: e")
    failing = tuple(bare_check(name, 2.0) for name in names)
    under = replace(bare_check("member: f", 3.0), load="e")
    verdict = verdict_of(replace(found, checks=(*found.checks, *failing, under)))
    assert fails(verdict.failing, facts_of(found)) == (
        "1 part is too weak for 'e'; 2 joints and 1 part are too weak for 35 mph; "
        "its loose d will not stay on; it does not stand 'e'"
    )


def test_the_public_result_has_verdict_joints_and_members():
    result = yf.check("examples/light-tower.toml")
    assert result.verdict.word == "tie it down"
    assert result.verdict.why.startswith("Tie it down to stand the 58 mph you asked, if each of")
    assert result.verdict.act.to("mph").magnitude == pytest.approx(25.0)
    assert [one.name for one in result.joints] == [
        "tower to foot",
        "gallery to tower",
        "roof to eaves",
    ]
    first = result.joints[0]
    check = next(one for one in result.checks if one.name == "joint: tower to foot")
    assert (first.of, first.to, first.passes) == ("tower", "foot", check.passes)
    assert first.utilization == check.utilization
    posts = yf.check("examples/fingerpost.toml").members
    assert {one.part for one in posts} >= {"post"}


@pytest.mark.parametrize(
    ("used", "said"),
    [(None, "far more than"), (5.2e14, "far more than"), (4.02, "4.0 times"), (1.04, "a little")],
)
def test_how_far_off_is_told_as_people_write_numbers(used, said):
    check = replace(bare_check("joint: head", 1.0), utilization=used)
    assert times(check).startswith(said)


def test_nobody_is_told_to_tie_what_nothing_holds():
    for key in word_designs.TEXTS:
        if key[0] is Word.NOTHING_HOLDS:
            found = found_of(*key)
            assert "tie" not in untied(found.verdict, facts_of(found)), key
