"""Mean wind, turbulence and peak velocity pressure over five kinds of terrain: section 4."""

from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import not_negative, positive
from .constants import constant

OPEN_TERRAIN = "II"
"""The terrain for which the basic wind velocity is stated, 10 m up."""


class _Terrain(NamedTuple):
    z0: float
    z_min: float


def terrains() -> tuple[str, ...]:
    """Return the terrain categories, smoothest first. Source: EN 1991-1-4:2005 Table 4.1."""
    return tuple(row["category"] for row in references.table("wind/en1991_terrain").rows)


def description(terrain: str) -> str:
    """Return what a terrain category looks like, in a few words. ValueError for another."""
    _of(terrain)
    return references.table("wind/en1991_terrain").one("category", terrain)["description"]


def terrain_factor(terrain: str) -> float:
    """Return k_r = 0.19 (z_0/z_0,II)^0.07 of a terrain category.

    ValueError for another terrain. Source: EN 1991-1-4:2005 Eq. 4.5.
    """
    relative = _of(terrain).z0 / _of(OPEN_TERRAIN).z0
    return constant("terrain factor") * relative ** constant("terrain factor exponent")


def roughness_factor(height: ArrayLike, terrain: str) -> Array:
    """Return c_r = k_r ln(z/z_0) at ``height`` z above ground in m (any shape), from z_min up.

    Below z_min it is that of z_min. ValueError for another terrain or a height below 0 or above
    200 m. Source: EN 1991-1-4:2005 Eq. 4.4.
    """
    return terrain_factor(terrain) * _log_of_height(height, terrain)


def turbulence_intensity(
    height: ArrayLike, terrain: str, orography: ArrayLike = 1.0, turbulence: float | None = None
) -> Array:
    """Return I_v = k_I/(c_o ln(z/z_0)) at ``height`` z above ground in m.

    ``orography`` c_o and ``height`` broadcast; ``turbulence`` is k_I, by default the recommended 1.
    Errors as in ``roughness_factor``. Source: EN 1991-1-4:2005 Eq. 4.7.
    """
    k_I = constant("turbulence factor") if turbulence is None else turbulence
    return k_I / (positive("orography", orography) * _log_of_height(height, terrain))


def mean_speed(
    basic: ArrayLike, height: ArrayLike, terrain: str, orography: ArrayLike = 1.0
) -> Array:
    """Return v_m = c_r c_o v_b in the unit of ``basic`` v_b; all broadcast.

    Errors as in ``roughness_factor``. Source: EN 1991-1-4:2005 Eq. 4.3.
    """
    c_r = roughness_factor(height, terrain)
    return not_negative("speed", basic) * c_r * positive("orography", orography)


def peak_velocity_pressure(
    basic: ArrayLike,
    height: ArrayLike,
    terrain: str,
    orography: ArrayLike = 1.0,
    density: float | None = None,
    turbulence: float | None = None,
) -> Array:
    """Return q_p = (1 + 7 I_v) rho/2 v_m^2 in Pa; arrays broadcast.

    ``basic`` v_b in m/s is the 10-minute mean 10 m up over terrain II; ``height`` z in m;
    ``density`` rho in kg/m3, by default 1.25. Errors as in ``roughness_factor``.
    Source: EN 1991-1-4:2005 Eq. 4.8.
    """
    rho = recommended_air_density() if density is None else density
    I_v = turbulence_intensity(height, terrain, orography, turbulence)
    v_m = mean_speed(basic, height, terrain, orography)
    return (1.0 + constant("peak factor on turbulence") * I_v) * 0.5 * rho * v_m**2


def exposure_factor(height: ArrayLike, terrain: str) -> Array:
    """Return c_e = q_p/q_b, the peak pressure over that of the basic velocity, on level ground.

    Errors as in ``roughness_factor``. Source: EN 1991-1-4:2005 Eq. 4.9.
    """
    return peak_velocity_pressure(1.0, height, terrain) / (0.5 * recommended_air_density())


def gust_of_pressure(pressure: ArrayLike, density: float | None = None) -> Array:
    """Return the peak velocity v = sqrt(2 q_p/rho) in m/s of a peak pressure in Pa (any shape).

    Source: EN 1991-1-4:2005 Fig. 7.28 Note 2.
    """
    rho = recommended_air_density() if density is None else density
    return np.sqrt(2.0 * not_negative("pressure", pressure) / rho)


def recommended_air_density() -> float:
    """Return 1.25 kg/m3, as recommended. Source: EN 1991-1-4:2005 4.5 (1) Note 2."""
    return constant("air density")


def _log_of_height(height: ArrayLike, terrain: str) -> Array:
    z = not_negative("height", height)
    if np.any(z > constant("highest")):
        raise ValueError(f"height: found {z.max():g} m, expected at most {constant('highest'):g} m")
    ground = _of(terrain)
    return np.log(np.maximum(z, ground.z_min) / ground.z0)


@cache
def _of(terrain: str) -> _Terrain:
    known = terrains()
    if terrain not in known:
        expected = ", ".join(f'"{each}"' for each in known)
        raise ValueError(f'terrain: found "{terrain}", expected one of {expected}')
    row = references.table("wind/en1991_terrain").one("category", terrain)
    return _Terrain(float(row["z0_m"]), float(row["z_min_m"]))
