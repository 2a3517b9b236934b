"""Return period as the public API offers it: text or quantities in, years out."""

from collections.abc import Mapping
from itertools import pairwise
from math import inf
from typing import Any, cast

import numpy as np

from .. import units
from .arguments import as_given, plain_number, refuse, si
from .wind.how_often import LONGER, years_between

_Gusts = Mapping[object, str | units.Quantity]


def return_period(
    gust: str | units.Quantity, gusts: Mapping[float | str, str | units.Quantity]
) -> Any:
    """Return once in how many years a gust comes, from two or more local values.

    A float; an array for a quantity of several gusts.

    ``gust`` is a speed, as text or quantity; ``gusts`` maps a return period in years to the gust
    that comes once in it: ``{10: '60 mph', 50: '75 mph'}``, forecast gusts both. Linear in ln T
    between them, the end pieces drawn on.

    ValueError names the argument, what was found and what is expected; also where the gust is
    rarer than twice the longest period given, of which nothing can be told.

    >>> round(yf.return_period("75 mph", {10: "60 mph", 50: "75 mph"}))
    50
    """
    local = sorted((_years(key), _one("gusts", value)) for key, value in _several(gusts).items())
    years, speeds = [pair[0] for pair in local], [pair[1] for pair in local]
    if any(b[0] <= a[0] or b[1] <= a[1] for a, b in pairwise(local)):
        refuse("gusts", gusts, "a greater gust for each longer return period")
    found = as_given(years_between(_speed("gust", gust), years, speeds))
    if np.max(found) == inf:
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


def _speed(name: str, value: str | units.Quantity) -> Any:
    return si(name, value, "speed", above_zero=True)


def _one(name: str, value: str | units.Quantity) -> float:
    speed = _speed(name, value)
    if getattr(speed, "ndim", 0):
        refuse(name, value, "one gust for each return period")
    return speed
