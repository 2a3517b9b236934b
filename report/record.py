"""Objects of JSON and their schemas in one: each key is named once, with its kind and its value."""

from collections.abc import Callable
from math import isfinite
from operator import attrgetter
from typing import Any, NamedTuple

Schema = dict[str, Any]
Taken = str | Callable[[Any], Any]
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


class ValueOf(NamedTuple):
    """A value of an object: its schema, and how it is taken from what the object tells of."""

    schema: Schema
    of: Callable[[Any], Any]


class ObjectOf(dict[str, ValueOf]):
    """The keys of an object in their order, each with its value.

    >>> size = ObjectOf(name=text("name"), width_m=maybe_number("width"))
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


def one_value(schema: Schema, given: Taken, told: Callable[[Any], Any] | None = None) -> ValueOf:
    """Return a value of a schema, as it stands or as it is ``told``."""
    of: Callable[[Any], Any] = attrgetter(given) if isinstance(given, str) else given
    if told is None:
        return ValueOf(schema, of)

    def made(one: Any) -> Any:
        return told(of(one))

    return ValueOf(schema, made)


def text(given: Taken) -> ValueOf:
    """Return a text."""
    return one_value(A_TEXT, given)


def maybe_text(given: Taken) -> ValueOf:
    """Return a text, null where it is empty."""
    return one_value(MAYBE_TEXT, given, lambda found: found or None)


def a_number(given: Taken) -> ValueOf:
    """Return a number."""
    return one_value(NUMBER, given)


def maybe_number(given: Taken) -> ValueOf:
    """Return a number, null where there is none or it is without bound."""
    return one_value(MAYBE_NUMBER, given, finite)


def finite(found: float | None) -> float | None:
    """Return a number, None where there is none or it is without bound."""
    return found if found is not None and isfinite(found) else None


def whole_number(given: Taken) -> ValueOf:
    """Return a whole number."""
    return one_value(A_WHOLE_NUMBER, given)


def true_or_false(given: Taken) -> ValueOf:
    """Return true or false."""
    return one_value(A_FLAG, given)


def array(given: Taken, items: Schema = NUMBER, **bounds: Any) -> ValueOf:
    """Return an array of numbers as a list, of ``items``."""
    return one_value({**list_of(items), **bounds}, given, lambda found: found.tolist())


def texts(given: Taken) -> ValueOf:
    """Return a list of texts."""
    return one_value(list_of(A_TEXT), given, list)


def inner_object(inner: ObjectOf, given: Taken) -> ValueOf:
    """Return an object within."""
    return one_value(inner.schema, given, inner.object)


def maybe_record(inner: ObjectOf, given: Taken) -> ValueOf:
    """Return an object within, null where there is none."""
    schema = or_null(inner.schema)
    return one_value(schema, given, lambda found: None if found is None else inner.object(found))


def inner_objects(inner: ObjectOf, given: Taken) -> ValueOf:
    """Return a list of objects within."""
    return one_value(
        list_of(inner.schema), given, lambda found: [inner.object(one) for one in found]
    )
