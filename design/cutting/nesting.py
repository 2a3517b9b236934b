"""Pieces laid out on sheets: trapezoids side by side, every other one turned end for end."""

from collections.abc import Iterator, Sequence
from math import ceil

import numpy as np
from msgspec import Struct, field

from ...units.arrays import Array
from ...units.frozen import ByValue
from .blanks import ROOM, Blank, Laid, slope
from .snug_rows import SnugRow, snug_rows

SHUFFLES = 6
"""How many further orders are tried, drawn at random from a fixed seed."""

_FEW = 120
"""Up to this many pieces the further orders are tried."""


class Layout(ByValue, frozen=True):
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
    rows, single = snug_rows(blanks, width, length)
    found = [_laid_down([], order, width, length) for order in _orders(blanks)]
    if rows:
        found += [_laid_down(rows, order, width, length) for order in _orders(single)]
    return min(found, key=lambda layout: (len(layout.sheets), layout.used))


def _orders(blanks: Sequence[Blank]) -> Iterator[list[Blank]]:
    yield sorted(blanks, key=lambda b: (-b.length, -b.area, b.kind))
    yield sorted(blanks, key=lambda b: (-b.area, -b.length, b.kind))
    yield sorted(blanks, key=lambda b: (-b.widest, -b.length, b.kind))
    if len(blanks) > _FEW or len({blank.kind for blank in blanks}) < 2:
        return
    drawn = np.random.default_rng(7)
    for _ in range(SHUFFLES):
        yield [blanks[i] for i in drawn.permutation(len(blanks))]


class _Sheet(Struct, eq=False):
    """One sheet as it fills: arrays of what lies on it, for a quick look at what is in the way.

    ``full`` has for each blank where it had no room to start: what is laid down later makes none.
    """

    width: float
    length: float
    laid: list[Laid] = field(default_factory=list[Laid])
    rows: Array = field(default_factory=lambda: np.empty((0, 7)))
    refused: set[Blank] = field(default_factory=set[Blank])
    full: dict[Blank, set[float]] = field(default_factory=dict[Blank, set[float]])
    snug: list[Laid] = field(default_factory=list[Laid])
    taken: float = 0.0
    gap: float = 0.0

    def place_row(self, row: SnugRow) -> bool:
        """Lay a row down over the whole width; return whether there was room."""
        gap = row.laid[0].blank.gap
        start = self._behind_rows(gap)
        if start + row.length > self.length + ROOM:
            return False
        self.snug += [
            Laid(one.blank, one.middle, one.start + start, one.flipped, one.off_grain)
            for one in row.laid
        ]
        self.taken, self.gap = start + row.length, gap
        return True

    def place(self, blank: Blank) -> bool:
        """Lay a blank down at its first free place; return whether there was one."""
        if blank in self.refused:
            return False
        first = self._behind_rows(blank.gap)
        starts = {first}
        for one in self.laid:
            starts.add(one.start)
            starts.add(one.start + one.blank.length + max(one.blank.gap, blank.gap))
        full = self.full.setdefault(blank, set())
        starts = {start for start in starts if start >= first}
        for start in sorted(starts - full):
            if start + blank.length > self.length + ROOM:
                break
            ways = [(self._free(blank, start, way), way) for way in (False, True)]
            middle, flipped = min(ways) if blank.bottom != blank.top else (ways[0][0], False)
            if middle + blank.widest / 2.0 <= self.width + ROOM:
                self._add(Laid(blank, middle, start, flipped))
                return True
            full.add(start)
        self.refused.add(blank)
        return False

    def _behind_rows(self, gap: float) -> float:
        """Return where the first piece may start that keeps its ``gap`` from the last row."""
        return self.taken + max(self.gap, gap) if self.snug else 0.0

    def _add(self, one: Laid) -> None:
        self.laid.append(one)
        low, high = one.corners()[[1, 2], 0] - one.middle
        blank = one.blank
        row = [one.middle, one.start, blank.length, low, high, blank.gap, slope(blank)]
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
        apart += gap / np.cos(np.maximum(np.abs(slopes), abs(slope(blank))))
        return _first_gap(edge, (middle - apart)[near], (middle + apart)[near])


def _first_gap(least: float, low: Array, high: Array) -> float:
    """Return the least value from ``least`` on that lies within no interval (low, high)."""
    value = least
    for a, b in sorted(zip(low.tolist(), high.tolist(), strict=True)):
        if a + ROOM < value < b:
            value = b
    return value


def _laid_down(
    rows: Sequence[SnugRow], blanks: Sequence[Blank], width: float, length: float
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
