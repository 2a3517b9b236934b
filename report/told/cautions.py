"""What to take care of, in words: the general cautions always, the others where they apply."""

from collections.abc import Iterable

from ...checks.stated.cautions import Caution, Cautioned
from ..wording.amounts import Amounts
from ..wording.filled import Messages, filled_message

_WITHIN: Messages = {
    Cautioned.CALL: "{Ask}",
    Cautioned.WEIGHED: "{scale}, the boards come to {boards}",
    Cautioned.KEEP_AWAY: "keep away from it",
    Cautioned.LAY_DOWN: "lay it down or take it in, in time",
    Cautioned.MORE: "more ",
    Cautioned.AT_ALL: "",
}


def cautions(found: Iterable[Caution], amounts: Amounts) -> tuple[str, ...]:
    """Return cautions as sentences."""
    return tuple(filled_message(one.text, one.slots, amounts, _WITHIN) for one in found)
