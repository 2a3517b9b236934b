"""The method by which a site's wind becomes pressure: alternatives with one face."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from ..design.shapes.shape import Array
from .asce7 import velocity_pressure as asce7
from .asce7.gust_effect import gust_factor_used
from .gust import dynamic_pressure as gust
from .site import Site

ASCE_METHODS = ("ASCE 7-22", "ASCE 7-16")
METHODS = ("forecast", "gust", *ASCE_METHODS)
"""What a site's ``method`` may be."""

OPEN_COUNTRY = "C"
"""Exposure that a forecast gust is stated for where the site names none."""


class Method(Protocol):
    """What a method says of pressure, gust effect, directionality and least wind."""

    @property
    def minimum(self) -> float | None:
        """Pressure in Pa on the whole silhouette that is a case of its own, or None."""
        ...

    def pressure(self, height: Array) -> Array:
        """Return the velocity pressure in Pa at heights above ground in m, without Kd."""
        ...

    def gust(self, height: float, breadth: Array) -> Array:
        """Return the gust effect factor for a height and breadths (D,) in m."""
        ...

    def directionality(self, kinds: Sequence[str]) -> Array:
        """Return Kd (bodies,) of kinds of part."""
        ...


@dataclass(frozen=True)
class AtObject:
    """A 3-s gust ``speed`` in m/s at the piece itself, all over it; ``density`` of air kg/m3."""

    speed: float
    density: float

    minimum = None

    def pressure(self, height: Array) -> Array:
        """Return q = 1/2 rho V2, the same at every height."""
        return np.broadcast_to(gust.dynamic_pressure(self.speed, self.density), np.shape(height))

    def gust(self, height: float, breadth: Array) -> Array:
        """Return 1: the gust itself is given."""
        return np.ones_like(breadth)

    def directionality(self, kinds: Sequence[str]) -> Array:
        """Return 1: every direction is taken at full strength."""
        return np.ones(len(kinds))


@dataclass(frozen=True)
class Asce7:
    """ASCE/SEI 7 with an ultimate map ``speed`` in m/s, of ``edition`` 7-22 or 7-16."""

    speed: float
    edition: str
    exposure: str
    topographic: float
    elevation: float

    @property
    def minimum(self) -> float | None:
        """Return the least wind on other structures, 16 psf (29.7)."""
        return asce7.minimum_pressure()

    def pressure(self, height: Array) -> Array:
        """Return q_z = 0.613 Kz Kzt Ke V2, without Kd in either edition (26.10-1)."""
        return asce7.velocity_pressure(
            self.speed,
            asce7.exposure_coefficient(height, self.exposure, self.edition),
            self.topographic,
            asce7.elevation_factor(self.elevation),
        )

    def gust(self, height: float, breadth: Array) -> Array:
        """Return the computed rigid G, or 0.85 if that is larger (26.11.4)."""
        return gust_factor_used(height, breadth, self.exposure)

    def directionality(self, kinds: Sequence[str]) -> Array:
        """Return Kd by each part's own kind (Table 26.6-1), once: q here is without it."""
        return np.array([asce7.directionality(kind, self.edition) for kind in kinds])


def method_of(site: Site, height: float) -> Method:
    """Return the method of a site for a piece of that height in m."""
    if site.method in ASCE_METHODS:
        return Asce7(
            site.wind,
            edition_of(site.method),
            site.exposure or OPEN_COUNTRY,
            site.topographic or 1.0,
            site.elevation or 0.0,
        )
    speed = site.wind if site.method == "gust" else object_gust(site, height)
    return AtObject(speed, air_density(site))


def edition_of(method: str) -> str:
    """Return the edition of ASCE/SEI 7 whose Kz a method uses: its own, else the newest."""
    return method.removeprefix("ASCE ") if method in ASCE_METHODS else asce7.EDITIONS[0]


def object_gust(site: Site, height: float) -> float:
    """Return the gust in m/s that the site's forecast ``wind`` brings to the piece's top."""
    return float(site.wind * shelter_of_ground(site, height))


def shelter_of_ground(site: Site, height: float) -> float:
    """Return the gust at the piece over the forecast gust: sqrt(Kz Kzt) at its top.

    Kz is 1.0 where forecasts are stated: 10 m up over open country. A site without exposure is
    taken as open.
    """
    exposure = site.exposure or OPEN_COUNTRY
    Kz = asce7.exposure_coefficient(height, exposure, edition_of(site.method))
    return float(gust.forecast_to_object(1.0, Kz, site.topographic or 1.0))


def air_density(site: Site) -> float:
    """Return the density of air in kg/m3, thinner where the site says how high it lies."""
    return float(gust.AIR_DENSITY * asce7.elevation_factor(site.elevation or 0.0))
