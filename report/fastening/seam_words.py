"""The seams of many-sided bodies in words: what runs along them, and how to fasten them."""

from collections.abc import Collection, Iterable
from math import floor

from ...checks.fasteners.fastener_sets import CLEAT
from ...checks.seams.seam_demands import Seams
from ...checks.seams.seam_fasteners import Spacing
from ...materials import fasteners
from ..wording.amounts import FOOT, INCH, POUND_FORCE, Amounts
from ..wording.lines import Line, wrapped
from ..wording.remark import joined
from .fastener_words import several_fasteners

MOST_APART = 12 * INCH
"""Further apart nobody sets fasteners in a seam, however little it carries: judgement."""


def seam_lines(seams: Iterable[Seams], fastened: Collection[str], amounts: Amounts) -> list[Line]:
    """Return a paragraph for each many-sided body: shear along a seam, pull across, spacing.

    ``fastened`` are the bodies whose seams the file fastens.
    """
    found: list[Line] = []
    for one in seams:
        found += wrapped(_said(one, amounts, one.part in fastened), "  ", "    ")
    return found


def _said(one: Seams, amounts: Amounts, fastened: bool) -> str:
    held = [_spaced(each, amounts) for each in one.spacings if each.spacing is not None]
    how = (
        f"through the panel into a {CLEAT} cleat inside the corner, out of doors: "
        f"{joined(held, 'or')}; into a panel's edge nothing counts"
        if held
        else "no published value for what it is made of: no spacing"
    )
    if fastened:
        how = "judged above as they are fastened"
    return (
        f"seams: {one.part}, each of {one.count}: shear along it V Q/(2 I) + T/(2 A) "
        f"{_per_length(one.flow, amounts)}, a panel pulls at it with "
        f"{_per_length(one.pull, amounts)} outward and {_per_length(one.hoop, amounts)} in its own "
        f"plane; {how}."
    )


def _per_length(value: float, amounts: Amounts) -> str:
    metric = f"{value:,.0f} N/m"
    return metric if amounts.metric else f"{metric} ({value / POUND_FORCE * FOOT:,.1f} lb/ft)"


def _spaced(one: Spacing, amounts: Amounts) -> str:
    """Return a spacing down to 1/2 in or 10 mm, and no more than people set."""
    apart = min(one.spacing or 0.0, MOST_APART)
    step = 0.01 if amounts.metric else 0.5 * INCH
    name = several_fasteners(fasteners.find_fastener(one.fastener))
    return f"{name}, one every {amounts.length(floor(apart / step + 1.0e-9) * step)}"
