"""Single numbers of EN 1991-1-4, from their rows."""

from functools import cache

from ... import references


@cache
def constant(item: str) -> float:
    """Return one of the standard's numbers in SI by its row's ``item``. KeyError: no such row."""
    row = references.table("wind/en1991_constants").one("item", item)
    return float(row["value"])
