"""One value of a text changed, all else of it kept: comments, order, blanks."""

import re
from collections.abc import Sequence

from ..checks.inputs import scanned
from ..design.reader.scan import Scan, Spot
from ..design.reader.typed_text import quoted
from .fields import keys_of

_NUMBER = re.compile(r"[+-]?\d+(\.\d+)?", re.ASCII)
_DAY = re.compile(r"\d{4}-\d\d-\d\d", re.ASCII)
_PLAIN = frozenset({"count", "number", "ratio", "years", "numeral"})
_LONGEST = 300


def with_value(text: str, spot: Spot, typed: Sequence[str]) -> str:
    """Return a text with what was typed at a place of it; KeyError where it has no such place.

    A key that the table does not hold yet is put behind its heading's own keys. Nothing typed
    takes the key's line away.
    """
    look = scanned(text)
    assert spot.key is not None
    values = [_clean(each) for each in typed]
    kind = _kind(look, spot)
    new = _written(kind, values)
    if spot not in look.values:
        return _added(look, spot, new)
    begin, end = look.values[spot]
    if not any(values) and not _required(look, spot):
        return _without(look, spot)
    return look.seen[:begin] + new + look.seen[end:]


def _clean(typed: str) -> str:
    """Return what was typed on one line, without what no line of a file holds."""
    return "".join(c if c.isprintable() else " " for c in typed)[:_LONGEST].strip()


def _written(kind: str, values: Sequence[str]) -> str:
    """Return values as the file has them, for the reader to judge."""
    if kind == "offset":
        return "[" + ", ".join(quoted(each) for each in values) + "]"
    value = values[0]
    if kind == "flag" and value in ("true", "false"):
        return value
    if (kind in _PLAIN and _NUMBER.fullmatch(value)) or (kind == "date" and _DAY.fullmatch(value)):
        return value
    return quoted(value)


def _kind(look: Scan, spot: Spot) -> str:
    return keys_of(spot.table, _shape(look, spot))[spot.key or ""].kind


def _required(look: Scan, spot: Spot) -> bool:
    return keys_of(spot.table, _shape(look, spot))[spot.key or ""].required


def _shape(look: Scan, spot: Spot) -> str:
    """Return the shape of a part as its text says it."""
    at = look.values.get(spot.at("shape"))
    return "" if at is None else look.seen[slice(*at)].strip("'\" ")


def _line(look: Scan, place: int) -> tuple[int, int]:
    """Return where the line of a place begins, and where the next does."""
    begin = look.seen.rfind("\n", 0, place) + 1
    end = look.seen.find("\n", place)
    return begin, len(look.seen) if end < 0 else end + 1


def _without(look: Scan, spot: Spot) -> str:
    begin, _ = _line(look, look.keys[spot][0])
    _, end = _line(look, look.values[spot][1])
    return look.seen[:begin] + look.seen[end:]


def _added(look: Scan, spot: Spot, value: str) -> str:
    """Return the text with a key behind the last of its table."""
    ends = [at[1] for each, at in look.values.items() if each[:2] == spot[:2]]
    if not ends:
        raise KeyError(spot.table)
    _, end = _line(look, max(ends))
    before = look.seen[:end]
    return (
        f"{before}{'' if before.endswith(chr(10)) else chr(10)}{spot.key} = {value}\n"
        + look.seen[end:]
    )
