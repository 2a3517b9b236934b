"""What belongs to a key, what is said of a value that does not, and a quantity read."""

import re
from math import inf
from typing import Protocol, cast

from ... import units
from .near_names import quoted_names
from .schema import Instead, Key
from .sheet_names import sheet_thickness
from .typed_text import quoted, shown

_QUANTITIES = {
    "length": ("36 in", "900 mm"),
    "speed": ("58 mph", "26 m/s"),
    "mass": ("12 lb", "5 kg"),
    "force": ("20 lbf", "90 N"),
    "area density": ("2.5 lb/ft^2", "12 kg/m^2"),
    "density": ("35 lb/ft^3", "560 kg/m^3"),
    "slope": ("5 deg", "5 deg"),
    "angle": ("30 deg", "30 deg"),
}
PLAIN = {
    "text": ("text between quote marks", "'…'"),
    "choice": ("text between quote marks", ""),
    "choices": ("a list of names, each between quote marks", ""),
    "count": ("a whole number without quote marks", "8"),
    "number": ("a plain number without quote marks", "1.5"),
    "ratio": ("a plain number above 0 and at most 1", "0.5"),
    "flag": ("true or false", "true"),
    "offset": ("three lengths: right, away, up", "['0 in', '0 in', '12 in']"),
    "outline": (
        "a list of points, each two lengths: right and up",
        "[['0 in', '0 in'], ['12 in', '0 in'], ['6 in', '9 in']]",
    ),
    "outlines": (
        "a list of outlines, each a list of points",
        "[[['2 in', '1 in'], ['4 in', '1 in'], ['3 in', '2 in']]]",
    ),
    "map": ("gusts by their return periods in years", "{ 10 = '60 mph', 50 = '75 mph' }"),
    "years": ("a number of years", "700"),
    "numeral": ("text between quote marks", ""),
    "date": ("a day as year-month-day between quote marks", "'2026-05-31'"),
    "measured": ("what was measured, with its unit between quote marks", "'51 lb'"),
}


_YES, _NO = {"yes", "true", "on", "y"}, {"no", "false", "off", "n", "none"}
_NUMBER_WORDS = (
    *("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve"),
)


class Listener(Protocol):
    """Where a value's faults and notes go."""

    @property
    def metric(self) -> bool:
        """Whether examples are given in metric units."""
        ...

    def fault(
        self,
        key: str | None,
        found: str,
        expected: str,
        hint: str = "",
        instead: Instead | None = None,
    ) -> None:
        """Record a fault, and what to type instead."""
        ...

    def note(self, text: str) -> None:
        """Record how something was read."""
        ...


def belongs(key: Key, metric: bool) -> tuple[str, str]:
    """Return what belongs to a key, in words and as an example."""
    if key.kind in PLAIN:
        words, example = PLAIN[key.kind]
        names = key.names()
        if not names:
            return words, example
        example = quoted(names[0])
        return f"one of {quoted_names(names)}", f"[{example}]" if key.kind == "choices" else example
    imperial, other = _QUANTITIES.get(key.kind, ("", ""))
    if key.name in {"wall", "thickness"}:
        imperial, other = "3/4 in", "18 mm"
    phrase = f"{units.UNIT_KINDS[key.kind].phrase} with its unit between quote marks"
    if names := key.names():
        phrase = f"one of {quoted_names(names)}, or {phrase}"
    return phrase, quoted(other if metric else imperial)


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


def read_quantity(key: Key, value: object, to: Listener) -> float | None:
    """Return a quantity in SI units, or None with a fault recorded."""
    if not isinstance(value, str):
        mistyped(key, value, to)
        return None
    try:
        limits = key.limits()
        reading = units.read_dimension(value, key.kind, signed=limits is not None and limits.signed)
    except units.UnitError as error:
        thick = _sheet(key, value, to)
        if thick is not None:
            return thick
        instead = Instead(quoted(error.write), error.sure) if error.write else None
        if key.kind in _QUANTITIES and _UNITLESS.fullmatch(value.strip()):
            instead = Instead(quoted(f"{value.strip()} {_unit(key, to)}"))
        to.fault(key.name, typed(value), error.expected, error.hint, instead)
        return None
    if not within_bounds(key, reading.value, typed(value), to):
        return None
    if reading.note:
        to.note(f"{key.name}: {reading.note}")
    return reading.value


def mistyped(key: Key, value: object, to: Listener, hint: str = "") -> None:
    """Record a value of the wrong type, with the value that was probably meant."""
    expected, example = belongs(key, to.metric)
    number = isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < inf
    instead = None
    if key.kind in _QUANTITIES and number:
        unit = _unit(key, to)
        example = quoted(f"{typed(value)} {unit}")
        instead = Instead(example, sure=value == 0 or key.kind == "angle")
        hint = hint or (
            f"{key.name} = {example}" + ("" if instead.sure else f", if you mean {unit}")
        )
    elif key.kind in {"count", "number", "ratio"} and isinstance(value, str):
        right = _number_in(value)
        example = right or example
        instead = Instead(right, sure=True) if right else None
    elif key.kind == "text" and number:
        example = f"'{typed(value)}'"
        instead = Instead(example, sure=True)
    elif key.kind == "flag" and isinstance(value, str):
        word = value.strip().casefold()
        example = "false" if word in _NO else "true"
        instead = Instead(example, sure=True) if word in _NO | _YES else None
    elif key.kind == "flag" and number and value in (0, 1):
        instead = Instead("true" if value else "false", sure=True)
    hint = hint or (f"{key.name} = {example}" if example else "")
    to.fault(key.name, typed(value), expected, hint, instead)


def _sheet(key: Key, value: str, to: Listener) -> float | None:
    """Return the thickness of a sheet as sold, where one stands for a thickness."""
    if key.name not in {"wall", "thickness"}:
        return None
    found = sheet_thickness(value)
    if found is not None:
        to.note(f"{key.name}: {quoted(shown(value))} was read as a sheet of {found[0]}")
    return found[1] if found else None


_UNITLESS = re.compile(r"-?\d+(?:\.\d+)?|(?:\d+[ -])?\d+/[1-9]\d*", re.ASCII)


def _unit(key: Key, to: Listener) -> str:
    """Return the unit in which a quantity of a key is given as a rule."""
    if key.name in {"wall", "thickness"}:
        return "mm" if to.metric else "in"
    return _QUANTITIES[key.kind][to.metric].partition(" ")[2]


def _number_in(text: str) -> str:
    """Return the plain number that a text is, in figures or small words; nothing if it is none."""
    word = text.strip().casefold()
    if word in _NUMBER_WORDS:
        return str(_NUMBER_WORDS.index(word))
    plain = re.fullmatch(r"\d{1,6}|\d{1,6}\.\d{1,6}|0?\.\d{1,6}", word, re.ASCII)
    return (f"0{word}" if word.startswith(".") else word) if plain else ""


def within_bounds(key: Key, value: float, found: str, to: Listener) -> bool:
    """Return whether a value lies within its key's bounds; record a fault if not."""
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


def _item(value: object) -> str:
    if isinstance(value, list | dict):
        return "…"
    return quoted(shown(value)) if isinstance(value, str) else typed(value)
