"""A single value of the file by its kind: text, whole number, quantity and so on, or a fault."""

from collections.abc import Callable, Mapping
from math import isfinite
from typing import Protocol, cast

from .. import units
from .near_names import listed, meant
from .raw_values import quoted, shown
from .schema import Key

LONGEST_TEXT = 200

_QUANTITIES = {
    "length": ("36 in", "900 mm"),
    "speed": ("58 mph", "26 m/s"),
    "mass": ("12 lb", "5 kg"),
    "density": ("35 lb/ft^3", "560 kg/m^3"),
    "slope": ("5 deg", "5 deg"),
    "angle": ("30 deg", "30 deg"),
}
_PLAIN = {
    "text": ("text between quote marks", "'…'"),
    "choice": ("text between quote marks", ""),
    "choices": ("a list of names, each between quote marks", ""),
    "count": ("a whole number without quote marks", "8"),
    "number": ("a plain number without quote marks", "1.5"),
    "ratio": ("a plain number above 0 and at most 1", "0.5"),
    "flag": ("true or false", "true"),
    "offset": ("three lengths: right, away, up", "['0 in', '0 in', '12 in']"),
    "map": ("gusts by their return periods in years", "{ 10 = '60 mph', 50 = '75 mph' }"),
    "years": ("a number of years", "700"),
    "numeral": ("text between quote marks", ""),
}


class Listener(Protocol):
    """Where a value's faults and notes go."""

    @property
    def metric(self) -> bool:
        """Whether examples are given in metric units."""
        ...

    def fault(self, key: str | None, found: str, expected: str, hint: str = "") -> None:
        """Record a fault."""
        ...

    def note(self, text: str) -> None:
        """Record how something was read."""
        ...


def read_kind(key: Key, value: object, to: Listener) -> object:
    """Return a value by its key's kind in SI units, or None with a fault recorded."""
    return _READERS.get(key.kind, _quantity)(key, value, to)


def belongs(key: Key, metric: bool) -> tuple[str, str]:
    """Return what belongs to a key, in words and as an example."""
    if key.kind in _PLAIN:
        words, example = _PLAIN[key.kind]
        names = key.names()
        if not names:
            return words, example
        example = quoted(names[0])
        return f"one of {listed(names)}", f"[{example}]" if key.kind == "choices" else example
    imperial, other = _QUANTITIES.get(key.kind, ("", ""))
    if key.name in {"wall", "thickness"}:
        imperial, other = "3/4 in", "18 mm"
    article = "an" if key.kind[0] in "aeiou" else "a"
    return (
        f"{article} {key.kind} with its unit between quote marks",
        quoted(other if metric else imperial),
    )


