"""EN 1991-1-4 as a standard of wind: what its basic velocity is and what it makes of a site."""

from collections.abc import Sequence

import numpy as np

from ...design.placing import Body
from ...design.reader.row import Row
from ...units import KMH
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from ..coefficients.boards import StandingBoard
from ..coefficients.shape_coefficients import Coefficient
from ..roofs.tops import Tops
from ..wind.exposure import EXPOSURES
from ..wind.site import Site
from . import peak_pressure
from .basic_velocity import basic_velocity, yearly_probability
from .constants import constant

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .body_coefficients import Blown

GREATEST_BASIC = 144.0 * KMH
"""Above 40 m/s a speed is hardly a ten-minute mean of a European map: judgement."""

FORECAST_HEIGHT = 10.0
"""Forecast gusts are stated at 10 m over open country, as the basic velocity is."""

NEAREST = {"B": "III", "C": "II", "D": "0"}
"""The terrain that comes nearest to an exposure of ASCE 7, by their descriptions."""

ANNEX_KEYS = (
    "direction_factor",
    "season_factor",
    "probability_factor",
    "turbulence_factor",
    "air_density",
    "orography",
)
"""What a National Annex says otherwise than recommended."""

_NAME = "EN 1991-1-4"


class En1991Wind(ByValue, frozen=True):
    """The peak velocity pressure of a basic velocity ``basic`` v_b in m/s, and its coefficients.

    ``height`` in m is that of the piece's top, where Reynolds numbers are taken.
    """

    basic: float
    terrain: str
    orography: float
    density: float
    turbulence: float | None
    height: float

    minimum = None

    @property
    def tops(self) -> Tops:
        """Return what acts normal to tops by section 7.2 and 7.3."""
        from .tops import EN1991_TOPS  # noqa: PLC0415 - where a site asks this standard

        return EN1991_TOPS

    def pressure(self, height: Array) -> Array:
        """Return q_p (Eq. 4.8)."""
        return peak_pressure.peak_velocity_pressure(
            self.basic, height, self.terrain, self.orography, self.density, self.turbulence
        )

    def gust(self, height: float, breadth: Array) -> Array:
        """Return c_s c_d = 1, as for what is lower than 15 m (6.2 (1))."""
        return np.ones_like(breadth)

    def directionality(self, kinds: Sequence[str]) -> Array:
        """Return 1: the direction factor is in the basic velocity."""
        return np.ones(len(kinds))

    def coefficient(
        self,
        body: Body,
        stack_top: float,
        azimuths: Array,
        surface: str,
        board: StandingBoard | None = None,
    ) -> Coefficient:
        """Return the coefficient of section 7, at the height at which its pressure is taken."""
        from .body_coefficients import body_coefficient  # noqa: PLC0415

        return body_coefficient(body, stack_top, azimuths, surface, self.blown, board)

    @property
    def blown(self) -> "Blown":
        """Return peak and mean speed at the top."""
        from .body_coefficients import Blown  # noqa: PLC0415

        top = np.array(self.height)
        mean = peak_pressure.mean_speed(self.basic, top, self.terrain, self.orography)
        return Blown(
            float(peak_pressure.gust_of_pressure(self.pressure(top), self.density)), float(mean)
        )


