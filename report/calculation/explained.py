"""One check explained: its relation, where that stands, every input and where that came from."""

from collections.abc import Sequence
from difflib import get_close_matches
from typing import Any

from ...checks.examination import Examination
from ...checks.judged.judging import Check, Kind
from ...checks.stated.governed import governed
from ..messages.formulas import FORMULAS
from ..told.check_notes import notes_said
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.filled import plain_source
from ..wording.lines import Line, wrapped
from . import calculation_holding as holding
from . import calculation_steps as steps
from . import calculation_wind as wind_steps
from .calculation_text import calculation_section, four_figures, ratio
from .given import Given, inputs_of

_WIDE = 79
_UNITS = {"N*m": "N m", "1": ""}


class NoCheckError(Exception):
    """There is no check of that name; ``hint`` is the nearest, or all that there are."""

    def __init__(self, typed: str, names: Sequence[str]) -> None:
        near = get_close_matches(typed.casefold(), names, n=1)
        hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(names)}"
        super().__init__(f"no check is called '{clean(typed)[:60]}': {hint}")


def explained_object(examination: Examination, name: str) -> dict[str, Any]:
    """Return a check explained, for programs. NoCheckError: the design has none of that name."""
    check = _check(examination, name)
    amounts = Amounts(examination.design.units == "metric")
    return {
        "name": check.name,
        "relation": [
            {"title": part["title"], "steps": [_step(item) for item in part["items"]]}
            for part in _sections(examination, check)
        ],
        "source": plain_source(check.source),
        "inputs": [
            {
                "what": clean(one.what),
                "value": clean(one.value),
                "from": _where(one),
                "line": one.line,
                "source": one.source or None,
                "confidence": one.confidence or None,
            }
            for one in inputs_of(examination, check)
        ],
        "demand": check.demand,
        "capacity": check.capacity,
        "unit": check.unit,
        "utilization": check.utilization,
        "passes": check.passes,
        "notes": list(notes_said(governed(examination, check), amounts)),
    }


def explained(examination: Examination, name: str) -> list[Line]:
    """Return a check explained, for people. NoCheckError: the design has none of that name."""
    found = explained_object(examination, name)
    unit = _UNITS.get(found["unit"], found["unit"])
    lines = [Line(f"{clean(found['name'])}, explained", "title")]
    for part in found["relation"]:
        lines += [Line(""), Line(f"  {part['title']}", "title")]
        for item in part["steps"]:
            lines += _told(item)
    lines += [Line(""), Line("  Where its inputs come from", "title")]
    for one in found["inputs"]:
        who = "".join(
            [
                f"; {one['source']}" if one["source"] else "",
                f" ({one['confidence']})" if one["confidence"] else "",
            ]
        )
        said = f"{one['what']} = {one['value']}   {one['from']}{who}"
        lines += wrapped(said, first="    ", rest="        ", width=_WIDE)
    lines += [Line(""), Line("  What comes of it", "title")]
    used = found["utilization"]
    ratio = "nothing resists" if used is None else f"use {four_figures(used)}"
    met = "met" if found["passes"] else "not met"
    said = (
        f"{four_figures(found['demand'])} against {four_figures(found['capacity'])} {unit}".rstrip()
    )
    lines += wrapped(f"{said}: {ratio}, {met}.", first="    ", width=_WIDE)
    lines += wrapped(f"Source: {found['source']}.", first="    ", width=_WIDE)
    for note in found["notes"]:
        lines += wrapped(note, first="    ", width=_WIDE)
    return lines


def _check(examination: Examination, name: str) -> Check:
    every = {check.name.casefold(): check for check in (*(examination.free or ()),)}
    every |= {check.name.casefold(): check for check in examination.checks}
    found = every.get(name.strip().casefold())
    if found is None:
        raise NoCheckError(name, [check.name for check in every.values()])
    return found


def _sections(examination: Examination, check: Check) -> list[dict[str, Any]]:
    """Return the steps that lead to a check: those of the calculation on paper, if it has any."""
    free = examination.free is not None
    if check.kind is Kind.OVERTURNING and free:
        parts = [steps.weight, wind_steps.pressure, wind_steps.forces, steps.tipping]
    elif check.kind is Kind.SLIDING and free:
        parts = [steps.weight, wind_steps.pressure, wind_steps.forces, steps.sliding]
    elif check.kind is Kind.BEARING and free:
        parts = [steps.weight, wind_steps.pressure, steps.bearing]
    else:
        parts = []
    found = [part(examination) for part in parts]
    if check.kind in (Kind.ANCHOR, Kind.ANCHOR_HEAD) or (found and examination.held.anchors):
        found += holding.anchors(examination)
    elif check.kind is Kind.GUY or (found and examination.held.guys):
        found += holding.guys(examination)
    elif check.kind is Kind.EMBEDMENT:
        found = [steps.weight(examination), wind_steps.pressure(examination)]
        found += holding.posts(examination)
    return found or [_use(check)]


def _use(check: Check) -> dict[str, Any]:
    """Return what is asked over what is held, of a check that the calculation has no steps of."""
    used = ratio("Where it is used most", check, check.source)
    return calculation_section("What it is asked over what it holds", used)


def _step(item: dict[str, Any]) -> dict[str, Any]:
    if item["kind"] == "step":
        return {
            "words": item["words"],
            "formula": FORMULAS[item["formula"]].format(**item["values"]),
            "values": item["values"],
            "source": item["clause"],
        }
    if item["kind"] == "table":
        return {"words": item["words"], "head": item["head"], "rows": item["rows"]}
    return {"words": item["words"]}


def _told(item: dict[str, Any]) -> list[Line]:
    lines: list[Line] = []
    if item["words"]:
        stop = ":" if "formula" in item or "rows" in item else ""
        words = item["words"].rstrip(".") if stop else item["words"]
        lines += wrapped(f"{words}{stop}", first="    ", width=_WIDE)
    if "formula" in item:
        lines += wrapped(item["formula"], first="      ", rest="        ", width=_WIDE)
        if item["source"]:
            lines += wrapped(f"[{item['source']}]", first="      ", rest="       ", width=_WIDE)
    for row in item.get("rows", ()):
        cells = "; ".join(f"{head} {cell}" for head, cell in zip(item["head"], row, strict=True))
        lines += wrapped(cells, first="      ", rest="        ", width=_WIDE)
    return lines


def _where(one: Given) -> str:
    if one.line is not None:
        return f"line {one.line} of the file"
    if one.table is not None:
        return f"references/{one.table}"
    return "not given"
