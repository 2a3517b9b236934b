"""Fasteners driven alike at a joint: straight from one part into the other, or into blocks."""

from collections.abc import Callable
from math import inf

import numpy as np

from ...design.placing import Body
from ...design.structure import Structure
from ...materials.stock import lumber_sizes
from ...statics.contacts.face import Face
from ...statics.tables.fastener_key import CROWN_ACROSS
from ...statics.tables.joint_table import JointRow
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..timber.nds.pulled_out import least_penetration
from ..timber.terms.capacity import Capacity
from ..timber.terms.driven import Driven
from ..timber.terms.joint_material import Met, joint_material_of, met, stuff
from . import fastener_layout as layout
from .joint_faults import joint_fault

BLOCKS = "the blocks"
CLEAT = "spruce-pine-fir"
"""The wood of blocks and cleats where none is named: a light, common one (judgement)."""

_BLOCK = "2x2"
"""What blocks are sawn of where their thickness is not said (judgement)."""


class FastenerSet(ByIdentity, frozen=True):
    """Fasteners driven alike: what each ``holds`` and how it is ``driven``, the heads in one part.

    ``draws`` (n, 3) are unit vectors: a force on ``of``'s side along them draws the fastener.
    """

    holds: Capacity
    driven: Driven
    head_in: str
    point_in: str
    draws: Array


def straight(
    structure: Structure,
    row: JointRow,
    pair: tuple[Body, Body],
    face: Face,
    count: int,
    held: Callable[[Driven], Capacity],
) -> FastenerSet:
    """Return fasteners from one part straight into the other.

    Unless it is said, from the part that is thinner along them.
    """
    of, to = pair
    parts = structure.design.parts
    upper = _met(structure, row, of, face.leaves)
    lower = _met(structure, row, to, -face.leaves)
    head_in = row.head_in or (row.of if upper.thickness <= lower.thickness else row.to)
    if row.toe_nailed and row.head_in is None and upper.into != lower.into:
        # slanting from the piece whose end it is into the side of the other
        head_in = row.of if upper.into == "end grain" else row.to
    if head_in == row.of:
        side, main, side_part, main_part = upper, lower, of.part, to.part
    else:
        side, main, side_part, main_part = lower, upper, to.part, of.part
    driven = Driven(
        side=stuff(parts[side_part]),
        main=stuff(parts[main_part]),
        through=side.thickness if row.through is None else row.through,
        room=main.thickness,
        into=row.into or main.into,
        plate=row.steel_plate,
        washer=row.washer,
        toe_nailed=row.toe_nailed,
        made_wet=row.made_wet,
        stays_dry=row.stays_dry,
        crown_across=row.crown == CROWN_ACROSS,
    )
    point_in = row.to if head_in == row.of else row.of
    draws = np.repeat(face.leaves[None], count, axis=0)
    return FastenerSet(held(driven), driven, head_in, point_in, draws)


def to_blocks(
    structure: Structure,
    row: JointRow,
    pair: tuple[Body, Body],
    face: Face,
    points: Array,
    held: Callable[[Driven], Capacity],
) -> tuple[FastenerSet, ...]:
    """Return the fasteners of each part into blocks that lie in the corner between them.

    A part that would be met on edge or in its end is fastened across: through its wall. Where a
    part is too thick to go through, the heads are in the blocks.
    """
    parts = structure.design.parts
    axes = np.stack([face.right, face.up])
    outward = layout.outward(face.area, face.in_plane(points)) @ axes
    found: list[FastenerSet] = []
    for body, name, leaves in ((pair[0], row.of, 1.0), (pair[1], row.to, -1.0)):
        along = _met(structure, row, body, leaves * face.leaves)
        across = along.into in ("panel edge", "end grain")
        wall = _met(structure, row, body, outward[0]) if across else along
        draws = leaves * outward if across else np.repeat(face.leaves[None], len(points), axis=0)
        blocks, own = joint_material_of(row.blocks), stuff(parts[body.part])
        needs = least_penetration(row.fastener)
        from_blocks = wall.thickness + needs > row.fastener.need("length")
        driven = Driven(
            side=blocks if from_blocks else own,
            main=own if from_blocks else blocks,
            through=(row.through or block_thickness()) if from_blocks else wall.thickness,
            room=wall.thickness if from_blocks else inf,
            into=wall.into if from_blocks else "side grain",
            plate=row.steel_plate,
            washer=row.washer,
            made_wet=row.made_wet,
            stays_dry=row.stays_dry,
            crown_across=row.crown == CROWN_ACROSS,
        )
        heads = (BLOCKS, name) if from_blocks else (name, BLOCKS)
        found.append(FastenerSet(held(driven), driven, *heads, draws))
    return tuple(found)


def _met(structure: Structure, row: JointRow, body: Body, direction: Array) -> Met:
    part = structure.design.parts[body.part]
    try:
        return met(body, part, direction)
    except ValueError as wrong:
        key = "of" if part.name == row.of else "to"
        raise joint_fault(structure, row, key, part.name, "parts of wood", str(wrong)) from None


def block_thickness() -> float:
    """Return how thick in m blocks and cleats are taken to be where it is not said."""
    return lumber_sizes()[_BLOCK][0]


class JointPlace(ByIdentity, frozen=True):
    """One joint where one copy meets another: its face and its fasteners (n, 3).

    ``of`` and ``to`` are bodies by index. With blocks both parts are fastened to them: two ``sets``
    of fasteners at the same points, each of which carries all; else one.
    """

    row: JointRow
    of: int
    to: int
    face: Face
    points: Array
    sets: tuple[FastenerSet, ...]
    laid_out: bool
