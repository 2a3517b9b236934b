"""Foot against weight against stakes: a few of each, with what each does untied and tied."""

from typing import Literal

from ...units.frozen import ByValue
from ..examination import Examination
from ..judged.build_steps import down, up
from ..tied import most
from ..verdict import Verdict
from .forbidden import forbidden_foot
from .remedy import WIND_CHECKS, Remedy, checks_pass, failing
from .sizing_case import Case

WIDER = (1.125, 1.25, 1.5)
_LAID = (0.5, 1.0)
"""Parts of the present foot, and of the weight that would do alone, each told in a line."""


class SizeChoice(ByValue, frozen=True):
    """A piece as it is, on a foot ``value`` m wide, or with ``value`` kg laid low in its foot.

    ``act`` is the forecast gust in m/s to act at untied, None above 150. ``stands`` is whether it
    does in the wind asked untied; ``verdict`` says what else would hold it.
    """

    kind: Literal["as it is", "base width", "ballast"]
    value: float
    act: float | None
    stands: bool
    verdict: Verdict


def choices_of(case: Case, width: Remedy, ballast: Remedy) -> tuple[SizeChoice, ...]:
    """Return a piece as it is, then wider feet that nothing forbids, then weights laid low.

    ``width`` and ``ballast`` are the remedies of these kinds.
    """
    now, step = case.foot.width, case.steps.width
    widest = most("foot width")
    found = [_choice(case, "as it is", now, case.before)]
    widths = dict.fromkeys(up(part * now, step) for part in WIDER)
    enough = width.value
    if enough is not None:
        widths |= {down(enough + 0.5 * step, step): None}
    for k in sorted(k for k in widths if now < k * step <= widest):
        tried = case.tried("base width", k)
        if tried is None or _breaks(case, tried) or forbidden_foot(tried, case.foot.part):
            break
        found.append(_choice(case, "base width", k * step, tried))
    weight, step = ballast.value, case.steps.mass
    for k in dict.fromkeys(up(part * (weight or 0.0), step) for part in _LAID):
        tried = case.tried("ballast", k) if 0 < k * step <= most("weight laid low") else None
        if tried is not None and not _breaks(case, tried):
            found.append(_choice(case, "ballast", k * step, tried))
    return tuple(found)


def _breaks(case: Case, tried: Examination) -> bool:
    """Return whether something fails of the changed piece that does not of the piece as it is."""
    return bool(failing(tried, case.names - WIND_CHECKS))


def _choice(
    case: Case, kind: Literal["as it is", "base width", "ballast"], value: float, found: Examination
) -> SizeChoice:
    return SizeChoice(kind, value, found.limits.act, checks_pass(found, case.names), found.verdict)
