"""EN 1995-1-1 as a book of timber, behind the face of ``books.py``."""

from math import inf

import numpy as np
from numpy.typing import ArrayLike

from ....loads.combinations import level_of
from ....materials.fastener import Fastener
from ....materials.lumber import Lumber
from ....materials.sheets import Sheet
from ....references.table import weakest_confidence
from ....units.arrays import Array
from ..terms.answers import Adjusted, Room, Values
from ..terms.capacity import Capacity
from ..terms.driven import Driven
from . import fastener as fasteners
from . import members as sticks
from . import panels, room, splitting
from .stuff import k_mod_ratio


class _Sticks:
    """EN 1995-1-1 6.2.3, 6.2.4 and 6.3.2: k_c of the weaker way on both, k_mod on all."""

    def gives(
        self, strength: ArrayLike, elastic: ArrayLike, slender: ArrayLike, longer: ArrayLike
    ) -> Array:
        """Return f_c,0,d k_c; k_mod of what lasts is on the load, E_0.05 has none."""
        buckling = np.pi**2 * np.asarray(elastic) / (12.0 * np.asarray(slender) ** 2)
        return np.asarray(strength) * sticks.column_factor(strength, buckling)

    def bent(
        self, edge: tuple[Array, float], flat: tuple[Array, float], buckling: ArrayLike
    ) -> Array:
        """Return Eq. 6.11 and 6.12; k_crit is in the strength on edge."""
        return sticks.both_ways(edge[0] / edge[1], flat[0] / flat[1])

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
        """Return Eq. 6.23 and 6.24, which is no less than 6.19 and 6.20."""
        return pressed / gives + self.bent(edge[:2], flat[:2], buckling)


class _EN1995:
    """EN 1995-1-1:2004 with its amendments."""

    name = "EN 1995"
    title = "EN 1995-1-1"
    members = sticks.EN_MEMBERS
    spacing = room.EN_SPACING
    law = _Sticks()

    def values(self, stuff: Lumber | Sheet) -> Values:
        """Return those of EN 338 and EN 1912, or of EN 12369."""
        rows = panels.panel_rows(stuff) if isinstance(stuff, Sheet) else sticks.member_rows(stuff)
        recalled = [row["source"] for row in rows if row["confidence"] == "memory"]
        return Values(
            "; ".join(row["source"] for row in rows),
            weakest_confidence(row["confidence"] for row in rows),
            "; ".join(recalled),
        )

    def capacity(
        self, fastener: Fastener, driven: Driven, basis: str, count: int = 1, apart: float = inf
    ) -> Capacity:
        """Return it by chapter 8."""
        return fasteners.design_resistance(fastener, driven, level_of(basis), count, apart)

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
        """Return it by chapter 8: in full whatever is asked, for nothing holds less nearer."""
        return room.room(fastener, predrilled=predrilled, sheet=sheet, gravity=gravity)

    def splits_at(
        self, material: str, thick: float, deep: float, reach: float, basis: str, dry: bool
    ) -> float:
        """Return F_90,Rd by 8.1.4."""
        return splitting.resistance(material, thick, deep, reach, level_of(basis), dry)

    def needs_lead_holes(self, fastener: Fastener, gravity: float | None) -> bool:
        """Return it by 8.3.1.1 (2) and 10.4.5."""
        return room.needs_predrilling(fastener, gravity)

    def wind_over(self, load: str, basis: str) -> float:
        """Return k_mod of wind over that of the load, of solid wood outdoors."""
        return k_mod_ratio(load)

    def adjusted(
        self,
        lumber: Lumber,
        least: float,
        wide: float,
        length: float,
        basis: str,
        between: bool = False,
    ) -> Adjusted | None:
        """Return it by EN 338 and 6.1 to 6.3."""
        return sticks.design_values(lumber, least, wide, length, level_of(basis), between)

    def sheet_bending(
        self, sheet: Sheet, strip: ArrayLike, basis: str, across: bool
    ) -> Array | None:
        """Return it by EN 12369."""
        return panels.bending(sheet, strip, level_of(basis), across)

    def sheet_rolling_shear(self, sheet: Sheet, basis: str, across: bool) -> float | None:
        """Return it by EN 12369, the same both ways."""
        return panels.rolling_shear(sheet, level_of(basis))

    def sheet_through(self, sheet: Sheet, basis: str) -> float | None:
        """Return it by EN 12369."""
        return panels.through(sheet, level_of(basis))


EN1995_BOOK = _EN1995()
