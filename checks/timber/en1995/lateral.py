"""One fastener pushed sideways: embedment, yield moment and Johansen's modes of EN 1995-1-1.

Everything in SI; the equations of the standard in N and mm are turned at the door.
"""

from collections.abc import Mapping

import numpy as np
from numpy.typing import ArrayLike

from ....loads.printed.ranges import positive
from ....units.arrays import Array
from .stuff import MPA, Wood, en1995_number

MM = 1.0e-3


def is_large(diameter: float) -> bool:
    """Return whether a screw or bolt of a diameter in m follows the rules of bolts (8.7.1)."""
    return diameter / MM > en1995_number("large from mm") * (1.0 + 1.0e-9)


def embedment_strength(
    wood: Wood, diameter: float, thickness: float, bolt: bool, angle: float = np.pi / 2.0
) -> float:
    """Return f_h,k in Pa of a push at an ``angle`` in rad to the grain, without lead holes.

    ``diameter`` and ``thickness`` of the piece in m; ``bolt``: by the rules of bolts, else nails,
    which bear alike whichever way they are pushed.
    Source: EN 1995-1-1:2004 Eq. 8.15, 8.20, 8.22, 8.31 to 8.33, 8.36, 8.37.
    """
    d, t = diameter / MM, thickness / MM
    large = 1.0 - en1995_number("embedding less by diameter") * d
    if wood.stuff == "OSB":
        kind = "embedding OSB large" if bolt else "embedding OSB small"
        by_d, by_t = (en1995_number(f"{kind} {size}") for size in ("diameter", "thickness"))
        return MPA * en1995_number(kind) * d**by_d * t**by_t
    small = d ** en1995_number("embedding small exponent")
    if wood.stuff == "plywood":
        share = large if bolt else small
        return MPA * en1995_number("embedding plywood") * share * wood.density
    if not bolt:
        return MPA * en1995_number("embedding small") * small * wood.density
    hard = "hardwood" if wood.hardwood else "softwood"
    k90 = (
        en1995_number(f"embedding across {hard}")
        + en1995_number("embedding across by diameter") * d
    )
    along = MPA * en1995_number("embedding large") * large * wood.density
    return along / (k90 * np.sin(angle) ** 2 + np.cos(angle) ** 2)


def in_a_row(count: int, apart: float, diameter: float, bolt: bool) -> float:
    """Return n_ef/n of ``count`` fasteners in one row along the grain, ``apart`` m each.

    Bolts n^-0.1 (a_1/13d)^0.25, nails and small screws n^(k_ef - 1) with k_ef from 0.7 at 7 d to 1
    at 14 d; at most 1. Source: EN 1995-1-1:2004 8.3.1.1 (8), Table 8.1, and 8.5.1.1 (4), Eq. 8.34.
    """
    if count <= 1 or np.isinf(apart):
        return 1.0
    over = apart / diameter
    if bolt:
        full = (over / en1995_number("row in full")) ** en1995_number("row by spacing")
        return min(count ** (en1995_number("row of bolts") - 1.0) * full, 1.0)
    steps = [float(name.split()[2]) for name in _NAIL_ROWS]
    kept = [en1995_number(name) for name in _NAIL_ROWS]
    return float(count ** (np.interp(over, steps, kept) - 1.0))


_NAIL_ROWS = ("nails at 7", "nails at 10", "nails at 14")


def yield_moment(diameter: float, kind: str) -> float:
    """Return M_y,Rk in N m of a "nail", "screw", "bolt" or "staple" leg of a diameter in m.

    Of a screw the effective one, 1.1 times its root. Source: EN 1995-1-1:2004 Eq. 8.14, 8.29, 8.30.
    """
    d = diameter / MM
    if kind == "staple":
        power = en1995_number("yield moment staple exponent")
        return MM * en1995_number("yield moment staple") * d**power
    strength = en1995_number(f"tensile strength {kind}")
    return (
        MM * en1995_number("yield moment") * strength * d ** en1995_number("yield moment exponent")
    )


def johansen(
    diameter: ArrayLike,
    side: ArrayLike,
    main: ArrayLike,
    side_embedment: ArrayLike,
    main_embedment: ArrayLike,
    moment: ArrayLike,
) -> Mapping[str, Array]:
    """Return the Johansen part of F_v,Rk in N (…) by mode, in single shear of two pieces of wood.

    ``diameter`` d, ``side`` t_1 and ``main`` t_2 in m, f_h,1,k and f_h,2,k in Pa, M_y,Rk in N m.
    The modes as NDS names them: (a) Is, (b) Im, (c) II, (d) IIIs, (e) IIIm, (f) IV. They broadcast.
    ValueError unless all are above 0. Source: EN 1995-1-1:2004 8.2.2, Eq. 8.6.
    """
    d, t1, t2 = positive("diameter", diameter), positive("side", side), positive("main", main)
    f1, M = positive("side_embedment", side_embedment), positive("moment", moment)
    beta, r = positive("main_embedment", main_embedment) / f1, t2 / t1
    one, both = en1995_number("hinge in one"), en1995_number("hinge in both")
    turned = np.sqrt(beta + 2.0 * beta**2 * (1.0 + r + r**2) + beta**3 * r**2) - beta * (1.0 + r)

    def bends(t: Array, near: Array, level: Array) -> Array:
        inner = 2.0 * level * (1.0 + beta) + 4.0 * beta * near * M / (f1 * d * t**2)
        return one * f1 * t * d / near * (np.sqrt(inner) - beta)

    return {
        "Im": f1 * beta * t2 * d,
        "Is": f1 * t1 * d,
        "II": f1 * t1 * d / (1.0 + beta) * turned,
        "IIIm": bends(t2, 1.0 + 2.0 * beta, beta**2),
        "IIIs": bends(t1, 2.0 + beta, beta),
        "IV": both * np.sqrt(2.0 * beta / (1.0 + beta)) * np.sqrt(2.0 * M * f1 * d),
    }


def under_plate(
    diameter: float, depth: float, plate: float, embedded: float, moment: float
) -> Mapping[str, float]:
    """Return the Johansen part of F_v,Rk in N by mode, under a steel ``plate`` so many m thick.

    ``depth`` t_1 of the wood in m; the rest as ``johansen``. A thin plate to half of d, a thick one
    from d, linear between. Source: EN 1995-1-1:2004 8.2.3, Eq. 8.9 and 8.10.
    """
    f, d, t, M = embedded, diameter, depth, moment
    thin = {
        "Im": en1995_number("thin plate bearing") * f * t * d,
        "IIIm": en1995_number("hinge in both") * np.sqrt(2.0 * M * f * d),
    }
    thick = {
        "Im": f * t * d,
        "IIIm": f * t * d * (np.sqrt(2.0 + 4.0 * M / (f * d * t**2)) - 1.0),
        "IV": en1995_number("thick plate bends") * np.sqrt(M * f * d),
    }
    start = en1995_number("thin plate over diameter")
    share = float(np.clip((plate / d - start) / (1.0 - start), 0.0, 1.0))
    mode = (
        min(thick, key=lambda one: thick[one]) if share >= 0.5 else min(thin, key=thin.__getitem__)
    )
    return {mode: (1.0 - share) * min(thin.values()) + share * min(thick.values())}
