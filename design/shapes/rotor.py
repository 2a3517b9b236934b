"""The wheel of blades, locked or spinning."""

from math import cos, pi, sin

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from .forms import Form, Wheel
from .hulls import Hull, Moments
from .shape import SizedShape


class Rotor(SizedShape, frozen=True):
    """A wheel of flat trapezoid blades about its hub, which is its place. Sizes in m, rad.

    ``span`` is the length of one blade from the hub's centre to its tip, ``root`` and ``tip`` its
    widths there. ``facing`` is the compass bearing toward which the front looks (clockwise from
    +y); None where the wheel ``yaws`` into the wind. ``pitch`` twists each blade about its length.
    """

    middle_is_place = False
    stands = False
    has_foot = False
    has_edges = False

    blades: int
    span: float
    root: float
    tip: float
    thickness: float
    facing: float | None = None
    solidity: float = 1.0
    pitch: float = 0.0
    spins: bool = True
    yaws: bool = False

    @property
    def disc_area(self) -> float:
        """Return the area that the blades sweep, in m2."""
        return pi * self.span**2

    @property
    def blade_area(self) -> float:
        """Return the area of all blades, face on, by their solidity, in m2."""
        return self.blades * (self.root + self.tip) / 2.0 * self.span * self.solidity

    def moments(self) -> Moments:
        """Return the blades' moments, blade by blade: each a trapezoid of even thickness."""
        volume = self.blade_area * self.thickness
        reach = self.span / 3.0 * (self.root + 2.0 * self.tip) / (self.root + self.tip)
        centre = reach / self.blades * sum(self._along(k) for k in range(self.blades))
        return Moments(volume, volume * np.asarray(centre))

    def hulls(self) -> tuple[Hull, ...]:
        """Return the blades, the first upright."""
        return tuple(Hull(self._blade(k)) for k in range(self.blades))

    def contact(self) -> BaseGeometry:
        """Return nothing: a wheel does not stand."""
        return shapely.Polygon()

    def from_above(self) -> BaseGeometry:
        """Return the outline of the blades from above."""
        points = np.vstack([hull.points[:, :2] for hull in self.hulls()])
        return shapely.MultiPoint(points).convex_hull

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles of its front and back."""
        if self.facing is None:
            return ()
        front = pi / 2.0 - self.facing
        return front, front + pi

    def _along(self, k: int) -> Array:
        angle = 2.0 * pi * k / self.blades
        return self._faced(np.array([sin(angle), 0.0, cos(angle)]))

    def _blade(self, k: int) -> Array:
        """Return the corners (8, 3) of blade k: a trapezoid of its thickness, pitched, placed."""
        half = self.thickness / 2.0
        wide = np.array([[-1, 0], [1, 0], [1, 1], [-1, 1]], dtype=float)
        across = wide[:, 0] * np.array([self.root, self.root, self.tip, self.tip]) / 2.0
        along = wide[:, 1] * self.span
        flat = np.array(
            [[x, y, z] for x, z in zip(across, along, strict=True) for y in (half, -half)]
        )
        pitched = flat @ _about_z(self.pitch).T
        angle = 2.0 * pi * k / self.blades
        turn = np.array(
            [[cos(angle), 0.0, sin(angle)], [0.0, 1.0, 0.0], [-sin(angle), 0.0, cos(angle)]]
        )
        return self._faced(pitched @ turn.T)

    def _faced(self, points: Array) -> Array:
        return points @ _about_z(-(self.facing or 0.0)).T

    def as_form(self) -> Form:
        """Return a wheel."""
        return Wheel(self)

    @property
    def wheel(self) -> "Rotor":
        """Return itself."""
        return self

    @property
    def sweep(self) -> float:
        """Return how far from its hub a corner of a blade turns, in m."""
        return float(np.hypot(self.span, self.tip / 2.0))


def _about_z(angle: float) -> Array:
    return np.array([[cos(angle), -sin(angle), 0.0], [sin(angle), cos(angle), 0.0], [0, 0, 1.0]])
