"""The books of wind and the one face by which the rest of the house asks them.

A standard is a folder here. It says what its speed means, what a site has to tell it and on which
basis it judges; and of a site and a piece its wind: pressure, gust effect, coefficients and least
wind. Adding one adds a folder and its name in ``STANDARDS``.
"""

from collections.abc import Sequence
from typing import Protocol

from ..design.placing import Body
from ..design.reader.row import Row
from ..units.arrays import Array
from .asce7.standard import ASCE7
from .coefficients.boards import StandingBoard
from .coefficients.shape_coefficients import Coefficient
from .combinations import EN1995, NDS
from .en1991.standard import EN1991
from .gust.standard import GUST
from .roofs.tops import Tops
from .wind.site import Site


class Method(Protocol):
    """The wind of one standard at one site on a piece of one height, in SI units."""

    @property
    def minimum(self) -> float | None:
        """Pressure in Pa on the whole silhouette that is a case of its own, or None."""
        ...

    @property
    def tops(self) -> Tops:
        """What acts normal to tops, roofs and leaning boards."""
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

    def coefficient(
        self,
        body: Body,
        stack_top: float,
        azimuths: Array,
        surface: str,
        board: StandingBoard | None = None,
    ) -> Coefficient:
        """Return the force coefficient of a body for winds from the azimuths (D,), rad.

        ``board`` is what a standing board makes with what abuts it, itself alone by default.
        """
        ...


class WindStandard(Protocol):
    """A book of wind: what its methods are called, and what each asks and answers."""

    @property
    def names(self) -> tuple[str, ...]:
        """What a site's ``method`` may be."""
        ...

    @property
    def is_code(self) -> bool:
        """Whether its wind is that of a building code's map, not a gust that somebody names."""
        ...

    @property
    def bases(self) -> tuple[str, ...]:
        """The bases of judgement that belong to it, the one that is taken unless said first."""
        ...

    def speed_means(self, method: str) -> str:
        """Return what ``wind`` is under a method, as it stands after 'its wind is'."""
        ...

    def document(self, method: str) -> str:
        """Return the document and the chapters on which the wind rests."""
        ...

    def tables(self, method: str) -> tuple[str, ...]:
        """Return the tables of values on which the wind rests whatever the piece."""
        ...

    def read_wind(self, row: Row, method: str, wind: float | None) -> float | None:
        """Return ``wind`` in m/s as it enters the method; record what is wrong with its keys."""
        ...

    def at(self, site: Site, height: float) -> Method:
        """Return the wind at a site on a piece of that height in m."""
        ...

    def gust_ratio(self, site: Site, height: float) -> float:
        """Return the gust at the piece's top over the forecast gust 10 m up over open country."""
        ...

    def air_density(self, site: Site) -> float:
        """Return the density of air in kg/m3."""
        ...

    def in_surroundings(self, site: Site, exposure: str) -> Site:
        """Return the site as it would be among houses "B", on open ground "C" or by water "D"."""
        ...

    def open_gust(self, site: Site) -> float | None:
        """Return the 3-s gust in m/s, 10 m up over open country, that the site's wind is.

        None where it is the wind at the piece, of which that cannot be told.
        """
        ...

    def speed_of(self, gust: float, site: Site, height: float) -> float:
        """Return ``wind`` in m/s as ``site.method`` takes it, of a gust over open country."""
        ...

    def years(self, gust: float, site: Site) -> tuple[float, float] | None:
        """Return once in how many years a forecast gust in m/s comes by the standard's own map.

        Beside it the period in years that the map states; None where nothing can be told.
        """
        ...


STANDARDS: tuple[WindStandard, ...] = (GUST, ASCE7, EN1991)
"""Every book that there is, in the order in which people are told."""


def timber_with(method: str) -> str:
    """Return the book of timber that goes with a method where the site names none."""
    return EN1995 if method in EN1991.names else NDS


def methods() -> tuple[str, ...]:
    """Return what a site's ``method`` may be."""
    return tuple(name for standard in STANDARDS for name in standard.names)


def standard_of(method: str) -> WindStandard:
    """Return the standard of a method. KeyError: there is none of that name."""
    for standard in STANDARDS:
        if method in standard.names:
            return standard
    raise KeyError(f"there is no method {method!r}: {', '.join(methods())}")


def method_of(site: Site, height: float) -> Method:
    """Return the wind of a site on a piece of that height in m."""
    return standard_of(site.method).at(site, height)


def shelter_of_ground(site: Site, height: float) -> float:
    """Return the gust at the top of a piece over the forecast gust, by the site's standard."""
    return standard_of(site.method).gust_ratio(site, height)


def air_density(site: Site) -> float:
    """Return the density of air in kg/m3, thinner where the site says how high it lies."""
    return standard_of(site.method).air_density(site)
