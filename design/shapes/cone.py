"""Pointed roofs: a cone or pyramid, hollow or solid."""

from math import hypot

from ...units.frozen import replace
from .bodies import Tapered
from .plans import area_factor
from .shape import SizedShape
from .slopes import Roof


class Cone(Roof, Tapered, SizedShape, frozen=True):
    """A pyramid (or round cone), ``bottom`` flat to flat; hollow and open below with ``wall``."""

    top = 0.0

    sides: int
    bottom: float
    height: float
    wall: float | None = None

    @property
    def wall_thickness(self) -> float | None:
        """Return its wall, None where it is solid."""
        return self.wall

    def slopes(self) -> tuple[float, float]:
        """Return the area of its faces in m2, A/a times the slope's length, and their centroid."""
        apothem = self.bottom / 2.0
        edges = 2.0 * area_factor(self.sides) * apothem
        return edges * hypot(self.height, apothem) / 2.0, self.height / 3.0

    def stretched(self, factor: float) -> "Cone":
        """Return it as many times as high."""
        return replace(self, height=factor * self.height)
