"""Velocity pressure as the public API offers it: text or quantities in, a quantity out."""

from collections.abc import Iterable
from math import inf
from typing import NoReturn

import numpy as np

from .. import units
from .asce7 import KINDS
from .asce7 import directionality as kind_of_part
from .exposure import EXPOSURES
from .methods import method_of
from .site import Site

METHODS = ("forecast", "gust", "ASCE 7-22", "ASCE 7-16")


def velocity_pressure(
    wind: str | units.Quantity,
    *,
    method: str,
    exposure: str | None,
    height: str | units.Quantity,
    elevation: str | units.Quantity = "0 ft",
    topographic: float = 1.0,
    directionality: float | str | None = None,
) -> units.Quantity:
    """Return the velocity pressure of a wind at a height above ground, as a quantity.

    ``wind`` is a speed, as text or quantity like all dimensions here. Method "forecast": a 3-s
    gust as forecasts and warnings state it, 10 m up over open country. "gust": the 3-s gust at
    the piece itself. "ASCE 7-22" and "ASCE 7-16": the ultimate speed of a map.
    ``exposure`` is "B", "C", "D" or "houses and trees", "open", "shore"; None only with "gust".
    ``elevation`` of the ground above sea level thins the air with every method.
    ``topographic`` is Kzt; 1.0 with "gust", which already is the wind at the piece.
    ``directionality`` is Kd or the kind of part that has it (a key of ``asce7.KINDS``): required
    with "ASCE 7-16", whose pressure includes it, and refused with all others.

    ValueError names the argument, what was found and what is expected.
    Source: ASCE/SEI 7-22 and 7-16 Eq. 26.10-1.si; q = 1/2 rho V^2 with the two gust methods.
    """
    if method not in METHODS:
        _refuse("method", method, f"one of {_listed(METHODS)}")
    if exposure not in EXPOSURES and not (exposure is None and method == "gust"):
        _refuse("exposure", exposure, f"one of {_listed(EXPOSURES)}")
    if not _is_number(topographic) or not 0.0 < topographic < inf:
        _refuse("topographic", topographic, "a number above 0, such as 1.0 on level ground")
    if method == "gust" and topographic != 1.0:
        _refuse("topographic", topographic, '1.0 with method "gust", the wind at the piece itself')
    Kd = _directionality(method, directionality)
    site = Site(
        method=method,
        wind=_si("wind", wind, "speed"),
        ground="",
        exposure=None if exposure is None else EXPOSURES[exposure],
        elevation=_si("elevation", elevation, "length", signed=True),
        topographic=topographic,
    )
    z = _si("height", height, "length")
    q = method_of(site, z).pressure(np.asarray(z))
    return units.quantity(Kd * float(q), "pressure")


def _directionality(method: str, given: float | str | None) -> float:
    if method != "ASCE 7-16":
        if given is not None:
            _refuse("directionality", given, f'none with method "{method}"')
        return 1.0
    if isinstance(given, str) and given in KINDS:
        return kind_of_part(given, "7-16")
    if given is None or isinstance(given, str) or not _is_number(given) or not 0.0 < given <= 1.0:
        expected = f'with method "{method}" a number up to 1, or one of {_listed(KINDS)}'
        _refuse("directionality", given, expected)
    return float(given)


def _is_number(given: object) -> bool:
    return isinstance(given, (int, float)) and not isinstance(given, bool)


def _si(name: str, value: str | units.Quantity, kind: str, *, signed: bool = False) -> float:
    try:
        return units.to_si(value, kind, signed=signed)
    except units.UnitError as error:
        raise ValueError(f"{name}: {error}") from None


def _listed(words: Iterable[str]) -> str:
    return ", ".join(f'"{word}"' for word in words)


def _refuse(name: str, found: object, expected: str) -> NoReturn:
    raise ValueError(f"{name}: found {found!r}, expected {expected}")
