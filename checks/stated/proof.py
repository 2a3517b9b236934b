"""How weight and balance are proved by hand, as data: where to pull, and at what it lifts."""

from math import atan2, degrees, floor

from ...units import INCH
from ...units.frozen import ByValue
from ..examination import Examination
from ..judged.build_steps import steps_of
from ..judged.finding import Finding
from ..sides import Over, goes_over, over_found
from ..stability.overturning import push_that_tips

_HOOK = 48 * INCH
_BELOW_TOP = 0.8


class Proof(ByValue, frozen=True):
    """A level pull ``height`` m up at which the edge begins to lift, from ``low`` to ``high`` N.

    The foot is ``blocked`` where it would slide before. ``over`` is over what it is pulled, None
    where that is alike every way.
    """

    height: float
    low: float
    high: float
    blocked: bool
    over: Finding | None


def proof_of(found: Examination) -> Proof | None:
    """Return the pull at which its edge begins to lift; None of posts, and of what falls over."""
    if found.posts is not None:
        return None
    standing = found.standing
    step = steps_of(found.design.units).height
    height = min(_HOOK, _BELOW_TOP * standing.structure.height)
    height = max(step * floor(height / step + 1.0e-9), step)
    low, high = (push_that_tips(standing, weighing, height) for weighing in ("light", "heavy"))
    if low <= 0.0:
        return None
    kinds = {patch.contact for patch in standing.structure.patches}
    mu = min(standing.ground.friction[kind].coefficient for kind in kinds)
    x, y = standing.normals[found.limits.tipping_line]
    toward = degrees(atan2(x, y)) % 360.0
    alike = goes_over(found, toward) in (Over.ANY_SIDE, Over.ANY_CORNER)
    blocked = high > mu * standing.structure.weight("light")
    return Proof(height, low, high, blocked, None if alike else over_found(found, toward))
