"""Seams that the file fastens, in a builder's words: what governs, and what would hold them."""

from collections.abc import Iterable, Mapping
from typing import Any

from ...checks.fasteners.fastener_sets import CLEAT
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from .fastened_record import SEAM_OBJECT
from .fastener_words import several_fasteners, thick_enough, too_short

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...checks.seams.seam_sizing import SeamRemedy, SeamSizing


def seam_sizes(sizings: "Iterable[SeamSizing]", amounts: Amounts) -> list[Line]:
    """Return all fastened seams with what would make them hold; nothing where there are none."""
    found: list[Line] = []
    for sizing in sizings:
        text = f"seams of {sizing.seam.row.part}: {seam_remedy(sizing, amounts)}"
        found += wrapped(text, "  ", "      ")
    return [Line("Seams"), *found] if found else []


def sized_seam_object(sizing: "SeamSizing") -> Mapping[str, Any]:
    """Return a part's seams with what would make them hold."""
    seam = sizing.seam
    return {
        "part": seam.row.part,
        **SEAM_OBJECT.object(seam),
        "adds_cleats": sizing.adds_cleats,
        "remedies": [
            {
                "kind": one.kind,
                "fastener": one.found.row.fastener.name,
                "spacing_m": one.found.row.spacing,
                "cleat": one.found.row.cleat,
                "utilization": one.found.check.utilization,
                "next_smaller_passes": None if one.before is None else one.before.check.passes,
            }
            for one in sizing.remedies
        ],
    }


def seam_remedy(sizing: "SeamSizing", amounts: Amounts) -> str:
    """Return what to do about seams that do not hold, or that nothing is needed."""
    check = sizing.seam.check
    if check.passes:
        return f"hold, at {100.0 * (check.utilization or 0.0):.0f}% of what they can"
    short = too_short(sizing.seam.holds, "the cleat", amounts)
    first = f"{short}; " if short and not sizing.adds_cleats else ""
    if sizing.adds_cleats:
        first = (
            "nothing counts in a panel's edge: set a cleat inside each corner "
            f"(cleat = '{CLEAT}'), fastened to both panels; then "
        )
    if not sizing.remedies:
        return f"{first}none of its kind is strong enough: bolts or brackets at each corner"
    reaches = [one.found.holds.penetration for one in sizing.remedies]
    ways = "; or ".join(_way(one, amounts) for one in sizing.remedies)
    return f"{first}use {ways} ({thick_enough('cleats', reaches, amounts)})"


def _way(remedy: "SeamRemedy", amounts: Amounts) -> str:
    row = remedy.found.row
    return f"{several_fasteners(row.fastener)}, one every {amounts.length(row.spacing)}"
