"""The strength of single parts in words: what governs, what was taken for granted, what was not."""

from collections.abc import Iterator

from .. import materials
from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from ..checks.members.columns import column_rule
from ..checks.members.member_check import Member
from ..materials.lumber import Lumber
from ..materials.metal import Metal
from ..materials.plastic import Plastic
from ..materials.sheets import Sheet
from .amounts import Amounts
from .remark import joined

MEMORY = "memory"

_HELD = {
    False: "Joints and parts are judged as if the ground held it, pressed and drawn, at the "
    "corners of each part's own foot: whether it stands at all is told apart.",
    True: "Joints and parts are judged with the ground pressing at the corners of each part's own "
    "foot, and drawn at the anchors alone; where these do not hold it, as if the ground did.",
}
"""What holds a piece where its joints and parts are judged, by whether anchors do."""

_NAMED = 6
_WHY = {
    "no values": "no published strength of its stuff in this size is at hand",
    "no material": "its material is not named",
    "thin wall": "its wall is so thin that it may buckle first",
    "lattice": "it is a lattice, and what its slats measure is not told",
    "held otherwise": "how it is held is not plain from the drawing",
    "across grain": "its boards would bend across their grain, for which no strength is published",
    "curved": "it is curved",
    "free edges": "too many of its edges are free",
    "knee": "what holds its slopes where they break is not drawn",
    "at points": "it is held at single places, not along its eaves",
    "load on it": "what stands on it presses beside what bears it",
}
_HOW = {
    "post": "as a post",
    "arm": "as an arm that stands out from where it is held",
    "beam": "as a beam over what holds it",
    "brace": "as a brace",
    "leg": "as a leg",
    "foot": "as a foot on the ground, side by side round its ring",
    "ring": "as a ring, side by side",
    "blade": "as a blade bent flat where it joins the hub",
    "board between posts": "as strips between the posts that it touches",
    "board beyond its posts": "as a board that stands out beyond its posts",
    "board on its foot": "as a board that stands on its lower edge alone",
    "wall panel": "as strips from seam to seam, one panel under local suction",
    "box wall": "as strips from edge to edge, one wall under local suction",
    "roof slope": "as strips from eave to ridge, one slope under local suction",
    "roof panel": "as strips from hip to hip at the eave, one panel under local suction",
    "lid": "as strips over the opening beneath it, lifted by wind and pressed by what it carries",
    "deck": "as strips from beam to beam, lifted by wind and pressed by what it carries",
    "cut-out": "as a board held at its foot, level by level and across its arms",
    "propped cut-out": "as a board held at its foot and where it is propped, level by level and "
    "across its arms",
}
_WHERE = {
    "long wall": "its long wall",
    "short wall": "its short wall",
    "top": "its top",
    "upper edge": "its upper edge, which a roof pushes outward",
    "lifted edge": "the wall on edge, which the roof or lid on it lifts",
    "between": "",
    "eaves": "what stands out at the eaves",
    "ends": "what stands out at its two ends",
    "beyond": "what stands out beyond its support",
}

PLATES = ("wall panel", "box wall", "roof slope", "roof panel", "lid", "deck")
"""Roles that stay off the first screen while they use less than half of their strength."""

_THICK = ("bolt", "lag screw")
_BOARDS = (
    *PLATES,
    "board between posts",
    "board beyond its posts",
    "board on its foot",
    "cut-out",
    "propped cut-out",
)
"""Roles in which lumber is laid as boards."""


def member_of(examination: Examination, check: Check) -> Member | None:
    """Return the part whose strength a check is of; None for any other check."""
    if check.kind is not Kind.MEMBER:
        return None
    return next((one for one in examination.members.judged if one.name == check.subject), None)


def member_notes(examination: Examination, member: Member) -> tuple[str, ...]:
    """Return what governs a part's strength, how far it bends, and what it rests on."""
    amounts = Amounts(examination.design.units == "metric")
    place = _place(member, amounts)
    found = [f"Judged {_HOW[member.role]}; {member.governs} governs{place}; {_stuff(member)}."]
    if member.beside:
        found.append(f"What {joined(member.beside)} beside it would hold is not counted.")
    under = f"Under '{member.check.load}'" if member.check.load else "In the wind asked for"
    found.append(f"{under} it bends {_bent(amounts, member.deflection)}: shown, not judged.")
    if isinstance(member.stuff, Lumber) and member.slender > column_rule("most slender"):
        found.append(_slender(member))
    return tuple(found)


def _slender(member: Member) -> str:
    """Return how slender a piece is beyond what columns may be, and whether that fails it."""
    most = f"NDS allows {column_rule('most slender'):.0f}"
    if member.governs == "slenderness":
        times = f"{member.slender:.1f} times as long as thick"
        return f"Too slender: pressed along itself it counts as {times}, {most}."
    said = f"It counts as {member.slender:.1f} times as long as thick: {most} for a column."
    if not member.check.passes:
        return said
    share = f"{100.0 * column_rule('is a column'):.0f} %"
    return f"{said} It is none, pressed by less than {share} of what it holds along itself."


