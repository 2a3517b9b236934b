"""Sliding: wind against friction, straight or turning, on a slope and under suction."""

from math import cos, sin

import numpy as np

from ...design.structure import Weighing
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.arrays import Array, where_greatest
from ..judged.judging import Check, Kind, judged
from .standing import DeadLoad, Standing

_SOURCE = "statics: H + W sin(slope) <= mu (W cos(slope) - U)"


def check_sliding(
    standing: Standing, actions: Actions, factors: Factors, held: float | Array = 0.0
) -> Check:
    """Return the worst of all gusts, directions and cases (Q, D, C), weight light.

    ``held`` is the factored level force in N that anchors hold besides friction, of all or of each
    (Q, D, C).
    """
    weighing: Weighing = "light"
    weight = standing.structure.weight(weighing)
    share = standing.friction_share(actions)
    size = np.hypot(actions.force[..., 0], actions.force[..., 1])
    worst: tuple[float, float, float, float, tuple[int, ...]] | None = None
    for dead in factors.sets:
        demand = factors.wind * size + dead * weight * sin(standing.slope)
        pressing = dead * weight * cos(standing.slope) - factors.wind * actions.uplift
        grip = factors.friction * share * np.maximum(pressing, 0.0) + held
        ratio = demand / np.maximum(grip, 1.0e-12)
        at = where_greatest(ratio)
        if worst is None or ratio[at] > worst[0]:
            where = tuple(int(i) for i in at)
            worst = (float(ratio[at]), float(demand[at]), float(grip[at]), dead, where)
    assert worst is not None
    _, demand_, grip_, dead, where = worst
    utilization, passes = judged(demand_, grip_)
    *_, d, c = where
    anchored = float(np.broadcast_to(held, size.shape)[where])
    bare_demand = float(size[where]) + weight * sin(standing.slope)
    bare_grip = float(share[where]) * (weight * cos(standing.slope) - float(actions.uplift[where]))
    return Check(
        kind=Kind.SLIDING,
        subject="",
        demand=demand_,
        capacity=grip_,
        unit="N",
        utilization=utilization,
        passes=passes,
        source=f"{_SOURCE}; {factors.source}",
        direction_deg=float(actions.azimuths[d]),
        weighing=weighing,
        dead=dead,
        wind=factors.wind,
        case=actions.names[c],
        bare=(max(bare_grip, 0.0) + anchored) / bare_demand if bare_demand > 0.0 else None,
    )


def sliding_pressures(
    standing: Standing,
    unit: Actions,
    weighing: Weighing | DeadLoad,
    share: Array,
    low: float | Array = 0.0,
    high: float | Array = np.inf,
) -> Array:
    """Return the least pressures (…, D, C) in Pa within low..high at which it slides, else inf.

    ``unit`` holds the actions (D, C) of 1 Pa, ``share`` k (…, D, C) is `Standing.friction_share` of
    them: (q H + W sin) = k (W cos - q U). A weight may be that (…, 1, 1) of many pieces at once.
    """
    weight = standing.weight(weighing).force
    size = np.hypot(unit.force[..., 0], unit.force[..., 1])
    spare = share * weight * cos(standing.slope) - weight * sin(standing.slope)
    rate = size + share * unit.uplift
    q = np.where(rate > 0.0, np.maximum(spare, 0.0) / np.where(rate > 0.0, rate, 1.0), np.inf)
    return np.where(q <= high, np.maximum(q, low), np.inf)
