"""What to do about each check that no holding down mends, in words and in lines of the file."""

from collections.abc import Iterable, Iterator
from math import isfinite

from ...checks.fasteners.spacing import SpacingFound
from ...checks.joints.joint_sizing import JointSizing
from ...checks.judged.judging import Check, Kind
from ...checks.sizing.mending import Better, LeadHoles, Mending, WithoutPull
from ...checks.sizing.thicker import Thicker
from ...checks.sizing.under_load import UnderLoad
from ...statics.tables.anchor_table import AnchorRow
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


def mends(found: Iterable[Mending], facts: Facts) -> list[Mend]:
    """Return what to do about what fails, in words and as lines to type."""
    said: list[Mend] = []
    for one in found:
        mend = _mend(one.alike[0], one.better, facts, _WAYS if one.alone else 1)
        said.append(replace(mend, lines=tuple(to_type(one.typed, facts))))
    return said


def _mend(check: Check, better: Better, facts: Facts, most: int) -> Mend:
    amounts = facts.amounts
    match better:
        case JointSizing():
            told = replace(better, remedies=better.remedies[:most])
            advice, brief = joint_remedy(told, amounts), joint_brief(better)
            return mend_of(messages.ASKED, times=times(check), brief=brief, advice=advice)
        case SpacingFound():
            return mend_of(messages.SPACING, **spacing_slots(better, amounts))
        case UnderLoad() if ways := _under_load(better, facts):
            return mend_of(messages.LOAD_FAILS, brief=ways[0], ways="; or ".join(ways))
        case Thicker(_, key, str(value)):
            said = messages.THICKER_OF[key].format(value=value)
            return mend_of(messages.THICKER, thicker=said, **_asked(check))
        case Thicker():
            return mend_of(messages.NO_THICKER, **_asked(check))
        case WithoutPull(joints):
            hold = messages.HOLD_SAID[len(joints) > 1]
            return mend_of(messages.RACKING_BY, joints=few(joints, most=2), hold=hold)
        case UnderLoad() | AnchorRow() | LeadHoles() | None:
            return plain_mend(check.kind, check, facts)
        case seams:
            advice = seam_remedy(seams, amounts)
            brief = _seam_brief(seams, facts) or advice
            return mend_of(messages.ASKED, times=times(check), brief=brief, advice=advice)


def to_type(typed: Iterable[tuple[Check, Better]], facts: Facts) -> Iterator[ToType]:
    """Yield the lines that mend checks, where what they say was found to hold."""
    for check, better in typed:
        match better:
            case JointSizing() if better.remedies:
                yield _of_joint(better.joint.row, better.remedies[0].found.row)
            case LeadHoles(of_joint):
                table = ("joint", "name") if of_joint else ("seam", "part")
                yield ToType(*table, check.subject, (("predrilled", "true"),))
            case AnchorRow(name, kind, where=where):
                keys = (("kind", f"'{kind}'"), ("where", f"'{where}'"))
                yield ToType("anchor", "name", name, keys)
            case Thicker(part, key, str(value)):
                yield ToType("part", "name", part, ((key, f"'{value}'"),))
            case None if check.kind in (Kind.LOOSE, Kind.LOOSE_SLIDING):
                yield ToType("part", "name", check.subject, (), ("loose",))
            case JointSizing() | SpacingFound() | UnderLoad() | WithoutPull() | Thicker() | None:
                pass
            case seams if seams.remedies:
                yield _of_seam(seams.seam.row, seams.remedies[0].found.row, facts)
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
