"""Rectangular bodies: the box."""

from math import hypot

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from .forms import Form, Post, Prism, Walls
from .hulls import NO_HULLS, Hull, Moments
from .plans import Rectangle
from .prism import LevelSection, prismatoid
from .shape import ALONG_AXIS, SizedShape
from .slopes import RoofFace, Skirt, faces_of_a_hip

_SIDES = frozenset({"front", "back", "left", "right"})
FACES = _SIDES | {"top", "bottom"}


class Wedge(ByValue, frozen=True):
    """A body with rectangular sections: x0, x1, y0, y1 at the bottom and at the top, in m."""

    low: tuple[float, float, float, float]
    high: tuple[float, float, float, float]
    base: float
    height: float

    def section(self, at: float) -> tuple[float, float, float, float]:
        """Return x0, x1, y0, y1 at the fraction ``at`` of the height."""
        x0, x1, y0, y1 = (a + (b - a) * at for a, b in zip(self.low, self.high, strict=True))
        return x0, x1, y0, y1

    def moments(self) -> Moments:
        """Return volume and first moments: section sides are linear in z, so Simpson is exact."""
        levels = (_rectangle_section(self.section(at)) for at in (0.0, 0.5, 1.0))
        a, b, c = levels
        return prismatoid(self.base, self.height, (a, b, c))

    def hull(self) -> Hull:
        """Return the outline."""
        return Hull(
            np.vstack(
                [
                    _corners(self.low, self.base),
                    _corners(self.high, self.base + self.height),
                ]
            )
        )

    def cut_where_empty(self) -> "Wedge | None":
        """Return the part of it whose sections have an extent, or None if none has."""
        start, end = 0.0, 1.0
        for i, j in ((0, 1), (2, 3)):
            w0, w1 = self.low[j] - self.low[i], self.high[j] - self.high[i]
            if w0 <= 0.0 and w1 <= 0.0:
                return None
            if w1 < 0.0:
                end = min(end, w0 / (w0 - w1))
            if w0 < 0.0:
                start = max(start, w0 / (w0 - w1))
        if end <= start:
            return None
        return Wedge(
            self.section(start),
            self.section(end),
            self.base + start * self.height,
            (end - start) * self.height,
        )


