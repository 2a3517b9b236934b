"""The joints of a design as they are built: each fastener where it stands, and what holds there."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import inf

import numpy as np

from ..design import plane
from ..design.faults import DesignError, Fault
from ..design.placing import Body, about_z
from ..design.shapes.shape import Array
from ..design.structure import Structure
from ..units import INCH
from . import fastener_layout as layout
from .carried import Fastened, in_a_circle
from .crown import ACROSS
from .driven import Driven, least_penetration
from .fastener_capacity import Capacity, capacity
from .joint_material import Met, met, stuff, stuff_of
from .joint_table import JointRow
from .meeting import Face, gap, meeting

BLOCK = 0.0381
"""Thickness (m) of blocks where it is not said: a 2x2, as sold."""

BLOCKS = "the blocks"

OFF = 0.006
"""A fastener whose middle lies farther (m) off the face on which the parts meet holds nothing."""


@dataclass(frozen=True, eq=False)
class FastenerSet:
    """Fasteners driven alike: what each ``holds`` and how it is ``driven``, the heads in one part.

    ``draws`` (n, 3) are unit vectors: a force on ``of``'s side along them draws the fastener.
    """

    holds: Capacity
    driven: Driven
    head_in: str
    point_in: str
    draws: Array


@dataclass(frozen=True, eq=False)
class Place:
    """One joint where one copy meets another: its face and its fasteners (n, 3).

    ``of`` and ``to`` are bodies by index. With blocks both parts are fastened to them: two ``sets``
    of fasteners at the same points, each of which carries all; else one.
    """

    row: JointRow
    of: int
    to: int
    face: Face
    points: Array
    sets: tuple["FastenerSet", ...]
    laid_out: bool


def fastened_by(structure: Structure) -> Fastened:
    """Return by part the parts that the design's joints fasten it to.

    DesignError where a part is said to be loose and fastened at once, or joints run in a circle.
    """
    design = structure.design
    index = {part.name: i for i, part in enumerate(design.parts)}
    found: dict[int, list[int]] = {}
    for row in design.several(JointRow):
        found.setdefault(index[row.of], []).append(index[row.to])
        if design.parts[index[row.of]].loose:
            raise _fault(
                structure,
                row,
                "of",
                row.of,
                "a part that is not loose",
                f"leave out 'loose' of {row.of}, or this joint",
            )
    _check_circle(structure, found)
    return found


def places(structure: Structure, basis: str) -> tuple[Place, ...]:
    """Return every joint at every place, with what one fastener holds there.

    DesignError with all that is wrong: parts that do not touch, fasteners beside the face on which
    they meet, stuff for which no value is published.
    """
    found: list[Place] = []
    faults: list[Fault] = []
    for row in structure.design.several(JointRow):
        try:
            found += places_of(structure, row, basis)
        except DesignError as wrong:
            faults += wrong.faults
    if faults:
        raise DesignError(tuple(faults))
    return tuple(found)


def places_of(structure: Structure, row: JointRow, basis: str) -> list[Place]:
    """Return one joint at each place. DesignError as ``places``."""
    bodies, parts = structure.bodies, structure.design.parts
    of = [i for i, body in enumerate(bodies) if parts[body.part].name == row.of]
    to = [i for i, body in enumerate(bodies) if parts[body.part].name == row.to]
    bridged = row.blocks is not None or row.through is not None
    faces = [(i, j, meeting(bodies[i], bodies[j], bridged)) for i in of for j in to]
    touching = [(i, j, face) for i, j, face in faces if face is not None]
    for i in of:
        if not any(i == first for first, _, _ in touching):
            apart = min(gap(bodies[i], bodies[j]) for j in to)
            raise _fault(
                structure,
                row,
                "to",
                row.to,
                f"a part that touches {row.of}",
                _apart(apart, structure.design.units == "metric"),
            )
    known: dict[Driven, Capacity] = {}

    def held(driven: Driven) -> Capacity:
        if driven not in known:
            known[driven] = _capacity(structure, row, driven, basis)
        return known[driven]

    found: list[Place] = []
    for i, j, face in touching:
        points = _points(structure, row, face)
        if not len(points):
            continue
        pair = bodies[i], bodies[j]
        if row.blocks is None:
            sets = (_straight(structure, row, pair, face, len(points), held),)
        else:
            sets = _to_blocks(structure, row, pair, face, points, held)
        found.append(Place(row, i, j, face, points, sets, _laid_out(row)))
    _check_points(structure, row, found)
    return found


def _laid_out(row: JointRow) -> bool:
    """Return whether it is left open where the fasteners stand."""
    return row.points is None and row.ring is None and row.length is None


def _points(structure: Structure, row: JointRow, face: Face) -> Array:
    """Return where the fasteners stand on a face, on the site (n, 3)."""
    turn = structure.design.turn
    if row.points is not None:
        local = _as_given(row.points, face, turn)
        on_it = plane.holds(face.area.buffer(OFF), local)
        return face.on_site(local[on_it])
    if row.ring is not None:
        local = layout.on_a_ring(face.area, row.count, row.ring, (row.start or 0.0) + turn)
    elif row.where == "ring":
        local = layout.evenly(face.area, row.count)
    elif row.where == "rectangle" or row.length is not None:
        local = layout.in_rows(face.area, row.count, row.length, row.width)
        if row.length is not None:
            middle = local.mean(axis=0)
            local = middle + (local - middle) @ about_z(turn if face.is_level else 0.0)[:2, :2].T
    elif row.where == "each side":
        try:
            local = layout.on_each_side(face.area, row.count)
        except ValueError as sides:
            raise _sides_fault(structure, row, int(sides.args[0])) from None
    else:
        local = layout.where_nothing_is_said(face.area, row.count)
    beside = ~plane.holds(face.area.buffer(OFF), local)
    if beside.any():
        raise _beside(structure, row, int(beside.sum()), len(local))
    return face.on_site(local)


def _as_given(points: Sequence[tuple[float, float]], face: Face, turn: float) -> Array:
    """Return points of the design's own axes in a face's plane.

    On a level face they are x and y; on an upright one the first is x, or y where the face runs
    from front to back, and the second the height.
    """
    given = np.asarray(points, dtype=float)
    back = about_z(turn)
    if face.is_level:
        whole = np.column_stack([given, np.full(len(given), face.origin[2])])
        return face.in_plane(whole @ back.T)
    right = back.T @ face.right
    axis = int(abs(right[1]) > abs(right[0]))
    start = float((back.T @ face.origin)[axis])
    along = (given[:, 0] - start) / float(right[axis])
    return np.column_stack([along, given[:, 1]])


def _straight(
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
        crown_across=row.crown == ACROSS,
    )
    point_in = row.to if head_in == row.of else row.of
    draws = np.repeat(face.leaves[None], count, axis=0)
    return FastenerSet(held(driven), driven, head_in, point_in, draws)


def _to_blocks(
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
        blocks, own = stuff_of(row.blocks), stuff(parts[body.part])
        needs = least_penetration(row.fastener)
        from_blocks = wall.thickness + needs > row.fastener.need("length")
        driven = Driven(
            side=blocks if from_blocks else own,
            main=own if from_blocks else blocks,
            through=(row.through or BLOCK) if from_blocks else wall.thickness,
            room=wall.thickness if from_blocks else inf,
            into=wall.into if from_blocks else "side grain",
            plate=row.steel_plate,
            washer=row.washer,
            made_wet=row.made_wet,
            stays_dry=row.stays_dry,
            crown_across=row.crown == ACROSS,
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
        raise _fault(structure, row, key, part.name, "parts of wood", str(wrong)) from None


def _capacity(structure: Structure, row: JointRow, driven: Driven, basis: str) -> Capacity:
    try:
        return capacity(row.fastener, driven, basis)
    except ValueError as unknown:
        name = str(unknown)
        stuffs = (driven.side.name, driven.main.name)
        found = name if name in stuffs else row.fastener.name
        raise _fault(
            structure,
            row,
            "fastener",
            found,
            "wood or panels for which NDS prints a specific gravity"
            if name in stuffs
            else "a fastener whose sizes and steel are published",
            "leave the joint out: it is then listed as not checked"
            if name in stuffs
            else f"{name}; or a wood screw of that number",
        ) from None


def _check_points(structure: Structure, row: JointRow, found: Sequence[Place]) -> None:
    if row.points is None:
        return
    held = sum(len(place.points) for place in found)
    if held < len(row.points):
        raise _beside(structure, row, len(row.points) - held, len(row.points), "points")


def _check_circle(structure: Structure, found: dict[int, list[int]]) -> None:
    parts = structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    below: list[tuple[int, ...]] = []
    for p, part in enumerate(parts):
        reference = part.place.reference
        below.append(tuple(found.get(p, () if reference is None else (index[reference],))))
    left = in_a_circle(below)
    if left:
        names = [parts[p].name for p in left]
        row = next(row for row in structure.design.several(JointRow) if row.of in names)
        raise _fault(
            structure,
            row,
            "to",
            row.to,
            "a part that does not hang on this one in turn",
            f"{', '.join(names)} carry each other in a circle: change 'of' and 'to'",
        )


def _sides_fault(structure: Structure, row: JointRow, sides: int) -> DesignError:
    if sides > 12:
        return _fault(
            structure, row, "where", "each side", "a face with straight sides", "where = 'ring'"
        )
    more = sides * (row.count // sides + 1)
    return _fault(
        structure,
        row,
        "count",
        str(row.count),
        f"as many on each of the {sides} sides on which they touch",
        f"count = {more}",
    )


def _beside(
    structure: Structure, row: JointRow, number: int, count: int, key: str | None = None
) -> DesignError:
    key = key or ("ring" if row.ring is not None else "length" if row.length else "where")
    return _fault(
        structure,
        row,
        key,
        f"{number} of {count} stand where {row.of} and {row.to} do not touch",
        "all of them where the two parts touch",
        f"leave out '{key}', and they are set evenly where the parts touch",
    )


def _apart(distance: float, metric: bool) -> str:
    shown = f"{distance * 1000.0:.0f} mm" if metric else f"{distance / INCH:.3g} in"
    if distance <= 0.0:
        return "they meet in an edge or a point only, or lie within each other: add a block between"
    return f"they lie {shown} apart: add the block or cleat between them as a part"


def _fault(
    structure: Structure, row: JointRow, key: str, found: str, expected: str, hint: str
) -> DesignError:
    lines = structure.design.lines
    line = lines.get((row.name, key), lines.get((row.name, None)))
    return DesignError((Fault(structure.design.file, line, row.name, key, found, expected, hint),))
