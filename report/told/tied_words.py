"""Anchors and guys as a builder sets them: how many, of what, where, how driven, what they hold."""

from collections.abc import Mapping
from math import degrees
from typing import Any

from ...checks.anchoring.anchor_choice import AnchorChoice
from ...checks.anchoring.guy_choice import GuyChoice
from ...checks.stability.remedies import Stakes
from ...materials import anchors as kinds
from ...materials import guy_lines
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ..messages import messages
from ..messages.terms import WHERE
from ..wording.amounts import Amounts
from ..wording.remark import counted
from .held_words import several_anchors


def anchors_said(choice: AnchorChoice, stakes: Stakes, amounts: Amounts) -> str:
    """Return which anchors, where, how they are set, and what each is asked for."""
    row = choice.held.anchors[-1]
    pulls = ((stakes.pull, "up"), (stakes.sideways, "sideways"))
    asked = ", ".join(f"{amounts.pull(pull)} {way}" for pull, way in pulls if pull > 1.0) + " each"
    same = len(row.points) == len(stakes.points)
    said = f"{several_anchors(len(row.points), choice.row.kind)}, {WHERE[choice.places]}"
    return f"{said}, {how_set(choice.row, len(row.points), amounts)}{f': {asked}' if same else ''}"


def needed_pulls(choice: AnchorChoice, stakes: Stakes, amounts: Amounts) -> str:
    """Return what each anchor is asked for: ``Each of the anchors is asked for 40 lb up, …``."""
    if len(choice.held.anchors[-1].points) != len(stakes.points):
        return ""
    pulls = ((stakes.pull, "up"), (stakes.sideways, "sideways"))
    asked = ", ".join(f"{amounts.pull(pull)} {way}" for pull, way in pulls if pull > 1.0)
    return f"Each {choice.row.kind} is asked for {asked}." if asked else ""


def how_set(row: AnchorRow, number: int, amounts: Amounts) -> str:
    """Return how so many anchors of a row are set at the foot."""
    kind = kinds.find_anchor(row.kind)
    if kind.group == "slab bolt":
        return messages.SET_BOLT.format(inset=amounts.length(row.inset))
    return messages.HOW_SET[kind.head.name][number > 1]


def guys_said(choice: GuyChoice, amounts: Amounts) -> str:
    """Return how many guys, of what, from where to where, and what each is asked for."""
    row = choice.row
    said = (
        f"{counted(row.count, 'guy')} of {row.line}, from {amounts.length(row.height)} up to the "
        f"ground {amounts.length(row.radius)} from the middle, toward the corners: "
        f"{amounts.pull(choice.pull)} each; {_ground_end(row)}"
    )
    if choice.pins is None:
        return said
    where = messages.AT_EACH[choice.pins.where].format(count=choice.pins.count)
    return f"{said}; and against sliding a {choice.pins.kind} at {where}"


def guy_set(row: GuyRow, amounts: Amounts) -> str:
    """Return how guys of a design are set: of what, from where to where, and how made fast."""
    kind = kinds.find_anchor(row.anchor)
    lean = " leaning away from it" if kind.group == "stake" else ""
    tied = row.end or guy_lines.find_line(row.line).end.name
    off = any(row.at[:2])
    return (
        f"{row.count} guys of {row.line} (made fast by {tied}) "
        f"from {amounts.own_length(row.height)} up on the piece to a {kind.name}{lean}, "
        f"{amounts.own_length(row.radius)} out from {'their' if off else 'its'} middle"
    )


def _ground_end(row: GuyRow) -> str:
    kind = kinds.find_anchor(row.anchor)
    lean = ", leaning away from the piece" if kind.group == "stake" else ""
    return f"at each end a {kind.name}{lean}"


def tied_object(remedy_anchors: AnchorChoice | None, guys: GuyChoice | None) -> Mapping[str, Any]:
    """Return what was chosen as a program reads it; empty where nothing was."""
    if remedy_anchors is not None:
        row = remedy_anchors.held.anchors[-1]
        return {
            "anchor_kind": row.kind,
            "count": len(row.points),
            "points_m": row.points.tolist(),
            "holds_up_N": row.holds.up,
            "holds_sideways_N": row.holds.sideways,
            "factor": row.holds.factor,
            "source": row.holds.source,
            "confidence": row.holds.confidence,
        }
    if guys is None:
        return {}
    return {
        "line": guys.row.line,
        "anchor_kind": guys.row.anchor,
        "count": guys.row.count,
        "height_m": guys.row.height,
        "radius_m": guys.row.radius,
        "start_deg": degrees(guys.row.start) % 360.0,
        "pins_kind": guys.pins.kind if guys.pins is not None else None,
    }
