"""What governed the check of a joint, seams, their room, or a part, as data."""

from collections.abc import Iterator
from enum import StrEnum
from math import isfinite

from ...materials.fastener import Fastener
from ...materials.lumber import Lumber
from ...materials.metal import Metal
from ...materials.plastic import Plastic
from ...materials.sheets import Sheet
from ..examination import Examination
from ..fasteners.fastener_sets import BLOCKS
from ..fasteners.spacing import Nearest, SpacingFound
from ..joints.joint_check import JointFound
from ..judged.finding import Against, Amount, Finding, FindingSlot, Measure, Term
from ..members.columns import column_rule
from ..members.member_check import MemberStrength
from ..sides import quarter_of
from ..timber.nds.withdrawal import mean_over_allowable, mean_over_factor
from ..timber.terms.capacity import Capacity

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..seams.seam_check import SeamFound


class OfFastening(StrEnum):
    """What governed a joint or seams."""

    TURNS_FREELY = "nothing resists turning"
    MOST_USED = "the fastener that is used most"
    TOWARD = "toward which side it stands"
    ONE_OF = "one of how many"
    HOLDS = "what it holds"
    AT_HEAD = "what it holds at its head"
    MODE = "yield mode"
    MODE_MEANS = "yield mode, with what gives"
    REACH = "how far it reaches"
    COMES_OUT = "comes out beyond"
    AS_THICK = "blocks as thick as that"
    LASTS = "holds more under wind"
    LASTS_SIDEWAYS = "holds more sideways under wind"
    TESTED_MEAN = "mean of tests"
    DECK_SCREWS = "deck screws"
    STAPLES = "staples"
    SHARED = "shares the load"
    APART = "how far apart they stand"
    AT_PLACES = "at each of some places"
    GLUE = "glue"
    SEAM_ASKED = "what seams ask"
    SEAM_HOLDS = "what holds a seam"
    SEAM_REACH = "how far it reaches in a seam"
    INTO_CLEAT = "into a cleat"
    INTO_NEXT_EDGE = "into the next panel's edge"
    SPACED = "room of fasteners"


class OfMember(StrEnum):
    """What governed the strength of a part."""

    JUDGED = "as what it is judged"
    BESIDE = "what stands beside it"
    BENDS = "how far it bends in wind"
    BENDS_UNDER = "how far it bends under a load"
    TOO_SLENDER = "too slender"
    SLENDER = "slender"
    NO_COLUMN = "slender, but no column"
    FROM_LOWER_END = "how far from its lower end"
    AT_FOOT = "at its foot"
    ABOVE_FOOT = "how far above its foot"
    IN_PLACE = "in a place of it"
    OF_LUMBER = "species and grade"
    OF_SANDED = "a sanded sheet"
    OF_SHEET = "a rated sheet"


class CountsNothing(StrEnum):
    """Why something of a fastener counts nothing."""

    PANEL_EDGE = "panel edge"
    END_GRAIN = "end grain"
    TOO_SHORT = "too short"
    NO_NUT = "too short for a nut"
    HEAD_UNKNOWN = "head unknown"
    SMALL_HEAD = "small head"
    LET_IN = "nothing left under the head"
    NOT_OUTDOORS = "not outdoors"
    NO_WASHER = "no washer value"


