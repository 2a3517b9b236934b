"""What a fastener meets in a part: how far the wood reaches along it, and how its grain runs."""

from dataclasses import dataclass

import numpy as np

from ... import materials
from ...design.model import Part
from ...design.placing import Body
from ...design.shapes.ball import Ball
from ...design.shapes.bodies import Cone, Shell, Solid
from ...design.shapes.boxes import Box
from ...design.shapes.cutout import Cutout
from ...design.shapes.flat import Frame, Panel, Plate
from ...design.shapes.gables import Gable
from ...design.shapes.member import Member
from ...design.shapes.roofs import Dome, Vault
from ...design.shapes.shape import Array

STEEL = ("steel", "stainless steel")

_ALONG = 0.7
"""Cosine above which a fastener counts as driven along an axis."""


@dataclass(frozen=True)
class Met:
    """What a fastener meets: ``thickness`` in m along it, and ``into`` in the words of a joint."""

    thickness: float
    into: str


@dataclass(frozen=True)
class Stuff:
    """A part's material for fasteners: its specific gravities, None where none is published.

    ``gravity`` is that of NDS, on oven-dry volume, ``gravity_at_12`` on the volume at 12 %.
    ``withdrawal_gravity`` is the one for what pulls out: of panels' faces it is lower.
    """

    name: str
    is_steel: bool
    gravity: float | None
    gravity_at_12: float | None
    withdrawal_gravity: float | None


def stuff(part: Part) -> Stuff:
    """Return what a part is made of, as fasteners find it."""
    return stuff_of(part.material)


def stuff_of(material: str | None) -> Stuff:
    """Return a material as fasteners find it, by its name."""
    if material is None:
        return Stuff("what has no material named", False, None, None, None)
    of = materials.find(material)
    return Stuff(
        of.name,
        of.name in STEEL,
        of.specific_gravity,
        of.gravity_at_12,
        of.withdrawal_gravity,
    )


def met(body: Body, part: Part, direction: Array) -> Met:
    """Return what a fastener finds in a body that it enters along ``direction`` (3,).

    Of sheets, their face or edge; of wood the grain runs along the longest of a solid piece, round
    a frame, up the walls of a hollow body (so that they end in end grain): judgement, and told
    as assumed. Of a ball nobody knows: end grain. ValueError for a wheel or a point.
    """
    sheet = part.material is not None and materials.find(part.material).kind == "panel"
    thickness, edge = _reach(body, body.rotation.T @ direction, sheet)
    if sheet:
        return Met(thickness, "panel edge" if edge else "panel face")
    return Met(thickness, "end grain" if edge else "side grain")


def _reach(body: Body, along: Array, sheet: bool) -> tuple[float, bool]:
    """Return how far a body reaches along a direction of its own, and whether on edge or end."""
    upright = abs(along[2]) > _ALONG
    match body.shape:
        case Plate(plan=plan, thickness=thickness):
            return (thickness, False) if upright else (plan.least_width, True)
        case Frame(width=width, height=height):
            return (height, False) if upright else (width, False)
        case Panel(width=width, height=height, thickness=thickness):
            return _of_three(along, (width, thickness, height), flat=1)
        case Cutout() as cut:
            return _of_three(along, (cut.width, cut.thickness, cut.height), flat=1)
        case Box() as box:
            return _of_box(box, along, sheet)
        case Solid(bottom=bottom, top=top, height=height):
            return (height, True) if upright else (0.5 * (bottom + top), False)
        case Shell(height=height, wall=wall):
            return (height, True) if upright else (wall, False)
        case Cone(height=height, wall=wall) | Dome(height=height, wall=wall):
            return _of_roof(upright, height, wall)
        case Gable(height=height, thickness=wall) | Vault(height=height, wall=wall):
            return _of_roof(upright, height, wall)
        case Member() as stick:
            return _of_member(stick, along)
        case Ball(across=across):
            return across, True
        case _:
            raise ValueError("no fastener is driven into a wheel or a point")


def _of_three(along: Array, sizes: tuple[float, float, float], flat: int) -> tuple[float, bool]:
    """Return the size nearest a direction; a board is on edge but across its ``flat`` way."""
    axis = int(np.abs(along).argmax())
    return sizes[axis], axis != flat


def _of_box(box: Box, along: Array, sheet: bool) -> tuple[float, bool]:
    sizes = (box.length, box.width, box.height)
    axis = int(np.abs(along).argmax())
    if box.wall is None:
        on_edge = axis != int(np.argmin(sizes)) if sheet else axis == int(np.argmax(sizes))
        return sizes[axis], on_edge
    enters = "bottom" if along[2] > 0.0 else "top"
    on_edge = axis == 2 and enters in box.open
    return (sizes[axis], True) if on_edge else (box.wall, False)


def _of_roof(upright: bool, height: float, wall: float | None) -> tuple[float, bool]:
    if wall is None or upright:
        return height, True
    return wall, False


def _of_member(stick: Member, along: Array) -> tuple[float, bool]:
    axis, level, other = stick.axes
    if abs(float(along @ axis)) > _ALONG:
        return stick.length, True
    if stick.is_round:
        return (stick.across if stick.wall is None else stick.wall), False
    wide = abs(float(along @ level)) >= abs(float(along @ other))
    return (stick.width if wide else stick.depth), False
