"""How near together fasteners may stand where a number of them is proposed."""

from functools import cache

from ... import references
from ...materials.fastener import Fastener

SPACING = 10.0
"""Least spacing in diameters at which nails, wood screws and staples are offered: judgement, nails
in softwood."""

_THICK = ("bolt", "lag screw")


def least_apart(fastener: Fastener) -> float:
    """Return how far apart in m, middle to middle, fasteners are offered; crowns end to end.

    Source of bolts and lag screws: NDS 2018 Table 12.5.1B.
    """
    if fastener.kind in _THICK:
        return _rule("least") * fastener.diameter
    return SPACING * fastener.diameter + (fastener.crown or 0.0)


def from_end(fastener: Fastener, predrilled: bool) -> float:
    """Return how far in m a nail, screw or staple stands from the end of a piece at least.

    Source: NDS 2018 Commentary, recommended; of staples by their leg.
    """
    return _rule("end in lead holes" if predrilled else "end") * fastener.diameter


def from_edge(fastener: Fastener) -> float:
    """Return how far in m a nail, screw or staple stands from an edge at least, as above."""
    return _rule("edge") * fastener.diameter


def spacing_share(fastener: Fastener, spacing: float | None) -> float:
    """Return which part of its value a fastener keeps at a spacing in m; 0 where too near.

    1 where it stands alone. Bolts and lag screws lose below their full spacing in proportion.
    Source: NDS 2018 12.5.1.
    """
    if spacing is None:
        return 1.0
    if spacing < least_apart(fastener) * (1.0 - 1.0e-9):
        return 0.0
    if fastener.kind not in _THICK:
        return 1.0
    return min(spacing / (_rule("full value") * fastener.diameter), 1.0)


@cache
def _rule(name: str) -> float:
    return float(references.table("wood/fastener_spacing").one("rule", name)["value"])
