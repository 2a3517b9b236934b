"""A picture in characters: areas filled, outlines traced, letters set where there is room."""

from collections.abc import Iterable, Sequence
from math import ceil, floor

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array

NOBODY = -1
_OUTLINE = list("|-/\\.'+")
_DOT = "o"
_SMALL = (2.5, 1.2)
_COARSE = 0.4
_LEVEL = 1.0e-6
_NUDGE = 1.0e-9


class Characters:
    """A grid of characters over a window of the plane, ``wide`` m to a column, twice to a row.

    ``low`` and ``high`` (2,) in m are the window. Middle columns stand for the window's middle, so
    that what is symmetric stays so. What is drawn later hides what was drawn before.
    """

    def __init__(self, low: Array, high: Array, wide: float) -> None:
        self.wide = wide
        self._middle = 0.5 * float(low[0] + high[0])
        self._low = float(low[1])
        self._half = window_columns(low, high, wide) // 2
        self.columns = 2 * self._half + 1
        self.rows = window_rows(low, high, wide)
        shape = (self.rows, self.columns)
        self._cells = np.full(shape, " ", dtype="<U1")
        self._owner = np.full(shape, NOBODY)

    def draw(self, region: BaseGeometry, owner: int, inside: str = " ") -> None:
        """Draw an area (m) with its outline over what is there; a very small one as ``o``."""
        smooth = plane.snapped(region).simplify(_COARSE * self.wide)
        rings = [self._on_grid(ring) for ring in plane.outlines_of(smooth)]
        if not rings:
            return
        every = np.vstack(rings)
        if (np.ptp(every, axis=0) < _SMALL).all():
            self._put(*_cell(0.5 * (every.min(axis=0) + every.max(axis=0))), _DOT, owner)
            return
        self._fill(rings, owner, inside)
        edges = [pair for ring in rings for pair in zip(ring, np.roll(ring, -1, 0), strict=True)]
        for a, b in edges:
            for column, row, stroke in _steps(a, b):
                self._put(column, row, stroke, owner)
        for a, b in edges:
            if abs(a[1] - b[1]) < _LEVEL:
                self._put(*_cell(a), "+", owner)
                self._put(*_cell(b), "+", owner)

    def peep(self, region: BaseGeometry, owner: int) -> None:
        """Dot a very small area (m) of which nothing shows, if it lies on another's outline."""
        around = self._on_grid(plane.coordinates(region))
        if (self._owner == owner).any() or not (np.ptp(around, axis=0) < _SMALL).all():
            return
        column, row = _cell(0.5 * (around.min(axis=0) + around.max(axis=0)))
        if self._cells[row, column] in _OUTLINE:
            self._put(column, row, _DOT, owner)

    def dot(self, corners: Array, mark: str) -> None:
        """Trace a closed outline (k, 2) in m with one mark, owned by nobody."""
        ring = self._on_grid(corners)
        for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
            for column, row, _ in _steps(a, b):
                self._put(column, row, mark, NOBODY)

    def mark(self, point: Iterable[float], mark: str) -> None:
        """Set one mark at a point (2,) in m, for good."""
        self._put(*_cell(self._on_grid(np.array([list(point)]))[0]), mark, NOBODY)

    def name(self, owner: int, letter: str) -> bool:
        """Set a letter where most of an owner's area shows; return whether there was room."""
        row, column = np.nonzero(self._owner == owner)
        if not len(row):
            return False
        shown = self._cells[row, column]
        outline = np.isin(shown, _OUTLINE)
        if outline.all() and len(row) < 3:
            return False
        middle = np.median(column), np.median(row)
        off = np.abs(column - middle[0]) / 2.0 + np.abs(row - middle[1])
        # An outline is broken only where it has no inside, and never at its ends.
        at = int((off + 1.0e6 * outline).argmin())
        self._cells[row[at], column[at]] = letter
        self._owner[row[at], column[at]] = NOBODY
        return True

    def lines(self) -> list[str]:
        """Return the rows, the highest first."""
        return ["".join(row).rstrip() for row in self._cells[::-1].tolist()]

    def row_of(self, height: float) -> int:
        """Return which row, counted from below, a height (m) lies in."""
        return floor((height - self._low) / (2.0 * self.wide) + 0.5 + _NUDGE)

    def _on_grid(self, points: Array) -> Array:
        """Return points (k, 2) in m on the grid, where whole numbers are the cells' middles."""
        across = (points[:, 0] - self._middle) / self.wide
        across += np.sign(across) * _NUDGE
        up = (points[:, 1] - self._low) / (2.0 * self.wide) + _NUDGE
        return np.column_stack([across + self._half, up])

    def _fill(self, rings: Sequence[Array], owner: int, inside: str) -> None:
        """Fill the cells whose middles lie within the rings, by the even-odd rule."""
        first = np.vstack(rings)
        last = np.vstack([np.roll(ring, -1, axis=0) for ring in rings])
        lowest, highest = float(first[:, 1].min()), float(first[:, 1].max())
        for row in range(max(0, ceil(lowest)), min(self.rows, floor(highest) + 1)):
            crosses = (first[:, 1] > row) != (last[:, 1] > row)
            a, b = first[crosses], last[crosses]
            at = np.sort(a[:, 0] + (row - a[:, 1]) / (b[:, 1] - a[:, 1]) * (b[:, 0] - a[:, 0]))
            for start, end in at.reshape(-1, 2).tolist():
                here = slice(max(0, ceil(start)), floor(end) + 1)
                self._cells[row, here] = inside
                self._owner[row, here] = owner

    def _put(self, column: int, row: int, character: str, owner: int) -> None:
        if 0 <= column < self.columns and 0 <= row < self.rows:
            self._cells[row, column] = character
            self._owner[row, column] = owner


