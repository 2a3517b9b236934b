"""What holds a piece down, or would: stakes, ground anchors or bolts."""

from enum import StrEnum

from ..materials import anchors
from ..statics.tables.anchor_table import GuyRow

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .examination import Examination


class Holder(StrEnum):
    """A kind of what holds a piece down."""

    STAKE = "stake"
    GROUND_ANCHOR = "ground anchor"
    BOLT = "bolt"


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
