"""How often the gust comes that moves a piece, in words, with what they rest on."""

from math import isfinite

from ...checks.how_often import MovingGust
from ...loads.wind.how_often import LONGER
from ..wording.amounts import Amounts

_BY = {
    "local values": "by the gusts of this place that you gave",
    "peaks": "by the record of {per} gusts that you gave",
    "map": "by the code's map, far outside hurricane regions",
}

_FEW = 5.0
"""Years below which a return period is told without a number: judgement."""


def how_often_said(found: MovingGust | None, amounts: Amounts) -> str:
    """Return it in a sentence; empty where it cannot be told."""
    if found is None:
        return ""
    years, by = found.comes.years, _BY[found.comes.method].format(per=found.per)
    wind = f"a gust of {amounts.gust(found.gust)}"
    if not isfinite(years):
        most = LONGER * (found.comes.longest or 0.0)
        return f"{wind} comes less than once in {most:,.0f} years here, {by}: no further told"
    return f"{wind} comes {_often(years)} here, {by}"


def _often(years: float) -> str:
    """Return how often in words; a number from 5 years on, where it means something."""
    if years < 1.0:
        return "several times a year"
    if years < _FEW:
        return "every few years"
    step = 10.0 ** (len(str(int(years))) - 2) if years >= 100.0 else 1.0 if years < 20.0 else 5.0
    return f"about once in {round(years / step) * round(step):,} years"
