"""Velocity pressure as the public API offers it: text or quantities in, a quantity out."""

import numpy as np

from .. import units
from ..design.bounds import ELEVATION, Bounds
from ..units.frozen import replace
from .arguments import as_given, number_argument, plain_number, quoted_words, refuse, si, word
from .asce7 import velocity_pressure as asce7
from .asce7.standard import ASCE7, edition_of
from .gust.standard import GUST
from .methods import method_of
from .wind.exposure import EXPOSURES
from .wind.site import Site

METHODS = (*GUST.names, *ASCE7.names)
"""Methods whose pressure follows from an exposure."""

_FACTOR = Bounds(
    0.0, 10.0, "a number above 0 and at most 10, such as 1.0 on level ground", above=True
)


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

    ``wind`` is a speed, as text or quantity like all dimensions here; of several values, which
    broadcast, as many pressures come out. Method "forecast": a 3-s
    gust as forecasts and warnings state it, 10 m up over open country. "gust": the 3-s gust at
    the piece itself. "ASCE 7-22" and "ASCE 7-16": the ultimate speed of a map.
    ``exposure`` is "B", "C", "D" or "houses and trees", "open", "shore"; None only with "gust".
    ``height`` goes as far up as the standard's own formula, but with "gust".
    ``elevation`` of the ground above sea level, -2,000 to 30,000 ft, thins the air with every
    method. ``topographic`` is Kzt; 1.0 with "gust", which already is the wind at the piece.
    ``directionality`` is Kd or the kind of part that has it (a key of ``asce7.KINDS``): required
    with "ASCE 7-16", whose pressure includes it, and refused with all others.

    ValueError names the argument, what was found and what is expected.
    Source: ASCE/SEI 7-22 and 7-16 Eq. 26.10-1.si; q = 1/2 rho V^2 with the two gust methods.

    >>> q = yf.velocity_pressure("105 mph", method="ASCE 7-22", exposure="C", height="5 ft")
    >>> print(f"{q.to('psf'):.1f}")
    24.0 pound_force_per_square_foot
    """
    method = word("method", method, METHODS)
    if exposure is not None or method != "gust":
        exposure = EXPOSURES[word("exposure", exposure, EXPOSURES)]
    Kzt = number_argument("topographic", topographic, _FACTOR)
    if method == "gust" and Kzt != 1.0:
        refuse("topographic", topographic, '1.0 with method "gust", the wind at the piece itself')
    Kd = _directionality(method, directionality)
    site = Site(method=method, wind=0.0, ground="", exposure=exposure, topographic=Kzt)

    def pressure(speed: float, z: float, above_sea: float) -> float:
        here = replace(site, wind=speed, elevation=above_sea)
        return Kd * float(method_of(here, z).pressure(np.asarray(z)))

    q = np.vectorize(pressure, otypes=[float])(
        si("wind", wind, "speed"),
        si("height", height, "length", bounds=_heights(method, exposure)),
        si("elevation", elevation, "length", signed=True, bounds=ELEVATION),
    )
    return units.quantity(as_given(q), "pressure")


def _heights(method: str, exposure: str | None) -> Bounds | None:
    """Return the heights that the standard's formula covers; every one where none is asked."""
    if method == "gust" or exposure is None:
        return None
    highest = asce7.highest(exposure, edition_of(method))
    words = f"from 0 to {highest / units.FOOT:,.0f} ft ({highest:,.0f} m) above the ground"
    return Bounds(0.0, highest, words)


def _directionality(method: str, given: float | str | None) -> float:
    if method != "ASCE 7-16":
        if given is not None:
            refuse("directionality", given, f'none with method "{method}"')
        return 1.0
    if isinstance(given, str) and given in asce7.STRUCTURE_KINDS:
        return asce7.directionality(given, edition_of(method))
    Kd = plain_number(given)
    if Kd is None or not 0.0 < Kd <= 1.0:
        kinds = quoted_words(asce7.STRUCTURE_KINDS)
        expected = f'with method "{method}" a number up to 1, or one of {kinds}'
        refuse("directionality", given, expected)
    return Kd
