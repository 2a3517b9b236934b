"""The body turned on a lathe: any profile about an upright axis."""

from functools import cached_property
from itertools import pairwise
from math import atan2, degrees

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import replace
from .bodies import Frustum, level
from .forms import Form, Post, Prism
from .hulls import Disc, Hull, Moments
from .plans import Regular
from .shape import ALONG_AXIS, SizedShape
from .slopes import RoofFace, Skirt, faces_round


class Turned(SizedShape, frozen=True):
    """A solid round body: ``profile`` is its radius at each height (radius, height), in m.

    Heights begin at 0 and never fall; it is straight from each to the next, and two radii at one
    height are a step.
    """

    profile: tuple[tuple[float, float], ...]

    fills_space = True
    flat_topped = True
    is_sawn = False

    @property
    def height(self) -> float:
        """Return how high it is, in m."""
        return self.profile[-1][1]

    @property
    def widest(self) -> float:
        """Return its greatest diameter, in m."""
        return 2.0 * max(radius for radius, _ in self.profile)

    @cached_property
    def frustums(self) -> tuple[Frustum, ...]:
        """Return the cones between its heights, from the foot up; steps have no height."""
        return tuple(
            Frustum(0, 2.0 * r0, 2.0 * r1, z1 - z0, z0)
            for (r0, z0), (r1, z1) in pairwise(self.profile)
            if z1 > z0
        )

    @property
    def mean_width(self) -> float:
        """Return the area that it shows from the side over its height, in m."""
        return sum((f.bottom + f.top) / 2.0 * f.height for f in self.frustums) / self.height

    def moments(self) -> Moments:
        """Return the sum of its frustums'."""
        return sum((f.moments() for f in self.frustums), Moments(0.0, np.zeros(3)))

    @cached_property
    def _pieces(self) -> tuple[Hull, ...]:
        return tuple(_piece(frustum) for frustum in self.frustums)

    def hulls(self) -> tuple[Hull, ...]:
        """Return its frustums."""
        return self._pieces

    def contact(self) -> BaseGeometry:
        """Return its underside, or the point on which it stands."""
        first = self.frustums[0].bottom
        return Regular(0, first).polygon() if first > 0.0 else shapely.Point(0.0, 0.0)

    def as_form(self) -> Form:
        """Return a round prism of its mean width."""
        return Prism(Regular(0, self.mean_width))

    @property
    def named_plan(self) -> Regular:
        """Return its widest outline."""
        return Regular(0, self.widest)

    def foot(self) -> BaseGeometry | None:
        """Return the outline of its underside, None where it is a point."""
        first = self.frustums[0].bottom
        return Regular(0, first).polygon() if first > 0.0 else None

    def crown(self) -> BaseGeometry:
        """Return the outline of its top."""
        return level(0, self.frustums[-1].top)

    def skirt(self) -> Skirt | None:
        """Return all beneath it where it narrows upward from where it is widest."""
        low = max(z for radius, z in self.profile if 2.0 * radius >= self.widest)
        run = (self.widest - self.frustums[-1].top) / 2.0
        return Skirt(self.from_above(), self.height - low, run) if run > 0.0 else None

    def roof_faces(self) -> list[RoofFace]:
        """Return the slopes that are seen from above, as sectors."""
        found: list[RoofFace] = []
        seen = self.frustums[-1].top
        for one in reversed(self.frustums):
            inner = max(seen, one.top)
            if one.bottom > inner:
                slope = degrees(atan2(one.height, (one.bottom - one.top) / 2.0))
                found += [
                    RoofFace(face.corners, slope, face.fall)
                    for face in faces_round(0, one.bottom, inner, 1.0)
                ]
            seen = max(inner, one.bottom)
        return found

    @property
    def is_block(self) -> bool:
        """Return that it is."""
        return True

    @property
    def is_floor(self) -> bool:
        """Return whether its top closes what stands on it."""
        return self.frustums[-1].top > 0.0

    def post(self) -> Post | None:
        """Return it as thick as where it is thinnest; None where it ends in a point."""
        least = 2.0 * min(radius for radius, _ in self.profile)
        x, _, z = np.eye(3)
        return Post(z, x, least, least, is_round=True) if least > 0.0 else None

    def stretched(self, factor: float) -> "Turned":
        """Return it as many times as high."""
        return replace(self, profile=tuple((r, factor * z) for r, z in self.profile))

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its height along its axis, else its mean width."""
        return (self.height, True) if abs(along[2]) > ALONG_AXIS else (self.mean_width, False)

    def grain(self, entered: Array) -> Array:
        """Return up, as it lies on the lathe."""
        return np.array([0.0, 0.0, 1.0])


def _piece(one: Frustum) -> Hull:
    """Return the hull of a frustum, either end of which may be a point."""
    discs: list[Disc] = []
    points: list[tuple[float, float, float]] = []
    for across, z in ((one.bottom, one.base), (one.top, one.base + one.height)):
        if across > 0.0:
            discs.append(Disc((0.0, 0.0, z), across / 2.0))
        else:
            points.append((0.0, 0.0, z))
    return Hull(np.array(points).reshape(-1, 3), tuple(discs))
