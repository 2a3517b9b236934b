"""What holds a piece down, in words: the anchors and guys of its file, and what they lack."""

from ...checks.anchoring.held import Held
from ...checks.examination import Examination
from ...materials import anchors
from ...statics.tables.anchor_table import GuyRow
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


def hold_down(examination: Examination) -> str:
    """Return what kind of anchor is meant as a remedy: stake, ground anchor or bolt."""
    if not examination.standing.ground.stakes_possible:
        return "bolt"
    choice = examination.anchors
    staked = choice is not None and anchors.find_anchor(choice.row.kind).group == "stake"
    return "stake" if staked else "ground anchor"


def hold_downs(examination: Examination) -> str:
    """Return the same of several, in one word: stakes, anchors or bolts."""
    return f"{_one_word(examination)}s"


def _one_word(examination: Examination) -> str:
    return {"ground anchor": "anchor"}.get(kind := hold_down(examination), kind)


def anchor_word(examination: Examination) -> str:
    """Return what holds it, or would: stake, anchor or bolt; where several do, anchor."""
    held = examination.held
    kinds = [row.kind for row in held.anchors] + [
        row.anchor for row in examination.design.several(GuyRow)
    ]
    if not kinds:
        return _one_word(examination)
    groups = {anchors.find_anchor(kind).group for kind in kinds}
    if groups == {"slab bolt"}:
        return "bolt"
    return "stake" if groups == {"stake"} else "anchor"
