"""Words that a text for a listing never has, since a calculation does not bear them out."""

import re
import unicodedata
from functools import cache

from ... import references
from ...units.frozen import ByValue

TESTED = "tested"
WITHOUT = "leave the word out: the text says at which gust to tie the piece down"
_OWN = re.compile(r"\bnot tested\b")
"""Where the text itself says what was not done: the one place of that word."""


class SellerWord(ByValue, frozen=True):
    """A word that promises too much, the pattern by which it is known, and why it is none."""

    word: str
    pattern: re.Pattern[str]
    reason: str


def overstated(text: str, allowed: frozenset[str] = frozenset()) -> SellerWord | None:
    """Return the first word of a person's text that promises too much, None where there is none.

    ``allowed`` names words that this design has earned: "tested", where a dated test stands in it.
    """
    plain = _plain(text)
    return next(
        (word for word in _words() if word.word not in allowed and word.pattern.search(plain)),
        None,
    )


def overstated_in_print(text: str, allowed: frozenset[str] = frozenset()) -> SellerWord | None:
    """Return the same of a whole text, in which our own "not tested" is no promise."""
    return overstated(_OWN.sub(" ", text), allowed)


@cache
def _words() -> tuple[SellerWord, ...]:
    return tuple(
        SellerWord(row["word"], re.compile(row["pattern"]), row["reason"])
        for row in references.table("seller_words").rows
    )


def _plain(text: str) -> str:
    """Return a text in small letters, unseen marks left out, dashes and blanks one blank."""
    letters = unicodedata.normalize("NFKC", text).casefold()
    seen = (
        " " if unicodedata.category(c) in ("Pd", "Zs", "Cc") or c == "_" else c
        for c in letters
        if unicodedata.category(c) not in ("Cf", "Mn")
    )
    return " ".join("".join(seen).split())
