"""The doors: text as on a tape or a drawing, and pint quantities, to floats in SI and back.

The number is read here, since people write ``5'-6 1/2"``; the units come from one file,
references/units.txt, which pint reads too when a quantity is asked for. Importing this room
imports no pint.
"""

import math
from functools import cache
from typing import Any, Protocol, cast, overload

from .faults import UnitError, expected_of, figure, not_text, plain, shown_value, wrong_kind
from .frozen import ByValue
from .kinds import BASES, UNIT_KINDS, Dims, Unit, UnitKind
from .known import (
    FOOT,
    GRAVITY,
    INCH,
    KMH,
    MPH,
    POUND,
    POUND_FORCE,
    PSF,
    PSI,
    UNITS_FILE,
    by_spelling,
    factor,
    find_unit,
)
from .written import parts_of, sole_unit

__all__ = [
    "FOOT",
    "GRAVITY",
    "INCH",
    "KMH",
    "MPH",
    "POUND",
    "POUND_FORCE",
    "PSF",
    "PSI",
    "UNIT_KINDS",
    "Dimension",
    "Q",
    "Quantity",
    "UnitError",
    "by_spelling",
    "factor",
    "figure",
    "plain",
    "quantity",
    "read_dimension",
    "registry",
    "shown_value",
    "to_si",
]


class Dimension(ByValue, frozen=True):
    """A value in SI, and a sentence where the text could have meant something else."""

    value: float
    note: str | None = None


class Quantity(Protocol):
    """What is used of a pint quantity; pint's own types are partly unknown to type checkers."""

    @property
    def magnitude(self) -> Any:
        """The number alone."""
        ...

    @property
    def units(self) -> Any:
        """The unit alone."""
        ...

    @property
    def dimensionality(self) -> Any:
        """Powers of the base dimensions."""
        ...

    def to(self, other: str, /) -> "Quantity":
        """Return the same in another unit."""
        ...

    def __add__(self, other: Any, /) -> Any: ...
    def __sub__(self, other: Any, /) -> Any: ...
    def __mul__(self, other: Any, /) -> Any: ...
    def __rmul__(self, other: Any, /) -> Any: ...
    def __truediv__(self, other: Any, /) -> Any: ...
    def __lt__(self, other: Any, /) -> bool: ...
    def __gt__(self, other: Any, /) -> bool: ...


def read_dimension(text: object, kind: str, *, signed: bool = False) -> Dimension:
    """Read a dimension such as ``'4 ft 6 in'``, of the given kind (a key of KINDS), into SI.

    Anything but text is refused with the fix. A slope may be in degrees, radians or percent and is
    returned in radians. ``signed`` allows values below zero. UnitError where the text cannot be
    read whole, has no unit, or is of another kind; KeyError for an unknown kind.
    """
    wanted = UNIT_KINDS[kind]
    expected = expected_of(wanted)
    if not isinstance(text, str):
        raise not_text(text, wanted.spellings, expected)
    parts, sign, note = parts_of(text, wanted.spellings, expected)
    unit = sole_unit(parts, text, expected)
    value = sign * sum(part.number * part.unit.factor for part in parts)
    if kind == "slope" and unit.name == "percent":
        value = math.atan(value)
    elif unit.dims != wanted.dims:
        raise wrong_kind(text, unit, wanted)
    if value < 0.0 and not signed:
        raise UnitError(text, expected, "it cannot be negative here")
    return Dimension(value, note)


def Q(value: object, unit: str | None = None) -> Quantity:  # noqa: N802 - as who uses pint spells it
    r"""Return the pint quantity of a text, or of a number or numbers in a unit.

    A text such as ``"5'-6 1/2\""`` comes back in the (last) unit in which it is written, numbers
    as floats or as an array in ``unit``, a list of texts as an array in the unit of its first.
    UnitError where a text cannot be read whole or has no unit, where a unit is unknown, and for
    numbers without one.

    >>> print(f"{yf.Q('4 ft 6 in'):.1f}")
    54.0 inch
    >>> print(yf.Q(105, "mph"))
    105.0 mile_per_hour
    >>> print(yf.Q([60, 75], "mph"))
    [60.0 75.0] mile_per_hour
    """
    expected = "a number with its unit"
    if isinstance(value, str) and unit is None:
        return _of_text(value, expected)
    texts = _texts(value) if unit is None else []
    if texts:
        first, *others = (_of_text(each, expected) for each in texts)
        same = [first.magnitude, *(each.to(str(first.units)).magnitude for each in others)]
        return registry().Quantity(_numbers(same, expected), str(first.units))
    if unit is None:
        raise not_text(value, ("in", "mph"), expected)
    return registry().Quantity(_numbers(value, expected), find_unit(unit, unit, "a unit").name)


