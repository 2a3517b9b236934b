"""The density of wood at a moisture content, between its bases of specific gravity.

Moisture content is the mass of water over the oven-dry mass (0.12 is 12 %). Densities in kg/m3.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .. import references
from ..units.arrays import Array

WATER = 1000.0
"""Density of water in kg/m3 as the Wood Handbook takes it."""


def gravity_at(basic_gravity: ArrayLike, moisture: ArrayLike) -> Array:
    """Return the specific gravity G_x: oven-dry mass over the volume at moisture x.

    ``basic_gravity`` (…) is G_b, on green volume; ``moisture`` (…) is x. Above fibre saturation
    wood swells no more, and G_x is G_b. Raises nothing. Source: Wood Handbook FPL-GTR-190 (2010)
    ch. 4 eq. 4-10: G_x = G_b / (1 - 0.265 G_b (1 - x/30)), x in percent.
    """
    G = np.asarray(basic_gravity)
    return G / (1.0 - _number("swelling") * G * _dryness(moisture))


def density_at(basic_gravity: ArrayLike, moisture: ArrayLike) -> Array:
    """Return the density (…) in kg/m3 of wood of green-volume gravity G_b (…) at moisture x (…).

    Raises nothing. Source: Wood Handbook FPL-GTR-190 (2010) ch. 4 eq. 4-12:
    rho = rho_w G_x (1 + x).
    """
    return WATER * gravity_at(basic_gravity, moisture) * (1.0 + np.asarray(moisture))


def basic_gravity(density: ArrayLike, moisture: ArrayLike) -> Array:
    """Return the green-volume gravity G_b (…) of wood that weighs ``density`` (…) at moisture x.

    The inverse of `density_at`. Raises nothing. Source: as there.
    """
    gravity = np.asarray(density) / (WATER * (1.0 + np.asarray(moisture)))
    return gravity / (1.0 + _number("swelling") * gravity * _dryness(moisture))


@cache
def _number(name: str) -> float:
    """Return a number of these equations by its name in references/wood/moisture_equations.csv."""
    return float(references.table("wood/moisture_equations").one("name", name)["value"])


def _dryness(moisture: ArrayLike) -> Array:
    """Return 1 - x/30, 0 from fibre saturation on (…)."""
    return np.maximum(1.0 - 100.0 * np.asarray(moisture) / _number("fibre saturation"), 0.0)
