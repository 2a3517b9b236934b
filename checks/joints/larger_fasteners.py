"""Which fastener is tried next where one does not hold: the next larger of its kind, or screws."""

from collections.abc import Iterator
from dataclasses import replace

from ...materials import fasteners
from ...materials.fastener import Fastener
from ..build_steps import INCH

_SCREW_LENGTHS = (1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 3.5, 4.0)
_LAG_LENGTHS = (1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0)
_STAPLE_LENGTHS = (1.0, 1.25, 1.5, 1.75, 2.0)
_SCREW_SIZES = ("#6", "#8", "#10", "#12", "#14")
_DECK_SIZES = ("#8", "#9", "#10")
_LAG_SIZES = ("1/4", "5/16", "3/8", "1/2")
_BOLT_SIZES = ("1/4", "5/16", "3/8", "1/2", "5/8", "3/4")
_GAUGES = ("16 ga", "15 ga", "14 ga")
_SORTS = ("common", "box", "sinker", "finish")


def larger(now: Fastener) -> Iterator[Fastener]:
    """Return larger fasteners of the same kind, the next first."""
    match now.kind:
        case "wood screw":
            yield from _sized(now, "wood screw", _SCREW_SIZES, _SCREW_LENGTHS)
        case "deck screw":
            yield from _sized(now, "deck screw", _DECK_SIZES, _SCREW_LENGTHS)
        case "lag screw":
            yield from _sized(now, "lag screw", _LAG_SIZES, _LAG_LENGTHS)
        case "staple":
            yield from _sized(now, "staple", _GAUGES, _STAPLE_LENGTHS)
        case "nail":
            yield from _nails(now)
        case "bolt":
            yield from _bolts(now)
        case _:
            return


def screws() -> Iterator[Fastener]:
    """Return wood screws that may stand in place of nails and staples, the least first."""
    for size in _SCREW_SIZES:
        for length in _SCREW_LENGTHS:
            yield fasteners.find(f"{size} wood screw {_inches(length)} in")


def lag_screws() -> Iterator[Fastener]:
    """Return lag screws that may stand in place of nails and wood screws, the least first."""
    for size in _LAG_SIZES:
        for length in _LAG_LENGTHS:
            yield fasteners.find(f"{size} lag screw {_inches(length)} in")


def _bolts(now: Fastener) -> Iterator[Fastener]:
    """Return thicker bolts of the same length and head."""
    head = "carriage bolt" if "carriage" in now.name.casefold() else "bolt"
    for size in _BOLT_SIZES:
        found = replace(fasteners.find(f"{size} {head}"), length=now.length)
        if found.diameter > now.diameter * (1.0 + 1.0e-6):
            length = (now.length or 0.0) / INCH
            yield replace(found, name=f"{size} {head} {_inches(length)} in")


def _sized(
    now: Fastener, kind: str, sizes: tuple[str, ...], lengths: tuple[float, ...]
) -> Iterator[Fastener]:
    length = (now.length or 0.0) / INCH
    for size in sizes:
        for inches in lengths:
            found = fasteners.find(f"{size} {kind} {_inches(inches)} in")
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


def _inches(length: float) -> str:
    whole, rest = divmod(length, 1.0)
    part = {0.0: "", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}.get(round(rest, 6))
    if part is None:
        return f"{length:.4g}"
    return " ".join(word for word in (f"{whole:.0f}" if whole else "", part) if word)
