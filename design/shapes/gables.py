"""Pitched roofs: the gable, straight or with a knee (gambrel)."""

from functools import cached_property
from itertools import pairwise
from math import atan2, degrees, hypot, pi

import numpy as np
from shapely import Polygon

from ...units.arrays import Array
from ...units.frozen import replace
from .forms import Form, Ridge
from .hulls import NO_HULLS, Hull, Moments
from .prism import along_x, hulls_along_x
from .shape import SizedShape
from .slopes import OpenSlope, RidgedRoof, RoofFace, Skirt, faces_of_a_ridge


class Gable(RidgedRoof, SizedShape, frozen=True):
    """A pitched roof, its ridge along ``length``; slopes of ``thickness``, else filled. Sizes in m.

    ``knee_width`` and ``knee_height`` break each slope once: a gambrel.
    """

    length: float
    width: float
    height: float
    thickness: float | None = None
    knee_width: float | None = None
    knee_height: float | None = None

    @cached_property
    def section(self) -> Array:
        """Return the outside's corners (k, 2) in y and z."""
        return _both_sides(self._right())

    @cached_property
    def hollow(self) -> Array | None:
        """Return the hollow's corners (k, 2): each slope ``thickness`` inside; None if filled."""
        if self.thickness is None:
            return None
        right = self._right()
        lines = [_inward(a, b, self.thickness) for a, b in pairwise(right)]
        ground, middle = (np.array([0.0, 1.0]), 0.0), (np.array([1.0, 0.0]), 0.0)
        meets = [_crossing(a, b) for a, b in zip([ground, *lines], [*lines, middle], strict=True)]
        inside = np.array(meets)
        if inside[0, 0] <= 0.0 or inside[-1, 1] <= 0.0:
            return None
        return _both_sides(inside)

    def inner_width(self) -> float:
        """Return the width of the hollow at the eaves in m, 0 if it is filled."""
        return 0.0 if self.hollow is None else float(2.0 * self.hollow[:, 0].max())

    def moments(self) -> Moments:
        """Return the section's moments drawn out along the ridge, less the hollow's."""
        outer = along_x(Polygon(self.section), self.length)
        if self.hollow is None:
            return outer
        return outer - along_x(Polygon(self.hollow), self.length)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return hulls_along_x([self.section], self.length)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hollow."""
        return NO_HULLS if self.hollow is None else hulls_along_x([self.hollow], self.length)

    def slopes(self) -> tuple[float, float]:
        """Return the area of the outer slopes in m2 and the height of its centroid in m."""
        right = self._right()
        runs = [hypot(*(b - a)) for a, b in pairwise(right)]
        middles = [0.5 * float(a[1] + b[1]) for a, b in pairwise(right)]
        total = sum(runs)
        height = sum(run * z for run, z in zip(runs, middles, strict=True)) / total
        return 2.0 * total * self.length, height

    def _right(self) -> Array:
        """Return the corners (k, 2) from the eaves on +y up to the ridge."""
        corners = [(self.width / 2.0, 0.0)]
        if self.knee_width is not None and self.knee_height is not None:
            corners.append((self.knee_width / 2.0, self.knee_height))
        return np.array([*corners, (0.0, self.height)])

    def as_form(self) -> Form:
        """Return a ridge."""
        return Ridge(self.length, self.width, self.width / 2.0, is_round=False)

    @property
    def pitched(self) -> "Gable":
        """Return itself."""
        return self

    def skirt(self) -> Skirt:
        """Return all beneath it."""
        return Skirt(self.from_above(), self.height, self.width / 2.0)

    def roof_faces(self) -> list[RoofFace]:
        """Return its slopes, from the eaves to the knee, from the knee to the ridge."""
        return [
            one
            for (y1, z1), (y0, z0) in pairwise(self._right())
            for one in faces_of_a_ridge(self.length, y0, y1, degrees(atan2(z0 - z1, y1 - y0)))
        ]

    def open_slopes(self) -> list[OpenSlope]:
        """Return its slopes with their true area and normal, none of a filled one."""
        found: list[OpenSlope] = []
        for (y1, z1), (y0, z0) in pairwise(self._right().tolist() if self.thickness else []):
            run, rise = y1 - y0, z0 - z1
            slope = degrees(atan2(rise, run))
            for side in (1.0, -1.0):
                normal = np.array([0.0, side * rise, run]) / hypot(run, rise)
                middle = np.array([0.0, side * (y0 + y1) / 2.0, (z0 + z1) / 2.0])
                area = self.length * hypot(run, rise)
                found.append(OpenSlope(area, slope, side * pi / 2.0, normal, middle))
        return found

    @property
    def wall_thickness(self) -> float | None:
        """Return that of its slopes, None where it is filled."""
        return self.thickness

    def stretched(self, factor: float) -> "Gable":
        """Return it as many times as high, its knee too."""
        knee = factor * self.knee_height if self.knee_height is not None else None
        return replace(self, height=factor * self.height, knee_height=knee)


_Line = tuple[Array, float]


def _both_sides(right: Array) -> Array:
    left = right[-2::-1] * np.array([-1.0, 1.0])
    return np.vstack([right, left])


def _inward(a: Array, b: Array, thickness: float) -> _Line:
    """Return normal and offset of the line from a up to b moved inward."""
    along = (b - a) / hypot(*(b - a))
    normal = np.array([along[1], -along[0]])
    return normal, float(normal @ a) - thickness


def _crossing(one: _Line, other: _Line) -> Array:
    both = np.linalg.solve(np.array([one[0], other[0]]), np.array([one[1], other[1]]))
    return both.astype(np.float64)
