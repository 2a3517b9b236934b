"""Which bodies have seams, and the thin walls between them: many-sided shells and hollow boxes."""

from math import hypot, pi, tan

import numpy as np

from ...design.placing import Body
from ...design.shapes.forms import Walls
from ...design.shapes.plans import Plan, Rectangle, Regular, area_factor
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .shear_flow import polygon_first_moment, polygon_inertia, rectangle_shares


class Tube(ByIdentity, frozen=True):
    """The walls of a body at one end of it, along its own axes, to their middle, in m.

    ``share`` (2,) in 1/m is what each N across it along an axis makes of flow along the seam that
    is loaded most, Q/(2 I); ``alike``: whichever way it goes. ``apothem`` (2,) is how far the walls
    lie from the axis, ``lean`` (2,) how much they go outward for each m upward, ``enclosed`` in m2
    what lies within.
    """

    share: Array
    alike: bool
    apothem: Array
    lean: Array
    enclosed: float


def seamed(body: Body) -> bool:
    """Return whether a body has seams that are worked out: upright, with walls all round."""
    walls = body.shape.walls()
    return walls is not None and walls.joined and body.upright


def seamed_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts that have seams, in the file's order."""
    return _named(structure, [body for body in structure.bodies if seamed(body)])


def cornered_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts of which walls meet at corners, those with an open side too."""
    return _named(
        structure,
        [body for body in structure.bodies if seamed(body) or body.shape.room is not None],
    )


def ends_of(walls: Walls) -> tuple[Tube | None, Tube | None]:
    """Return the walls of a body at its foot and at its top; None where there is no room within."""
    match walls.foot, walls.head:
        case Regular(sides, bottom), Regular(_, top):
            lean = (top - bottom) / (2.0 * walls.height)
            level = walls.wall * hypot(1.0, lean)
            return _polygon(sides, bottom, level, lean), _polygon(sides, top, level, lean)
        case foot, head:
            low, high = _sizes(foot), _sizes(head)
            leans = (high - low) / (2.0 * walls.height)
            return _rectangle(walls, low, leans), _rectangle(walls, high, leans)


def panel_widths(walls: Walls) -> tuple[int, float, float]:
    """Return how many seams a body has, the widest panel in m and half the angle between two."""
    match walls.foot, walls.head:
        case Regular(sides, bottom), Regular(_, top):
            return sides, max(bottom, top) * tan(pi / sides), pi / sides
        case foot, head:
            return 4, float(max(*_sizes(foot), *_sizes(head))), pi / 4.0


def slant(walls: Walls) -> float:
    """Return how long in m the seams of a body are, from its foot to its top."""
    match walls.foot, walls.head:
        case Regular(sides, bottom), Regular(_, top):
            return hypot(walls.height, abs(bottom - top) / (2.0 * np.cos(pi / sides)))
        case foot, head:
            return float(np.linalg.norm([walls.height, *(_sizes(foot) - _sizes(head)) / 2.0]))


def _sizes(plan: Plan) -> Array:
    """Return length and width (2,) of a rectangle in m; both the width of any other outline."""
    match plan:
        case Rectangle(length, width):
            return np.array([length, width])
        case Regular(_, across):
            return np.array([across, across])


def _named(structure: Structure, bodies: list[Body]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(structure.design.parts[body.part].name for body in bodies))


def _polygon(sides: int, across: float, wall: float, lean: float) -> Tube | None:
    """Return a regular end with walls ``wall`` m thick on the level."""
    apothem = (across - wall) / 2.0
    if apothem <= 0.0:
        return None
    Q = polygon_first_moment(sides, apothem, wall)
    share = float(Q / (2.0 * polygon_inertia(sides, apothem, wall)))
    return Tube(
        np.full(2, share),
        True,
        np.full(2, apothem),
        np.full(2, lean),
        float(area_factor(sides)) * apothem**2,
    )


def _rectangle(walls: Walls, plan: Array, lean: Array) -> Tube | None:
    level = walls.wall * np.hypot(1.0, lean)
    middle = plan - level
    if (middle <= 0.0).any():
        return None
    return Tube(rectangle_shares(middle, level), False, middle / 2.0, lean, float(middle.prod()))
