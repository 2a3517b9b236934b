"""How a fastener is driven: through what, into what, how far it reaches, and how far it must."""

from functools import cache
from math import cos, inf, radians

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.ranges import not_negative
from ....materials.fastener import Fastener
from ....units.arrays import Array
from ....units.frozen import ByValue
from .joint_material import JointMaterial


class Driven(ByValue, frozen=True):
    """How a fastener is driven; lengths in m.

    ``through`` the side piece (with ``plate`` of steel under the head) into the piece that holds
    the point, whose wood reaches ``room`` along it and lies as ``into`` says. A staple's crown lies
    across the grain under it where ``crown_across`` says so.
    """

    side: JointMaterial
    main: JointMaterial
    through: float
    room: float
    into: str
    plate: float | None = None
    washer: float | None = None
    toe_nailed: bool = False
    made_wet: bool | None = None
    stays_dry: bool = False
    crown_across: bool = False


def lengths(L: float, driven: Driven) -> tuple[float, float]:
    """Return what a fastener ``L`` m long goes through and how far it reaches beyond, in m."""
    if driven.toe_nailed:
        side = L / driving_rule("toe-nail length over its start")
        return side, L * cos(radians(driving_rule("toe-nail slant"))) - side
    return driven.through, max(L - driven.through - (driven.plate or 0.0), 0.0)


def length_that_holds(fastener: Fastener, p: float) -> float:
    """Return how much of a penetration ``p`` in m holds against pulling out, in m."""
    threaded = fastener.kind not in ("nail", "staple") or fastener.shank == "ring"
    thread = fastener.thread_length if threaded else None
    tip = fastener.tip_length if fastener.kind == "lag screw" else None
    return float(holding_length(p, inf if thread is None else thread, tip or 0.0))


def holding_length(
    penetration: ArrayLike, thread_length: ArrayLike = np.inf, tip_length: ArrayLike = 0.0
) -> Array:
    """Return the length in m (…) that holds against pulling out.

    ``penetration`` (…) into the piece that holds the point, all in m. Of a smooth nail all of it
    holds; of a ring-shank nail or screw the thread in it, ``thread_length`` (…) being measured
    from the point; of a lag screw less its tapered ``tip_length`` (…). ValueError below 0.
    Source: NDS 2018 12.2.1.1 (lag screws: without the tip), 12.2.2.1 (screws: thread), 12.2.3.
    """
    p = not_negative("penetration", penetration)
    thread = not_negative("thread_length", thread_length)
    return np.maximum(np.minimum(p, thread) - not_negative("tip_length", tip_length), 0.0)


@cache
def driving_rule(rule: str) -> float:
    """Return a rule of NDS on how fasteners are driven, by its name there."""
    return float(references.table("wood/driving_rules").one("rule", rule)["value"])
