"""Straight beams in space: stiffness, what loads along them amount to at their ends, and sections.

Each beam has its own axes (3, 3): along it, then its section's first and second way, right-handed.
End forces and motions (12,) are those of the start, then of the end: three forces, three moments.
"""

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array
from ..units.frozen import ByIdentity


class Beams(ByIdentity, frozen=True):
    """Beams between nodes ``start`` and ``end`` (m,): ``axes`` (m, 3, 3), ``length`` (m,) in m.

    ``axial`` E A in N, ``bends`` (m, 2) E I in N m2 of bending along the first and the second way
    of the section (the first is bent by a force along the first way), ``twists`` G J in N m2.
    Straight and slender: Euler-Bernoulli, no shear deformation.
    """

    start: NDArray[np.intp]
    end: NDArray[np.intp]
    axes: Array
    length: Array
    axial: Array
    bends: Array
    twists: Array

    def stiffness(self) -> Array:
        """Return the stiffness (m, 12, 12) of each in its own axes.

        Source: matrix structural analysis, any textbook (McGuire, Gallagher & Ziemian 2000, 4.5).
        """
        L, m = self.length, len(self.length)
        K: Array = np.zeros((m, 12, 12))
        for a, b, k in ((0, 6, self.axial / L), (3, 9, self.twists / L)):
            K[:, a, a] = K[:, b, b] = k
            K[:, a, b] = K[:, b, a] = -k
        for (v, t), EI, way in (((1, 5), self.bends[:, 0], 1.0), ((2, 4), self.bends[:, 1], -1.0)):
            w, s = v + 6, t + 6
            shear, mixed = 12.0 * EI / L**3, way * 6.0 * EI / L**2
            K[:, v, v] = K[:, w, w] = shear
            K[:, v, w] = K[:, w, v] = -shear
            for moment in (t, s):
                K[:, v, moment] = K[:, moment, v] = mixed
                K[:, w, moment] = K[:, moment, w] = -mixed
            K[:, t, t] = K[:, s, s] = 4.0 * EI / L
            K[:, t, s] = K[:, s, t] = 2.0 * EI / L
        return K


def end_forces(first: Array, last: Array, length: Array) -> Array:
    """Return what a load along a beam amounts to at its ends (…, 12), in the beam's own axes.

    ``first`` and ``last`` (…, 4): the load per m at the start and at the end, linear between: three
    forces in N/m and a torque about the axis in N; ``length`` (…) in m. Exact for bending.
    Source: fixed-end forces of a trapezoidal load, L(7 p1 + 3 p2)/20 and L^2(3 p1 + 2 p2)/60.
    """
    L = length[..., None]
    p, q = first, last
    f: Array = np.zeros((*np.broadcast_shapes(p.shape, q.shape)[:-1], 12))
    for at, k in ((0, 0), (3, 3)):
        f[..., at] = length * (2.0 * p[..., k] + q[..., k]) / 6.0
        f[..., at + 6] = length * (p[..., k] + 2.0 * q[..., k]) / 6.0
    side = slice(1, 3)
    f[..., 1:3] = L * (7.0 * p[..., side] + 3.0 * q[..., side]) / 20.0
    f[..., 7:9] = L * (3.0 * p[..., side] + 7.0 * q[..., side]) / 20.0
    near = L**2 * (3.0 * p[..., side] + 2.0 * q[..., side]) / 60.0
    far = -(L**2) * (2.0 * p[..., side] + 3.0 * q[..., side]) / 60.0
    f[..., 5], f[..., 4] = near[..., 0], -near[..., 1]
    f[..., 11], f[..., 10] = far[..., 0], -far[..., 1]
    return f


def forces_along(ends: Array, first: Array, last: Array, length: Array, at: Array) -> Array:
    """Return the section forces (…, x, 6) of beams at ``at`` (x,) of their length, from 0 to 1.

    ``ends`` (…, 12) are the forces on the beam's ends; loads as ``end_forces``. The result is what
    the part beyond the section does to the part before it, in the beam's own axes: axial force
    (pulling above 0), the two shears, torque, moment about the first way, about the second.
    """
    s = at * length[..., None]
    L = length[..., None, None]
    p, q = first[..., None, :], last[..., None, :]
    x = s[..., None]
    slope = (q - p) / L
    total = p * x + slope * x**2 / 2.0
    arm = p * x**2 / 2.0 + slope * x**3 / 6.0
    near = ends[..., None, :6]
    out: Array = np.zeros((*np.broadcast_shapes(near.shape[:-1], total.shape[:-1]), 6))
    out[..., :4] = -near[..., :4] - total
    out[..., 5] = -near[..., 5] + near[..., 1] * x[..., 0] + arm[..., 1]
    out[..., 4] = -near[..., 4] - near[..., 2] * x[..., 0] - arm[..., 2]
    return out
