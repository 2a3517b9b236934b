"""Return period as the public API offers it: text or quantities in, years out."""

from collections.abc import Mapping
from itertools import pairwise
from math import inf
from typing import cast

from .. import units
from .arguments import plain_number, refuse, si
from .how_often import LONGER, years_between

_Gusts = Mapping[object, str | units.Quantity]


def return_period(
    gust: str | units.Quantity, gusts: Mapping[float | str, str | units.Quantity]
) -> float:
    """Return once in how many years a gust comes, from two or more local values.

    ``gust`` is a speed, as text or quantity; ``gusts`` maps a return period in years to the gust
    that comes once in it: ``{10: '60 mph', 50: '75 mph'}``, forecast gusts both. Linear in ln T
    between them, the end pieces drawn on.

    ValueError names the argument, what was found and what is expected; also where the gust is
    rarer than twice the longest period given, of which nothing can be told.
    """
    local = sorted((_years(key), _speed("gusts", value)) for key, value in _several(gusts).items())
    years, speeds = [pair[0] for pair in local], [pair[1] for pair in local]
    if any(b[0] <= a[0] or b[1] <= a[1] for a, b in pairwise(local)):
        refuse("gusts", gusts, "a greater gust for each longer return period")
    found = float(years_between(_speed("gust", gust), years, speeds))
    if found == inf:
        most = f"{LONGER * years[-1]:g} years, twice the longest period given"
        refuse("gust", gust, f"a gust no rarer than once in {most}")
    return found


def _several(gusts: object) -> _Gusts:
    found = gusts
    given = cast(_Gusts, gusts) if isinstance(gusts, Mapping) else None
    if given is None or len(given) < 2:
        expected = "two or more return periods, such as {10: '60 mph', 50: '75 mph'}"
        refuse("gusts", found, expected)
    return given


def _years(key: object) -> float:
    try:
        years = float(key) if isinstance(key, str) else plain_number(key)
    except ValueError:
        years = None
    if years is None or not 0.0 < years < inf:
        refuse("gusts", key, "a return period in years, such as 10")
    return years


def _speed(name: str, value: str | units.Quantity) -> float:
    return si(name, value, "speed", above_zero=True)
