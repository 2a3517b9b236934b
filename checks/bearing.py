"""Bearing: the ground's pressure under the part of the foot that stays loaded."""

from dataclasses import dataclass
from math import cos

import numpy as np

from ..design.shapes.shape import Array
from ..design.structure import Weighing
from ..loads.actions import Actions
from ..loads.combinations import Factors
from .judging import Check, Kind, azimuth, judged
from .overturning import Hold, overturning_moment
from .standing import Standing
from .worst import worst_by_line

_HALVINGS = 40
SOURCE = "effective area under the resultant (Meyerhof 1953)"


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
    worst = _Loaded(-1.0, 0.0, None, None, "light", 1.0, "")
    for weighing in ("light", "heavy"):
        for dead in factors.sets:
            given = standing, actions, factors, weighing, dead, limit
            windy = _loaded(*given) if held is None else _loaded_held(*given, held)
            for loaded in (windy, _calm(standing, weighing, dead, limit)):
                worst = max(worst, loaded, key=lambda one: one.ratio)
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
        source=f"{SOURCE}; {standing.ground.source}",
        direction_deg=worst.direction,
        toward_deg=worst.toward,
        weighing=worst.weighing,
        dead=worst.dead,
        wind=factors.wind,
        case=worst.case,
    )


@dataclass(frozen=True)
class _Loaded:
    ratio: float
    pressure: float
    direction: float | None
    toward: float | None
    weighing: Weighing
    dead: float
    case: str


def _loaded(
    standing: Standing,
    actions: Actions,
    factors: Factors,
    weighing: Weighing,
    dead: float,
    limit: float,
) -> _Loaded:
    """Return the worst pressure under wind for one weight and factor."""
    caps, normals = standing.caps, standing.normals
    weight = dead * standing.structure.weight(weighing)
    kept = dead * standing.hold(weighing, caps.reach)
    upright = weight * cos(standing.slope)
    pressing = upright - factors.wind * actions.uplift
    over = factors.wind * overturning_moment(actions, normals, caps.reach)
    depth = np.where(
        pressing[..., None] > 0.0, (kept - over) / np.maximum(pressing, 1.0e-9)[..., None], -1.0
    )
    nearest = depth.argmin(axis=-3, keepdims=True)
    least = np.take_along_axis(depth, nearest, axis=-3)[..., 0, :, :]
    force = np.take_along_axis(np.broadcast_to(pressing[..., None], depth.shape), nearest, axis=-3)[
        ..., 0, :, :
    ]
    under_wind = _pressure(caps.area_about(least), force)
    at = np.unravel_index(int(under_wind.argmax()), under_wind.shape)
    *gust, c, e = (int(i) for i in at)
    d = int(nearest[(*gust, 0, c, e)])
    return _Loaded(
        float(under_wind[at]) / limit,
        float(under_wind[at]),
        float(actions.azimuths[d]),
        azimuth(normals[e]),
        weighing,
        dead,
        actions.names[c],
    )


def _calm(standing: Standing, weighing: Weighing, dead: float, limit: float) -> _Loaded:
    """Return the worst pressure in calm air, for one weight and factor."""
    caps, normals = standing.caps, standing.normals
    upright = dead * standing.structure.weight(weighing) * cos(standing.slope)
    kept = dead * standing.hold(weighing, caps.reach)
    calm = _pressure(caps.area_about(kept / upright), np.full(len(normals), upright))
    still = int(calm.argmax())
    return _Loaded(
        float(calm[still]) / limit,
        float(calm[still]),
        None,
        azimuth(normals[still]),
        weighing,
        dead,
        "calm",
    )


def _loaded_held(
    standing: Standing,
    actions: Actions,
    factors: Factors,
    weighing: Weighing,
    dead: float,
    limit: float,
    held: Hold,
) -> _Loaded:
    """Return the worst pressure under wind of a piece that is held down.

    The line about which weight and anchors just balance the wind is found by halving.
    """
    caps = standing.caps
    worst = worst_by_line(standing, actions, factors)
    weight = dead * standing.structure.weight(weighing) * cos(standing.slope)
    inner = np.broadcast_to(caps.reach - caps.depth[:, -1], worst.tilting.shape)
    outer = np.broadcast_to(caps.reach, worst.tilting.shape)
    low, high = inner, outer
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        spare = dead * standing.hold(weighing, middle) + held.moment(middle) - worst.over(middle)
        low, high = np.where(spare < 0.0, middle, low), np.where(spare < 0.0, high, middle)
    tips = dead * standing.hold(weighing, outer) + held.moment(outer) < worst.over(outer)
    area = np.where(tips, 0.0, caps.area_about(caps.reach - high))
    pressure = _pressure(area, weight - worst.uplift + held.pull(high))
    c, e = np.unravel_index(int(pressure.argmax()), pressure.shape)
    return _Loaded(
        float(pressure[c, e]) / limit,
        float(pressure[c, e]),
        float(actions.azimuths[worst.direction[c, e]]),
        azimuth(standing.normals[e]),
        weighing,
        dead,
        actions.names[c],
    )


def _pressure(area: Array, force: Array) -> Array:
    """Return force over area in Pa, infinite where nothing stays loaded."""
    return np.where(area > 0.0, force / np.where(area > 0.0, area, 1.0), np.inf)
