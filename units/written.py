"""Numbers with their units as people write them: ``5'-6 1/2"``, ``4 ft 6 in``, ``½ in``."""

import math
import re
from unicodedata import decomposition

from .faults import LONGEST, UnitError, two_readings, unread, with_unit
from .frozen import ByValue
from .kinds import Unit
from .known import by_spelling, find_unit


class _Part(ByValue, frozen=True):
    """A number with its unit, one of several where units descend."""

    number: float
    unit: Unit


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
_ABBREVIATED = re.compile(r"m\.p\.h\.?$", re.IGNORECASE)
_PER = re.compile(r" per (?=[a-z])", re.IGNORECASE)
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


def parts_of(
    text: str, spellings: tuple[str, ...], expected: str
) -> tuple[list[_Part], float, str | None]:
    """Read the whole text as number and unit, units descending; the sign stands before all."""
    plain = _plain(text)
    if len(plain) > LONGEST:
        raise UnitError(text, expected, "too long for one dimension")
    if "," in plain:
        plain = _without_commas(plain)
    if re.search(r"\d,\d", plain):
        raise UnitError(text, expected, two_readings(plain))
    sign = -1.0 if plain.startswith("-") else 1.0
    plain = plain[1:].lstrip() if plain.startswith(("-", "+")) else plain
    if not plain:
        raise UnitError(text, expected, with_unit("36", spellings))
    parts: list[_Part] = []
    position, note = 0, None
    while position < len(plain):
        number = _NUMBER.match(plain, position)
        if not number:
            unread(plain[position:], text, expected)
        value = _value(number, text, expected)
        start = _spaces(plain, number.end())
        if re.match(r"-[A-Za-z]", plain[start:]):
            start += 1  # as in '3/4-inch'
        named = _UNIT.match(plain, start)
        if named:
            unit = find_unit(named[0], text, expected)
            position = _after_unit(plain, named)
        elif start == len(plain) and parts and parts[-1].unit.name == "foot" and value < 12.0:
            unit, position = by_spelling()["inch"], start
            note = f"{text.strip()} was read as {parts[-1].number:g} ft {number[0]} in"
        elif start == len(plain):
            last = "the last number has no unit"
            signed = f"-{plain}" if sign < 0.0 else plain
            raise UnitError(text, expected, last if parts else with_unit(signed, spellings))
        else:
            unread(plain[start:], text, expected)
        if parts and not parts[-1].number.is_integer():
            raise UnitError(text, expected, "only the last number may have a fraction")
        parts.append(_Part(value, unit))
    return parts, sign, note


def _plain(text: str) -> str:
    """Return the text with the marks, dashes, spaces and fractions of phones as plain ones."""
    text = text.translate(_CHARACTERS)
    if not text.isascii():
        text = _VULGAR.sub(_as_fraction, text)
    text = " ".join(text.split()).replace("''", '"')
    return _PER.sub("/", _ABBREVIATED.sub("mph", text))


def _without_commas(plain: str) -> str:
    """Return a text without the commas of which each can only part decimals, or only thousands.

    ``1,200`` may be either: it stays. ``1,5``, ``0,125`` and ``1.200,5`` are decimal commas,
    ``1,200.5`` and ``1,200,000`` thousands.
    """
    thousands = r"(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})(?:(?:,\d{3})+|(?=\.\d))"
    plain = re.sub(thousands, lambda found: found[0].replace(",", ""), plain)
    points = r"(?<![\d.,])([1-9]\d{0,2}(?:\.\d{3})+),(\d+)(?![\d,])"
    plain = re.sub(points, lambda m: f"{m[1].replace('.', '')}.{m[2]}", plain)
    decimal = r"(?<![\d.,])(\d+),(\d{1,2}|\d{4,})(?![\d,])|(?<![\d.,])(0),(\d+)(?![\d,])"
    return re.sub(decimal, lambda m: f"{m[1] or m[3]}.{m[2] or m[4]}", plain)


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


def sole_unit(parts: list[_Part], text: str, expected: str) -> Unit:
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
