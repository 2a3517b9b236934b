"""Names for people to choose from: the nearest to what they wrote, and all of them."""

import re
from collections.abc import Iterable, Sequence

from .typed_text import shown

_ALONE = re.compile(r"'([^']+)'")
_FIRST = re.compile(r"'([^']+)'(?=\?|,? or '|, | if |; | \(| with )")

LIKE_ENOUGH = 0.75
"""A name that shares less of its letters with a word is another word: cedar is not copper."""


def plain_name(word: str) -> str:
    """Return a name without its capitals, hyphens and double blanks, for comparing."""
    return " ".join(re.sub(r"[\s_‐‑–-]+", " ", word[:80].casefold()).split()).strip(" .")


def same(word: str, names: Iterable[str]) -> str | None:
    """Return the name that a word is but for capitals, hyphens and blanks."""
    wanted = plain_name(word)
    return next((name for name in names if plain_name(name) == wanted), None)


def meant(word: str, names: Sequence[str]) -> str:
    """Return a hint naming the nearest of ``names``, or nothing if none is near.

    Names that cannot be printed, which are faults of their own, are never offered.
    """
    names = [name for name in names if name.isprintable()]
    near = misspelt(word, names) or nearest_name(word, names, LIKE_ENOUGH)
    return f"'{near}'?" if near else ""


def lone_name(answer: str) -> str | None:
    """Return the name where an answer is one name between quote marks and nothing else."""
    found = _ALONE.fullmatch(answer)
    return found[1] if found else None


def guess(answer: str) -> str | None:
    """Return the name where an answer is one name and nothing else, sure or with a '?'."""
    return lone_name(answer.removesuffix("?"))


def first(answer: str) -> str | None:
    """Return the name between quote marks that an answer offers first, sure or not."""
    found = _FIRST.match(answer)
    return found[1] if found else lone_name(answer)


def sure(word: str, hint: str, names: Iterable[str]) -> bool:
    """Return whether a hint to a word names what alone can be meant by it."""
    return lone_name(hint) is not None or (
        hint.endswith("'?") and misspelt(word, names) == first(hint) is not None
    )


def misspelt(word: str, names: Iterable[str]) -> str | None:
    """Return the one name of which a word is a slip of the pen, or None.

    A slip is a letter too few, too many, another, or two that changed places; in longer words two
    of them. Where two names are as near, none is meant surely.
    """
    wanted = plain_name(word)
    allowed = 0 if len(wanted) < 4 else 1 if len(wanted) < 8 else 2
    by_slips: dict[int, list[str]] = {}
    for name in names:
        slips = _slips(wanted, plain_name(name), allowed)
        if slips <= allowed:
            by_slips.setdefault(slips, []).append(name)
    if not by_slips:
        return None
    least = by_slips[min(by_slips)]
    return (
        least[0] if len(least) == 1 and _digits(wanted) == _digits(plain_name(least[0])) else None
    )


def nearest_name(word: str, names: Sequence[str], cutoff: float = 0.6) -> str | None:
    """Return the nearest name, or None if none is near."""
    from difflib import get_close_matches  # noqa: PLC0415  only where something is wrong

    word = plain_name(word)
    small = {plain_name(name): name for name in names}
    near = get_close_matches(word, list(small), n=1, cutoff=cutoff)
    if near:
        return small[near[0]]
    within = [name for key, name in small.items() if len(word) > 2 and word in key]
    return within[0] if within else None


MOST_LISTED = 20


def quoted_names(names: Sequence[str], word: str = "") -> str:
    """Return names between quote marks, parted by commas; of very many the nearest to ``word``."""
    if len(names) > MOST_LISTED:
        from difflib import get_close_matches  # noqa: PLC0415  only where something is wrong

        small = {name.casefold(): name for name in names}
        near = get_close_matches(word[:80].casefold(), list(small), n=3, cutoff=0.6)
        names = [small[one] for one in near] or list(names)[:3]
        return ", ".join(f"'{shown(name)}'" for name in names) + f", … ({len(small)} in all)"
    return ", ".join(f"'{shown(name)}'" for name in names)


def _slips(a: str, b: str, most: int) -> int:
    """Return how many slips part two words (optimal string alignment), or more than ``most``."""
    if abs(len(a) - len(b)) > most:
        return most + 1
    before: list[int] = []
    row = list(range(len(b) + 1))
    for i, letter in enumerate(a, 1):
        earlier, before, row = before, row, [i]
        for j, other in enumerate(b, 1):
            best = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == b[j - 2] and a[i - 2] == other:
                best = min(best, earlier[j - 2] + 1)
            row.append(best)
        if min(row) > most:
            return most + 1
    return row[-1]


def _digits(word: str) -> str:
    """Return the figures in a word: a slip never makes another number of one."""
    return "".join(letter for letter in word if letter.isdigit())
