"""The flat panel sawn with tilted edges: its outer face, its bevels, what is in it, its blank."""

from itertools import pairwise
from math import asin, atan2, cos, hypot, isfinite, sin, sqrt, tan

import numpy as np

from ...units.arrays import Array, distinct
from ...units.frozen import ByValue


class EdgeTilts(ByValue, frozen=True):
    """How far each edge's cut is tilted from square, in rad, seen from outside.

    Positive where the inner face is the smaller: the cut runs in under the outer face. Negative
    where the inner face reaches beyond the outer one.
    """

    left: float
    right: float
    bottom: float
    top: float


class SawnPanel(ByValue, frozen=True):
    """One flat panel: an even-sided trapezoid as its outer face, in m; angles in rad.

    ``bottom`` and ``top`` are the outer face's widths, ``length`` is measured along the slope.
    ``lean`` is from plumb, positive where its top leans inward; a quarter turn lies flat.
    ``bevel`` is the tilt of the edges that meet panels like it. ``copies`` are alike in one body.
    """

    face: str
    copies: int
    bottom: float
    top: float
    length: float
    thickness: float
    lean: float
    bevel: float
    edges: EdgeTilts

    @property
    def slant(self) -> float:
        """Return the angle of a side edge from the middle line of the outer face, in rad."""
        return atan2((self.bottom - self.top) / 2.0, self.length)

    @property
    def volume(self) -> float:
        """Return the volume between outer and inner face in m3.

        The face at each depth is the outer one with its edges moved in; its area is quadratic
        in depth between the depths at which an edge vanishes, so Simpson's rule is exact.
        """
        stops = distinct(np.array([0.0, *self._vanishing(), self.thickness]))
        total = 0.0
        for low, high in pairwise(stops.tolist()):
            areas = [self._area(depth) for depth in (low, (low + high) / 2.0, high)]
            total += (high - low) / 6.0 * (areas[0] + 4.0 * areas[1] + areas[2])
        return total

    def face_at(self, depth: float) -> Array:
        """Return the corners (k, 2) in m of the face at a depth, about the outer bottom's middle.

        Counter-clockwise seen from outside: three where a width has closed up, none where all has.
        """
        bottom, top, length = self._sizes(depth)
        if length <= 0.0 or max(bottom, top) <= 0.0:
            return np.empty((0, 2))
        low = depth * tan(self.edges.bottom)
        high = self.length - depth * tan(self.edges.top)
        (l0, r0), (l1, r1) = self._ends(depth, low), self._ends(depth, high)
        if top < 0.0:
            x, z = _meeting((l0, low), (l1, high), (r0, low), (r1, high))
            return np.array([[l0, low], [r0, low], [x, z]])
        if bottom < 0.0:
            x, z = _meeting((l0, low), (l1, high), (r0, low), (r1, high))
            return np.array([[x, z], [r1, high], [l1, high]])
        corners = np.array([[l0, low], [r0, low], [r1, high], [l1, high]])
        return corners[[True, bottom > 0.0 or top <= 0.0, True, top > 0.0]]

    def blank(self) -> tuple[float, float, float]:
        """Return bottom, top and length in m of the flat piece from which both faces can be cut.

        It is the outer face, longer or wider where an edge's cut reaches out beneath it.
        """
        out = [max(0.0, -self.thickness * tan(tilt)) for tilt in _each(self.edges)]
        sideways = 2.0 * max(out[0], out[1]) / cos(self.slant)
        taper = 2.0 * tan(self.slant)
        bottom = self.bottom + sideways + out[2] * taper
        top = self.top + sideways - out[3] * taper
        length = self.length + out[2] + out[3]
        if top < 0.0:
            length, top = bottom / taper, 0.0
        if bottom < 0.0:
            length, bottom = top / -taper, 0.0
        return bottom, top, length

    def _sizes(self, depth: float) -> tuple[float, float, float]:
        """Return bottom, top and length at a depth; a width is negative past where it closes."""
        taper = 2.0 * tan(self.slant)
        sides = (tan(self.edges.left) + tan(self.edges.right)) / cos(self.slant)
        up, down = depth * tan(self.edges.bottom), depth * tan(self.edges.top)
        bottom = self.bottom - up * taper - depth * sides
        top = self.top + down * taper - depth * sides
        return bottom, top, self.length - up - down

    def _ends(self, depth: float, height: float) -> tuple[float, float]:
        """Return x of the left and the right edge at a depth and a height along the slope."""
        half = self.bottom / 2.0 - height * tan(self.slant)
        left, right = (
            depth * tan(tilt) / cos(self.slant) for tilt in (self.edges.left, self.edges.right)
        )
        return -half + left, half - right

    def _area(self, depth: float) -> float:
        bottom, top, length = self._sizes(depth)
        if length <= 0.0 or (bottom <= 0.0 and top <= 0.0):
            return 0.0
        if top < 0.0:
            return bottom**2 / (bottom - top) * length / 2.0
        if bottom < 0.0:
            return top**2 / (top - bottom) * length / 2.0
        return (bottom + top) / 2.0 * length

    def _vanishing(self) -> list[float]:
        """Return the depths within the panel at which a width or the length closes up."""
        now, then = self._sizes(0.0), self._sizes(self.thickness)
        with np.errstate(divide="ignore", invalid="ignore"):
            depths = [self.thickness * np.divide(a, a - b) for a, b in zip(now, then, strict=True)]
        return [float(d) for d in depths if isfinite(d) and 0.0 < d < self.thickness]


