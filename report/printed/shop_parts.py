"""Parts of a page for the shop: a table whose rows are ticked off, with its note and pictures."""

from collections.abc import Sequence

from ...units.frozen import ByValue, values_by_name
from ..templates.typeset import PAPER_SIZES, typeset


class ShopPart(ByValue, frozen=True):
    """A head, a note, a table by its columns (name, share of the width), and pictures."""

    head: str
    note: str = ""
    columns: tuple[tuple[str, float], ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    pictures: tuple[tuple[str, str], ...] = ()
    across: int = 2


def shop_page(title: str, facts: str, parts: Sequence[ShopPart], paper: str) -> bytes:
    """Return pages of so many parts as PDF on ``paper``, "a4" or "letter"."""
    data = {
        "title": title,
        "facts": facts,
        "paper": PAPER_SIZES[paper][2],
        "parts": [values_by_name(part) for part in parts],
    }
    return typeset("shop_page", data)
