"""Fasteners along a seam: through one panel into a cleat inside the corner, as in any joint."""

from dataclasses import dataclass, replace
from math import inf

from ...materials import fasteners
from ...materials.fastener import Fastener
from ..joints.combined import fastener_use
from ..joints.driven import Driven
from ..joints.fastener_room import Room, room_in_panel, room_in_wood
from ..joints.joint_material import Stuff, stuff_of
from ..timber.books import book_of
from ..timber.capacity import Capacity

CLEAT = "spruce-pine-fir"
"""The lumber of the corner cleat where none is named: a light, common one (judgement)."""

FASTENERS = ("6d common nail", "8d common nail", "#8 wood screw 2 in")
"""What a spacing is told for where nothing says what a seam is fastened by."""


@dataclass(frozen=True)
class Spacing:
    """A fastener and the greatest spacing in m at which it holds a seam; None where it does not."""

    fastener: str
    spacing: float | None


def through_a_panel(
    panel: Stuff,
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
        main=panel if cleat is None else stuff_of(cleat),
        through=wall,
        room=inf,
        into="panel edge" if cleat is None else "side grain",
        made_wet=made_wet,
        stays_dry=stays_dry,
        crown_across=crown_across,
    )


def room_along_a_seam(fastener: Fastener, *, predrilled: bool) -> Room:
    """Return the room that fasteners need in a panel and in the cleat, whose grain runs along it.

    What is asked in lumber counts, since it is more than in a sheet.
    """
    wood = room_in_wood(fastener, predrilled=predrilled)
    panel = room_in_panel(fastener, predrilled=predrilled)
    return replace(wood, edge=max(wood.edge, panel.edge))


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
    material: str | None, wall: float, sideways: float, pull: float, basis: str
) -> tuple[Spacing, ...]:
    """Return how far apart common fasteners may stand, out of doors, into an assumed cleat."""
    driven = through_a_panel(stuff_of(material), wall, CLEAT)
    found: list[Spacing] = []
    for name in FASTENERS:
        one = fasteners.find(name)
        try:
            holds = book_of(basis).capacity(one, driven, basis)
        except ValueError:
            found.append(Spacing(name, None))
            continue
        found.append(Spacing(name, greatest_spacing(one, holds, sideways, pull)))
    return tuple(found)
