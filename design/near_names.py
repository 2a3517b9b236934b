"""Names for people to choose from: the nearest to what they wrote, and all of them."""

from collections.abc import Sequence


def meant(word: str, names: Sequence[str]) -> str:
    """Return a hint naming the nearest of ``names``, or nothing if none is near."""
    near = nearest(word, names)
    return f"'{near}'?" if near else ""


def nearest(word: str, names: Sequence[str]) -> str | None:
    """Return the nearest name, or None if none is near."""
    from difflib import get_close_matches  # noqa: PLC0415  only where something is wrong

    word = " ".join(word[:80].casefold().split())
    small = {name.casefold(): name for name in names}
    near = get_close_matches(word, list(small), n=1, cutoff=0.6)
    if near:
        return small[near[0]]
    within = [name for key, name in small.items() if len(word) > 2 and word in key]
    return within[0] if within else None


MOST_LISTED = 20


def listed(names: Sequence[str], word: str = "") -> str:
    """Return names between quote marks, parted by commas; of very many the nearest to ``word``."""
    if len(names) > MOST_LISTED:
        from difflib import get_close_matches  # noqa: PLC0415  only where something is wrong

        small = {name.casefold(): name for name in names}
        near = get_close_matches(word[:80].casefold(), list(small), n=3, cutoff=0.3)
        names = [small[one] for one in near] or list(names)[:3]
        return ", ".join(f"'{name}'" for name in names) + f", … ({len(small)} in all)"
    return ", ".join(f"'{name}'" for name in names)
