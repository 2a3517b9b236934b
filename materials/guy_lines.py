"""What a rope's or cable's name means: its breaking load by kind and size, ends, stretch."""

from functools import cache

from .. import references, units
from ..references import TableRow
from ..units.frozen import ByValue

STRETCH_AT = 0.2
"""Of the breaking load, at which the stretch of a line is stated."""


class End(ByValue, frozen=True):
    """How a line is made fast, and the share of its breaking load that this leaves."""

    name: str
    of: str
    keeps: float
    note: str
    source: str
    confidence: str


class GuyLine(ByValue, frozen=True):
    """A rope or cable: breaking load in N when new and dry, the lowest of those published.

    ``of`` is ``"rope"`` or ``"cable"``. ``end`` is how it is made fast unless the builder says
    otherwise. ``wet_share`` of the breaking load is left when wet. ``stiffness`` in N is the pull
    over the strain that it causes (EA), at a fifth of the breaking load. ``confidence`` is that of
    the breaking load.
    """

    name: str
    of: str
    diameter: float
    breaking: float
    wet_share: float
    stiffness: float
    end: End
    note: str
    source: str
    confidence: str


def find_line(name: str) -> GuyLine:
    """Return the line of exactly this name (one of `line_names`). KeyError where there is none."""
    try:
        return _lines()[name]
    except KeyError:
        raise KeyError(f"there is no rope or cable {name!r}") from None


def line_names() -> list[str]:
    """Return every name that `find_line` knows, kind by kind, thin ones first."""
    return list(_lines())


def all_lines() -> list[GuyLine]:
    """Return every rope and cable, to be shown as a table."""
    return list(_lines().values())


@cache
def end(name: str) -> End:
    """Return the way of making fast of exactly this name (one of `ends`). KeyError: none."""
    row = references.table("ground/rope_ends").one("end", name)
    keeps = float(row["keeps"])
    return End(name, row["of"], keeps, row["note"], row["source"], row["confidence"])


def ends(of: str) -> list[str]:
    """Return the ways of making fast a ``"rope"`` or a ``"cable"``."""
    return [row["end"] for row in references.table("ground/rope_ends").where("of", of)]


@cache
def _lines() -> dict[str, GuyLine]:
    return {
        f"{kind['name']} {size}": _line(kind, size, rows)
        for kind in references.table("ground/guy_line_kinds").rows
        for size, rows in sorted(_by_size(kind).items(), key=lambda item: _metres(item[0]))
    }


def _by_size(kind: TableRow) -> dict[str, list[TableRow]]:
    """Return a kind's published rows by size as written: ``'1/4 in'``, and ``'6 mm'``."""
    found: dict[str, list[TableRow]] = {}
    for row in references.table(f"ground/{kind['table']}").rows:
        if "material" in row and row["material"] not in kind["material"].split("|"):
            continue
        for unit in ("in", "mm"):
            if row.get(f"diameter_{unit}"):
                found.setdefault(f"{row[f'diameter_{unit}']} {unit}", []).append(row)
    return found


def _line(kind: TableRow, size: str, rows: list[TableRow]) -> GuyLine:
    lowest = min(rows, key=lambda row: float(row[kind["column"]]))
    breaking = float(lowest[kind["column"]]) * units.factor("lbf")
    return GuyLine(
        name=f"{kind['name']} {size}",
        of=kind["of"],
        diameter=_metres(size),
        breaking=breaking,
        wet_share=float(kind["wet_share"]),
        stiffness=STRETCH_AT * breaking / (float(kind["stretch_percent"]) / 100.0),
        end=end(kind["end"]),
        note=kind["note"],
        source=f"{lowest['source']}; {kind['source']}",
        confidence=lowest["confidence"],
    )


def _metres(size: str) -> float:
    return units.to_si(size, "length")
