"""How far fasteners stand from ends, edges and each other by NDS, so that wood does not split."""

from functools import cache

from .... import references
from ....materials.fastener import Fastener
from ....units import INCH
from ..terms.answers import Room

NDS_SPACING = "NDS 2018 12.5.1 and its Commentary, Tables C12.1.5.7 and C12.1.6.6"

_THICK = ("bolt", "lag screw")
_IN_LEAD_HOLES = " in lead holes"


def room_in_wood(
    fastener: Fastener, *, predrilled: bool, used: float = 1.0, slender: float = 6.0
) -> Room:
    """Return the room that a fastener needs in wood of one grain.

    Bolts and lag screws hold less, in proportion, nearer than in full room: ``used`` is which part
    of what one holds in full is asked of it; ``slender`` the lesser length in wood over the
    diameter. Source: NDS 2018 Tables 12.5.1A to D; for nails, wood screws and staples (by their
    leg, crowns end to end) its Commentary, Tables C12.1.5.7 and C12.1.6.6.

    >>> from yardfast.materials import fasteners
    >>> room = room_in_wood(fasteners.find_fastener("8d common nail"), predrilled=False)
    >>> round(room.end / INCH, 3), round(room.edge / INCH, 4)
    (1.965, 0.3275)
    """
    D = fastener.diameter
    if fastener.kind not in _THICK:
        crown = fastener.crown or 0.0
        rule = {each: _driven(each, predrilled) for each in ("end", "along", "across")}
        return Room(
            rule["end"] * D,
            _rule("edge") * D,
            rule["along"] * D + crown,
            rule["across"] * D + crown,
        )
    apart = max(_rule("least"), min(used, 1.0) * _rule("full value"))
    end = max(_rule("end least"), min(used, 1.0) * _rule("end full value"))
    return Room(
        end * D, _rule("loaded edge") * D, max(apart, _between_rows(slender)) * D, apart * D
    )


def room_in_panel(fastener: Fastener, *, predrilled: bool, used: float = 1.0) -> Room:
    """Return the room that a fastener needs in the face of plywood or OSB: its plies cross.

    Source: APA for edges of thin fasteners; of others as in wood across its grain (judgement).
    """
    wood = room_in_wood(fastener, predrilled=predrilled, used=used, slender=0.0)
    edge = wood.edge if fastener.kind in _THICK else _rule("edge of a panel") * INCH
    return Room(edge, edge, wood.across, wood.across)


def needs_lead_holes(fastener: Fastener, gravity: float | None) -> bool:
    """Return whether a fastener needs a lead hole in wood of that specific gravity.

    Lag screws always, wood screws in dense wood. Source: NDS 2018 12.1.4.2 and 12.1.5.2.
    """
    dense = (gravity or 0.0) > _rule("dense wood")
    return fastener.kind == "lag screw" or (fastener.kind == "wood screw" and dense)


def _driven(rule: str, predrilled: bool) -> float:
    return _rule(rule + _IN_LEAD_HOLES if predrilled else rule)


def _between_rows(slender: float) -> float:
    """Return how many diameters lie between rows that are pushed across the grain."""
    low, high = _rule("rows over slenderness up to 2"), _rule("rows over slenderness from 6")
    return low + (high - low) * min(max((slender - 2.0) / 4.0, 0.0), 1.0)


@cache
def _rule(name: str) -> float:
    return float(references.table("wood/fastener_spacing").one("rule", name)["value"])
