"""Fasteners as a table and as JSON: sizes, and what each holds in a wood, with sources."""

from collections.abc import Sequence
from typing import Any

from ... import materials, references
from ...checks.timber.nds import adjustments
from ...checks.timber.nds.crown import crown_factor
from ...checks.timber.nds.fastener_values import FastenerValue
from ...checks.timber.nds.withdrawal import NDS_REFERENCE
from ...references import TableRow
from ...references.table import weakest_confidence
from ..wording.amounts import INCH, POUND_FORCE, Amounts
from ..wording.lines import Line, wrapped
from ..wording.remark import joined

_ROW = "{:<23}{:>6}{:>6}{:>6}{:>6}{:>5}{:>5}{:>7}{:>6}{:>6}{:>4}"
_HOLDS = ("draws", "head", "side")
_NAMED = 6
_PER_INCH = POUND_FORCE / INCH


def fastener_lines(
    found: Sequence[FastenerValue], wood: str | None, gravity: float | None, side: float
) -> list[Line]:
    """Return fasteners with their sizes, and what each holds in ``wood`` where one is named.

    ``side`` in m is the thickness of the board that is fastened. What holds for all stands first,
    the sources last, by the number at the end of each row.
    """
    shown = _about(wood, gravity, side)
    units = ("",) * 6
    if wood is not None:
        shown.append(Line(_ROW.format(*[""] * 4, *_HOLDS, *_HOLDS, "").rstrip()))
        units = ("lb/in", "lb", "lb", "N/mm", "N", "N")
    shown.append(Line(_ROW.format("in inches", "shank", "long", "head", *units, "by")))
    told = list(dict.fromkeys(_told(one) for one in found))
    for one in found:
        shown.append(Line(_row(one, told.index(_told(one)) + 1), "title"))
    if wood is not None:
        shown += _missing(found)
        shown += _by_what_law(found)
        shown += _adjusted(found)
    for number, source in enumerate(told, start=1):
        shown += wrapped(source, f"{number:>2}  ", "    ")
    return shown


def fastener_objects(
    found: Sequence[FastenerValue], wood: str | None, gravity: float | None, side: float
) -> list[dict[str, Any]]:
    """Return each fastener as a JSON object, SI units; None where a value is not known."""
    return [_object(one, wood, gravity, side) for one in found]


def _about(wood: str | None, gravity: float | None, side: float) -> list[Line]:
    if wood is None:
        return wrapped(
            "Sizes only: what each holds depends on the wood. Try  yardfast fasteners --wood "
            "'western redcedar'",
            rest="  ",
        )
    row = _gravity_row(wood)
    pulled = materials.find_material(wood).withdrawal_gravity
    lower = f"; what pulls out by {pulled:.2f}" if pulled not in (None, gravity) else ""
    board = f"{Amounts(False).own_length(side)} ({Amounts(True).length(side)})"
    into = (
        "the face of the sheet" if materials.find_material(wood).kind == "panel" else "side grain"
    )
    return [
        *wrapped(
            f"In {wood}, specific gravity {gravity:.2f} ({row['source']}; {row['confidence']}"
            f"{lower}): reference values of NDS 2018, {into}, dry, ten years of load, before "
            "any factor.",
            rest="  ",
        ),
        *wrapped(
            "draws: straight pull for each inch of nail, thread or pair of legs in the wood. head: "
            f"pulls through a {board} board of the same. side: sideways, between that board and a "
            "thick piece of the same, one shear plane, across the grain.",
            rest="  ",
        ),
    ]


def _gravity_row(wood: str) -> TableRow:
    name = references.table("materials").one("name", wood)["gravity_row"]
    return references.table("wood/nds_assigned_specific_gravity").one("species_combination", name)


def _row(one: FastenerValue, number: int) -> str:
    of = one.fastener
    sizes = (
        _decimal(of.diameter, INCH, 3),
        _decimal(of.length, INCH, 3).rstrip("0").rstrip("."),
        _decimal(of.head_diameter, INCH, 3),
    )
    held = (one.withdrawal, one.head, one.lateral)
    values = ("",) * 6
    if any(held) or one.lateral_missing:
        imperial = zip(held, (_PER_INCH, POUND_FORCE, POUND_FORCE), (0, 0, 0), strict=True)
        metric = zip(held, (1000.0, 1.0, 1.0), (2, 0, 0), strict=True)
        values = tuple(_decimal(*each) for each in (*imperial, *metric))
    return _ROW.format(of.name, *sizes, *values, number)


def _decimal(value: float | None, unit: float, places: int) -> str:
    return "-" if value is None else f"{value / unit:.{places}f}"


