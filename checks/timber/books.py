"""The books of timber and the one face by which the rest of the house asks them.

A book says what fasteners, lumber and sheets resist. Which one counts stands in the name of the
basis of resistance (``loads/combinations.py``). Adding one adds a folder here and its name to
``TIMBER`` there and to ``BOOKS``.
"""

from math import inf
from typing import Protocol

from numpy.typing import ArrayLike

from ...design.shapes.shape import Array
from ...loads.combinations import level_of, timber_of
from ...materials.fastener import Fastener
from ...materials.lumber import Lumber
from ...materials.sheets import Sheet
from ..joints.driven import Driven
from ..members.adjusted import Adjusted
from ..members.member_check import Stuff
from .capacity import Capacity
from .en1995.standard import EN1995
from .laws import StickLaw, Values
from .nds.standard import NDS


class TimberBook(Protocol):
    """One book. Its ``level`` is "allowable", "strength" or "service": how high loads are."""

    @property
    def name(self) -> str:
        """What a site's ``timber`` calls it."""
        ...

    @property
    def title(self) -> str:
        """What people call it."""
        ...

    @property
    def members(self) -> str:
        """Clauses by which sticks are judged."""
        ...

    @property
    def law(self) -> StickLaw:
        """How sticks of wood are used, pressed, drawn and bent at once."""
        ...

    def values(self, stuff: Lumber | Sheet) -> Values:
        """Return where its values for lumber or a sheet stand."""
        ...

    def capacity(
        self, fastener: Fastener, driven: Driven, level: str, count: int, apart: float
    ) -> Capacity:
        """Return what one of ``count``, ``apart`` m, holds under wind. ValueError: no value."""
        ...

    def wind_over(self, load: str, level: str) -> float:
        """Return how much more is held under wind than under a "permanent" or "normal" load."""
        ...

    def adjusted(
        self, lumber: Lumber, least: float, wide: float, length: float, level: str, between: bool
    ) -> Adjusted | None:
        """Return design values of a piece of lumber; None where the book has none."""
        ...

    def sheet_bending(
        self, sheet: Sheet, strip: ArrayLike, level: str, across: bool
    ) -> Array | None:
        """Return the moment in N m per m of width (…) of a sheet; None where it has none."""
        ...

    def sheet_rolling_shear(self, sheet: Sheet, level: str, across: bool) -> float | None:
        """Return the shear in N per m of width that its layers hold."""
        ...

    def sheet_through(self, sheet: Sheet, level: str) -> float | None:
        """Return the shear in N per m through its thickness."""
        ...


BOOKS: tuple[TimberBook, ...] = (NDS, EN1995)


def book_of(basis: str) -> TimberBook:
    """Return the book of a basis of resistance. KeyError: there is none of that name."""
    name = timber_of(basis)
    for book in BOOKS:
        if book.name == name:
            return book
    raise KeyError(f"there is no book of timber {name!r}")


def capacity(
    fastener: Fastener, driven: Driven, basis: str, count: int = 1, apart: float = inf
) -> Capacity:
    """Return what one of ``count`` fasteners holds under wind, by the book of the basis.

    In a row along the grain they stand ``apart`` m at least. ValueError where it has no value for
    what the fastener goes through or into.
    """
    return book_of(basis).capacity(fastener, driven, level_of(basis), count, apart)


def wind_over(load: str, basis: str) -> float:
    """Return how much more wood holds under wind than under a load that stays longer.

    ``load`` is "permanent", dead load alone, or "normal", what people do. KeyError for another.
    """
    return book_of(basis).wind_over(load, level_of(basis))


def values(stuff: Stuff, basis: str) -> Values:
    """Return where the values of some stuff stand, of wood by the book of the basis."""
    if isinstance(stuff, Lumber | Sheet):
        return book_of(basis).values(stuff)
    return Values(stuff.source, stuff.confidence, stuff.source)


def adjusted(
    lumber: Lumber, least: float, wide: float, length: float, basis: str, between: bool = False
) -> Adjusted | None:
    """Return design values of a piece ``least`` by ``wide`` m, by the book of the basis.

    It stands out by ``length`` m, or spans it ``between`` two supports. None: it has none.
    """
    return book_of(basis).adjusted(lumber, least, wide, length, level_of(basis), between)


def sheet_bending(sheet: Sheet, strip: ArrayLike, basis: str, across: bool) -> Array | None:
    """Return the moment in N m per m of width (…) that a sheet may carry, by the basis's book.

    ``strip`` (…) in m is how wide the strip is, ``across`` the grain of its face. None: none.
    """
    return book_of(basis).sheet_bending(sheet, strip, level_of(basis), across)


def sheet_rolling_shear(sheet: Sheet, basis: str, across: bool) -> float | None:
    """Return the shear in N per m of width that the layers of a sheet hold; None as above."""
    return book_of(basis).sheet_rolling_shear(sheet, level_of(basis), across)


def sheet_through(sheet: Sheet, basis: str) -> float | None:
    """Return the shear in N per m through the thickness of a sheet; None as above."""
    return book_of(basis).sheet_through(sheet, level_of(basis))
