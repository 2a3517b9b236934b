"""The rows that hold a fastener, by its trade name or its diameter, from the published tables."""

from collections.abc import Mapping
from functools import cache

import numpy as np

from .. import references, units
from ..references import TableRow
from .fastener_words import Words

_SUGGESTED = 4
"""So many of one designation are offered: all sorts of a nail."""

MILLIMETRE = 1.0e-3

_MOST_APART = 0.0005
"""Inches between a given diameter and the nominal size that it is taken for."""


def fastener_names() -> list[str]:
    """Return the trade name of every size in the tables, without length where it has many."""
    return [name for named in _tables().values() for name in named]


def metric_nail(diameter: float | None) -> TableRow | None:
    """Return the round wire nail of a shank in m, as it is sold by the millimetre, or None."""
    for row in references.table("wood/metric_nails_geometry").rows:
        if (
            diameter is not None
            and abs(float(row["shank_mm"]) * MILLIMETRE - diameter) < 0.01 * MILLIMETRE
        ):
            return row
    return None


def deck_screw_root(diameter: float) -> float | None:
    """Return the root in m of a deck screw of a diameter in m, as one maker's report has it."""
    sizes = references.table("wood/deck_screws_geometry")
    near = np.abs(sizes.si("thread_outer_in") - diameter) < _MOST_APART * units.INCH
    return float(sizes.si("root_dia_in")[near][0]) if near.any() else None


def steel_row(steel: str, diameter: float) -> TableRow | None:
    """Return the row of bending yield strength for a diameter in m; None beyond the table."""
    D = round(diameter / units.factor("in"), 6)
    for row in references.table("wood/fastener_bending_yield").where("steel", steel):
        if float(row["above_in"]) < D <= float(row["up_to_in"]):
            return row
    return None


def sized_row(words: Words, kind: str, column: str) -> TableRow | None:
    """Return the row of a designation or of a diameter that is a nominal one; None for others.

    KeyError where a designation is not in the table.
    """
    if words.designation is not None:
        row = named_row(kind, f"{words.designation} {kind}")
        if row is None:
            raise unknown_fastener(words)
        return row
    if not words.diameter:
        return None
    inches = words.diameter / units.factor("in")
    near = min(_tables()[kind].values(), key=lambda row: abs(float(row[column]) - inches))
    return near if abs(float(near[column]) - inches) <= _MOST_APART else None


def named_row(kind: str, name: str) -> TableRow | None:
    """Return the row of a trade name of a kind; None where there is none."""
    return _tables()[kind].get(name)


@cache
def _tables() -> Mapping[str, Mapping[str, TableRow]]:
    """Return the rows of every size by its trade name, by kind."""

    def rows(table: str, name: str) -> dict[str, TableRow]:
        return {name.format(**row): row for row in references.table(f"wood/{table}").rows}

    return {
        "nail": {
            **rows("nails_geometry", "{size} {type} nail"),
            **rows("ring_shank_nails_geometry", "{size} ring-shank nail"),
            **rows("collated_nails_geometry", "{size} nail"),
        },
        "wood screw": rows("wood_screws_geometry", "{gauge} wood screw"),
        "deck screw": rows("deck_screws_geometry", "{size} deck screw"),
        "lag screw": rows("lag_screws_geometry", "{size} lag screw"),
        "bolt": rows("bolts_geometry", "{size} bolt"),
        "carriage bolt": rows("carriage_bolts_geometry", "{size} carriage bolt"),
        "staple": rows("staples_geometry", "{gauge} staple"),
    }


def inches(row: TableRow, column: str) -> float | None:
    """Return a field in m; None where the row has none."""
    printed = row.get(column)
    return float(printed) * units.factor("in") if printed else None


def unknown_fastener(words: Words) -> KeyError:
    """Return what to raise for words that name no fastener, with the nearest that there are."""
    from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

    near: list[str] = []
    if "sort" not in words.facts and words.facts.get("shank") != "ring":
        of_kind = _tables().get(words.facts.get("kind", ""), {})
        near = [name for name in of_kind if name.startswith(f"{words.designation} ")][:_SUGGESTED]
    if not near:
        near = get_close_matches(words.text.casefold(), fastener_names(), n=3, cutoff=0.4)
    hint = f"; the nearest are {', '.join(map(repr, near))}" if near else ""
    return KeyError(f"{words.text!r} is not a fastener known here{hint}")
