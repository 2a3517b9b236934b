"""The straight stick, pipe, rope or rail between two points."""

from functools import cached_property
from math import pi

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import replace
from .forms import Bars, Form, Post
from .hulls import NO_HULLS, Disc, Hull, Moments
from .plans import Plan, Rectangle, Regular
from .shape import ALONG_AXIS, SizedShape

_Point = tuple[float, float, float]


class Member(SizedShape, frozen=True):
    """A straight piece from ``start`` to ``end`` (3,), its axis's ends. Sizes in m.

    Rectangular, ``width`` lying level and ``depth`` square to it, or round with ``across``; a tube
    with ``wall``. ``cut`` is "square", "level" or "plumb": how both ends are sawn.
    """

    middle_is_place = False

    start: _Point
    end: _Point
    width: float = 0.0
    depth: float = 0.0
    across: float = 0.0
    wall: float | None = None
    cut: str = "square"

    @property
    def is_round(self) -> bool:
        """Return whether its section is round."""
        return self.across > 0.0

    @property
    def least_width(self) -> float:
        """Return the lesser size of its section, in m."""
        return self.across if self.is_round else min(self.width, self.depth)

    @property
    def length(self) -> float:
        """Return the length of its axis, in m."""
        return float(np.linalg.norm(np.asarray(self.end) - np.asarray(self.start)))

    @property
    def section_area(self) -> float:
        """Return the area of its section in m2, the bore of a tube left out."""
        if self.is_round:
            bore = self.across - 2.0 * self.wall if self.wall is not None else 0.0
            return pi / 4.0 * (self.across**2 - bore**2)
        area = self.width * self.depth
        if self.wall is not None:
            area -= (self.width - 2.0 * self.wall) * (self.depth - 2.0 * self.wall)
        return area

    @cached_property
    def axes(self) -> tuple[Array, Array, Array]:
        """Return unit vectors (3,) along it, across it on the level, and square to both.

        A plumb member's width lies along x.
        """
        along = (np.asarray(self.end) - np.asarray(self.start)) / self.length
        level = np.array([along[1], -along[0], 0.0])
        if np.linalg.norm(level) < 1.0e-9:
            level = np.array([1.0, 0.0, 0.0])
        level /= np.linalg.norm(level)
        return along, level, np.cross(along, level)

    def moments(self) -> Moments:
        """Return section times length, at the middle: parallel cuts at both ends change neither."""
        volume = self.section_area * self.length
        return Moments(volume, volume * 0.5 * (np.asarray(self.start) + np.asarray(self.end)))

    def hulls(self) -> tuple[Hull, ...]:
        """Return its outside."""
        return (self._hull(self.width, self.depth, self.across),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the bore of a tube."""
        if self.wall is None:
            return NO_HULLS
        twice = 2.0 * self.wall
        if self.is_round:
            return (self._hull(0.0, 0.0, self.across - twice),)
        return (self._hull(self.width - twice, self.depth - twice, 0.0),)

    def contact(self) -> BaseGeometry:
        """Return the end or side that lies lowest, in plan."""
        low = np.vstack(
            [
                self._end(self.start, self.width, self.depth, self.across),
                self._end(self.end, self.width, self.depth, self.across),
            ]
        )
        touching = low[low[:, 2] - low[:, 2].min() <= 1.0e-3]
        return shapely.MultiPoint(touching[:, :2]).convex_hull

    def from_above(self) -> BaseGeometry:
        """Return the outline from above."""
        ends = [self._end(p, self.width, self.depth, self.across) for p in (self.start, self.end)]
        return shapely.MultiPoint(np.vstack(ends)[:, :2]).convex_hull

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles square to its sides and along it."""
        _, level, _ = self.axes
        angle = float(np.arctan2(level[1], level[0]))
        return angle, angle + pi / 2.0, angle + pi, angle + 3.0 * pi / 2.0

    def _hull(self, width: float, depth: float, across: float) -> Hull:
        if across > 0.0 and self.cut == "square":
            x, y, z = (float(c) for c in self.axes[0])
            return Hull(
                discs=tuple(
                    Disc(point, across / 2.0, (x, y, z)) for point in (self.start, self.end)
                )
            )
        ends = [self._end(point, width, depth, across) for point in (self.start, self.end)]
        return Hull(np.vstack(ends), ends=True)

    def _end(self, point: _Point, width: float, depth: float, across: float) -> Array:
        """Return the corners (k, 3) of one end: its section moved along the axis to the cut."""
        along, level, square = self.axes
        if across > 0.0:
            angles = pi / 72.0 * (1.0 + 2.0 * np.arange(72))
            radius = across / 2.0
            offsets = radius * (np.cos(angles)[:, None] * level + np.sin(angles)[:, None] * square)
        else:
            signs = np.array([[1, 1], [-1, 1], [-1, -1], [1, -1]]) / 2.0
            offsets = signs[:, :1] * width * level + signs[:, 1:] * depth * square
        normal = self._cut_normal()
        return np.asarray(point) + offsets - np.outer(offsets @ normal / (along @ normal), along)

    def _cut_normal(self) -> Array:
        along, level, _ = self.axes
        if self.cut == "level":
            return np.array([0.0, 0.0, 1.0])
        if self.cut == "plumb":
            return np.cross(level, np.array([0.0, 0.0, 1.0]))
        return along

    def as_form(self) -> Form:
        """Return one straight piece."""
        along, level, _ = self.axes
        return Bars(self._section, along[None], level[None], np.array([self.length]))

    @property
    def named_plan(self) -> Plan:
        """Return its section."""
        return self._section

    @property
    def _section(self) -> Plan:
        if self.is_round:
            return Regular(0, self.across)
        return Rectangle(self.width, self.depth)

    def post(self) -> Post:
        """Return itself."""
        along, level, _ = self.axes
        if self.is_round:
            return Post(along, level, self.across, self.across, True, self.wall)
        return Post(along, level, self.width, self.depth, False, self.wall)

    def stretched(self, factor: float) -> "Member":
        """Return it with as many times the rise, its plan and section kept."""
        (x0, y0, z0), (x1, y1, z1) = self.start, self.end
        return replace(self, start=(x0, y0, factor * z0), end=(x1, y1, factor * z1))

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its length into its end, else its section, of a round tube its wall."""
        axis, level, other = self.axes
        if abs(float(along @ axis)) > ALONG_AXIS:
            return self.length, True
        if self.is_round:
            return (self.across if self.wall is None else self.wall), False
        wide = abs(float(along @ level)) >= abs(float(along @ other))
        return (self.width if wide else self.depth), False

    def grain(self, entered: Array) -> Array:
        """Return its own way."""
        return self.axes[0]
