"""Pieces laid out on sheets: trapezoids side by side, every other one turned end for end."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from math import atan2, ceil, cos, radians, sin

import numpy as np

from .shapes.shape import Array

ROOM = 1.0e-9
"""What may be missing (m) for a piece that fits exactly."""

SHUFFLES = 6
"""How many further orders are tried, drawn at random from a fixed seed."""

FEW = 120
"""Up to this many pieces the further orders are tried."""

OFF_GRAIN = radians(10.0)
"""How far from the grain a row of tapered pieces may be turned to lie snug: judgement."""


@dataclass(frozen=True)
class Blank:
    """A flat piece to be laid out: an even-sided trapezoid in m, its length along the grain.

    ``kind`` tells which piece it is, ``gap`` how much the saw takes between it and the next.
    """

    kind: int
    bottom: float
    top: float
    length: float
    gap: float

    @property
    def widest(self) -> float:
        """Return the wider of its ends in m."""
        return max(self.bottom, self.top)

    @property
    def area(self) -> float:
        """Return its area in m2."""
        return (self.bottom + self.top) / 2.0 * self.length


@dataclass(frozen=True)
class Laid:
    """A blank where it lies: ``middle`` across the sheet and ``start`` along it, in m.

    ``off_grain`` turns it about its own middle, in rad counter-clockwise.
    """

    blank: Blank
    middle: float
    start: float
    flipped: bool
    off_grain: float = 0.0

    def corners(self) -> Array:
        """Return its corners (4, 2) in m: across the sheet, along it."""
        low, high = self._ends()
        half = self.blank.length / 2.0
        own = np.array([[-low / 2, -half], [low / 2, -half], [high / 2, half], [-high / 2, half]])
        return _turned(own, self.off_grain) + np.array([self.middle, self.start + half])

    def _ends(self) -> tuple[float, float]:
        bottom, top = self.blank.bottom, self.blank.top
        return (top, bottom) if self.flipped else (bottom, top)


@dataclass(frozen=True)
class Layout:
    """Sheets of ``width`` across and ``length`` along the grain in m, and what lies on each."""

    width: float
    length: float
    sheets: tuple[tuple[Laid, ...], ...]

    @property
    def area(self) -> float:
        """Return the area of all that is laid out, in m2."""
        return sum(one.blank.area for sheet in self.sheets for one in sheet)

    @property
    def least_sheets(self) -> int:
        """Return the number of sheets below which the pieces' area alone does not fit."""
        return ceil(self.area / (self.width * self.length) - ROOM)

    @property
    def used(self) -> float:
        """Return how far along the last sheet the pieces reach, in m; the rest is whole."""
        return max((float(one.corners()[:, 1].max()) for one in self.sheets[-1]), default=0.0)


def nest(blanks: Sequence[Blank], width: float, length: float) -> Layout:
    """Return a layout of all blanks on as few sheets as several orders of laying them down give.

    Each goes to the first sheet that has room, there as near to the start as it can and then as
    far to one side, as it is or end for end, ``gap`` from its neighbours. Longest, largest, widest
    first, and some orders by lot; each also with tapered pieces in rows turned so that the first
    one's edge runs along the sheet's. The one with fewest sheets and the longest rest is taken.
    Raises ValueError where a blank is larger than the sheet.
    """
    if not blanks:
        return Layout(width, length, ())
    for blank in blanks:
        if blank.widest > width + ROOM or blank.length > length + ROOM:
            raise ValueError(f"a blank of {blank.widest} by {blank.length} m is too large")
    rows, single = _snug_rows(blanks, width, length)
    found = [_laid_down([], order, width, length) for order in _orders(blanks)]
    if rows:
        found += [_laid_down(rows, order, width, length) for order in _orders(single)]
    return min(found, key=lambda layout: (len(layout.sheets), layout.used))


def _orders(blanks: Sequence[Blank]) -> Iterator[list[Blank]]:
    yield sorted(blanks, key=lambda b: (-b.length, -b.area, b.kind))
    yield sorted(blanks, key=lambda b: (-b.area, -b.length, b.kind))
    yield sorted(blanks, key=lambda b: (-b.widest, -b.length, b.kind))
    if len(blanks) > FEW or len({blank.kind for blank in blanks}) < 2:
        return
    drawn = np.random.default_rng(7)
    for _ in range(SHUFFLES):
        yield [blanks[i] for i in drawn.permutation(len(blanks))]


@dataclass(frozen=True)
class _Row:
    """Like pieces side by side over the sheet's width, from 0 on, and the length they take."""

    laid: tuple[Laid, ...]
    length: float


def _snug_rows(
    blanks: Sequence[Blank], width: float, length: float
) -> tuple[list[_Row], list[Blank]]:
    """Return rows that hold more pieces for being turned, and the pieces that are in none."""
    rows: list[_Row] = []
    single: list[Blank] = []
    for blank, group in groupby(sorted(blanks, key=_order), key=lambda one: one):
        left = len(list(group))
        plain, best = _in_row(blank, left, 0.0, width), 0
        if 1.0e-6 < abs(_slope(blank)) <= OFF_GRAIN:
            best = _in_row(blank, left, _slope(blank), width)
        if best > max(plain, 1):
            row = _row(blank, best, _slope(blank))
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


