"""What holds a piece down, in words: the anchors and guys of its file, and what they lack."""

from math import isfinite

from ..checks.anchoring.held import Held
from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from ..checks.verdict import HOLDING
from ..materials import anchors
from .amounts import Amounts
from .remark import counted, joined

_KINDS = {
    "stake": "stake",
    "screw anchor": "screw anchor",
    "manufactured-home anchor": "screw anchor",
    "buried weight": "buried weight",
    "deadman": "buried log",
    "pier": "concrete pier",
    "slab bolt": "bolt",
}


def holders(examination: Examination) -> str:
    """Return what holds it down: ``four stakes (rebar stake 1/2 in x 36 in) and three guys``."""
    held = examination.held
    said = [f"{counted(len(row.points), _kind(row.kind))} ({row.kind})" for row in held.anchors] + [
        counted(len(row.tops), "guy") for row in held.guys
    ]
    return joined(said)


def hold_short(examination: Examination) -> str:
    """Return the same in a word or two: ``stakes``, ``stakes and guys``."""
    return short_of(examination.held)


def short_of(held: Held) -> str:
    """Return the same of what holds any piece."""
    kinds = [f"{_kind(row.kind)}s" for row in held.anchors] + (["guys"] if held.guys else [])
    return joined(dict.fromkeys(kinds))


def what_lacks(examination: Examination, amounts: Amounts) -> str:
    """Return what of the holding fails, the worst first."""
    failing = [check for check in examination.checks if not check.passes and check.kind in HOLDING]
    failing.sort(key=lambda check: -check.rank)
    return joined(dict.fromkeys(_lack(check, amounts) for check in failing[:3]))


def _lack(check: Check, amounts: Amounts) -> str:
    name = check.subject
    times = "far more than" if check.utilization is None else _times(check.utilization)
    match check.kind:
        case Kind.OVERTURNING:
            return "it still tips"
        case Kind.SLIDING:
            return "it still slides"
        case Kind.ANCHOR_HEAD:
            pull = amounts.pull(check.demand) if isfinite(check.demand) else "more"
            return f"the heads of {name} are pulled {pull} and hold {amounts.pull(check.capacity)}"
        case _:
            return f"{name} are asked for {times} what they hold"


def _times(utilization: float) -> str:
    return f"{utilization:.1f} times"


def _kind(name: str) -> str:
    return _KINDS.get(anchors.find(name).group, "anchor")
