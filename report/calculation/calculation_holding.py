"""The steps for what holds a piece down: each row of anchors and of guys."""

from typing import Any

from ...checks.examination import Examination
from ...checks.judged.judging import Check, Kind
from ...units import factor
from ..told.check_notes import remarked
from .calculation_text import calculation_section, four_figures, paragraph, ratio, step


def anchors(examination: Examination) -> list[dict[str, Any]]:
    """Return what each row of anchors holds and is asked for."""
    if not examination.held.anchors:
        return []
    soil = examination.factors.soil
    items: list[dict[str, Any]] = []
    for row in examination.held.anchors:
        holds = row.holds
        used, head = (
            _check(examination, kind, row.name) for kind in (Kind.ANCHOR, Kind.ANCHOR_HEAD)
        )
        items.append(
            paragraph(
                f"{row.name}: {len(row.points)} of {row.kind}. Each holds "
                f"{four_figures(soil * holds.straight)} N straight up and "
                f"{four_figures(soil * holds.sideways)} N sideways in this ground, ultimate over "
                f"{holds.factor:g}; its head {four_figures(holds.head)} N."
            )
        )
        if used is not None and used.utilization is not None:
            met = "met" if used.passes else "not met"
            values = {"u": used.utilization}
            items.append(
                step("anchor", "The one most used, both at once", values, used.source, met=met)
            )
        if head is not None and head.capacity > 0.0:
            items.append(ratio(f"Its head ({remarked(head)})", head, head.source))
    return [calculation_section("Anchors", *_with_them(examination), *items)]


def guys(examination: Examination) -> list[dict[str, Any]]:
    """Return what each row of guys holds and is asked for."""
    if not examination.held.guys:
        return []
    items: list[dict[str, Any]] = []
    for row in examination.held.guys:
        check = _check(examination, Kind.GUY, row.name)
        items.append(
            paragraph(
                f"{row.name}: {len(row.tops)} guys, {four_figures(row.length)} m long, "
                f"{four_figures(row.elevation / factor('deg'))} deg above level. The line holds "
                f"{four_figures(row.line)} N, the ground anchor "
                f"{four_figures(row.holds.along(row.elevation))} N along it."
            )
        )
        if check is not None and check.utilization is not None:
            items.append(ratio("Its greatest pull", check, check.source))
    return [
        calculation_section(
            "Guys", *(_with_them(examination) if not examination.held.anchors else []), *items
        )
    ]


def posts(examination: Examination) -> list[dict[str, Any]]:
    """Return what each post in the ground is asked for and what its depth holds."""
    found = examination.posts
    if found is None:
        return []
    items: list[dict[str, Any]] = []
    for n, part in enumerate(found.part):
        name = examination.design.parts[part].name
        if part in found.part[:n]:
            continue
        held = "held at the surface" if found.constrained[n] else "free"
        items.append(
            paragraph(
                f"{name}: {four_figures(float(found.depth[n]))} m deep, "
                f"{four_figures(float(found.width[n]))} m wide, {held}; the ground is allowed "
                f"{four_figures(float(found.bearing[n]))} Pa for each m of depth, sideways."
            )
        )
        check = _check(examination, Kind.EMBEDMENT, name)
        if check is not None and check.capacity > 0.0:
            words = f"Its level force in N: {remarked(check)}"
            items.append(ratio(words, check, check.source))
    return [calculation_section("Posts in the ground", *items)]


def _with_them(examination: Examination) -> list[dict[str, Any]]:
    """Return tipping and sliding of the piece held down."""
    found: list[dict[str, Any]] = []
    for kind, words in (
        (Kind.OVERTURNING, "Tipping, held down"),
        (Kind.SLIDING, "Sliding, held down"),
    ):
        check = _check(examination, kind)
        if check is not None and check.capacity > 0.0:
            found.append(ratio(words, check, check.source))
    return found


def _check(examination: Examination, kind: Kind, subject: str = "") -> Check | None:
    of_it = (c for c in examination.checks if (c.kind, c.subject) == (kind, subject))
    return next(of_it, None)
