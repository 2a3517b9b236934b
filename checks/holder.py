"""What holds a piece down, or would, as data: which kind, how many, what each has to hold."""

from enum import StrEnum
from math import inf

from ..materials import anchors
from ..statics.tables.anchor_table import GuyRow
from .anchoring.anchored import anchor_pulls
from .anchoring.held import Held
from .judged.finding import Amount, Finding, FindingSlot, Several, Term

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .examination import Examination


class Holder(StrEnum):
    """A kind of what holds a piece down."""

    STAKE = "stake"
    GROUND_ANCHOR = "ground anchor"
    BOLT = "bolt"


class Each(StrEnum):
    """What each anchor has to hold, or is proved with."""

    PROVED = "a pull in the soil"
    UP = "straight up"
    SIDEWAYS = "sideways"
    BOTH = "straight up and sideways"


class HeldBy(StrEnum):
    """What holds a piece by its file, or was found to do."""

    POSTS = "posts in the ground"
    NOTHING_NEEDED = "nothing needed"
    NOTHING_HERE = "nothing here"
    OWN = "its own"
    CHOSEN = "anchors chosen"


def would_hold(found: "Examination") -> Holder:
    """Return what is meant as a remedy."""
    if not found.standing.ground.stakes_possible:
        return Holder.BOLT
    choice = found.anchors
    staked = choice is not None and anchors.find_anchor(choice.row.kind).group == "stake"
    return Holder.STAKE if staked else Holder.GROUND_ANCHOR


def holder_of(found: "Examination") -> Holder:
    """Return what holds it by its file, or would; where several kinds do, ground anchors."""
    guys = found.design.several(GuyRow)
    kinds = [*(row.kind for row in found.held.anchors), *(row.anchor for row in guys)]
    groups = {anchors.find_anchor(kind).group for kind in kinds}
    if not groups:
        return would_hold(found)
    only = {"slab bolt": Holder.BOLT, "stake": Holder.STAKE}
    return (
        only.get(groups.pop(), Holder.GROUND_ANCHOR) if len(groups) == 1 else Holder.GROUND_ANCHOR
    )


def dug_or_driven(found: "Examination") -> Term:
    """Return what goes into the ground, of which the buried lines have to be known first."""
    if found.posts is not None:
        return Term("digging", "post")
    needed = found.held or found.needs_anchors
    return Term("digging", holder_of(found) if needed else Holder.STAKE)


def anchors_and_guys(held: Held) -> tuple[Several, ...]:
    """Return how many anchors and guys there are, of which kind."""
    rows = [Several(len(row.points), (row.kind,)) for row in held.anchors]
    return (*rows, *(Several(len(row.tops), ("guy",)) for row in held.guys))


def in_all(held: Held) -> Several:
    """Return how many anchors and guys there are, by their groups alone."""
    groups = [anchors.find_anchor(row.kind).group for row in held.anchors]
    number = sum(len(row.points) for row in held.anchors) + sum(len(r.tops) for r in held.guys)
    groups += ["guy"] if held.guys else []
    kinds = dict.fromkeys(groups)
    return Several(number, tuple(kinds), "anchor group")


def of_each(found: "Examination", held: Held) -> tuple[Finding, ...]:
    """Return what each anchor has to hold, one finding or none.

    A stake is proved where it stands, by a pull twice as hard. None where guys share the pull,
    or where no pull at the foot ends it.
    """
    if held.guys or not held.anchors:
        return ()
    up, sideways = anchor_pulls(held, found.standing, found.actions, found.factors)
    if max(up, sideways) in (0.0, inf):
        return ()
    if {anchors.find_anchor(row.kind).group for row in held.anchors} == {"stake"} and up > 0.0:
        return (Finding(Each.PROVED, {"pull": Amount(2.0 * up, "pull")}),)
    what = Each.BOTH if up > 0.0 and sideways > 0.0 else Each.UP if up > 0.0 else Each.SIDEWAYS
    return (Finding(what, {"up": Amount(up, "pull"), "sideways": Amount(sideways, "pull")}),)


def held_in_brief(found: "Examination") -> Finding:
    """Return what holds it by its design, else the anchors that were found to do."""
    if found.posts is not None:
        return Finding(HeldBy.POSTS)
    if not (found.held or found.needs_anchors):
        return Finding(HeldBy.NOTHING_NEEDED)
    if found.held:
        return Finding(HeldBy.OWN, held_slots(found, found.held))
    choice = found.anchors
    if choice is None:
        return Finding(HeldBy.NOTHING_HERE)
    where = Term("places", choice.places)
    return Finding(HeldBy.CHOSEN, {**held_slots(found, choice.held), "where": where})


def held_slots(found: "Examination", held: Held) -> dict[str, FindingSlot]:
    """Return what holds a piece as slots: how many of ``what``, in ``all``, and ``each`` of it."""
    return {"what": anchors_and_guys(held), "all": in_all(held), "each": of_each(found, held)}
