"""What a field of the form is called: a key of the design file, with what it measures."""

from ..messages import window_messages as messages


def table_label(table: str, number: int, name: str) -> str:
    """Return what a table is called: by its name, else by what it is of."""
    kind = messages.TABLES.get(table, table)
    if not name:
        return kind
    return name if table == "part" else f"{kind}: {name}"


def field_label(key: str, table: str) -> str:
    """Return what a key of a table is called."""
    own = messages.FIELDS.get(f"{table}.{key}")
    return own or messages.FIELDS.get(key) or key.replace("_", " ")
