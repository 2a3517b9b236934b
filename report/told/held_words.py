"""What holds a piece down, in words: its anchors and guys, how many, of which kind."""

from ...checks.anchoring.held import Held
from ...checks.holder import Holder, anchors_and_guys, in_all
from ..messages.terms import TERMS_SAID
from ..wording.remark import counted, joined, several_of


def short_of(held: Held) -> str:
    """Return what holds a piece in a word or two: ``stakes``, ``stakes and guys``."""
    said = TERMS_SAID["anchor group"]
    return joined(several_of(said.get(one, one)) for one in in_all(held).of)


def one_word(holder: Holder) -> str:
    """Return what holds a piece in one word: stake, anchor or bolt."""
    return TERMS_SAID["holder"].get(holder, holder)


def of_what(held: Held) -> str:
    """Return how many anchors and guys of which kind: ``four rebar stakes 1/2 in x 36 in``."""
    return joined(several_anchors(one.number, *one.of) for one in anchors_and_guys(held))


def several_anchors(number: int, kind: str) -> str:
    """Return so many anchors of a kind: ``four rebar stakes 1/2 in x 36 in``."""
    return counted(number, kind, several_of(kind))


def numbered(number: int, kind: str) -> str:
    """Return the same with a figure, for tables: ``4 rebar stakes 1/2 in x 36 in``."""
    return f"{number} {several_of(kind) if number > 1 else kind}"
