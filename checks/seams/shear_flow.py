"""The seams of a body of flat panels: what runs along them, and what pulls at them.

The section is a thin-walled regular polygon or rectangle, measured at the middle of its wall, in
bending as a whole. Every seam of a polygon is alike; the one that a force loads most lies square to
it. Those of a rectangle carry what a force does along each of its sides.
"""

import numpy as np
from numpy.typing import ArrayLike

from ...loads.printed.ranges import not_negative, positive
from ...units.arrays import Array


def polygon_inertia(sides: ArrayLike, apothem: ArrayLike, wall: ArrayLike) -> Array:
    """Return the moment of inertia in m4 (…) of a thin-walled regular polygon, any axis alike.

    I = n t a^3 tan(pi/n) (1 + tan^2(pi/n)/3) with ``apothem`` a to the middle of a ``wall`` t, in
    m (…), and ``sides`` n (…). ValueError unless sizes are above 0. Source: plane geometry, half
    of the sum of r^2 t along the wall; the thin tube's pi t a^3 for many sides.
    """
    n, a, t = np.asarray(sides, dtype=float), positive("apothem", apothem), positive("wall", wall)
    tangent = np.tan(np.pi / n)
    return n * t * a**3 * tangent * (1.0 + tangent**2 / 3.0)


def polygon_first_moment(sides: ArrayLike, apothem: ArrayLike, wall: ArrayLike) -> Array:
    """Return the first moment of area Q in m3 (…) of what a cut through two opposite seams leaves.

    Q = 2 t a^2/cos(pi/n), about the line through both seams, on which the force stands square;
    of an odd number of sides, twice what leads to that seam. Arguments and errors as
    ``polygon_inertia``. Source: plane geometry, by adding up the sides.
    """
    n, a, t = np.asarray(sides, dtype=float), positive("apothem", apothem), positive("wall", wall)
    return 2.0 * t * a**2 / np.cos(np.pi / n)


def rectangle_shares(sides: Array, walls: Array) -> Array:
    """Return Q/(2 I) in 1/m (2,) at the corners of a thin-walled rectangle, for a force each way.

    Of ``sides`` (2,) in m along x and y to the middle of the walls; ``walls`` (2,) in m are how
    thick those are that stand square to x and to y. The wall square to the force lies beyond the
    cut: Q = t W L/2 and I = 2 (t W (L/2)^2 + t' L^3/12). ValueError unless all are above 0.
    Source: plane geometry.
    """
    L, t = positive("sides", sides), positive("walls", walls)
    W, other = L[::-1], t[::-1]
    inertia = 2.0 * (t * W * (L / 2.0) ** 2 + other * L**3 / 12.0)
    return t * W * L / 2.0 / (2.0 * inertia)


def shear_flow(shear: ArrayLike, first_moment: ArrayLike, inertia: ArrayLike) -> Array:
    """Return the shear flow V Q/(2 I) in N/m (…) along each of the two seams that a cut opens.

    ``shear`` V (…) in N, ``first_moment`` Q (…) in m3 of what lies beyond the cut and ``inertia`` I
    (…) in m4. ValueError for a negative force, or sizes not above 0.
    Source: beam theory (Jourawski), as for the spacing of fasteners in built-up beams.
    """
    Q, inertia_ = positive("first_moment", first_moment), positive("inertia", inertia)
    return not_negative("shear", shear) * Q / (2.0 * inertia_)


def leaning_shear(
    shear: ArrayLike, moment: ArrayLike, lean: ArrayLike, apothem: ArrayLike
) -> Array:
    """Return V + M tan(alpha)/a in N (…): what a wall that leans has to carry across itself.

    Pull and push along walls that lean outward by ``lean`` tan(alpha) (…) have a level part that
    goes with the force; where they lean inward, ``lean`` below 0, against it. ``shear`` V (…) in N
    and ``moment`` M (…) in N m with their signs, ``apothem`` a (…) in m to the middle of the wall.
    ValueError unless ``apothem`` is above 0. Source: statics; what half of the wall pulls, M Q/I,
    grows down the wall by 2 q for each m, with Q/I as 1/a.
    """
    a = positive("apothem", apothem)
    V, M, tangent = (np.asarray(each, dtype=float) for each in (shear, moment, lean))
    return V + M * tangent / a


def twist_flow(torque: ArrayLike, enclosed: ArrayLike) -> Array:
    """Return the shear flow T/(2 A) in N/m (…) all round a closed wall that is twisted.

    ``torque`` T (…) in N m, ``enclosed`` area A (…) in m2 within the middle of the wall.
    ValueError for a negative torque, or an area not above 0. Source: Bredt's first formula.
    """
    return not_negative("torque", torque) / (2.0 * positive("enclosed", enclosed))


def edge_pull(pressure: ArrayLike, width: ArrayLike) -> Array:
    """Return the pull p s/2 in N/m (…) at each long edge of a panel under even ``pressure`` p (…).

    ``width`` s (…) in m from seam to seam; p in Pa. ValueError below 0. Source: statics.
    """
    return not_negative("pressure", pressure) * not_negative("width", width) / 2.0


def hoop_pull(pressure: ArrayLike, width: ArrayLike, half_angle: ArrayLike) -> Array:
    """Return the pull p s/(2 tan(half)) in N/m (…) in the plane of panels, square to a seam.

    At a corner the ``edge_pull`` of one panel leans on the next, which has to pull it back within
    its own plane: in a regular body p times the apothem, as in the wall of a round tank.
    ``half_angle`` (…) in rad is half of that by which the wall turns there, pi/n; all panels under
    the same ``pressure`` p (…) outward; other arguments and errors as ``edge_pull``.
    Source: statics, equilibrium of a corner.
    """
    return edge_pull(pressure, width) / np.tan(np.asarray(half_angle, dtype=float))
