"""Kinds of values of which the schemas of what programs read are made: finite numbers, or null."""

from typing import Any

Schema = dict[str, Any]

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
