"""Joints in a builder's words: what governs one, what it rests on, and what would make it hold."""

from math import isfinite

from ...checks.examination import Examination
from ...checks.joints.fastener_sets import BLOCKS
from ...checks.joints.joint_check import JointFound
from ...checks.joints.joint_sizing import JointSizing, size_joint
from ...checks.judging import Check
from ...checks.timber.capacity import Capacity
from ...checks.timber.nds.withdrawal import mean_over_allowable, mean_over_factor
from ...loads.combinations import factors_of_parts, resistance_basis
from ...materials.fastener import Fastener
from ..wording.amounts import Amounts
from ..wording.remark import joined
from ..wording.words import quarter

_MODES = {
    "Im": "the wood that holds the point is crushed",
    "Is": "the wood under the head is crushed",
    "II": "it turns stiff in both pieces",
    "IIIm": "it bends, and the wood that holds the point is crushed",
    "IIIs": "it bends, and the wood under the head is crushed",
    "IV": "it bends in both pieces",
    "split": "the piece splits along its fasteners",
}
_REASONS = {
    "panel edge": (
        "No value is published for what holds in the edge of a panel: nothing is counted against "
        "pulling out."
    ),
    "end grain": (
        "In end grain nails, staples and wood screws count nothing against pulling out; by "
        "EN 1995-1-1 nothing does."
    ),
    "too short": "Its point goes in less than the {least} that it has to, so it counts nothing.",
    "too short for a nut": "It is too short to take a nut on the far side.",
    "head unknown": "Its head's size is not known, so it counts nothing: name its trade size.",
    "small head": (
        "No value is published for heads so small: nothing is counted against its head pulling "
        "through."
    ),
    "nothing left under the head": (
        "Its flat head is let in as deep as the piece is thick: nothing is left to hold it."
    ),
    "not outdoors": "EN 1995-1-1 gives this sheet no value in the open: nothing is counted.",
    "no washer value": "No value is held here for washers on this wood: pull is not counted.",
}


_MAKERS = (
    "Deck screws are not standardised: steel and head are taken as those of a wood screw of its "
    "number, the root as one maker's; the maker's sheet counts."
)


_STAPLES = (
    "NDS has no staples: each counts as two nails of its leg's diameter (EN 1995-1-1 8.4), its "
    "crown as a round head of the crown's area (judgement)."
)


def joint_of(examination: Examination, check: Check) -> JointFound | None:
    """Return the joint of a check, None where it is none."""
    return next((one for one in examination.joints if one.check.name == check.name), None)


def joint_notes(examination: Examination, check: Check) -> tuple[str, ...]:
    """Return what governed a joint, as sentences; none for another check."""
    joint = joint_of(examination, check)
    if joint is None:
        return ()
    amounts = Amounts(examination.design.units == "metric")
    return tuple(
        note
        for note in (
            _governs(examination, joint, amounts),
            _reach(joint, amounts),
            *reasons(joint.fasteners.holds, amounts),
            _lasting(joint),
            _handbook(joint, amounts),
            made(joint.row.fastener),
            _together(joint),
            _spacing(joint, amounts),
            "Glue is shown and not counted." if joint.row.glue else "",
        )
        if note
    )


def reasons(holds: Capacity, amounts: Amounts) -> list[str]:
    """Return why something of a fastener counts nothing, as sentences."""
    least = amounts.length(holds.least_penetration, "up")
    return [_REASONS[reason].format(least=least) for reason in holds.reasons]


def made(fastener: Fastener) -> str:
    """Return what was taken of a kind of fastener that NDS does not know; nothing of others."""
    return {"deck screw": _MAKERS, "staple": _STAPLES}.get(fastener.kind, "")


def sized(examination: Examination, joint: JointFound) -> JointSizing:
    """Return the ways to make a joint hold, worked out once."""
    known, name = examination.sizings, joint.row.name
    if name not in known:
        site = examination.site
        used, basis = factors_of_parts(site), resistance_basis(site)
        known[name] = size_joint(examination.structure, joint, used, basis)
    return known[name]


def _into(into: str) -> str:
    return {"panel edge": "the edge of a panel", "panel face": "the face of a panel"}.get(
        into, into
    )


def _governs(examination: Examination, joint: JointFound, amounts: Amounts) -> str:
    holds, row = joint.holds, joint.row
    where = "" if joint.outward is None else f" toward its {quarter(examination, joint.outward)}"
    of_all = f", one of {joint.count}," if joint.count > 1 else ""
    if not isfinite(joint.shear):
        return "Its fasteners stand so that nothing resists turning: set them apart."
    pulled = (
        f"pulled {amounts.measure(joint.tension, 'N')} and pushed sideways "
        f"{amounts.measure(joint.shear, 'N')}"
    )
    head = "crown" if row.fastener.kind == "staple" else "head"
    through = (
        "" if not isfinite(holds.head) else f", {amounts.measure(holds.head, 'N')} at its {head}"
    )
    mode = f" (mode {holds.mode}: {_MODES[holds.mode]})" if holds.mode else ""
    return (
        f"The {row.fastener.name}{where}{of_all} is used most: {pulled}; by {holds.book} it holds "
        f"{amounts.measure(holds.out, 'N')} against pulling out{through}, and "
        f"{amounts.measure(holds.sideways, 'N')} sideways{mode}."
    )


def _reach(joint: JointFound, amounts: Amounts) -> str:
    of_them, holds = joint.fasteners, joint.holds
    out = " and comes out beyond" if holds.comes_out else ""
    if of_them.point_in == BLOCKS:
        out = " (at least as thick as that)"
    return (
        f"From {of_them.head_in} through {amounts.length(of_them.driven.through)} it reaches "
        f"{amounts.length(holds.penetration)} into {of_them.point_in}{out}, "
        f"{_into(of_them.driven.into)}; factors {holds.factor_out:.2f} on pulling out and "
        f"{holds.factor_sideways:.2f} sideways."
    )


def _lasting(joint: JointFound) -> str:
    """Say how much less is held of what lasts longer than a gust."""
    if joint.longer <= 1.0:
        return ""
    way = " sideways" if joint.fasteners.holds.for_good else ""
    return f"Under wind, which lasts less, it would hold {joint.longer:.3g} times as much{way}."


def _handbook(joint: JointFound, amounts: Amounts) -> str:
    holds = joint.fasteners.holds
    if holds.mean_out is None or holds.mean_out <= 0.0:
        return ""
    mean, over = (
        amounts.measure(n, "N") for n in (holds.mean_out, mean_over_factor(holds.mean_out))
    )
    return (
        f"In tests such fasteners came out of dry side grain at {mean} on the average (Wood "
        f"Handbook), over a factor of {mean_over_allowable():g} {over}; it is judged by NDS."
    )


def _together(joint: JointFound) -> str:
    if not joint.shared_with:
        return ""
    return f"It shares the load with {joined(repr(name) for name in joint.shared_with)}."


def _spacing(joint: JointFound, amounts: Amounts) -> str:
    spots = f" at each of {joint.spots} places" if joint.spots > 1 else ""
    if joint.spacing is None:
        return ""
    each = joint.count // joint.spots
    return f"{each} stand{spots}, {amounts.length(joint.spacing)} apart at least."
