"""Screw anchors and plates in the ground: the pull that draws them out, ultimate."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative, positive
from ....materials.holding_rules import value
from ....units.arrays import Array


def bearing_strength(
    area: ArrayLike, strength: ArrayLike, Nc: ArrayLike, overburden: ArrayLike, Nq: ArrayLike
) -> Array:
    """Return Q_u = sum of A_h (c N_c + q N_q) in N over the helices, the last axis.

    ``area`` A_h (…, helices) in m2, ``strength`` c (undrained) and ``overburden`` q in Pa at each
    helix; all broadcast. ValueError when one is below 0.
    Source: bearing of the single helices (Bowles 1988); ICC-ES AC358 for individual bearing.
    """
    A, c = not_negative("area", area), not_negative("strength", strength)
    q = not_negative("overburden", overburden)
    each = A * (c * not_negative("Nc", Nc) + q * not_negative("Nq", Nq))
    return np.asarray(each).sum(axis=-1)


def clay_factor(depth: ArrayLike, width: ArrayLike) -> Array:
    """Return N_c: 9 from 5 widths of depth on, in proportion to depth above (judgement).

    ``depth`` and ``width`` of the plate in m, broadcast. ValueError when depth is below 0 or width
    not above 0. Source: helical screw foundation manual quoting Bowles 1988.
    """
    relative = not_negative("depth", depth) / positive("width", width)
    share = np.minimum(relative / value("screw anchor", "deep from"), 1.0)
    return np.asarray(value("screw anchor", "bearing factor") * share)


def sand_factor(
    depth: ArrayLike,
    width: ArrayLike,
    length: ArrayLike,
    Ku_tan_phi: ArrayLike,
    shape: ArrayLike,
) -> Array:
    """Return N_q = 1 + H (2 s B + L - B) Ku tan(phi)/(B L), uplift of a shallow plate in sand.

    ``depth`` H, ``width`` B and ``length`` L of the plate in m, ``shape`` s (`sand_shape`); the
    pull is N_q gamma H B L. All broadcast. ValueError when a size is not above 0, or H, s or
    Ku tan(phi) is below 0. Source: Meyerhof and Adams 1968.
    """
    H, B, L = not_negative("depth", depth), positive("width", width), positive("length", length)
    s = not_negative("shape", shape)
    side = H * (2.0 * s * B + L - B)
    return np.asarray(1.0 + side * not_negative("Ku_tan_phi", Ku_tan_phi) / (B * L))


def sand_shape(depth: ArrayLike, width: ArrayLike) -> Array:
    """Return s = 1 + m H/B of medium dense sand (30 degrees), H counted to 4 B (same source)."""
    relative = not_negative("depth", depth) / positive("width", width)
    counted = np.minimum(relative, value("plate in sand", "greatest depth"))
    return np.asarray(1.0 + value("plate in sand", "shape growth") * counted)


def sand_strength(depth: ArrayLike, helix: ArrayLike, unit_weight: ArrayLike) -> Array:
    """Return the pull in N that draws a helix of diameter ``helix`` in m out of sand.

    N_q gamma H B2 of the square of the same area, in medium dense sand (30 degrees); ``depth`` H in
    m counts to 4 B, ``unit_weight`` gamma in N/m3 (buoyant where saturated). All broadcast. Errors
    and source as in ``sand_factor``.
    """
    B = np.sqrt(np.pi / 4.0) * positive("helix", helix)
    H = np.minimum(not_negative("depth", depth), value("plate in sand", "greatest depth") * B)
    phi = value("plate in sand", "friction angle")
    Ku_tan_phi = value("plate in sand", "uplift coefficient") * np.tan(phi)
    Nq = sand_factor(H, B, B, Ku_tan_phi, sand_shape(H, B))
    return np.asarray(Nq * not_negative("unit_weight", unit_weight) * H * B**2)


def torque_strength(torque: ArrayLike, factor: ArrayLike | None = None) -> Array:
    """Return Q_u = K_t T in N from the installing ``torque`` T in N m.

    ``factor`` K_t in 1/m; without one 10 1/ft, that of a 1 1/2 in square shaft. Observed are 3 to
    20 1/ft. All broadcast. ValueError when one is below 0. Source: ICC-ES AC358.
    """
    Kt = value("screw anchor", "torque factor") if factor is None else factor
    return np.asarray(not_negative("factor", Kt) * not_negative("torque", torque))


def helix_area(helix: ArrayLike, shaft: ArrayLike) -> Array:
    """Return A_h = pi (D2 - d2)/4 in m2 of a helix of diameter D on a shaft of diameter d, in m."""
    D, d = positive("helix", helix), not_negative("shaft", shaft)
    if np.any(d >= D):
        raise ValueError("shaft: expected thinner than the helix")
    return np.asarray(np.pi * (D**2 - d**2) / 4.0)
