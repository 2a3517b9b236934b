"""A person's own text, for repeating back and for typing anew; and what is wrong with it."""

import re

from ...units.frozen import ByValue

_SHOWN = 60
"""So many characters of what a person typed are repeated back."""

_STRAIGHT = str.maketrans({**dict.fromkeys("′’‘´", "'"), **dict.fromkeys("″”“", '"')})
_MARKED = re.compile(r"-?[\d\s./-]+'[\s-]*(?:[\d\s./-]+(?:\"|'')?)?", re.ASCII)


class Problem(ByValue, frozen=True):
    """What is wrong with a value: what was found, what is expected, and the way out.

    ``write`` is what to type instead, between the places ``at``; ``sure`` where nothing else can
    be meant. Without ``at`` it is the whole value.
    """

    found: str
    expected: str
    hint: str = ""
    write: str = ""
    sure: bool = True
    at: tuple[int, int] | None = None


def shown(text: str) -> str:
    """Return a person's own text for repeating back: cut, control characters escaped."""
    text = text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…"
    escaped = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)
    return escaped if len(escaped) <= _SHOWN else escaped[: _SHOWN - 1] + "…"


def without_note(line: str) -> str:
    """Return a line without the note behind it."""
    return re.sub(r"(^|[ \t])#.*$", "", line).rstrip(" \t")


def quoted(text: str) -> str:
    """Return the text between quote marks that TOML reads as just that text."""
    if "'" not in text:
        return f"'{text}'"
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def marks_in_words(text: str) -> str:
    """Return a dimension with feet and inch marks as words, where marks would end the quote."""
    if "'" not in text or not _MARKED.fullmatch(text.translate(_STRAIGHT)):
        return text
    plain = re.sub(r"''|\"", " in ", text.translate(_STRAIGHT))
    plain = re.sub(r"'[\s-]*", " ft ", plain)
    return " ".join(plain.split())
