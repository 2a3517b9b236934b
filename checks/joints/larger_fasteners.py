"""Which fastener is tried next where one does not hold: the next larger of its kind, or screws."""

from collections.abc import Iterator
from functools import cache
from math import ceil

from ... import references
from ...materials import fasteners
from ...materials.fastener import Fastener
from ...materials.fastener_sizes import fastener_names
from ..judged.build_steps import INCH

_MM = 0.001
_SORTS = ("common", "box", "sinker", "finish")


def larger(now: Fastener, metric: bool = False) -> Iterator[Fastener]:
    """Return larger fasteners of the same kind, the next first; ``metric`` as they are sold so.

    Nails by the penny and carriage bolts are sold in inches only.
    """
    match now.kind:
        case "wood screw" | "deck screw" | "lag screw" | "staple":
            yield from _sized(now, metric)
        case "nail":
            yield from _nails(now)
        case "bolt":
            yield from _bolts(now, metric)
        case _:
            return


def screws(metric: bool = False) -> Iterator[Fastener]:
    """Return wood screws that may stand in place of nails and staples, the least first."""
    return _every("wood screw", metric)


def lag_screws(metric: bool = False) -> Iterator[Fastener]:
    """Return lag screws that may stand in place of nails and wood screws, the least first."""
    return _every("lag screw", metric)


def _every(kind: str, metric: bool) -> Iterator[Fastener]:
    lengths = _sold(kind, "length in mm" if metric else "length in inches")
    for size in _sizes(kind, metric):
        for length in lengths:
            yield fasteners.find_fastener(_called(kind, size, float(length), metric))


def _called(kind: str, size: str, length: float, metric: bool) -> str:
    """Return what a size so many inches, or mm, long is called in a shop."""
    if not metric:
        return f"{size} {kind} {_inches(length)} in"
    if kind in ("wood screw", "deck screw"):
        return f"{size} x {length:.0f} mm {kind}"
    return f"{size} {kind} {length:.0f} mm"


def _sizes(kind: str, metric: bool) -> tuple[str, ...]:
    """Return what is sold; staples go by their gauge everywhere."""
    return (_sold(kind, "metric size") if metric else ()) or _sold(kind, "size")


def _bolts(now: Fastener, metric: bool) -> Iterator[Fastener]:
    """Return thicker bolts of the same length, to the next that is sold, and head."""
    carriage = "carriage" in now.name.casefold()
    head, metric = ("carriage bolt", False) if carriage else ("bolt", metric)
    unit, step = (_MM, 10.0) if metric else (INCH, 0.25)
    length = step * ceil((now.length or 0.0) / unit / step - 1.0e-3)
    for size in _sizes("bolt", metric):
        if fasteners.find_fastener(f"{size} {head}").diameter > now.diameter * (1.0 + 1.0e-6):
            yield fasteners.find_fastener(_called(head, size, length, metric))


def _sized(now: Fastener, metric: bool) -> Iterator[Fastener]:
    length = (now.length or 0.0) * (1.0 + 1.0e-6)
    for found in _every(now.kind, metric):
        thicker = found.diameter > now.diameter * (1.0 + 1.0e-6)
        alike = abs(found.diameter - now.diameter) <= 1.0e-6
        reach = found.length or 0.0
        if (alike and reach > length) or (thicker and reach * (1.0 + 2.0e-6) >= length):
            yield found


def _nails(now: Fastener) -> Iterator[Fastener]:
    """Return the larger nails of the same sort, by length and then by diameter."""
    sort = next((word for word in _SORTS if word in now.name.casefold()), None)
    if sort is None:
        return
    named = [name for name in fastener_names() if sort in name and name.endswith("nail")]
    alike = [fasteners.find_fastener(name) for name in named]
    size = (now.length or 0.0, now.diameter)
    longer = [one for one in alike if one.length and (one.length, one.diameter) > size]
    yield from sorted(longer, key=lambda one: (one.length or 0.0, one.diameter))


@cache
def _sold(kind: str, measure: str) -> tuple[str, ...]:
    """Return the sizes or lengths that shops keep of a kind of fastener, the least first."""
    rows = references.table("wood/fasteners_sold").where("kind", kind)
    return tuple(row["value"] for row in rows if row["measure"] == measure)


def _inches(length: float) -> str:
    whole, rest = divmod(length, 1.0)
    part = {0.0: "", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}.get(round(rest, 6))
    if part is None:
        return f"{length:.4g}"
    return " ".join(word for word in (f"{whole:.0f}" if whole else "", part) if word)