def of_joint(found: Examination, joint: JointFound) -> Iterator[Finding]:
    """Yield what governed a joint: the fastener used most, its reach, what counts nothing."""
    yield _most_used(found, joint)
    yield _reach(joint)
    yield from _reasons(joint.fasteners.holds)
    if joint.longer > 1.0:
        sideways = joint.fasteners.holds.for_good
        what = OfFastening.LASTS_SIDEWAYS if sideways else OfFastening.LASTS
        yield Finding(what, {"times": f"{joint.longer:.3g}"})
    yield from _tested(joint.fasteners.holds)
    yield from _made(joint.row.fastener)
    if joint.shared_with:
        yield Finding(OfFastening.SHARED, {"names": tuple(map(repr, joint.shared_with))})
    if joint.spacing is not None:
        slots: dict[str, FindingSlot] = {"each": joint.count // joint.spots}
        slots |= {"apart": Amount(joint.spacing, "length"), "spots": ""}
        if joint.spots > 1:
            slots["spots"] = Finding(OfFastening.AT_PLACES, {"number": joint.spots})
        yield Finding(OfFastening.APART, slots)
    if joint.row.glue:
        yield Finding(OfFastening.GLUE)


def of_seam(seam: "SeamFound") -> Iterator[Finding]:
    """Yield what governed a part's seams."""
    row, holds = seam.row, seam.holds
    yield Finding(
        OfFastening.SEAM_ASKED,
        {
            "fastener": row.fastener.name,
            "spacing": Amount(row.spacing, "length"),
            "seams": seam.seams.count,
            "pull": Measure(seam.tension, decimals=1),
            "shear": Measure(seam.shear, decimals=1),
        },
    )
    yield Finding(OfFastening.SEAM_HOLDS, {"holds": _holds(holds, row.fastener, OfFastening.MODE)})
    cleat: dict[str, FindingSlot] = {} if row.cleat is None else {"wood": row.cleat}
    into = OfFastening.INTO_CLEAT if cleat else OfFastening.INTO_NEXT_EDGE
    slots: dict[str, FindingSlot] = {
        "through": Amount(seam.driven.through, "length"),
        "into": Finding(into, cleat),
    }
    yield Finding(OfFastening.SEAM_REACH, slots | _reaches(holds))
    yield from _reasons(holds)
    yield from _made(row.fastener)


def of_spacing(room: SpacingFound) -> Finding:
    """Return what a joint's fasteners stand nearest to."""
    near, passes = room.nearest, room.check.passes
    return Finding(
        OfFastening.SPACED,
        {
            "fastener": room.fastener.name,
            "has": Against(near.has, near.needs, "m", passes, "has"),
            "needs": Against(near.has, near.needs, "m", passes, "needs"),
            "where": near_what(near),
        },
    )


def near_what(nearest: Nearest) -> Finding:
    """Return what fasteners stand nearest to, and in which piece."""
    return Finding(nearest.near, {"part": Term("piece", nearest.part)})


def of_member(member: MemberStrength) -> Iterator[Finding]:
    """Yield what governs a part's strength, how far it bends, and what it rests on."""
    yield Finding(
        OfMember.JUDGED,
        {
            "how": Term("role", member.role),
            "governs": member.governs,
            "place": _place(member),
            "stuff": _stuff(member),
        },
    )
    if member.beside:
        yield Finding(OfMember.BESIDE, {"names": member.beside})
    bends: dict[str, FindingSlot] = {"bend": Amount(member.deflection, "bend")}
    load = member.check.load
    yield Finding(OfMember.BENDS_UNDER if load else OfMember.BENDS, bends | {"load": load})
    if isinstance(member.stuff, Lumber) and member.slender > column_rule("most slender"):
        yield _slender(member)


def _most_used(found: Examination, joint: JointFound) -> Finding:
    if not isfinite(joint.shear):
        return Finding(OfFastening.TURNS_FREELY)
    fastener, out = joint.row.fastener, joint.outward
    slots: dict[str, FindingSlot] = {"where": "", "of_all": ""}
    if out is not None:
        slots["where"] = Finding(OfFastening.TOWARD, {"side": quarter_of(found, out)})
    if joint.count > 1:
        slots["of_all"] = Finding(OfFastening.ONE_OF, {"number": joint.count})
    return Finding(
        OfFastening.MOST_USED,
        {
            **slots,
            "fastener": fastener.name,
            "pull": Measure(joint.tension),
            "shear": Measure(joint.shear),
            "holds": _holds(joint.holds, fastener, OfFastening.MODE_MEANS),
        },
    )


def _holds(holds: Capacity, fastener: Fastener, mode: OfFastening) -> Finding:
    """Return what a fastener holds by its book: at its point, its head, and sideways."""
    slots: dict[str, FindingSlot] = {"through": "", "mode": ""}
    if isfinite(holds.head):
        head = "crown" if fastener.kind == "staple" else "head"
        slots["through"] = Finding(
            OfFastening.AT_HEAD, {"force": Measure(holds.head), "head": head}
        )
    if holds.mode:
        slots["mode"] = Finding(mode, {"mode": holds.mode, "means": Term("mode", holds.mode)})
    sideways = Measure(holds.sideways)
    slots |= {"book": holds.book, "out": Measure(holds.out), "sideways": sideways}
    return Finding(OfFastening.HOLDS, slots)


def _reach(joint: JointFound) -> Finding:
    set_, holds = joint.fasteners, joint.holds
    slots: dict[str, FindingSlot] = {
        "head_in": set_.head_in,
        "point_in": set_.point_in,
        "through": Amount(set_.driven.through, "length"),
        "into": Term("into", set_.driven.into),
        "beyond": Finding(OfFastening.COMES_OUT) if holds.comes_out else "",
    }
    if set_.point_in == BLOCKS:
        slots["beyond"] = Finding(OfFastening.AS_THICK)
    return Finding(OfFastening.REACH, slots | _reaches(holds))


def _reaches(holds: Capacity) -> dict[str, FindingSlot]:
    return {
        "reach": Amount(holds.penetration, "length"),
        "factor_out": f"{holds.factor_out:.2f}",
        "factor_sideways": f"{holds.factor_sideways:.2f}",
    }


def _reasons(holds: Capacity) -> Iterator[Finding]:
    least = Amount(holds.least_penetration, "length", "up")
    return (Finding(CountsNothing(reason), {"least": least}) for reason in holds.reasons)


def _tested(holds: Capacity) -> Iterator[Finding]:
    mean = holds.mean_out
    if mean is not None and mean > 0.0:
        slots: dict[str, FindingSlot] = {
            "mean": Measure(mean),
            "over": Measure(mean_over_factor(mean)),
            "factor": f"{mean_over_allowable():g}",
        }
        yield Finding(OfFastening.TESTED_MEAN, slots)


def _made(fastener: Fastener) -> Iterator[Finding]:
    """Yield what was taken of a kind of fastener that NDS does not know."""
    kinds = {"deck screw": OfFastening.DECK_SCREWS, "staple": OfFastening.STAPLES}
    if fastener.kind in kinds:
        yield Finding(kinds[fastener.kind])


def _slender(member: MemberStrength) -> Finding:
    """Return how slender a piece is beyond what columns may be, and whether that fails it."""
    slots: dict[str, FindingSlot] = {
        "times": f"{member.slender:.1f}",
        "most": f"{column_rule('most slender'):.0f}",
        "share": f"{100.0 * column_rule('is a column'):.0f}",
    }
    if member.governs == "slenderness":
        return Finding(OfMember.TOO_SLENDER, slots)
    return Finding(OfMember.NO_COLUMN if member.check.passes else OfMember.SLENDER, slots)


def _place(member: MemberStrength) -> FindingSlot:
    """Return where it is used most."""
    if member.at is not None and member.role in ("post", "leg"):
        what, up = OfMember.FROM_LOWER_END, member.at
    elif member.level is not None:
        what, up = OfMember.ABOVE_FOOT, member.level
    elif member.where in _NOWHERE:
        return ""
    else:
        return Finding(OfMember.IN_PLACE, {"place": Term("place", member.where)})
    return Finding(what, {"up": Amount(up, "length")}) if up > 0.0 else Finding(OfMember.AT_FOOT)


_NOWHERE = ("", "between")
"""Places of a part that are the part itself."""


def _stuff(member: MemberStrength) -> FindingSlot:
    match member.stuff:
        case Lumber(species=species, grade=grade):
            return Finding(OfMember.OF_LUMBER, {"species": species, "grade": grade})
        case Sheet(span_rating=rating) if rating.endswith("sanded"):
            return Finding(OfMember.OF_SANDED, {"thick": rating.split()[0]})
        case Sheet(span_rating=rating):
            return Finding(OfMember.OF_SHEET, {"rating": rating})
        case Metal(stands_for=means):
            return means
        case Plastic(name=name, stands_for=means):
            return f"{name}, {means}"
