"""Boards and lattices that stand: ASCE/SEI 7 Fig. 29.3-1 (solid) and 29.4-2 (open).

A board B wide and s high has its upper edge at h above ground. All arguments broadcast.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.interpolation import between_rows_and_columns, bound
from ..printed.ranges import fraction, positive

RISES_FROM = 0.9
"""The printed s/h next to 1, from which the resultant rises, linear to 1: no jump (judgement)."""

MEMBERS = {
    "flat": ("flat_sided", "flat_sided"),
    "round": ("rounded_Dsqrtq_le_2p5", "rounded_Dsqrtq_gt_2p5"),
}
"""Members of an open sign, and their columns up to and above D sqrt(q_z) = 5.3 m sqrt(Pa)."""


def solid_sign(B_over_s: ArrayLike, s_over_h: ArrayLike) -> Array:
    """Return Cf of a solid sign or free-standing wall, Cases A and B, on its gross area.

    Bilinear; held beyond B/s 0.05 and 45 and below s/h 0.16. ValueError when B/s is not above 0
    or s/h not above 0 and up to 1. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.3-1.
    """
    B_over_s, s_over_h = _checked(B_over_s, s_over_h)
    return between_rows_and_columns(*_cases_a_b(), s_over_h, B_over_s)


def case_b_eccentricity(B: ArrayLike) -> Array:
    """Return how far off the middle, to either side, the resultant acts in Case B: 0.2 B.

    In the unit of the width ``B``, any shape. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.3-1 Note 3.
    """
    return 0.2 * np.asarray(B, dtype=float)


def case_c(
    B_over_s: ArrayLike,
    s_over_h: ArrayLike,
    start: ArrayLike = 0.0,
    end: ArrayLike | None = None,
) -> tuple[Array, Array]:
    """Return Cf over a board's width, and the resultant's distance off its middle over B, Case C.

    The figure gives strips of the width from the windward edge; each is linear in B/s between the
    printed columns, the last printed strip of a column runs on over the remaining width, and all
    are multiplied by (1.8 - s/h) where s/h is above 0.8. The distance is toward the windward edge.
    Of one of several boards that make the whole: that from ``start`` to ``end`` over B, about its
    own middle; all broadcast. Both are nan where B/s is below 2, where there is no Case C.
    ValueError as in ``solid_sign``.
    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.3-1, Case C and Notes 3 to 5.
    """
    ratio, s_over_h = np.broadcast_arrays(*_checked(B_over_s, s_over_h))
    first = ratio * np.asarray(start, dtype=float)
    last = ratio * np.asarray(1.0 if end is None else end, dtype=float)
    columns, edges, strips = _strips()
    held = np.clip(ratio, columns[0], columns[-1])
    each = [np.interp(held, columns, strips[:, k]) for k in range(strips.shape[1])]
    Cf = np.stack(each, axis=-1)
    begin = np.clip(edges[:-1], first[..., None], last[..., None])
    until = np.clip(edges[1:], first[..., None], last[..., None])
    force = Cf * (until - begin)
    total = force.sum(axis=-1)
    middle = (force * (begin + until) / 2.0).sum(axis=-1) / total
    reduced = np.where(s_over_h > 0.8, 1.8 - s_over_h, 1.0)
    exists = ratio >= 2.0
    mean = np.where(exists, reduced * total / (last - first), np.nan)
    return mean, np.where(exists, (0.5 * (first + last) - middle) / ratio, np.nan)


def resultant_rise(s_over_h: ArrayLike, h: ArrayLike) -> Array:
    """Return how far above the board's middle the resultant acts: 0.05 h at s/h = 1.

    In the unit of ``h``; none up to s/h 0.9. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.3-1 Note 3,
    which knows the 1 alone.
    """
    near = np.clip((np.asarray(s_over_h, dtype=float) - RISES_FROM) / (1.0 - RISES_FROM), 0.0, 1.0)
    return np.asarray(0.05 * near * np.asarray(h, dtype=float))


def openings_factor(solidity: ArrayLike) -> Array:
    """Return 1 - (1 - eps)^1.5, by which openings of a solid sign lessen its force.

    ``solidity`` eps is the solid over the gross area; 0.7 and more. ValueError outside 0 to 1.
    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.3-1 Note 2.
    """
    return 1.0 - (1.0 - fraction("solidity", solidity)) ** 1.5


def open_sign(
    solidity: ArrayLike, solid: ArrayLike, members: str = "flat", above_limit: ArrayLike = False
) -> Array:
    """Return Cf eps of an open sign or lattice: its coefficient on the gross area.

    ``solidity`` eps is the solid over the gross area, ``solid`` the Cf of the same board when
    solid, ``members`` "flat" or "round", and for round ones ``above_limit`` whether a member's
    D sqrt(q_z) is above 5.3 m sqrt(Pa). Below eps = 0.7 the figure's Cf times eps, and never less
    than at the end of a more open class, since more wood never takes less wind; from 0.7 on
    ``solid`` times ``openings_factor``, or the former if that is greater. ValueError when eps is
    outside 0 to 1 or for other members. Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-2, Fig. 29.3-1
    Note 2; the greater at the bound of two classes is a judgement.
    """
    eps = fraction("solidity", solidity)
    if members not in MEMBERS:
        raise ValueError(f'members: found "{members}", expected "flat" or "round"')
    below, above = (_open(eps, column) for column in MEMBERS[members])
    lattice = np.where(above_limit, above, below)
    board = np.asarray(solid, dtype=float) * openings_factor(eps)
    return np.where(eps < solid_from(), lattice, np.maximum(lattice, board))


@cache
def solid_from() -> float:
    """Return the solidity from which an open sign is a solid one with openings: 0.7.

    Source: ASCE/SEI 7-16 and 7-22 Fig. 29.4-2.
    """
    last = references.table("wind/asce7_cf_open_signs_frames").rows[-1]["solidity_eps"]
    return float(last.split("-")[1])


def open_class(solidity: ArrayLike, column: str = "flat_sided") -> Array:
    """Return Cf eps of Fig. 29.4-2 with the greater at each class bound, on the gross area.

    ``solidity`` eps up to ``solid_from()``, held beyond; ``column`` is one of the table's.
    """
    return _open(fraction("solidity", solidity), column)


def _open(eps: Array, column: str) -> Array:
    """Return the greatest Cf eps of the class that eps falls in and of all more open ones."""
    so_far = [
        np.where(eps >= low, Cf * np.minimum(eps, high), 0.0) for low, high, Cf in _classes(column)
    ]
    return np.max(so_far, axis=0)


@cache
def _classes(column: str) -> tuple[tuple[float, float, float], ...]:
    """Return each class of Fig. 29.4-2, from the most open: its bounds of solidity and its Cf."""
    rows = references.table("wind/asce7_cf_open_signs_frames").rows
    lower = [0.0, *(bound(row["solidity_eps"]) for row in rows[1:])]
    upper = [*lower[1:], solid_from()]
    Cf = [float(row[column]) for row in rows]
    return tuple(zip(lower, upper, Cf, strict=True))


def _checked(B_over_s: ArrayLike, s_over_h: ArrayLike) -> tuple[Array, Array]:
    ratio, clearance = positive("B/s", B_over_s), positive("s/h", s_over_h)
    if np.any(clearance > 1.0 + 1e-9):
        raise ValueError(f"s/h: found {clearance.max():g}, expected above 0 and up to 1")
    return ratio, clearance


@cache
def _cases_a_b() -> tuple[Array, Array, Array]:
    """Return the printed s/h (7,), B/s (12,) and Cf (7, 12), ascending."""
    found = {
        (bound(row["clearance_ratio_s_h"]), bound(row["aspect_ratio_B_s"])): float(row["Cf"])
        for row in references.table("wind/asce7_cf_solid_signs_AB").rows
    }
    clearances = sorted({clearance for clearance, _ in found})
    ratios = sorted({ratio for _, ratio in found})
    Cf = [[found[clearance, ratio] for ratio in ratios] for clearance in clearances]
    return np.array(clearances), np.array(ratios), np.array(Cf)


@cache
def _strips() -> tuple[Array, Array, Array]:
    """Return the printed B/s (n,), the strips' edges over s (k + 1,) and their Cf (n, k).

    A strip that a column does not print takes the one before it: the last runs on.
    """
    printed = {
        (*_region(row["region_from_windward_edge"]), bound(row["aspect_ratio_B_s"])): float(
            row["Cf"]
        )
        for row in references.table("wind/asce7_cf_solid_signs_C").rows
    }
    edges = sorted({edge for start, end, _ in printed for edge in (start, end)})
    ratios = sorted({ratio for *_, ratio in printed})
    Cf = np.full((len(ratios), len(edges) - 1), np.nan)
    for (start, end, ratio), value in printed.items():
        Cf[ratios.index(ratio), edges.index(start) : edges.index(end)] = value
    for k in range(1, Cf.shape[1]):
        Cf[:, k] = np.where(np.isnan(Cf[:, k]), Cf[:, k - 1], Cf[:, k])
    return np.array(ratios), np.array(edges), Cf


def _region(text: str) -> tuple[float, float]:
    """Return the edges over s of a strip as the table names it: 's to 2s' is 1 and 2."""
    if text.startswith(">"):
        return bound(text), np.inf
    start, end = (1.0 if edge == "s" else bound(edge) for edge in text.split(" to "))
    return start, end
