"""A starting file for each kind of piece: what was answered, and sizes that go with it."""

from collections.abc import Callable, Mapping
from pathlib import Path

from .questions import Answers
from .starting_posts import arbor, sign, well
from .starting_site import head
from .starting_towers import post, tower, wheel

_PARTS: Mapping[str, tuple[str, Callable[[Answers], list[str]]]] = {
    "tower": ("Garden tower", tower),
    "well": ("Wishing well", well),
    "post": ("Garden post", post),
    "sign": ("Yard sign", sign),
    "arbor": ("Garden arbor", arbor),
    "wheel": ("Wheel of blades", wheel),
}

READY: Mapping[str, str] = {
    "cut-out": "Cut-out figure",
    "barn": "Mini barn",
    "mailbox": "Mailbox",
    "birdhouse": "Birdhouse on a post",
    "footbridge": "Footbridge",
    "swing": "Garden swing",
}
"""Kinds of which only the place is asked, and what each file's design is called."""

_FOLDER = Path(__file__).parent / "pieces"


def starting_file(kind: str, answers: Answers) -> str:
    """Return the text of a starting file for a kind of piece. KeyError where there is no such.

    Pieces with too many sizes to ask for come with common ones, to be changed in the file.
    """
    if kind in READY:
        parts_text = (_FOLDER / f"{kind}.toml").read_text(encoding="utf-8")
        return "\n".join((head(answers, READY[kind]), parts_text))
    name, parts = _PARTS[kind]
    return "\n".join((head(answers, name), *parts(answers)))
