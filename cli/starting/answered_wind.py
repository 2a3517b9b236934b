"""Gusts, and records of them, as they are answered."""

import re
from itertools import pairwise

from ...design.bounds import WIND, YEARS
from .answered_lengths import answered_quantity, with_default_unit
from .answers import AnswerError, Asked, Found, Slot


def speed(text: str) -> float:
    """Return a wind speed in m/s. Raises AnswerError."""
    return gust(text, "")[1]


def gust(text: str, unit_of: str = "", said: list[str] | None = None) -> tuple[str, float]:
    """Return a gust as the file takes it, and in m/s. Raises AnswerError."""
    text = with_default_unit(text, unit_of, "speed", said)
    value = answered_quantity(text, "speed")
    if not WIND.hold(value):
        raise AnswerError(text, WIND.words)
    return " ".join(text.split()), value


def gust_asked(text: str, asked: Asked) -> Found:
    """Read a gust."""
    return {asked.slot: Slot(*gust(text, asked.default, asked.said))}


def record(text: str, _: Asked) -> Found:
    """Read a record of gusts: the greatest alone, or several with their return periods."""
    pieces = [piece for piece in re.split(r"[,;]", text) if piece.strip()]
    gusts: list[tuple[int, str, float]] = []
    for piece in pieces:
        found = re.fullmatch(r"\s*(\d{1,6})\s*(?:(?:years?|yrs?)\s*:?|:|=)\s*(.+)", piece)
        if found and YEARS.hold(int(found[1])):
            gusts.append((int(found[1]), *gust(found[2])))
    if not gusts and len(pieces) == 1:
        return {"wind": Slot(*gust(text)), "gusts": Slot("", "")}
    gusts.sort()
    example = "'10 years: 60 mph, 50 years: 75 mph'"
    if len(gusts) != len(pieces) or len({years for years, _, _ in gusts}) < max(2, len(pieces)):
        raise AnswerError(text, f"the greatest gust, or two and more with their years: {example}")
    if any(second[2] <= first[2] for first, second in pairwise(gusts)):
        raise AnswerError(text, f"a greater gust for each longer time: {example}")
    table = ", ".join(f"{years} = '{gust}'" for years, gust, _ in gusts)
    return {"wind": Slot(gusts[-1][1], gusts[-1][2]), "gusts": Slot(f"{{ {table} }}", "yes")}
