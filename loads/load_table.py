"""The ``[[load]]`` table as people write it, and the GivenLoad that it becomes."""

from math import cos, sin

from ..design.reader.near_names import meant, quoted_names
from ..design.reader.row import Row
from ..design.reader.schema import Key, TableSpec
from .given import GivenLoad

DIRECTIONS = {
    "down": (0.0, 0.0, -1.0),
    "up": (0.0, 0.0, 1.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
}

_DIRECTION_WORDS = {
    **dict.fromkeys(("downward", "downwards"), "'down'"),
    **dict.fromkeys(("upward", "upwards"), "'up'"),
    **dict.fromkeys(("forward", "forwards", "toward me", "towards me"), "'front'"),
    **dict.fromkeys(("away", "backward", "backwards"), "'back'"),
    **dict.fromkeys(("sideways", "level", "horizontal", "side"), "'left' or 'right'?"),
    "north": "'0 deg', if north is to the back",
    "east": "'90 deg', if north is to the back",
    "south": "'180 deg', if north is to the back",
    "west": "'270 deg', if north is to the back",
}

_KEYS = (
    Key("name", "text", required=True, hint="name = 'swing'"),
    Key("force", "force", required=True),
    Key("at", "offset", required=True, hint="at = ['0 in', '0 in', '60 in']: right, away, up"),
    Key(
        "direction",
        "angle",
        required=True,
        choices=tuple(DIRECTIONS),
        words=_DIRECTION_WORDS,
        hint="direction = 'down', or the way that it pushes on the level, such as '30 deg' "
        "clockwise from the back",
    ),
    Key("on", "text"),
)

_WORDS = {
    "load": "'force'",
    "weight": "'force', in lbf or N; what always stands there is a [[part]] with shape = 'weight'",
    "mass": "'force', in lbf or N; what always stands there is a [[part]] with shape = 'weight'",
    "pull": "'force', and 'direction' the way that it pushes or pulls",
    "height": "'at' with three lengths: right, away, up",
    "point": "'at' with three lengths: right, away, up",
    "position": "'at' with three lengths: right, away, up",
    "angle": "'direction'",
    "towards": "'direction'",
    "toward": "'direction'",
    "of": "'on', the part that it acts on",
    "to": "'on', the part that it acts on",
    "part": "'on', the part that it acts on",
    "under": "'on', the part that it acts on",
}


def _load(row: Row) -> GivenLoad | None:
    name, force, at = row.text("name"), row.quantity("force"), row.offset("at")
    way, on = row.named("direction"), row.text("on")
    names = row.reading.part_names
    if on is not None and on not in names:
        row.refuse("on", f"the name of a part: {quoted_names(names, on)}", meant(on, names))
    if name is None or force is None or at is None or way is None:
        return None
    return GivenLoad(name, force, at, _unit(way), on)


def _unit(way: str | float) -> tuple[float, float, float]:
    """Return the unit vector of a named direction, or of a level one by its compass azimuth."""
    if isinstance(way, str):
        return DIRECTIONS[way]
    return sin(way), cos(way), 0.0


LOAD = TableSpec("load", GivenLoad, _KEYS, _load, many=True, words=_WORDS)
