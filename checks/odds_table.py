"""The ``[[odds]]`` table as people write it: how far from what is written an input may lie."""

from math import inf

from ..design.bounds import Bounds
from ..design.model import Design
from ..design.reader.row import Row
from ..design.reader.schema import Key, TableSpec
from ..loads.gust.standard import AT_PIECE
from ..loads.wind.site import Site
from .spread import DISTRIBUTIONS, INPUTS, Changed, Spread, Spreads, published

_SPREAD = Bounds(0.0, 1.0, "from 0 (it does not vary) to 1", hint="0.2, a fifth either way")
FACTOR = Bounds(0.0, 10.0, "more than 0 and at most 10, times what is written", above=True)
_LOW = Bounds(0.0, 10.0, "from 0 to 10, times what is written")

_KEYS = (
    Key("name", "choice", required=True, choices=INPUTS, hint="name = 'friction'"),
    Key("spread", "number", bounds=_SPREAD),
    Key("mean", "number", bounds=FACTOR),
    Key("low", "number", bounds=_LOW),
    Key("high", "number", bounds=FACTOR),
    Key("shape", "choice", choices=DISTRIBUTIONS),
)

_WORDS = {
    **dict.fromkeys(("input", "of", "what", "on"), "'name', what varies"),
    **dict.fromkeys(("cov", "deviation", "sigma", "std", "variation"), "'spread'"),
    **dict.fromkeys(("average", "middle", "median", "bias"), "'mean'"),
    **dict.fromkeys(("min", "minimum", "least", "lower", "from"), "'low'"),
    **dict.fromkeys(("max", "maximum", "most", "upper", "to"), "'high'"),
    **dict.fromkeys(("distribution", "law", "kind"), "'shape'"),
}


def _changed(row: Row) -> Changed | None:
    name, spread = row.text("name"), row.quantity("spread")
    low, high = row.quantity("low"), row.quantity("high")
    if low is not None and high is not None and low >= high:
        row.refuse("high", f"more than 'low', which is {low:g}", f"high = {low + 0.1:g}")
    if name is None or row.wrong:
        return None
    found = Changed(name, spread, row.quantity("mean"), low, high, row.text("shape"))
    if not all(found.of(one).reaches for one in published()[name].values()):
        key = next(key for key in ("low", "high", "mean") if row.given(key))
        row.refuse(key, "bounds between which some of it lies", "leave 'low' and 'high' out")
        return None
    return found


ODDS = TableSpec("odds", Changed, _KEYS, _changed, many=True, words=_WORDS)


def spreads_of(design: Design) -> Spreads:
    """Return what varies and how, as published, save what the design says itself.

    The gust at the piece itself does not vary where it is that which the file states.
    """
    own = {one.input: one for one in design.several(Changed)}
    given = Spread("lognormal", 0.0, source="the gust at the piece is given", high=inf)
    found: dict[str, dict[str, Spread]] = {}
    for name, by_kind in published().items():
        stated = name == "gust" and design.table(Site).method == AT_PIECE
        found[name] = {
            kind: own[name].of(one) if name in own else given if stated else one
            for kind, one in by_kind.items()
        }
    return found