def _row(blank: Blank, count: int, off_grain: float) -> _Row:
    """Return pieces side by side, every other one flipped, in a row turned and set at 0, 0."""
    pitch = (blank.bottom + blank.top) / 2.0 + blank.gap / cos(_slope(blank))
    step = pitch * np.array([cos(off_grain), sin(off_grain)])
    middles = np.arange(count)[:, None] * step
    half = blank.length / 2.0
    raw = [Laid(blank, x, y - half, bool(k % 2), off_grain) for k, (x, y) in enumerate(middles)]
    corners = np.vstack([one.corners() for one in raw])
    x0, y0 = corners.min(axis=0).tolist()
    laid = tuple(
        Laid(blank, one.middle - x0, one.start - y0, one.flipped, off_grain) for one in raw
    )
    return _Row(laid, float(np.ptp(corners[:, 1])))


def _width(row: _Row) -> float:
    return float(max(one.corners()[:, 0].max() for one in row.laid))


@dataclass
class _Sheet:
    """One sheet as it fills: arrays of what lies on it, for a quick look at what is in the way."""

    width: float
    length: float
    laid: list[Laid] = field(default_factory=list[Laid])
    rows: Array = field(default_factory=lambda: np.empty((0, 7)))
    refused: set[Blank] = field(default_factory=set[Blank])
    snug: list[Laid] = field(default_factory=list[Laid])
    taken: float = 0.0

    def place_row(self, row: _Row) -> bool:
        """Lay a row down over the whole width; return whether there was room."""
        if self.taken + row.length > self.length + ROOM:
            return False
        self.snug += [
            Laid(one.blank, one.middle, one.start + self.taken, one.flipped, one.off_grain)
            for one in row.laid
        ]
        self.taken += row.length + row.laid[0].blank.gap
        return True

    def place(self, blank: Blank) -> bool:
        """Lay a blank down at its first free place; return whether there was one."""
        if blank in self.refused:
            return False
        starts = {0.0, self.taken}
        for one in self.laid:
            starts.add(one.start)
            starts.add(one.start + one.blank.length + max(one.blank.gap, blank.gap))
        starts = {start for start in starts if start >= self.taken}
        for start in sorted(starts):
            if start + blank.length > self.length + ROOM:
                break
            ways = [(self._free(blank, start, way), way) for way in (False, True)]
            middle, flipped = min(ways) if blank.bottom != blank.top else (ways[0][0], False)
            if middle + blank.widest / 2.0 <= self.width + ROOM:
                self._add(Laid(blank, middle, start, flipped))
                return True
        self.refused.add(blank)
        return False

    def _add(self, one: Laid) -> None:
        self.laid.append(one)
        low, high = one.corners()[[1, 2], 0] - one.middle
        blank = one.blank
        row = [one.middle, one.start, blank.length, low, high, blank.gap, _slope(blank)]
        self.rows = np.vstack([self.rows, row])

    def _free(self, blank: Blank, start: float, flipped: bool) -> float:
        """Return the least middle at which a blank is clear of all that lies there."""
        edge = blank.widest / 2.0
        if not len(self.rows):
            return edge
        middle, begin, long, low, high, gaps, slopes = self.rows.T
        gap = np.maximum(gaps, blank.gap)
        near = (begin < start + blank.length + gap - ROOM) & (begin + long > start - gap + ROOM)
        if not near.any():
            return edge
        ends = (blank.top, blank.bottom) if flipped else (blank.bottom, blank.top)
        # half widths change linearly along the grain: the tightest place is an end of what the
        # two have in common, or, where they only come near each other, their nearest ends
        first, last = np.maximum(begin, start), np.minimum(begin + long, start + blank.length)
        first, last = np.minimum(first, last), np.maximum(first, last)
        apart = np.zeros(len(self.rows))
        for at in (first, last):
            own = np.clip((at - start) / blank.length, 0.0, 1.0)
            theirs = np.clip((at - begin) / long, 0.0, 1.0)
            half = (ends[0] + (ends[1] - ends[0]) * own) / 2.0
            apart = np.maximum(apart, half + low + (high - low) * theirs)
        apart += gap / np.cos(np.maximum(np.abs(slopes), abs(_slope(blank))))
        return _first_gap(edge, (middle - apart)[near], (middle + apart)[near])


def _slope(blank: Blank) -> float:
    return atan2((blank.bottom - blank.top) / 2.0, blank.length)


def _first_gap(least: float, low: Array, high: Array) -> float:
    """Return the least value from ``least`` on that lies within no interval (low, high)."""
    value = least
    for a, b in sorted(zip(low.tolist(), high.tolist(), strict=True)):
        if a + ROOM < value < b:
            value = b
    return value


def _laid_down(
    rows: Sequence[_Row], blanks: Sequence[Blank], width: float, length: float
) -> Layout:
    sheets: list[_Sheet] = []
    for row in sorted(rows, key=lambda row: -row.length):
        if not any(sheet.place_row(row) for sheet in sheets):
            sheets.append(_Sheet(width, length))
            sheets[-1].place_row(row)
    for blank in blanks:
        if not any(sheet.place(blank) for sheet in sheets):
            sheets.append(_Sheet(width, length))
            sheets[-1].place(blank)
    return Layout(width, length, tuple((*sheet.snug, *sheet.laid) for sheet in sheets))


def _turned(points: Array, angle: float) -> Array:
    c, s = cos(angle), sin(angle)
    return points @ np.array([[c, s], [-s, c]])


def saw_gap(kerf: float, bevel: float) -> float:
    """Return the width in m that a saw takes on the face when it is tilted by ``bevel`` rad."""
    return kerf / cos(bevel)
