"""Which bodies have seams, and the thin walls between them: many-sided shells and hollow boxes."""

from dataclasses import dataclass
from math import hypot, pi, tan

import numpy as np

from ...design.placing import Body
from ...design.shapes.bodies import Shell
from ...design.shapes.boxes import Box
from ...design.shapes.plans import area_factor
from ...design.shapes.shape import Array
from ...design.structure import Structure
from .shear_flow import polygon_first_moment, polygon_inertia, rectangle_shares

_SIDES = frozenset({"front", "back", "left", "right"})


@dataclass(frozen=True, eq=False)
class Tube:
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
    match body.shape:
        case Shell() as shell:
            return shell.sides > 0 and body.upright
        case Box(wall=float(), open=faces):
            return not faces & _SIDES and body.upright
        case _:
            return False


def seamed_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts that have seams, in the file's order."""
    return _named(structure, [body for body in structure.bodies if seamed(body)])


def cornered_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts of which walls meet at corners, those with an open side too."""
    return _named(
        structure,
        [
            body
            for body in structure.bodies
            if seamed(body) or (isinstance(body.shape, Box) and body.shape.wall is not None)
        ],
    )


def ends_of(shape: Shell | Box) -> tuple[Tube | None, Tube | None]:
    """Return the walls of a body at its foot and at its top; None where there is no room within."""
    match shape:
        case Shell():
            return _polygon(shape, shape.bottom), _polygon(shape, shape.top)
        case Box():
            top = shape.top_plan
            ends = (shape.length, shape.width), (top.length, top.width)
            one, other = (_rectangle(shape, np.array(end)) for end in ends)
            return one, other


def panel_widths(shape: Shell | Box) -> tuple[int, float, float]:
    """Return how many seams a body has, the widest panel in m and half the angle between two."""
    match shape:
        case Shell(sides=sides):
            return sides, max(shape.bottom, shape.top) * tan(pi / sides), pi / sides
        case Box():
            top = shape.top_plan
            return 4, max(shape.length, shape.width, top.length, top.width), pi / 4.0


def slant(shape: Shell | Box) -> float:
    """Return how long in m the seams of a body are, from its foot to its top."""
    match shape:
        case Shell(sides=sides):
            corner = abs(shape.bottom - shape.top) / (2.0 * np.cos(pi / sides))
            return hypot(shape.height, corner)
        case Box():
            top = shape.top_plan
            return float(
                np.linalg.norm(
                    [
                        shape.height,
                        (shape.length - top.length) / 2.0,
                        (shape.width - top.width) / 2.0,
                    ]
                )
            )


def _named(structure: Structure, bodies: list[Body]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(structure.design.parts[body.part].name for body in bodies))


def _polygon(shell: Shell, across: float) -> Tube | None:
    apothem, wall = (across - shell.wall_in_plan) / 2.0, shell.wall_in_plan
    if apothem <= 0.0:
        return None
    Q = polygon_first_moment(shell.sides, apothem, wall)
    share = float(Q / (2.0 * polygon_inertia(shell.sides, apothem, wall)))
    lean = (shell.top - shell.bottom) / (2.0 * shell.height)
    return Tube(
        np.full(2, share),
        True,
        np.full(2, apothem),
        np.full(2, lean),
        float(area_factor(shell.sides)) * apothem**2,
    )


def _rectangle(box: Box, plan: Array) -> Tube | None:
    assert box.wall is not None
    top = box.top_plan
    lean = (np.array([top.length, top.width]) - [box.length, box.width]) / (2.0 * box.height)
    walls = box.wall * np.hypot(1.0, lean)
    middle = plan - walls
    if (middle <= 0.0).any():
        return None
    return Tube(rectangle_shares(middle, walls), False, middle / 2.0, lean, float(middle.prod()))
