"""What was assumed where the design is silent, in words: each default that affected the answer."""

from collections.abc import Iterable

from ...checks.judged.finding import Finding, FindingSlot
from ...checks.stated.assumed import Assumed
from ...checks.stated.assumed_parts import OfParts
from ..fastening.fastener_words import plural
from ..messages.assumed_messages import ASSUMED, LIKE, LIKE_ALL, WIDEST_BOARD
from ..wording.amounts import Amounts
from ..wording.filled import filled_message


def assumptions(found: Iterable[Finding], amounts: Amounts) -> tuple[str, ...]:
    """Return assumptions as sentences."""
    return tuple(assumption(one, amounts) for one in found)


def assumption(one: Finding, amounts: Amounts) -> str:
    """Return one assumption as a sentence."""
    slots = {**one.slots, **_words(one, amounts)}
    return filled_message(ASSUMED[one.what], slots, amounts, ASSUMED)


def _words(one: Finding, amounts: Amounts) -> dict[str, FindingSlot]:
    """Return the slots that are words by what else is found."""
    match one.what:
        case Assumed.SIDES:
            sides = one.slots["sides"]
            return {"like": LIKE.get(sides, LIKE_ALL) if isinstance(sides, int) else LIKE_ALL}
        case OfParts.THIN_NAILS:
            return {"fasteners": plural(str(one.slots["fastener"]))}
        case OfParts.SEPARATE_BOARDS:
            return {"widest": WIDEST_BOARD[amounts.metric]}
        case _:
            return {}
