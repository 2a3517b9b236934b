"""Labels of many designs for other programs: a row each of a table, an object each of JSON."""

from collections.abc import Iterable, Mapping
from typing import Any

from ...checks.limits import GREATEST_GUST
from ...checks.stated.listing import Listing
from ..messages.listing_messages import IN_BRIEF
from ..messages.terms import TERMS_SAID
from ..told.not_checked import not_checked
from ..wording.amounts import Amounts
from ..wording.cells import as_cell, as_table
from ..wording.faults import clean
from ..wording.filled import message_of
from ..wording.fingerprint import design_mark, fingerprint, tables_mark
from .label import Label, Refusal

SURROUNDINGS = TERMS_SAID["surroundings"]
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
    listing, design = label.listing, label.listing.design
    row = {
        "name": design.name,
        "file": design.file.encode("utf-8", "backslashreplace").decode("utf-8"),
        **label_figures(listing),
        "short": label.short,
        "long": label.long,
        "fingerprint": fingerprint(design),
        "not checked": "; ".join(one.topic for one in listing.not_looked_at),
        "design mark": design_mark(design),
        "tables mark": tables_mark(),
    }
    return {column: row[column] for column in _COLUMNS}


def label_figures(listing: Listing) -> dict[str, str]:
    """Return what was worked out of a design, as people read it, by column."""
    amounts, limits = Amounts(listing.design.units == "metric"), listing.limits
    beyond = f"over {amounts.gust(GREATEST_GUST)}"
    acts = listing.acts
    return {
        "weight": amounts.mass(listing.mass),
        "height": amounts.length(listing.height),
        **{
            column: beyond if (act := acts[exposure]) is None else amounts.act(act)
            for exposure, column in ACT_COLUMNS.items()
        },
        "tips at": _gust(limits.forecast_tipping, amounts, beyond),
        "slides at": _gust(limits.forecast_sliding, amounts, beyond),
        "push": amounts.force(limits.push, "down"),
        "anchors": message_of(listing.brief, amounts, IN_BRIEF),
    }


def label_object(found: Label | Refusal) -> dict[str, Any]:
    """Return one label, or why there is none, as a JSON object: SI, every number finite or None."""
    if isinstance(found, Refusal):
        design = found.design
        about = {"format": 1, "name": design.name, "file": clean(design.file)}
        return about | {"missing": found.missing, "reason": found.reason}
    listing, design, limits = found.listing, found.listing.design, found.listing.limits
    amounts = Amounts(design.units == "metric")
    return {
        "format": 1,
        "name": design.name,
        "file": clean(design.file),
        "fingerprint": fingerprint(design),
        "short": found.short,
        "long": found.long,
        "left_out": list(found.left_out),
        "shop": clean(found.shop.file) or None,
        "mass_kg": listing.mass,
        "height_m": listing.height,
        "act_forecast_gust_m_s": {SURROUNDINGS[key]: act for key, act in listing.acts.items()},
        "forecast_tipping_gust_m_s": limits.forecast_tipping,
        "forecast_sliding_gust_m_s": limits.forecast_sliding,
        "push_N": limits.push,
        "anchors": message_of(listing.brief, amounts, IN_BRIEF),
        "not_checked": list(not_checked(listing.not_looked_at, amounts)),
    }


def _gust(gust: float | None, amounts: Amounts, beyond: str) -> str:
    return beyond if gust is None else amounts.gust(gust)
