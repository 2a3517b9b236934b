"""The units of the trade, as references/units.txt lists them: each by every spelling, in SI."""

import re
from collections.abc import Mapping
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import cast

from .faults import UnitError
from .kinds import BASES, Dims, Unit, unit_spellings

UNITS_FILE = Path(__file__).parent.parent / "references" / "units.txt"
_MARKS = {"'": "foot", '"': "inch", "°": "degree", "%": "percent"}
_TERM = re.compile(
    r"\s*(?P<op>[*/·]?)\s*(?:(?P<number>[\d.]+)|(?P<name>['\"°%]|[A-Za-z_]+))"
    r"\s*(?:(?:\^|\*\*)\s*(?P<power>-?\d)|(?P<high>[²³])|(?P<digit>[23]))?"
)
_HIGH = {"²": 2, "³": 3}


@cache
def by_spelling() -> Mapping[str, Unit]:
    """Return every unit by every spelling that references/units.txt lists."""
    known: dict[str, Unit] = {}
    for line in UNITS_FILE.read_text(encoding="utf-8").splitlines():
        if not line or line.startswith("#"):
            continue
        name, relation, *spellings = (field.strip() for field in line.split("="))
        if relation in BASES:
            unit = Unit(name, 1.0, BASES[relation])
        else:
            product = _product(relation, known)
            unit = Unit(name, product.factor, product.dims)
        known.update({spelling: unit for spelling in (name, *spellings) if spelling != "_"})
    return known


def _product(text: str, known: Mapping[str, Unit]) -> Unit:
    """Multiply out numbers and units such as ``lbf/ft^2``. KeyError names the unknown unit."""
    names, factor, dims, position = "", 1.0, (0, 0, 0, 0), 0
    while position < len(text):
        term = _TERM.match(text, position)
        if not term or (position > 0) != bool(term["op"]):
            raise KeyError(text[position:].strip())
        power = int(term["power"] or _HIGH.get(term["high"] or "") or term["digit"] or 1)
        way = -power if term["op"] == "/" else power
        if term["number"]:
            unit = Unit(term["number"], float(term["number"]), (0, 0, 0, 0))
        else:
            unit = known[_MARKS.get(term["name"], term["name"])]
        factor *= unit.factor**way
        dims = cast(Dims, tuple(a + way * b for a, b in zip(dims, unit.dims, strict=True)))
        names += f"{'/' if term['op'] == '/' else '*'}{unit.name}" + f"**{power}" * (power != 1)
        position = term.end()
    return Unit(names.lstrip("*"), factor, dims)


def find_unit(name: str, text: str, expected: str) -> Unit:
    """Return a unit by its spelling, also in other capitals where that leaves no choice."""
    try:
        return _product(name, by_spelling())
    except KeyError as unknown:
        missing = str(unknown.args[0])
    with suppress(KeyError):
        return _product(name.casefold(), _folded())
    from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

    near = get_close_matches(missing.casefold(), list(_folded()), n=1, cutoff=0.7)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    listed = "Known are " + ", ".join(unit_spellings()) if expected.endswith("unit") else ""
    raise UnitError(
        text,
        expected,
        f"{missing!r} is not a unit known here. {hint}{listed}".rstrip(". "),
        text.strip().replace(missing, near[0]) if near and text.count(missing) == 1 else "",
        sure=bool(near) and len(missing) > 4 and missing.casefold().startswith(near[0][:2]),
    )


@cache
def _folded() -> Mapping[str, Unit]:
    by_fold: dict[str, set[Unit]] = {}
    for spelling, unit in by_spelling().items():
        by_fold.setdefault(spelling.casefold(), set()).add(unit)
    return {fold: found.pop() for fold, found in by_fold.items() if len(found) == 1}


def factor(unit: str) -> float:
    """Return what one of a unit such as ``'lb/ft^3'`` is in SI. UnitError where it is unknown."""
    return find_unit(unit, unit, "a unit").factor


INCH, FOOT = factor("in"), factor("ft")
MPH, KMH = factor("mph"), factor("km/h")
POUND, POUND_FORCE = factor("lb"), factor("lbf")
PSF, PSI = factor("psf"), factor("psi")
GRAVITY = POUND_FORCE / POUND
"""Standard acceleration of free fall in m/s2 (ISO 80000-3), by which a pound-force is defined."""
