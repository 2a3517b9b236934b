"""Thrust on a wheel of blades, locked or spinning, along its axle.

``solidity`` is the area of all blades over that of the disc they sweep, any shape; above 1 (blades
that overlap) it counts as 1 on the disc.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import not_negative
from .signs import open_class, solid_from


def locked(solidity: ArrayLike) -> Array:
    """Return the thrust coefficient of a wheel that cannot turn, on its disc.

    The open sign's Cf times solidity; from 0.7 on 1.2. ValueError when the solidity is below 0.
    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-2; the disc's 1.2 is a judgement.
    """
    filled = np.minimum(not_negative("solidity", solidity), 1.0)
    return np.where(filled < solid_from(), open_class(filled), disc_coefficient())


def spinning(solidity: ArrayLike) -> Array:
    """Return the thrust coefficient of a wheel that may turn, on its disc: 1.2 at any solidity.

    Real wheels do not keep to momentum theory's 1.0, and take no less than a locked one.
    ValueError when the solidity is below 0. Source: judgement after Hoerner 1965 and Glauert 1926.
    """
    return np.maximum(locked(solidity), disc_coefficient())


@cache
def disc_coefficient() -> float:
    """Return the thrust coefficient on a whole disc. Source: as ``spinning``."""
    return float(references.table("wind/rotor_thrust").one("place", "disc")["coefficient"])


def blade_coefficient(solidity: ArrayLike) -> Array:
    """Return the coefficient of a locked wheel on the area of its blades: ``locked``/solidity.

    At no solidity the open sign's first class. ValueError when the solidity is below 0.
    """
    given = np.maximum(not_negative("solidity", solidity), 1e-9)
    return locked(given) / given
