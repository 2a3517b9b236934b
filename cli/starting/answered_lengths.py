"""Lengths, widths and numbers as they are answered; a bare number takes the default's unit."""

import re

from ... import units
from ...design.bounds import BLADE_COUNT, COUNT, SIDES, SIZE
from ...design.builds.sizes import flats_from_points, flats_from_side
from ...design.reader.near_names import plain_name
from ..files.written_sizes import is_metric, written_size
from .answers import AnswerError, Asked, Found, Slot
from .expressions import Worth

_OVER = {
    **dict.fromkeys(("flats", "flat"), ""),
    **dict.fromkeys(("points", "point", "corners"), "_points"),
    **dict.fromkeys(("panels", "panel", "side", "edge"), "_side"),
}
_BARE = re.compile(r"\s*(\d+(?:\.\d+)?|(?:\d+[ -])?\d+/\d+)\s*", re.ASCII)
_SIDES = {"round": 0, "square": 4, "hexagon": 6, "octagon": 8, "four": 4, "six": 6, "eight": 8}


def answered_length(text: str, unit_of: str = "", said: list[str] | None = None) -> Slot:
    """Return a length; a bare number takes the unit of ``unit_of``, where that makes sense."""
    text = with_default_unit(text, unit_of, "length", said)
    value = answered_quantity(text, "length")
    if not SIZE.hold(value):
        raise AnswerError(text, SIZE.words)
    line = " ".join(text.split())
    if not re.fullmatch(r"[\w ./-]+", line, re.ASCII):
        line = written_size(value, is_metric(line), 64)
    return Slot(line, value)


def with_default_unit(text: str, unit_of: str, kind: str, said: list[str] | None) -> str:
    """Return a bare number with the unit of a default that is some such length, and say so."""
    bare = _BARE.fullmatch(text)
    unit = re.search(r"[a-z/]+$", unit_of)
    if bare is None or unit is None or said is None:
        return text
    whole = f"{bare[1]} {unit[0]}"
    ratio = answered_quantity(whole, kind) / answered_quantity(unit_of, kind)
    if not 0.2 <= ratio <= 5.0:
        return text
    said.append(f"Read as {whole}.")
    return whole


def answered_quantity(text: str, kind: str) -> float:
    """Return a quantity of a kind in SI. Raises AnswerError."""
    try:
        return units.read_dimension(text, kind).value
    except units.UnitError as error:
        raise AnswerError(error.found, error.expected, error.hint) from None


def one(text: str, asked: Asked) -> Found:
    """Read one length."""
    return {asked.slot: answered_length(text, asked.default, asked.said)}


def or_none(text: str, asked: Asked) -> Found:
    """Read a length, or that there is none."""
    if plain_name(text) in {"no", "none", "0", "n", "without"}:
        return {asked.slot: Slot("none", 0.0)}
    return one(text, asked)


def answered_lengths(text: str, asked: Asked) -> Found:
    """Read as many lengths as the slot has names."""
    names = asked.slot.split(",")
    found, defaults = _with_last_unit(split(text)), split(asked.default)
    if len(found) != len(names):
        count = {2: "two", 3: "three"}[len(names)]
        raise AnswerError(text, f"{count} lengths parted by a comma, such as '{asked.default}'")
    return {
        name: answered_length(each, default, asked.said)
        for name, each, default in zip(names, found, defaults, strict=True)
    }


def _with_last_unit(pieces: list[str]) -> list[str]:
    """Return lengths of which the bare ones have the unit of the last: ``900 x 400 mm``."""
    unit = re.search(r"\d\s*([a-z]+|\"|')$", pieces[-1].casefold())
    return [f"{each} {unit[1]}" if unit and _BARE.fullmatch(each) else each for each in pieces]


def answered_widths(text: str, asked: Asked) -> Found:
    """Read a body's width at bottom and top, or one for both, over flats, points or one panel."""
    words = text.replace("over ", "").rsplit(None, 1)
    over = _OVER.get(words[-1].casefold().strip("()")) if len(words) == 2 else None
    found = _with_last_unit(split(words[0] if over is not None else text))
    if len(found) > 2 or not found[0]:
        raise AnswerError(text, "a width at the bottom and one at the top, such as '18 in, 10 in'")
    number = int(asked.answers.values.get("sides", 4))
    if over and number == 0:
        raise AnswerError(text, "two diameters: it is round")
    if over == "_points" and number % 2:
        expected = f"widths over flats, or of one panel: {number} sides have no points opposite"
        raise AnswerError(text, expected)
    defaults = split(asked.default)
    ends: Found = {"over": Slot(over or "", "")}
    for end, each, default in (
        ("bottom", found[0], defaults[0]),
        ("top", found[-1], defaults[-1]),
    ):
        taken = answered_length(each, default, asked.said)
        flats = _flats(taken.value, over or "", number)
        if not SIZE.hold(flats):
            raise AnswerError(text, f"a width of {SIZE.words} over flats")
        ends[end] = Slot(taken.text, flats)
    return ends


def _flats(value: Worth, over: str, sides: int) -> float:
    width = float(value)
    if over == "_points":
        return flats_from_points(width, sides)
    return flats_from_side(width, sides) if over == "_side" else width


def split(text: str, sticks: bool = False) -> list[str]:
    """Return what is parted by commas, 'and' or 'to', or by 'x' where no lumber is named."""
    between = r"(?<!\d),\s*|,\s+|;|\s+(?:and|to)\s+"
    if not sticks:
        between += r"|(?<=[\w\"'])\s*[x×]\s*(?=\d)|\s+by\s+"
    return [piece.strip() for piece in re.split(between, text)]


def _whole(text: str) -> int | None:
    line = text.strip()
    return int(line) if line.isascii() and line.isdigit() and len(line) < 7 else None


def sides(text: str, asked: Asked) -> Found:
    """Read a number of sides, in figures or as a figure's name."""
    word = text.casefold().strip()
    number = _SIDES.get(word, _whole(re.sub(r"[\s-]*sid(?:es?|ed)$", "", word)))
    if number is None or not SIDES.hold(number):
        raise AnswerError(text, f"a number of sides, {SIDES.words}")
    return {asked.slot: Slot(str(number), number)}


def answered_count(text: str, asked: Asked) -> Found:
    """Read a whole number."""
    number = _whole(text)
    if number is None or not COUNT.hold(number):
        raise AnswerError(text, f"a whole number, {COUNT.words}")
    return {asked.slot: Slot(str(number), number)}


def wheel(text: str, asked: Asked) -> Found:
    """Read a wheel: its width over all and the number of its blades."""
    found = split(text)
    number = _whole(re.sub(r"\s*blades?$", "", found[-1])) if len(found) == 2 else None
    if number is None or not BLADE_COUNT.hold(number):
        raise AnswerError(text, f"its width over all and its blades, such as '{asked.default}'")
    across = answered_length(found[0], split(asked.default)[0], asked.said)
    return {"across": across, "blades": Slot(str(number), number)}
