"""What every shape can say of itself, in its own axes: x right, y away, z up from its place."""

from dataclasses import dataclass, field
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Disc:
    """A level circle: centre (3,) and radius in m. It stays exact in every elevation."""

    centre: tuple[float, float, float]
    radius: float


@dataclass(frozen=True)
class Sphere:
    """A ball: centre (3,) and radius in m."""

    centre: tuple[float, float, float]
    radius: float


@dataclass(frozen=True)
class Hull:
    """The convex hull of points (k, 3), level circles and spheres: one piece of an outline."""

    points: Array = field(default_factory=lambda: np.empty((0, 3)))
    discs: tuple[Disc, ...] = ()
    spheres: tuple[Sphere, ...] = ()


@dataclass(frozen=True)
class Moments:
    """Volume in m3 and first moments of volume (3,) in m4 about the shape's own axes."""

    volume: float
    first: Array

    def __add__(self, other: "Moments") -> "Moments":
        return Moments(self.volume + other.volume, self.first + other.first)

    def __sub__(self, other: "Moments") -> "Moments":
        return Moments(self.volume - other.volume, self.first - other.first)

    def times(self, factor: float) -> "Moments":
        """Return the moments of the same body with its density multiplied by ``factor``."""
        return Moments(self.volume * factor, self.first * factor)


class Shape(Protocol):
    """A shape in its own axes, standing on z = 0 (a rotor turns about its place instead)."""

    @property
    def peak(self) -> float:
        """Height of the highest point above the place, in m."""
        ...

    @property
    def bottom_level(self) -> float:
        """Height of the lowest point above the place, in m: 0 for all that stands."""
        ...

    def moments(self) -> Moments:
        """Return the volume and first moments of the material (solidity counted)."""
        ...

    def hulls(self) -> tuple[Hull, ...]:
        """Return the convex pieces whose union is the filled outer shape."""
        ...

    def cavities(self) -> tuple[Hull, ...]:
        """Return the convex pieces that are empty within the outer shape."""
        ...

    def contact(self) -> BaseGeometry:
        """Return the faces that touch the ground when it stands on it, in plan (m)."""
        ...

    def from_above(self) -> BaseGeometry:
        """Return the filled outline from above, in plan (m)."""
        ...

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles (rad from +x) of its face normals and plan diagonals."""
        ...


NO_HULLS: tuple[Hull, ...] = ()
