"""How stiff fasteners, pressed wood and the ground are, and by how much that is not known."""

from collections.abc import Mapping
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .. import references
from ..loads.printed.ranges import positive
from ..units.arrays import Array

AXIAL, LATERAL, BED, SOIL = "axial", "lateral", "bed", "ground"
"""Classes of springs whose stiffness is taken as unknown together."""

SETS: Mapping[str, Mapping[str, float]] = {
    "as read": {},
    "all stiffer": {AXIAL: 3.0, LATERAL: 3.0},
    "all softer": {AXIAL: 1.0 / 3.0, LATERAL: 1.0 / 3.0},
    "pulled stiffer": {AXIAL: 3.0, LATERAL: 1.0 / 3.0},
    "pushed stiffer": {AXIAL: 1.0 / 3.0, LATERAL: 3.0},
    "beds stiffer": {BED: 10.0, SOIL: 10.0},
    "beds softer": {BED: 0.1, SOIL: 0.1},
}
"""Sets of stiffness that every answer is tried with: factors on each class of springs."""

SOFTEST = "all softer"
SOFT = SETS[SOFTEST]
"""The one of these in which joints are as soft as they may be."""

SWAYS: Mapping[str, float] = {AXIAL: 1.0 / 3.0, LATERAL: 1.0 / 3.0, SOIL: 1000.0}
"""The set by which a piece sways most on ground that does not give."""


@cache
def stiffness_rule(rule: str) -> float:
    """Return a rule of ``references/statics.csv`` by its name, in SI. KeyError for another."""
    return float(references.table("statics").one("rule", rule)["value"])


def slip_modulus(
    kind: str, diameter: ArrayLike, first: ArrayLike, second: ArrayLike, *, lead_holes: bool = False
) -> Array:
    """Return K_u in N/m (…) of one fastener pushed sideways, for one shear plane.

    ``kind`` is "nail", "staple", "bolt" or a screw; ``diameter`` (…) in m, ``first`` and ``second``
    the mean densities (…) in kg/m3 of what it joins, rho_m = sqrt(rho_1 rho_2). Two thirds of
    K_ser. ValueError unless above 0. Source: EN 1995-1-1:2004 Table 7.1 and Eq. 2.1.
    """
    d = positive("diameter", diameter) * 1000.0
    rho = np.sqrt(positive("first", first) * positive("second", second))
    driven = kind in ("nail", "staple") and not lead_holes
    power = stiffness_rule("power of nail diameter") if driven else 1.0
    over = stiffness_rule(f"slip of {kind}s" if driven else "slip of dowels")
    K_ser = rho ** stiffness_rule("power of density") * d**power / over
    return K_ser * 1000.0 * stiffness_rule("ultimate slip")


def axial_stiffness(diameter: ArrayLike, length: ArrayLike) -> Array:
    """Return K_ax in N/m (…) of a screw drawn along itself: 25 d l, ``length`` of thread in m.

    ValueError unless above 0. Source: European technical approvals of screws (memory).
    """
    d, threaded = positive("diameter", diameter), positive("length", length)
    return stiffness_rule("axial stiffness of screws") * d * threaded * 1.0e9


def pressed_stiffness(modulus: ArrayLike, depth: ArrayLike) -> Array:
    """Return E/depth in Pa/m (…): the pressure over how far wood ``depth`` m deep gives.

    ValueError unless above 0. Source: elasticity.
    """
    return positive("modulus", modulus) / positive("depth", depth)


def torsion_constant(first: float, second: float, *, is_round: bool, wall: float | None) -> float:
    """Return J in m4 of a section: solid or hollow, round or rectangular.

    Source: pi (D^4 - d^4)/32; a b^3 (1/3 - 0.21 b/a (1 - b^4/12 a^4)); 2 t b^2 h^2/(b + h) of a
    tube (Roark's Formulas, table of torsion).
    """
    long, short = max(first, second), min(first, second)
    if is_round:
        bore = 0.0 if wall is None else first - 2.0 * wall
        return float(np.pi / 32.0 * (first**4 - bore**4))
    if wall is not None:
        b, h = first - wall, second - wall
        return 2.0 * wall * b**2 * h**2 / (b + h)
    ratio = short / long
    return long * short**3 * (1.0 / 3.0 - 0.21 * ratio * (1.0 - ratio**4 / 12.0))
