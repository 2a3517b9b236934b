"""The doors: text as on a tape or a drawing, and pint quantities, to floats in SI and back.

The number is read here, since people write ``5'-6 1/2"``; the units come from one file,
references/units.txt, which pint reads too when a quantity is asked for. Importing this module
imports no pint.
"""

import math
import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, NoReturn, Protocol, cast
from unicodedata import decomposition

Dims = tuple[int, int, int, int]
"""Powers of length, mass, time and angle."""


@dataclass(frozen=True)
class Kind:
    """A kind of quantity: its name with article, dimensions, SI unit, and units as people write."""

    phrase: str
    dims: Dims
    si: str
    spellings: tuple[str, ...]


KINDS: Mapping[str, Kind] = {
    "length": Kind("a length", (1, 0, 0, 0), "meter", ("in", "ft", "yd", "m", "cm", "mm")),
    "speed": Kind("a speed", (1, 0, -1, 0), "meter/second", ("mph", "kt", "m/s", "km/h")),
    "mass": Kind("a mass", (0, 1, 0, 0), "kilogram", ("lb", "oz", "g", "kg")),
    "force": Kind("a force", (1, 1, -2, 0), "newton", ("lbf", "kip", "kN", "N")),
    "pressure": Kind("a pressure", (-1, 1, -2, 0), "pascal", ("psf", "psi", "kPa", "Pa")),
    "density": Kind("a density", (-3, 1, 0, 0), "kilogram/meter**3", ("lb/ft^3", "kg/m^3")),
    "lateral bearing": Kind(
        "a lateral bearing per depth",
        (-2, 1, -2, 0),
        "newton/meter**3",
        ("lbf/ft^3", "psf/ft", "kPa/m"),
    ),
    "area density": Kind(
        "a mass per area", (-2, 1, 0, 0), "kilogram/meter**2", ("lb/ft^2", "kg/m^2")
    ),
    "line load": Kind("a force per length", (0, 1, -2, 0), "newton/meter", ("plf", "N/m")),
    "angle": Kind("an angle", (0, 0, 0, 1), "radian", ("deg", "rad")),
    "slope": Kind("a slope", (0, 0, 0, 1), "radian", ("deg", "rad", "%")),
}
_OTHER_KINDS: Mapping[Dims, str] = {
    (0, 0, 0, 0): "a ratio",
    (2, 0, 0, 0): "an area",
    (3, 0, 0, 0): "a volume",
    (0, 0, 1, 0): "a time",
    (2, 1, -2, 0): "a moment",
    (-1, 1, 0, 0): "a mass per length",
}


class UnitError(ValueError):
    """Text or quantity that is not what belongs there: what was found, what is expected, a hint."""

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        found = found if len(found) <= _LONGEST else found[: _LONGEST - 1] + "…"
        super().__init__(f"{found!r} is not {expected}" + (f": {hint}" if hint else ""))
        self.found = found
        self.expected = expected
        self.hint = hint

    def __reduce__(self) -> tuple[type["UnitError"], tuple[str, str, str]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.found, self.expected, self.hint)


@dataclass(frozen=True)
class Reading:
    """A value in SI, and a sentence where the text could have meant something else."""

    value: float
    note: str | None = None


class Quantity(Protocol):
    """What is used of a pint quantity; pint's own types are partly unknown to type checkers."""

    @property
    def magnitude(self) -> Any:
        """The number alone."""
        ...

    @property
    def units(self) -> Any:
        """The unit alone."""
        ...

    @property
    def dimensionality(self) -> Any:
        """Powers of the base dimensions."""
        ...

    def to(self, other: str, /) -> "Quantity":
        """Return the same in another unit."""
        ...

    def __add__(self, other: Any, /) -> Any: ...
    def __sub__(self, other: Any, /) -> Any: ...
    def __mul__(self, other: Any, /) -> Any: ...
    def __rmul__(self, other: Any, /) -> Any: ...
    def __truediv__(self, other: Any, /) -> Any: ...
    def __lt__(self, other: Any, /) -> bool: ...
    def __gt__(self, other: Any, /) -> bool: ...


