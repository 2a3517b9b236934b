"""Return period as the public API offers it: text or quantities in, years out."""

from collections.abc import Mapping
from itertools import pairwise
from math import inf, isfinite

from .. import units
from .how_often import LONGER, years_between


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
    if len(gusts) < 2:
        raise ValueError(f"gusts: found {len(gusts)}, expected two or more return periods")
    local = sorted((_years(key), _speed("gusts", value)) for key, value in gusts.items())
    years, speeds = [pair[0] for pair in local], [pair[1] for pair in local]
    if any(b[0] <= a[0] or b[1] <= a[1] for a, b in pairwise(local)):
        raise ValueError("gusts: expected a greater gust for each longer return period")
    found = float(years_between(_speed("gust", gust), years, speeds))
    if found == inf:
        most = LONGER * years[-1]
        raise ValueError(
            f"gust: found {gust}, rarer than once in {most:g} years, twice the longest period given"
        )
    return found


def _years(key: float | str) -> float:
    try:
        years = float(key)
    except (TypeError, ValueError):
        years = -1.0
    if isinstance(key, bool) or not isfinite(years) or years <= 0.0:
        raise ValueError(f"gusts: found {key!r}, expected a return period in years, such as 10")
    return years


def _speed(name: str, value: str | units.Quantity) -> float:
    try:
        speed = units.to_si(value, "speed")
    except units.UnitError as error:
        raise ValueError(f"{name}: {error}") from None
    if speed <= 0.0:
        raise ValueError(f"{name}: found {value}, expected a speed above 0")
    return speed
