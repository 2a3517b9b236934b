"""What a pitched roof without a tie pushes outward at the upper edges of the walls that bear it."""

from math import pi

import numpy as np

from ...design import plane
from ...design.structure import Structure
from ...loads.roofs.lids import supports, top_plan
from ...loads.roofs.tops import Tops
from ...units.arrays import Array
from ...units.frozen import ByValue
from ..acting.local_wind import LocalWind
from .strips import dead_pressure


class Thrust(ByValue, frozen=True):
    """What pushes a wall outward at its upper edge, in N/m: ``pressed`` for 1 Pa on both slopes.

    ``weight`` is that of the roof's own weight, unfactored; ``velocity`` in Pa the velocity
    pressure at the roof. ``front``: it is the walls in front and at the back of the box that bear
    the eaves, not those at its sides.
    """

    pressed: float
    weight: float
    velocity: float
    front: bool
    figures: Tops

    def edges(self, velocity: float, depth: float) -> tuple[float, float]:
        """Return what wind on wall and roof asks of the upper ``depth`` m of a wall, in N/m.

        Outward and inward, the greatest of each: wind presses or draws on either from outside,
        and the air inside, one and the same, presses or draws on both. ``velocity`` in Pa is the
        velocity pressure at the wall.
        """
        drawn, pressed = (self.figures.panel(way) for way in ("outward", "inward"))
        inside = self.figures.inside(open_to_wind=True)
        found = [
            wall * velocity * depth + roof * self.velocity * self.pressed
            for air in (inside, -inside)
            for wall in (drawn + air, air - pressed)
            for roof in (pressed - air, -drawn - air)
        ]
        return max(*found, 0.0), max(-min(found), 0.0)


def pressed_thrust(slope: Array, reach: float) -> float:
    """Return the thrust in N/m for 1 Pa square to both slopes, outward where it presses inward.

    ``slope`` (k, 2) in m are its corners from the ridge down, out from the ridge and up; walls bear
    it ``reach`` m out. Source: statics, a frame of three hinges.
    """
    step, middle = np.diff(slope, axis=0), 0.5 * (slope[1:] + slope[:-1]) - slope[0]
    force = np.stack([step[:, 1], -step[:, 0]], axis=1)
    return _about_the_ridge(slope, reach, middle, force)


def laid_thrust(slope: Array, reach: float) -> float:
    """Return the thrust in N/m for 1 N of weight on each m2 of both slopes; as above."""
    step, middle = np.diff(slope, axis=0), 0.5 * (slope[1:] + slope[:-1]) - slope[0]
    long = np.linalg.norm(step, axis=1)
    return _about_the_ridge(slope, reach, middle, np.stack([0.0 * long, -long], axis=1))


def thrust_on(structure: Structure, i: int, local: LocalWind) -> Thrust | None:
    """Return how the pitched roof that a body bears pushes its walls; None without one."""
    body = structure.bodies[i]
    for j, other in enumerate(structure.bodies):
        roof = other.shape.pitched
        if roof is None or roof.thickness is None or not other.upright:
            continue
        if not any(one is body for one in supports(structure, other)):
            continue
        slope = roof.section[roof.section[:, 0] >= -1.0e-9]
        slope = slope[np.argsort(-slope[:, 1], kind="stable")]
        plan = plane.coordinates(top_plan(body)) - other.origin[:2]
        reach = min(float(np.abs(plan @ other.bearing(pi / 2.0)).max()), roof.width / 2.0)
        area = 2.0 * roof.length * float(np.linalg.norm(np.diff(slope, axis=0), axis=1).sum())
        weight = dead_pressure(structure, other.part, area) * laid_thrust(slope, reach)
        front = abs(float(other.bearing(0.0) @ body.bearing(0.0))) > 0.5**0.5
        pressed = pressed_thrust(slope, reach)
        return Thrust(pressed, max(weight, 0.0), float(local.velocity[j]), front, local.figures)
    return None


def _about_the_ridge(slope: Array, reach: float, middle: Array, force: Array) -> float:
    """Return what holds half a roof back at its wall, from moments about the ridge, in N/m."""
    drop = float(slope[0, 1] - np.interp(reach, slope[:, 0], slope[:, 1]))
    turning = float((middle[:, 0] * force[:, 1] - middle[:, 1] * force[:, 0]).sum())
    return (reach * -float(force[:, 1].sum()) + turning) / drop