def read(text: object, kind: str, *, signed: bool = False) -> Reading:
    """Read a dimension such as ``'4 ft 6 in'``, of the given kind (a key of KINDS), into SI.

    Anything but text is refused with the fix. A slope may be in degrees, radians or percent and is
    returned in radians. ``signed`` allows values below zero. UnitError where the text cannot be
    read whole, has no unit, or is of another kind; KeyError for an unknown kind.
    """
    wanted = KINDS[kind]
    expected = _expected(wanted)
    if not isinstance(text, str):
        raise _not_text(text, wanted.spellings, expected)
    parts, sign, note = _parts(text, wanted.spellings, expected)
    unit = _sole_unit(parts, text, expected)
    value = sign * sum(part.number * part.unit.factor for part in parts)
    if kind == "slope" and unit.name == "percent":
        value = math.atan(value)
    elif unit.dims != wanted.dims:
        raise _wrong_kind(text, unit, wanted)
    if value < 0.0 and not signed:
        raise UnitError(text, expected, "it cannot be negative here")
    return Reading(value, note)


def Q(text: object) -> Quantity:  # noqa: N802 - a quantity as everyone who uses pint spells it
    """Return the pint quantity that the text states, in the (last) unit in which it is written.

    UnitError where the text cannot be read whole or has no unit.
    """
    expected = "a number with its unit"
    if not isinstance(text, str):
        raise _not_text(text, ("in", "mph"), expected)
    parts, sign, _ = _parts(text, ("in", "mph", "lb"), expected)
    unit = _sole_unit(parts, text, expected)
    value = sign * sum(part.number * (part.unit.factor / unit.factor) for part in parts)
    return registry().Quantity(value, unit.name)


def to_si(value: "str | Quantity", kind: str, *, signed: bool = False) -> float:
    """Return text, or a pint quantity of any registry, as a float in the SI unit of its kind.

    Raises as `read`, also for a quantity of another dimension, of several values, or not finite.
    """
    wanted = KINDS[kind]
    if isinstance(value, str) or not hasattr(value, "dimensionality"):
        return read(value, kind, signed=signed).value
    found = f"{value}"
    units = str(value.units)
    dims = _dims_of(value)
    if dims == (0, 0, 0, 0) and ("degree" in units or "radian" in units):
        dims = (0, 0, 0, 1)
    if kind == "slope" and units == "percent":
        result = math.atan(_one_value(value.magnitude, found, wanted) / 100.0)
    elif dims != wanted.dims:
        raise _wrong_kind(found, _Unit(units, 1.0, dims), wanted)
    else:
        result = _one_value(value.to(wanted.si).magnitude, found, wanted)
    if result < 0.0 and not signed:
        raise UnitError(found, _expected(wanted), "it cannot be negative here")
    return result


def quantity(value: Any, kind: str, unit: str | None = None) -> Quantity:
    """Return a pint quantity for a value (or array) in SI, in ``unit`` where one is named.

    UnitError where the unit is unknown or measures another kind; KeyError for an unknown kind.
    """
    wanted = KINDS[kind]
    si = registry().Quantity(value, wanted.si)
    if unit is None:
        return si
    named = _unit(unit, unit, _expected(wanted))
    if kind == "slope" and named.name == "percent":
        return registry().Quantity(100.0 * _tan(value), "percent")
    if named.dims != wanted.dims:
        raise _wrong_kind(unit, named, wanted)
    return si.to(named.name)


def factor(unit: str) -> float:
    """Return what one of a unit such as ``'lb/ft^3'`` is in SI. UnitError where it is unknown."""
    return _unit(unit, unit, "a unit").factor


@cache
def registry() -> Any:
    """Return the one pint registry of this package: the units of the trade, nothing else."""
    import pint  # noqa: PLC0415 - 100 ms that a check does without

    return cast(Any, pint.UnitRegistry)(str(_FILE))


# --- units ----------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Unit:
    """A unit: its name as pint spells it, what it is in SI, its dimensions."""

    name: str
    factor: float
    dims: Dims


