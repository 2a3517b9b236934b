"""What to do about each check that no holding down mends, in words and in lines of the file."""

from collections.abc import Iterator
from math import isfinite

from ...checks.examination import Examination
from ...checks.judged.judging import Check, Kind, judged_by
from ...checks.sizing.better_fastened import sized, sized_seam
from ...checks.sizing.thicker import thicker
from ...checks.sizing.under_load import UnderLoad, anchored_against, stands_with
from ...statics.tables.joint_table import JointRow
from ...statics.tables.seam_table import SeamRow
from ...units.frozen import ByValue, replace
from ..fastening.fastened_seams import seam_remedy
from ..fastening.fastener_words import several_fasteners
from ..fastening.joint_advice import joint_brief, joint_remedy
from ..fastening.spacing_words import spacing_slots
from ..messages import messages
from ..told.facts import Facts
from ..wording.remark import few
from .what_to_do import anchors_set, weight_said

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...checks.seams.seam_sizing import SeamSizing

_WAYS = 3
"""So many ways to make a joint hold are told beside the word, one where there
is more to mend; `size` tells all of them."""

_FAR = 100.0
"""What is asked so many times what it holds has no number worth telling."""


class ToType(ByValue, frozen=True):
    """Lines to type into a table of the file: keys with their values, and keys to take out.

    ``table`` is its heading and ``name`` what its ``key`` says.
    """

    table: str
    key: str
    name: str
    entries: tuple[tuple[str, str], ...]
    out: tuple[str, ...] = ()


class Mend(ByValue, frozen=True):
    """What to do about checks that fail alike: in a line, whole, and to type."""

    short: str
    whole: str
    lines: tuple[ToType, ...] = ()


def mends(found: Examination, most: int | None, facts: Facts) -> list[Mend]:
    """Return what to do about what fails, ``most`` of it in its order; alike ones once.

    All of it comes with the lines to type.
    """
    alike = found.verdict.mended_alike
    ways = _WAYS if len(alike) == 1 else 1
    every = [_mend(found, checks[0], facts, ways) for checks in alike[:most]]
    if most is not None:
        return every
    lines = [tuple(to_type(found, checks, facts)) for checks in alike]
    return [replace(mend, lines=own) for mend, own in zip(every, lines, strict=True)]


def _mend(found: Examination, check: Check, facts: Facts, most: int) -> Mend:
    match check.kind:
        case Kind.JOINT if (joint := judged_by(found.joints, check)) is not None:
            sizing = sized(found, joint)
            told = replace(sizing, remedies=sizing.remedies[:most])
            advice, brief = joint_remedy(told, facts.amounts), joint_brief(sizing)
            return mend_of(messages.ASKED, times=times(check), brief=brief, advice=advice)
        case Kind.SEAM if (seam := judged_by(found.fastened_seams, check)) is not None:
            advice = seam_remedy(found, seam, facts.amounts)
            brief = _seam_brief(sized_seam(found, seam), facts) or advice
            return mend_of(messages.ASKED, times=times(check), brief=brief, advice=advice)
        case Kind.SPACING if (room := judged_by(found.spacings, check)) is not None:
            return mend_of(messages.SPACING, **spacing_slots(room, facts.amounts))
        case Kind.LOAD if ways := _under_load(stands_with(found, check.subject), facts):
            return mend_of(messages.LOAD_FAILS, brief=ways[0], ways="; or ".join(ways))
        case Kind.MEMBER if (better := thicker(found, check)) is not None:
            said = messages.THICKER_OF[better.key].format(value=better.value)
            return mend_of(messages.THICKER, thicker=said, **_asked(check))
        case Kind.RACKING if joints := _without_pull(found, check):
            hold = messages.HOLD_SAID[len(joints) > 1]
            return mend_of(messages.RACKING_BY, joints=few(joints, most=2), hold=hold)
        case kind:
            return plain_mend(kind, check, facts)


def _without_pull(found: Examination, check: Check) -> list[str]:
    """Return the joints of what moves most of which nothing counts against a pull."""
    return [
        one.row.name
        for one in found.joints
        if one.holds.pull <= 0.0 and (one.row.of in check.slots or one.row.to in check.slots)
    ]


def to_type(found: Examination, alike: tuple[Check, ...], facts: Facts) -> Iterator[ToType]:
    """Yield the lines that mend checks which fail alike, where what they say was found to hold."""
    for check in alike:
        match check.kind:
            case Kind.JOINT if (joint := judged_by(found.joints, check)) is not None:
                if remedies := sized(found, joint).remedies:
                    yield _of_joint(joint.row, remedies[0].found.row)
            case Kind.SEAM if (seam := judged_by(found.fastened_seams, check)) is not None:
                if seams := sized_seam(found, seam).remedies:
                    yield _of_seam(seam.row, seams[0].found.row, facts)
            case Kind.SPACING if (room := judged_by(found.spacings, check)) and room.in_lead_holes:
                of_joint = any(one.row.name == check.subject for one in found.joints)
                table = ("joint", "name") if of_joint else ("seam", "part")
                yield ToType(*table, check.subject, (("predrilled", "true"),))
            case Kind.LOAD if (anchors := anchored_against(found, check.subject)) is not None:
                kind, where = f"'{anchors.kind}'", f"'{anchors.where}'"
                yield ToType("anchor", "name", anchors.name, (("kind", kind), ("where", where)))
            case Kind.MEMBER if (better := thicker(found, check)) is not None:
                yield ToType("part", "name", better.part, ((better.key, f"'{better.value}'"),))
            case Kind.LOOSE | Kind.LOOSE_SLIDING:
                yield ToType("part", "name", check.subject, (), ("loose",))
            case _:
                pass


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


def _seam_brief(sizing: "SeamSizing", facts: Facts) -> str:
    if not sizing.remedies:
        return ""
    row = sizing.remedies[0].found.row
    apart = facts.amounts.own_length(row.spacing)
    return messages.SEAM_BRIEF.format(fasteners=several_fasteners(row.fastener), apart=apart)


def _under_load(found: UnderLoad, facts: Facts) -> list[str]:
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
    return ways


def plain_mend(kind: Kind, check: Check, facts: Facts) -> Mend:
    """Return what to do about a check for which nothing else is worked out."""
    match kind:
        case Kind.LOOSE | Kind.LOOSE_SLIDING:
            does = "tips" if kind is Kind.LOOSE else "slides off"
            return mend_of(messages.LOOSE, does=does, when=_when(check, facts))
        case Kind.LOAD:
            brief, ways = messages.LOAD_BRIEF, messages.LOAD_WAYS
            return mend_of(messages.LOAD_FAILS, brief=brief, ways=ways)
        case Kind.RACKING:
            return mend_of(messages.RACKING)
        case _:
            return mend_of(messages.MEMBER, **_asked(check))


def _asked(check: Check) -> dict[str, str]:
    """Return how much more a part is asked than it holds, how, and under what."""
    load = f" {messages.UNDER_LOAD.format(load=check.load)}" if check.load else ""
    return {"times": times(check), "how": messages.HOW.get(check.unit, ""), "load": load}


def mend_of(message: tuple[str, str], **slots: str) -> Mend:
    """Return a mend by its message in short and whole."""
    short, whole = (each.format(**slots) for each in message)
    return Mend(short, whole)


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
