"""The design file: text in, a Design out, or everything that is wrong with it at once."""

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any, cast

from ..bounds import FILE_FORMAT, MOST_BYTES
from ..faults import DesignError, Fault
from ..model import Design
from ..reader.file_text import text_in, unreadable
from ..reader.kind_words import typed
from ..reader.mending import settled
from ..reader.row import Row, check_names
from ..reader.scan import Scan, Spot, scan, seen
from ..reader.schema import Key, Reading, TableSpec
from ..reader.typed_text import shown
from .parsed import add_findings, in_order, parsed
from .part_table import every_key, part_label, read_parts

DESIGN_KEYS = (
    Key("name", "text", required=True, hint="name = 'Harbour light'"),
    Key(
        "units",
        "choice",
        required=True,
        choices=("imperial", "metric"),
        hint="units = 'imperial' or 'metric': how results are shown",
        words={
            **dict.fromkeys(
                (
                    "us",
                    "usa",
                    "inch",
                    "inches",
                    "in",
                    "feet",
                    "ft",
                    "english",
                    "american",
                    "us customary",
                    "customary",
                    "imperial units",
                ),
                "'imperial'",
            ),
            **dict.fromkeys(
                ("si", "mm", "cm", "m", "meters", "metres", "millimeters", "millimetres"),
                "'metric'",
            ),
        },
    ),
    Key("turn", "angle"),
    Key("weighed", "mass"),
    Key("laid_down", "flag"),
    Key("maker", "text"),
    Key("contact", "text"),
    Key("serial", "text"),
    Key("date", "date"),
    Key("revision", "text"),
    Key("format", "count", bounds=FILE_FORMAT),
)

_DESIGN_WORDS = {
    "unit": "'units'",
    "title": "'name'",
    "author": "'maker'",
    "weight": "'weighed' is a scale's reading of the whole piece",
    "mass": "'weighed' is a scale's reading of the whole piece",
    "version": "'revision' of the piece, or 'format' of the file",
    **dict.fromkeys(("serial_number", "number", "serial number"), "'serial'"),
    **dict.fromkeys(("phone", "email", "e-mail", "website", "web", "address"), "'contact'"),
    **dict.fromkeys(("rev", "edition"), "'revision'"),
    **dict.fromkeys(("made", "built", "day"), "'date'"),
    "wind": "it belongs under [site]",
}


def read_design(path: str | Path, specs: Sequence[TableSpec[Any]] = ()) -> Design:
    """Return the design in a file; ``specs`` are the tables that other rooms own.

    Raises DesignError with every fault, sorted by line.
    """
    return read_design_text(text_in(path, "a design file"), str(path), specs)


def read_design_text(text: str, file: str = "", specs: Sequence[TableSpec[Any]] = ()) -> Design:
    """Return the design in a text; ``file`` is its name in faults. Raises as ``read_design``."""
    if len(text) > MOST_BYTES:
        raise unreadable(file, "more than 1 MB", "a design file of at most 1 MB")
    try:
        return _read(text, file, specs)
    except DesignError as error:
        wrong = error.faults

    def again(changed: str) -> Sequence[Fault]:
        try:
            _read(changed, file, specs)
        except DesignError as error:
            return error.faults
        return ()

    raise DesignError(in_order(settled(seen(text), wrong, again)))


@lru_cache(maxsize=4)
def scanned_design(text: str, specs: tuple[TableSpec[Any], ...]) -> Scan:
    """Return where each key and its value stand in a text, whatever is wrong with it.

    Of the last few texts it is kept: whoever shows a design's text asks for it as its reader does.
    """
    return scan(text, _many(specs), _names_of_keys(specs))


def _many(specs: Sequence[TableSpec[Any]]) -> Mapping[str, bool]:
    """Return of each table whether it may stand repeatedly."""
    return {"design": False, "part": True} | {spec.name: spec.many for spec in specs}


def _read(text: str, file: str, specs: Sequence[TableSpec[Any]]) -> Design:
    """Return the design in a text; what to type instead of what is wrong was not tried yet."""
    look = scanned_design(text, tuple(specs))
    reading = Reading(file, look)
    data = parsed(reading)
    add_findings(reading, data or {})
    if data is None:
        raise DesignError(in_order(reading.faults))
    row = _design_row(reading, data)
    part_tables = _tables(reading, "part", data, many=True)
    names = [table.get("name") for table in part_tables]
    reading.part_names = tuple(name.strip() for name in names if isinstance(name, str))
    parts = read_parts(reading, part_tables)
    if not parts and not reading.faults:
        reading.fault(
            None, None, "no [[part]]", "at least one part", "[[part]] with name, shape, material"
        )
    tables = _other_tables(reading, data, specs)
    _check_tables(reading, data, _many(specs))
    if reading.faults or row is None:
        raise DesignError(in_order(reading.faults))
    return Design(
        name=row.text("name") or "",
        units=row.text("units") or "",
        parts=parts,
        turn=row.quantity("turn") or 0.0,
        weighed=row.quantity("weighed"),
        laid_down=bool(row.flag("laid_down")),
        maker=row.text("maker"),
        contact=row.text("contact"),
        serial=row.text("serial"),
        date=row.text("date"),
        revision=row.text("revision"),
        file=file,
        text=text,
        tables=tables,
        notes=tuple(dict.fromkeys(reading.notes)),
        lines=_lines(reading, data),
    )


