"""What sentences need of a piece besides its verdict: gathered once, no sentence asks for more."""

import numpy as np

from ...checks.examination import Examination
from ...checks.holder import Holder, holder_of, would_hold
from ...checks.how_often import how_often
from ...checks.sizing.anchor_pull import people_pull
from ...checks.stated.planted import deeper, planted
from ...design.structure import Structure
from ...units.frozen import ByValue
from ..messages.messages import ASK_ANYWHERE
from ..wording.amounts import Amounts
from ..wording.dig_line import dig_line
from ..wording.faults import clean
from ..wording.remark import counted
from .held_words import of_what, one_word, short_of
from .how_often_words import how_often_said
from .posts_words import deeper_said, posts_said


class Facts(ByValue, frozen=True):
    """Slots for the messages of one piece: its wind, ground, what holds it, or would.

    ``size`` is how tall, wide and heavy it is. ``anchors`` is the plural of what is set at its
    foot: stakes, anchors, bolts; ``own`` what its file holds it with, ``holders`` of which kind and
    how many, ``lacks`` what of that fails. ``posts`` are those in the ground with their verb,
    ``planted`` how deep they stand, ``deeper`` how deep they should. ``people`` is who pushes,
    ``people_pull`` what each anchor would have to hold against them, N. ``checked`` is how many
    joints the file names, ``parts`` how many parts it has. ``ask`` is whom to ask before digging,
    ``setting`` what is dug or driven. ``just`` tells of a code by which a pass is no more,
    ``often`` how often the gust comes that moves it, ``laid_down`` that it is meant to be.
    """

    amounts: Amounts
    name: str
    file: str
    size: str
    wind: str
    bare_wind: str
    asked: str
    ground: str
    anchors: str
    own: str
    holders: str
    posts: str
    planted: str
    deeper: str
    people: str
    people_pull: float
    checked: int
    parts: int
    ask: str
    setting: str
    just: bool
    least_wind: bool
    often: str
    laid_down: bool
    look_again: tuple[str, ...] = ()


def facts_of(found: Examination) -> Facts:
    """Return the slots that the messages of a design are filled from."""
    amounts = Amounts(found.design.units == "metric")
    wind = amounts.gust(found.site.wind, "near")
    posts = found.posts
    method = found.site.method
    return Facts(
        amounts=amounts,
        name=found.design.name,
        file=clean(found.design.file) if found.design.file else "FILE",
        size=_size(found.structure, amounts, planted=posts is not None),
        wind=wind,
        bare_wind=amounts.bare_gust(found.site.wind, "near"),
        asked=_ASKED.get(method, "{wind} map wind of {method}").format(wind=wind, method=method),
        ground=found.site.ground,
        anchors=f"{one_word(would_hold(found))}s" if posts is None else "posts",
        own=short_of(found.held),
        holders=of_what(found.held),
        posts="" if posts is None else _posts(len(posts.part)),
        planted=posts_said(planted(found), amounts),
        deeper=deeper_said(deeper(found), amounts),
        people="a child" if found.site.people == "children" else "a person",
        people_pull=people_pull(found),
        checked=len(found.joints),
        parts=len(found.design.parts),
        ask=ASK_ANYWHERE if found.site.country is None else dig_line(found.site.country),
        setting="dig" if posts is not None else _SETTING[holder_of(found)],
        just=method.startswith("ASCE"),
        least_wind=found.minimum_governs,
        laid_down=found.design.laid_down,
        often=how_often_said(how_often(found), amounts),
        look_again=tuple(f"{n.part}, {n.key}: {n.found}: {n.hint}" for n in found.look_again),
    )


_ASKED = {"forecast": "{wind} you asked", "gust": "{wind} at the piece that you asked"}
"""How the wind asked for is spoken of, by the site's method."""

_SETTING = {
    Holder.STAKE: "drive stakes",
    Holder.BOLT: "drill",
    Holder.GROUND_ANCHOR: "set anchors",
}


def _size(structure: Structure, amounts: Amounts, *, planted: bool) -> str:
    """Return how tall it is, how wide its foot, how heavy: ``5 ft tall, 24 in foot, 51 lb``."""
    said = [f"{amounts.length(structure.height)} tall"]
    if not planted and len(structure.footprint):
        sides = sorted(float(side) for side in np.ptp(structure.footprint, axis=0))
        said.append(f"{amounts.length(sides[0])} foot")
    return ", ".join([*said, amounts.mass(structure.mass("typical"))])


def _posts(count: int) -> str:
    """Return posts with their verb: ``post gives``, ``four posts give``."""
    return "post gives" if count == 1 else f"{counted(count, 'post')} give"
