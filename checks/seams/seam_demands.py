"""The seams of each shell and box: shear flow, panel pull, and fasteners spaced along them."""

from collections.abc import Callable, Collection
from math import hypot, pi

import numpy as np

from ...design.placing import Body
from ...design.structure import Structure
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...loads.exposed import Exposed
from ...loads.seen.visible import Faces
from ...units.arrays import Mask, where_greatest
from ...units.frozen import ByValue, replace
from ..acting.local_wind import LocalWind
from ..plates.boards import panel_pressure
from .seam_fasteners import Spacing, spacings_into_a_cleat
from .shear_flow import edge_pull, hoop_pull, leaning_shear, twist_flow
from .tubes import Tube, ends_of, panel_widths, seamed, slant


class Seams(ByValue, frozen=True):
    """The seams of one body under the factored wind, in N/m: ``flow`` along, ``pull`` outward.

    ``hoop`` pulls across them within the panels. ``shear`` in N, with what the lean of the walls
    adds, and ``torque`` in N m are those of the section with the greatest flow, ``level`` its
    height in m. ``count`` seams, each ``long`` in m; ``spacings`` hold through the panel into a
    corner cleat.
    """

    part: str
    count: int
    shear: float
    torque: float
    level: float
    flow: float
    pull: float
    hoop: float
    long: float
    spacings: tuple[Spacing, ...]

    @property
    def sideways(self) -> float:
        """Return what pushes the fasteners sideways in N/m: along the seam and across it."""
        return hypot(self.flow, self.hoop)


def seams_of(
    structure: Structure,
    exposed: Exposed,
    local: LocalWind,
    actions_of: Callable[[Exposed], Actions],
    factors: Factors,
    basis: str,
    only: Collection[str] | None = None,
) -> tuple[Seams, ...]:
    """Return the seams of every shell and box, of like copies the one that is loaded most.

    Where ``only`` names parts, of these alone. ``actions_of`` turns what bodies offer the wind into
    its actions (Q, D, C). Both ends are tried: between them the flow is never greater.
    """
    found: dict[str, Seams] = {}
    for i, body in enumerate(structure.bodies):
        part = structure.design.parts[body.part]
        walls = body.shape.walls()
        if walls is None or not seamed(body):
            continue
        if only is not None and part.name not in only:
            continue
        own = _own_wind(exposed, _goes_along(structure, body.part))
        above = _own_wind(exposed, _goes_along(structure, body.part, itself=False))
        foot, top = ends_of(walls)
        flow, shear, torque, level = max(
            _flow(foot, body, body.bottom, actions_of(own), factors),
            _flow(top, body, body.top, actions_of(above), factors),
        )
        count, width, half = panel_widths(walls)
        pressure = factors.wind * panel_pressure(structure, i, local)
        pull = float(edge_pull(pressure, width))
        hoop = float(hoop_pull(pressure, width, half))
        long = slant(walls)
        asked = hypot(flow, hoop), pull
        spacings = spacings_into_a_cleat(part.material, walls.wall, *asked, basis, long)
        one = Seams(part.name, count, shear, torque, level, flow, pull, hoop, long, spacings)
        if part.name not in found or one.flow > found[part.name].flow:
            found[part.name] = one
    return tuple(found.values())


def _goes_along(structure: Structure, part: int, itself: bool = True) -> Mask:
    """Return the bodies (bodies,) that a part carries by the file's own word, and it too."""
    parts = structure.design.parts
    index = {each.name: i for i, each in enumerate(parts)}

    def carried(i: int) -> bool:
        reference = parts[i].place.reference
        return reference is not None and (index[reference] == part or carried(index[reference]))

    return np.array(
        [(itself and body.part == part) or carried(body.part) for body in structure.bodies]
    )


def _own_wind(exposed: Exposed, goes: Mask) -> Exposed:
    """Return what some bodies take of the wind, each as much as in the whole.

    Their silhouette, for the least wind of a standard, is what is seen of each.
    """
    greater = np.maximum(exposed.below, exposed.above) * goes[:, None]
    some = exposed.coefficient > 0.0
    area = np.where(some, greater / np.where(some, exposed.coefficient, 1.0), 0.0)
    total = area.sum(axis=0)
    whole = np.where(total > 0.0, total, 1.0)
    side, up = -(area * exposed.arm).sum(axis=0) / whole, (area * exposed.up).sum(axis=0) / whole
    return replace(
        exposed,
        seen=Faces(total, side, up),
        below=exposed.below * goes[:, None],
        above=exposed.above * goes[:, None],
        suction=exposed.suction.of(goes),
    )


def _flow(
    tube: Tube | None, body: Body, level: float, actions: Actions, factors: Factors
) -> tuple[float, float, float, float]:
    """Return the greatest flow in N/m at one end, its shear in N, torque in N m, and the level.

    What the lean of the walls adds to the shear counts, what it takes off does not.
    """
    if tube is None:
        return 0.0, 0.0, 0.0, level
    axis, axes = body.origin, np.stack([body.bearing(0.0), body.bearing(pi / 2.0)])
    lifted = actions.lifting - actions.uplift[..., None] * axis[:2]
    moment = (actions.tilting - level * actions.force - lifted) @ axes.T
    force = actions.force @ axes.T
    leaning = leaning_shear(force, moment, tube.lean, tube.apothem)
    if tube.alike:
        shear = np.maximum(np.linalg.norm(force, axis=-1), np.linalg.norm(leaning, axis=-1))
        flow = shear * tube.share[0]
    else:
        each = np.maximum(np.abs(force), np.abs(leaning))
        shear, flow = np.linalg.norm(each, axis=-1), each @ tube.share
    turning = actions.twist - axis[0] * actions.force[..., 1] + axis[1] * actions.force[..., 0]
    torque = factors.wind * np.abs(turning)
    flow = factors.wind * flow + twist_flow(torque, tube.enclosed)
    at = where_greatest(flow)
    return float(flow[at]), factors.wind * float(shear[at]), float(torque[at]), level