def member_assumptions(examination: Examination) -> Iterator[str]:
    """Return what was taken for granted of the strength of parts."""
    judged = examination.members.judged
    stuffs = [one.stuff for one in judged]
    if not judged:
        return
    if any(isinstance(stuff, (Lumber, Sheet)) for stuff in stuffs):
        yield "Wood is taken as wet in use, as out of doors."
    grades: dict[str, list[str]] = {}
    for one in judged:
        if isinstance(one.stuff, Lumber) and not one.graded:
            grades.setdefault(one.stuff.grade, []).append(one.name)
    for grade, names in grades.items():
        yield (
            f"The lumber of {joined(names)} is taken as {grade} grade, the lowest commonly sold: "
            "write  grade = 'No. 2'  if its stamp says so."
        )
    if any(isinstance(stuff, Sheet) for stuff in stuffs):
        names = [one.name for one in judged if isinstance(one.stuff, Sheet)]
        deciding = joined([one.name for one in judged if one.by_grain])
        told = f" Turned round, {deciding} would not be judged the same." if deciding else ""
        yield (
            f"The face grain of {joined(names)} is taken to run along the longer side of each "
            f"piece; plywood is taken as the weakest lay-up, of three layers.{told}"
        )
    boards = [one for one in judged if isinstance(one.stuff, Lumber) and one.role in _BOARDS]
    if boards:
        names = joined([one.name for one in boards])
        widest = "140 mm" if examination.design.units == "metric" else "5 1/2 in"
        yield (
            f"{_capital(names)}: boards no wider than {widest}, as strong as lumber of their grade "
            "though thinner, along their longer side or, over beams and on roofs, from support to "
            "support; separate, so that one of them alone carries who stands on it."
        )
    drilled = _drilled(examination)
    if drilled:
        yield (
            f"Holes of bolts and lag screws are not taken off the sections of {joined(drilled)} "
            "(NDS 2018 3.1.2, EN 1995-1-1 5.2): beside one a piece has so much less as the hole is "
            "wide."
        )
    for stuff in dict.fromkeys(stuff for stuff in stuffs if isinstance(stuff, (Metal, Plastic))):
        yield f"{stuff.name[0].upper()}{stuff.name[1:]} is taken as {stuff.stands_for}."
    sticks = [one for one in judged if one.forces]
    if sticks:
        yield (
            f"{_capital(joined([one.name for one in sticks]))}: bent, pressed, sheared and twisted "
            "as the balance of the whole piece gives it, each joint as stiff as its fasteners are "
            "said to be, three times so and a third; the crush where it bears is left out."
        )
    if sticks or examination.joints:
        yield _HELD[bool(examination.held.anchors) and not examination.held.guys]


def strength_unchecked(examination: Examination) -> str:
    """Return the parts whose strength was not checked, with the reason where there is one."""
    done = {one.name for one in examination.members.judged}
    parts = [
        part
        for part in examination.design.parts
        if part.name not in done and not part.shape.is_point
    ]
    if not done:
        kinds = _stuffs(examination)
        full = f"The strength of the {kinds} was not checked: bending, splitting, panels under wind"
        return f"{full}{_reasons(examination)}."
    names = [part.name for part in parts]
    said = joined(names) if len(names) <= _NAMED else f"{len(names)} of its parts"
    return f"The strength of {said} was not checked{_reasons(examination)}."


def _reasons(examination: Examination) -> str:
    said = [f"{one.name}: {_WHY[one.why]}" for one in examination.members.not_judged]
    return f" ({'; '.join(said)})" if said else ""


def _place(member: Member, amounts: Amounts) -> str:
    """Return where it is used most: `` in its long wall``, `` 12 in above its foot``."""
    if member.at is not None and member.role in ("post", "leg"):
        return (
            f" {amounts.length(member.at)} from its lower end"
            if member.at > 0.0
            else " at its foot"
        )
    if member.level is not None:
        foot = "at its foot"
        return f" {foot if member.level <= 0.0 else _above(amounts, member.level)}"
    where = _WHERE.get(member.where, "")
    return f" in {where}" if where else ""


def _above(amounts: Amounts, level: float) -> str:
    return f"{amounts.length(level)} above its foot"


def _stuff(member: Member) -> str:
    stuff = member.stuff
    match stuff:
        case Lumber():
            return f"{stuff.species}, {stuff.grade}, wet in use"
        case Sheet():
            if stuff.span_rating.endswith("sanded"):
                return f"a sheet of {stuff.span_rating.split()[0]} in, sanded, wet in use"
            return f"a sheet of span rating {stuff.span_rating}, wet in use"
        case Metal():
            return stuff.stands_for
        case Plastic():
            return f"{stuff.name}, {stuff.stands_for}"


def _bent(amounts: Amounts, metres: float) -> str:
    if metres < 0.5 / 1000.0:
        return "less than 1 mm" if amounts.metric else "less than 1/16 in"
    said = amounts.length(metres)
    return f"about {said if said != '0 in' else '1/16 in'}"


def _capital(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}"


def _stuffs(examination: Examination) -> str:
    words = {"wood": "wood", "panel": "panels", "metal": "metal", "masonry": "masonry"}
    words["plastic"] = "plastic"
    found = {
        words[materials.find(part.material).kind]: None
        for part in examination.design.parts
        if part.material is not None
    }
    return joined(found) or "parts themselves"


def _drilled(examination: Examination) -> list[str]:
    """Return the names of judged lumber that bolts or lag screws go through or into."""
    thick = [one.row for one in examination.joints if one.row.fastener.kind in _THICK]
    parts = {name for row in thick for name in (row.of, row.to)}
    judged = examination.members.judged
    names = [one.name for one in judged if isinstance(one.stuff, Lumber) and one.name in parts]
    return list(dict.fromkeys(names))
