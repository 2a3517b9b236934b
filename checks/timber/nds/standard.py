"""NDS as a book of timber: its fasteners, lumber and sheets behind the face of ``books.py``."""

from math import inf

import numpy as np
from numpy.typing import ArrayLike

from ....loads.combinations import level_of
from ....materials.fastener import Fastener
from ....materials.lumber import Lumber
from ....materials.sheets import Sheet
from ....units.arrays import Array
from ..terms.answers import Adjusted, Room, Values
from ..terms.capacity import Capacity
from ..terms.driven import Driven
from . import adjustments, fastener_capacity, member_strength, room
from .beams import both_ways_use
from .columns import column_stability, euler_stress, pressed_use


class _Sticks:
    """NDS 2018 3.7 and 3.9; C_D not on E_min (2.3.2)."""

    def gives(
        self, strength: ArrayLike, elastic: ArrayLike, slender: ArrayLike, longer: ArrayLike
    ) -> Array:
        """Return F_c* C_P."""
        least = np.asarray(longer) * euler_stress(elastic, slender)
        return np.asarray(strength) * column_stability(strength, least)

    def bent(
        self, edge: tuple[Array, float], flat: tuple[Array, float], buckling: ArrayLike
    ) -> Array:
        """Return Eq. 3.9-3 without axial load."""
        return both_ways_use(*edge, *flat, buckling)

    def pressed(
        self,
        pressed: Array,
        gives: Array,
        edge: tuple[Array, float, float],
        flat: tuple[Array, float, float],
        elastic: float,
        longer: ArrayLike,
        buckling: ArrayLike,
    ) -> Array:
        """Return Eq. 3.9-3."""
        ways = [
            (stress, strength, np.asarray(longer) * euler_stress(elastic, slender))
            for stress, strength, slender in (edge, flat)
        ]
        return pressed_use(pressed, gives, ways[0], ways[1], buckling)


class _NDS:
    """NDS 2018."""

    name = "NDS"
    title = "NDS"
    members = "NDS 2018 3.3, 3.4, 3.7, 3.9, 4.3"
    spacing = room.NDS_SPACING
    law = _Sticks()

    def values(self, stuff: Lumber | Sheet) -> Values:
        """Return the NDS Supplement's, or the Panel Design Specification's."""
        unread = stuff.unread if isinstance(stuff, Sheet) else stuff.source
        return Values(stuff.source, stuff.confidence, unread)

    def capacity(
        self, fastener: Fastener, driven: Driven, basis: str, count: int = 1, apart: float = inf
    ) -> Capacity:
        """Return it by NDS 2018 chapters 11 and 12, whatever the ``count`` and room."""
        return fastener_capacity.adjusted_capacity(fastener, driven, level_of(basis))

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
        """Return it by 12.5.1 and the Commentary, in any wood."""
        if sheet:
            return room.room_in_panel(fastener, predrilled=predrilled, used=used)
        return room.room_in_wood(fastener, predrilled=predrilled, used=used, slender=slender)

    def splits_at(
        self, material: str, thick: float, deep: float, reach: float, basis: str, dry: bool
    ) -> float:
        """Return infinity: 12.5.1 keeps fasteners from the edge instead."""
        return inf

    def needs_lead_holes(self, fastener: Fastener, gravity: float | None) -> bool:
        """Return it by 12.1.4.2 and 12.1.5.2."""
        return room.needs_lead_holes(fastener, gravity)

    def wind_over(self, load: str, basis: str) -> float:
        """Return C_D of wind over that of the load; lambda on the strength level."""
        return adjustments.duration_ratio(load, level_of(basis))

    def adjusted(
        self,
        lumber: Lumber,
        least: float,
        wide: float,
        length: float,
        basis: str,
        between: bool = False,
    ) -> Adjusted:
        """Return F' by NDS 2018 4.3."""
        return member_strength.adjusted_design_values(
            lumber, least, wide, length, level_of(basis), between
        )

    def sheet_bending(self, sheet: Sheet, strip: ArrayLike, basis: str, across: bool) -> Array:
        """Return it by the Panel Design Specification and NDS 2018 9.3."""
        return member_strength.sheet_bending(sheet, strip, level_of(basis), across)

    def sheet_rolling_shear(self, sheet: Sheet, basis: str, across: bool) -> float:
        """Return it by the same."""
        return member_strength.sheet_rolling_shear(sheet, level_of(basis), across)

    def sheet_through(self, sheet: Sheet, basis: str) -> float:
        """Return it by the same."""
        return member_strength.sheet_through(sheet, level_of(basis))


NDS_BOOK = _NDS()
