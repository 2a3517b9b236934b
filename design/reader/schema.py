"""What a table of the file may hold, and what the reading of one file gathers."""

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Generic, NamedTuple, TypeVar

from msgspec import Struct, field

from ...units.frozen import ByIdentity, ByValue
from ..bounds import DEFAULT_BOUNDS, Bounds
from ..faults import Fault
from .mending import changed
from .scan import Scan, Spot
from .typed_text import shown

if TYPE_CHECKING:
    from .row import Row

_T = TypeVar("_T")
Names = Sequence[str] | Callable[[], Sequence[str]]


class Instead(NamedTuple):
    """What to type in place of a value, or of the key's own ``name``; ``sure`` as in ``Change``."""

    text: str
    sure: bool = False
    name: bool = False


class Key(ByValue, frozen=True):
    """A key of a table: its kind is plain (text, count, flag …) or a kind of quantity.

    ``choices`` are the accepted names of a choice, or of a quantity that may be given by a name;
    ``words`` answer others (in small letters);
    ``bounds`` replace those of the kind, ``hint`` is given where the key is missing. One that names
    a part says which of those that its row's own name tells, the first or the next: ``nth_part``.
    """

    name: str
    kind: str
    required: bool = False
    choices: Names = ()
    bounds: Bounds | None = None
    hint: str = ""
    words: Mapping[str, str] = field(default_factory=dict[str, str])
    nth_part: int | None = None

    def names(self) -> Sequence[str]:
        """Return the accepted names."""
        return self.choices() if callable(self.choices) else self.choices

    def limits(self) -> Bounds | None:
        """Return the bounds that hold for it."""
        return self.bounds or DEFAULT_BOUNDS.get(self.kind)


class TableSpec(ByIdentity, Generic[_T], frozen=True):
    """A table that a room owns: its keys, and how a row of it becomes that room's type.

    ``words`` answers keys that people would expect; ``later`` names keys that are not understood
    yet. ``build`` returns None where the row's faults leave nothing to return.
    """

    name: str
    gives: type[_T]
    keys: tuple[Key, ...]
    build: "Callable[[Row], _T | None]"
    many: bool = False
    required: bool = False
    words: Mapping[str, str] = field(default_factory=dict[str, str])
    later: frozenset[str] = frozenset()


class Reading(Struct, eq=False):
    """What the reading of one file gathers: its faults and the notes to repeat."""

    file: str
    scan: Scan
    metric: bool = False
    faults: list[Fault] = field(default_factory=list[Fault])
    notes: list[str] = field(default_factory=list[str])
    part_names: tuple[str, ...] = ()
    """What the file calls its parts, rightly read or not: for tables that name them."""

    def fault(
        self,
        spot: Spot | None,
        part: str | None,
        found: str,
        expected: str,
        hint: str = "",
        instead: Instead | None = None,
    ) -> None:
        """Record a fault at a place of the file, and what to type instead."""
        line = self.scan.line(spot) if spot else None
        key = shown(spot.key) if spot and spot.key else None
        change = None
        if spot is not None and instead is not None:
            at = (self.scan.keys if instead.name else self.scan.values).get(spot)
            change = changed(self.scan.seen, at, instead.text, instead.sure)
        missing = spot is None or (spot not in self.scan.lines and change is None)
        self.faults.append(
            Fault(self.file, line, part, key, found, expected, hint, change, missing)
        )
