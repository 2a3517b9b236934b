"""Flat pieces: plate and frame lie, panel stands."""

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import replace
from .forms import Form, Leaf, Prism, Slab
from .hulls import NO_HULLS, Hull, Moments
from .plans import Plan, Rectangle, Regular, at_height
from .shape import ALONG_AXIS, SizedShape, size_along


class Plate(SizedShape, frozen=True):
    """A plate lying flat; ``hole`` is flat to flat, of the same figure. Sizes in m."""

    lies_flat = True
    flat_topped = True

    plan: Plan
    thickness: float
    hole: float = 0.0
    solidity: float = 1.0

    def moments(self) -> Moments:
        """Return area times thickness, by its solidity."""
        area = self.plan.area
        if self.hole > 0.0 and isinstance(self.plan, Regular):
            area -= Regular(self.plan.sides, self.hole).area
        return _slab(area * self.solidity, self.thickness)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outline."""
        return (_upright(self.plan, self.thickness),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hole."""
        if self.hole > 0.0 and isinstance(self.plan, Regular):
            return (_upright(Regular(self.plan.sides, self.hole), self.thickness),)
        return NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return its underside."""
        if self.hole > 0.0 and isinstance(self.plan, Regular):
            hole = Regular(self.plan.sides, self.hole)
            return shapely.Polygon(self.plan.corners(), [hole.corners()])
        return self.plan.polygon()

    def as_form(self) -> Form:
        """Return a board that lies."""
        return Slab(self.contact(), self.plan, self.thickness)

    @property
    def named_plan(self) -> Plan:
        """Return its outline."""
        return self.plan

    @property
    def is_floor(self) -> bool:
        """Return that it closes what stands on it."""
        return True

    def foot(self) -> BaseGeometry:
        """Return its filled outline."""
        return self.from_above()

    def rim(self) -> BaseGeometry:
        """Return its upper side, the hole left out."""
        return self.contact()

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its thickness through its face, else its lesser width on edge."""
        if abs(along[2]) > ALONG_AXIS:
            return self.thickness, False
        return self.plan.least_width, True

    def grain(self, entered: Array) -> Array | None:
        """Return the longer way of a rectangle."""
        if not isinstance(self.plan, Rectangle):
            return None
        return np.eye(3)[0 if self.plan.length >= self.plan.width else 1]

    @property
    def plate(self) -> "Plate":
        """Return itself."""
        return self


class Frame(SizedShape, frozen=True):
    """A ring of lumber lying flat, ``width`` that of the lumber in plan. Sizes in m."""

    lies_flat = True
    flat_topped = True
    lets_through = True
    has_edges = False

    plan: Plan
    width: float
    height: float

    def inside(self) -> Plan:
        """Return the outline of the opening."""
        return self.plan.shrunk(self.width)

    def moments(self) -> Moments:
        """Return ring area times height."""
        return _slab(self.plan.area - self.inside().area, self.height)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outline."""
        return (_upright(self.plan, self.height),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the opening."""
        return (_upright(self.inside(), self.height),)

    def contact(self) -> BaseGeometry:
        """Return the underside of the ring."""
        return shapely.Polygon(self.plan.corners(), [self.inside().corners()])

    def as_form(self) -> Form:
        """Return a prism of its outline."""
        return Prism(self.plan)

    @property
    def named_plan(self) -> Plan:
        """Return its outline."""
        return self.plan

    def rim(self) -> BaseGeometry:
        """Return the upper side of the ring."""
        return self.contact()

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return the height of its lumber from above, else its width."""
        return (self.height if abs(along[2]) > ALONG_AXIS else self.width), False

    @property
    def ring(self) -> "Frame":
        """Return itself."""
        return self


class Panel(SizedShape, frozen=True):
    """A board or lattice standing in the x-z plane, its thickness centred on y = 0. Sizes in m."""

    is_standing_board = True
    flat_topped = True

    width: float
    height: float
    thickness: float
    solidity: float = 1.0
    climbers: bool = False

    def moments(self) -> Moments:
        """Return width times thickness times height, by its solidity."""
        return _slab(self.width * self.thickness * self.solidity, self.height)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outline."""
        return (_upright(Rectangle(self.width, self.thickness), self.height),)

    def contact(self) -> BaseGeometry:
        """Return its lower edge."""
        return self.from_above()

    def as_form(self) -> Form:
        """Return a board that stands."""
        half = self.width / 2.0
        return Leaf(
            shapely.box(-half, 0.0, half, self.height), self.width, self.height, self.thickness
        )

    @property
    def named_plan(self) -> Rectangle:
        """Return its outline from above."""
        return Rectangle(self.width, self.thickness)

    @property
    def panel(self) -> "Panel":
        """Return itself."""
        return self

    def stretched(self, factor: float) -> "Panel":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its size along the nearest axis, on edge but through its face."""
        return size_along(along, (self.width, self.thickness, self.height), 1)

    def grain(self, entered: Array) -> Array:
        """Return its longer way."""
        return np.eye(3)[0 if self.width >= self.height else 2]


def _slab(area: float, height: float) -> Moments:
    return Moments(area * height, np.array([0.0, 0.0, area * height**2 / 2.0]))


def _upright(outline: Plan, height: float) -> Hull:
    if isinstance(outline, Regular) and outline.sides == 0:
        return Hull(discs=(*outline.level(0.0)[1], *outline.level(height)[1]))
    corners = outline.corners()
    return Hull(np.vstack([at_height(corners, 0.0), at_height(corners, height)]))
