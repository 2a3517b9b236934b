"""Rows of tapered pieces, turned so that the first one's edge runs along the sheet's."""

from collections.abc import Sequence
from itertools import groupby
from math import cos, radians, sin

import numpy as np

from ...units.frozen import ByValue
from .blanks import ROOM, Blank, Laid, slope

OFF_GRAIN = radians(10.0)
"""How far from the grain a row of tapered pieces may be turned to lie snug: judgement."""


class SnugRow(ByValue, frozen=True):
    """Like pieces side by side over the sheet's width, from 0 on, and the length they take."""

    laid: tuple[Laid, ...]
    length: float


def snug_rows(
    blanks: Sequence[Blank], width: float, length: float
) -> tuple[list[SnugRow], list[Blank]]:
    """Return rows that hold more pieces for being turned, and the pieces that are in none."""
    rows: list[SnugRow] = []
    single: list[Blank] = []
    for blank, group in groupby(sorted(blanks, key=_order), key=lambda one: one):
        left = len(list(group))
        plain, best = _in_row(blank, left, 0.0, width), 0
        if 1.0e-6 < abs(slope(blank)) <= OFF_GRAIN:
            best = _in_row(blank, left, slope(blank), width)
        if best > max(plain, 1):
            row = _row(blank, best, slope(blank))
            if row.length <= length + ROOM:
                rows += [row] * (left // best)
                left %= best
        single += [blank] * left
    return rows, single


def _order(blank: Blank) -> tuple[float, ...]:
    return blank.kind, blank.length, blank.bottom, blank.top, blank.gap


def _in_row(blank: Blank, count: int, off_grain: float, width: float) -> int:
    """Return how many of ``count`` pieces a row holds, its pieces turned from the grain."""
    number = 1
    while number < count and _width(_row(blank, number + 1, off_grain)) <= width + ROOM:
        number += 1
    return number


def _row(blank: Blank, count: int, off_grain: float) -> SnugRow:
    """Return pieces side by side, every other one flipped, in a row turned and set at 0, 0."""
    pitch = (blank.bottom + blank.top) / 2.0 + blank.gap / cos(slope(blank))
    step = pitch * np.array([cos(off_grain), sin(off_grain)])
    middles = np.arange(count)[:, None] * step
    half = blank.length / 2.0
    raw = [Laid(blank, x, y - half, bool(k % 2), off_grain) for k, (x, y) in enumerate(middles)]
    corners = np.vstack([one.corners() for one in raw])
    x0, y0 = corners.min(axis=0).tolist()
    laid = tuple(
        Laid(blank, one.middle - x0, one.start - y0, one.flipped, off_grain) for one in raw
    )
    return SnugRow(laid, float(np.ptp(corners[:, 1])))


def _width(row: SnugRow) -> float:
    return float(max(one.corners()[:, 0].max() for one in row.laid))