_FILE = Path(__file__).parent / "references" / "units.txt"
_BASES: Mapping[str, Dims] = {
    "[length]": (1, 0, 0, 0),
    "[mass]": (0, 1, 0, 0),
    "[time]": (0, 0, 1, 0),
    "[]": (0, 0, 0, 1),
}
_MARKS = {"'": "foot", '"': "inch", "°": "degree", "%": "percent"}
_TERM = re.compile(
    r"\s*(?P<op>[*/·]?)\s*(?:(?P<number>[\d.]+)|(?P<name>['\"°%]|[A-Za-z_]+))"
    r"\s*(?:(?:\^|\*\*)\s*(?P<power>-?\d)|(?P<high>[²³])|(?P<digit>[23]))?"
)
_HIGH = {"²": 2, "³": 3}


@cache
def units() -> Mapping[str, _Unit]:
    """Return every unit by every spelling that references/units.txt lists."""
    known: dict[str, _Unit] = {}
    for line in _FILE.read_text(encoding="utf-8").splitlines():
        if not line or line.startswith("#"):
            continue
        name, relation, *spellings = (field.strip() for field in line.split("="))
        if relation in _BASES:
            unit = _Unit(name, 1.0, _BASES[relation])
        else:
            product = _product(relation, known)
            unit = _Unit(name, product.factor, product.dims)
        known.update({spelling: unit for spelling in (name, *spellings) if spelling != "_"})
    return known


def _product(text: str, known: Mapping[str, _Unit]) -> _Unit:
    """Multiply out numbers and units such as ``lbf/ft^2``. KeyError names the unknown unit."""
    names, factor, dims, position = "", 1.0, (0, 0, 0, 0), 0
    while position < len(text):
        term = _TERM.match(text, position)
        if not term or (position > 0) != bool(term["op"]):
            raise KeyError(text[position:].strip())
        power = int(term["power"] or _HIGH.get(term["high"] or "") or term["digit"] or 1)
        way = -power if term["op"] == "/" else power
        if term["number"]:
            unit = _Unit(term["number"], float(term["number"]), (0, 0, 0, 0))
        else:
            unit = known[_MARKS.get(term["name"], term["name"])]
        factor *= unit.factor**way
        dims = cast(Dims, tuple(a + way * b for a, b in zip(dims, unit.dims, strict=True)))
        names += f"{'/' if term['op'] == '/' else '*'}{unit.name}" + f"**{power}" * (power != 1)
        position = term.end()
    return _Unit(names.lstrip("*"), factor, dims)


def _unit(name: str, text: str, expected: str) -> _Unit:
    """Return a unit by its spelling, also in other capitals where that leaves no choice."""
    try:
        return _product(name, units())
    except KeyError as unknown:
        missing = str(unknown.args[0])
    with suppress(KeyError):
        return _product(name.casefold(), _folded())
    from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

    near = get_close_matches(missing.casefold(), list(_folded()), n=1, cutoff=0.7)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    listed = "Known are " + ", ".join(_listed()) if expected.endswith("unit") else ""
    raise UnitError(
        text, expected, f"{missing!r} is not a unit known here. {hint}{listed}".rstrip(". ")
    )


@cache
def _folded() -> Mapping[str, _Unit]:
    by_fold: dict[str, set[_Unit]] = {}
    for spelling, unit in units().items():
        by_fold.setdefault(spelling.casefold(), set()).add(unit)
    return {fold: found.pop() for fold, found in by_fold.items() if len(found) == 1}


def _listed() -> list[str]:
    return list(dict.fromkeys(s for kind in KINDS.values() for s in kind.spellings))


# --- what one of each is in SI, for code that thinks in the trade's units ----------------------


INCH, FOOT = factor("in"), factor("ft")
MPH, KMH = factor("mph"), factor("km/h")
POUND, POUND_FORCE = factor("lb"), factor("lbf")
PSF, PSI = factor("psf"), factor("psi")
GRAVITY = POUND_FORCE / POUND
"""Standard acceleration of free fall in m/s2 (ISO 80000-3), by which a pound-force is defined."""


# --- numbers as people write them -------------------------------------------------------------


@dataclass(frozen=True)
class _Part:
    number: float
    unit: _Unit


