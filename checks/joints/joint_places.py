"""The joints of a design as they are built: each fastener where it stands, and what holds there."""

from collections.abc import Sequence
from dataclasses import dataclass

from ...design.faults import DesignError, Fault
from ...design.shapes.shape import Array
from ...design.structure import Structure
from ...statics.joint_table import JointRow
from ...statics.meeting import Face, gap, meeting
from .driven import Driven
from .fastener_capacity import Capacity, capacity
from .fastener_points import OFF, laid_out, points_on
from .fastener_sets import FastenerSet, straight, to_blocks
from .joint_faults import beside, joint_fault, not_touching


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
    sets: tuple[FastenerSet, ...]
    laid_out: bool


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


Touching = Sequence[tuple[int, int, Face]]
"""Bodies by index that meet, ``of`` and ``to``, with the face on which they do."""


def touching(structure: Structure, row: JointRow) -> Touching:
    """Return where the parts of a joint meet. DesignError where one of them meets none."""
    bodies, parts = structure.bodies, structure.design.parts
    of = [i for i, body in enumerate(bodies) if parts[body.part].name == row.of]
    to = [i for i, body in enumerate(bodies) if parts[body.part].name == row.to]
    bridged = row.blocks is not None or row.through is not None
    faces = [(i, j, meeting(bodies[i], bodies[j], bridged)) for i in of for j in to]
    found = [(i, j, face.widened(OFF)) for i, j, face in faces if face is not None]
    for i in of:
        if not any(i == first for first, _, _ in found):
            apart = min(gap(bodies[i], bodies[j]) for j in to)
            raise joint_fault(
                structure,
                row,
                "to",
                row.to,
                f"a part that touches {row.of}",
                not_touching(apart, structure.design.units == "metric"),
            )
    return found


def places_of(
    structure: Structure, row: JointRow, basis: str, faces: Touching | None = None
) -> list[Place]:
    """Return one joint at each place, ``faces`` where they are known. DesignError as ``places``."""
    bodies = structure.bodies
    known: dict[Driven, Capacity] = {}

    def held(driven: Driven) -> Capacity:
        if driven not in known:
            known[driven] = _capacity(structure, row, driven, basis)
        return known[driven]

    found: list[Place] = []
    for i, j, face in touching(structure, row) if faces is None else faces:
        points = points_on(structure, row, face)
        if not len(points):
            continue
        pair = bodies[i], bodies[j]
        if row.blocks is None:
            sets = (straight(structure, row, pair, face, len(points), held),)
        else:
            sets = to_blocks(structure, row, pair, face, points, held)
        found.append(Place(row, i, j, face, points, sets, laid_out(row)))
    _check_points(structure, row, found)
    return found


def _capacity(structure: Structure, row: JointRow, driven: Driven, basis: str) -> Capacity:
    try:
        return capacity(row.fastener, driven, basis)
    except ValueError as unknown:
        name = str(unknown)
        stuffs = (driven.side.name, driven.main.name)
        found = name if name in stuffs else row.fastener.name
        raise joint_fault(
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
        raise beside(structure, row, len(row.points) - held, len(row.points), "points")
