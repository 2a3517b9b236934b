"""The books of timber and the one face by which the rest of the house asks them.

A book says what fasteners, lumber and sheets resist. Which one counts stands in the name of the
basis of resistance (``loads/combinations.py``). Adding one adds a folder here and its name to
``TIMBER`` there and to ``BOOKS``.
"""

from collections.abc import Callable, Mapping
from math import inf
from typing import Protocol

from numpy.typing import ArrayLike

from ...loads.combinations import EN1995, NDS, timber_of
from ...materials.fastener import Fastener
from ...materials.lumber import Lumber
from ...materials.sheets import Sheet
from ...units.arrays import Array
from .terms.answers import Adjusted, MemberMaterial, Room, StickLaw, Values
from .terms.capacity import Capacity
from .terms.driven import Driven


class TimberBook(Protocol):
    """One book. Of a ``basis`` of resistance it asks how high loads are (``level_of``)."""

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
        self,
        fastener: Fastener,
        driven: Driven,
        basis: str,
        count: int = 1,
        apart: float = inf,
    ) -> Capacity:
        """Return what one of ``count`` fasteners holds under wind.

        In a row along the grain they stand ``apart`` m at least. ValueError where the book has no
        value for what the fastener goes through or into.
        """
        ...

    @property
    def spacing(self) -> str:
        """Clauses by which the room of fasteners is judged."""
        ...

    def room(
        self,
        fastener: Fastener,
        *,
        predrilled: bool,
        sheet: bool = False,
        used: float = 1.0,
        slender: float = 0.0,
        gravity: float | None = None,
    ) -> Room:
        """Return the room that a fastener needs in wood, or in the face of a ``sheet``.

        ``used`` is which part of what one holds in full is asked of it, ``slender`` the lesser
        length in wood over its diameter, ``gravity`` the specific gravity of the denser piece.
        """
        ...

    def splits_at(
        self, material: str, thick: float, deep: float, reach: float, basis: str, dry: bool
    ) -> float:
        """Return the force in N across its grain at which a piece splits along its fasteners.

        ``thick`` m of it are fastened through, it is ``deep`` m across its grain, and from the edge
        toward which it is drawn the farthest fastener stands ``reach`` m. Infinite where the book
        has no such rule.
        """
        ...

    def needs_lead_holes(self, fastener: Fastener, gravity: float | None) -> bool:
        """Return whether a fastener needs a lead hole in wood of that specific gravity."""
        ...

    def wind_over(self, load: str, basis: str) -> float:
        """Return how much more wood holds under wind than under a load that stays longer.

        ``load`` is "permanent", dead load alone, or "normal", what people do. KeyError for another.
        """
        ...

    def adjusted(
        self,
        lumber: Lumber,
        least: float,
        wide: float,
        length: float,
        basis: str,
        between: bool = False,
    ) -> Adjusted | None:
        """Return design values of a piece ``least`` by ``wide`` m; None where the book has none.

        It stands out by ``length`` m, or spans it ``between`` two supports.
        """
        ...

    def sheet_bending(
        self, sheet: Sheet, strip: ArrayLike, basis: str, across: bool
    ) -> Array | None:
        """Return the moment in N m per m of width (…) that a sheet may carry; None: no value.

        ``strip`` (…) in m is how wide the strip is, ``across`` the grain of its face.
        """
        ...

    def sheet_rolling_shear(self, sheet: Sheet, basis: str, across: bool) -> float | None:
        """Return the shear in N per m of width that its layers hold."""
        ...

    def sheet_through(self, sheet: Sheet, basis: str) -> float | None:
        """Return the shear in N per m through its thickness."""
        ...


def _nds() -> TimberBook:
    from .nds.standard import NDS_BOOK  # noqa: PLC0415 - a book is opened where a piece goes by it

    return NDS_BOOK


def _en1995() -> TimberBook:
    from .en1995.standard import EN1995_BOOK  # noqa: PLC0415 - as above

    return EN1995_BOOK


BOOKS: Mapping[str, Callable[[], TimberBook]] = {NDS: _nds, EN1995: _en1995}


def book_of(basis: str) -> TimberBook:
    """Return the book of a basis of resistance. KeyError: there is none of that name."""
    name = timber_of(basis)
    if name not in BOOKS:
        raise KeyError(f"there is no book of timber {name!r}")
    return BOOKS[name]()


def titled(title: str) -> TimberBook:
    """Return the book that a capacity names (``Capacity.book``). KeyError: there is none."""
    for opened in BOOKS.values():
        if opened().title == title:
            return opened()
    raise KeyError(f"there is no book of timber {title!r}")


def values_of(stuff: MemberMaterial, basis: str) -> Values:
    """Return where the values of some stuff stand, of wood by the book of the basis."""
    if isinstance(stuff, Lumber | Sheet):
        return book_of(basis).values(stuff)
    return Values(stuff.source, stuff.confidence, stuff.source)