def _told(one: FastenerValue) -> str:
    """Return source, confidence and notes of a fastener: what rows have in common."""
    of = one.fastener
    notes = "".join(f"; {note}" for note in of.notes)
    return f"{of.source} ({of.confidence}){notes}."


def _missing(found: Sequence[FastenerValue]) -> list[Line]:
    """Say why some have no value sideways."""
    lines: list[Line] = []
    for reason in dict.fromkeys(one.lateral_missing for one in found if one.lateral_missing):
        missing = [one.fastener for one in found if one.lateral_missing == reason]
        names = [one.name for one in missing]
        if len(names) > _NAMED:
            names = list(dict.fromkeys(f"{one.kind}s" for one in missing))
        of = "" if len(found) == 1 else f" of {joined(names)}"
        lines += wrapped(f"No side value{of}: {reason}.", rest="  ")
    return lines


def _by_what_law(found: Sequence[FastenerValue]) -> list[Line]:
    """Return the equations behind the values, and on whose word they are."""
    kinds = dict.fromkeys(
        one.fastener.withdrawal_kind for one in found if one.withdrawal is not None
    )
    rows = [
        references.table("wood/withdrawal_formulas").one("law", f"{NDS_REFERENCE}, {kind}")
        for kind in kinds
    ]
    said = [f"{row['kind']} by {row['source']} ({row['confidence']})" for row in rows]
    if any(one.head is not None for one in found):
        known = references.table("wood/pull_through").one("rule", "coefficient")["confidence"]
        said.append(f"head by NDS 2018 Eq. 12.2-6 ({known})")
    if any(one.lateral is not None for one in found):
        modes = ", ".join(sorted({str(one.mode) for one in found if one.mode}))
        rows = references.table("wood/nds_equations").rows
        known = weakest_confidence(row["confidence"] for row in rows if "12.3" in row["source"])
        said.append(f"side by NDS 2018 12.3.1 ({known}), least in yield mode {modes}")
    return wrapped(f"Values: {'; '.join(said)}.", rest="  ") if said else []


def _adjusted(found: Sequence[FastenerValue]) -> list[Line]:
    """Say what turns a reference value into one for wind, weather and end grain."""
    if not any(one.withdrawal or one.lateral for one in found):
        return []
    gust = adjustments.load_duration("wind or earthquake")
    said = [f"Wind: times {gust:g}."]
    if any(one.lateral is not None and one.fastener.kind == "staple" for one in found):
        less = float(crown_factor(0.0))
        said.append(
            f"Staples count as two nails of their leg's diameter, the crown as a round head of its "
            f"area (judgement); with the crown along the grain: side times {less:g}."
        )
    pulled = {one.fastener.withdrawal_kind for one in found if one.withdrawal is not None}
    if pulled & {"smooth nail", "stainless nail"}:
        kept = adjustments.wet_service("withdrawal", "smooth nail", made_wet=True, used_wet=False)
        said.append(f"Smooth nails in wood that dries out or gets wet later: draws times {kept:g}.")
    if any(one.lateral is not None for one in found):
        wet = adjustments.wet_service("lateral", "under 1/4 in", made_wet=True, used_wet=True)
        end = adjustments.end_grain("lateral", "any")
        said.append(f"Wet wood: side times {wet:g}. End grain: side times {end:g}.")
    if pulled - {"lag screw"}:
        said.append("In end grain nails, staples and wood screws draw nothing that counts.")
    return wrapped(" ".join(said), rest="  ")


def _object(
    one: FastenerValue, wood: str | None, gravity: float | None, side: float
) -> dict[str, Any]:
    of = one.fastener
    return {
        "name": of.name,
        "kind": of.kind,
        "shank": of.shank,
        "diameter_m": of.diameter,
        "length_m": of.length,
        "head_diameter_m": of.head_diameter,
        "crown_m": of.crown,
        "legs": of.legs,
        "root_diameter_m": of.root_diameter,
        "thread_length_m": of.thread_length,
        "tip_length_m": of.tip_length,
        "bending_yield_Pa": of.bending_yield,
        "wood": wood,
        "specific_gravity": gravity,
        "withdrawal_N_per_m": one.withdrawal,
        "head_pull_through_N": one.head,
        "lateral_N": one.lateral,
        "lateral_mode": one.mode,
        "side_thickness_m": None if wood is None else side,
        "penetration_m": one.penetration,
        "no_lateral_because": one.lateral_missing or None,
        "source": of.source,
        "confidence": of.confidence,
        "notes": list(of.notes),
    }
