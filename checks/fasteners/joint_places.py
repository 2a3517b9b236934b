"""The joints of a design as they are built: each fastener where it stands, and what holds there."""

from collections.abc import Callable, Sequence
from functools import partial

import numpy as np

from ...design.faults import DesignError, Fault
from ...design.structure import Structure
from ...design.touching import gap
from ...statics.contacts.face import Face
from ...statics.contacts.meeting import meeting
from ...statics.tables.joint_table import JointRow
from ...units.arrays import Array
from ...units.frozen import replace
from ..timber.books import book_of
from ..timber.terms.capacity import Capacity
from ..timber.terms.driven import Driven
from .fastener_points import (
    OFF,
    laid_out,
    other_points,
    points_on,
    where_is_open,
)
from .fastener_sets import JointPlace, straight, to_blocks
from .joint_faults import beside, joint_fault, not_touching
from .spacing import HALF, alike, free_region, nearest_of
from .splitting import whole

_HALVINGS = 8
"""So often the distance is halved in which fasteners are drawn together: to half a percent."""


def places(structure: Structure, basis: str) -> tuple[JointPlace, ...]:
    """Return every joint at every place, with what one fastener holds there.

    DesignError with all that is wrong: parts that do not touch, fasteners beside the face on which
    they meet, stuff for which no value is published.
    """
    found: list[JointPlace] = []
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


def joint_touching(structure: Structure, row: JointRow) -> Touching:
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
) -> list[JointPlace]:
    """Return one joint at each place, ``faces`` where they are known. DesignError as ``places``."""
    bodies = structure.bodies
    known: dict[Driven, Capacity] = {}

    def held(driven: Driven) -> Capacity:
        if driven not in known:
            known[driven] = _capacity(structure, row, driven, basis)
        return known[driven]

    def placed(i: int, j: int, face: Face, points: Array) -> JointPlace:
        pair = bodies[i], bodies[j]
        if row.blocks is None:
            sets = (straight(structure, row, pair, face, len(points), held),)
        else:
            sets = to_blocks(structure, row, pair, face, points, held)
        return JointPlace(row, i, j, face, points, sets, laid_out(row))

    found: list[JointPlace] = []
    fits: dict[tuple[object, ...], bool] = {}
    for i, j, face in joint_touching(structure, row) if faces is None else faces:
        points = points_on(structure, row, face)
        if not len(points):
            continue
        one = placed(i, j, face, points)
        if where_is_open(row):
            key = alike(structure, one)
            if key not in fits:
                nearest = nearest_of(structure, [one])
                fits[key] = nearest is None or nearest.fits
            if not fits[key]:
                one = _with_room(structure, one, partial(placed, i, j, face))
        found.append(whole(structure, one, basis))
    _check_points(structure, row, found)
    return found


def _with_room(
    structure: Structure, one: JointPlace, placed: Callable[[Array], JointPlace]
) -> JointPlace:
    """Return a place whose fasteners are set where they have room; of none, where they have most.

    In full room before such as leaves bolts and lag screws half of their value, and no farther
    apart than they were, or need: farther out they would seem to hold more.
    """

    def room(place: JointPlace, used: float = 1.0) -> float:
        nearest = nearest_of(structure, [place], used)
        return 0.0 if nearest is None or nearest.fits else nearest.use

    tried, turn = [one], structure.design.turn
    for used in (1.0, HALF):
        free = free_region(structure, one, used)
        tried += [placed(each) for each in other_points(one.face, one.row.count, free, turn)]
        for each in tried:
            if room(each, used) == 0.0:
                return _drawn_in(one, each, lambda nearer, by=used: room(nearer, by) == 0.0)
    uses = [room(each) for each in tried]
    return tried[uses.index(min(uses))]


def _drawn_in(
    before: JointPlace, found: JointPlace, fits: Callable[[JointPlace], bool]
) -> JointPlace:
    """Return a place with its fasteners drawn toward their middle as far as has room.

    Not nearer to it than they stood ``before``.
    """
    middle = found.points.mean(axis=0)
    away = found.points - middle
    spread = float(np.linalg.norm(away, axis=1).max(initial=0.0))
    own = before.points - before.points.mean(axis=0)
    low = float(np.linalg.norm(own, axis=1).max(initial=0.0)) / max(spread, 1.0e-9)
    if low >= 1.0:
        return found

    def drawn(share: float) -> JointPlace:
        return replace(found, points=middle + share * away)

    if fits(drawn(low)):
        return drawn(low)
    high = 1.0
    for _ in range(_HALVINGS):
        share = 0.5 * (low + high)
        low, high = (low, share) if fits(drawn(share)) else (share, high)
    return drawn(high)


def _capacity(structure: Structure, row: JointRow, driven: Driven, basis: str) -> Capacity:
    try:
        book = book_of(basis)
        apart = book.room(
            row.fastener, predrilled=row.predrilled, gravity=driven.main.gravity
        ).along
        return book.capacity(row.fastener, driven, basis, row.count or 1, apart)
    except ValueError as unknown:
        name = str(unknown)
        stuffs = (driven.side.name, driven.main.name)
        found = name if name in stuffs else row.fastener.name
        raise joint_fault(
            structure,
            row,
            "fastener",
            found,
            f"wood or panels that {book_of(basis).title} has values for"
            if name in stuffs
            else "a fastener whose sizes and steel are published",
            "leave the joint out: it is then listed as not checked"
            if name in stuffs
            else f"{name}; or a wood screw of that number",
        ) from None


def _check_points(structure: Structure, row: JointRow, found: Sequence[JointPlace]) -> None:
    if row.points is None:
        return
    held = sum(len(place.points) for place in found)
    if held < len(row.points):
        raise beside(structure, row, len(row.points) - held, len(row.points), "points")
