"""A picture in characters: areas filled, outlines traced, letters set where there is room."""

from collections.abc import Iterable, Sequence
from math import ceil, floor

import numpy as np
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.shapes.shape import Array

NOBODY = -1
_OUTLINE = frozenset("|-/\\.'+")


class Characters:
    """A grid of characters over a window of the plane, ``wide`` m to a column, twice to a row.

    ``low`` and ``high`` (2,) in m are the window. Middle columns stand for the window's middle, so
    that what is symmetric stays so. What is drawn later hides what was drawn before.
    """

    def __init__(self, low: Array, high: Array, wide: float) -> None:
        self.wide = wide
        self._middle = 0.5 * float(low[0] + high[0])
        self._low = float(low[1])
        self._half = columns(low, high, wide) // 2
        self.columns = 2 * self._half + 1
        self.rows = rows(low, high, wide)
        shape = (self.rows, self.columns)
        self._cells = np.full(shape, " ", dtype="<U1")
        self._owner = np.full(shape, NOBODY)

    def draw(self, region: BaseGeometry, owner: int, inside: str = " ") -> None:
        """Draw an area (m) with its outline over what is there."""
        rings = [self._on_grid(ring) for ring in plane.outlines_of(region)]
        self._fill(rings, owner, inside)
        for ring in rings:
            for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
                self._trace(a, b, owner)
            if len({(round(x), round(y)) for x, y in ring.tolist()}) == 1:
                self._put(round(ring[0, 0]), round(ring[0, 1]), "o", owner)

    def dot(self, corners: Array, mark: str) -> None:
        """Trace a closed outline (k, 2) in m with one mark, owned by nobody."""
        ring = self._on_grid(corners)
        for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
            for x, y, _ in _steps(a, b):
                self._put(x, y, mark, NOBODY)

    def mark(self, point: Iterable[float], mark: str) -> None:
        """Set one mark at a point (2,) in m, for good."""
        ((x, y),) = self._on_grid(np.array([list(point)])).tolist()
        self._put(round(x), round(y), mark, NOBODY)

    def name(self, owner: int, letter: str) -> bool:
        """Set a letter where most of an owner's area shows; return whether there was room."""
        row, column = np.nonzero(self._owner == owner)
        if not len(row):
            return False
        outline = np.isin(self._cells[row, column], list(_OUTLINE))
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
        """Return which row, from below, a height (m) lies in."""
        return round(self._up(height))

    def _up(self, value: float) -> float:
        return (value - self._low) / (2.0 * self.wide)

    def _on_grid(self, points: Array) -> Array:
        """Return points (k, 2) in m as columns and rows, halves rounded away from the middle."""
        across = (points[:, 0] - self._middle) / self.wide
        across = across * (1.0 + 1.0e-9) + np.sign(across) * 1.0e-9
        up = (points[:, 1] - self._low) / (2.0 * self.wide) + 1.0e-9
        return np.column_stack([across + self._half, up])

    def _fill(self, rings: Sequence[Array], owner: int, inside: str) -> None:
        """Fill the cells whose middles lie within the rings, by the even-odd rule."""
        first = np.vstack(rings)
        last = np.vstack([np.roll(ring, -1, axis=0) for ring in rings])
        for row in range(max(0, ceil(first[:, 1].min())), min(self.rows, floor(first[:, 1].max()) + 1)):
            crosses = (first[:, 1] > row) != (last[:, 1] > row)
            a, b = first[crosses], last[crosses]
            at = np.sort(a[:, 0] + (row - a[:, 1]) / (b[:, 1] - a[:, 1]) * (b[:, 0] - a[:, 0]))
            for start, end in at.reshape(-1, 2).tolist():
                here = slice(max(0, ceil(start)), floor(end) + 1)
                self._cells[row, here] = inside
                self._owner[row, here] = owner

    def _trace(self, a: Array, b: Array, owner: int) -> None:
        for x, y, stroke in _steps(a, b):
            self._put(x, y, stroke, owner)
        for x, y in (a, b):
            if abs(a[1] - b[1]) < 1.0e-6:
                self._put(round(x), round(y), "+", owner)

    def _put(self, column: int, row: int, character: str, owner: int) -> None:
        if 0 <= column < self.columns and 0 <= row < self.rows:
            self._cells[row, column] = character
            self._owner[row, column] = owner
