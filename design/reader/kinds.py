"""A single value of the file by its kind: text, whole number, quantity and so on, or a fault."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, datetime
from typing import cast

from .kind_words import PLAIN, Listener, belongs, mistyped, read_quantity, typed, within_bounds
from .lists_of_lengths import Among, read_offset, read_outline, read_outlines
from .near_names import first, lone_name, meant, misspelt, plain_name, quoted_names, same, sure
from .schema import Instead, Key
from .typed_text import quoted, shown

LONGEST_TEXT = 200


def read_kind(key: Key, value: object, to: Listener) -> object:
    """Return a value by its key's kind in SI units, or None with a fault recorded."""
    reader = _READERS.get(key.kind, _named_or_quantity if key.choices else read_quantity)
    return reader(key, value, to)


def _text(key: Key, value: object, to: Listener) -> str | None:
    if not isinstance(value, str):
        mistyped(key, value, to)
    elif not value.strip() or not value.isprintable() or len(value) > LONGEST_TEXT:
        to.fault(key.name, typed(value), f"one line of text, up to {LONGEST_TEXT} characters")
    else:
        return value.strip()
    return None


def _choice(key: Key, value: object, to: Listener) -> str | None:
    if not isinstance(value, str):
        mistyped(key, value, to)
        return None
    names = key.names()
    return _name(key, value, lambda: f"one of {quoted_names(names, value)}", to)


def _name(key: Key, value: str, expected: Callable[[], str], to: Listener) -> str | None:
    """Return the name that a word is, or that can only be meant by it; None with a fault."""
    names = key.names()
    found = same(value, names)
    if found is not None:
        return found
    answer = _answer(key, value)
    right = lone_name(answer)
    if right is not None and right in names:
        to.note(f"{key.name}: {quoted(shown(value))} was read as {right}")
        return right
    hint = answer or meant(value, names)
    near = first(hint)
    instead = Instead(quoted(near), sure(value, hint, names)) if near and near in names else None
    to.fault(key.name, typed(value), expected(), hint, instead)
    return None


def _answer(key: Key, value: str) -> str:
    """Return the answer to a builder's word, also where it is a slip of the pen for one."""
    words = {plain_name(word): answer for word, answer in key.words.items()}
    return words.get(plain_name(value)) or words.get(misspelt(value, words) or "", "")


def _named_or_quantity(key: Key, value: object, to: Listener) -> str | float | None:
    """Read a quantity that may also be given by a name."""
    if not isinstance(value, str) or not re.match(r"\s*[A-Za-z]", value):
        return read_quantity(key, value, to)
    return _name(key, value, lambda: belongs(key, to.metric)[0], to)


def _choices(key: Key, value: object, to: Listener) -> frozenset[str] | None:
    if not isinstance(value, list):
        named = _names_in(value, key.names()) if isinstance(value, str) else []
        if named:
            whole = f"[{', '.join(quoted(name) for name in named)}]"
            expected, hint = belongs(key, to.metric)[0], f"{key.name} = {whole}"
            to.fault(key.name, typed(value), expected, hint, Instead(whole, sure=True))
        else:
            mistyped(key, value, to)
        return None
    found = [_choice(key, item, to) for item in cast("list[object]", value)]
    return None if None in found else frozenset(item for item in found if item is not None)


def _names_in(text: str, names: Sequence[str]) -> list[str]:
    """Return the names in a text: one, several parted by commas, or letters run together."""
    pieces = [piece.strip() for piece in text.split(",")]
    if not all(same(piece, names) for piece in pieces):
        pieces = list(text.strip())
    found = [same(piece, names) for piece in pieces]
    return [name for name in found if name is not None] if None not in found else []


def _numeral(key: Key, value: object, to: Listener) -> str | None:
    """Read a name that may also be given by its number, from 1."""
    names = key.names()
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= len(names):
        return names[value - 1]
    return _choice(key, value, to)


def _flag(key: Key, value: object, to: Listener) -> bool | None:
    if isinstance(value, bool):
        return value
    mistyped(key, value, to)
    return None


def _count(key: Key, value: object, to: Listener) -> int | None:
    if isinstance(value, float) and abs(value) < 1.0e6 and value.is_integer():
        hint = f"{key.name} = {int(value)}"
        instead = Instead(str(int(value)), sure=True)
        to.fault(key.name, typed(value), PLAIN["count"][0], hint, instead)
    elif isinstance(value, bool) or not isinstance(value, int):
        mistyped(key, value, to)
    elif within_bounds(key, value, typed(value), to):
        return value
    return None


def _number(key: Key, value: object, to: Listener) -> float | None:
    if isinstance(value, bool) or not isinstance(value, int | float):
        mistyped(key, value, to)
    elif not abs(value) < 1.0e12:
        to.fault(key.name, typed(value), "a plain, finite number")
    elif within_bounds(key, value, typed(value), to):
        return float(value)
    return None


def _years(key: Key, value: object, to: Listener) -> float | None:
    """Read a number of years, or text such as '700 years'."""
    years = _as_years(value) if isinstance(value, str) else None
    return _number(key, value if years is None else years, to)


def _by_years(key: Key, value: object, to: Listener) -> dict[float, float] | None:
    if not isinstance(value, dict):
        mistyped(key, value, to)
        return None
    items = dict(_undotted(cast("dict[str, object]", value)))
    found: dict[float, float] = {}
    for name, item in items.items():
        years = _as_years(name)
        speed = read_quantity(Key(key.name, "speed", bounds=key.bounds), item, Among(to))
        if years is None:
            to.fault(key.name, typed(name), "a return period in years", PLAIN["map"][1])
        elif speed is not None:
            found[years] = speed
    return found if len(found) == len(items) else None


def _undotted(items: Mapping[str, object]) -> Iterator[tuple[str, object]]:
    """Yield names and values; ``1.5 = '60 mph'``, to TOML a table in a table, as written."""
    for name, item in items.items():
        if isinstance(item, dict) and name.isdecimal():
            inner = cast("dict[str, object]", item)
            yield from ((f"{name}.{rest}", one) for rest, one in inner.items())
        else:
            yield name, item


def _as_years(text: str) -> float | None:
    plain = text.casefold().strip().removesuffix("years").removesuffix("year").strip(" _-")
    try:
        years = float(plain)
    except ValueError:
        return None
    return years if 0.0 < years <= 1.0e5 else None


def _date(key: Key, value: object, to: Listener) -> str | None:
    """Read a day, as text or as TOML's own date, that the calendar has; return YYYY-MM-DD."""
    if isinstance(value, date) and not isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d{2}-\d{2}", value.strip(), re.ASCII):
        try:
            return date.fromisoformat(value.strip()).isoformat()
        except ValueError:
            to.fault(key.name, typed(value), "a day that the calendar has", "year-month-day")
            return None
    mistyped(key, value, to)
    return None


def _measured(key: Key, value: object, to: Listener) -> object:
    """Leave a quantity to whoever knows its kind from another key; it is text in any case."""
    if isinstance(value, str):
        return value
    mistyped(key, value, to)
    return None


_READERS: Mapping[str, Callable[[Key, object, Listener], object]] = {
    "text": _text,
    "choice": _choice,
    "choices": _choices,
    "numeral": _numeral,
    "flag": _flag,
    "count": _count,
    "number": _number,
    "ratio": _number,
    "years": _years,
    "offset": read_offset,
    "outline": read_outline,
    "outlines": read_outlines,
    "map": _by_years,
    "date": _date,
    "measured": _measured,
}
