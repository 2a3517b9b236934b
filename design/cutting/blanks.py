"""A flat piece to be laid out on a sheet, and where it lies."""

from math import atan2, cos, sin

import numpy as np

from ...units.arrays import Array
from ...units.frozen import ByValue

ROOM = 1.0e-9
"""What may be missing (m) for a piece that fits exactly."""


class Blank(ByValue, frozen=True):
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


class Laid(ByValue, frozen=True):
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
        return turned_blank(own, self.off_grain) + np.array([self.middle, self.start + half])

    def _ends(self) -> tuple[float, float]:
        bottom, top = self.blank.bottom, self.blank.top
        return (top, bottom) if self.flipped else (bottom, top)


def slope(blank: Blank) -> float:
    """Return the angle in rad of a blank's long edges from its middle line."""
    return atan2((blank.bottom - blank.top) / 2.0, blank.length)


def saw_gap(kerf: float, bevel: float) -> float:
    """Return the width in m that a saw takes on the face when it is tilted by ``bevel`` rad."""
    return kerf / cos(bevel)


def turned_blank(points: Array, angle: float) -> Array:
    """Return points (k, 2) turned about the origin by an angle in rad, counter-clockwise."""
    c, s = cos(angle), sin(angle)
    return points @ np.array([[c, s], [-s, c]])
