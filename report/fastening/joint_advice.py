"""What to do about a joint that does not hold, in a builder's words."""

from ...checks.fasteners.fastener_sets import CLEAT, block_thickness
from ...checks.joints.joint_check import JointFound
from ...checks.joints.joint_sizing import JointRemedy, JointSizing, Why, reach_into_blocks
from ..wording.amounts import Amounts
from .fastener_words import several_fasteners, thick_enough, too_short


def joint_remedy(sizing: JointSizing, amounts: Amounts) -> str:
    """Return what to do about a joint that does not hold, or that none is needed."""
    joint = sizing.joint
    if joint.check.passes:
        return f"holds, at {100.0 * (joint.check.utilization or 0.0):.0f}% of what it can"
    other = joint.fasteners.point_in
    short = too_short(joint.fasteners.holds, other, amounts)
    advice = _advice(sizing, other, amounts)
    in_end = "end grain" in joint.fasteners.holds.reasons
    return f"{short}; {advice}" if short and not in_end else advice


def joint_brief(sizing: JointSizing) -> str:
    """Return the first thing to do about a joint that does not hold, in a word or two."""
    if sizing.remedies:
        remedy = sizing.remedies[0]
        spots = " at each place" if sizing.joint.spots > 1 else ""
        within = " through blocks inside" if remedy.kind == "blocks" else ""
        name = several_fasteners(remedy.fastener)
        of_them = f", {remedy.count} of them" if remedy.count > 1 else ", one"
        return f"{name}{of_them}{spots}{within}"
    match sizing.why:
        case Why.PANEL_EDGE:
            return "blocks or cleats inside"
        case Why.END_GRAIN:
            return "lag screws, or cleats"
        case Why.NO_ROOM:
            return "cleats"
        case _:
            return "through bolts, or cleats"


def _advice(sizing: JointSizing, other: str, amounts: Amounts) -> str:
    """Return how to fasten a joint that does not hold, its points now in ``other``."""
    if sizing.remedies and sizing.remedies[0].kind == "blocks":
        return _in_blocks(sizing.remedies[0], sizing.joint, other, amounts)
    if sizing.remedies:
        ways = "; or ".join(_way(remedy, sizing.joint, amounts) for remedy in sizing.remedies)
        reaches = [reach_into_blocks(remedy.found) for remedy in sizing.remedies]
        thick = thick_enough("blocks", reaches, amounts)
        in_end = "end grain" in sizing.joint.fasteners.holds.reasons
        why = f"nails and screws in the end of {other} count nothing: " if in_end else ""
        return f"{why}use {ways}" + (f" ({thick})" if thick else "")
    joint = sizing.joint
    match sizing.why:
        case Why.PANEL_EDGE:
            return (
                f"nothing counts in the edge of {other}: set blocks or cleats inside, fastened to "
                f"both (blocks = '{CLEAT}')"
            )
        case Why.END_GRAIN:
            return (
                f"nails and screws in the end of {other} count nothing: lag screws, or cleats at "
                "its sides"
            )
        case Why.NO_ROOM if sizing.crowded is not None and sizing.crowded.spacing is not None:
            return _crowded(sizing.crowded)
        case _:
            bolts = joint.row.fastener.kind == "bolt"
            other_way = "a larger face" if bolts else "through bolts"
            return f"none of its kind that fits is strong enough: {other_way}, or cleats"


def _in_blocks(remedy: JointRemedy, joint: JointFound, other: str, amounts: Amounts) -> str:
    """Return how a joint is fastened through blocks inside, each part to them."""
    reach, way = reach_into_blocks(remedy.found), _way(remedy, joint, amounts)
    thick = "2x2 blocks inside"
    if reach > block_thickness() * (1.0 + 1.0e-9):
        thick = f"blocks inside, at least {amounts.length(reach, 'up')} thick"
    return f"nothing counts in the edge of {other}: set {thick}, each part to them by {way}"


def _crowded(crowded: JointFound) -> str:
    """Return that as many as would hold find no room."""
    return f"the {crowded.count // crowded.spots} it takes do not fit: use cleats"


def _way(remedy: JointRemedy, joint: JointFound, amounts: Amounts) -> str:
    name = several_fasteners(remedy.fastener)
    spots = " at each place" if joint.spots > 1 else ""
    number = f"{remedy.count} of them{spots}" if remedy.count > 1 else f"one{spots}"
    spacing = remedy.found.spacing
    apart = f", {amounts.length(spacing)} apart" if spacing is not None else ""
    return f"{name}, {number}{apart}"
