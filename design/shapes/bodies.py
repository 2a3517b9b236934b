"""Many-sided and round bodies about an upright axis: shell and solid."""

from math import hypot

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from .forms import Form, Post, Prism, Walls
from .hulls import NO_HULLS, Hull, Moments
from .plans import Regular, area_factor
from .prism import prismatoid
from .shape import ALONG_AXIS, Shape, SizedShape
from .slopes import RoofFace, Skirt, faces_round


class Frustum(ByValue, frozen=True):
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


class Tapered(Shape):
    """What regular bodies about an upright axis share: ``bottom`` and ``top`` are flat to flat."""

    fills_space = True

    sides: int
    bottom: float
    top: float
    height: float

    @property
    def wall_in_plan(self) -> float:
        """Return the wall's level thickness t / cos(lean), in m; tan(lean) = (a1 - a2)/h."""
        rise = (self.bottom - self.top) / 2.0
        return (self.wall_thickness or 0.0) * hypot(self.height, rise) / self.height

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
        """Return the moments of the outer frustum less those of the inner one."""
        outer = self.outer().moments()
        return outer if self.wall_thickness is None else outer - self.inner().moments()

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return (self.outer().hull(),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the space inside."""
        inner = self.inner()
        is_empty = self.wall_thickness is None or max(inner.bottom, inner.top) <= 0.0
        return NO_HULLS if is_empty else (inner.hull(),)

    def contact(self) -> BaseGeometry:
        """Return its underside, or the ring under its wall."""
        if self.wall_thickness is None:
            return self.foot()
        return ring(self.named_plan, self._inside(self.bottom))

    def from_above(self) -> BaseGeometry:
        """Return the widest outline from above."""
        return Regular(self.sides, max(self.bottom, self.top)).polygon()

    def _inside(self, across: float) -> Regular:
        """Return the outline within the wall where the body is so wide."""
        return Regular(self.sides, max(across - 2.0 * self.wall_in_plan, 0.0))

    def as_form(self) -> Form:
        """Return a prism as wide as it is half-way up."""
        return Prism(Regular(self.sides, (self.bottom + self.top) / 2.0))

    @property
    def named_plan(self) -> Regular:
        """Return its foot's outline."""
        return Regular(self.sides, self.bottom)

    def foot(self) -> BaseGeometry:
        """Return the filled outline of its underside."""
        return self.named_plan.polygon()

    def crown(self) -> BaseGeometry:
        """Return the filled outline of its top, nothing where it ends in a point."""
        return level(self.sides, self.top)

    def skirt(self) -> Skirt | None:
        """Return what is beneath its slopes where it narrows upward, all of it if it is closed."""
        if self.top >= self.bottom:
            return None
        whole = self.foot()
        if self.open_above and self.top > 0.0:
            whole = whole.difference(self.crown())
        return Skirt(whole, self.height, (self.bottom - self.top) / 2.0)

    def roof_faces(self) -> list[RoofFace]:
        """Return its faces where it narrows upward."""
        if self.top >= self.bottom:
            return []
        return faces_round(self.sides, self.bottom, self.top, self.height)

    @property
    def clear_width(self) -> float | None:
        """Return the width inside its foot."""
        return None if self.wall_thickness is None else self._inside(self.bottom).across


class Shell(Tapered, SizedShape, frozen=True):
    """A hollow regular body, straight or tapered, open at both ends; 0 sides is round.

    ``bottom`` and ``top`` are outside widths flat to flat, ``wall`` is measured square to
    the wall; all in m.
    """

    flat_topped = True
    lets_through = True

    sides: int
    bottom: float
    top: float
    height: float
    wall: float

    def rim(self) -> BaseGeometry:
        """Return the ring on its wall."""
        if self.top <= 0.0:
            return self.crown()
        return ring(Regular(self.sides, self.top), self._inside(self.top))

    @property
    def wall_thickness(self) -> float:
        """Return its wall."""
        return self.wall

    @property
    def is_hollow(self) -> bool:
        """Return that it is."""
        return True

    @property
    def open_above(self) -> bool:
        """Return that it is."""
        return True

    @property
    def open_below(self) -> bool:
        """Return that it is."""
        return True

    def vessel_floor(self) -> BaseGeometry | None:
        """Return the plan within its foot."""
        inside = self.inner().bottom
        return Regular(self.sides, inside).polygon() if inside > 0.0 else None

    def walls(self) -> Walls:
        """Return its panels, joined where they are flat."""
        head = Regular(self.sides, self.top)
        return Walls(self.named_plan, head, self.height, self.wall, self.sides > 0)

    @property
    def fill_height(self) -> float:
        """Return its height."""
        return self.height

    def fill(self, depth: float) -> Moments:
        """Return the space inside it up to a depth in m."""
        top = self.bottom + (self.top - self.bottom) * depth / self.height
        return replace(self, top=top, height=depth).inner().moments()

    def stretched(self, factor: float) -> "Shell":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its height along its axis, else its wall."""
        return (self.height, True) if abs(along[2]) > ALONG_AXIS else (self.wall, False)

    def grain(self, entered: Array) -> Array:
        """Return up."""
        return np.array([0.0, 0.0, 1.0])


class Solid(Tapered, SizedShape, frozen=True):
    """A solid regular body, straight, tapered or pointed; 0 sides is round. Sizes in m."""

    flat_topped = True

    sides: int
    bottom: float
    top: float
    height: float

    @property
    def is_block(self) -> bool:
        """Return that it is."""
        return True

    @property
    def is_floor(self) -> bool:
        """Return that its top closes what stands on it."""
        return True

    def post(self) -> Post | None:
        """Return it as thick as at its thinner end where it is square or round."""
        least = min(self.bottom, self.top)
        if self.sides not in (0, 4) or least <= 0.0:
            return None
        x, _, z = np.eye(3)
        return Post(z, x, least, least, self.sides == 0)

    def stretched(self, factor: float) -> "Solid":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its height along its axis, else its mean width."""
        if abs(along[2]) > ALONG_AXIS:
            return self.height, True
        return 0.5 * (self.bottom + self.top), False

    def grain(self, entered: Array) -> Array:
        """Return up."""
        return np.array([0.0, 0.0, 1.0])


def ring(outside: Regular, inside: Regular) -> BaseGeometry:
    """Return the area between two like figures, in plan."""
    holes = [inside.corners()] if inside.across > 0.0 else []
    return shapely.Polygon(outside.corners(), holes)


_NOTHING = shapely.Polygon()


def level(sides: int, across: float) -> BaseGeometry:
    """Return a regular outline in plan, nothing where it ends in a point."""
    return Regular(sides, across).polygon() if across > 0.0 else _NOTHING