class Box(SizedShape, frozen=True):
    """A rectangular body; hollow with ``wall`` and closed but for its ``open`` faces. Sizes in m.

    ``top_length`` and ``top_width`` are the top's where it tapers (0 for a hip). ``wall`` is
    measured square to each wall. ``open`` holds names of faces as seen before any turn.
    """

    fills_space = True
    flat_topped = True

    length: float
    width: float
    height: float
    wall: float | None = None
    open: frozenset[str] = frozenset()
    top_length: float | None = None
    top_width: float | None = None

    @property
    def top_plan(self) -> Rectangle:
        """Return the top's outline."""
        return Rectangle(
            self.length if self.top_length is None else self.top_length,
            self.width if self.top_width is None else self.top_width,
        )

    def outer(self) -> Wedge:
        """Return the filled outside."""
        x, y = self.length / 2.0, self.width / 2.0
        tx, ty = self.top_plan.length / 2.0, self.top_plan.width / 2.0
        return Wedge((-x, x, -y, y), (-tx, tx, -ty, ty), 0.0, self.height)

    def inner(self) -> Wedge | None:
        """Return the space inside, reaching through the open faces; None if there is none."""
        if self.wall is None:
            return None
        outer, wall = self.outer(), self.wall
        lean = (outer.low[1] - outer.high[1], outer.low[3] - outer.high[3])
        in_x, in_y = (wall * hypot(self.height, d) / self.height for d in lean)
        base = 0.0 if "bottom" in self.open else wall
        end = self.height - (0.0 if "top" in self.open else wall)
        if end <= base:
            return None
        shrink = (
            0.0 if "left" in self.open else in_x,
            0.0 if "right" in self.open else -in_x,
            0.0 if "front" in self.open else in_y,
            0.0 if "back" in self.open else -in_y,
        )
        low, high = (
            tuple(a + b for a, b in zip(outer.section(z / self.height), shrink, strict=True))
            for z in (base, end)
        )
        return Wedge(_four(low), _four(high), base, end - base).cut_where_empty()

    def moments(self) -> Moments:
        """Return the outside's moments less the inside's."""
        inner = self.inner()
        outer = self.outer().moments()
        return outer if inner is None else outer - inner.moments()

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return (self.outer().hull(),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the space inside."""
        inner = self.inner()
        return NO_HULLS if inner is None else (inner.hull(),)

    def contact(self) -> BaseGeometry:
        """Return its underside, or the edges of its walls where the bottom is open."""
        outside = Rectangle(self.length, self.width).polygon()
        inner = self.inner()
        if inner is None or "bottom" not in self.open:
            return outside
        x0, x1, y0, y1 = inner.low
        return outside.difference(shapely.box(x0, y0, x1, y1))

    def from_above(self) -> BaseGeometry:
        """Return the widest outline from above."""
        return Rectangle(
            max(self.length, self.top_plan.length), max(self.width, self.top_plan.width)
        ).polygon()

    def slopes(self) -> tuple[float, float] | None:
        """Return the area of its leaning sides in m2 and the height of its centroid in m.

        None where it does not taper.
        """
        top = self.top_plan
        if (top.length, top.width) == (self.length, self.width):
            return None
        sides = [
            (self.length, top.length, (self.width - top.width) / 2.0),
            (self.width, top.width, (self.length - top.length) / 2.0),
        ]
        areas = [(a + b) * hypot(self.height, run) for a, b, run in sides]
        heights = [self.height / 3.0 * (a + 2.0 * b) / (a + b) for a, b, _ in sides]
        total = sum(areas)
        return total, sum(a * z for a, z in zip(areas, heights, strict=True)) / total

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of faces and diagonals."""
        return Rectangle(*self.middle()).bearings()

    def middle(self) -> tuple[float, float]:
        """Return length and width at mid-height, in m."""
        top = self.top_plan
        return (self.length + top.length) / 2.0, (self.width + top.width) / 2.0

    def as_form(self) -> Form:
        """Return a prism of its section half-way up."""
        return Prism(Rectangle(*self.middle()))

    @property
    def named_plan(self) -> Rectangle:
        """Return its foot's outline."""
        return Rectangle(self.length, self.width)

    def foot(self) -> BaseGeometry:
        """Return the filled outline of its underside."""
        return self.named_plan.polygon()

    def crown(self) -> BaseGeometry:
        """Return the filled outline of its top."""
        return self.top_plan.polygon()

    def rim(self) -> BaseGeometry:
        """Return its top, that of its walls where it is open above."""
        inner = self.inner() if self.open_above else None
        if inner is None:
            return self.crown()
        x0, x1, y0, y1 = inner.high
        return self.crown().difference(shapely.box(x0, y0, x1, y1))

    def skirt(self) -> Skirt | None:
        """Return what is beneath its slopes; all of it unless it is hollow and open above."""
        top = self.top_plan
        run = max(self.length - top.length, self.width - top.width) / 2.0
        if run <= 0.0:
            return None
        whole = self.foot()
        return Skirt(
            whole.difference(top.polygon()) if self.open_above else whole, self.height, run
        )

    def roof_faces(self) -> list[RoofFace]:
        """Return the sides that lean inward."""
        top = self.top_plan
        return faces_of_a_hip((self.length, self.width), (top.length, top.width), self.height)

    @property
    def is_hollow(self) -> bool:
        """Return whether it has walls."""
        return self.wall is not None

    @property
    def is_block(self) -> bool:
        """Return whether it has none."""
        return self.wall is None

    @property
    def is_floor(self) -> bool:
        """Return whether its top is closed."""
        return "top" not in self.open

    @property
    def has_lid(self) -> bool:
        """Return whether it has walls and a closed top."""
        return self.wall is not None and "top" not in self.open

    @property
    def open_above(self) -> bool:
        """Return whether it has walls and no top."""
        return self.wall is not None and "top" in self.open

    @property
    def open_below(self) -> bool:
        """Return whether it has walls and no bottom."""
        return self.wall is not None and "bottom" in self.open

    @property
    def open_sideways(self) -> bool:
        """Return whether a side of it is open."""
        return self.wall is not None and bool(self.open & _SIDES)

    def vessel_floor(self) -> BaseGeometry | None:
        """Return the plan of its own floor."""
        inner = None if "bottom" in self.open else self.inner()
        if inner is None:
            return None
        x0, x1, y0, y1 = inner.low
        return shapely.box(x0, y0, x1, y1)

    @property
    def room(self) -> "Box | None":
        """Return itself where it has walls."""
        return self if self.wall is not None else None

    @property
    def wall_thickness(self) -> float | None:
        """Return its wall, None where it is solid."""
        return self.wall

    def walls(self) -> Walls | None:
        """Return its walls, joined where no side is open."""
        if self.wall is None:
            return None
        foot = Rectangle(self.length, self.width)
        return Walls(foot, self.top_plan, self.height, self.wall, not self.open & _SIDES)

    def post(self) -> Post | None:
        """Return it with its lesser end's section where it is solid."""
        top = self.top_plan
        first, second = min(self.length, top.length), min(self.width, top.width)
        if self.wall is not None or first * second <= 0.0:
            return None
        x, _, z = np.eye(3)
        return Post(z, x, first, second)

    @property
    def fill_height(self) -> float | None:
        """Return its height where it has walls."""
        return None if self.wall is None else self.height

    def fill(self, depth: float) -> Moments | None:
        """Return the space inside it up to a depth in m, open there unless it is full."""
        top, share = self.top_plan, depth / self.height
        cut = replace(
            self,
            height=depth,
            top_length=self.length + (top.length - self.length) * share,
            top_width=self.width + (top.width - self.width) * share,
            open=self.open if share >= 1.0 else self.open | {"top"},
        )
        space = cut.inner()
        return None if space is None else space.moments()

    def stretched(self, factor: float) -> "Box":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its size along the nearest axis where it is solid, else a wall or its edge."""
        sizes = (self.length, self.width, self.height)
        axis = int(np.abs(along).argmax())
        if self.wall is None:
            on_edge = axis != int(np.argmin(sizes)) if sheet else axis == int(np.argmax(sizes))
            return sizes[axis], on_edge
        enters = "bottom" if along[2] > 0.0 else "top"
        on_edge = axis == 2 and enters in self.open
        return (sizes[axis], True) if on_edge else (self.wall, False)

    def grain(self, entered: Array) -> Array:
        """Return its longest side where it is solid, else up its walls, along its top."""
        axes = np.eye(3)
        if self.wall is None:
            return axes[int(np.argmax((self.length, self.width, self.height)))]
        if abs(float(entered[2])) <= ALONG_AXIS:
            return axes[2]
        return axes[0] if self.length >= self.width else axes[1]


def _rectangle_section(bounds: tuple[float, float, float, float]) -> LevelSection:
    x0, x1, y0, y1 = bounds
    area = (x1 - x0) * (y1 - y0)
    return area, area * (x0 + x1) / 2.0, area * (y0 + y1) / 2.0


def _corners(bounds: tuple[float, float, float, float], height: float) -> Array:
    x0, x1, y0, y1 = bounds
    return np.array([[x0, y0, height], [x1, y0, height], [x1, y1, height], [x0, y1, height]])


def _four(values: tuple[float, ...]) -> tuple[float, float, float, float]:
    a, b, c, d = values
    return a, b, c, d
