"""The scale of a drawing: one that a scale rule has, the largest that fits."""

from collections.abc import Callable

from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ... import references
from ...units.arrays import Array
from ...units.frozen import ByValue
from .paper import Point


class Scale(ByValue, frozen=True):
    """One on paper to ``one_to`` in the yard; ``words`` as a rule of the trade has it, or none."""

    one_to: float
    words: str = ""

    @property
    def mm(self) -> float:
        """Return how many mm on paper one metre takes."""
        return 1000.0 / self.one_to

    def __str__(self) -> str:
        ratio = f"1:{self.one_to:g}"
        return f"{self.words} ({ratio})" if self.words else ratio


def scales(metric: bool) -> list[Scale]:
    """Return the scales of rules, the largest first."""
    rows = references.table("drawing_scales").where("units", "metric" if metric else "imperial")
    return [Scale(float(row["one_to"]), row["words"]) for row in rows]


def largest(metric: bool, fits: Callable[[Scale], bool]) -> Scale:
    """Return the largest scale that fits; the smallest where none does."""
    every = scales(metric)
    return next((scale for scale in every if fits(scale)), every[-1])


class OnPaper(ByValue, frozen=True):
    """Where a drawing stands on the paper: ``mm`` a metre, its origin at (``x``, ``y``) mm."""

    mm: float
    x: float
    y: float

    def at(self, right: float, up: float) -> Point:
        """Return where a point of the drawing, in m, lies on the paper, in mm."""
        return self.x + right * self.mm, self.y - up * self.mm

    def spot(self, point: Array) -> Point:
        """Return where a point (2,) in m lies on the paper."""
        return self.at(float(point[0]), float(point[1]))

    def points(self, points: Array) -> Array:
        """Return where points (…, 2) in m lie on the paper."""
        return points * [self.mm, -self.mm] + [self.x, self.y]

    def area(self, region: BaseGeometry) -> BaseGeometry:
        """Return where a region of the drawing lies on the paper."""
        return affinity.affine_transform(region, [self.mm, 0.0, 0.0, -self.mm, self.x, self.y])
