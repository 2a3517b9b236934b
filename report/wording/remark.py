"""Names, numbers and lists in a sentence."""

import re
from collections.abc import Iterable, Sequence


def joined(words: Iterable[str], last: str = "and") -> str:
    """Return words as a list in a sentence: ``foot, tower and roof``."""
    items = list(words)
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def are_many(names: Sequence[str]) -> bool:
    """Return whether several are spoken of: more names than one, or one such as ``legs``."""
    one = names[0] if len(names) == 1 else ""
    return len(names) > 1 or (one.endswith("s") and not one.endswith(("ss", "us", "is")))


def counted(number: int, one: str, many: str | None = None) -> str:
    """Return a number with its noun: ``one stake``, ``4 stakes``."""
    words = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
    said = words[number] if 0 <= number < len(words) else f"{number:,}"
    return f"{said} {one if number == 1 else many or one + 's'}"


_NOUN = re.compile(r"\b(stake|anchor|pad|pier|log|bolt|weight|guy|post)\b")


def several_of(kind: str) -> str:
    """Return the name of a kind for several: ``rebar stakes 1/2 in x 36 in``."""
    return _NOUN.sub(r"\1s", kind, count=1)


def few(names: Sequence[str], last: str = "and", most: int = 3) -> str:
    """Return at most so many of the names as a list in a sentence, and how many more."""
    more = len(names) - most
    return joined([*names[:most], f"{more} more"] if more > 0 else names, last)


def capital(text: str) -> str:
    """Return a text as a sentence begins."""
    return f"{text[:1].upper()}{text[1:]}"


def cut_short(text: str | None, most: int) -> str | None:
    """Return a text with its end cut off where it is longer than ``most`` characters."""
    if text is None or len(text) <= most:
        return text
    return f"{text[: most - 3].rstrip()}..."
