"""What sentences need of a piece besides its verdict: gathered once, no sentence asks for more."""

from dataclasses import dataclass

from ..checks.examination import Examination
from .amounts import Amounts
from .held_words import hold_short, holders
from .remark import counted
from .stand import hold_downs


@dataclass(frozen=True)
class Facts:
    """Slots for the messages of one piece: its wind, ground, what holds it, or would.

    ``anchors`` is the plural of what is set at its foot: stakes, anchors, bolts. ``on`` tells on
    which part each part stands. ``posts`` are those in the ground, in words.
    """

    amounts: Amounts
    name: str
    file: str
    wind: str
    asked: str
    ground: str
    anchors: str
    holders: str
    own: str
    posts: str
    people: str
    on: dict[str, str]


def facts_of(found: Examination) -> Facts:
    """Return the slots that the messages of a design are filled from."""
    amounts = Amounts(found.design.units == "metric")
    wind = amounts.gust(found.site.wind, "near")
    posts = found.posts
    return Facts(
        amounts=amounts,
        name=found.design.name,
        file=found.design.file or "FILE",
        wind=wind,
        asked=_ASKED.get(found.site.method, "{wind} map wind of {method}").format(
            wind=wind, method=found.site.method
        ),
        ground=found.site.ground,
        anchors=hold_downs(found) if posts is None else "posts",
        holders=holders(found) if found.held else "",
        own=hold_short(found) if found.held else "",
        posts="" if posts is None else _posts(len(posts.part)),
        people="a child" if found.site.people == "children" else "a person",
        on={p.name: p.place.reference for p in found.design.parts if p.place.reference is not None},
    )


def _posts(count: int) -> str:
    """Return posts with their verb: ``post gives``, ``four posts give``."""
    return "post gives" if count == 1 else f"{counted(count, 'post')} give"


_ASKED = {"forecast": "{wind} you asked", "gust": "{wind} at the piece that you asked"}
"""How the wind asked for is spoken of, by the site's method."""
