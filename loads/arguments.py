"""The door of the public API: each argument into SI, or refused by its name.

An argument is text or a pint quantity, a number, or one of several words. Whatever else stands
there ends in a ValueError that names the argument, what was found and what is expected.
"""

from collections.abc import Iterable
from math import inf
from numbers import Real
from typing import Any, NoReturn

from .. import units
from ..design.bounds import Bounds

_MOST = 1.0e12


def si(
    name: str,
    value: str | units.Quantity,
    kind: str,
    *,
    signed: bool = False,
    above_zero: bool = False,
    bounds: Bounds | None = None,
) -> Any:
    """Return text or a quantity of a kind (a key of ``units.KINDS``) in SI: a float or an array.

    ``signed`` allows values below zero, ``above_zero`` refuses zero, ``bounds`` what lies outside.
    Nothing is taken that is more than a million million SI units, nor less than that part of one:
    no such thing stands in a yard, and products of them leave the floats.
    """
    try:
        found = units.to_si(value, kind, signed=signed)
    except units.UnitError as error:
        raise ValueError(f"{name}: {error}") from None
    least, most = (found.min(), found.max()) if hasattr(found, "min") else (found, found)
    if above_zero and least < 1.0 / _MOST:
        refuse(name, value, f"{units.UNIT_KINDS[kind].phrase} above 0")
    if max(most, -least) > _MOST:
        refuse(name, value, f"{units.UNIT_KINDS[kind].phrase} of a thing that can stand in a yard")
    if bounds is not None and not (bounds.hold(least) and bounds.hold(most)):
        refuse(name, value, bounds.words)
    return found


def as_given(value: Any) -> Any:
    """Return what came out as a float where all that went in was one value, else as an array."""
    return value if getattr(value, "ndim", 0) else float(value)


def number_argument(name: str, given: object, bounds: Bounds) -> float:
    """Return a plain number of any type, numpy's too, that lies within bounds."""
    found = plain_number(given)
    if found is None or not bounds.hold(found):
        refuse(name, given, bounds.words)
    return found


def plain_number(given: object) -> float | None:
    """Return a finite real number as a float; None for anything else, True and False too."""
    if isinstance(given, bool) or not isinstance(given, Real):
        return None
    try:
        found = float(given)
    except OverflowError:
        return None
    return found if abs(found) < inf else None


def word(name: str, given: object, known: Iterable[str]) -> str:
    """Return one of the words that are known."""
    listed = tuple(known)
    if not isinstance(given, str) or given not in listed:
        refuse(name, given, f"one of {quoted_words(listed)}")
    return given


def flag(name: str, given: object) -> bool:
    """Return True or False; a word such as "no" is neither."""
    if not isinstance(given, bool):
        refuse(name, given, "True or False")
    return given


def quoted_words(words: Iterable[str]) -> str:
    """Return words between quote marks, as they are written in a call."""
    return ", ".join(f'"{each}"' for each in words)


def refuse(name: str, found: object, expected: str) -> NoReturn:
    """Raise the ValueError that every wrong argument ends in."""
    shown = f"{found}" if hasattr(found, "dimensionality") else units.shown_value(found)
    raise ValueError(f"{name}: found {shown}, expected {expected}")
