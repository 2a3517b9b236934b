"""All checks of a design as rows of a table on paper."""

from collections.abc import Iterable
from math import isfinite

from ...checks.judged.finding import Finding
from ...checks.judged.judging import Check
from ..told.check_notes import notes_said
from ..wording.amounts import FOOT, POUND_FORCE, Amounts
from ..wording.filled import plain_source
from .calculation_text import four_figures

_UNITS = {"N*m": "N m", "1": ""}
_IMPERIAL = {"N*m": (POUND_FORCE * FOOT, "lbf ft"), "N": (POUND_FORCE, "lbf")}


def check_rows(
    checks: Iterable[tuple[Check, Iterable[Finding]]], amounts: Amounts
) -> list[dict[str, str]]:
    """Return each check with demand, capacity, utilization, whether it is met, notes and source.

    With each comes what governed it.
    """
    return [
        {
            "name": check.name,
            "demand": _measured(check.demand, check.unit, amounts),
            "capacity": _measured(check.capacity, check.unit, amounts),
            "utilization": "-" if check.utilization is None else f"{check.utilization:.3f}",
            "met": "met" if check.passes else "not met",
            "notes": " ".join(notes_said(governed, amounts)),
            "source": plain_source(check.source),
        }
        for check, governed in checks
    ]


def _measured(value: float, unit: str, amounts: Amounts) -> str:
    if not isfinite(value):
        return "no bound"
    plain = f"{four_figures(value)} {_UNITS.get(unit, unit)}".strip()
    if amounts.metric or unit not in _IMPERIAL:
        return plain
    one, name = _IMPERIAL[unit]
    return f"{plain} ({four_figures(value / one)} {name})"
