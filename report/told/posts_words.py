"""Posts in the ground in words: which they are, how deep they stand, how deep they should."""

from collections.abc import Iterable

from ...checks.judged.finding import Finding
from ...checks.stated.planted import Planted
from ..wording.amounts import Amounts
from ..wording.filled import Messages, message_of
from ..wording.remark import joined

_PLANTED: Messages = {
    Planted.ONE: "its {names}, {deep} in the ground",
    Planted.SEVERAL: "{posts}, {deep} in the ground",
    Planted.DEEPER: "make {name} {ways:, or }",
    Planted.NO_DEPTH: "no depth up to {deepest} is enough for {name}: lower, or more posts",
    Planted.IN_EARTH: "{long} long, {deep} of it in the ground",
    Planted.IN_CONCRETE: "{long} long, {deep} of it in concrete {across} across",
}


def posts_said(planted: Finding | None, amounts: Amounts) -> str:
    """Return the posts in the ground and their depth; empty where it stands on none."""
    return "" if planted is None else message_of(planted, amounts, _PLANTED)


def deeper_said(found: Iterable[Finding], amounts: Amounts) -> str:
    """Return how long the posts that give way should be, and how deep they should then stand."""
    return joined(message_of(one, amounts, _PLANTED) for one in found)
