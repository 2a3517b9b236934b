"""Bolts set into a slab: the cone of concrete that a pull breaks out."""

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import not_negative
from ....materials.holding_rules import value
from ....units.arrays import Array


def breakout_strength(embedded: ArrayLike, concrete: ArrayLike | None = None) -> Array:
    """Return N_b = k_c sqrt(f'c) h_ef^1.5 in N, in cracked concrete away from edges.

    ``embedded`` h_ef in m, ``concrete`` strength f'c in Pa (without one that of an old slab); both
    broadcast. It bounds a level pull as well (pry-out, k_cp = 1). Ultimate: the factor is 4, and
    the bolt maker's own allowable load governs where it is lower. ValueError when one is below 0.
    Source: ACI 318M-19 17.6.2.2.1 and 17.7.3 (N, mm, MPa), k_c 7 for bolts set later.
    """
    f = value("slab bolt", "concrete strength") if concrete is None else concrete
    MPa = not_negative("concrete", f) / 1.0e6
    mm = 1000.0 * not_negative("embedded", embedded)
    return np.asarray(value("slab bolt", "breakout factor") * np.sqrt(MPa) * mm**1.5)
