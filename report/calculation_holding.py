"""The steps for what holds a piece down: each row of anchors and of guys."""

from typing import Any

from ..checks.examination import Examination
from ..checks.judging import Check
from ..units import factor
from .calculation_text import figures, said, section, step


def anchors(examination: Examination) -> list[dict[str, Any]]:
    """Return what each row of anchors holds and is asked for."""
    if not examination.held.anchors:
        return []
    soil = examination.factors.soil
    items: list[dict[str, Any]] = []
    for row in examination.held.anchors:
        holds = row.holds
        used, head = (
            _check(examination, f"{kind}: {row.name}") for kind in ("anchor", "anchor head")
        )
        items.append(
            said(
                f"{row.name}: {len(row.points)} of {row.kind}. Each holds "
                f"{figures(soil * holds.straight)} N straight up and "
                f"{figures(soil * holds.sideways)} N sideways in this ground, ultimate over "
                f"{holds.factor:g}; its head {figures(holds.head)} N."
            )
        )
        if used is not None and used.utilization is not None:
            met = "met" if used.passes else "not met"
            values = {"u": used.utilization}
            items.append(
                step("anchor", "The one most used, both at once", values, used.source, met=met)
            )
        if head is not None and head.capacity > 0.0:
            values = {"demand": head.demand, "capacity": head.capacity}
            values["ratio"] = head.demand / head.capacity
            met = "met" if head.passes else "not met"
            items.append(step("ratio", f"Its head ({head.remark})", values, head.source, met=met))
    return [section("Anchors", *_with_them(examination), *items)]


def guys(examination: Examination) -> list[dict[str, Any]]:
    """Return what each row of guys holds and is asked for."""
    if not examination.held.guys:
        return []
    items: list[dict[str, Any]] = []
    for row in examination.held.guys:
        check = _check(examination, f"guy: {row.name}")
        items.append(
            said(
                f"{row.name}: {len(row.tops)} guys, {figures(row.length)} m long, "
                f"{figures(row.elevation / factor('deg'))} deg above level. The line holds "
                f"{figures(row.line)} N, the ground anchor "
                f"{figures(row.holds.along(row.elevation))} N along it."
            )
        )
        if check is not None and check.utilization is not None:
            values = {"demand": check.demand, "capacity": check.capacity}
            values["ratio"] = check.utilization
            met = "met" if check.passes else "not met"
            items.append(step("ratio", "Its greatest pull", values, check.source, met=met))
    return [
        section("Guys", *(_with_them(examination) if not examination.held.anchors else []), *items)
    ]


def _with_them(examination: Examination) -> list[dict[str, Any]]:
    """Return tipping and sliding of the piece held down."""
    found: list[dict[str, Any]] = []
    for name, words in (("overturning", "Tipping, held down"), ("sliding", "Sliding, held down")):
        check = _check(examination, name)
        if check is None or check.capacity <= 0.0:
            continue
        values = {"demand": check.demand, "capacity": check.capacity}
        values["ratio"] = check.demand / check.capacity
        met = "met" if check.passes else "not met"
        found.append(step("ratio", words, values, check.source, met=met))
    return found


def _check(examination: Examination, name: str) -> Check | None:
    return next((check for check in examination.checks if check.name == name), None)
