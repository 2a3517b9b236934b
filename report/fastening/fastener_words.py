"""Fasteners in a builder's words: several, how far they reach, how thick a cleat has to be."""

import re
from collections.abc import Iterable

from ...checks.timber.terms.capacity import Capacity
from ...materials.fastener import Fastener
from ..wording.amounts import Amounts

_JUDGED = "judgement"


def plural(fastener: str) -> str:
    """Return a fastener's name for several of them: ``#10 wood screws 3 in``."""
    return re.sub(r"\b(nail|brad|screw|bolt|staple)\b", r"\1s", fastener)


def several_fasteners(fastener: Fastener) -> str:
    """Return the same with the word that keeps its length apart from what follows.

    ``#10 wood screws 3 in long``; a name that ends in no length stays as it is.
    """
    name = plural(fastener.name)
    measured = fastener.length is not None and re.search(r" (in|mm)$", name)
    return f"{name} long" if measured and " x " not in name else name


def too_short(holds: Capacity, into: str, amounts: Amounts) -> str:
    """Return that a fastener goes in too little to count, and by how much; empty where it does not.

    ``into`` is what holds its point.
    """
    if "too short" not in holds.reasons:
        return ""
    least = amounts.length(holds.least_penetration, "up")
    has = amounts.length(holds.penetration, "down")
    return f"too short: {least} must be in {into}, this has {has}"


def thick_enough(what: str, reaches: Iterable[float], amounts: Amounts) -> str:
    """Return how thick cleats or blocks (``what``) have to be for the farthest reach into them.

    Lengths in m; empty where nothing reaches into them.
    """
    farthest = max(reaches, default=0.0)
    return f"{what} at least {amounts.length(farthest, 'up')} thick" if farthest > 0.0 else ""
