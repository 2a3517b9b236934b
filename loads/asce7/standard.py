"""ASCE/SEI 7 as a standard of wind: what its map's speed is and what it makes of a site."""

from collections.abc import Sequence

import numpy as np

from ...design.placing import Body
from ...design.reader.row import Row
from ...units import MPH
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from ..coefficients.boards import StandingBoard
from ..coefficients.shape_coefficients import Coefficient, shape_coefficient
from ..wind import dynamic_pressure as gust
from ..wind.how_often import fifty_year_speed, return_period_of_ratio
from ..wind.site import OPEN_COUNTRY, Site
from . import velocity_pressure as asce7
from .gust_effect import gust_factor_used
from .tops import ASCE7_TOPS

LOWEST_ASCE_WIND = 85.0 * MPH
"""Below 85 mph (m/s) a speed is hardly an ultimate one of a map: judgement."""

_PREFIX = "ASCE "


class Asce7Wind(ByValue, frozen=True):
    """ASCE/SEI 7 with an ultimate map ``speed`` in m/s, of ``edition`` 7-22 or 7-16."""

    speed: float
    edition: str
    exposure: str
    topographic: float
    elevation: float

    tops = ASCE7_TOPS

    @property
    def minimum(self) -> float | None:
        """Return the least wind on other structures, 16 psf (29.7)."""
        return asce7.minimum_pressure()

    def pressure(self, height: Array) -> Array:
        """Return q_z = 0.613 Kz Kzt Ke V2, without Kd in either edition (26.10-1)."""
        return asce7.asce7_velocity_pressure(
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

    def coefficient(
        self,
        body: Body,
        stack_top: float,
        azimuths: Array,
        surface: str,
        board: StandingBoard | None = None,
    ) -> Coefficient:
        """Return the coefficient of Figs. 29.3-1, 29.4-1 and 29.4-2."""
        return shape_coefficient(body, stack_top, azimuths, surface, board)


class _Asce7:
    """ASCE/SEI 7, editions 7-22 and 7-16."""

    names = tuple(f"{_PREFIX}{edition}" for edition in asce7.EDITIONS)
    is_code = True
    bases = ("allowable", "strength", "service")

    def speed_means(self, method: str) -> str:
        """Return what the speed of the map is."""
        return "the ultimate 3-second gust of the code's map, 10 m up over open country"

    def document(self, method: str) -> str:
        """Return the standard of the edition, and its chapters."""
        return f"ASCE/SEI {edition_of(method)} Chs. 26 and 29"

    def tables(self, method: str) -> tuple[str, ...]:
        """Return the tables of exposure, directionality and gust effect."""
        return "wind/asce7_kz_table", "wind/asce7_kd", "wind/asce7_gust_factor"

    def read_wind(self, row: Row, method: str, wind: float | None) -> float | None:
        """See to it that a wind is an ultimate speed of a map, or said to be another."""
        row.need("exposure", reason=": what lies around it")
        if row.text("wind_kind") == "mean":
            row.refuse(
                "wind_kind",
                f"'ultimate' or 'nominal' with method = '{method}': its wind is "
                f"{self.speed_means(method)}",
                "method = 'EN 1991-1-4', if it is a ten-minute mean of a European map",
            )
        if wind is None:
            return None
        if wind < LOWEST_ASCE_WIND and not row.given("wind_kind"):
            row.refuse(
                "wind",
                f"an ultimate wind speed of the {method} map: they begin at about 85 mph (38 m/s)",
                "wind_kind = 'ultimate' if it is one, 'nominal' if it is of an older map; or "
                "method = 'forecast'",
            )
        if row.text("wind_kind") == "nominal" and not row.wrong:
            wind *= asce7.NOMINAL_TO_ULTIMATE
            row.note(
                f"wind: '{row.typed('wind')}' nominal is {wind / MPH:.0f} mph "
                f"({wind:.1f} m/s) ultimate"
            )
        return wind

    def at(self, site: Site, height: float) -> Asce7Wind:
        """Return its wind at a site; the height is told where pressures are asked."""
        return Asce7Wind(
            site.wind,
            edition_of(site.method),
            site.exposure or OPEN_COUNTRY,
            site.topographic or 1.0,
            site.elevation or 0.0,
        )

    def gust_ratio(self, site: Site, height: float) -> float:
        """Return sqrt(Kz Kzt) at the top, by the edition of the site."""
        return gust_ratio(site, height)

    def air_density(self, site: Site) -> float:
        """Return 1.226 kg/m3 times Ke."""
        return air_density_at_height(site)

    def in_surroundings(self, site: Site, exposure: str) -> Site:
        """Return the site of another exposure."""
        return replace(site, exposure=exposure)

    def open_gust(self, site: Site) -> float | None:
        """Return the map's speed, which is one."""
        return site.wind

    def speed_of(self, gust: float, site: Site, height: float) -> float:
        """Return the gust itself: the map states one."""
        return gust

    def years(self, gust: float, site: Site) -> tuple[float, float] | None:
        """Return the return period by the map's own, outside hurricane regions only (C26.5)."""
        if site.return_period is None or site.hurricane is not False:
            return None
        V_50 = fifty_year_speed(site.wind, site.return_period)
        return float(return_period_of_ratio(gust / V_50)), site.return_period


ASCE7 = _Asce7()


def edition_of(method: str) -> str:
    """Return the edition of ASCE/SEI 7 whose Kz a method uses: its own, else the newest."""
    return method.removeprefix(_PREFIX) if method.startswith(_PREFIX) else asce7.EDITIONS[0]


def gust_ratio(site: Site, height: float) -> float:
    """Return the gust at the piece over the forecast gust: sqrt(Kz Kzt) at its top.

    Kz is 1.0 where forecasts are stated: 10 m up over open country. A site without exposure is
    taken as open.
    """
    exposure = site.exposure or OPEN_COUNTRY
    Kz = asce7.exposure_coefficient(height, exposure, edition_of(site.method))
    return float(gust.forecast_to_object(1.0, Kz, site.topographic or 1.0))


def air_density_at_height(site: Site) -> float:
    """Return the density of air in kg/m3, thinner where the site says how high it lies."""
    return float(gust.AIR_DENSITY * asce7.elevation_factor(site.elevation or 0.0))
