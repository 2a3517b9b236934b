"""Sections of straight pieces, which uprights are slender, and which bodies touch.

Two bodies are taken to touch where the boxes round them, in the design's own axes, do.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from ...design.placing import Body, place_parts
from ...design.shapes.bodies import Solid
from ...design.shapes.boxes import Box
from ...design.shapes.member import Member
from ...design.shapes.rotor import Rotor
from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import Structure
from ...design.touching import GAP

SLENDER = 5.0
"""Length over width from which an upright piece is a post."""

Mask = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class Section:
    """The section of an upright, ``first`` by ``second`` in m.

    ``first`` lies along the plan vector ``axis`` (2,). ``wall`` is that of a tube, None of a solid
    piece.
    """

    axis: Array
    first: float
    second: float
    is_round: bool = False
    wall: float | None = None


def section_of(body: Body) -> Section | None:
    """Return the section of a slender upright body, at its thinner end; None of any other."""
    found = _section(body)
    if found is None or body.top - body.bottom < SLENDER * max(found.first, found.second):
        return None
    return found


def touching(structure: Structure) -> Mask:
    """Return which bodies touch which (bodies, bodies), by the boxes round them.

    Point masses, wheels and what swings touch only what they are placed on.
    """
    bodies = place_parts(replace(structure.design, turn=0.0))
    extents = np.array([body.extent for body in bodies])
    low, high = extents[:, 0] - 0.5 * GAP, extents[:, 1] + 0.5 * GAP
    reaches: Mask = np.all(low[:, None] <= high[None], axis=-1)
    near = reaches & reaches.T
    parts = structure.design.parts
    for i, body in enumerate(bodies):
        part = parts[body.part]
        if isinstance(body.shape, (Weight, Rotor)) or part.hangs_at is not None:
            bears = [parts[other.part].name == part.place.reference for other in bodies]
            near[i], near[:, i] = bears, bears
    np.fill_diagonal(near, False)
    return near


def _section(body: Body) -> Section | None:
    match body.shape:
        case Box(wall=None) as box if body.upright:
            top = box.top_plan
            first, second = min(box.length, top.length), min(box.width, top.width)
            return Section(body.bearing(0.0), first, second) if first * second > 0.0 else None
        case Solid(sides=4 | 0 as sides, bottom=bottom, top=top) if body.upright:
            least = min(bottom, top)
            return Section(body.bearing(0.0), least, least, sides == 0) if least > 0.0 else None
        case Member() as member:
            along, level, _ = member.axes
            if abs((body.rotation @ along)[2]) < 1.0 - 1.0e-9:
                return None
            axis = (body.rotation @ level)[:2]
            if member.is_round:
                return Section(axis, member.across, member.across, True, member.wall)
            return Section(axis, member.width, member.depth, False, member.wall)
        case _:
            return None
