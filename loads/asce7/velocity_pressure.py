"""Velocity pressure of ASCE/SEI 7, editions 7-16 and 7-22, and the factors in it."""

from collections.abc import Mapping
from functools import cache
from math import sqrt

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units import FOOT, PSF
from ...units.arrays import Array
from ..printed.ranges import not_negative
from ..wind.exposure import exposure_letter

EDITIONS = ("7-22", "7-16")

NOMINAL_TO_ULTIMATE = sqrt(1.0 / 0.6)
"""Ultimate over nominal wind speed (IBC 2012-2021 1609.3.1: V_asd = V_ult sqrt(0.6))."""

STRUCTURE_KINDS = {
    "square": "Chimneys, tanks & similar: square",
    "hexagonal": "Chimneys, tanks & similar: hexagonal",
    "octagonal": "Chimneys, tanks & similar: octagonal",
    "round": "Chimneys, tanks & similar: round",
    "sign": "Solid freestanding walls, solid freestanding and attached signs",
    "lattice": "Open signs and single-plane open frames (lattice framework)",
}
"""Kinds of part, and the row of ASCE/SEI 7 Table 26.6-1 that holds each one's Kd."""


def asce7_velocity_pressure(
    speed: ArrayLike,
    Kz: ArrayLike,
    Kzt: ArrayLike = 1.0,
    Ke: ArrayLike = 1.0,
    Kd: ArrayLike = 1.0,
) -> Array:
    """Return q_z = 0.613 Kz Kzt Ke Kd V^2 in Pa.

    ``speed`` V in m/s, a 3-s gust at 10 m over open country; all arguments broadcast. ``Kd`` stays
    1 for the q_z of edition 7-22, which has it in the force; edition 7-16 has it here.
    ValueError when the speed or a factor is below 0.
    Source: ASCE/SEI 7-22 Eq. 26.10-1.si and ASCE/SEI 7-16 Eq. 26.10-1.si.
    """
    V = not_negative("speed", speed)
    factors = not_negative("Kz", Kz) * not_negative("Kzt", Kzt)
    factors = factors * not_negative("Ke", Ke) * not_negative("Kd", Kd)
    return np.asarray(0.613 * factors * V**2)


def exposure_coefficient(height: ArrayLike, exposure: str, edition: str = "7-22") -> Array:
    """Return Kz at ``height`` above ground in m (any shape).

    Up to 15 ft the printed two digits of Table 26.10-1; above, the edition's own formula
    Kz = k (z/zg)^(2/alpha) of its Note 1, k from zg up, where the ground slows the wind no more.
    ``exposure`` is a letter or words of ``EXPOSURES``.
    ValueError for another exposure or edition or a height below 0.
    Source: ASCE/SEI 7-16 and 7-22 Tables 26.10-1 and 26.11-1.
    """
    z = not_negative("height", height)
    printed, k, zg, alpha, floor = _exposure_constants(exposure_letter(exposure), edition)
    return np.where(z <= floor, printed, k * (np.clip(z, floor, zg) / zg) ** (2.0 / alpha))


def highest(exposure: str, edition: str = "7-22") -> float:
    """Return the greatest height in m for which Note 1 of Table 26.10-1 states Kz.

    ValueError for another exposure or edition.
    Source: ASCE/SEI 7-22 Table 26.10-1 Note 1, 3,280 ft; of 7-16, zg of Table 26.11-1.
    """
    return float(_constants(exposure_letter(exposure), edition)["z_top_ft"]) * FOOT


def elevation_factor(elevation: ArrayLike) -> Array:
    """Return Ke = exp(-0.000119 z) for ground ``elevation`` above sea level in m (any shape).

    Source: ASCE/SEI 7-16 and 7-22 Table 26.9-1, Note 2. Taking 1 is permitted everywhere.
    """
    return np.exp(-0.000119 * np.asarray(elevation, dtype=float))


@cache
def directionality(kind: str, edition: str = "7-22") -> float:
    """Return Kd of a kind of part; 1.0 for a kind that the table does not name.

    Named are those of ``STRUCTURE_KINDS``. ValueError for an unknown edition.
    Source: ASCE/SEI 7-16 and 7-22 Table 26.6-1.
    """
    column = f"Kd_{_known(edition).replace('-', '_')}"
    if kind not in STRUCTURE_KINDS:
        return 1.0
    return float(
        references.table("wind/asce7_kd").one("structure_type", STRUCTURE_KINDS[kind])[column]
    )


@cache
def minimum_pressure() -> float:
    """Return the least design wind on other structures, in Pa on the projected area.

    16 psf at strength level, without G, Kd and Cf. Source: ASCE/SEI 7-16 and 7-22 29.7.
    """
    table = references.table("wind/asce7_cf_misc_other_structures")
    row = table.one("item", "minimum design wind, other structures")
    return float(row["value"].split(" psf")[0]) * PSF


def _known(edition: str) -> str:
    if edition not in EDITIONS:
        raise ValueError(f'edition: found "{edition}", expected "7-22" or "7-16"')
    return edition


@cache
def _exposure_constants(letter: str, edition: str) -> tuple[float, float, float, float, float]:
    """Return the printed Kz of the lowest row, k, zg (m), alpha and the lowest row's height (m)."""
    here = (edition, letter)
    constants = _constants(letter, edition)
    printed = next(
        float(row["Kz_table"])
        for row in references.table("wind/asce7_kz_table").rows
        if (row["edition"], row["exposure"]) == here and row["z_ft"].startswith("0-")
    )
    return (
        printed,
        float(constants["Kz_multiplier"]),
        float(constants["zg_ft"]) * FOOT,
        float(constants["alpha"]),
        float(constants["z_floor_ft"]) * FOOT,
    )


def _constants(letter: str, edition: str) -> Mapping[str, str]:
    here = (_known(edition), letter)
    return next(
        row
        for row in references.table("wind/asce7_exposure_constants").rows
        if (row["edition"], row["exposure"]) == here
    )
