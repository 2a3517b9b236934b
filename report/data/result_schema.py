"""The result as a JSON Schema: SI units in the keys, every number finite or null.

Keys may be added to a result, and none of those here is renamed or taken away within a format.
"""

from ..record import (
    A_FLAG,
    A_TEXT,
    MAYBE_NUMBER,
    MAYBE_TEXT,
    NUMBER,
    Schema,
    list_of,
    object_of,
)
from .design_schema import SCHEMA_DRAFT
from .result_record import RESULT_FORMAT, result_record


def result_schema() -> Schema:
    """Return the schema of what ``check --format json`` prints of one design."""
    whole = result_record().schema
    whole["properties"]["explained"] = list_of(_explained())  # with --explain alone
    return {"$schema": SCHEMA_DRAFT, "title": f"Yardfast result, format {RESULT_FORMAT}", **whole}


def _explained() -> Schema:
    """Return what ``check --explain NAME`` adds: a check's relation, inputs and number."""
    item = {
        "type": "object",
        "properties": {
            "words": A_TEXT,
            "formula": A_TEXT,
            "values": {"type": "object", "additionalProperties": A_TEXT},
            "source": A_TEXT,
            "head": list_of(A_TEXT),
            "rows": list_of(list_of(A_TEXT)),
        },
        "required": ["words"],
    }
    given = object_of(
        what=A_TEXT,
        value=A_TEXT,
        **{"from": A_TEXT},
        line={"type": ["integer", "null"]},
        source=MAYBE_TEXT,
        confidence=MAYBE_TEXT,
    )
    return object_of(
        name=A_TEXT,
        relation=list_of(object_of(title=A_TEXT, steps=list_of(item))),
        source=A_TEXT,
        inputs=list_of(given),
        demand=NUMBER,
        capacity=NUMBER,
        unit=A_TEXT,
        utilization=MAYBE_NUMBER,
        passes=A_FLAG,
        notes=list_of(A_TEXT),
    )
