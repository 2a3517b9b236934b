"""The shop: what a seller says once for all designs, in ``shop.toml`` beside them."""

from pathlib import Path

from ...design.file.lone_table import read_lone_table
from ...design.reader.row import Row
from ...design.reader.schema import Key, TableSpec
from ...units.frozen import ByValue
from .seller_words import WITHOUT, overstated

SHOP_FILE = "shop.toml"


class Shop(ByValue, frozen=True):
    """Who sells the pieces: maker, how to reach them, where, and a sentence to close with."""

    maker: str | None = None
    contact: str | None = None
    country: str | None = None
    wording: str | None = None
    file: str = ""


def shop_file(design_file: str) -> Path | None:
    """Return the ``shop.toml`` nearest to a design's file, None where there is none.

    That of its folder, else of the folders above it, up to the one that the command runs in.
    """
    folder = Path(design_file).parent
    here = Path.cwd()
    above = [folder]
    try:
        full = folder.resolve()
        if full.is_relative_to(here):
            above += [full.parents[i] for i in range(len(full.relative_to(here).parts))]
        return next((each / SHOP_FILE for each in above if _is_there(each / SHOP_FILE)), None)
    except (OSError, ValueError):
        return None


def _is_there(path: Path) -> bool:
    """Return whether something of that name is there, a link that leads nowhere too."""
    return path.is_symlink() or path.exists()


def read_shop(path: Path) -> Shop:
    """Return the shop in a file. DesignError with everything that is wrong with it."""
    return read_lone_table(path, SHOP, f"a {SHOP_FILE}")


def _shop(row: Row) -> Shop | None:
    for key in ("maker", "contact", "wording"):
        word = overstated(row.text(key) or "")
        if word is not None:
            row.refuse(key, f"no '{word.word}' in a listing: {word.reason}", WITHOUT)
    if row.wrong:
        return None
    return Shop(
        row.text("maker"),
        row.text("contact"),
        row.text("country"),
        row.text("wording"),
        row.reading.file,
    )


SHOP = TableSpec(
    "shop",
    Shop,
    (
        Key("maker", "text", hint="maker = 'Harbour Garden Works'"),
        Key("contact", "text"),
        Key("country", "text"),
        Key("wording", "text"),
    ),
    _shop,
    words={
        "name": "'maker'",
        "seller": "'maker'",
        "shop": "'maker'",
        "email": "'contact'",
        "e-mail": "'contact'",
        "phone": "'contact'",
        "address": "'contact'",
        "website": "'contact'",
        "text": "'wording'",
        "closing": "'wording'",
        "sentence": "'wording'",
        "units": "it belongs under [design] of each design",
    },
)
