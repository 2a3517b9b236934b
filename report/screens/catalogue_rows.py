"""Many designs as a table for spreadsheets and programs: a row each, SI units in the heads."""

from collections.abc import Mapping
from typing import Any

from ...design.faults import DesignError
from ..wording.cells import as_cell
from .folder import FolderRow

_LIMITS = (
    "act_forecast_gust_m_s",
    "forecast_tipping_gust_m_s",
    "forecast_sliding_gust_m_s",
    "push_N",
)
COLUMNS = (
    *("file", "name", "word", "passes", "todo", *_LIMITS, "mass_kg", "height_m"),
    *("worst", "utilization", "fingerprint", "faults"),
)


def catalogue_row(result: Mapping[str, Any], row: FolderRow) -> dict[str, str]:
    """Return the cells of a design from its JSON object and its row in the table on the screen.

    ``worst`` is the check that is used most; a number without bound is an empty cell.
    """
    worst = max(result["checks"], key=_used, default=None)
    cells = {
        "file": result["file"],
        "name": result["name"],
        "word": str(row.word),
        "passes": "yes" if all(check["passes"] for check in result["checks"]) else "no",
        "todo": row.todo,
        **{key: _number(result["limits"][key]) for key in _LIMITS},
        "mass_kg": _number(result["geometry"]["mass_kg"]),
        "height_m": _number(result["geometry"]["height_m"]),
        "worst": worst["name"] if worst else "",
        "utilization": _number(worst["utilization"]) if worst else "",
        "fingerprint": result["fingerprint"],
        "faults": "",
    }
    return {key: as_cell(value) for key, value in cells.items()}


def faulty_row(file: str, wrong: DesignError) -> dict[str, str]:
    """Return the cells of a file that cannot be read: how much is wrong, and the first of it."""
    first = wrong.faults[0]
    where = ", ".join(str(each) for each in (first.part, first.key) if each)
    said = f"{len(wrong.faults)}: {f'{where}: ' if where else ''}{first.expected}"
    return {**dict.fromkeys(COLUMNS, ""), "file": as_cell(file), "faults": as_cell(said)}


def _used(check: Mapping[str, Any]) -> float:
    used = check["utilization"]
    return float("inf") if used is None else float(used)


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:.6g}"
