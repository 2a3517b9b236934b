"""The verdict as data: every word is reached, and the worst thing gives it.

The order of the words is that of what people must do first; no published value is at stake.
"""

from pathlib import Path

import numpy as np
import pytest
import word_designs
from bare_checks import bare_check

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.checks.not_looked_at import Topic
from yardfast.checks.stated.surroundings import act_by_exposure
from yardfast.checks.tied import HOLDING, Way
from yardfast.checks.verdict import (
    BY_PEOPLE,
    GOOD,
    IN_PART,
    OF_POSTS,
    Reason,
    Verdict,
    Word,
    until,
    verdict_of,
)
from yardfast.loads.asce7.velocity_pressure import exposure_coefficient
from yardfast.loads.wind.site import Site
from yardfast.units.frozen import replace


def found_of(*key):
    return examine(read_text(word_designs.TEXTS[key]))


@pytest.mark.parametrize(("word", "reason"), word_designs.TEXTS, ids=str)
def test_each_word_and_its_reason_is_reached(word, reason):
    verdict = found_of(word, reason).verdict
    assert (verdict.word, verdict.reason) == (word, reason)


def test_no_word_and_no_reason_is_left_out():
    assert {word for word, _ in word_designs.TEXTS} == set(Word)
    assert {reason for _, reason in word_designs.TEXTS} == set(Reason)


@pytest.mark.parametrize(("word", "reason"), word_designs.TEXTS, ids=str)
def test_a_good_word_stands_for_checks_that_all_pass_and_only_for_those(word, reason):
    found = found_of(word, reason)
    assert found.verdict.is_good == found.passes


def test_every_kind_of_check_has_its_place_in_the_order():
    placed = [*HOLDING, *IN_PART, *OF_POSTS, *BY_PEOPLE, Kind.BEARING]
    assert sorted(placed) == sorted(Kind)


@pytest.mark.parametrize("kind", IN_PART)
def test_what_comes_apart_leads_whatever_else_fails(kind):
    found = found_of(Word.TIE_IT_DOWN, Reason.MOVES)
    check = bare_check(f"{kind}: it", 2.0)
    verdict = verdict_of(replace(found, checks=(*found.checks, check)))
    assert verdict.word is Word.COMES_APART
    assert verdict.mend == (check,)
    assert Way.ANCHORS in verdict.tied.ways


def test_the_worst_of_what_fails_comes_first():
    found = found_of(Word.STANDS, Reason.NOTHING_FAILS)
    some = bare_check("joint: a", 2.0), bare_check("member: b", 5.0), bare_check("seam: c", 0.5)
    verdict = verdict_of(replace(found, checks=(*found.checks, *some)))
    assert [check.subject for check in verdict.mend] == ["b", "a"]


def test_guys_are_a_way_to_tie_it_down_where_stakes_do_not_hold():
    """A plain post on sand: rods hold nothing straight up there (TM 5-818-1), ropes do."""
    verdict = examine(read_text(word_designs.SANDY)).verdict
    assert verdict.word is Word.TIE_IT_DOWN
    assert verdict.tied.ways[0] is Way.GUYS
    assert verdict.tied.guys is not None


def test_what_is_held_needs_no_other_way():
    tied = found_of(Word.HELD_DOWN, Reason.NOTHING_FAILS).verdict.tied
    assert tied.ways == (Way.OWN,)
    assert tied.anchors is None


def test_what_was_not_looked_at_is_data():
    verdict = found_of(Word.TIE_IT_DOWN, Reason.MOVES).verdict
    topics = [one.topic for one in verdict.not_looked_at]
    assert {Topic.LAID_ON, Topic.IN_TIME, Topic.SOIL} <= set(topics)
    fastening = next(one for one in verdict.not_looked_at if one.topic is Topic.FASTENING)
    assert fastening.of == verdict.unfastened == ("tower", "gallery", "roof")
    assert verdict.carrying == ("tower",)
    assert all(one.of for one in verdict.not_looked_at if one.topic is Topic.STRENGTH)


@pytest.mark.parametrize("people", ["children", None])
def test_plates_are_told_to_be_judged_without_people_where_people_come(people):
    found = found_of(Word.TIE_IT_DOWN, Reason.MOVES)
    site = replace(found.site, people=people)
    drawn = replace(found.design, tables={**found.design.tables, Site: site})
    again = examine(drawn)
    told = [x.of for x in again.verdict.not_looked_at if x.topic is Topic.UNDER_PEOPLE]
    walls = {one.name for one in again.members.judged if one.role == "wall panel"}
    assert walls
    assert bool(told) is (people is not None)
    assert all(walls <= set(of) for of in told)
    assert "foot" not in {name for of in told for name in of}  # a ring of sticks, under all cases


def test_good_words_are_three():
    assert {str(word) for word in GOOD} == {
        "held down",
        "stands by itself",
        "stands by its posts",
    }
    assert isinstance(found_of(Word.STANDS, Reason.NOTHING_FAILS).verdict, Verdict)


def test_each_anchor_is_tested_with_twice_what_the_most_used_is_asked():
    """Of two rows of which one is asked half as much: twice the greater, in the field."""
    found = found_of(Word.HELD_DOWN, Reason.NOTHING_FAILS)
    (head, *_) = [one for one in found.checks if one.kind is Kind.ANCHOR_HEAD]
    lesser = replace(head, subject="others", demand=0.5 * head.demand)
    for checks in ((*found.checks, lesser), (lesser, *found.checks)):
        tied = verdict_of(replace(found, checks=checks)).tied
        assert tied.test == pytest.approx(2.0 * head.demand)


def test_until_it_is_mended_other_surroundings_ask_to_act_by_the_gust_at_the_piece():
    """Used nine times, wind alone: it holds a third of the wind asked, at the piece; at the shore
    and among houses the forecast that brings that gust differs as their gusts at it do."""
    found = examine(read_text(Path("examples/light-tower.toml").read_text(encoding="utf-8")))
    weak = replace(found, checks=(*found.checks, bare_check("member: b", 9.0)))
    own = until(weak)
    assert own == pytest.approx(found.site.wind / 3.0, rel=0.1)  # in whole steps, downward
    assert own < found.limits.act
    acts = act_by_exposure(weak)
    assert acts["C"] == pytest.approx(own)
    at_piece = {each: gust_ratio(each, found.structure.height) for each in acts}
    for exposure, act in acts.items():
        assert act == pytest.approx(own * at_piece["C"] / at_piece[exposure], rel=1e-6)


def gust_ratio(exposure, height):
    """The gust at a piece over that of a forecast, 10 m up over open country: sqrt(K_z/K_z10)."""
    Kz = exposure_coefficient(np.array([height, 10.0]), exposure)[0]
    return float(np.sqrt(Kz / exposure_coefficient(10.0, "C")))