def typed(value: object) -> str:
    """Return a value as it stands in the file, for repeating back."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str) and not value.strip():
        return quoted(shown(value))
    if isinstance(value, int) and abs(value) > 10**60:
        return "a number of more than 60 digits"
    if isinstance(value, list):
        items = [_item(item) for item in cast("list[object]", value)[:8]]
        return shown(f"[{', '.join(items)}]")
    if isinstance(value, dict):
        pairs = list(cast("dict[str, object]", value).items())[:8]
        return shown("{ " + ", ".join(f"{name} = {_item(item)}" for name, item in pairs) + " }")
    return shown(str(value))


def _item(value: object) -> str:
    if isinstance(value, list | dict):
        return "…"
    return quoted(shown(value)) if isinstance(value, str) else typed(value)


def _text(key: Key, value: object, to: Listener) -> str | None:
    if not isinstance(value, str):
        _mistyped(key, value, to)
    elif not value.strip() or not value.isprintable() or len(value) > LONGEST_TEXT:
        to.fault(key.name, typed(value), f"one line of text, up to {LONGEST_TEXT} characters")
    else:
        return value.strip()
    return None


def _choice(key: Key, value: object, to: Listener) -> str | None:
    if not isinstance(value, str):
        _mistyped(key, value, to)
        return None
    names = key.names()
    word = " ".join(value.split()).casefold()
    found = next((name for name in names if name.casefold() == word), None)
    if found is None:
        hint = key.words.get(word) or meant(value, names)
        to.fault(key.name, typed(value), f"one of {listed(names)}", hint)
    return found


def _choices(key: Key, value: object, to: Listener) -> frozenset[str] | None:
    if not isinstance(value, list):
        hint = f"{key.name} = [{quoted(shown(value))}]" if isinstance(value, str) else ""
        _mistyped(key, value, to, hint)
        return None
    found = [_choice(key, item, to) for item in cast("list[object]", value)]
    return None if None in found else frozenset(item for item in found if item is not None)


def _numeral(key: Key, value: object, to: Listener) -> str | None:
    """Read a name that may also be given by its number, from 1."""
    names = key.names()
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= len(names):
        return names[value - 1]
    return _choice(key, value, to)


def _flag(key: Key, value: object, to: Listener) -> bool | None:
    if isinstance(value, bool):
        return value
    _mistyped(key, value, to)
    return None


def _count(key: Key, value: object, to: Listener) -> int | None:
    if isinstance(value, float) and abs(value) < 1.0e6 and value.is_integer():
        to.fault(key.name, typed(value), _PLAIN["count"][0], f"{key.name} = {int(value)}")
    elif isinstance(value, bool) or not isinstance(value, int):
        _mistyped(key, value, to)
    elif _within(key, value, typed(value), to):
        return value
    return None


def _number(key: Key, value: object, to: Listener) -> float | None:
    if isinstance(value, bool) or not isinstance(value, int | float):
        _mistyped(key, value, to)
    elif not abs(value) < 1.0e12:
        to.fault(key.name, typed(value), "a plain, finite number")
    elif _within(key, value, typed(value), to):
        return float(value)
    return None


def _years(key: Key, value: object, to: Listener) -> float | None:
    """Read a number of years, or text such as '700 years'."""
    years = _as_years(value) if isinstance(value, str) else None
    return _number(key, value if years is None else years, to)


def _quantity(key: Key, value: object, to: Listener) -> float | None:
    if not isinstance(value, str):
        _mistyped(key, value, to)
        return None
    try:
        limits = key.limits()
        reading = units.read(value, key.kind, signed=limits is not None and limits.signed)
    except units.UnitError as error:
        to.fault(key.name, typed(value), error.expected, error.hint)
        return None
    if not _within(key, reading.value, typed(value), to):
        return None
    if reading.note:
        to.note(f"{key.name}: {reading.note}")
    return reading.value


def _offset(key: Key, value: object, to: Listener) -> tuple[float, float, float] | None:
    items = cast("list[object]", value) if isinstance(value, list) else []
    if len(items) != 3:
        _mistyped(key, cast(object, value), to)
        return None
    along = Key(key.name, "length", bounds=key.limits())
    found = [_quantity(along, item, to) for item in items]
    x, y, z = found
    return (x, y, z) if x is not None and y is not None and z is not None else None


def _by_years(key: Key, value: object, to: Listener) -> dict[float, float] | None:
    if not isinstance(value, dict):
        _mistyped(key, value, to)
        return None
    items = cast("dict[str, object]", value)
    found: dict[float, float] = {}
    for name, item in items.items():
        years = _as_years(name)
        speed = _quantity(Key(key.name, "speed", bounds=key.bounds), item, to)
        if years is None:
            to.fault(key.name, typed(name), "a return period in years", _PLAIN["map"][1])
        elif speed is not None:
            found[years] = speed
    return found if len(found) == len(items) else None


def _as_years(text: str) -> float | None:
    plain = text.casefold().strip().removesuffix("years").removesuffix("year").strip(" _-")
    try:
        years = float(plain)
    except ValueError:
        return None
    return years if 0.0 < years <= 1.0e5 else None


def _within(key: Key, value: float, found: str, to: Listener) -> bool:
    limits = key.limits()
    if limits.hold(value) if limits else abs(value) < 1.0e300:
        return True
    to.fault(
        key.name,
        found,
        limits.words if limits else "a finite quantity",
        limits.hint if limits else "",
    )
    return False


def _mistyped(key: Key, value: object, to: Listener, hint: str = "") -> None:
    """Record a value of the wrong type, with the value that was probably meant."""
    expected, example = belongs(key, to.metric)
    number = isinstance(value, int | float) and not isinstance(value, bool) and isfinite(value)
    if key.kind in _QUANTITIES and number:
        unit = _QUANTITIES[key.kind][to.metric].partition(" ")[2]
        hint = hint or f"{key.name} = '{typed(value)} {unit}', if you mean {unit}"
    elif key.kind in {"count", "number", "ratio"} and isinstance(value, str):
        plain = value.strip()
        example = plain if plain.replace(".", "", 1).isdigit() and len(plain) < 12 else example
    elif key.kind == "text" and number:
        example = f"'{typed(value)}'"
    elif key.kind == "flag" and isinstance(value, str):
        example = "false" if value.casefold() in {"no", "false", "off"} else "true"
    to.fault(
        key.name, typed(value), expected, hint or (f"{key.name} = {example}" if example else "")
    )


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
    "offset": _offset,
    "map": _by_years,
}
