"""A design at many sizes: as a table for people, for spreadsheets and for programs."""

from collections.abc import Mapping, Sequence
from typing import Any, cast

from ...checks.sweep import Figures, Swept, Vary
from ...design.faults import Fault
from ...units import plain
from ..messages import messages
from ..wording.amounts import Amounts
from ..wording.cells import as_cell
from ..wording.faults import clean, fault_object
from ..wording.lines import Line, wrapped
from .first_screen import MOST_COLUMNS, mood_of

FIGURES = ("forecast_tipping_gust_m_s", "forecast_sliding_gust_m_s", "act_forecast_gust_m_s")
CANNOT = "cannot be made"


def sweep_lines(swept: Sequence[Swept], varied: Sequence[Vary], metric: bool) -> list[Line]:
    """Return a row for each size: what tips and slides it, act at, weight, word."""
    amounts = Amounts(metric)
    heads = [*(each.name for each in varied), "tips", "slides", "act at", "weighs"]
    rows = [[*map(str, one.values), *_figures(one, amounts)] for one in swept]
    wide = [max(len(row[k]) for row in (heads, *rows)) for k in range(len(heads))]
    lines = [Line(_row(heads, wide), "title")]
    for one, row in zip(swept, rows, strict=True):
        made = one.found.word if isinstance(one.found, Figures) else None
        word = (made or CANNOT).upper()
        mood = mood_of(made) if made else "bad"
        lines.append(Line(f"{_row(row, wide)}  {word}", word=(word, mood)))
    wrong = next((one for one in swept if isinstance(one.found, tuple)), None)
    return lines if wrong is None else [*lines, *_why_not(wrong)]


def _why_not(one: Swept) -> list[Line]:
    """Return what is wrong with a size that cannot be made."""
    first = cast("tuple[Fault, ...]", one.found)[0]
    where = ", ".join(each for each in (first.part, first.key) if each)
    said = f"At {', '.join(map(str, one.values))}{f' ({where})' if where else ''}"
    return wrapped(f"{clean(said)}: {clean(first.expected)}.", rest="  ", width=MOST_COLUMNS)


def sweep_object(swept: Sequence[Swept], varied: Sequence[Vary]) -> dict[str, Any]:
    """Return the sweep as one JSON object, SI units in the keys."""
    return {
        "vary": [{"of": each.of, "key": each.key, "values": list(each.values)} for each in varied],
        "rows": [_object(one, varied) for one in swept],
    }


def sweep_cells(swept: Sequence[Swept], varied: Sequence[Vary]) -> list[dict[str, str]]:
    """Return a row of cells for each size, SI units in the heads."""
    found: list[dict[str, str]] = []
    for one in swept:
        row = _object(one, varied)
        cells = {**row["values"], **{key: row[key] for key in (*FIGURES, "mass_kg", "word")}}
        found.append({key: as_cell(_cell(value)) for key, value in cells.items()})
    return found


def _cell(value: float | str | None) -> str:
    if value is None:
        return ""
    return plain(value, 6) if isinstance(value, float) else str(value)


def _object(one: Swept, varied: Sequence[Vary]) -> dict[str, Any]:
    values: Mapping[str, str | float] = {
        vary.name: value for vary, value in zip(varied, one.values, strict=True)
    }
    if not isinstance(one.found, Figures):
        nothing = dict.fromkeys((*FIGURES, "mass_kg", "passes"))
        faults = [fault_object(fault) for fault in one.found]
        return {"values": values, **nothing, "word": CANNOT, "faults": faults}
    gusts = (one.found.tips, one.found.slides, one.found.act)
    return {
        "values": values,
        **dict(zip(FIGURES, gusts, strict=True)),
        "mass_kg": one.found.mass,
        "passes": one.found.passes,
        "word": str(one.found.word),
        "faults": [],
    }


def _figures(one: Swept, amounts: Amounts) -> list[str]:
    if not isinstance(one.found, Figures):
        return ["", "", "", ""]
    gusts = (one.found.tips, one.found.slides)
    told = [messages.CALM if gust is None else amounts.gust(gust) for gust in gusts]
    act = messages.CALM if one.found.act is None else amounts.act(one.found.act)
    return [*told, act, amounts.mass(one.found.mass)]


def _row(cells: Sequence[str], wide: Sequence[int]) -> str:
    return "  ".join(f"{cell:>{width}}" for cell, width in zip(cells, wide, strict=True))
