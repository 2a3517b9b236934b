"""What a fastener's trade name means: its sizes and steel, from the published tables."""

from collections.abc import Sequence
from typing import Any

from .. import references, units
from ..references import TableRow
from ..references.table import weakest_confidence
from .fastener import Fastener
from .fastener_sizes import (
    MILLIMETRE,
    fastener_names,
    inches,
    metric_nail,
    named_row,
    sized_row,
    steel_row,
    unknown_fastener,
)
from .fastener_words import Words, read_words

_GIVEN = "diameter and length as given"
_INCH_POUND = units.INCH * units.POUND_FORCE

_ROUNDED = 0.0001
_LONG_BOLT = 6.0
"""Inches above which bolts have the longer thread, by the names of the tables' columns."""


def find_fastener(text: str) -> Fastener:
    """Return the fastener that builders' words name, such as ``'#8 wood screw 2 in'``.

    Nails by pennyweight and sort (``'16d sinker'``), screws by number and staples by gauge, lag
    screws and bolts by fraction (``'3/8 lag screw 4 in'``), nails and screws also by diameter and
    length (``'nail 0.131 in x 2 1/2 in'``), metric ones as they are sold (``'M10 bolt 150 mm'``,
    ``'5 x 60 mm wood screw'``). KeyError, with the nearest name, for one that is not
    known; ValueError for a length that cannot be read or that it is not made in.
    """
    words = read_words(text)
    kind = words.facts["kind"]
    if "head" in words.facts and kind != "wood screw":
        raise KeyError(f"{text!r}: heads are told apart of wood screws only")
    if "hardened" in words.facts and kind != "nail":
        raise KeyError(f"{text!r}: hardened steel is published of nails only")
    return _BY_KIND[kind](words)


def all_fasteners() -> list[Fastener]:
    """Return every fastener of ``fastener_names()``, to be shown as a table."""
    return [find_fastener(name) for name in fastener_names()]


def _nail(words: Words) -> Fastener:
    ring = words.facts.get("shank") == "ring"
    sort = words.facts.get("sort", "")
    if words.designation is None:
        row = metric_nail(words.diameter)
        head = None if row is None else float(row["head_mm"]) * MILLIMETRE
        also = () if row is None else (row,)
        return _built(words, "nail", None, words.diameter, also=also, head_diameter=head)
    if ring and sort:
        raise unknown_fastener(words)
    name = f"{words.designation} {'ring-shank' if ring else sort} nail".replace("  ", " ")
    row = named_row("nail", name) or named_row("nail", name.removesuffix(" nail"))
    if row is None:
        raise unknown_fastener(words)
    if "shortest_in" in row:
        longest = inches(row, "longest_in") or 0.0
        shortest = inches(row, "shortest_in") or 0.0
        if words.length is not None and not shortest - 1e-6 <= words.length <= longest + 1e-6:
            made = f"{row['shortest_in']} to {row['longest_in']} in"
            raise ValueError(f"{words.text!r}: it is made {made} long")
        length = words.length
    else:
        length = inches(row, "length_in") or 0.0
        if words.length is not None and abs(words.length - length) > 1e-4:
            raise ValueError(f"{words.text!r}: it is {row['length_in']} in long")
    return _built(
        words,
        "nail",
        row,
        inches(row, "shank_dia_in"),
        length=length,
        thread_length=inches(row, "thread_length_in"),
        head_diameter=inches(row, "head_dia_in"),
    )


def _wood_screw(words: Words) -> Fastener:
    row = sized_row(words, "wood screw", "nominal_dia_in")
    if row is None:
        return _built(words, "wood screw", None, words.diameter)
    head = words.facts.get("head", "flat")
    thread = "thread: two thirds of the length, NDS 2018 Appendix L3"
    assumed = () if "head" in words.facts else ("head: flat, as none was named",)
    return _built(
        words,
        "wood screw",
        row,
        inches(row, "nominal_dia_in"),
        thread_length=None if words.length is None else words.length * 2.0 / 3.0,
        root_diameter=inches(row, "root_dia_in"),
        head_diameter=inches(row, "washer_head_in" if head == "washer" else f"{head}_head_min_in"),
        countersink=inches(row, "flat_head_height_in") if head == "flat" else None,
        notes=(thread, *assumed),
    )


def _deck_screw(words: Words) -> Fastener:
    row = sized_row(words, "deck screw", "thread_outer_in")
    note = "not standardised: head, root, thread and steel are the maker's"
    diameter = words.diameter if row is None else inches(row, "thread_outer_in")
    return _built(words, "deck screw", row, diameter, steel=None, notes=(note,))