def _of_text(text: str, expected: str) -> Quantity:
    parts, sign, _ = parts_of(text, ("in", "mph", "lb"), expected)
    unit = sole_unit(parts, text, expected)
    value = sign * sum(part.number * (part.unit.factor / unit.factor) for part in parts)
    return registry().Quantity(value, unit.name)


def _texts(value: object) -> list[str]:
    """Return the texts of a list of nothing else."""
    items = cast("list[object]", value) if isinstance(value, list) else []
    texts = [each for each in items if isinstance(each, str)]
    return texts if len(texts) == len(items) else []


def _numbers(value: object, expected: str) -> Any:
    """Return a number as a float, several as an array of floats."""
    import numpy as np  # noqa: PLC0415 - text is read without it

    try:
        found = np.asarray(value, dtype=float)
    except (TypeError, ValueError, OverflowError):  # a whole number beyond the floats
        found = np.array(np.nan)
    if isinstance(value, bool) or not np.all(np.isfinite(found)):
        raise UnitError(shown_value(value), "a finite number, or numbers, beside the unit")
    return found if found.ndim else float(found)


@overload
def to_si(value: str, kind: str, *, signed: bool = False) -> float: ...
@overload
def to_si(value: "str | Quantity", kind: str, *, signed: bool = False) -> Any: ...
def to_si(value: "str | Quantity", kind: str, *, signed: bool = False) -> Any:
    """Return text, or a pint quantity of any registry, in the SI unit of its kind.

    A float; an array of floats for a quantity of several values. Raises as `read`, also for a
    quantity of another dimension, or not finite.
    """
    wanted = UNIT_KINDS[kind]
    if isinstance(value, str) or not hasattr(value, "dimensionality"):
        return read_dimension(value, kind, signed=signed).value
    found = f"{value}"
    units = str(value.units)
    dims = _dims_of(value)
    if dims == (0, 0, 0, 0) and ("degree" in units or "radian" in units):
        dims = (0, 0, 0, 1)
    if kind == "slope" and units == "percent":
        result = _arctan(_finite(value.magnitude, found, wanted) / 100.0)
    elif dims != wanted.dims:
        raise wrong_kind(found, Unit(units, 1.0, dims), wanted)
    else:
        result = _finite(value.to(wanted.si).magnitude, found, wanted)
    if not signed and (result.min() if hasattr(result, "min") else result) < 0.0:
        raise UnitError(found, expected_of(wanted), "it cannot be negative here")
    return result


def quantity(value: Any, kind: str, unit: str | None = None) -> Quantity:
    """Return a pint quantity for a value (or array) in SI, in ``unit`` where one is named.

    UnitError where the unit is unknown or measures another kind; KeyError for an unknown kind.
    """
    wanted = UNIT_KINDS[kind]
    si = registry().Quantity(value, wanted.si)
    if unit is None:
        return si
    named = find_unit(unit, unit, expected_of(wanted))
    if kind == "slope" and named.name == "percent":
        return registry().Quantity(100.0 * _tan(value), "percent")
    if named.dims != wanted.dims:
        raise wrong_kind(unit, named, wanted)
    return si.to(named.name)


@cache
def registry() -> Any:
    """Return the one pint registry of this package: the units of the trade, nothing else."""
    import pint  # noqa: PLC0415 - 100 ms that a check does without

    return cast(Any, pint.UnitRegistry)(str(UNITS_FILE))


def _dims_of(value: Quantity) -> Dims:
    powers = {str(name): int(power) for name, power in dict(value.dimensionality).items()}
    if set(powers) - set(BASES):
        return (99, 0, 0, 0)
    return (powers.get("[length]", 0), powers.get("[mass]", 0), powers.get("[time]", 0), 0)


def _finite(magnitude: Any, found: str, kind: UnitKind) -> Any:
    """Return a magnitude as a float, or as an array where it has several values."""
    if getattr(magnitude, "ndim", 0):
        import numpy as np  # noqa: PLC0415 - text is read without it

        result = np.asarray(magnitude, dtype=float)
        finite = bool(result.size) and bool(np.all(np.isfinite(result)))
    else:
        result = float(magnitude)
        finite = math.isfinite(result)
    if not finite:
        raise UnitError(found, expected_of(kind), "it must be finite")
    return result


def _arctan(value: Any) -> Any:
    import numpy as np  # noqa: PLC0415 - see above

    return np.arctan(value) if getattr(value, "ndim", 0) else math.atan(value)


def _tan(value: Any) -> Any:
    import numpy as np  # noqa: PLC0415 - text is read without it

    return np.tan(value)
