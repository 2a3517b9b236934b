"""Hulls of points, circles and balls that make an outline, and moments of what fills it."""

import numpy as np

from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue, field


class Disc(ByValue, frozen=True):
    """A circle: centre (3,) and radius in m, and the unit vector (3,) square to it (up: level)."""

    centre: tuple[float, float, float]
    radius: float
    axis: tuple[float, float, float] = (0.0, 0.0, 1.0)


class Sphere(ByValue, frozen=True):
    """A ball: centre (3,) and radius in m."""

    centre: tuple[float, float, float]
    radius: float


class Hull(ByIdentity, frozen=True):
    """The convex hull of points (k, 3), level circles and spheres: one piece of an outline.

    ``ends``: its points are two convex outlines, each corner of the one joined to one of the other.
    """

    points: Array = field(default_factory=lambda: np.empty((0, 3)))
    discs: tuple[Disc, ...] = ()
    spheres: tuple[Sphere, ...] = ()
    ends: bool = False


class Moments(ByIdentity, frozen=True):
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


NO_HULLS: tuple[Hull, ...] = ()
_CIRCLE_POINTS = 72


def rim(disc: Disc, count: int = _CIRCLE_POINTS, tangent: bool = True) -> Array:
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
