"""Whom to ask before driving anything into the ground, by country."""

from ... import references
from ...checks.examination import Examination
from ...checks.holder import Holder, holder_of

ANYWHERE = "call 811 in the US, the local line elsewhere,"
ELSEWHERE = "call the local line"


def dig_line(country: str | None) -> str:
    """Return whom to ask before digging, as a clause: ``call 811``, ``call the local line``."""
    if country is None:
        return ANYWHERE
    word = " ".join(country.casefold().split())
    for row in references.table("dig_lines").rows:
        if word in (row["country"].casefold(), *row["also"].split("; ")):
            return row["ask"]
    return ELSEWHERE


def digging(examination: Examination) -> str:
    """Return what goes into the ground, of which the buried lines have to be known first."""
    if examination.posts is not None:
        return "digging"
    if not (examination.held or examination.needs_anchors):
        return "driving stakes"
    return _DIGGING[holder_of(examination)]


_DIGGING = {
    Holder.STAKE: "driving stakes",
    Holder.BOLT: "drilling or digging",
    Holder.GROUND_ANCHOR: "setting anchors",
}
