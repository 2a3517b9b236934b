"""What was assumed of joints, seams, named loads and the strength of parts, as data."""

from collections.abc import Iterator
from enum import StrEnum
from itertools import chain

from ...loads.combinations import EN1995, FACTORED, resistance_basis
from ...materials.lumber import Lumber
from ...materials.metal import Metal
from ...materials.plastic import Plastic
from ...materials.sheets import Sheet
from ...statics.contacts.fit import FIT
from ..examination import Examination
from ..joints.joint_check import JointFound
from ..judged.finding import Amount, Finding, FindingSlot
from ..members.member_check import MemberStrength
from ..seams.seam_fasteners import room_along_a_seam
from ..timber.books import book_of, titled
from ..timber.nds.adjustments import load_duration, time_effect

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..seams.seam_check import SeamFound

BOARDS = (
    *("wall panel", "box wall", "roof slope", "roof panel", "lid", "deck"),
    *("board between posts", "board beyond its posts", "board on its foot"),
    *("cut-out", "propped cut-out"),
)
"""Roles in which lumber is laid as boards."""

_JUDGED = "judgement"
_THICK = ("bolt", "lag screw")


class OfParts(StrEnum):
    """What was assumed of joints, seams, loads and strength."""

    JOINT = "of a joint"
    LAID_OUT = "fasteners along the face"
    LAID_OUT_SIDES = "fasteners along each side"
    LAID_OUT_ROWS = "fasteners in rows"
    INTO_BLOCKS = "into blocks"
    HEADS_IN = "heads in the thinner"
    POINTS_IN = "points in"
    POINTS_IN_EDGE = "points in an edge"
    POINTS_IN_FACE = "points in a face"
    MADE_WET = "fastened in wet wood"
    CROWNS = "crowns along the grain"
    SEAM = "of seams"
    ROW_OF_ITS_OWN = "each panel by a row"
    SEAM_ROOM = "room along a seam"
    CLEATS = "cleats"
    CLEATS_THICK = "cleats, how thick"
    THIN_NAILS = "nails thinner than printed"
    NEAREST_PART = "a load on the nearest part"
    NEAREST_PART_OFF = "a load beside the nearest part"
    BESIDE_ITS_PART = "a load beside its part"
    ONE_LOAD = "the load acts by itself"
    SEVERAL_LOADS = "loads act by themselves and together"
    LASTS_EN = "duration by EN 1995-1-1"
    LASTS_FACTORED = "duration by strength design"
    LASTS = "duration by allowable stress"
    WET = "wet in use"
    GRADE = "grade"
    FACE_GRAIN = "face grain"
    FACE_GRAIN_TURNED = "face grain, which decides"
    SEPARATE_BOARDS = "boards, separate"
    HOLES = "holes not taken off"
    STUFF = "metal and plastic"
    STICKS = "sticks of the model"
    AT_CORNERS = "held at the corners"
    AT_ANCHORS = "drawn at the anchors"


def assumed_of_parts(found: Examination) -> tuple[Iterator[Finding], Iterator[Finding]]:
    """Return what joints, seams and loads leave open, and what was assumed of strength."""
    before = chain(_joints(found), _seams(found), _thin_nails(found), _loads(found))
    return before, assumed_of_strength(found)


def _of(what: OfParts, **slots: FindingSlot) -> Finding:
    return Finding(what, slots)


def _joints(found: Examination) -> Iterator[Finding]:
    for joint in found.joints:
        if said := tuple(_left_open(joint)):
            yield _of(OfParts.JOINT, name=joint.row.name, items=said)


def _left_open(joint: JointFound) -> Iterator[Finding]:
    row, of_them = joint.row, joint.fasteners
    if joint.place.laid_out:
        way = {"each side": OfParts.LAID_OUT_SIDES, "rectangle": OfParts.LAID_OUT_ROWS}
        what = way.get(row.where or "", OfParts.LAID_OUT)
        yield _of(what, count=row.count, of=row.of, to=row.to)
    if row.blocks is not None:
        yield _of(OfParts.INTO_BLOCKS, wood=row.blocks)
    elif row.head_in is None:
        yield _of(OfParts.HEADS_IN, part=of_them.head_in)
    if row.into is None and row.blocks is None:
        into = of_them.driven.into
        edges = {"panel edge": OfParts.POINTS_IN_EDGE, "panel face": OfParts.POINTS_IN_FACE}
        yield _of(edges.get(into, OfParts.POINTS_IN), into=into)
    yield from _wet_and_crowns(row.made_wet, row.stays_dry, row.fastener.kind, row.crown)


def _wet_and_crowns(
    made_wet: bool | None, stays_dry: bool, kind: str, crown: str | None
) -> Iterator[Finding]:
    if made_wet is None and not stays_dry:
        yield _of(OfParts.MADE_WET)
    if kind == "staple" and crown is None:
        yield _of(OfParts.CROWNS)


def _seams(found: Examination) -> Iterator[Finding]:
    for seam in found.fastened_seams:
        yield _of(OfParts.SEAM, name=seam.row.part, items=tuple(_seam(seam)))


