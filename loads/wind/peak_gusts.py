"""How often a gust comes by a record of peak gusts, yearly or daily: Gumbel's distribution."""

from collections.abc import Sequence
from math import exp, expm1, inf, isfinite
from typing import Any, cast

import numpy as np

from ...units.frozen import ByValue
from .how_often import LONGER, Recurrence

FEWEST = {"yearly": 10, "daily": 730}
"""Peaks that a fit asks for, judgement: ten years, or two years of days."""

DAYS_TOGETHER = 30
"""Daily peaks are gathered in blocks of this many days: gales last for days, and calm days say
nothing of the strongest (short records by monthly maxima, as in ASCE/SEI 7-10 C26.5)."""

DAYS_A_YEAR = 365.25


class Peaks(ByValue, frozen=True):
    """Gumbel's distribution of the peaks of one block: F(V) = exp(-exp(-(V - mode)/scale)).

    ``mode`` and ``scale`` in m/s; ``blocks_a_year`` peaks make a year; ``record`` is how many years
    the peaks cover, ``per`` what was given: ``"yearly"`` or ``"daily"``.
    """

    mode: float
    scale: float
    blocks_a_year: float
    record: float
    per: str


def fit_peaks(peaks: Sequence[float], per: str = "yearly") -> Peaks:
    """Return the distribution fitted by greatest likelihood to ``peaks`` in m/s, in order of time.

    ``per`` is ``"yearly"`` or ``"daily"``; days in blocks of 30, a last short block is left out.
    ValueError for another word, fewer than ten years or two years of days, peaks that are not
    finite and above 0, or all the same. Source: Gumbel 1958; fit by scipy.stats.gumbel_r.
    """
    if per not in FEWEST:
        raise ValueError(f'per: found "{per}", expected "yearly" or "daily"')
    if len(peaks) < FEWEST[per]:
        raise ValueError(f"peaks: found {len(peaks)}, expected {FEWEST[per]} or more {per} ones")
    wrong = [one for one in peaks if not (isfinite(one) and one > 0.0)]
    if wrong:
        raise ValueError(f"peaks: found {wrong[0]:g}, expected speeds above 0")
    values = np.asarray(peaks, dtype=float)
    years = float(len(values)) if per == "yearly" else len(values) / DAYS_A_YEAR
    if per == "daily":
        whole = len(values) // DAYS_TOGETHER
        values = values[: whole * DAYS_TOGETHER].reshape(whole, DAYS_TOGETHER).max(axis=1)
    if np.ptp(values) <= 0.0:
        raise ValueError("peaks: all are the same")
    from scipy import stats  # noqa: PLC0415 - half a second that a check does without

    mode, scale = cast(tuple[float, float], cast(Any, stats.gumbel_r).fit(values))
    per_year = 1.0 if per == "yearly" else DAYS_A_YEAR / DAYS_TOGETHER
    return Peaks(float(mode), float(scale), per_year, years, per)


def recurrence_by_peaks(gust: float, peaks: Peaks) -> Recurrence:
    """Return how often ``gust`` in m/s is reached: once in 1/(n (1 - F)) years, n blocks a year.

    Infinite beyond twice the length of the record.
    """
    above = -expm1(-exp(-(gust - peaks.mode) / peaks.scale))
    years = 1.0 / (peaks.blocks_a_year * above) if above > 0.0 else inf
    told = years if years <= LONGER * peaks.record else inf
    return Recurrence(told, "peaks", peaks.record)