def window_columns(low: Array, high: Array, wide: float) -> int:
    """Return how many columns a window (m) takes, an odd number."""
    return 2 * floor(0.5 * float(high[0] - low[0]) / wide + 0.5 + _NUDGE) + 1


def window_rows(low: Array, high: Array, wide: float) -> int:
    """Return how many rows a window (m) takes."""
    return floor(0.5 * float(high[1] - low[1]) / wide + 0.5 + _NUDGE) + 1


def _cell(point: Array) -> tuple[int, int]:
    """Return the column and row that a point (2,) on the grid lies in."""
    return floor(float(point[0]) + 0.5), floor(float(point[1]) + 0.5)


def _steps(a: Array, b: Array) -> list[tuple[int, int, str]]:
    """Return column, row and stroke of each cell on the way from a to b, both (2,) on the grid.

    A steep way takes a cell a row, a flat one a cell a column, high or low within its row.
    """
    run, rise = (float(d) for d in b - a)
    count = max(1, ceil(max(abs(run), abs(rise)) - _LEVEL))
    points = a + np.linspace(0.0, 1.0, count + 1)[:, None] * (b - a)
    stroke = _steep if abs(rise) >= abs(run) else _flat
    return [(*_cell(point), stroke(point, run / count, rise / count)) for point in points]


def _steep(point: Array, run: float, rise: float) -> str:
    """Return the stroke of a cell through which a line goes up: leaning where it changes column."""
    x = float(point[0])
    leans = floor(x + 0.5 * run + 0.5) != floor(x - 0.5 * run + 0.5)
    return "|" if not leans else "/" if run * rise > 0.0 else "\\"


def _flat(point: Array, run: float, rise: float) -> str:
    """Return the stroke of a cell along which a line goes: low, high or through its middle."""
    slope = abs(rise / run)
    within = float(point[1]) - floor(float(point[1]) + 0.5)
    if slope < 0.05 or (slope < 0.3 and abs(within) < 1.0 / 6.0):
        return "-"
    return "." if within < 0.0 else "'"
