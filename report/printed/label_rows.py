"""Labels of many designs for other programs: a row each of a table, an object each of JSON."""

from collections.abc import Iterable, Mapping
from typing import Any

from ...checks.examination import Examination
from ...checks.stated.surroundings import act_by_exposure
from ..messages import messages
from ..told.label_anchors import each_holds, of_what
from ..told.not_checked import not_checked
from ..wording.amounts import Amounts
from ..wording.asked_wind import SURROUNDINGS
from ..wording.cells import as_cell, as_table
from ..wording.faults import clean
from ..wording.fingerprint import design_mark, fingerprint, tables_mark
from .label import Label, Refusal

ACT_COLUMNS: Mapping[str, str] = {
    exposure: f"act at ({SURROUNDINGS[exposure]})" for exposure in ("C", "B", "D")
}
_COLUMNS = (
    "name",
    "file",
    "weight",
    "height",
    *ACT_COLUMNS.values(),
    "tips at",
    "slides at",
    "push",
    "anchors",
    "short",
    "long",
    "fingerprint",
    "not checked",
    "design mark",
    "tables mark",
)
"""The columns of the table, in this order; the marks tell later what of a fingerprint changed."""


def label_csv(labels: Iterable[Label]) -> str:
    """Return a table with a row for each label, as spreadsheets read it."""
    rows = (label_row(label) for label in labels)
    return as_table(_COLUMNS, ({key: as_cell(value) for key, value in row.items()} for row in rows))


def label_row(label: Label) -> dict[str, str]:
    """Return one label as a row of the table."""
    design = label.examination.design
    row = {
        "name": design.name,
        "file": design.file.encode("utf-8", "backslashreplace").decode("utf-8"),
        **label_figures(label.examination),
        "short": label.short,
        "long": label.long,
        "fingerprint": fingerprint(design),
        "not checked": "; ".join(one.topic for one in label.examination.verdict.not_looked_at),
        "design mark": design_mark(design),
        "tables mark": tables_mark(),
    }
    return {column: row[column] for column in _COLUMNS}


def label_figures(found: Examination) -> dict[str, str]:
    """Return what was worked out of a design, as people read it, by column."""
    design, limits, structure = found.design, found.limits, found.structure
    amounts = Amounts(design.units == "metric")
    beyond = f"over {amounts.gust(150.0)}"
    acts = act_by_exposure(found)
    return {
        "weight": amounts.mass(structure.mass("typical")),
        "height": amounts.length(structure.height),
        **{
            column: beyond if (act := acts[exposure]) is None else amounts.act(act)
            for exposure, column in ACT_COLUMNS.items()
        },
        "tips at": _gust(limits.forecast_tipping, amounts, beyond),
        "slides at": _gust(limits.forecast_sliding, amounts, beyond),
        "push": amounts.force(limits.push, "down"),
        "anchors": anchors_in_brief(found),
    }


def label_object(found: Label | Refusal) -> dict[str, Any]:
    """Return one label, or why there is none, as a JSON object: SI, every number finite or None."""
    examination = found.examination
    design, limits, structure = examination.design, examination.limits, examination.structure
    about = {"format": 1, "name": design.name, "file": clean(design.file)}
    if isinstance(found, Refusal):
        return about | {"missing": found.missing, "reason": found.reason}
    acts = act_by_exposure(examination)
    return about | {
        "fingerprint": fingerprint(design),
        "short": found.short,
        "long": found.long,
        "left_out": list(found.left_out),
        "shop": clean(found.shop.file) or None,
        "mass_kg": structure.mass("typical"),
        "height_m": structure.height,
        "act_forecast_gust_m_s": {SURROUNDINGS[key]: act for key, act in acts.items()},
        "forecast_tipping_gust_m_s": limits.forecast_tipping,
        "forecast_sliding_gust_m_s": limits.forecast_sliding,
        "push_N": limits.push,
        "anchors": anchors_in_brief(examination),
        "not_checked": list(not_checked(examination)),
    }


def anchors_in_brief(examination: Examination) -> str:
    """Return what holds it by its design, else the anchors that were found to do."""
    if examination.posts is not None:
        return "none: posts in the ground carry it"
    if not (examination.held or examination.needs_anchors):
        return "needs none"
    choice = examination.anchors
    if examination.held:
        said, held = of_what(examination.held), examination.held
    elif choice is not None:
        said, held = f"{of_what(choice.held)}, {messages.WHERE[choice.places]}", choice.held
    else:
        return "none here hold it"
    each = each_holds(examination, held)
    return f"{said}, {each}" if each else said


def _gust(gust: float | None, amounts: Amounts, beyond: str) -> str:
    return beyond if gust is None else amounts.gust(gust)
