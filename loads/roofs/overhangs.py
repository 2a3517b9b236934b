"""The part of a roof that overhangs what stands beneath it on the windward side."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class _Line(ByIdentity, frozen=True):
    """Lines (n,) through points at ``t`` and ``s``, which rise by ``slope``."""

    t: Array
    s: Array
    slope: Array

    def at(self, t: Array) -> Array:
        return self.s + (t - self.t) * self.slope


def upwind_of(region: BaseGeometry, hull: Array, along: Array) -> tuple[Array, Array]:
    """Return area (D,) in m2 and its first moments (D, 2) in m3 of what lies upwind of a hull.

    ``region`` is in plan, ``hull`` (k, 2) convex and counter-clockwise in m, and ``along`` (D, 2)
    the way in which the wind blows. What counts is all of the region from which the wind meets the
    hull, and what of the region the hull covers.

    With s along the wind and t across it, that is where s <= g(t), the hull's lee side, between its
    ends: by Green's theorem A is the integral round the region's outline of min(s, g) dt, and its
    moments are those of t min(s, g) and of min(s, g)^2 / 2. Along each edge of the outline over
    each of the hull they are linear and quadratic on either side of where the two cross.

    >>> from yardfast.design.plane import box
    >>> hull = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
    >>> area, moment = upwind_of(box(-3.0, -2.0, -1.0, 2.0), hull, np.array([[1.0, 0.0]]))
    >>> area.tolist(), moment.tolist()
    ([4.0], [[-8.0, 0.0]])
    """
    across = np.column_stack([-along[:, 1], along[:, 0]])
    outlines = [ring for piece in plane.pieces(region) for ring in plane.outlines_of(piece)]
    ends = np.vstack([ring[:-1] for ring in outlines]), np.vstack([ring[1:] for ring in outlines])
    t0, t1 = (across @ end.T for end in ends)
    s0, s1 = (along @ end.T for end in ends)
    u0, v0 = across @ hull.T, along @ hull.T
    u1, v1 = np.roll(u0, -1, axis=1), np.roll(v0, -1, axis=1)
    # a hull that turns counter-clockwise has its lee side where t rises
    low = np.maximum(np.minimum(t0, t1)[:, :, None], u0[:, None])
    high = np.minimum(np.maximum(t0, t1)[:, :, None], u1[:, None])
    d, i, j = np.nonzero(high > low)
    low, high, way = low[d, i, j], high[d, i, j], np.sign(t1 - t0)[d, i]

    edge = _Line(t0[d, i], s0[d, i], ((s1 - s0)[d, i] / (t1 - t0)[d, i]))
    lee = _Line(u0[d, j], v0[d, j], ((v1 - v0)[d, j] / (u1 - u0)[d, j]))
    first, last = edge.at(low) - lee.at(low), edge.at(high) - lee.at(high)
    crosses = first * last < 0.0
    share = np.where(crosses, first / np.where(crosses, first - last, 1.0), 1.0)
    cross = low + share * (high - low)
    sums = np.zeros((3, len(along)))
    for start, end in ((low, cross), (cross, high)):
        middle = 0.5 * (start + end)
        a, b, c = (np.minimum(edge.at(t), lee.at(t)) for t in (start, middle, end))
        # Simpson's rule is exact for what is at most cubic
        step = way * (end - start) / 6.0
        terms = (
            step * (a + 4.0 * b + c),
            step * (start * a + 4.0 * middle * b + end * c),
            step * (a * a + 4.0 * b * b + c * c) / 2.0,
        )
        sums += [np.bincount(d, term, len(along)) for term in terms]
    area, of_t, of_s = sums
    return area, of_t[:, None] * across + of_s[:, None] * along