_FAMILIES = (
    ("yard", "foot", "inch"),
    ("meter", "centimeter", "millimeter"),
    ("kilogram", "gram"),
    ("pound", "ounce"),
)
_CHARACTERS = str.maketrans(
    {
        **dict.fromkeys("‐‑‒–—−﹣-", "-"),
        **dict.fromkeys("′’‘‛ʹʼ´`＇", "'"),
        **dict.fromkeys("″”“‟„ʺˮ＂", '"'),
        **dict.fromkeys("⁄∕", "/"),
        **dict.fromkeys("\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u202a\u202c\u2066\u2069"),
        "º": "°",
        "˚": "°",
        "⋅": "·",
    }
)
_VULGAR = re.compile("[¼-¾⅐-⅞]")
_NUMBER = re.compile(
    r"(?:(?P<whole>\d+)(?:\s+|-))??(?P<over>\d+)\s*/\s*(?P<under>\d+)(?![\d.])"
    r"|(?P<plain>\d+(?:\.\d*)?|(?<![A-Za-z])\.\d+)",
    re.ASCII,
)
_NAME = r"[A-Za-z_]+"
_UNIT = re.compile(
    rf"['\"°%]|{_NAME}(?:(?:\^|\*\*)-?\d|[²³])?"
    rf"(?:\s*[*/·]\s*{_NAME}(?:\s*(?:\^|\*\*)\s*-?\d|[²³]|[23](?![\d.]))?)*"
)
_LONGEST = 60


def _parts(
    text: str, spellings: tuple[str, ...], expected: str
) -> tuple[list[_Part], float, str | None]:
    """Read the whole text as number and unit, units descending; the sign stands before all."""
    plain = _plain(text)
    if len(plain) > _LONGEST:
        raise UnitError(text, expected, "too long for one dimension")
    if re.search(r"\d,\d", plain):
        raise UnitError(text, expected, _two_readings(plain))
    sign = -1.0 if plain.startswith("-") else 1.0
    plain = plain[1:].lstrip() if plain.startswith(("-", "+")) else plain
    if not plain:
        raise UnitError(text, expected, _fix("36", spellings))
    parts: list[_Part] = []
    position, note = 0, None
    while position < len(plain):
        number = _NUMBER.match(plain, position)
        if not number:
            _unread(plain[position:], text, expected)
        value = _value(number, text, expected)
        start = _spaces(plain, number.end())
        named = _UNIT.match(plain, start)
        if named:
            unit = _unit(named[0], text, expected)
            position = _after_unit(plain, named)
        elif start == len(plain) and parts and parts[-1].unit.name == "foot" and value < 12.0:
            unit, position = units()["inch"], start
            note = f"{text.strip()} was read as {parts[-1].number:g} ft {number[0]} in"
        elif start == len(plain):
            last = "the last number has no unit"
            raise UnitError(text, expected, last if parts else _fix(plain, spellings))
        else:
            _unread(plain[start:], text, expected)
        if parts and not parts[-1].number.is_integer():
            raise UnitError(text, expected, "only the last number may have a fraction")
        parts.append(_Part(value, unit))
    return parts, sign, note


def _plain(text: str) -> str:
    """Return the text with the marks, dashes, spaces and fractions of phones as plain ones."""
    text = text.translate(_CHARACTERS)
    if not text.isascii():
        text = _VULGAR.sub(_as_fraction, text)
    return " ".join(text.split()).replace("''", '"')


def _as_fraction(match: re.Match[str]) -> str:
    over, _, under = (chr(int(code, 16)) for code in decomposition(match[0]).split()[1:4])
    gap = " " if match.string[: match.start()][-1:].isdigit() else ""
    return f"{gap}{over}/{under}"


def _value(number: re.Match[str], text: str, expected: str) -> float:
    if number["plain"]:
        return float(number["plain"])
    over, under = float(number["over"]), float(number["under"])
    if under == 0.0:
        raise UnitError(text, expected, "a fraction cannot have 0 below the line")
    if number["whole"] is None:
        return over / under
    if over >= under:
        raise UnitError(
            text, expected, f"{number[0]} is no mixed number: the fraction is not below 1"
        )
    return float(number["whole"]) + over / under


