"""Pointed roofs: a cone or pyramid, hollow or solid."""

from math import hypot

import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import replace
from .bodies import Frustum, ring
from .forms import Form, Prism
from .plans import Regular, area_factor
from .shape import NO_HULLS, Hull, Moments, SizedShape
from .slopes import RoofFace, Skirt, faces_round, reach_of_a_roof

_NOTHING = shapely.Polygon()


class Cone(SizedShape, frozen=True):
    """A pyramid (or round cone), ``bottom`` flat to flat; hollow and open below with ``wall``."""

    fills_space = True
    is_roof = True

    sides: int
    bottom: float
    height: float
    wall: float | None = None

    @property
    def top(self) -> float:
        """Return 0: it ends in a point."""
        return 0.0

    def outer(self) -> Frustum:
        """Return the filled outside."""
        return Frustum(self.sides, self.bottom, 0.0, self.height)

    def slopes(self) -> tuple[float, float]:
        """Return the area of its faces in m2, A/a times the slope's length, and their centroid."""
        apothem = self.bottom / 2.0
        edges = 2.0 * area_factor(self.sides) * apothem
        return edges * hypot(self.height, apothem) / 2.0, self.height / 3.0

    def inner_bottom(self) -> float:
        """Return the width of the hollow at its foot: the faces lie ``wall`` inside, square."""
        if self.wall is None:
            return 0.0
        in_plan = self.wall * hypot(self.height, self.bottom / 2.0) / self.height
        return self.bottom - 2.0 * in_plan

    def inner(self) -> Frustum:
        """Return the hollow: the like cone whose faces lie ``wall`` inside."""
        bottom = self.inner_bottom()
        return Frustum(self.sides, bottom, 0.0, self.height * bottom / self.bottom)

    def moments(self) -> Moments:
        """Return the outer cone's moments less the hollow's."""
        outer = self.outer().moments()
        return outer - self.inner().moments() if self.wall is not None else outer

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return (self.outer().hull(),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hollow."""
        return (self.inner().hull(),) if self.inner_bottom() > 0.0 else NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return the underside, or the ring under its wall."""
        return ring(
            Regular(self.sides, self.bottom), Regular(self.sides, max(self.inner_bottom(), 0.0))
        )

    def from_above(self) -> BaseGeometry:
        """Return the outline from above."""
        return Regular(self.sides, self.bottom).polygon()

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of faces and corners."""
        return Regular(self.sides, self.bottom).bearings()

    def as_form(self) -> Form:
        """Return a prism half as wide as its foot."""
        return Prism(Regular(self.sides, self.bottom / 2.0))

    @property
    def named_plan(self) -> Regular:
        """Return its foot's outline."""
        return Regular(self.sides, self.bottom)

    def foot(self) -> BaseGeometry:
        """Return the filled outline of its underside."""
        return Regular(self.sides, self.bottom).polygon()

    def skirt(self) -> Skirt:
        """Return all beneath it."""
        return Skirt(self.from_above(), self.height, self.bottom / 2.0)

    def roof_faces(self) -> list[RoofFace]:
        """Return its faces."""
        return faces_round(self.sides, self.bottom, 0.0, self.height)

    @property
    def open_below(self) -> bool:
        """Return whether it is hollow."""
        return self.wall is not None

    @property
    def wall_thickness(self) -> float | None:
        """Return its wall, None where it is solid."""
        return self.wall

    @property
    def clear_width(self) -> float | None:
        """Return the width of the hollow at its foot."""
        return None if self.wall is None else max(self.inner_bottom(), 0.0)

    def stretched(self, factor: float) -> "Cone":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its height, from the side its wall."""
        return reach_of_a_roof(self.height, self.wall, along)
