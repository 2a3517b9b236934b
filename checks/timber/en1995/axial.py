"""One fastener pulled along itself, by EN 1995-1-1: characteristic values in N."""

import numpy as np

from .lateral import MM
from .stuff import MPA, StrengthClass, en1995_number


def nail_depth_factor(depth: float, diameter: float) -> float:
    """Return what a smooth nail keeps that reaches ``depth`` m: t_pen/4d - 2 below 12 d, 0 below 8.

    Source: EN 1995-1-1:2004 8.3.2 (7).
    """
    reach = depth / diameter
    if reach < en1995_number("nail depth least") * (1.0 - 1.0e-9):
        return 0.0
    if reach >= en1995_number("nail depth in full"):
        return 1.0
    return reach / en1995_number("nail depth over") - en1995_number("nail depth less")


def nail_withdrawal(diameter: float, depth: float, density: float, wet: bool) -> float:
    """Return F_ax,Rk in N of a smooth nail's point; ``wet``: driven near fibre saturation.

    ``diameter`` and ``depth`` in m, rho_k in kg/m3.
    Source: EN 1995-1-1:2004 8.3.2 (4) to (8), Eq. 8.24 and 8.25.
    """
    strength = MPA * en1995_number("withdrawal nail") * density**2
    strength *= en1995_number("driven wet") if wet else 1.0
    return strength * diameter * depth * nail_depth_factor(depth, diameter)


def head_pull_through(head: float, density: float, wet: bool) -> float:
    """Return F_head,Rk in N of a head so many m across: 70e-6 rho_k^2 d_h^2.

    Source: EN 1995-1-1:2004 8.3.2, Eq. 8.24 and 8.26.
    """
    strength = MPA * en1995_number("head nail") * density**2
    return strength * head**2 * (en1995_number("driven wet") if wet else 1.0)


def screw_withdrawal(diameter: float, thread: float, density: float, count: int) -> float:
    """Return F_ax,Rk in N of one of ``count`` screws, ``thread`` m of it in the wood across grain.

    ``diameter`` in m across the thread. Source: EN 1995-1-1:2004/A1:2008 8.7.2, Eq. 8.38 and 8.39.
    """
    d, length = diameter / MM, thread / MM
    if length <= 0.0:
        return 0.0
    strength = en1995_number("withdrawal screw")
    strength *= d ** en1995_number("withdrawal screw diameter")
    strength *= length ** en1995_number("withdrawal screw length")
    strength *= density ** en1995_number("withdrawal screw density")
    together = count ** (en1995_number("screws together") - 1.0)
    return strength * d * length * min(d / en1995_number("screw in full from mm"), 1.0) * together


def under_washer(across: float, hole: float, wood: StrengthClass) -> float:
    """Return F_ax,Rk in N of a bolt whose washer, ``across`` m wide, bears on wood round a hole.

    Source: EN 1995-1-1:2004 8.5.2 (2).
    """
    area = np.pi / 4.0 * max(across**2 - hole**2, 0.0)
    return float(en1995_number("bearing under washers") * wood.across * area)
