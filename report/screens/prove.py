"""How to prove the weight and balance by hand: a spring scale, a level pull, a helper."""

from math import atan2, degrees, floor

from ...checks.examination import Examination
from ...checks.sides import Over, goes_over
from ...checks.stability.overturning import push_that_tips
from ...checks.verdict import most
from ...units import INCH
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from ..wording.words import over_what

_HOOK = 48 * INCH
_BELOW_TOP = 0.8


def prove(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return the pull at which its edge begins to lift, to be tried on a calm day."""
    if examination.posts is not None:
        return []
    standing = examination.standing
    step = 0.01 if amounts.metric else INCH
    height = min(_HOOK, _BELOW_TOP * standing.structure.height)
    height = max(step * floor(height / step + 1.0e-9), step)
    low, high = (push_that_tips(standing, weighing, height) for weighing in ("light", "heavy"))
    if low <= 0.0:
        return []
    if low > most("scale pull"):
        return wrapped(
            "Prove it: it takes more than a common scale reads to lift its edge: weigh its parts.",
            rest="  ",
        )
    return wrapped(
        f"Prove it, in calm air: hook a spring scale {amounts.length(height)} up and pull level, "
        f"a helper steadying it{_blocked(examination, high)}: {_behind(examination)} should begin "
        f"to lift at {_range(low, high, amounts)}.",
        rest="  ",
    )


def _blocked(examination: Examination, pull: float) -> str:
    """Say to block the foot where it would slide before it lifts."""
    standing = examination.standing
    kinds = {patch.contact for patch in standing.structure.patches}
    mu = min(standing.ground.friction[kind].coefficient for kind in kinds)
    slides = pull > mu * standing.structure.weight("light")
    return ", its foot blocked by a board" if slides else ""


def _behind(examination: Examination) -> str:
    line = examination.limits.tipping_line
    x, y = examination.standing.normals[line]
    toward = degrees(atan2(x, y)) % 360.0
    if goes_over(examination, toward) in (Over.ANY_SIDE, Over.ANY_CORNER):
        return "the edge behind"
    return f"pulled over {over_what(examination, toward)}, the edge behind"


def _range(low: float, high: float, amounts: Amounts) -> str:
    upper, least = amounts.force(high, "up"), amounts.whole_force(low)
    if least == amounts.whole_force(high, "up"):
        return f"about {upper}"
    return f"{least:,} to {upper}" if least else f"less than 1 to {upper}"
