"""Lines of text for people: wrapped to a width, each with the mood in which it is said."""

import re
from collections.abc import Iterable, Sequence
from textwrap import wrap
from typing import Literal

from ...units.frozen import ByValue

LINE_WIDTH = 80

_HARD_SPACE = "\N{NO-BREAK SPACE}"
_APART = re.compile(
    r"(?<=\d) (?=\d+/\d)"
    r"|(?<=\d) (?=(?:in|ft|mm|m|lb|oz|kg|N|mph|km/h|psf|kPa|MPa|Pa|lb-ft|lb/ft3|kg/m3|deg)\b)"
    r"|(?<=\d) (?=%)"
    r"|(?<=\d ft) (?=\d)"
    r"|(?<=\w) (?== ')"
    r"|(?<= =) (?=')"
    r"|(?<='\.\.) "
)
"""Spaces at which a line never breaks: within a mixed number, between number and unit."""

Mood = Literal["plain", "title", "bad", "tie", "good", "quiet"]


class Line(ByValue, frozen=True):
    """One line as printed; its mood, or that of one ``word`` in it, only colours: words say all."""

    text: str
    mood: Mood = "plain"
    word: tuple[str, Mood] | None = None


def hard_spaced(text: str) -> str:
    """Return a text with hard spaces where no line may break."""
    return _APART.sub(_HARD_SPACE, text)


def soft_spaced(text: str) -> str:
    """Return a text with plain spaces again."""
    return text.replace(_HARD_SPACE, " ")


def wrapped(
    text: str,
    first: str = "",
    rest: str | None = None,
    mood: Mood = "plain",
    width: int = LINE_WIDTH,
) -> list[Line]:
    """Return a text behind ``first``, its further lines behind ``rest``."""
    rest = " " * len(first) if rest is None else rest
    found = wrap(
        hard_spaced(text),
        width,
        initial_indent=first,
        subsequent_indent=rest,
        break_on_hyphens=False,
        break_long_words=True,
    )
    return [Line(soft_spaced(line), mood) for line in found or [first.rstrip()]]


def listed(title: str, items: Iterable[str], end: str = "", width: int = LINE_WIDTH) -> list[Line]:
    """Return ``Title: item; item; item.`` wrapped, with ``end`` behind it."""
    text = "; ".join(item for item in dict.fromkeys(items) if item)
    stop = "." if text and text[-1] not in ".!?" else ""
    return wrapped(f"{title}: {text}{stop}{'   ' if end else ''}{end}", rest="  ", width=width)


def spelled_out(title: str, items: Sequence[str], width: int = LINE_WIDTH) -> list[Line]:
    """Return each item as a paragraph of its own under a title."""
    found = [Line(title)]
    for item in items:
        found += wrapped(item, "  - ", "    ", width=width)
    return found
