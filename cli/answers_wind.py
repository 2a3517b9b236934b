"""What a typed answer about the wind means: gusts, a record of them, their source and years."""

import re
from itertools import pairwise

from .. import units
from ..design.bounds import WIND, YEARS
from .answers import quantity, whole
from .questions import AnswerError, Answers, Reader

LEFT_OPEN = "left open"
"""What "don't know" takes where the file can do without."""

_MOST_TEXT = 200


def speed(name: str) -> Reader:
    """Return a reader of a wind speed."""
    return lambda text, _: {name: _gust(text)}


def metres_a_second(text: str) -> float:
    """Return a wind speed in m/s from text that was taken before."""
    return units.read(text, "speed").value


def years(name: str) -> Reader:
    """Return a reader of a return period, which may be left open."""

    def read(text: str, _: Answers) -> Answers:
        if text == LEFT_OPEN:
            return {name: ""}
        number = whole(re.sub(r"\s*(?:years?|yrs?)$", "", text.strip().casefold()))
        if number is None or not YEARS.hold(number):
            raise AnswerError(text, f"a number of years, {YEARS.words}")
        return {name: str(number)}

    return read


def one_line(name: str) -> Reader:
    """Return a reader of a line of text, which may be left open."""

    def read(text: str, _: Answers) -> Answers:
        if text == LEFT_OPEN:
            return {name: ""}
        line = " ".join(text.replace("'", "’").split())
        if not line.isprintable() or len(line) > _MOST_TEXT:
            raise AnswerError(text, f"one line of text, up to {_MOST_TEXT} characters")
        return {name: line}

    return read


def record(text: str, _: Answers) -> Answers:
    """Read a record of gusts: the greatest alone, or several with their return periods."""
    gusts: list[tuple[int, str]] = []
    pieces = [piece for piece in re.split(r"[,;]", text) if piece.strip()]
    for piece in pieces:
        found = re.fullmatch(r"\s*(\d{1,6})\s*(?:(?:years?|yrs?)\s*:?|:|=)\s*(.+)", piece)
        if found and YEARS.hold(int(found[1])):
            gusts.append((int(found[1]), _gust(found[2])))
    if not gusts and len(pieces) == 1:
        return {"wind": _gust(text), "gusts": ""}
    gusts.sort()
    example = "'10 years: 60 mph, 50 years: 75 mph'"
    if len(gusts) != len(pieces) or len({period for period, _ in gusts}) < max(2, len(pieces)):
        raise AnswerError(text, f"the greatest gust, or two and more with their years: {example}")
    speeds = [metres_a_second(gust) for _, gust in gusts]
    if any(second <= first for first, second in pairwise(speeds)):
        raise AnswerError(text, f"a greater gust for each longer time: {example}")
    table = ", ".join(f"{period} = '{gust}'" for period, gust in gusts)
    return {"wind": gusts[-1][1], "gusts": f"{{ {table} }}"}


def _gust(text: str) -> str:
    reading = quantity(text, "speed")
    if not WIND.hold(reading.value):
        raise AnswerError(text, WIND.words)
    return " ".join(text.split())