def _lag_screw(words: Words) -> Fastener:
    row = sized_row(words, "lag screw", "dia_in")
    if row is None:
        return _built(words, "lag screw", None, words.diameter)
    inch = units.factor("in")
    L = words.length
    return _built(
        words,
        "lag screw",
        row,
        inches(row, "dia_in"),
        thread_length=None if L is None else min(L / 2.0 + 0.5 * inch, 6.0 * inch, L),
        root_diameter=inches(row, "root_dia_in"),
        tip_length=inches(row, "tip_length_in"),
        head_diameter=inches(row, "head_across_flats_in"),
        notes=("thread: half the length and 1/2 in, at most 6 in, NDS 2018 Appendix L2",),
    )


def _bolt(words: Words) -> Fastener:
    carriage = words.facts.get("sort") == "carriage"
    row = sized_row(words, "carriage bolt" if carriage else "bolt", "dia_in")
    if row is None:
        raise unknown_fastener(words)
    long = words.length is not None and words.length > _LONG_BOLT * units.factor("in") + 1.0e-6
    return _built(
        words,
        "bolt",
        row,
        inches(row, "dia_in"),
        "bolt",
        thread_length=inches(row, "thread_length_over_6_in" if long else "thread_length_in"),
        root_diameter=inches(row, "root_dia_in"),
        tip_length=0.0,
        head_diameter=inches(row, "head_dia_min_in"),
    )


def _staple(words: Words) -> Fastener:
    row = named_row("staple", f"{words.designation} staple")
    if row is None:
        raise unknown_fastener(words)
    diameter, least, most = (
        inches(row, column) or 0.0 for column in ("leg_dia_in", "crown_least_in", "crown_most_in")
    )
    crown = least if words.crown is None else words.crown
    if not least - _ROUNDED <= crown <= most + _ROUNDED:
        made = f"{row['crown_least_in']}"
        if most > least:
            made += f" to {row['crown_most_in']}"
        raise ValueError(f"{words.text!r}: its crown is made {made} in wide")
    steel = references.table("wood/staple_bending_moments").where("gauge", row["gauge"])
    moment = float(steel[0]["moment_inch_pound"]) * _INCH_POUND if steel else None
    legs = references.table("wood/staple_rules").one("rule", "legs as nails")
    return _built(
        words,
        "staple",
        row,
        diameter,
        steel=None,
        also=(*steel, legs),
        crown=crown,
        bending_yield=None if moment is None else bending_yield(moment, diameter),
        legs=int(legs["value"]),
    )


def bending_yield(moment: float, diameter: float) -> float:
    """Return the bending yield strength in Pa of round wire from its yield moment: M/(D^3/6).

    ``moment`` M in N m and ``diameter`` D in m, above 0. Source: plastic section modulus of a
    circle, as ASTM F1575 takes it for nails.
    """
    return moment / (diameter**3 / 6.0)


_BY_KIND = {
    "nail": _nail,
    "wood screw": _wood_screw,
    "deck screw": _deck_screw,
    "lag screw": _lag_screw,
    "bolt": _bolt,
    "staple": _staple,
}


def _built(
    words: Words,
    kind: str,
    row: TableRow | None,
    diameter: float | None,
    steel: str | None = "nail or screw",
    also: Sequence[TableRow] = (),
    **sizes: Any,
) -> Fastener:
    """Put together what was said, what the size's row holds, and the steel by diameter.

    ``also`` are other rows that it rests on.
    """
    if diameter is None:
        raise unknown_fastener(words)
    hardened = "hardened" in words.facts
    strength = steel and steel_row("hardened nail" if hardened else steel, diameter)
    rows = [each for each in (row, strength, *also) if each]
    sources = [_GIVEN] * (row is None) + [each["source"] for each in rows]
    notes = [*sizes.pop("notes", ()), *(each.get("confidence_note", "") for each in rows)]
    stainless = "stainless" in words.facts
    bends = sizes.pop("bending_yield", None)
    if strength:
        bends = float(strength["Fyb_psi"]) * units.factor("psi")
    if stainless and bends is not None:
        notes.append("steel taken as that of carbon steel: judgement")
    known = [each["confidence"] for each in rows] + ["judgement"] * (stainless or row is None)
    return Fastener(
        name=words.text,
        kind=kind,
        diameter=diameter,
        length=sizes.pop("length", words.length),
        shank=words.facts.get("shank", "smooth") if kind == "nail" else "",
        stainless=stainless,
        hardened=hardened,
        bending_yield=bends,
        source="; ".join(dict.fromkeys(sources)),
        confidence=weakest_confidence(known),
        notes=tuple(note for note in notes if note),
        **sizes,
    )
