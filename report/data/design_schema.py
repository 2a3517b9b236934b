"""The design file as a JSON Schema, made from the specs by which the reader itself reads it.

A design file is TOML; what the schema describes is the same data, days as text. The reader takes
more than it: other capitals, builders' words of one meaning, and it knows which keys go together.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from ...checks.inputs import SPECS
from ...design.builds.shape_keys import SHAPES
from ...design.file.document import DESIGN_KEYS
from ...design.file.part_table import PART_KEYS
from ...design.reader.kind_words import PLAIN, belongs
from ...design.reader.kinds import LONGEST_TEXT
from ...design.reader.schema import Key

_Schema = dict[str, Any]

SCHEMA_DRAFT = "https://json-schema.org/draft/2020-12/schema"
_TEXT: _Schema = {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT}
_QUANTITY: _Schema = {"type": "string", "minLength": 2, "maxLength": 60}
_POINT: _Schema = {"type": "array", "items": _QUANTITY, "minItems": 2, "maxItems": 2}
_OUTLINE: _Schema = {"type": "array", "items": _POINT}
_PLAIN: Mapping[str, _Schema] = {
    "text": _TEXT,
    "flag": {"type": "boolean"},
    "offset": {"type": "array", "items": _QUANTITY, "minItems": 3, "maxItems": 3},
    "outline": _OUTLINE,
    "outlines": {"type": "array", "items": _OUTLINE},
    "map": {"type": "object", "additionalProperties": _QUANTITY},
    "years": {"anyOf": [{"type": "number", "exclusiveMinimum": 0}, _QUANTITY]},
    "date": {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
    "measured": _QUANTITY,
}
_NUMBERS = {"count": "integer", "number": "number", "ratio": "number"}


def design_schema() -> _Schema:
    """Return the schema of a design file, every table and every key that it may hold."""
    tables: dict[str, _Schema] = {"design": _table(DESIGN_KEYS), "part": _several(_part())}
    needed = ["design", "part"]
    for spec in SPECS:
        one = _table(spec.keys)
        tables[spec.name] = _several(one) if spec.many else one
        needed += [spec.name] if spec.required else []
    return {
        "$schema": SCHEMA_DRAFT,
        "title": "Yardfast design file, format 1",
        "type": "object",
        "properties": tables,
        "required": needed,
        "additionalProperties": False,
    }


def _several(one: _Schema) -> _Schema:
    return {"type": "array", "items": one}


def _part() -> _Schema:
    """Return the schema of a part: one of the shapes, each with its own keys beside all parts'."""
    shapes = [
        _table((*(key for key in PART_KEYS if key.name != "shape"), *spec.keys), shape)
        for shape, spec in SHAPES.items()
    ]
    return {"oneOf": shapes}


def _table(keys: Iterable[Key], shape: str = "") -> _Schema:
    own = list(keys)
    properties = {key.name: _value(key) for key in own}
    needed = [key.name for key in own if key.required]
    if shape:
        properties["shape"] = {"const": shape}
        needed.append("shape")
    return {
        "type": "object",
        "properties": properties,
        "required": needed,
        "additionalProperties": False,
    }


def _value(key: Key) -> _Schema:
    """Return the schema of one key by its kind, with what belongs there in words."""
    names = list(key.names())
    if key.kind == "choice":
        found: _Schema = {"enum": names}
    elif key.kind == "choices":
        found = {"type": "array", "items": {"enum": names}}
    elif key.kind == "numeral":
        found = {
            "anyOf": [{"enum": names}, {"type": "integer", "minimum": 1, "maximum": len(names)}]
        }
    elif key.kind in _NUMBERS:
        found = _number(key)
    elif key.kind in PLAIN:
        found = dict(_PLAIN[key.kind])
    else:
        found = dict(_QUANTITY)
    bounds = key.limits()
    said = belongs(key, metric=True)[0] + (f"; {bounds.words}" if bounds else "")
    return {**found, "description": said}


def _number(key: Key) -> _Schema:
    bounds = key.limits()
    found: _Schema = {"type": _NUMBERS[key.kind]}
    if bounds is not None:
        found["exclusiveMinimum" if bounds.above else "minimum"] = bounds.least
        found["maximum"] = bounds.most
        if bounds.also is not None:
            return {"anyOf": [{"const": bounds.also}, found]}
    return found
