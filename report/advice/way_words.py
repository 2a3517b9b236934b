"""Each way to hold a piece in a line: what it takes as it is built."""

from ...checks.sizing.remedy import Built
from ..messages import window_messages as messages
from ..told.sizing_words import amount
from ..told.tied_words import guys_said
from ..wording.amounts import Amounts
from ..wording.remark import capital
from .what_to_do import anchors_set

BUILD = {"base width": " across", "ballast": " fixed low", "height": " tall", "wind": " at most"}
"""What follows an amount as it is built, by the kind of remedy."""


def way_name(kind: str) -> str:
    """Return what a way is called."""
    return messages.WAYS[kind]


def way_said(way: Built, amounts: Amounts) -> str:
    """Return what a way takes, and when to act then."""
    if way.anchors is not None:
        pull = messages.WAY_PULL.format(pull=amounts.pull(way.value))
        return f"{capital(anchors_set(way.anchors, amounts))}{pull}."
    if way.guys is not None:
        return f"{capital(guys_said(way.guys, amounts))}."
    build = amount(way.kind, way.value, amounts) + BUILD[way.kind]
    then = messages.WAY_ACT.format(act=amounts.act(way.act)) if way.act is not None else ""
    return f"{capital(build)}{then}."
