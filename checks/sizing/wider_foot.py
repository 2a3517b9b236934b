"""A wider foot: the plate that is there, widened, or a plywood plate laid beneath all.

A frame is not widened: what stands on it would stand over its hole.
"""

import numpy as np

from ... import materials
from ...design.model import Design, Part, Place
from ...design.shapes.flat import Plate
from ...design.shapes.plans import Plan, Rectangle, Regular
from ...design.structure import Structure
from ...loads.given import GivenLoad
from ...materials.stock import sheet_thicknesses
from ...statics.tables.anchor_table import BallastRow, GuyRow
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from ..anchoring.ground_parts import GroundParts, single_foot
from .weighed_again import weighed_again

SHEET = "3/4 plywood"
MATERIAL = "softwood plywood"
"""What an added foot is cut from: judgement; its actual thickness is taken."""


class Foot(ByValue, frozen=True):
    """The foot that is to be widened: ``part`` by name, or None where one is laid beneath all.

    ``width`` in m is its present lesser width, or the least that reaches beneath all that stands.
    """

    part: str | None
    width: float


def present_foot(design: Design, ground: GroundParts) -> Foot:
    """Return the foot that ``with_width`` widens."""
    part = single_foot(design, ground)
    plate = part.shape.plate if part is not None else None
    if part is not None and plate is not None:
        return Foot(part.name, plate.plan.least_width)
    return Foot(None, float((ground.high - ground.low).min()))


def with_width(design: Design, ground: GroundParts, width: float) -> Design:
    """Return the design on a foot at least ``width`` m wide both ways, what it adds weighed too.

    A rectangle's longer way stays until the width passes it.
    """
    part = single_foot(design, ground)
    plate = part.shape.plate if part is not None else None
    if part is None or plate is None:
        return weighed_again(design, _on_a_plate(design, ground, width))
    shape = replace(plate, plan=_at_least(plate.plan, width))
    mass = part.mass
    if mass is not None:
        mass *= shape.moments().volume / plate.moments().volume
    wider = replace(part, shape=shape, mass=mass)
    parts = tuple(wider if each is part else each for each in design.parts)
    return weighed_again(design, replace(design, parts=parts))


def heavier_by(structure: Structure, ground: GroundParts, width: float) -> float:
    """Return how much in kg a foot ``width`` m wide weighs more than the one that is there."""
    design = structure.design
    part = single_foot(design, ground)
    plate = part.shape.plate if part is not None else None
    if plate is not None:
        i = ground.touching[0]
        wider = replace(plate, plan=_at_least(plate.plan, width)).moments().volume
        return float(structure.part_mass[1][i]) * (wider / plate.moments().volume - 1.0)
    length, across = np.maximum(ground.high - ground.low, width).tolist()
    return length * across * sheet_thicknesses()[SHEET] * materials.find_material(MATERIAL).typical


def unused_name(wanted: str, design: Design) -> str:
    """Return a name that no part has yet: the wanted one, or with a number behind it."""
    taken = {part.name for part in design.parts}
    taken |= {row.name for row in design.several(BallastRow)}
    number, name = 1, wanted
    while name in taken:
        number += 1
        name = f"{wanted} {number}"
    return name


def _at_least(plan: Plan, width: float) -> Plan:
    if isinstance(plan, Regular):
        return Regular(plan.sides, max(plan.across, width))
    return Rectangle(max(plan.length, width), max(plan.width, width))


def _on_a_plate(design: Design, ground: GroundParts, width: float) -> Design:
    thick = sheet_thicknesses()[SHEET]
    size = np.maximum(ground.high - ground.low, width)
    length, across = size.tolist()
    x, y = ground.middle.tolist()
    name = unused_name("wider foot", design)
    plate = Part(
        name, Plate(Rectangle(length, across), thick), Place(at=(x, y, 0.0)), material=MATERIAL
    )
    roots = [i for i, part in enumerate(design.parts) if part.place.reference is None]
    parts = [
        _lifted(part, plate, ground, thick, alone=len(roots) == 1) if i in roots else part
        for i, part in enumerate(design.parts)
    ]
    parts = [
        part if part.hangs_at is None else replace(part, hangs_at=part.hangs_at + thick)
        for part in parts
    ]
    return replace(design, parts=(*parts, plate), tables=_raised(design, thick))


def _lifted(part: Part, plate: Part, ground: GroundParts, by: float, alone: bool) -> Part:
    """Return a part that stood on nothing, lifted onto the plate.

    A piece of one root, or what lies flat, is said to stand on the plate; the rest is lifted by its
    place alone, since it may be carried by others than what it touches.
    """
    place = part.place
    x, y, z = place.at
    middle: Array = ground.middle
    in_middle = bool(np.hypot(*middle) < 1.0e-9)
    if (alone or part.shape.lies_flat) and (in_middle or not place.mirror):
        at = (x - float(middle[0]), y - float(middle[1]), z)
        return replace(part, place=replace(place, on=plate.name, at=at))
    return replace(part, place=replace(place, at=(x, y, z + by)))


def _raised(design: Design, by: float) -> dict[type, object]:
    """Return the design's tables with what they place above ground lifted too."""
    tables = dict(design.tables)
    loads, guys = design.several(GivenLoad), design.several(GuyRow)
    if loads:
        tables[GivenLoad] = tuple(
            replace(load, at=(load.at[0], load.at[1], load.at[2] + by)) for load in loads
        )
    if guys:
        tables[GuyRow] = tuple(replace(row, height=row.height + by) for row in guys)
    return tables
