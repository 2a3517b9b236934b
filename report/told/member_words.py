"""The strength of single parts in words: what governs, what was taken for granted, what was not."""

from ... import materials
from ...checks.examination import Examination
from ...checks.judging import Check, Kind
from ...checks.members.columns import column_rule
from ...checks.members.member_check import MemberStrength
from ...materials.lumber import Lumber
from ...materials.metal import Metal
from ...materials.plastic import Plastic
from ...materials.sheets import Sheet
from ..wording.amounts import Amounts
from ..wording.remark import joined

_MEMORY = "memory"

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


def member_of(examination: Examination, check: Check) -> MemberStrength | None:
    """Return the part whose strength a check is of; None for any other check."""
    if check.kind is not Kind.MEMBER:
        return None
    return next((one for one in examination.members.judged if one.name == check.subject), None)


def member_notes(examination: Examination, member: MemberStrength) -> tuple[str, ...]:
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


def _slender(member: MemberStrength) -> str:
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


def _place(member: MemberStrength, amounts: Amounts) -> str:
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


def _stuff(member: MemberStrength) -> str:
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


def _stuffs(examination: Examination) -> str:
    words = {"wood": "wood", "panel": "panels", "metal": "metal", "masonry": "masonry"}
    words["plastic"] = "plastic"
    found = {
        words[materials.find_material(part.material).kind]: None
        for part in examination.design.parts
        if part.material is not None
    }
    return joined(found) or "parts themselves"
