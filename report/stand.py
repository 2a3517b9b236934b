"""What a verdict has to say first: whether a piece stands, is held, or what it lacks."""

from enum import Enum

from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from ..checks.verdict import HOLDING, most, width_helps
from ..materials import anchors
from ..statics.anchor_table import GuyRow


class Stand(Enum):
    """What a verdict has to say first."""

    FALLS = "falls over by itself"
    SLIDES = "slides down by itself"
    STANDS = "stands untied"
    HELD = "held down"
    SLIPS = "not held down enough"
    ANCHOR = "anchor it"
    WEIGH = "weigh it down"
    HOPELESS = "nothing here holds it"
    PLANTED = "posts in the ground carry it"
    SHALLOW = "its posts in the ground give way"
    SINKS = "the ground gives way"
    PUSHED = "people tip it"
    IN_PART = "a loose part or a named load fails"
    WEAK = "a part is not strong enough"


def stand_of(examination: Examination) -> Stand:
    """Return what the verdict of a design has to say first."""
    if examination.posts is not None and examination.needs_anchors:
        return Stand.SHALLOW
    held = bool(examination.held)
    if held and any(not check.passes for check in holding_checks(examination)):
        return Stand.SLIPS
    if not held and examination.posts is None and (unheld := _unheld(examination)) is not None:
        return unheld
    failing = [check.kind for check in examination.checks if not check.passes]
    if {Kind.PUSH, Kind.CLIMB} & set(failing):
        return Stand.PUSHED
    if Kind.BEARING in failing:
        return Stand.SINKS
    if failing:
        weak = all(kind is Kind.MEMBER for kind in failing)
        return Stand.WEAK if weak else Stand.IN_PART
    if examination.posts is not None:
        return Stand.PLANTED
    return Stand.HELD if held else Stand.STANDS


def anchors_meant(examination: Examination) -> bool:
    """Return whether anchors are to be set: it has its own, or they would hold wind or people."""
    if examination.posts is not None:
        return False
    if examination.design.laid_down and not examination.held:
        return False
    return bool(examination.held) or stand_of(examination) in (Stand.ANCHOR, Stand.PUSHED)


def holding_checks(examination: Examination) -> list[Check]:
    """Return the checks that tell whether it is held: tipping, sliding, each anchor and guy."""
    return [c for c in examination.checks if c.kind in HOLDING]


def _unheld(examination: Examination) -> Stand | None:
    """Return what is to be said of a piece that wind alone moves; None where it does not."""
    limits, remedies = examination.limits, examination.remedies
    if limits.tipping is not None and limits.tipping <= 0.0:
        return Stand.FALLS
    if limits.sliding is not None and limits.sliding <= 0.0:
        return Stand.SLIDES
    if not examination.needs_anchors:
        return None
    if examination.anchors is not None:
        return Stand.ANCHOR
    if remedies.ballast <= most("weight laid low") or width_helps(examination):
        return Stand.WEIGH
    return Stand.HOPELESS


def hold_down(examination: Examination) -> str:
    """Return what kind of anchor is meant as a remedy: stake, ground anchor or bolt."""
    if not examination.standing.ground.stakes_possible:
        return "bolt"
    choice = examination.anchors
    staked = choice is not None and anchors.find(choice.row.kind).group == "stake"
    return "stake" if staked else "ground anchor"


def hold_downs(examination: Examination) -> str:
    """Return the same of several, in one word: stakes, anchors or bolts."""
    return {"ground anchor": "anchors"}.get(kind := hold_down(examination), f"{kind}s")


def anchor_word(examination: Examination) -> str:
    """Return what holds it, or would: stake, anchor or bolt; where several do, anchor."""
    held = examination.held
    kinds = [row.kind for row in held.anchors] + [
        row.anchor for row in examination.design.several(GuyRow)
    ]
    if not kinds:
        return hold_downs(examination).removesuffix("s")
    groups = {anchors.find(kind).group for kind in kinds}
    if groups == {"slab bolt"}:
        return "bolt"
    return "stake" if groups == {"stake"} else "anchor"
