"""Straight pieces and strips in bending and shear: what a load does to a section."""

import numpy as np
from numpy.typing import ArrayLike

from ...loads.printed.ranges import not_negative, positive
from ...units.arrays import Array


def rectangle_modulus(width: ArrayLike, depth: ArrayLike) -> Array:
    """Return the section modulus S = b d^2/6 in m3 (…) of a rectangle.

    ``depth`` d (…) in m lies along the load, ``width`` b (…) square to it. ValueError unless both
    are above 0. Source: Wood Handbook FPL-GTR-190 (2010) 9-2, Table 9-2.
    """
    return positive("width", width) * positive("depth", depth) ** 2 / 6.0


def rectangle_inertia(width: ArrayLike, depth: ArrayLike) -> Array:
    """Return the moment of inertia I = b d^3/12 in m4 (…) of a rectangle.

    Arguments and errors as ``rectangle_modulus``. Source: as there.
    """
    return positive("width", width) * positive("depth", depth) ** 3 / 12.0


def round_inertia(across: ArrayLike, bore: ArrayLike = 0.0) -> Array:
    """Return the moment of inertia I = pi (D^4 - d^4)/64 in m4 (…) of a rod or tube.

    ``across`` D and ``bore`` d (…) in m. ValueError unless D is above 0 and d not below. Source:
    plane geometry, as in AISC Manual Table 17-27.
    """
    return np.pi / 64.0 * (positive("across", across) ** 4 - not_negative("bore", bore) ** 4)


def cantilever_deflection(
    force: ArrayLike, at: ArrayLike, length: ArrayLike, stiffness: ArrayLike
) -> Array:
    """Return how far in m (…) the tip of a cantilever moves under a force on it.

    F a^2 (3 L - a)/(6 E I): ``force`` F (…) in N acts ``at`` a (…) in m from the fixed end of
    ``length`` L (…) in m, or beyond it, where the tip moves by F L^2 (3 a - L)/(6 E I);
    ``stiffness`` E I (…) in N m2. ValueError unless lengths and stiffness are above 0 (a: 0 or
    more). Source: Wood Handbook FPL-GTR-190 (2010) Eq. 9-1 and Table 9-1; by superposition.
    """
    F, a = not_negative("force", force), not_negative("at", at)
    L = positive("length", length)
    near, far = np.minimum(a, L), np.maximum(a, L)
    return F * near**2 * (3.0 * far - near) / (6.0 * positive("stiffness", stiffness))
