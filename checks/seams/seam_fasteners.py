"""Fasteners along a seam: through one panel into a cleat inside the corner, as in any joint."""

from math import ceil, inf

from ...materials import fasteners
from ...materials.fastener import Fastener
from ...statics.tables.seam_table import SeamRow
from ...units.frozen import ByValue, replace
from ..fasteners.fastener_sets import CLEAT
from ..joints.combined import fastener_use
from ..timber.books import TimberBook, book_of
from ..timber.terms.answers import Room
from ..timber.terms.capacity import Capacity
from ..timber.terms.driven import Driven
from ..timber.terms.joint_material import JointMaterial, joint_material_of

FASTENERS = ("6d common nail", "8d common nail", "#8 wood screw 2 in")
"""What a spacing is told for where nothing says what a seam is fastened by."""


_TURNS = 12
"""So often a spacing is tried again with what fasteners so near hold in a row."""


class Spacing(ByValue, frozen=True):
    """A fastener and the greatest spacing in m at which it holds a seam; None where it does not."""

    fastener: str
    spacing: float | None


def through_a_panel(
    panel: JointMaterial,
    wall: float,
    cleat: str | None,
    made_wet: bool | None = None,
    stays_dry: bool = False,
    crown_across: bool = False,
) -> Driven:
    """Return how a seam's fastener is driven, square to its panel, ``wall`` m thick.

    Into the side grain of a ``cleat`` at least as thick as it reaches; without one into the edge
    of the next panel.
    """
    return Driven(
        side=panel,
        main=panel if cleat is None else joint_material_of(cleat),
        through=wall,
        room=inf,
        into="panel edge" if cleat is None else "side grain",
        made_wet=made_wet,
        stays_dry=stays_dry,
        crown_across=crown_across,
    )


def room_along_a_seam(
    row: SeamRow, panel: JointMaterial, book: TimberBook, *, predrilled: bool | None = None
) -> Room:
    """Return the room that fasteners need in a panel and in the cleat, whose grain runs along it.

    What is asked in lumber counts, since it is more than in a sheet. In lead holes where the row
    says so, unless ``predrilled`` says otherwise.
    """
    drilled = row.predrilled if predrilled is None else predrilled
    cleat = panel if row.cleat is None else joint_material_of(row.cleat)
    wood = book.room(row.fastener, predrilled=drilled, slender=6.0, gravity=cleat.gravity)
    sheet = book.room(row.fastener, predrilled=drilled, sheet=True, gravity=panel.gravity)
    return replace(wood, edge=max(wood.edge, sheet.edge))


def held_along_a_seam(row: SeamRow, driven: Driven, long: float, basis: str) -> Capacity:
    """Return what each fastener of a row along a seam holds, ``long`` m, pushed along its grain.

    ValueError as ``capacity``.
    """
    count = ceil(long / row.spacing - 1.0e-9) + 1
    return book_of(basis).capacity(row.fastener, driven, basis, count, row.spacing)


def greatest_spacing(
    fastener: Fastener, holds: Capacity, sideways: float, pull: float
) -> float | None:
    """Return how far apart in m fasteners may stand that share two pulls in N/m.

    Each panel's row takes both: what pushes ``sideways``, and the ``pull`` along the fastener. None
    where none so near holds, infinite where nothing is asked.
    """
    used = float(fastener_use(holds.law, pull, sideways, holds.pull, holds.sideways))
    if used == 0.0:
        return inf
    return 1.0 / used if used < inf else None


def spacings_into_a_cleat(
    material: str | None, wall: float, sideways: float, pull: float, basis: str, long: float
) -> tuple[Spacing, ...]:
    """Return how far apart common fasteners may stand, out of doors, into an assumed cleat.

    ``long`` m is the seam: of many in a row each may hold less.
    """
    driven = through_a_panel(joint_material_of(material), wall, CLEAT)
    found: list[Spacing] = []
    for name in FASTENERS:
        one = fasteners.find_fastener(name)
        try:
            found.append(Spacing(name, _in_a_row(one, driven, (sideways, pull), basis, long)))
        except ValueError:
            found.append(Spacing(name, None))
    return tuple(found)


def _in_a_row(
    fastener: Fastener, driven: Driven, asked: tuple[float, float], basis: str, long: float
) -> float | None:
    """Return how far apart they may stand: nearer ones hold no more each, so none is too far."""
    book, apart = book_of(basis), inf
    for _ in range(_TURNS):
        count = 1 if apart == inf else ceil(long / apart) + 1
        holds = book.capacity(fastener, driven, basis, count, apart)
        found = greatest_spacing(fastener, holds, *asked)
        if found is None or found >= apart * (1.0 - 1.0e-3):
            return found if found is None else min(found, apart)
        apart = found
    return apart
