"""Posts in the ground: the depth that a level load asks for, and the load that a depth holds.

Free: nothing holds the post at the surface. Constrained: a rigid floor or pavement does. The
allowable lateral pressure grows with depth, so each depth is found together with its pressure.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .... import references, units
from ....loads.printed.ranges import not_negative, positive
from ....materials.grounds import Ground
from ....units.arrays import Array

_ROUNDS = 40


def depth_free(
    force: ArrayLike, height: ArrayLike, lateral_bearing: ArrayLike, width: ArrayLike
) -> Array:
    """Return d = 0.5 A (1 + sqrt(1 + 4.36 h/A)) in m, with A = 2.34 P/(S1 b).

    ``force`` P in N acts level at ``height`` h above the ground in m; ``lateral_bearing`` in Pa
    per m of depth, so that S1 is that at one third of the depth d that is found, counted to 12 ft;
    ``width`` b in m, the diameter of a round post or the diagonal of a square one. All broadcast.
    ValueError when bearing or width is not above 0, or another is below 0.
    Source: IBC 2012-2021 1807.3.2.1, Eq. 18-1.
    """
    P, h, s, b = _arguments("force", force, height, lateral_bearing, width)
    # S1 = s d/3 makes Eq. 18-1 the cubic d3 - K d - 1.09 h K = 0, convex from here down to its root
    lever = _rule("free slope") / 4.0  # the 1.09 of the cubic
    K = 3.0 * _rule("free") * P / (s * b)
    d = np.sqrt(K) + np.cbrt(lever * h * K)
    for _ in range(_ROUNDS):
        slope = 3.0 * d**2 - K
        d = d - (d**3 - K * d - lever * h * K) / np.where(slope > 0.0, slope, 1.0)
    deep = depth_under_pressure(P, h, s * most_counted() / 3.0, b)
    return np.where(d > most_counted(), deep, d)


def depth_under_pressure(
    force: ArrayLike, height: ArrayLike, pressure: ArrayLike, width: ArrayLike
) -> Array:
    """Return d = 0.5 A (1 + sqrt(1 + 4.36 h/A)) in m, A = 2.34 P/(S1 b), of a given S1 in Pa.

    Only where ``pressure`` S1 is known to be that at a third of the depth that comes out; else
    `depth_free` finds both. The rest as there.
    """
    P, h, S1, b = _arguments("force", force, height, pressure, width)
    A = _rule("free") * P / (S1 * b)
    slope = _rule("free slope") * h / np.where(A > 0.0, A, 1.0)
    return np.asarray(0.5 * A * (1.0 + np.sqrt(1.0 + slope)))


def depth_constrained(moment: ArrayLike, lateral_bearing: ArrayLike, width: ArrayLike) -> Array:
    """Return d = sqrt(4.25 P h/(S3 b)) in m of a post held at the surface by a rigid pavement.

    ``moment`` P h (or M_g at the surface) in N m; S3 is the pressure at the depth found, counted
    to 12 ft; the rest as in ``depth_free``. Source: IBC 2012-2021 1807.3.2.2, Eq. 18-2 and 18-3.
    """
    M = not_negative("moment", moment)
    s, b = positive("lateral_bearing", lateral_bearing), positive("width", width)
    cube = _rule("constrained") * M / (s * b)
    return np.asarray(np.maximum(np.cbrt(cube), np.sqrt(cube / most_counted())))


def force_free(
    depth: ArrayLike, height: ArrayLike, lateral_bearing: ArrayLike, width: ArrayLike
) -> Array:
    """Return the level force P in N that a post of ``depth`` d in m holds; inverse of `depth_free`.

    A = d2/(d + 1.09 h), P = A S1 b/2.34. Arguments, errors and source as there; 0 at no depth.
    """
    used = used_free(depth, 1.0, height, lateral_bearing, width)
    return np.where(np.isfinite(used), 1.0 / np.where(used > 0.0, used, 1.0), 0.0)


def used_free(
    depth: ArrayLike,
    force: ArrayLike,
    moment: ArrayLike,
    lateral_bearing: ArrayLike,
    width: ArrayLike,
) -> Array:
    """Return the part of a free post's hold that is used (…): 2.34 (P d + 1.09 M)/(d2 S1 b).

    Eq. 18-1 solved for the load, with ``moment`` M = P h at the surface in N m, so that a moment
    without a force counts too; passing at 1. Arguments, errors and source as `depth_free`.
    Infinite at no depth.
    """
    d, M, s, b = _arguments("depth", depth, moment, lateral_bearing, width)
    P = not_negative("force", force)
    S1 = s * np.minimum(d, most_counted()) / 3.0
    holds = d**2 * S1 * b
    asked = _rule("free") * (P * d + _rule("free slope") / 4.0 * M)
    return np.where(holds > 0.0, asked / np.where(holds > 0.0, holds, 1.0), np.inf)


def moment_constrained(depth: ArrayLike, lateral_bearing: ArrayLike, width: ArrayLike) -> Array:
    """Return the moment P h in N m that ``depth`` d in m holds; inverse of `depth_constrained`."""
    d = not_negative("depth", depth)
    s, b = positive("lateral_bearing", lateral_bearing), positive("width", width)
    return np.asarray(d**2 * s * np.minimum(d, most_counted()) * b / _rule("constrained"))


def lateral_bearing(ground: Ground, doubled: bool = False) -> float | None:
    """Return a ground's allowable lateral pressure in Pa per m of depth; None beneath paving.

    The presumptive value of its class; of wet ground less, in proportion as it bears less than its
    class does (judgement). ``doubled`` only for an isolated pole that may move 1/2 in at the ground
    without harm. Source: IBC 2012 Table 1806.2; doubling: IBC 1806.3.4.
    """
    if ground.ibc_class is None:
        return None
    rows = references.table("ground/ibc_presumptive_soil").rows
    row = next(row for row in rows if row["class"].startswith(f"{ground.ibc_class} "))
    presumptive = float(row["vertical_psf"]) * units.factor("psf")
    share = min(ground.allowable_pressure / presumptive, 1.0) if ground.wet else 1.0
    value = float(row["lateral_psf_per_ft_below_grade"]) * units.factor("psf/ft")
    return value * share * (2.0 if doubled else 1.0)


def _arguments(
    name: str, first: ArrayLike, height: ArrayLike, bearing: ArrayLike, width: ArrayLike
) -> tuple[Array, Array, Array, Array]:
    return (
        not_negative(name, first),
        not_negative("height", height),
        positive("lateral bearing", bearing),
        positive("width", width),
    )


def most_counted() -> float:
    """Return the depth in m to which lateral pressure is counted: 12 ft, IBC 1807.3.2.1."""
    return _rule("deepest counted") * units.FOOT


@cache
def _rule(name: str) -> float:
    """Return a number of IBC 1807.3.2 by its name in references/ground/embedment_rules.csv."""
    return float(references.table("ground/embedment_rules").one("rule", name)["value"])
