"""What to do about each check that no holding down mends, in words."""

from dataclasses import dataclass, replace

from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from . import messages
from .facts import Facts
from .fastened_seams import seam_of, seam_remedy
from .joint_advice import joint_remedy
from .joint_words import joint_of, sized
from .spacing_words import spacing_of, spacing_slots

_WAYS = 3
"""So many ways to make a joint hold are told beside the word, one where there
is more to mend; `size` tells all of them."""

_FAR = 100.0
"""What is asked so many times what it holds has no number worth telling."""


@dataclass(frozen=True)
class Mend:
    """What to do about a check: in short, and whole."""

    short: str
    whole: str


def mends(found: Examination, most: int, facts: Facts) -> list[Mend]:
    """Return what to do about what fails, ``most`` of it in its order; alike ones once."""
    alike = found.verdict.mended_alike
    ways = _WAYS if len(alike) == 1 else 1
    return [_mend(found, checks[0], facts, ways) for checks in alike[:most]]


def _mend(found: Examination, check: Check, facts: Facts, most: int) -> Mend:
    match check.kind:
        case Kind.JOINT if (joint := joint_of(found, check)) is not None:
            sizing = sized(found, joint)
            few = replace(sizing, remedies=sizing.remedies[:most])
            advice = joint_remedy(few, facts.amounts)
            return filled(messages.ASKED, times=times(check), advice=advice)
        case Kind.SEAM if (seam := seam_of(found, check)) is not None:
            advice = seam_remedy(found, seam, facts.amounts)
            return filled(messages.ASKED, times=times(check), advice=advice)
        case Kind.SPACING if (room := spacing_of(found, check)) is not None:
            return filled(messages.SPACING, **spacing_slots(room, facts.amounts))
        case kind:
            return plain_mend(kind, check, facts)


def plain_mend(kind: Kind, check: Check, facts: Facts) -> Mend:
    """Return what to do about a check for which nothing else is worked out."""
    match kind:
        case Kind.LOOSE | Kind.LOOSE_SLIDING:
            does = "tips" if kind is Kind.LOOSE else "slides off"
            return filled(messages.LOOSE, does=does, when=_when(check, facts))
        case Kind.LOAD:
            return filled(messages.LOAD)
        case Kind.RACKING:
            return filled(messages.RACKING)
        case _:
            how = messages.HOW.get(check.unit, "")
            load = f" under '{check.load}'" if check.load else ""
            return filled(messages.MEMBER, times=times(check), how=how, load=load)


def filled(message: tuple[str, str], **slots: str) -> Mend:
    """Return a mend by its message in two parts."""
    short, rest = (each.format(**slots) for each in message)
    return Mend(short, f"{short}: {rest}")


def _when(check: Check, facts: Facts) -> str:
    """Return under what a loose piece goes: in the wind, under a load, or when people do that."""
    if not check.load:
        return messages.IN_WIND.format(wind=facts.wind)
    return messages.WHEN.get(check.load) or messages.UNDER_LOAD.format(load=check.load)


def times(check: Check) -> str:
    """Return how much more is asked than is held: ``1.4 times``."""
    if check.utilization is None or check.utilization >= _FAR:
        return "far more than"
    return f"{check.utilization:.1f} times" if check.utilization >= 1.05 else "a little more than"
