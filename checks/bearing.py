"""Bearing: the ground's pressure under the part of the foot that stays loaded."""

from dataclasses import dataclass
from math import cos

import numpy as np

from ..design.shapes.shape import Array
from ..design.structure import Weighing
from ..loads.combinations import Factors
from ..loads.wind import Actions
from .judging import Check, azimuth, judged
from .overturning import overturning_moment
from .standing import Standing

SOURCE = "effective area under the resultant (Meyerhof 1953)"


def check_bearing(standing: Standing, actions: Actions, factors: Factors) -> Check:
    """Return the worst of gusts, directions and cases (Q, D, C), both weights and dead factors.

    The resultant of weight and wind lies M/N off the centre of mass; the cap of the contact whose
    centroid lies under it carries N evenly: N/A against the allowable pressure of the ground.
    Calm air is tried too.
    """
    limit = standing.ground.allowable_pressure * factors.soil
    worst = _Loaded(-1.0, 0.0, None, None, "light", 1.0, "")
    for weighing in ("light", "heavy"):
        for dead in factors.sets:
            for loaded in _loaded(standing, actions, factors, weighing, dead, limit):
                worst = max(worst, loaded, key=lambda one: one.ratio)
    utilization, passes = judged(worst.pressure, limit)
    outside = not np.isfinite(worst.pressure)
    return Check(
        name="bearing",
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
) -> list[_Loaded]:
    """Return the worst pressure under wind and the one in calm air, for one weight and factor."""
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
    calm = _pressure(caps.area_about(kept / upright), np.full(len(normals), upright))
    still = int(calm.argmax())
    return [
        _Loaded(
            float(under_wind[at]) / limit,
            float(under_wind[at]),
            float(actions.azimuths[d]),
            azimuth(normals[e]),
            weighing,
            dead,
            actions.names[c],
        ),
        _Loaded(
            float(calm[still]) / limit,
            float(calm[still]),
            None,
            azimuth(normals[still]),
            weighing,
            dead,
            "calm",
        ),
    ]


def _pressure(area: Array, force: Array) -> Array:
    """Return force over area in Pa, infinite where nothing stays loaded."""
    return np.where(area > 0.0, force / np.where(area > 0.0, area, 1.0), np.inf)
