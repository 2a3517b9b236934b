"""The hoop: a round ring of one section all round, lying about an upright axis."""

from functools import cached_property
from math import pi, sin, sqrt

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from .forms import Bars, Form
from .hulls import NO_HULLS, Hull, Moments
from .plans import Plan, Rectangle, Regular, unit_corners
from .shape import ALONG_AXIS, SizedShape

_PIECES = 72
"""Straight pieces that stand for it where it is drawn, of the same area from above."""

_ROUND = 24
"""Corners that stand for a round section, its edges tangent: as wide and high as it is."""


class Hoop(SizedShape, frozen=True):
    """A ring of ``section`` whose middle runs round a circle of ``radius``, in m.

    A rectangle's length is level and its width upright. A tube's ``wall`` is measured square.
    """

    radius: float
    section: Plan
    wall: float | None = None

    has_foot = False
    lets_through = True
    is_sawn = False

    @property
    def tall(self) -> float:
        """Return the height of its section, in m."""
        return 2.0 * self._low

    @property
    def across(self) -> float:
        """Return its outside diameter, in m."""
        return 2.0 * (self.radius + float(self._corners[:, 0].max()))

    @cached_property
    def _corners(self) -> Array:
        """Return the section's corners (k, 2) outward and up; a round one's box is its own."""
        if isinstance(self.section, Regular) and self.section.sides == 0:
            half = self.section.across / 2.0
            return np.array([[half, 0.0], [0.0, half], [-half, 0.0], [0.0, -half]])
        return self.section.corners()

    @property
    def _low(self) -> float:
        """Return how far its section reaches below its middle, in m."""
        return -float(self._corners[:, 1].min())

    def bore(self) -> Plan | None:
        """Return the section of what is empty within a tube."""
        return None if self.wall is None else self.section.shrunk(self.wall)

    def moments(self) -> Moments:
        """Return 2 pi R A about its middle (Pappus; the section's centroid lies on the circle)."""
        bore = self.bore()
        area = self.section.area - (bore.area if bore is not None else 0.0)
        volume = 2.0 * pi * self.radius * area
        return Moments(volume, np.array([0.0, 0.0, volume * self._low]))

    def hulls(self) -> tuple[Hull, ...]:
        """Return its straight pieces."""
        return self._outside

    def cavities(self) -> tuple[Hull, ...]:
        """Return the bore of a tube, piece by piece."""
        bore = self.bore()
        return NO_HULLS if bore is None else self._pieces(bore)

    @cached_property
    def _outside(self) -> tuple[Hull, ...]:
        return self._pieces(self.section)

    def _pieces(self, section: Plan) -> tuple[Hull, ...]:
        step = 2.0 * pi / _PIECES
        fit = sqrt(step / sin(step))
        angles = step * np.arange(_PIECES)
        corners = _drawn(section)
        out = fit * (self.radius + corners[:, 0])
        rings = [
            np.column_stack([out * np.cos(a), out * np.sin(a), corners[:, 1] + self._low])
            for a in angles
        ]
        return tuple(
            Hull(np.vstack([rings[k], rings[(k + 1) % _PIECES]]), ends=True) for k in range(_PIECES)
        )

    def contact(self) -> BaseGeometry:
        """Return the level underside of its section all round, a circle where it has none."""
        low = self._corners[self._corners[:, 1] <= self._corners[:, 1].min() + 1.0e-9][:, 0]
        inner, outer = (2.0 * (self.radius + float(edge)) for edge in (low.min(), low.max()))
        if outer - inner < 1.0e-9:
            return shapely.LinearRing(Regular(0, outer).corners())
        return shapely.Polygon(Regular(0, outer).corners(), [Regular(0, inner).corners()])

    def from_above(self) -> BaseGeometry:
        """Return the ring from above, open in the middle."""
        inner = 2.0 * (self.radius + float(self._corners[:, 0].min()))
        return shapely.Polygon(Regular(0, self.across).corners(), [Regular(0, inner).corners()])

    def as_form(self) -> Form:
        """Return its straight pieces; of flat sides the rectangle round its section."""
        angles = 2.0 * pi / _PIECES * (np.arange(_PIECES) + 0.5)
        flat = np.zeros(_PIECES)
        outward = np.column_stack([np.cos(angles), np.sin(angles), flat])
        along = np.column_stack([-np.sin(angles), np.cos(angles), flat])
        plan = self.section
        if not isinstance(plan, Regular) or plan.sides:
            plan = Rectangle(*np.ptp(self._corners, axis=0).tolist())
        lengths = np.full(_PIECES, 2.0 * pi * self.radius / _PIECES)
        return Bars(plan, along, outward, lengths)

    @property
    def named_plan(self) -> Regular:
        """Return its outside."""
        return Regular(0, self.across)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its section's size from above, or from the side."""
        size = np.ptp(self._corners, axis=0)
        return float(size[1] if abs(along[2]) > ALONG_AXIS else size[0]), False


def _drawn(section: Plan) -> Array:
    """Return a section's corners (k, 2), a round one as its tangents."""
    if not isinstance(section, Regular) or section.sides:
        return section.corners()
    return unit_corners(_ROUND) * section.across / 2.0
