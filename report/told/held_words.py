"""What holds a piece down, in words: the anchors and guys of its file, and what they lack."""

from ...checks.anchoring.held import Held
from ...checks.examination import Examination
from ...checks.holder import Holder, would_hold
from ...materials import anchors
from ..messages.terms import TERMS_SAID
from ..wording.remark import joined

_KINDS = {
    "stake": "stake",
    "screw anchor": "screw anchor",
    "manufactured-home anchor": "screw anchor",
    "buried weight": "buried weight",
    "deadman": "buried log",
    "pier": "concrete pier",
    "slab bolt": "bolt",
}


def hold_short(examination: Examination) -> str:
    """Return the same in a word or two: ``stakes``, ``stakes and guys``."""
    return short_of(examination.held)


def short_of(held: Held, *, one: bool = False) -> str:
    """Return the same of what holds any piece, or of one alone."""
    kinds = [*(_kind(row.kind) for row in held.anchors), *(["guy"] if held.guys else [])]
    return joined(kind if one else f"{kind}s" for kind in dict.fromkeys(kinds))


def _kind(name: str) -> str:
    return _KINDS.get(anchors.find_anchor(name).group, "anchor")


def hold_downs(examination: Examination) -> str:
    """Return what would hold it, in one word for several: stakes, anchors or bolts."""
    return f"{one_word(would_hold(examination))}s"


def one_word(holder: Holder) -> str:
    """Return what holds a piece in one word: stake, anchor or bolt."""
    return TERMS_SAID["holder"].get(holder, holder)
