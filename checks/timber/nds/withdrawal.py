"""What pulls a nail or screw straight out of the side grain, or its head through the wood.

NDS prints what a fastener may carry: reference values for allowable stress design, dry, under
ten years of load. The Wood Handbook prints what it carried on the average when it came out. They
also count specific gravity on different volumes, so one is never compared with the other as is.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.ranges import not_negative, positive
from ....units import INCH, POUND_FORCE, PSI
from ....units.arrays import Array
from .nds_numbers import nds_number

NDS_REFERENCE = "NDS reference"
HANDBOOK = "mean maximum"

_POUND_FORCE_PER_INCH = POUND_FORCE / INCH
"""In N/m."""


def mean_over_allowable() -> float:
    """Return the mean maximum load over the allowable one: 1380 is 6900/5, FPL Note 236 (1958)."""
    return nds_number("mean over allowable")


def reference_withdrawal(kind: str, diameter: ArrayLike, specific_gravity: ArrayLike) -> Array:
    """Return the reference withdrawal value W = k G^a D^b in N per m of what holds (…).

    ``kind`` is one of ``kinds()``. ``diameter`` D (…) in m: the shank of a nail, the nominal one
    of a screw. ``specific_gravity`` G (…) on oven-dry volume, of the piece that holds the point.
    What holds is the shank of a smooth nail, the thread of all others: see
    ``holding_length`` of ``terms/driven.py``.
    KeyError for another kind; ValueError unless D and G are above 0.
    Source: NDS 2018 Eq. 12.2-1 to 12.2-5, in lbf per in, with D in in.
    """
    return _per_length(NDS_REFERENCE, kind, diameter, specific_gravity)


def mean_withdrawal(kind: str, diameter: ArrayLike, gravity_at_12: ArrayLike) -> Array:
    """Return the mean load in N per m (…) at which fasteners came out of seasoned wood.

    As ``reference_withdrawal``, but half of them hold less: divide by ``mean_over_allowable``.
    ``gravity_at_12`` G (…) is oven-dry mass on the volume at 12 % moisture, some 5 % below that
    of NDS. ``kind`` is one of ``kinds(HANDBOOK)``. Raises as ``reference_withdrawal``.
    Source: Wood Handbook FPL-GTR-190 (2010) Eq. 8-1, 8-2, 8-10, 8-14.
    """
    return _per_length(HANDBOOK, kind, diameter, gravity_at_12)


def pull_through(
    head_diameter: ArrayLike, side_thickness: ArrayLike, specific_gravity: ArrayLike
) -> Array:
    """Return the reference value W_H in N (…) at which a round head is held by what it fastens.

    W_H = 690 pi D_H G^2 t up to t = 2.5 D_H, and no more beyond (1725 pi D_H^2 G^2), in lbf with
    ``head_diameter`` D_H (…) and ``side_thickness`` t (…) in in, both given in m here. Heads and
    washers wider than the widest that NDS tabulates count as that one. ``specific_gravity`` G (…)
    is that of the side member. ValueError unless D_H and G are above 0.
    Source: NDS 2018 12.2.5, Eq. 12.2-6a and 12.2-6b, Table 12.2F.
    """
    head = positive("head_diameter", head_diameter)
    t = not_negative("side_thickness", side_thickness)
    G = positive("specific_gravity", specific_gravity)
    D_H = np.minimum(head, _head_rule("greatest head") * INCH)
    t = np.minimum(t, _head_rule("thickness over head") * D_H)
    return _head_rule("coefficient") * PSI * np.pi * D_H * G**2 * t


def least_head() -> float:
    """Return the least diameter in m of a head for which pulling through is published."""
    return _head_rule("least head") * INCH


def mean_over_factor(mean: float) -> float:
    """Return the Wood Handbook's average in N over the stated factor."""
    return mean / mean_over_allowable()


def kinds(basis: str = NDS_REFERENCE) -> list[str]:
    """Return the kinds of fastener of a basis, ``NDS_REFERENCE`` or ``HANDBOOK``."""
    rows = references.table("wood/withdrawal_formulas").where("basis", basis)
    return [row["kind"] for row in rows]


def _per_length(basis: str, kind: str, diameter: ArrayLike, gravity: ArrayLike) -> Array:
    k, a, b = _law(basis, kind)
    G = positive("specific_gravity", gravity)
    D = positive("diameter", diameter) / INCH
    return _POUND_FORCE_PER_INCH * k * G**a * D**b


@cache
def _head_rule(rule: str) -> float:
    return float(references.table("wood/pull_through").one("rule", rule)["value"])


@cache
def _law(basis: str, kind: str) -> tuple[float, float, float]:
    """Return coefficient (lbf, in) and the exponents of G and D."""
    row = references.table("wood/withdrawal_formulas").one("law", f"{basis}, {kind}")
    k, a, b = (float(row[c]) for c in ("coefficient_inch_pound", "exponent_G", "exponent_D"))
    return k, a, b
