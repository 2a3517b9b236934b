"""Each way to hold a piece in a line: what it takes as it is built, or why it is none."""

from ...checks.examination import Examination
from ...checks.sizing.remedy import Remedy
from ..messages import window_messages as messages
from ..told.sizing_words import amount, why_no_remedy
from ..told.tied_words import guys_said
from ..wording.amounts import Amounts
from ..wording.remark import capital
from .what_to_do import anchors_set

BUILD = {"base width": " across", "ballast": " fixed low", "height": " tall", "wind": " at most"}
"""What follows an amount as it is built, by the kind of remedy."""


def way_name(remedy: Remedy) -> str:
    """Return what a way is called."""
    return messages.WAYS[remedy.kind]


def is_to_do(remedy: Remedy) -> bool:
    """Return whether there is something to do that would hold the piece."""
    return remedy.feasible and remedy.design is not None and remedy.reason is None


def way_said(found: Examination, remedy: Remedy) -> str:
    """Return what a way takes, and when to act then; or why it is none."""
    amounts = Amounts(found.design.units == "metric")
    if not is_to_do(remedy) or remedy.value is None:
        return f"{capital(why_no_remedy(found, remedy))}."
    if remedy.anchors is not None:
        pull = messages.WAY_PULL.format(pull=amounts.pull(remedy.value))
        return f"{capital(anchors_set(remedy.anchors, amounts))}{pull}."
    if remedy.guys is not None:
        return f"{capital(guys_said(remedy.guys, amounts))}."
    build = amount(remedy, amounts, remedy.value) + BUILD[remedy.kind]
    act = None if remedy.found is None else remedy.found.limits.act
    then = messages.WAY_ACT.format(act=amounts.act(act)) if act is not None else ""
    return f"{capital(build)}{then}."
