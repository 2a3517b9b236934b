"""Suction on what is closed above, enclosed below: ASCE/SEI 7 Fig. 27.3-1, on its plan area.

Coefficients are upward and above 0. ``h_over_L`` is the height of the top above ground over its
length along the wind.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.interpolation import between_rows_and_columns
from ..printed.ranges import not_negative

LEVEL_ROOF_TO, SLOPED_FROM = 7.5, 10.0
"""Slopes in degrees up to which a roof is level and from which the figure's slopes hold; linear
between (judgement: the figure changes from the one to the other at 10)."""

FULL_TO, NONE_FROM = 45.0, 60.0
"""Slopes in degrees up to which suction acts in full and from which it does not; linear between
(judgement: from 60 on the figure presses on the windward slope as much as it lifts the other)."""


@cache
def strip_edges() -> Array:
    """Return where the strips of a level top begin (4,), from the windward edge over h."""
    return np.array(sorted({float(row["from_over_h"]) for row in _rows("strip")}))


def strip_suction(h_over_L: ArrayLike) -> Array:
    """Return the suction (…, 4) on the strips of a level top, or of any roof along its ridge.

    Linear between the figure's h/L of 0.5 and 1, held beyond. No reduction for area: at these sizes
    there is none. ValueError when ``h_over_L`` is below 0. Source: ASCE/SEI 7-16 and 7-22 Fig.
    27.3-1, the greater suctions; strips to h/2, h, 2 h and beyond.
    """
    ratios, values = _strips()
    held = not_negative("h/L", h_over_L)
    strips: list[Array] = [np.interp(held, ratios, values[:, k]) for k in range(values.shape[1])]
    return np.stack(strips, axis=-1)


def mean_strip_suction(start: ArrayLike, end: ArrayLike, h: ArrayLike, L: ArrayLike) -> Array:
    """Return the mean suction on what lies evenly from ``start`` to ``end`` m downwind of the edge.

    ``h`` height above ground and ``L`` length along the wind in m; all broadcast.
    """
    a, b, height = (np.asarray(v, dtype=float)[..., None] for v in (start, end, h))
    lower = strip_edges() * height
    upper = np.concatenate([lower[..., 1:], np.full_like(lower[..., :1], np.inf)], axis=-1)
    within = np.maximum(np.minimum(b, upper) - np.maximum(a, lower), 0.0)
    total = (within * strip_suction(height[..., 0] / np.asarray(L, dtype=float))).sum(axis=-1)
    return np.asarray(total / np.maximum(b - a, 1e-12)[..., 0])


def suction_across_ridge(slope: ArrayLike, h_over_L: ArrayLike) -> tuple[Array, Array]:
    """Return the suction on the windward and on the leeward slope, wind across the ridge.

    ``slope`` in degrees, 10 and more (held below), and ``h_over_L`` broadcast; bilinear between
    printed values, held beyond. Source: ASCE/SEI 7-16 and 7-22 Fig. 27.3-1, the greater suctions.
    """
    windward, leeward = (_slopes(f"{side} slope") for side in ("windward", "leeward"))
    at = (h_over_L, slope)
    return between_rows_and_columns(*windward, *at), between_rows_and_columns(*leeward, *at)


def roof_suction(slope: ArrayLike, facing: Array, h_over_L: Array, strip: Array) -> Array:
    """Return the suction on one slope of a closed roof, on its plan area.

    ``slope`` in degrees; ``facing`` is the cosine of the wind's angle off the slope's own fall, 1
    where it blows up the slope; ``strip`` the suction as on a level top there. Shapes broadcast.
    From across the ridge to along it by cos2 of the angle, and over the bounds of slope linear:
    judgements between what the figure prints.
    """
    slope = np.asarray(slope, dtype=float)
    windward, leeward = suction_across_ridge(np.maximum(slope, SLOPED_FROM), h_over_L)
    across = np.where(facing > 0.0, windward, leeward)
    sloped = facing**2 * across + (1.0 - facing**2) * strip
    share = np.clip((slope - LEVEL_ROOF_TO) / (SLOPED_FROM - LEVEL_ROOF_TO), 0.0, 1.0)
    kept = np.clip((NONE_FROM - slope) / (NONE_FROM - FULL_TO), 0.0, 1.0)
    return np.asarray(kept * (strip + share * (sloped - strip)))


def _rows(surface: str) -> tuple[references.TableRow, ...]:
    return references.table("wind/asce7_roof_Cp").where("surface", surface)


@cache
def _strips() -> tuple[Array, Array]:
    """Return the printed h/L (2,) and suctions (2, 4)."""
    found = {
        (float(row["h_over_L"]), float(row["from_over_h"])): -float(row["Cp"])
        for row in _rows("strip")
    }
    ratios = sorted({ratio for ratio, _ in found})
    values = [[found[ratio, edge] for edge in strip_edges().tolist()] for ratio in ratios]
    return np.array(ratios), np.array(values)


@cache
def _slopes(surface: str) -> tuple[Array, Array, Array]:
    """Return the printed h/L (3,), slopes in degrees (S,) and suctions (3, S)."""
    found = {
        (float(row["h_over_L"]), float(row["slope_deg"])): -float(row["Cp"])
        for row in _rows(surface)
    }
    ratios, slopes = (sorted({key[k] for key in found}) for k in (0, 1))
    values = [[found[ratio, slope] for slope in slopes] for ratio in ratios]
    return np.array(ratios), np.array(slopes), np.array(values)
