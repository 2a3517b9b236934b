"""Fasteners that stand too near, in a builder's words: to what, by how much, and what would do."""

from ...checks.fasteners.spacing import Near, SpacingFound
from ...checks.stated.governed_parts import near_what
from ..messages import messages
from ..messages.check_messages import NEAR
from ..wording.amounts import Amounts
from ..wording.filled import message_of

_LEAST = 1.0e-3
_WAYS = 2


def spacing_slots(found: SpacingFound, amounts: Amounts) -> dict[str, str]:
    """Return how near fasteners stand to what, how far they should, and what would do."""
    nearest = found.nearest
    has, needs = amounts.has_and_needs(nearest.has, nearest.needs, "m", found.check.passes)
    where = message_of(near_what(nearest), amounts, NEAR)
    each_other = nearest.near is Near.EACH_OTHER
    ways = {
        messages.DRILLED: found.in_lead_holes,
        messages.FEWER: each_other,
        messages.THINNER.format(thick=amounts.measure(found.thickest, "m", 2)): (
            found.thickest >= _LEAST
        ),
        messages.FARTHER: not each_other,
    }
    told = [way for way, does in ways.items() if does][:_WAYS]
    return {
        "has": has,
        "needs": needs,
        "where": where,
        "brief": told[0],
        "ways": ", or ".join(told),
    }
