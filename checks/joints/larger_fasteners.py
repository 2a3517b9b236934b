"""Which fastener is tried next where one does not hold: the next larger of its kind, or screws."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache

from ... import references
from ...materials import fasteners
from ...materials.fastener import Fastener
from ..build_steps import INCH

_SORTS = ("common", "box", "sinker", "finish")


def larger(now: Fastener) -> Iterator[Fastener]:
    """Return larger fasteners of the same kind, the next first."""
    match now.kind:
        case "wood screw" | "deck screw" | "lag screw" | "staple":
            yield from _sized(now)
        case "nail":
            yield from _nails(now)
        case "bolt":
            yield from _bolts(now)
        case _:
            return


def screws() -> Iterator[Fastener]:
    """Return wood screws that may stand in place of nails and staples, the least first."""
    for size in _sold("wood screw", "size"):
        for length in _lengths("wood screw"):
            yield fasteners.find(f"{size} wood screw {_inches(length)} in")


def lag_screws() -> Iterator[Fastener]:
    """Return lag screws that may stand in place of nails and wood screws, the least first."""
    for size in _sold("lag screw", "size"):
        for length in _lengths("lag screw"):
            yield fasteners.find(f"{size} lag screw {_inches(length)} in")


def _bolts(now: Fastener) -> Iterator[Fastener]:
    """Return thicker bolts of the same length and head."""
    head = "carriage bolt" if "carriage" in now.name.casefold() else "bolt"
    for size in _sold("bolt", "size"):
        found = replace(fasteners.find(f"{size} {head}"), length=now.length)
        if found.diameter > now.diameter * (1.0 + 1.0e-6):
            length = (now.length or 0.0) / INCH
            yield replace(found, name=f"{size} {head} {_inches(length)} in")


def _sized(now: Fastener) -> Iterator[Fastener]:
    length = (now.length or 0.0) / INCH
    for size in _sold(now.kind, "size"):
        for inches in _lengths(now.kind):
            found = fasteners.find(f"{size} {now.kind} {_inches(inches)} in")
            thicker = found.diameter > now.diameter * (1.0 + 1.0e-6)
            alike = abs(found.diameter - now.diameter) <= 1.0e-6
            if (alike and inches > length + 1.0e-6) or (thicker and inches >= length - 1.0e-6):
                yield found


def _nails(now: Fastener) -> Iterator[Fastener]:
    """Return the larger nails of the same sort, by length and then by diameter."""
    sort = next((word for word in _SORTS if word in now.name.casefold()), None)
    if sort is None:
        return
    named = [name for name in fasteners.names() if sort in name and name.endswith("nail")]
    alike = [fasteners.find(name) for name in named]
    size = (now.length or 0.0, now.diameter)
    longer = [one for one in alike if one.length and (one.length, one.diameter) > size]
    yield from sorted(longer, key=lambda one: (one.length or 0.0, one.diameter))


@cache
def _sold(kind: str, measure: str) -> tuple[str, ...]:
    """Return the sizes or lengths that shops keep of a kind of fastener, the least first."""
    rows = references.table("wood/fasteners_sold").where("kind", kind)
    return tuple(row["value"] for row in rows if row["measure"] == measure)


def _lengths(kind: str) -> list[float]:
    return [float(length) for length in _sold(kind, "length in inches")]


def _inches(length: float) -> str:
    whole, rest = divmod(length, 1.0)
    part = {0.0: "", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}.get(round(rest, 6))
    if part is None:
        return f"{length:.4g}"
    return " ".join(word for word in (f"{whole:.0f}" if whole else "", part) if word)