def _names_of_keys(specs: Sequence[TableSpec[Any]]) -> Mapping[str, frozenset[str]]:
    """Return the names of the keys that each table may hold."""
    others = {spec.name: frozenset(key.name for key in spec.keys) for spec in specs}
    return {"design": frozenset(key.name for key in DESIGN_KEYS), "part": every_key()} | others


def _lines(reading: Reading, data: Mapping[str, object]) -> dict[tuple[str, str | None], int]:
    """Return the line of each named row and of its keys, for what is told of them later.

    Of tables that stand once, which have no names, under their headings: ``[site]``.
    """
    found: dict[tuple[str, str | None], int] = {}
    for spot, line in reading.scan.lines.items():
        value = data.get(spot.table)
        if isinstance(value, dict):
            found[f"[{spot.table}]", spot.key] = line
            continue
        rows = cast("list[object]", value) if isinstance(value, list) else [value]
        row = rows[spot.number] if 0 <= spot.number < len(rows) else None
        name = cast("dict[str, object]", row).get("name") if isinstance(row, dict) else None
        if isinstance(name, str):
            found[name.strip(), spot.key] = line
    return found


def _design_row(reading: Reading, data: Mapping[str, object]) -> Row | None:
    """Return the ``[design]`` table as read, or None with a fault where there is none."""
    tables = _tables(reading, "design", data, many=False)
    if not tables:
        if "design" not in data:
            hint = "with name = '…' and units = 'imperial' or 'metric'"
            reading.fault(None, None, "no [design]", "the table [design]", hint)
        return None
    reading.metric = tables[0].get("units", _typed_units(reading)) == "metric"
    row = Row(reading, Spot("design", 0), tables[0], DESIGN_KEYS)
    row.check_keys(_DESIGN_WORDS, frozenset())
    return row


def _typed_units(reading: Reading) -> str:
    """Return what units are meant where the line that says so cannot be read."""
    found = re.search(r"^\s*units\s*[:=]?\s*['\"]?(metric)", reading.scan.seen, re.M | re.I)
    return found[1].casefold() if found else ""


def _other_tables(
    reading: Reading, data: Mapping[str, object], specs: Sequence[TableSpec[Any]]
) -> dict[type, object]:
    """Return by type what each room makes of the tables that it owns."""
    found: dict[type, object] = {}
    for spec in specs:
        rows = _tables(reading, spec.name, data, spec.many)
        if spec.required and spec.name not in data:
            heading = f"[[{spec.name}]]" if spec.many else f"[{spec.name}]"
            keys = ", ".join(key.name for key in spec.keys if key.required)
            reading.fault(None, None, f"no {heading}", f"the table {heading}", f"with {keys}")
        built: list[Any] = []
        read: list[Row] = []
        for index, each in enumerate(rows):
            part = part_label(each, index, spec.name) if spec.many else None
            row = Row(reading, Spot(spec.name, index), each, spec.keys, part, spec.words)
            row.check_keys(spec.words, spec.later)
            read.append(row)
            item = spec.build(row)
            if item is not None and not row.wrong:
                built.append(item)
        if spec.many:
            check_names(read, spec.name)
            found[spec.gives] = tuple(built)
        elif built:
            found[spec.gives] = built[0]
    return found


def _check_tables(reading: Reading, data: Mapping[str, object], many: Mapping[str, bool]) -> None:
    """Record keys that stand outside every table."""
    for name in data:
        if name not in many:
            expected = "a heading such as [design] above the first key"
            reading.fault(Spot("", 0, name), None, typed(name), expected)


def _tables(
    reading: Reading, name: str, data: Mapping[str, object], many: bool
) -> Sequence[Mapping[str, object]]:
    """Return the tables of one name, in the order of the file."""
    value = data.get(name)
    if value is None:
        return ()
    items = cast("list[object]", value) if isinstance(value, list) else [value]
    if not all(isinstance(item, dict) for item in items) or (len(items) > 1 and not many):
        right = f"[[{name}]]" if many else f"[{name}]"
        reading.fault(Spot("", 0, name), None, shown(name), f"a table under the heading {right}")
        return ()
    return cast("list[dict[str, object]]", items)
