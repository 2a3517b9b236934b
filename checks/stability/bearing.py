"""Bearing: the ground's pressure under the part of the foot that stays loaded."""

from collections.abc import Sequence
from math import cos

import numpy as np
from numpy.typing import NDArray

from ...design.structure import Weighing
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.arrays import Array, where_greatest
from ...units.frozen import ByIdentity, ByValue
from ..judged.judging import Check, Kind, azimuth, judged
from .crossing import crossing
from .overturning import Hold
from .standing import Standing

_BALANCED = 1.0e-12
"""Moments left over (m times the weight) that count as none."""
_CALM = "calm"
_SOURCE = "effective area under the resultant (Meyerhof 1953)"


def check_bearing(
    standing: Standing, actions: Actions, factors: Factors, held: Hold | None = None
) -> Check:
    """Return the worst of gusts, directions and cases (Q, D, C), both weights and dead factors.

    The resultant of weight and wind lies M/N off the centre of mass; the cap of the contact whose
    centroid lies under it carries N evenly: N/A against the allowable pressure of the ground.
    Calm air is tried too. What is ``held`` down presses with the anchors' pull as well, and its
    resultant lies where weight and anchors together balance the wind.
    """
    limit = standing.ground.allowable_pressure * factors.soil
    ways: list[_Loaded] = []
    for weighing in ("light", "heavy"):
        for dead in factors.sets:
            given = standing, actions, factors, weighing, dead
            ways.append(_loaded(*given) if held is None else _loaded_held(*given, held))
            ways.append(_calm(standing, weighing, dead))
    worst = _worst(standing, actions, ways)
    utilization, passes = judged(worst.pressure, limit)
    outside = not np.isfinite(worst.pressure)
    return Check(
        kind=Kind.BEARING,
        subject="",
        demand=worst.pressure,
        capacity=limit,
        unit="Pa",
        utilization=None if outside else utilization,
        passes=passes,
        source=f"{_SOURCE}; {standing.ground.source}",
        direction_deg=worst.direction,
        toward_deg=worst.toward,
        weighing=worst.weighing,
        dead=worst.dead,
        wind=factors.wind,
        case=worst.case,
    )


class _Loaded(ByIdentity, frozen=True):
    """Where resultants lie and what they are, (…, E): ``depth`` in m within the reach, and N.

    ``direction`` (…, E) and ``case`` (…, E) are indices of the actions, -1 in calm air. Where it
    ``tips`` nothing stays loaded.
    """

    depth: Array
    force: Array
    direction: NDArray[np.intp]
    case: NDArray[np.intp]
    weighing: Weighing
    dead: float
    tips: NDArray[np.bool_] | None = None


class _Worst(ByValue, frozen=True):
    pressure: float
    direction: float | None
    toward: float
    weighing: Weighing
    dead: float
    case: str


def _worst(standing: Standing, actions: Actions, ways: Sequence[_Loaded]) -> _Worst:
    """Return the greatest pressure of all; what comes first of those alike."""
    lines = len(standing.normals)
    areas = standing.caps.area_about(np.vstack([one.depth.reshape(-1, lines) for one in ways]))
    forces = np.vstack([one.force.reshape(-1, lines) for one in ways])
    tips = [np.zeros(one.depth.shape, bool) if one.tips is None else one.tips for one in ways]
    loaded = (areas > 0.0) & ~np.vstack([each.reshape(-1, lines) for each in tips])
    pressure = np.where(loaded, forces / np.where(loaded, areas, 1.0), np.inf)
    row, e = where_greatest(pressure)
    starts = np.cumsum([0, *(one.depth.size // lines for one in ways)])
    which = int(np.searchsorted(starts, row, side="right")) - 1
    way, row = ways[which], row - int(starts[which])
    d, c = (int(index.reshape(-1, lines)[row, e]) for index in (way.direction, way.case))
    return _Worst(
        float(pressure[row + starts[which], e]),
        None if d < 0 else float(actions.azimuths[d]),
        azimuth(standing.normals[e]),
        way.weighing,
        way.dead,
        _CALM if c < 0 else actions.names[c],
    )


def _loaded(
    standing: Standing, actions: Actions, factors: Factors, weighing: Weighing, dead: float
) -> _Loaded:
    """Return the resultant of weight and wind, of the direction in which it lies farthest out."""
    caps = standing.caps
    weight = dead * standing.structure.weight(weighing)
    kept = dead * standing.hold(weighing, caps.reach)
    upright = weight * cos(standing.slope)
    pressing = (upright - factors.wind * actions.uplift)[..., None]
    over = factors.wind * standing.winds(actions).over(caps.reach)
    depth = np.where(pressing > 0.0, (kept - over) / np.maximum(pressing, 1.0e-9), -1.0)
    nearest = depth.argmin(axis=-3, keepdims=True)

    def there(values: Array) -> Array:
        whole = np.broadcast_to(values, depth.shape)
        return np.take_along_axis(whole, nearest, axis=-3)[..., 0, :, :]

    direction = nearest[..., 0, :, :]
    case = np.broadcast_to(np.arange(len(actions.names))[:, None], direction.shape)
    return _Loaded(there(depth), there(pressing), direction, case, weighing, dead)


def _calm(standing: Standing, weighing: Weighing, dead: float) -> _Loaded:
    """Return the resultant of its weight in calm air."""
    upright = dead * standing.structure.weight(weighing) * cos(standing.slope)
    kept = dead * standing.hold(weighing, standing.caps.reach)
    none = np.full(len(standing.normals), -1)
    return _Loaded(kept / upright, np.full(len(none), upright), none, none, weighing, dead)


def _loaded_held(
    standing: Standing,
    actions: Actions,
    factors: Factors,
    weighing: Weighing,
    dead: float,
    held: Hold,
) -> _Loaded:
    """Return the resultant of weight, wind and what holds it down.

    It lies on the line about which weight and anchors just balance the wind.
    """
    caps = standing.caps
    worst, direction = standing.winds(actions).worst_by_line(standing.reach, factors)
    weight = dead * standing.structure.weight(weighing) * cos(standing.slope)
    inner = np.broadcast_to(caps.reach - caps.depth[:, -1], worst.tilting.shape)
    outer = np.broadcast_to(caps.reach, worst.tilting.shape)

    def spare(pivot: Array) -> Array:
        return dead * standing.hold(weighing, pivot) + held.moment(pivot) - worst.over(pivot)

    _, high = crossing(spare, inner, outer, _BALANCED * weight)
    tips = spare(outer) < 0.0
    force = weight - worst.uplift + held.pull(high)
    case = np.broadcast_to(np.arange(len(actions.names))[:, None], tips.shape)
    return _Loaded(caps.reach - high, force, direction, case, weighing, dead, tips)
