"""Seams that the file fastens, in a builder's words: what governs, and what would hold them."""

from collections.abc import Iterable, Mapping
from math import isfinite
from typing import Any

from ...checks.build_steps import steps_of
from ...checks.examination import Examination
from ...checks.joints.fastener_sets import CLEAT
from ...checks.judging import Check
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from .fastener_words import several_fasteners, thick_enough, too_short
from .joint_words import made, reasons

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...checks.seams.seam_check import SeamFound
    from ...checks.seams.seam_sizing import SeamRemedy, SeamSizing


def seam_of(examination: Examination, check: Check) -> "SeamFound | None":
    """Return the fastened seams of a check, None where it is of something else."""
    found = examination.fastened_seams
    return next((one for one in found if one.check.name == check.name), None)


def seam_notes(examination: Examination, check: Check) -> tuple[str, ...]:
    """Return what governed a part's seams, as sentences; none for another check."""
    seam = seam_of(examination, check)
    if seam is None:
        return ()
    amounts = Amounts(examination.design.units == "metric")
    notes = (
        _asked(seam, amounts),
        _held(seam, amounts),
        _reach(seam, amounts),
        *reasons(seam.holds, amounts),
        made(seam.row.fastener),
    )
    return tuple(note for note in notes if note)


def seam_remedy(examination: Examination, seam: "SeamFound", amounts: Amounts) -> str:
    """Return what to do about a part's seams that do not hold."""
    return _remedy(sized_seam(examination, seam), amounts)


def seam_sizes(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return all fastened seams with what would make them hold; nothing where there are none."""
    found = _lines(examination, examination.fastened_seams, amounts)
    return [Line("Seams"), *found] if found else []


def seam_object(seam: "SeamFound") -> Mapping[str, Any]:
    """Return how seams are fastened, what each fastener is asked and what it holds, in SI."""
    row, holds = seam.row, seam.holds
    return {
        "fastener": row.fastener.name,
        "spacing_m": row.spacing,
        "cleat": row.cleat,
        "into": seam.driven.into,
        "through_m": seam.driven.through,
        "penetration_m": holds.penetration,
        "tension_N": seam.tension,
        "shear_N": seam.shear,
        "withdrawal_N": holds.out,
        "head_pull_through_N": holds.head if isfinite(holds.head) else None,
        "lateral_N": holds.sideways,
        "mode": holds.mode or None,
        "passes": seam.check.passes,
        "utilization": seam.check.utilization,
    }


def sized_seam_object(examination: Examination, seam: "SeamFound") -> Mapping[str, Any]:
    """Return a part's seams with what would make them hold."""
    sizing = sized_seam(examination, seam)
    return {
        "part": seam.row.part,
        **seam_object(seam),
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


def sized_seam(examination: Examination, seam: "SeamFound") -> "SeamSizing":
    """Return the ways to make a part's seams hold."""
    from ...checks.seams.seam_sizing import size_seam  # noqa: PLC0415 - only where seams are fastened

    units = examination.design.units
    return size_seam(seam, steps_of(units).width, units == "metric")


def _lines(examination: Examination, seams: "Iterable[SeamFound]", amounts: Amounts) -> list[Line]:
    found: list[Line] = []
    for seam in seams:
        text = _remedy(sized_seam(examination, seam), amounts)
        found += wrapped(f"seams of {seam.row.part}: {text}", "  ", "      ")
    return found


def _remedy(sizing: "SeamSizing", amounts: Amounts) -> str:
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


def _asked(seam: "SeamFound", amounts: Amounts) -> str:
    row = seam.row
    return (
        f"Each {row.fastener.name}, one every {amounts.length(row.spacing)} along each of "
        f"{seam.seams.count} seams in each panel, is pulled "
        f"{amounts.measure(seam.tension, 'N', 1)} by its panel and pushed sideways "
        f"{amounts.measure(seam.shear, 'N', 1)} by the shear along the seam."
    )


def _held(seam: "SeamFound", amounts: Amounts) -> str:
    holds = seam.holds
    head = "crown" if seam.row.fastener.kind == "staple" else "head"
    through = f", {amounts.measure(holds.head, 'N')} at its {head}" if isfinite(holds.head) else ""
    mode = f" (mode {holds.mode})" if holds.mode else ""
    return (
        f"By {holds.book} it holds {amounts.measure(holds.out, 'N')} against pulling out{through}, "
        "and "
        f"{amounts.measure(holds.sideways, 'N')} sideways{mode}."
    )


def _reach(seam: "SeamFound", amounts: Amounts) -> str:
    row, holds = seam.row, seam.holds
    into = f"a cleat of {row.cleat} (at least as thick as that), side grain"
    if row.cleat is None:
        into = "the edge of the next panel"
    return (
        f"Through {amounts.length(seam.driven.through)} of panel it reaches "
        f"{amounts.length(holds.penetration)} into {into}; factors {holds.factor_out:.2f} on "
        f"pulling out and {holds.factor_sideways:.2f} sideways."
    )
