"""The fields of the form: every value of a design's text that stands on one line, by its place."""

import tomllib
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from typing import Any, cast

from .. import units
from ..checks.inputs import SPECS, scanned
from ..design.builds.shape_keys import SHAPES
from ..design.file.document import DESIGN_KEYS
from ..design.file.part_table import PART_KEYS
from ..design.reader.kind_words import belongs
from ..design.reader.scan import Scan, Spot
from ..design.reader.schema import Key
from ..design.reader.typed_text import shown
from ..report.wording.field_words import field_label, table_label
from ..units.frozen import ByValue

IN_THE_TEXT = frozenset({"outline", "outlines", "map", "choices"})
"""Kinds of values that are changed in the text alone."""

RULED = frozenset({"length", "mass", "speed"})
"""Kinds of values that have a rule to slide along."""

_KEPT = 4
"""Fields of so many texts are kept: of one as it is, before, and saved."""

_GROUPS = 256
"""And so many tables: of a text that is changed nearly all stay as they were."""


class Field(ByValue, frozen=True):
    """One value: its place, what it is called, of which kind, and its text as typed.

    ``value`` holds one text, three of a place. ``choices`` are the names that it takes, ``any`` is
    whether other text does as well; ``says`` is what belongs there. ``size`` is its value in the
    design's own unit (in or mm, lb or kg, mph or km/h), None where it has none.
    """

    id: str
    table: str
    number: int
    key: str
    label: str
    kind: str
    value: tuple[str, ...]
    choices: tuple[str, ...]
    says: str
    size: float | None


class Group(ByValue, frozen=True):
    """The fields of one table of the file, and what it is called."""

    id: str
    title: str
    fields: tuple[Field, ...]


def field_id(spot: Spot) -> str:
    """Return the name of a place in the form."""
    return f"{spot.table}.{spot.number}.{spot.key or ''}"


@lru_cache(maxsize=_KEPT)
def fields_of(text: str) -> tuple[Group, ...]:
    """Return the fields of a text, table by table in its order."""
    look = scanned(text)
    tables: dict[tuple[str, int], list[Spot]] = {}
    for spot in look.values:
        if spot.key is not None and spot.table and spot.number >= 0:
            tables.setdefault((spot.table, spot.number), []).append(spot)
    metric = _metric(look)
    return tuple(
        _group(table, tuple((spot, _raw(look, spot)) for spot in spots), metric)
        for table, spots in tables.items()
    )


@lru_cache(maxsize=_GROUPS)
def _group(table: tuple[str, int], typed: tuple[tuple[Spot, str], ...], metric: bool) -> Group:
    """Return the fields of a table by the text of each value."""
    spots = [spot for spot, _ in typed]
    values = {spot.key or "": _parsed(text) for spot, text in typed}
    keys = keys_of(table[0], str(values.get("shape", "")))
    name = values.get("name", values.get("part"))
    title = table_label(table[0], table[1], name if isinstance(name, str) else "")
    found = [
        _field(spot, keys.get(spot.key or ""), values[spot.key or ""], metric) for spot in spots
    ]
    return Group(f"{table[0]}.{table[1]}", title, tuple(each for each in found if each is not None))


@cache
def keys_of(table: str, shape: str = "") -> Mapping[str, Key]:
    """Return the keys that a table takes; a part of a shape takes those of its shape too."""
    if table == "design":
        keys: Sequence[Key] = DESIGN_KEYS
    elif table == "part":
        spec = SHAPES.get(" ".join(shape.casefold().split()))
        keys = (*PART_KEYS, *(spec.keys if spec else ()))
    else:
        keys = next((spec.keys for spec in SPECS if spec.name == table), ())
    return {key.name: key for key in keys}


def _metric(look: Scan) -> bool:
    spot = Spot("design", 0, "units")
    return spot in look.values and str(_value(look, spot)).strip().casefold() == "metric"


def _value(look: Scan, spot: Spot) -> Any:
    """Return a value as the file has it, None where it is none."""
    return _parsed(_raw(look, spot))


def _raw(look: Scan, spot: Spot) -> str:
    begin, end = look.values[spot]
    return look.seen[begin:end]


def _parsed(value: str) -> Any:
    """Return what a value's text holds."""
    try:
        return tomllib.loads(f"v = {value}").get("v")
    except (tomllib.TOMLDecodeError, RecursionError):
        return None


def _field(spot: Spot, key: Key | None, value: Any, metric: bool) -> Field | None:
    """Return the field of a value; None of one that is changed in the text alone."""
    if key is None or key.kind in IN_THE_TEXT or spot.key == "format":
        return None
    texts = _texts(value)
    if texts is None or (len(texts) == 3) != (key.kind == "offset"):
        return None
    return Field(
        id=field_id(spot),
        table=spot.table,
        number=spot.number,
        key=key.name,
        label=field_label(key.name, spot.table),
        kind=key.kind,
        value=texts,
        choices=tuple(key.names()),
        says=belongs(key, metric)[0],
        size=_size(key.kind, texts, metric),
    )


def _texts(value: Any) -> tuple[str, ...] | None:
    if isinstance(value, list):
        items = cast("list[object]", value)
        fit = len(items) == 3 and all(isinstance(each, str) for each in items)
        return tuple(str(each) for each in items) if fit else None
    if value is None or isinstance(value, dict):
        return None
    return (str(value).lower() if isinstance(value, bool) else shown(str(value)),)


def _size(kind: str, texts: Sequence[str], metric: bool) -> float | None:
    """Return a size in the unit of the rule that it slides along; None where it has none."""
    if kind not in RULED:
        return None
    try:
        value = units.to_si(texts[0], kind)
    except units.UnitError:
        return None
    return round(value / units.factor(RULE_UNITS[kind][metric]), 6)


RULE_UNITS: Mapping[str, tuple[str, str]] = {
    "length": ("in", "mm"),
    "mass": ("lb", "kg"),
    "speed": ("mph", "km/h"),
}
"""The unit of a rule, imperial and metric."""
