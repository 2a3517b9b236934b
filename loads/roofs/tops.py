"""What a book of wind says of surfaces that lie or lean: closed tops, free roofs, small panels."""

from typing import Protocol

from shapely.geometry.base import BaseGeometry

from ...design.placing import Body
from ...units.arrays import Array
from .roof_wind import FreeRoofBoard, RoofWind

OVERHANG = "beneath a windward overhang"
VESSEL_FLOOR = "floor of an open vessel"
OPEN_SIDE = "roof over an open side"
FREE_LIFTED, FREE_PRESSED = "free panel lifted", "free panel pressed"

PLACES = (OVERHANG, VESSEL_FLOOR, OPEN_SIDE, FREE_LIFTED, FREE_PRESSED)
"""Places that the figures of tops and roofs leave out; each book has its own coefficient."""


class Tops(Protocol):
    """The figures of one book. Suction is upward and above 0, times the velocity pressure.

    Tops are ``h`` m above ground, ``L`` (D,) m long along the wind and ``b`` (D,) m wide.
    """

    @property
    def cases(self) -> tuple[tuple[str, ...], ...]:
        """What acts in each case of free roofs."""
        ...

    @property
    def document(self) -> str:
        """Where the figures stand."""
        ...

    @property
    def level_to(self) -> float:
        """The slope in degrees up to which a top is level."""
        ...

    def strips(self, h: float, L: Array, b: Array, area: float) -> tuple[Array, Array]:
        """Return where strips across a level top of ``area`` m2 begin, and their suction (S, D).

        In m downwind of its windward edge.
        """
        ...

    def slope(
        self,
        slope: Array,
        facing: Array,
        reach: tuple[Array, Array],
        h: float,
        L: Array,
        b: Array,
        area: float,
    ) -> Array:
        """Return the suction (P, D) on slopes of a closed roof, on their areas in plan.

        ``slope`` (P, 1) in degrees; ``facing`` (P, D) the cosine of the wind's angle off its fall,
        1 where it blows up it; ``reach`` (P, D) where it begins and ends, in m downwind of the
        roof's edge.
        """
        ...

    def on_board(
        self, board: FreeRoofBoard, along: Array, obstructed: Array, solid: float, face: float
    ) -> RoofWind:
        """Return the wind on a board that wind passes beneath.

        ``along`` (D, 2) is the way in which it blows, ``obstructed`` (D,) how far what stands
        beneath keeps it off, 0 to 1; ``solid`` the share of a solid board's force that a lattice
        takes, and ``face`` the coefficient of the same board as a sign.
        """
        ...

    def on_slopes(
        self, body: Body, closed: BaseGeometry, along: Array, obstructed: Array
    ) -> RoofWind:
        """Return the wind on a free roof with slopes; ``closed`` is its plan."""
        ...

    def inside(self, open_to_wind: bool) -> float:
        """Return the coefficient of the air inside a body, either way."""
        ...

    def panel(self, place: str, open_to_wind: bool = False) -> float:
        """Return the coefficient on one panel of a wall or slope, "inward" or "outward".

        With that of the air inside.
        """
        ...

    def beside(self, place: str) -> float:
        """Return the coefficient of another place of ``PLACES``, above 0 whichever way it acts."""
        ...

    def overhang(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return the suction on what stands out beyond what bears it, pressure beneath and all.

        ``slope`` in degrees, ``h`` its height above ground and ``sides`` of the whole in m.
        """
        ...

    def local_suction(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return the suction on one panel of a roof or lid, without the air inside.

        ``slope`` in degrees, ``h`` its height above ground and ``sides`` of it in plan in m.
        """
        ...
