"""Fasteners that stand too near, in a builder's words: to what, by how much, and what would do."""

from ...checks.examination import Examination
from ...checks.joints.spacing import Near, SpacingFound
from ...checks.judging import Check
from ..wording import messages
from ..wording.amounts import Amounts

_LEAST = 1.0e-3
_WAYS = 2


def spacing_of(examination: Examination, check: Check) -> SpacingFound | None:
    """Return the room of fasteners that a check is of, None where it is of something else."""
    found = examination.spacings
    return next((one for one in found if one.check.name == check.name), None)


def spacing_notes(examination: Examination, check: Check) -> tuple[str, ...]:
    """Return what stands nearest to what, as a sentence; none for another check."""
    found = spacing_of(examination, check)
    if found is None:
        return ()
    slots = spacing_slots(found, Amounts(examination.design.units == "metric"))
    return (messages.SPACED.format(fastener=found.fastener.name, **slots),)


def spacing_slots(found: SpacingFound, amounts: Amounts) -> dict[str, str]:
    """Return how near fasteners stand to what, how far they should, and what would do."""
    nearest = found.nearest
    has, needs = amounts.has_and_needs(nearest.has, nearest.needs, "m", found.check.passes)
    where = messages.NEAR[nearest.near].format(part=nearest.part or messages.BLOCKS_OF_BOTH)
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
