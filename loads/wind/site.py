"""The site: which wind, by which method, on which ground."""

from collections.abc import Mapping

from ...units.frozen import ByValue, field

OPEN_COUNTRY = "C"
"""Exposure that a forecast gust is stated for where the site names none."""


class Site(ByValue, frozen=True):
    """The ``[site]`` table in SI units.

    ``wind`` in m/s as it enters the method (a nominal speed is already converted). ``exposure``
    is B, C or D, or None where the method does without. ``slope`` in rad, ``elevation`` in m;
    None where the file does not say. ``gusts`` maps a return period in years to a forecast gust
    in m/s; ``peaks`` in m/s are a record of the place's own, one ``peaks_per`` year or day.
    ``basis``, ``safety`` and ``timber``, the book for wood and fasteners, are resolved: never None.

    Of EN 1991-1-4 alone: ``terrain`` 0 to IV, and what a National Annex says: factors of direction,
    season and probability on the speed, ``turbulence_factor`` k_I, ``air_density`` in kg/m3 and
    ``orography`` c_o; None for what is recommended.
    """

    method: str
    wind: float
    ground: str
    exposure: str | None = None
    wind_kind: str | None = None
    wind_source: str | None = None
    return_period: float | None = None
    risk_category: str | None = None
    slope: float | None = None
    elevation: float | None = None
    topographic: float | None = None
    timber: str = "NDS"
    timber_given: bool = False
    basis: str = "service"
    basis_given: bool = False
    safety: float = 1.5
    safety_given: bool = False
    people: str | None = None
    hurricane: bool | None = None
    country: str | None = None
    sheltering: bool = False
    terrain: str | None = None
    direction_factor: float = 1.0
    season_factor: float = 1.0
    probability_factor: float = 1.0
    turbulence_factor: float | None = None
    air_density: float | None = None
    orography: float | None = None
    gusts: Mapping[float, float] = field(default_factory=dict[float, float])
    peaks: tuple[float, ...] = ()
    peaks_per: str = "yearly"
