"""Many-sided and round bodies about an upright axis: shell, solid, cone."""

from dataclasses import dataclass
from math import hypot

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from .plans import Regular, area_factor
from .prismatoid import prismatoid
from .shape import NO_HULLS, Hull, Moments


@dataclass(frozen=True)
class Frustum:
    """A body between two like regular sections, ``bottom`` and ``top`` flat to flat, in m."""

    sides: int
    bottom: float
    top: float
    height: float
    base: float = 0.0

    def moments(self) -> Moments:
        """Return volume and first moments; A = n tan(pi/n) a2 at each level."""
        factor = area_factor(self.sides) / 4.0
        middle = (self.bottom + self.top) / 2.0
        a0, am, a1 = (factor * across**2 for across in (self.bottom, middle, self.top))
        return prismatoid(self.base, self.height, ((a0, 0.0, 0.0), (am, 0.0, 0.0), (a1, 0.0, 0.0)))

    def hull(self) -> Hull:
        """Return its outline."""
        low, low_discs = Regular(self.sides, self.bottom).level(self.base)
        if self.top <= 0.0:
            apex = np.array([[0.0, 0.0, self.base + self.height]])
            return Hull(np.vstack([low, apex]), low_discs)
        high, high_discs = Regular(self.sides, self.top).level(self.base + self.height)
        return Hull(np.vstack([low, high]), low_discs + high_discs)


@dataclass(frozen=True)
class Shell:
    """A hollow regular body, straight or tapered, open at both ends; 0 sides is round.

    ``bottom`` and ``top`` are outside widths flat to flat, ``wall`` is measured square to
    the wall; all in m.
    """

    sides: int
    bottom: float
    top: float
    height: float
    wall: float

    @property
    def wall_in_plan(self) -> float:
        """Return the wall's level thickness t / cos(lean), in m; tan(lean) = (a1 - a2)/h."""
        rise = (self.bottom - self.top) / 2.0
        return self.wall * hypot(self.height, rise) / self.height

    def outer(self) -> Frustum:
        """Return the filled outside."""
        return Frustum(self.sides, self.bottom, self.top, self.height)

    def inner(self) -> Frustum:
        """Return the space inside; it ends in a point where the walls meet below an end."""
        bottom = self.bottom - 2.0 * self.wall_in_plan
        top = self.top - 2.0 * self.wall_in_plan
        if top < 0.0 < bottom:
            return Frustum(self.sides, bottom, 0.0, self.height * bottom / (bottom - top))
        if bottom < 0.0 < top:
            empty = self.height * top / (top - bottom)
            return Frustum(self.sides, 0.0, top, empty, self.height - empty)
        return Frustum(self.sides, bottom, top, self.height)

    def moments(self) -> Moments:
        """Return the moments of the wall: the outer frustum less the inner one."""
        return self.outer().moments() - self.inner().moments()

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return (self.outer().hull(),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the space inside."""
        inner = self.inner()
        return (inner.hull(),) if max(inner.bottom, inner.top) > 0.0 else NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return the ring under its wall."""
        inside = self.bottom - 2.0 * self.wall_in_plan
        return ring(Regular(self.sides, self.bottom), Regular(self.sides, max(inside, 0.0)))

    def from_above(self) -> BaseGeometry:
        """Return the widest outline from above."""
        return Regular(self.sides, max(self.bottom, self.top)).polygon()

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of faces and corners."""
        return Regular(self.sides, self.bottom).bearings()


@dataclass(frozen=True)
class Solid:
    """A solid regular body, straight, tapered or pointed; 0 sides is round. Sizes in m."""

    sides: int
    bottom: float
    top: float
    height: float

    def outer(self) -> Frustum:
        """Return the body."""
        return Frustum(self.sides, self.bottom, self.top, self.height)

    def moments(self) -> Moments:
        """Return the moments of the frustum."""
        return self.outer().moments()

    def hulls(self) -> tuple[Hull, ...]:
        """Return the body itself."""
        return (self.outer().hull(),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return nothing: it is solid."""
        return NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return its underside."""
        return Regular(self.sides, self.bottom).polygon()

    def from_above(self) -> BaseGeometry:
        """Return the widest outline from above."""
        return Regular(self.sides, max(self.bottom, self.top)).polygon()

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of faces and corners."""
        return Regular(self.sides, self.bottom).bearings()


@dataclass(frozen=True)
class Cone:
    """A pyramid (or round cone), ``bottom`` flat to flat; hollow and open below with ``wall``."""

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


def ring(outside: Regular, inside: Regular) -> BaseGeometry:
    """Return the area between two like figures, in plan."""
    holes = [inside.corners()] if inside.across > 0.0 else []
    return shapely.Polygon(outside.corners(), holes)
