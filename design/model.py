"""A design as read: named parts with shapes in SI units, their places, and the other tables."""

from collections.abc import Mapping
from typing import TypeVar, cast

from ..units.frozen import ByValue, field
from .shapes.shape import Shape

_T = TypeVar("_T")


class Place(ByValue, frozen=True):
    """Where a part stands. Lengths in m, angles in rad counter-clockwise from above.

    ``on`` or ``under`` names the part on whose top it stands or beneath which it hangs. ``tilt``
    leans its top toward +y before it is turned. ``ring`` is the diameter of the circle on which
    ``count`` copies stand, the first at ``start``; ``step`` moves each copy on from the one before.
    ``mirror`` holds "x", "y" or both: reflected copies.
    """

    on: str | None = None
    at: tuple[float, float, float] = (0.0, 0.0, 0.0)
    turn: float = 0.0
    count: int = 1
    ring: float | None = None
    start: float = 0.0
    under: str | None = None
    tilt: float = 0.0
    step: tuple[float, float, float] | None = None
    mirror: frozenset[str] = frozenset()

    @property
    def reference(self) -> str | None:
        """Return the name of the part from which its place is measured."""
        return self.on if self.on is not None else self.under


class Part(ByValue, frozen=True):
    """One named part: its shape, what it is made of, and its place.

    ``density`` in kg/m3 and ``mass`` in kg of one copy; ``mass`` overrides the weight only.
    ``contact`` is the kind that it rubs on the ground as (wood, steel, concrete, rubber),
    ``surface`` how smooth a round one is (smooth, rough, very rough). ``covering`` in kg/m2 lies
    on its outer slopes. A ``loose`` part only stands there by its weight. ``hangs_at`` is the
    height in m of the hook from which it swings. ``grade`` is that of its lumber. It stands
    ``embed`` m deep in the ground, in concrete ``encased`` m across where that is given,
    ``constrained`` where paving holds it at the surface; where it ``may_move`` half an inch there,
    the earth is asked for twice as much. It is filled with ``fill`` up to
    ``fill_depth`` m, or whole.
    """

    name: str
    shape: Shape
    place: Place = field(default_factory=Place)
    material: str | None = None
    density: float | None = None
    mass: float | None = None
    contact: str | None = None
    surface: str | None = None
    covering: float = 0.0
    loose: bool = False
    hangs_at: float | None = None
    embed: float = 0.0
    encased: float | None = None
    constrained: bool = False
    may_move: bool = False
    fill: str | None = None
    fill_depth: float | None = None
    grade: str | None = None


class Design(ByValue, frozen=True):
    """One structure as its file describes it, before anything is computed.

    ``turn`` in rad, ``weighed`` in kg, ``laid_down`` where it is meant to be laid down in wind;
    ``date`` as YYYY-MM-DD. ``tables`` holds what other rooms read from the same file, by type:
    ``design.table(Site)``, ``design.several(GivenLoad)``.
    ``notes`` are readings that a person should see repeated.

    >>> design = yf.read("examples/light-tower.toml")
    >>> [part.name for part in design.parts][:3]
    ['foot', 'tower', 'gallery']
    """

    name: str
    units: str
    parts: tuple[Part, ...]
    turn: float = 0.0
    weighed: float | None = None
    laid_down: bool = False
    maker: str | None = None
    contact: str | None = None
    serial: str | None = None
    date: str | None = None
    revision: str | None = None
    file: str = ""
    text: str = ""
    tables: Mapping[type, object] = field(default_factory=dict[type, object])
    notes: tuple[str, ...] = ()
    lines: Mapping[tuple[str, str | None], int] = field(
        default_factory=dict[tuple[str, str | None], int]
    )

    def __repr__(self) -> str:
        parts = f"{len(self.parts)} part{'s' if len(self.parts) != 1 else ''}"
        return f"<Design {self.name!r}: {parts}{f', {self.file}' if self.file else ''}>"

    def table(self, kind: type[_T]) -> _T:
        """Return what the room that owns ``kind`` read from this file. KeyError if it read none."""
        return cast(_T, self.tables[kind])

    def several(self, kind: type[_T]) -> tuple[_T, ...]:
        """Return all that a table which may stand many times gave; empty where there is none."""
        return cast(tuple[_T, ...], self.tables.get(kind, ()))
