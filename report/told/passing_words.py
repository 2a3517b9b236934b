"""What a piece was found to do once it is changed, in a sentence: its checks by their plain names.

Only those that a builder asked about are named; what was not checked is said elsewhere.
"""

from collections.abc import Sequence

from ...checks.judged.judging import Check, Kind
from ..wording.remark import are_many, joined

_WHOLE = {
    Kind.OVERTURNING: "tip",
    Kind.SLIDING: "slide",
    Kind.BEARING: "sink in",
    Kind.PUSH: "go over when pushed",
    Kind.CLIMB: "go over when climbed",
}
_PARTS = {
    Kind.LOOSE: ("does not tip", "do not tip"),
    Kind.LOOSE_SLIDING: ("does not slide", "do not slide"),
    Kind.LOAD: ("does not tip it", "do not tip it"),
    Kind.EMBEDMENT: ("stays upright in the ground", "stay upright in the ground"),
    Kind.JOINT: ("stays fastened", "stay fastened"),
    Kind.SEAM: ("keeps its panels together", "keep their panels together"),
    Kind.ANCHOR: ("can take the pull", "can take the pull"),
    Kind.ANCHOR_HEAD: ("will not pull through", "will not pull through"),
    Kind.GUY: ("can take the pull", "can take the pull"),
    Kind.MEMBER: ("is strong enough for the wind", "are strong enough for the wind"),
}

_OF_PARTS = (Kind.LOOSE, Kind.LOOSE_SLIDING, Kind.EMBEDMENT, Kind.MEMBER)
"""Checks that bear the name of a part, which may itself be one of many."""


def passing(checks: Sequence[Check]) -> str:
    """Return what passes: ``it neither tips nor slides; tower to foot stays fastened``."""
    said: list[str] = []
    kinds = [check.kind for check in checks if check.kind in _WHOLE]
    whole = [_WHOLE[kind] for kind in kinds]
    if whole:
        said.append(f"it does not {joined(whole, 'or')}")
    if kinds[:2] == [Kind.OVERTURNING, Kind.SLIDING]:
        more = f", nor does it {joined(whole[2:], 'or')}" if whole[2:] else ""
        said = [f"it neither tips nor slides{more}"]
    for kind, (one, many) in _PARTS.items():
        parts = [check.subject for check in checks if check.kind is kind]
        if parts:
            several = len(parts) > 1 or (kind in _OF_PARTS and are_many(parts))
            said.append(f"{joined(parts)} {many if several else one}")
    return "; ".join(said)


def named(check: Check) -> str:
    """Return a check by its plain name: ``tipping``, ``joint tower to foot``."""
    plain = _PLAIN.get(check.kind, str(check.kind))
    return f"{plain} {check.subject}".rstrip()


_PLAIN = {
    Kind.OVERTURNING: "tipping",
    Kind.BEARING: "sinking in",
    Kind.CLIMB: "climbing",
    Kind.MEMBER: "strength of",
    Kind.EMBEDMENT: "depth of",
    Kind.SEAM: "seams of",
}
