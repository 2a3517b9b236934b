"""The ball."""

from math import pi

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from .forms import Form, Globe
from .hulls import NO_HULLS, Hull, Moments, Sphere
from .plans import Regular
from .shape import SizedShape


class Ball(SizedShape, frozen=True):
    """A sphere of diameter ``across`` m resting on its place; hollow with ``wall``."""

    has_foot = False

    across: float
    wall: float | None = None

    def moments(self) -> Moments:
        """Return 4/3 pi (R3 - r3), at the centre."""
        radius = self.across / 2.0
        hollow = radius - self.wall if self.wall is not None else 0.0
        volume = 4.0 / 3.0 * pi * (radius**3 - hollow**3)
        return Moments(volume, np.array([0.0, 0.0, volume * radius]))

    def hulls(self) -> tuple[Hull, ...]:
        """Return the sphere."""
        radius = self.across / 2.0
        return (Hull(spheres=(Sphere((0.0, 0.0, radius), radius),)),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hollow."""
        if self.wall is None:
            return NO_HULLS
        radius = self.across / 2.0
        return (Hull(spheres=(Sphere((0.0, 0.0, radius), radius - self.wall),)),)

    def contact(self) -> BaseGeometry:
        """Return the point on which it rests."""
        return shapely.Point(0.0, 0.0)

    def as_form(self) -> Form:
        """Return a globe."""
        return Globe(self.across)

    @property
    def named_plan(self) -> Regular:
        """Return its greatest circle."""
        return Regular(0, self.across)

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its width; of its grain nobody knows: end grain."""
        return self.across, True
