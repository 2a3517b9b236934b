"""What to do about each check that no holding down mends, in words."""

from dataclasses import replace

from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from . import messages
from .facts import Facts
from .fastened_seams import seam_of, seam_remedy
from .joint_advice import joint_remedy
from .joint_words import joint_of, sized
from .spacing_words import spacing_of, spacing_remedy

_WAYS = 3
"""So many ways to make a joint hold are told beside the word, one where there
is more to mend; `size` tells all of them."""


def mends(found: Examination, checks: tuple[Check, ...], facts: Facts) -> list[str]:
    """Return what to do about checks that fail, in their order."""
    most = _WAYS if len(found.verdict.to_mend) == 1 else 1
    return [_mend(found, check, facts, most) for check in checks]


def _mend(found: Examination, check: Check, facts: Facts, most: int) -> str:
    match check.kind:
        case Kind.JOINT if (joint := joint_of(found, check)) is not None:
            sizing = sized(found, joint)
            few = replace(sizing, remedies=sizing.remedies[:most])
            return _asked(check, joint_remedy(few, facts.amounts))
        case Kind.SEAM if (seam := seam_of(found, check)) is not None:
            return _asked(check, seam_remedy(found, seam, facts.amounts))
        case Kind.SPACING if (room := spacing_of(found, check)) is not None:
            return spacing_remedy(room, facts.amounts)
        case kind:
            return plain_mend(kind, check, facts)


def plain_mend(kind: Kind, check: Check, facts: Facts) -> str:
    """Return what to do about a check for which nothing else is worked out."""
    match kind:
        case Kind.LOOSE:
            return messages.LOOSE.format(does="tips", when=_when(check, facts))
        case Kind.LOOSE_SLIDING:
            return messages.LOOSE.format(does="slides off", when=_when(check, facts))
        case Kind.LOAD:
            return messages.LOAD
        case Kind.RACKING:
            return messages.RACKING
        case _:
            how = messages.HOW.get(check.unit, "")
            load = f" under '{check.load}'" if check.load else ""
            return messages.MEMBER.format(times=times(check), how=how, load=load)


def _when(check: Check, facts: Facts) -> str:
    """Return under what a loose piece goes: in the wind, under a load, or when people do that."""
    if not check.load:
        return messages.IN_WIND.format(wind=facts.wind)
    return messages.WHEN.get(check.load) or messages.UNDER_LOAD.format(load=check.load)


def times(check: Check) -> str:
    """Return how much more is asked than is held: ``1.4 times``."""
    if check.utilization is None:
        return "far more than"
    return f"{check.utilization:.1f} times" if check.utilization >= 1.05 else "a little more than"


def _asked(check: Check, advice: str) -> str:
    return messages.ASKED.format(times=times(check), advice=advice)
