"""What to do about each check that no holding down mends, in words and in lines of the file."""

from dataclasses import dataclass, replace
from math import isfinite

from ..checks.examination import Examination
from ..checks.judging import Check, Kind
from ..checks.sizing.under_load import UnderLoad, stands_with
from ..statics.tables.joint_table import JointRow
from ..statics.tables.seam_table import SeamRow
from . import messages
from .facts import Facts
from .fastened_seams import seam_of, seam_remedy, sized_seam
from .joint_advice import joint_remedy
from .joint_words import joint_of, sized
from .spacing_words import spacing_of, spacing_slots
from .what_to_do import anchors_set, weight_said

_WAYS = 3
"""So many ways to make a joint hold are told beside the word, one where there
is more to mend; `size` tells all of them."""

_FAR = 100.0
"""What is asked so many times what it holds has no number worth telling."""


@dataclass(frozen=True)
class ToType:
    """Lines to type into a table of the file: keys with their values, and keys to take out.

    ``table`` is its heading and ``name`` what its ``key`` says.
    """

    table: str
    key: str
    name: str
    entries: tuple[tuple[str, str], ...]
    out: tuple[str, ...] = ()


@dataclass(frozen=True)
class Mend:
    """What to do about checks that fail alike: in short, whole, and as lines to type."""

    short: str
    whole: str
    lines: tuple[ToType, ...] = ()


def mends(found: Examination, most: int | None, facts: Facts) -> list[Mend]:
    """Return what to do about what fails, ``most`` of it in its order; alike ones once."""
    alike = found.verdict.mended_alike
    ways = _WAYS if len(alike) == 1 else 1
    return [_mend(found, checks, facts, ways) for checks in alike[:most]]


def _mend(found: Examination, alike: tuple[Check, ...], facts: Facts, most: int) -> Mend:
    check = alike[0]
    lines = tuple(line for one in alike if (line := to_type(found, one, facts)) is not None)
    match check.kind:
        case Kind.JOINT if (joint := joint_of(found, check)) is not None:
            sizing = sized(found, joint)
            few = replace(sizing, remedies=sizing.remedies[:most])
            advice = joint_remedy(few, facts.amounts)
            return mend_of(messages.ASKED, lines, times=times(check), advice=advice)
        case Kind.SEAM if (seam := seam_of(found, check)) is not None:
            advice = seam_remedy(found, seam, facts.amounts)
            return mend_of(messages.ASKED, lines, times=times(check), advice=advice)
        case Kind.SPACING if (room := spacing_of(found, check)) is not None:
            return mend_of(messages.SPACING, lines, **spacing_slots(room, facts.amounts))
        case Kind.LOAD if ways := _under_load(stands_with(found, check.subject), facts):
            return mend_of(messages.LOAD_FAILS, ways=ways)
        case kind:
            return plain_mend(kind, check, facts)


def to_type(found: Examination, check: Check, facts: Facts) -> ToType | None:
    """Return the lines that mend a check, where what they say was found to hold; None elsewhere."""
    match check.kind:
        case Kind.JOINT if (joint := joint_of(found, check)) is not None:
            sizing = sized(found, joint)
            return _of_joint(joint.row, sizing.remedies[0].found.row) if sizing.remedies else None
        case Kind.SEAM if (seam := seam_of(found, check)) is not None:
            seams = sized_seam(found, seam).remedies
            return _of_seam(seam.row, seams[0].found.row, facts) if seams else None
        case Kind.SPACING if (room := spacing_of(found, check)) is not None and room.in_lead_holes:
            of_joint = any(one.row.name == check.subject for one in found.joints)
            table = ("joint", "name") if of_joint else ("seam", "part")
            return ToType(*table, check.subject, (("predrilled", "true"),))
        case _:
            return None


_WITHOUT = ("points", "through", "head_in", "into", "washer")
"""Keys of a joint that may have to go where others change."""


def _of_joint(old: JointRow, new: JointRow) -> ToType:
    entries = [("fastener", f"'{new.fastener.name}'"), ("count", str(new.count))]
    if new.blocks != old.blocks:
        entries.insert(0, ("blocks", f"'{new.blocks}'"))
    gone = [key for key in _WITHOUT if getattr(new, key) is None]
    out = tuple(key for key in gone if getattr(old, key) is not None)
    return ToType("joint", "name", old.name, tuple(entries), out)


def _of_seam(old: SeamRow, new: SeamRow, facts: Facts) -> ToType:
    spacing = facts.amounts.own_length(new.spacing)
    entries = [("fastener", f"'{new.fastener.name}'"), ("spacing", f"'{spacing}'")]
    entries += [("cleat", f"'{new.cleat}'")] if new.cleat != old.cleat else []
    return ToType("seam", "part", old.part, tuple(entries))


def _under_load(found: UnderLoad, facts: Facts) -> str:
    """Return which anchors, or how much weight, let it stand a named load; empty without any."""
    ways: list[str] = []
    if found.anchors is not None:
        ways.append(anchors_set(found.anchors, facts.amounts))
    elif isfinite(max(found.pulls)) and max(found.pulls) > 0.0:
        up, sideways = map(facts.amounts.pull, found.pulls)
        pulls = messages.LOAD_PULLS.format(up=up, sideways=sideways, places=found.places)
        ways.append(pulls)
    if found.weight is not None:
        ways.append(weight_said(found.weight, facts))
    return "; or ".join(ways)


def plain_mend(kind: Kind, check: Check, facts: Facts) -> Mend:
    """Return what to do about a check for which nothing else is worked out."""
    match kind:
        case Kind.LOOSE | Kind.LOOSE_SLIDING:
            does = "tips" if kind is Kind.LOOSE else "slides off"
            return mend_of(messages.LOOSE, does=does, when=_when(check, facts))
        case Kind.LOAD:
            return mend_of(messages.LOAD_FAILS, ways=messages.LOAD_WAYS)
        case Kind.RACKING:
            return mend_of(messages.RACKING)
        case _:
            how = messages.HOW.get(check.unit, "")
            load = f" under '{check.load}'" if check.load else ""
            return mend_of(messages.MEMBER, times=times(check), how=how, load=load)


def mend_of(message: tuple[str, str], lines: tuple[ToType, ...] = (), **slots: str) -> Mend:
    """Return a mend by its message in two parts."""
    short, rest = (each.format(**slots) for each in message)
    return Mend(short, f"{short}: {rest}", lines)


def _when(check: Check, facts: Facts) -> str:
    """Return under what a loose piece goes: in the wind, under a load, or when people do that."""
    if not check.load:
        return messages.IN_WIND.format(wind=facts.wind)
    return messages.WHEN_PEOPLE.get(check.load) or messages.UNDER_LOAD.format(load=check.load)


def times(check: Check) -> str:
    """Return how much more is asked than is held: ``1.4 times``."""
    if check.utilization is None or check.utilization >= _FAR:
        return "far more than"
    return f"{check.utilization:.1f} times" if check.utilization >= 1.05 else "a little more than"
