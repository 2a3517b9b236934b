"""The board sawn to an outline."""

from functools import cached_property
from math import pi

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import replace
from .forms import Form, Leaf
from .hulls import NO_HULLS, Hull, Moments
from .plans import Rectangle
from .prism import convex_pieces, standing_hulls, standing_prism
from .shape import SizedShape, size_along

Corners = tuple[tuple[float, float], ...]


class Cutout(SizedShape, frozen=True):
    """A flat board standing in the x-z plane, ``thickness`` centred on y = 0. Sizes in m.

    ``points`` are its outline's corners (x, z), ``holes`` outlines within it.
    """

    is_standing_board = True

    middle_is_place = False
    has_edges = False

    points: Corners
    thickness: float
    holes: tuple[Corners, ...] = ()

    @cached_property
    def outline(self) -> Polygon:
        """Return the outline without its holes, in x and z."""
        return Polygon(self.points)

    @property
    def width(self) -> float:
        """Return the width of the box round it, in m."""
        low, _, high, _ = self.outline.bounds
        return high - low

    @property
    def height(self) -> float:
        """Return the height of the box round it, in m."""
        _, low, _, high = self.outline.bounds
        return high - low

    def moments(self) -> Moments:
        """Return the sawn area's moments times the thickness."""
        return standing_prism(Polygon(self.points, self.holes), self.thickness)

    @cached_property
    def _pieces(self) -> tuple[Hull, ...]:
        return standing_hulls(convex_pieces(self.outline), self.thickness)

    def hulls(self) -> tuple[Hull, ...]:
        """Return convex pieces that fill the outline: holes are filled for the wind."""
        return self._pieces

    def cavities(self) -> tuple[Hull, ...]:
        """Return its holes, as convex pieces."""
        if not self.holes:
            return NO_HULLS
        pieces = [piece for hole in self.holes for piece in convex_pieces(Polygon(hole))]
        return standing_hulls(pieces, self.thickness)

    def contact(self) -> BaseGeometry:
        """Return the strips along its lowest edges."""
        points = np.asarray(self.points)
        lowest = float(points[:, 1].min())
        half = self.thickness / 2.0
        strips: list[BaseGeometry] = []
        for (x0, z0), (x1, z1) in zip(points, np.roll(points, -1, axis=0), strict=True):
            if max(z0, z1) - lowest <= 1.0e-3:
                strips.append(shapely.box(min(x0, x1), -half, max(x0, x1), half))
        if strips:
            return shapely.union_all(strips)
        x = points[points[:, 1] - lowest <= 1.0e-3][:, 0]
        return shapely.LineString([(float(x.min()), -half), (float(x.max()), half)])

    def from_above(self) -> BaseGeometry:
        """Return the outline from above."""
        low, _, high, _ = self.outline.bounds
        return shapely.box(low, -self.thickness / 2.0, high, self.thickness / 2.0)

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of its faces and edges."""
        return 0.0, pi / 2.0, pi, 3.0 * pi / 2.0

    @property
    def sawn(self) -> Array:
        """Return the outline's corners (k, 2)."""
        return np.asarray(self.points)

    def as_form(self) -> Form:
        """Return a board that stands, its holes filled."""
        return Leaf(self.outline, self.width, self.height, self.thickness)

    @property
    def named_plan(self) -> Rectangle:
        """Return its outline from above."""
        return Rectangle(self.width, self.thickness)

    def stretched(self, factor: float) -> "Cutout":
        """Return it as many times as large: a sawn outline keeps its form."""
        holes = tuple(_times(hole, factor) for hole in self.holes)
        return replace(self, points=_times(self.points, factor), holes=holes)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its size along the nearest axis, on edge but through its face."""
        return size_along(along, (self.width, self.thickness, self.height), 1)

    def grain(self, entered: Array) -> Array:
        """Return its longer way."""
        return np.eye(3)[0 if self.width >= self.height else 2]


def _times(corners: Corners, factor: float) -> Corners:
    return tuple((factor * x, factor * z) for x, z in corners)
