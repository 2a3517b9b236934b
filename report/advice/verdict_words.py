"""A verdict in words: why, in one sentence that every screen, page and program bears alike."""

from collections.abc import Sequence

from ...checks.judged.judging import Check, Kind
from ...checks.tied import Way
from ...checks.verdict import Verdict, Word
from ..messages.messages import (
    ALONE,
    DEEPER,
    FAILS,
    HOLDING_DOWN,
    IF_FASTENED,
    TOO_WEAK,
    WEAK_MANY,
    WEAK_PARTS,
    WHY,
)
from ..told.facts import Facts
from ..wording.remark import are_many, few, joined

_LOOSE = (Kind.LOOSE, Kind.LOOSE_SLIDING)


def why_sentence(verdict: Verdict, facts: Facts) -> str:
    """Return the word and why as one sentence, with what it takes for granted."""
    return f"{verdict.word.capitalize()}{why(verdict, facts)}{_if(verdict)}."


def why(verdict: Verdict, facts: Facts) -> str:
    """Return what follows the word in a sentence: `` to stand the 58 mph you asked``."""
    return WHY[verdict.word, verdict.reason].format(
        asked=facts.asked,
        ground=facts.ground,
        own=facts.own,
        posts=facts.posts,
        people=facts.people,
        alone=_alone(verdict, facts),
        fails=fails(verdict.failing, facts),
    )


def if_fastened(names: Sequence[str]) -> str:
    """Return under what a verdict holds: ``if the post is fastened``; nothing without names."""
    if not names:
        return ""
    what = f"the {names[0]}" if len(names) == 1 else f"each of {few(names)}"
    verb = "are" if len(names) == 1 and are_many(names) else "is"
    return IF_FASTENED.format(what=what, verb=verb)


def _if(verdict: Verdict) -> str:
    """Return under what it would do: nothing of a piece that does not, fastened or not."""
    if not (verdict.may_be_sold or verdict.word is Word.KEEP_PEOPLE_OFF):
        return ""
    return f", {said}" if (said := if_fastened(verdict.unfastened)) else ""


def _alone(verdict: Verdict, facts: Facts) -> str:
    """Say that holding it down is not enough, where it takes that as well."""
    if not verdict.tied.needed or verdict.tied.ways == (Way.OWN,):
        return ""
    what = facts.anchors if Way.ANCHORS in verdict.tied.ways else HOLDING_DOWN
    what = DEEPER if facts.posts else what
    return ALONE.format(anchors=what)


def fails(failing: Sequence[Check], facts: Facts) -> str:
    """Return what fails of a piece that comes apart: ``1 joint is too weak for 58 mph``."""
    said = [_too_weak(failing, load, facts) for load in dict.fromkeys(c.load for c in failing)]
    for kind, message in FAILS.items():
        kinds = _LOOSE if kind is Kind.LOOSE else (kind,)
        names = dict.fromkeys(c.subject for c in failing if c.kind in kinds)
        quoted = [f"'{name}'" for name in names] if kind is Kind.LOAD else list(names)
        if names:
            said.append(message.format(names=few(quoted)))
    return "; ".join(each for each in said if each)


def _too_weak(failing: Sequence[Check], load: str, facts: Facts) -> str:
    """Return how many joints, parts and seams are too weak for the wind, or under a load."""
    of_it = [c for c in failing if c.load == load and c.kind in WEAK_PARTS]
    if not of_it:
        return ""
    counts = {kind: sum(c.kind is kind for c in of_it) for kind in WEAK_PARTS}
    what = joined(
        f"{n} {WEAK_PARTS[kind] if n == 1 else WEAK_MANY[kind]}" for kind, n in counts.items() if n
    )
    verb = "is" if len(of_it) == 1 else "are"
    return TOO_WEAK.format(what=f"{what} {verb}", under=f"'{load}'" if load else facts.wind)
