"""What the page takes from the command: it knows none itself, and is handed what they do."""

from collections.abc import Callable, Mapping
from pathlib import Path

from ..design.model import Design
from ..report.printed.shop import Shop
from ..units.frozen import ByValue

Write = Callable[[Path, bytes, bool], str]
"""Writes a file whole, over an old one or not; returns why it could not, or nothing."""


class Commands(ByValue, frozen=True):
    """What the commands do, as far as the page does the same.

    ``kinds`` says of each kind of piece that ``starts`` begins a file of, metric or not, what it
    is. ``changed`` returns the text of a design with what differs in another, ValueError where the
    text has not the form for it. ``shop`` is that of a design's file, ``with_shop`` a design with
    what the shop says for it. DesignError where the shop's file is wrong.
    """

    kinds: Mapping[str, str]
    starts: Callable[[str, bool], str]
    changed: Callable[[Design, Design, Path], str]
    shop: Callable[[str], Shop]
    with_shop: Callable[[Design, Shop], Design]
    write: Write
