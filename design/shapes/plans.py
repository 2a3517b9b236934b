"""Plan outlines: the regular polygon (or circle) and the rectangle."""

from functools import cache
from math import cos, pi, tan

import numpy as np
from shapely import Polygon

from ...units.arrays import Array
from ...units.frozen import ByValue
from .hulls import Disc

ROUND_CORNERS = 72


class Regular(ByValue, frozen=True):
    """A regular polygon, ``across`` flat to flat in m (twice the apothem); 0 sides is a circle.

    The first edge's outward normal points along +x.
    """

    sides: int
    across: float

    @property
    def apothem(self) -> float:
        """Return the distance from the centre to an edge, in m."""
        return self.across / 2.0

    @property
    def area(self) -> float:
        """Return the area in m2: n tan(pi/n) a2, or pi a2 for a circle."""
        return area_factor(self.sides) * self.apothem**2

    @property
    def least_width(self) -> float:
        """Return the least horizontal dimension in m."""
        return self.across

    def corners(self) -> Array:
        """Return the corners (n, 2) counter-clockwise; a circle has 72, its edges tangent."""
        return unit_corners(self.sides) * self.apothem

    def shrunk(self, by: float) -> "Regular":
        """Return the same figure with every edge moved in by ``by`` m."""
        return Regular(self.sides, self.across - 2.0 * by)

    def polygon(self) -> Polygon:
        """Return the outline as a polygon in plan."""
        return Polygon(self.corners())

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of face normals and corners, rad; none for a circle."""
        return tuple(pi * k / self.sides for k in range(2 * self.sides)) if self.sides else ()

    def level(self, height: float) -> tuple[Array, tuple[Disc, ...]]:
        """Return what the outline adds to a hull at that height: corners, or a circle."""
        if self.sides == 0:
            return np.empty((0, 3)), (Disc((0.0, 0.0, height), self.apothem),)
        return at_height(self.corners(), height), ()


class Rectangle(ByValue, frozen=True):
    """A rectangle, ``length`` along x and ``width`` along y, in m, about its centre."""

    length: float
    width: float

    @property
    def area(self) -> float:
        """Return the area in m2."""
        return self.length * self.width

    @property
    def least_width(self) -> float:
        """Return the least horizontal dimension in m."""
        return min(self.length, self.width)

    def corners(self) -> Array:
        """Return the corners (4, 2) counter-clockwise."""
        x, y = self.length / 2.0, self.width / 2.0
        return np.array([[x, y], [-x, y], [-x, -y], [x, -y]])

    def shrunk(self, by: float) -> "Rectangle":
        """Return the same figure with every edge moved in by ``by`` m."""
        return Rectangle(self.length - 2.0 * by, self.width - 2.0 * by)

    def polygon(self) -> Polygon:
        """Return the outline as a polygon in plan."""
        return Polygon(self.corners())

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of face normals and diagonals, rad."""
        diagonal = float(np.arctan2(self.width, self.length))
        half = (0.0, diagonal, pi / 2.0, pi - diagonal)
        return half + tuple(angle + pi for angle in half)

    def level(self, height: float) -> tuple[Array, tuple[Disc, ...]]:
        """Return what the outline adds to a hull at that height: its corners."""
        return at_height(self.corners(), height), ()


Plan = Regular | Rectangle


def area_factor(sides: int) -> float:
    """Return area over apothem squared: n tan(pi/n), pi for a circle (plane geometry)."""
    return sides * tan(pi / sides) if sides else pi


@cache
def unit_corners(sides: int) -> Array:
    """Return the corners (n, 2) of the polygon of apothem 1; a circle's 72 edges are tangent."""
    n = sides or ROUND_CORNERS
    angles = pi / n * (1.0 + 2.0 * np.arange(n))
    found = np.column_stack([np.cos(angles), np.sin(angles)]) / cos(pi / n)
    found.flags.writeable = False
    return found


def at_height(corners: Array, height: float) -> Array:
    """Return plan points (k, 2) as points (k, 3) at one height."""
    return np.column_stack([corners, np.full(len(corners), height)])
