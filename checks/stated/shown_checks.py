"""Which checks a table shows, and what stands beside each, as data."""

from ...units.frozen import ByIdentity, ByValue
from ..anchoring.held import Held
from ..examination import Examination
from ..holder import Holder, would_hold
from ..judged.finding import Finding
from ..judged.judging import Check, Kind
from ..sides import over_found

_MUCH = 0.5
_PLATES = ("wall panel", "box wall", "roof slope", "roof panel", "lid", "deck")
"""Roles that are left to the engineer's list while they use less than half of their strength."""

_GOES_OVER = (Kind.OVERTURNING, Kind.PUSH, Kind.CLIMB)


class ShownCheck(ByValue, frozen=True):
    """A check of the table; ``over`` is over what it goes, ``more`` how many pass more easily."""

    check: Check
    over: Finding | None = None
    more: int = 0


class ShownChecks(ByIdentity, frozen=True):
    """The checks of a table in their order, and what is told of all of them.

    ``holder`` is what would hold it, None where it stands on posts; ``helping`` the share of its
    weight that counts. Friction may be known ``dry`` only. ``doubtful`` are subjects that fail
    where stuff gives more or less; ``lifted`` is whether the wind leaves nothing to resist.
    """

    rows: tuple[ShownCheck, ...]
    held: Held
    holder: Holder | None
    helping: float
    ground: str
    dry: bool
    doubtful: tuple[str, ...]
    lifted: bool


def shown_checks(found: Examination) -> ShownChecks:
    """Return the checks that the table shows."""
    ground = found.standing.ground
    touching = {patch.contact for patch in found.standing.structure.patches}
    shown = [_shown(found, check) for check in found.checks if _is_shown(check)]
    return ShownChecks(
        rows=(*shown, *_strengths(found)),
        held=found.held,
        holder=None if found.posts is not None else would_hold(found),
        helping=found.factors.helping,
        ground=found.site.ground,
        dry="dry" in {ground.friction[kind].state for kind in touching},
        doubtful=tuple(check.subject for check in found.checks if check.fails_in_doubt),
        lifted=any(check.capacity <= 0.0 for check in found.free or ()),
    )


def _is_shown(check: Check) -> bool:
    """Return whether a check is a row: parts are told apart, and of room only what is short."""
    return check.kind is not Kind.MEMBER and (check.kind is not Kind.SPACING or not check.passes)


def _shown(found: Examination, check: Check) -> ShownCheck:
    goes = check.kind in _GOES_OVER
    return ShownCheck(check, over_found(found, check.toward_deg or 0.0) if goes else None)


def _strengths(found: Examination) -> list[ShownCheck]:
    """Return each part that is not strong enough, and the nearest to it of those that are.

    Walls, roofs, lids and decks that use less than half of theirs are left to the engineer's list.
    """
    checks = [
        one.check
        for one in found.members.judged
        if one.role not in _PLATES or not one.check.passes or _use(one.check) > _MUCH
    ]
    strong = sorted((check for check in checks if check.passes), key=_use, reverse=True)
    nearest = [ShownCheck(check, more=len(strong) - 1) for check in strong[:1]]
    return [*(ShownCheck(check) for check in checks if not check.passes), *nearest]


def _use(check: Check) -> float:
    return check.utilization or 0.0
