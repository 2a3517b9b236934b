"""A starting file for each kind of piece: what was answered, and sizes that go with it."""

from collections.abc import Callable, Mapping

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


def starting_file(kind: str, answers: Answers) -> str:
    """Return the text of a starting file for a kind of piece. KeyError where there is no such."""
    name, parts = _PARTS[kind]
    return "\n".join((head(answers, name), *parts(answers)))