def _seam(seam: "SeamFound") -> Iterator[Finding]:
    row = seam.row
    room = room_along_a_seam(row, seam.driven.side, titled(seam.holds.book))
    yield _of(OfParts.ROW_OF_ITS_OWN)
    yield _of(OfParts.SEAM_ROOM, end=Amount(room.end, "length"), edge=Amount(room.edge, "length"))
    if row.cleat is not None:
        reach = seam.holds.penetration
        what = OfParts.CLEATS_THICK if reach > 0.0 else OfParts.CLEATS
        yield _of(what, wood=row.cleat, thick=Amount(reach, "length", "up"))
    yield from _wet_and_crowns(row.made_wet, row.stays_dry, row.fastener.kind, row.crown)


def _thin_nails(found: Examination) -> Iterator[Finding]:
    """Yield what was taken of nails, brads and pins thinner than NDS prints any."""
    rows = [each.row for each in (*found.joints, *found.fastened_seams)]
    for fastener in dict.fromkeys(row.fastener for row in rows):
        if fastener.kind == "nail" and fastener.confidence == _JUDGED:
            notes, source = "; ".join(fastener.notes), fastener.source
            yield _of(OfParts.THIN_NAILS, fastener=fastener.name, notes=notes, source=source)


def _loads(found: Examination) -> Iterator[Finding]:
    """Yield on which part each named load was taken to act, and how long it lasts."""
    for one in found.loads:
        slots: dict[str, FindingSlot] = {"name": one.load.name, "part": one.part}
        if off := one.off > FIT:
            slots["off"] = Amount(one.off, "length")
        if one.load.on is None:
            yield _of(OfParts.NEAREST_PART_OFF if off else OfParts.NEAREST_PART, **slots)
        elif off:
            yield _of(OfParts.BESIDE_ITS_PART, **slots)
    judged = found.joints or any(one.loads for one in found.members.judged)
    if found.loads and judged:
        what = OfParts.SEVERAL_LOADS if len(found.loads) > 1 else OfParts.ONE_LOAD
        yield _of(what, lasting=(_lasting(found),))


def _lasting(found: Examination) -> Finding:
    basis = resistance_basis(found.site)
    if book_of(basis).name == EN1995:
        from ..timber.en1995.stuff import (  # noqa: PLC0415 - of pieces by that book alone
            NORMAL,
            WIND_DURATION,
            k_mod,
        )

        live, wind = (k_mod("solid", load, False) for load in (NORMAL, WIND_DURATION))
        return _of(OfParts.LASTS_EN, live=f"{live:.2f}", wind=f"{wind:.2f}")
    if basis == FACTORED:
        live, wind = time_effect("normal"), time_effect("wind")
        return _of(OfParts.LASTS_FACTORED, live=f"{live:.1f}", wind=f"{wind:.1f}")
    live, wind = load_duration("normal"), load_duration("wind or earthquake")
    return _of(OfParts.LASTS, live=f"{live:.1f}", wind=f"{wind:.1f}")


def assumed_of_strength(found: Examination) -> Iterator[Finding]:
    """Yield what was taken for granted of the strength of parts."""
    judged = found.members.judged
    if not judged:
        return
    if any(isinstance(one.stuff, (Lumber, Sheet)) for one in judged):
        yield _of(OfParts.WET)
    grades: dict[str, list[str]] = {}
    for one in judged:
        if isinstance(one.stuff, Lumber) and not one.graded:
            grades.setdefault(one.stuff.grade, []).append(one.name)
    for grade, names in grades.items():
        yield _of(OfParts.GRADE, names=tuple(names), grade=grade)
    yield from _sheets([one for one in judged if isinstance(one.stuff, Sheet)])
    boards = [one for one in judged if isinstance(one.stuff, Lumber) and one.role in BOARDS]
    if boards:
        yield _of(OfParts.SEPARATE_BOARDS, names=_names(boards))
    if drilled := _drilled(found):
        yield _of(OfParts.HOLES, names=drilled)
    stuffs = dict.fromkeys(one.stuff for one in judged if isinstance(one.stuff, (Metal, Plastic)))
    for stuff in stuffs:
        yield _of(OfParts.STUFF, name=stuff.name, means=stuff.stands_for)
    sticks = [one for one in judged if one.forces]
    if sticks:
        yield _of(OfParts.STICKS, names=_names(sticks))
    if sticks or found.joints:
        at_anchors = bool(found.held.anchors) and not found.held.guys
        yield _of(OfParts.AT_ANCHORS if at_anchors else OfParts.AT_CORNERS)


def _sheets(sheets: list[MemberStrength]) -> Iterator[Finding]:
    deciding = tuple(one.name for one in sheets if one.by_grain)
    if deciding:
        yield _of(OfParts.FACE_GRAIN_TURNED, names=_names(sheets), deciding=deciding)
    elif sheets:
        yield _of(OfParts.FACE_GRAIN, names=_names(sheets))


def _names(members: list[MemberStrength]) -> tuple[str, ...]:
    return tuple(one.name for one in members)


def _drilled(found: Examination) -> tuple[str, ...]:
    """Return the names of judged lumber that bolts or lag screws go through or into."""
    thick = [one.row for one in found.joints if one.row.fastener.kind in _THICK]
    parts = {name for row in thick for name in (row.of, row.to)}
    judged = found.members.judged
    names = [one.name for one in judged if isinstance(one.stuff, Lumber) and one.name in parts]
    return tuple(dict.fromkeys(names))
