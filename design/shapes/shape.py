"""What every shape can say of itself, in its own axes: x right, y away, z up from its place."""

from dataclasses import dataclass, field
from typing import Protocol, runtime_checkable

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Disc:
    """A circle: centre (3,) and radius in m, and the unit vector (3,) square to it (up: level)."""

    centre: tuple[float, float, float]
    radius: float
    axis: tuple[float, float, float] = (0.0, 0.0, 1.0)


@dataclass(frozen=True)
class Sphere:
    """A ball: centre (3,) and radius in m."""

    centre: tuple[float, float, float]
    radius: float


@dataclass(frozen=True, eq=False)
class Hull:
    """The convex hull of points (k, 3), level circles and spheres: one piece of an outline.

    ``ends``: its points are two convex outlines, each corner of the one joined to one of the other.
    """

    points: Array = field(default_factory=lambda: np.empty((0, 3)))
    discs: tuple[Disc, ...] = ()
    spheres: tuple[Sphere, ...] = ()
    ends: bool = False


@dataclass(frozen=True, eq=False)
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


@runtime_checkable
class Sloped(Protocol):
    """A shape with outer slopes that a roof covering may lie on."""

    def slopes(self) -> tuple[float, float]:
        """Return the area of the outer slopes in m2 and the height of its centroid in m."""
        ...


CIRCLE_POINTS = 72


def rim(disc: Disc, count: int = CIRCLE_POINTS, tangent: bool = True) -> Array:
    """Return points (count, 3) round a circle; ``tangent`` ones span edges that touch it."""
    axis = np.asarray(disc.axis)
    first = np.array([1.0, 0.0, 0.0]) if abs(axis[0]) < 0.9 else np.array([0.0, 1.0, 0.0])
    one = first - (first @ axis) * axis
    one /= np.linalg.norm(one)
    two = np.cross(axis, one)
    angles = np.pi / count * (1.0 + 2.0 * np.arange(count))
    radius = disc.radius / np.cos(np.pi / count) if tangent else disc.radius
    ring = np.cos(angles)[:, None] * one + np.sin(angles)[:, None] * two
    return np.asarray(disc.centre) + radius * ring


def corners(hull: Hull) -> Array:
    """Return points (k, 3) that stand for a hull: circles as 72 corners, balls in rings."""
    pieces = [hull.points, *(rim(disc) for disc in hull.discs)]
    for ball in hull.spheres:
        for up in np.linspace(-1.0, 1.0, 25):
            x, y, z = ball.centre
            radius = ball.radius * float(np.sqrt(1.0 - up**2))
            pieces.append(rim(Disc((x, y, z + up * ball.radius), radius), tangent=False))
    return np.vstack(pieces)


NO_HULLS: tuple[Hull, ...] = ()