def _after_unit(plain: str, named: re.Match[str]) -> int:
    """Return where the next number starts: past an abbreviation's dot and a drawing's dash."""
    position = named.end()
    if plain[position : position + 1] == "." and not plain[position + 1 : position + 2].isdigit():
        position += 1
    position = _spaces(plain, position)
    following = _spaces(plain, position + 1)
    if plain[position : position + 1] == "-" and plain[following : following + 1].isdigit():
        return following
    return position


def _spaces(plain: str, position: int) -> int:
    return position + (plain[position : position + 1] == " ")


def _sole_unit(parts: list[_Part], text: str, expected: str) -> _Unit:
    """Return the last unit, having seen that the units descend within one family."""
    names = [part.unit.name for part in parts]
    if len(names) > 1:
        family = next((f for f in _FAMILIES if names[0] in f), ())
        places = [family.index(name) if name in family else -1 for name in names]
        if -1 in places or places != sorted(set(places)):
            hint = "several units must descend, as in '4 ft 6 in', '1 m 20 cm' or '2 lb 4 oz'"
            raise UnitError(text, expected, hint)
    if not math.isfinite(sum(part.number for part in parts)):
        raise UnitError(text, expected, "the number is too large")
    return parts[-1].unit


# --- what is wrong ------------------------------------------------------------------------------


def _expected(kind: Kind) -> str:
    return f"{kind.phrase} ({', '.join(kind.spellings)})"


def _fix(number: str, spellings: tuple[str, ...]) -> str:
    choices = [f"'{number} {unit}'" for unit in (spellings[0], spellings[-1])]
    return f"write it with its unit, such as {' or '.join(choices)}"


def _unread(rest: str, text: str, expected: str) -> NoReturn:
    raise UnitError(text, expected, f"could not read {rest!r}; write a number and its unit only")


def _two_readings(plain: str) -> str:
    one = plain.replace(",", "")
    other = plain.replace(",", ".")
    if plain.count(",") > 1:
        return f"write it without commas: '{one}'"
    if re.search(r"\d,\d{3}(?!\d)", plain):
        return f"write '{one}' if the comma parts thousands, '{other}' if it is a decimal comma"
    return f"write '{other}' if it is a decimal comma"


def _not_text(value: object, spellings: tuple[str, ...], expected: str) -> UnitError:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        shown = type(value).__name__ if not isinstance(value, bool) else str(value).lower()
        return UnitError(shown, expected, f"write text such as '36 {spellings[0]}'")
    return UnitError(f"{value:g}", expected, _fix(f"{value:g}", spellings))


def _wrong_kind(text: str, unit: _Unit, kind: Kind) -> UnitError:
    found = next((k.phrase for k in KINDS.values() if k.dims == unit.dims), None)
    found = found or _OTHER_KINDS.get(unit.dims, f"measured in {unit.name}")
    hint = f"{text.strip()!r} is {found}, where {kind.phrase} belongs"
    a, b = unit.dims, kind.dims
    if b == (a[0] + 1, a[1], a[2] - 2, a[3]):
        force = re.sub(r"(?<![A-Za-z])(?:lbs?|pounds?)(?![A-Za-z])\.?", "lbf", text)
        other = f"'{kind.spellings[0]}'" if force == text else f"'{force.strip()}'"
        hint += f"; lb and kg are masses, a force is written lbf or N: {other}"
    elif a == (b[0] + 1, b[1], b[2] - 2, b[3]):
        hint += f"; it is written {' or '.join(kind.spellings)}"
    return UnitError(text, _expected(kind), hint)


def _dims_of(value: Quantity) -> Dims:
    powers = {str(name): int(power) for name, power in dict(value.dimensionality).items()}
    if set(powers) - set(_BASES):
        return (99, 0, 0, 0)
    return (powers.get("[length]", 0), powers.get("[mass]", 0), powers.get("[time]", 0), 0)


def _one_value(magnitude: Any, found: str, kind: Kind) -> float:
    if getattr(magnitude, "ndim", 0):
        raise UnitError(found, _expected(kind), "one value belongs here")
    result = float(magnitude)
    if not math.isfinite(result):
        raise UnitError(found, _expected(kind), "it must be finite")
    return result


def _tan(value: Any) -> Any:
    import numpy as np  # noqa: PLC0415 - text is read without it

    return np.tan(value)
