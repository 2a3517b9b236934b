"""How often the gust comes that moves a piece, in words, with what they rest on."""

from math import isfinite

from ...checks.examination import Examination
from ...loads.recurrence import recurrence
from ...loads.wind.how_often import LONGER, Recurrence
from ..wording.amounts import Amounts

_BY = {
    "local values": "by the gusts of this place that you gave",
    "peaks": "by the record of {per} gusts that you gave",
    "map": "by the code's map, far outside hurricane regions",
}

_FEW = 5.0
"""Years below which a return period is told without a number: judgement."""


def moving_gust(examination: Examination) -> float | None:
    """Return the forecast gust in m/s that tips or slides it untied; None above 150 m/s."""
    limits = examination.limits
    known = [g for g in (limits.forecast_tipping, limits.forecast_sliding) if g is not None]
    return min(known, default=None)


def how_often(examination: Examination) -> Recurrence | None:
    """Return how often that gust comes here; None where it cannot be told."""
    gust = moving_gust(examination)
    if gust is None or gust <= 0.0:
        return None
    return recurrence(gust, examination.site)


def how_often_said(examination: Examination, amounts: Amounts) -> str | None:
    """Return it in a sentence; None where it cannot be told."""
    found, gust = how_often(examination), moving_gust(examination)
    if found is None or gust is None:
        return None
    by = _BY[found.method].format(per=examination.site.peaks_per)
    wind = f"a gust of {amounts.gust(gust)}"
    if not isfinite(found.years):
        most = LONGER * (found.longest or 0.0)
        return f"{wind} comes less than once in {most:,.0f} years here, {by}: no further told"
    return f"{wind} comes {_often(found.years)} here, {by}"


def _often(years: float) -> str:
    """Return how often in words; a number from 5 years on, where it means something."""
    if years < 1.0:
        return "several times a year"
    if years < _FEW:
        return "every few years"
    step = 10.0 ** (len(str(int(years))) - 2) if years >= 100.0 else 1.0 if years < 20.0 else 5.0
    return f"about once in {round(years / step) * round(step):,} years"
