"""What is typed behind ``--vary``: 'foot.across=18 in..36 in', with so many steps between."""

from collections.abc import Sequence

from ... import units
from ...checks.sweep import Vary
from ...units import Quantity

MOST_PLACES = 1000
SHAPE = "foot.across=18 in..36 in"


class VaryError(ValueError):
    """What is typed is no size to vary; its text says what is expected."""


def varied_sizes(typed: Sequence[str], steps: int) -> tuple[Vary, ...]:
    """Return one or two sizes to vary, each over ``steps`` values. VaryError where it is none."""
    if len(typed) > 2:
        raise VaryError("--vary once or twice: a picture has two sides")
    if steps ** len(typed) > MOST_PLACES:
        raise VaryError(f"at most {MOST_PLACES:,} designs: fewer --steps")
    found = tuple(_vary(each, steps) for each in typed)
    if len({each.name for each in found}) < len(found):
        raise VaryError("two sizes that differ behind --vary")
    return found


def _vary(typed: str, steps: int) -> Vary:
    name, equals, span = typed.partition("=")
    of, point, key = name.strip().rpartition(".")
    low, dots, high = span.partition("..")
    if not (equals and point and dots and of and key.isidentifier()):
        raise VaryError(f"--vary '{SHAPE}': a part and its key, from and to")
    return Vary(of, key, _between(low.strip(), high.strip(), steps))


def _between(low: str, high: str, steps: int) -> tuple[str | float, ...]:
    """Return values evenly spaced, in the unit of the first; whole numbers stay whole."""
    ends = _number(low), _number(high)
    if ends[0] is not None and ends[1] is not None:
        whole = ends[0].is_integer() and ends[1].is_integer()
        spread = _spread(ends[0], ends[1], steps)
        return tuple(dict.fromkeys(round(v) if whole else float(units.plain(v, 6)) for v in spread))
    try:
        first, last = units.Q(low), units.Q(high)
        if first.dimensionality != last.dimensionality:
            raise VaryError(f"from and to of one kind: '{low}' and '{high}' are not")
        unit = str(first.units)
        values = _spread(float(first.magnitude), _in(last, unit), steps)
    except units.UnitError as wrong:
        raise VaryError(str(wrong)) from None
    written = _spelt(unit)
    return tuple(dict.fromkeys(f"{units.plain(v, 5)} {written}" for v in values))


def _number(text: str) -> float | None:
    plain = text.removeprefix("-")
    return float(text) if plain.replace(".", "", 1).isdecimal() and len(plain) < 16 else None


def _in(value: Quantity, unit: str) -> float:
    return float(value.to(unit).magnitude)


def _spread(low: float, high: float, steps: int) -> list[float]:
    if low == high:
        raise VaryError("two ends that differ")
    return [low + (high - low) * k / (steps - 1) for k in range(steps)]


def _spelt(unit: str) -> str:
    """Return a unit as people write it."""
    known = units.by_spelling()
    short = [each for kind in units.UNIT_KINDS.values() for each in kind.spellings]
    return next((each for each in short if each in known and known[each].name == unit), unit)
