"""How the gusts that tip and slide a piece go with the width of its foot and weight laid low."""

from math import ceil, inf

from ...units import FOOT, POUND
from ...units.frozen import ByValue
from ..as_one import AsOne
from ..judged.build_steps import down, least, up
from ..limits import Limits
from .sizing_case import Case

WIDEST_FOOT = 20.0 * FOOT
HEAVIEST = 5000.0 * POUND
"""The most that is tried of a foot's width and of weight laid low: judgement."""

POINTS = 9
_BEYOND = 1.5
"""So far beyond the answer, or beyond what there is, a curve goes at least."""


class CurvePoint(ByValue, frozen=True):
    """The limits at a foot's ``value`` in m or a weight laid low in kg; ``present``: as it is.

    ``mass`` in kg is that of the whole.
    """

    kind: str
    value: float
    unit: str
    mass: float
    limits: Limits
    present: bool


def width_curve(case: Case, answer: float | None) -> tuple[CurvePoint, ...]:
    """Return the limits by the foot's width, from the present one on; ``answer`` lies within."""
    now = case.foot.width
    last = min(_BEYOND * max(answer or 0.0, 2.0 * now), WIDEST_FOOT)
    return _curve(case, "base width", "m", now, last)


def weight_curve(case: Case, answer: float | None) -> tuple[CurvePoint, ...]:
    """Return the limits by weight laid low, from none on; ``answer`` lies within."""
    own = case.before.structure.mass("typical")
    last = min(_BEYOND * max(answer or 0.0, own), HEAVIEST)
    return _curve(case, "ballast", "kg", 0.0, last)


def slides_first(case: Case) -> float | None:
    """Return the foot's least width in m at which it slides before it tips, None if none does."""
    if case.foot.part is not None and _slides_first(case.before):
        return case.foot.width
    step = case.steps.width
    low, high = up(case.foot.width, step), down(WIDEST_FOOT, step)
    for k, found in case.known("base width").items():
        if _slides_first(found):
            high = k
            break
        low = max(low, k)

    def does(k: int) -> bool:
        found = case.whole("base width", k)
        return found is not None and _slides_first(found)

    found = least(does, low, high, (low + high) // 2)
    return None if found is None else found * step


def _slides_first(found: AsOne) -> bool:
    slides, tips = found.limits.sliding, found.limits.tipping
    return slides is not None and slides < (tips if tips is not None else inf)


def _curve(case: Case, kind: str, unit: str, now: float, last: float) -> tuple[CurvePoint, ...]:
    """Return the piece as it is, and changed ones in even steps up to ``last`` or a little more."""
    step = case.step(kind)
    first = down(now, step)
    every = max(ceil((down(last, step) - first) / (POINTS - 1)), 1)
    points = [
        CurvePoint(kind, now, unit, case.before.structure.mass("typical"), case.before.limits, True)
    ]
    for k in range(first + every, first + POINTS * every, every):
        found = case.whole(kind, k)
        if found is not None:
            mass = found.structure.mass("typical")
            points.append(CurvePoint(kind, k * step, unit, mass, found.limits, False))
    return tuple(points)
