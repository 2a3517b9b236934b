"""Anchors in a seller's words: how many of what, and what each has to hold."""

import re

from ...checks.anchoring.anchored import anchor_pulls
from ...checks.anchoring.held import Held
from ...checks.examination import Examination
from ...materials import anchors as kinds
from ..wording.amounts import Amounts
from ..wording.remark import counted, joined
from .held_words import short_of

_NOUN = re.compile(r"\b(stake|anchor|pad|pier|log|bolt)\b")


def of_what(held: Held) -> str:
    """Return how many anchors and guys of which kind: ``four rebar stakes 1/2 in x 36 in``."""
    said = [several_anchors(len(row.points), row.kind) for row in held.anchors]
    said += [counted(len(row.tops), "guy") for row in held.guys]
    return joined(said)


def several_anchors(number: int, kind: str) -> str:
    """Return so many anchors of a kind: ``four rebar stakes 1/2 in x 36 in``."""
    return counted(number, kind, _plural(kind))


def numbered(number: int, kind: str) -> str:
    """Return the same with a figure, for tables: ``4 rebar stakes 1/2 in x 36 in``."""
    return f"{number} {_plural(kind) if number > 1 else kind}"


def _plural(kind: str) -> str:
    return _NOUN.sub(r"\1s", kind, count=1)


def how_many(held: Held) -> str:
    """Return the same without the kind: ``four stakes``."""
    number = sum(len(row.points) for row in held.anchors) + sum(len(r.tops) for r in held.guys)
    return counted(number, short_of(held, one=True), short_of(held))


def each_holds(examination: Examination, held: Held) -> str:
    """Return what each anchor has to hold: ``each to hold 95 lb straight up and 50 lb sideways``.

    A stake is proved where it stands, by a pull twice as hard. Nothing where guys share the pull,
    or where no pull at the foot ends it.
    """
    if held.guys or not held.anchors:
        return ""
    amounts = Amounts(examination.design.units == "metric")
    pulls = anchor_pulls(held, examination.standing, examination.actions, examination.factors)
    straight, level = pulls
    if max(pulls) == float("inf"):
        return ""
    if {kinds.find_anchor(row.kind).group for row in held.anchors} == {"stake"} and straight > 0.0:
        return f"each proved in your soil by a pull of {amounts.pull(2.0 * straight)} straight up"
    ways = ((straight, "straight up"), (level, "sideways"))
    holds = [f"{amounts.pull(pull)} {way}" for pull, way in ways if pull > 0.0]
    return f"each to hold {joined(holds)}" if holds else ""
