"""Wind pressure on single parts and panels, beside the force on the whole."""

import numpy as np

from ...design import plane
from ...design.placing import Body
from ...design.structure import Structure
from ...loads.exposed import Exposed
from ...loads.methods import Method
from ...loads.roofs.lids import from_above
from ...loads.roofs.tops import Tops
from ...units.arrays import Array
from ...units.frozen import ByIdentity


class LocalWind(ByIdentity, frozen=True):
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
    figures: Tops

    def panel(self, i: int, place: str, open_to_wind: bool = False) -> float:
        """Return the unfactored pressure in Pa on one panel, "inward" or "outward"."""
        return max(self.figures.panel(place, open_to_wind) * float(self.velocity[i]), self.least)

    def suction(self, body: Body, i: int, slope: float, open_to_wind: bool = False) -> float:
        """Return the unfactored suction in Pa on one panel of a roof or lid, air inside and all."""
        coefficient = self.on_top(body, slope) + self.figures.inside(open_to_wind)
        return max(coefficient * float(self.velocity[i]), self.least)

    def on_top(self, body: Body, slope: float) -> float:
        """Return the coefficient of the suction on one panel of a roof or lid."""
        return self.figures.local_suction(slope, body.top, _sides(body))


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
        figures=method.tops,
        lift=q * (exposed.suction.upward * gust).max(axis=1),
    )


def overhang_pressure(local: LocalWind, body: Body, i: int, slope: float = 0.0) -> float:
    """Return the unfactored uplift in Pa on what stands out of a body beyond what bears it.

    By the book's own figure, with the pressure beneath it.
    """
    coefficient = local.figures.overhang(slope, body.top, _sides(body))
    return max(coefficient * float(local.velocity[i]), local.least)


def _sides(body: Body) -> tuple[float, float]:
    """Return the sides in m of the narrowest box round a body in plan."""
    corners = plane.narrowest_box(from_above(body))
    long, short = np.linalg.norm(np.diff(corners[:3], axis=0), axis=1).tolist()
    return long, short