def compound_bevel(sides: float | Array, lean: float | Array) -> float | Array:
    """Return the saw's tilt from square at the seams of a regular body, in rad.

    ``sides`` (…) are 3 or more, ``lean`` (…) of the panels from plumb in rad; they broadcast.
    sin(bevel) = cos(lean) sin(180/n): half the angle between neighbouring faces' normals
    (D. L. Snyder and B. Gottesman, Compound-Angle Joinery, 2015, for a mitre joint).
    """
    return np.arcsin(np.cos(lean) * np.sin(np.pi / np.asarray(sides)))


def half_turn(first: Array, second: Array) -> float:
    """Return half the angle in rad between two faces' outward unit normals (3,): a mitre's tilt.

    Both panels are cut in the plane that halves the corner between them, so that they meet.
    """
    return asin(min(1.0, float(np.linalg.norm(second - first)) / 2.0))


def cut_tilt(normal: Array, plane: Array) -> float:
    """Return the tilt in rad of a panel's edge that is sawn in a plane, both as unit normals (3,).

    ``normal`` points out of the panel's outer face, ``plane`` out of the panel at that edge: the
    cut is square where the two are, and the inner face the smaller where they point apart.
    """
    return -asin(max(-1.0, min(1.0, float(normal @ plane))))


def seam_gap(bevel: float | Array, setting: float | Array, thickness: float | Array) -> Array:
    """Return how far a seam stays open in m where the saw stood at ``setting`` for ``bevel``.

    Angles (…) in rad, thickness (…) in m; they broadcast. Two panels held at their right corner
    touch along one arris; at the other face, t (tan setting - tan bevel) is missing or too much
    on each, square to the seam 2 cos(bevel) of it: plane geometry. Positive: open inside;
    negative: open outside.
    """
    excess = np.tan(setting) - np.tan(bevel)
    return np.asarray(2.0 * thickness * np.cos(bevel) * excess)


def lean_of(run: float, height: float) -> tuple[float, float]:
    """Return the lean from plumb in rad and the slope's length in m of a rise that runs inward."""
    return atan2(run, height), hypot(run, height)


def leaning(toward: tuple[float, float], lean: float) -> Array:
    """Return the outward unit normal (3,) of a face that looks ``toward`` (x, y) and leans in."""
    x, y = toward
    return np.array([x * cos(lean), y * cos(lean), sin(lean)]) / sqrt(x**2 + y**2)


def _each(edges: EdgeTilts) -> tuple[float, float, float, float]:
    return edges.left, edges.right, edges.bottom, edges.top


def _meeting(
    a: tuple[float, float],
    b: tuple[float, float],
    c: tuple[float, float],
    d: tuple[float, float],
) -> tuple[float, float]:
    """Return where the line through a and b meets that through c and d."""
    gap, then = c[0] - a[0], d[0] - b[0]
    part = gap / (gap - then)
    return a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])
