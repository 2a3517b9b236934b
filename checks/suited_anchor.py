"""The first listed anchor that would hold what a piece asks of each: a stake, else what is more."""

from ..materials import anchors
from ..materials.anchors import Anchor
from .examination import Examination
from .holding import holding

_DRIVEN = ("stake", "screw anchor", "pier")
_INTO_A_SLAB = ("slab bolt",)


def suited_anchor(examination: Examination) -> Anchor | None:
    """Return the least anchor of the tables that holds the proposed pulls; None where none does.

    Straight and sideways pull together use it up at most whole, and its head holds the pull.
    Kinds are tried from the simplest, those sold in the design's own units first.
    """
    ground, stakes = examination.standing.ground, examination.remedies.stakes
    metric = examination.design.units == "metric"
    groups = _DRIVEN if ground.stakes_possible else _INTO_A_SLAB
    soil = examination.factors.soil
    for group in groups:
        listed = [anchor for anchor in anchors.listing() if anchor.group == group]
        listed.sort(key=lambda anchor: (" mm" in anchor.name or " m" in anchor.name) != metric)
        for anchor in listed:
            holds = holding(anchor, ground)
            up = _share(stakes.pull, soil * holds.straight)
            if up + _share(stakes.sideways, soil * holds.sideways) <= 1.0 and (
                stakes.pull <= holds.head
            ):
                return anchor
    return None


def _share(asked: float, holds: float) -> float:
    if asked <= 0.0:
        return 0.0
    return asked / holds if holds > 0.0 else float("inf")
