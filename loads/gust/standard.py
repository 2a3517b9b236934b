"""A gust that somebody names, of a forecast or at the piece, with the coefficients of ASCE 7."""

from collections.abc import Sequence

import numpy as np

from ...design.placing import Body
from ...design.reader.row import Row
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from ..asce7 import standard as asce7
from ..asce7.tops import ASCE7_TOPS
from ..coefficients.boards import StandingBoard
from ..coefficients.shape_coefficients import Coefficient, shape_coefficient
from ..wind import dynamic_pressure as gust
from ..wind.site import Site

AT_PIECE, FORECAST = "gust", "forecast"


class AtObject(ByValue, frozen=True):
    """A 3-s gust ``speed`` in m/s at the piece itself, all over it; ``density`` of air kg/m3."""

    speed: float
    density: float

    minimum = None
    tops = ASCE7_TOPS

    def pressure(self, height: Array) -> Array:
        """Return q = 1/2 rho V2, the same at every height."""
        return np.broadcast_to(gust.dynamic_pressure(self.speed, self.density), np.shape(height))

    def gust(self, height: float, breadth: Array) -> Array:
        """Return 1: the gust itself is given."""
        return np.ones_like(breadth)

    def directionality(self, kinds: Sequence[str]) -> Array:
        """Return 1: every direction is taken at full strength."""
        return np.ones(len(kinds))

    def coefficient(
        self,
        body: Body,
        stack_top: float,
        azimuths: Array,
        surface: str,
        board: StandingBoard | None = None,
    ) -> Coefficient:
        """Return the coefficient of ASCE/SEI 7 Figs. 29.3-1, 29.4-1 and 29.4-2."""
        return shape_coefficient(body, stack_top, azimuths, surface, board)


class _Gust:
    """The gust of a forecast, 10 m up over open country, and the gust at the piece itself."""

    names = (FORECAST, AT_PIECE)
    is_code = False
    bases = ("service", "allowable", "strength")

    def speed_means(self, method: str) -> str:
        """Return what the gust is."""
        return "a 3-second gust"

    def document(self, method: str) -> str:
        """Return where Kz and the coefficients stand."""
        return asce7.ASCE7.document(asce7.ASCE7.names[0])

    def tables(self, method: str) -> tuple[str, ...]:
        """Return the table of exposure."""
        return ("wind/asce7_kz_table",)

    def read_wind(self, row: Row, method: str, wind: float | None) -> float | None:
        """Refuse what belongs to a map's speed, or to open country."""
        if method == FORECAST:
            row.need("exposure", reason=": what lies around it")
        elif row.given("topographic"):
            row.refuse(
                "topographic",
                "no 'topographic' with method = 'gust': the gust at the piece itself has it "
                "already",
                "leave it out, or method = 'forecast'",
            )
        if row.given("wind_kind"):
            row.refuse(
                "wind_kind",
                f"no 'wind_kind' with method = '{method}': its wind is {self.speed_means(method)}",
                "leave it out",
            )
        return wind

    def at(self, site: Site, height: float) -> AtObject:
        """Return the gust at the piece, all over it."""
        ratio = 1.0 if site.method == AT_PIECE else self.gust_ratio(site, height)
        return AtObject(float(site.wind * ratio), self.air_density(site))

    def gust_ratio(self, site: Site, height: float) -> float:
        """Return sqrt(Kz Kzt) at the top, by the newest edition of ASCE/SEI 7."""
        return asce7.gust_ratio(site, height)

    def air_density(self, site: Site) -> float:
        """Return 1.226 kg/m3, thinner where the site says how high it lies."""
        return asce7.air_density_at_height(site)

    def in_surroundings(self, site: Site, exposure: str) -> Site:
        """Return the site of another exposure."""
        return replace(site, exposure=exposure)

    def open_gust(self, site: Site) -> float | None:
        """Return a forecast's gust; None of one at the piece."""
        return site.wind if site.method == FORECAST else None

    def speed_of(self, gust: float, site: Site, height: float) -> float:
        """Return the gust of a forecast, or what it comes to at the piece."""
        return gust if site.method == FORECAST else gust * self.gust_ratio(site, height)

    def years(self, gust: float, site: Site) -> tuple[float, float] | None:
        """Return None: a gust that somebody names is of no map."""
        return None


GUST = _Gust()