class _En1991:
    """EN 1991-1-4:2005 with A1:2010, recommended values unless the site says others."""

    names = (_NAME,)
    is_code = True
    bases = ("EQU", "service")

    def speed_means(self, method: str) -> str:
        """Return what the fundamental basic velocity is."""
        return "a mean over ten minutes, 10 m up over open country: v_b,0 of a European map"

    def document(self, method: str) -> str:
        """Return the standard and its sections."""
        return "EN 1991-1-4:2005+A1:2010 sections 4 and 7"

    def tables(self, method: str) -> tuple[str, ...]:
        """Return the table of terrain."""
        return ("wind/en1991_terrain",)

    def read_wind(self, row: Row, method: str, wind: float | None) -> float | None:
        """Ask for the terrain, refuse what belongs to ASCE 7, ask about a speed of another book."""
        row.need("terrain", reason=": what lies around it")
        exposure = row.text("exposure")
        if row.given("exposure") and not row.failed("exposure"):
            near = NEAREST[EXPOSURES[str(exposure)]]
            row.refuse(
                "exposure",
                f"no 'exposure' with method = '{method}', which tells the ground by 'terrain'",
                f"terrain = '{near}': {peak_pressure.description(near)}",
            )
        if row.given("topographic"):
            row.refuse(
                "topographic",
                f"no 'topographic' with method = '{method}': that factor is on pressure",
                "orography, c_o on speed by the National Annex; or leave it out on level ground",
            )
        kind = row.text("wind_kind")
        if kind is not None and kind != "mean":
            row.refuse(
                "wind_kind",
                f"'mean' with method = '{method}': its wind is {self.speed_means(method)}",
                "method = 'ASCE 7-22' or 'ASCE 7-16', if it is a 3-second gust of a map",
            )
        elif wind is not None and kind is None and _may_be_a_gust(row, wind):
            row.refuse(
                "wind",
                f"{self.speed_means(method)}; those are told in m/s or km/h and end at about "
                "40 m/s (144 km/h)",
                "wind_kind = 'mean' if it is one; if it is a gust, method = 'forecast', or "
                "'ASCE 7-22' for an ultimate speed of a map",
            )
        return wind

    def at(self, site: Site, height: float) -> En1991Wind:
        """Return its wind at a site."""
        return En1991Wind(
            basic_of(site),
            site.terrain or peak_pressure.OPEN_TERRAIN,
            site.orography or 1.0,
            self.air_density(site),
            site.turbulence_factor,
            height,
        )

    def gust_ratio(self, site: Site, height: float) -> float:
        """Return sqrt(q_p(z)/q_p(10 m, II)): the piece's top over open country, level."""
        top = self.at(site, height).pressure(np.array(height))
        return float(np.sqrt(top / _open_country(basic_of(site), self.air_density(site))))

    def air_density(self, site: Site) -> float:
        """Return 1.25 kg/m3, or what the site says."""
        return site.air_density or peak_pressure.recommended_air_density()

    def in_surroundings(self, site: Site, exposure: str) -> Site:
        """Return the site in the terrain nearest to an exposure."""
        return replace(site, terrain=NEAREST[exposure])

    def open_gust(self, site: Site) -> float | None:
        """Return the peak of the basic velocity 10 m up over open country (Eq. 4.8)."""
        return basic_of(site) / basic_of_gust(1.0)

    def speed_of(self, gust: float, site: Site, height: float) -> float:
        """Return the basic velocity whose peak over open country the gust is."""
        return basic_of_gust(gust)

    def years(self, gust: float, site: Site) -> tuple[float, float] | None:
        """Return the return period by the probability factor (Eq. 4.2), outside hurricane regions.

        The basic velocity that belongs to the gust over open country stands against v_b,0.
        """
        if site.hurricane is not False:
            return None
        stated = float(basic_velocity(site.wind, site.direction_factor, site.season_factor))
        factor = basic_of_gust(gust) / stated
        return 1.0 / float(yearly_probability(factor)), 1.0 / constant("basic probability")


EN1991 = _En1991()


def basic_of(site: Site) -> float:
    """Return v_b of a site in m/s: v_b,0 with its factors of direction, season, probability."""
    return float(
        basic_velocity(
            site.wind, site.direction_factor, site.season_factor, site.probability_factor
        )
    )


def basic_of_gust(gust: float) -> float:
    """Return the basic velocity in m/s whose peak 10 m up over open country is ``gust`` in m/s.

    Source: EN 1991-1-4:2005 Eq. 4.8 over terrain II.
    """
    density = peak_pressure.recommended_air_density()
    return gust / float(peak_pressure.gust_of_pressure(_open_country(1.0, density)))


def _open_country(basic: float, density: float) -> Array:
    return peak_pressure.peak_velocity_pressure(
        basic, FORECAST_HEIGHT, peak_pressure.OPEN_TERRAIN, density=density
    )


def _may_be_a_gust(row: Row, wind: float) -> bool:
    """Return whether a speed is more than maps of ten-minute means tell, or in a gust's unit."""
    return wind > GREATEST_BASIC or "mph" in row.typed("wind").casefold()
