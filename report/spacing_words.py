"""Fasteners that stand too near, in a builder's words: to what, by how much, and what would do."""

from ..checks.examination import Examination
from ..checks.joints.spacing import Near, SpacingFound
from ..checks.judging import Check
from . import messages
from .amounts import Amounts

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
    nearest, amounts = found.nearest, Amounts(examination.design.units == "metric")
    has, needs = amounts.has_and_needs(nearest.has, nearest.needs, "m", check.passes)
    where = messages.NEAR[nearest.near].format(part=nearest.part or messages.BLOCKS_OF_BOTH)
    return (f"Each {found.fastener.name} stands {has} or more {where} and needs {needs}.",)


def spacing_remedy(found: SpacingFound, amounts: Amounts) -> str:
    """Return how near fasteners stand to what, and what would do."""
    nearest = found.nearest
    has, needs = amounts.has_and_needs(nearest.has, nearest.needs, "m", found.check.passes)
    where = messages.NEAR[nearest.near].format(part=nearest.part or messages.BLOCKS_OF_BOTH)
    ways: list[str] = []
    if found.in_lead_holes:
        ways.append(messages.DRILLED)
    if nearest.near is Near.EACH_OTHER:
        ways.append(messages.FEWER)
    if found.thickest >= _LEAST:
        ways.append(messages.THINNER.format(thick=amounts.measure(found.thickest, "m", 2)))
    if nearest.near is not Near.EACH_OTHER:
        ways.append(messages.FARTHER)
    return messages.SPACING.format(
        has=has, where=where, needs=needs, ways=", or ".join(ways[:_WAYS])
    )
