"""Wind pressure on single parts and panels, beside the force on the whole."""

from dataclasses import dataclass

import numpy as np

from .. import references
from ..design.shapes.shape import Array
from ..design.structure import Structure
from ..loads.asce7.closed_tops import strip_suction
from ..loads.exposed import Exposed
from ..loads.methods import Method


@dataclass(frozen=True, eq=False)
class LocalWind:
    """Unfactored pressures in Pa on each body (bodies,).

    ``pressure`` is the velocity pressure with directionality and gust effect, the worst direction;
    ``standing`` that times the body's own greatest force coefficient and sign case; ``velocity``
    the velocity pressure with directionality at its top. ``least`` in Pa is the least pressure on a
    part's own area, 0 without one. ``force`` in N pushes what is seen of it, at most ``up`` m above
    ground, ``lift`` in N is the suction on what it closes above: each in its worst direction.
    """

    pressure: Array
    standing: Array
    velocity: Array
    least: float
    force: Array
    up: Array
    lift: Array


def local_wind(structure: Structure, exposed: Exposed, method: Method) -> LocalWind:
    """Return the pressures of a method's wind on each body of a structure."""
    directionality = method.directionality(exposed.kinds)
    gust = method.gust(exposed.height, exposed.breadth)
    q = method.pressure(exposed.pressure_height) * directionality
    worst = exposed.case.max(axis=(1, 2))
    coefficient = (exposed.coefficient * gust).max(axis=1) * worst
    tops = np.array([max(body.top, 0.0) for body in structure.bodies])  # no wind blows below ground
    least = method.minimum or 0.0
    blown = np.maximum(exposed.below, exposed.above) * gust * worst[:, None]
    pushed = blown + exposed.suction.sideways * gust
    return LocalWind(
        pressure=q * gust.max(),
        standing=np.maximum(q * coefficient, least),
        velocity=method.pressure(tops) * directionality,
        least=least,
        force=np.maximum(q * pushed.max(axis=1), least * exposed.area.max(axis=1)),
        up=exposed.up.max(axis=1),
        lift=q * (exposed.suction.upward * gust).max(axis=1),
    )


def overhang_pressure(local: LocalWind, i: int) -> float:
    """Return the unfactored uplift in Pa on what stands out of a body beyond what bears it.

    The greatest suction on a level top with the pressure beneath a windward overhang.
    """
    row = references.table("wind/uplift").one("place", "beneath a windward overhang")
    coefficient = float(strip_suction(1.0).max()) + float(row["coefficient"])
    return max(coefficient * float(local.velocity[i]), local.least)


def panel_coefficient(place: str) -> float:
    """Return the pressure coefficient of one panel: "inward", "outward", "within an open body"."""
    return float(references.table("wind/panel_pressure").one("place", place)["coefficient"])
