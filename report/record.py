"""Objects of JSON and their schemas in one: each key is named once, with its kind and its value."""

from collections.abc import Callable
from math import isfinite
from operator import attrgetter
from typing import Any, NamedTuple

Schema = dict[str, Any]
Given = str | Callable[[Any], Any]
"""Where a value is taken from: by its name in what is told, dotted, or by a function of it."""

A_TEXT: Schema = {"type": "string"}
NUMBER: Schema = {"type": "number"}
A_WHOLE_NUMBER: Schema = {"type": "integer"}
A_FLAG: Schema = {"type": "boolean"}
MAYBE_TEXT: Schema = {"type": ["string", "null"]}
MAYBE_NUMBER: Schema = {"type": ["number", "null"]}


def object_of(**properties: Schema) -> Schema:
    """Return the schema of an object that has each of these keys.

    >>> object_of(name=A_TEXT)["required"]
    ['name']
    """
    return {"type": "object", "properties": properties, "required": list(properties)}


def list_of(items: Schema) -> Schema:
    """Return the schema of a list of such items."""
    return {"type": "array", "items": items}


def or_null(schema: Schema) -> Schema:
    """Return the schema of what may be null instead."""
    return {"anyOf": [schema, {"type": "null"}]}


class Value(NamedTuple):
    """A value of an object: its schema, and how it is taken from what the object tells of."""

    schema: Schema
    of: Callable[[Any], Any]


class Record(dict[str, Value]):
    """The keys of an object in their order, each with its value.

    >>> size = Record(name=text("name"), width_m=maybe_number("width"))
    >>> size.object(type("Board", (), {"name": "shelf", "width": float("inf")}))
    {'name': 'shelf', 'width_m': None}
    """

    def object(self, one: Any) -> dict[str, Any]:
        """Return the object that tells of one."""
        return {key: value.of(one) for key, value in self.items()}

    @property
    def schema(self) -> Schema:
        """Return the schema of such an object."""
        return object_of(**{key: value.schema for key, value in self.items()})


def value(schema: Schema, given: Given, told: Callable[[Any], Any] | None = None) -> Value:
    """Return a value of a schema, as it stands or as it is ``told``."""
    of: Callable[[Any], Any] = attrgetter(given) if isinstance(given, str) else given
    if told is None:
        return Value(schema, of)

    def made(one: Any) -> Any:
        return told(of(one))

    return Value(schema, made)


def text(given: Given) -> Value:
    """Return a text."""
    return value(A_TEXT, given)


def maybe_text(given: Given) -> Value:
    """Return a text, null where it is empty."""
    return value(MAYBE_TEXT, given, lambda found: found or None)


def number(given: Given) -> Value:
    """Return a number."""
    return value(NUMBER, given)


def maybe_number(given: Given) -> Value:
    """Return a number, null where there is none or it is without bound."""
    return value(MAYBE_NUMBER, given, finite)


def finite(found: float | None) -> float | None:
    """Return a number, None where there is none or it is without bound."""
    return found if found is not None and isfinite(found) else None


def whole_number(given: Given) -> Value:
    """Return a whole number."""
    return value(A_WHOLE_NUMBER, given)


def flag(given: Given) -> Value:
    """Return true or false."""
    return value(A_FLAG, given)


def array(given: Given, items: Schema = NUMBER, **bounds: Any) -> Value:
    """Return an array of numbers as a list, of ``items``."""
    return value({**list_of(items), **bounds}, given, lambda found: found.tolist())


def texts(given: Given) -> Value:
    """Return a list of texts."""
    return value(list_of(A_TEXT), given, list)


def record(inner: Record, given: Given) -> Value:
    """Return an object within."""
    return value(inner.schema, given, inner.object)


def maybe_record(inner: Record, given: Given) -> Value:
    """Return an object within, null where there is none."""
    schema = or_null(inner.schema)
    return value(schema, given, lambda found: None if found is None else inner.object(found))


def records(inner: Record, given: Given) -> Value:
    """Return a list of objects within."""
    return value(list_of(inner.schema), given, lambda found: [inner.object(one) for one in found])
