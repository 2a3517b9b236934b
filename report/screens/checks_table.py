"""The checks as a table: what each has, what it needs; for engineers with all that governed."""

from math import isfinite

from ...checks.examination import Examination
from ...checks.judged.judging import Check, Kind
from ...loads.asce7.velocity_pressure import STRUCTURE_KINDS
from ...units import FOOT, POUND_FORCE, figure
from ..fastening.seam_words import seam_lines
from ..told.check_notes import check_notes
from ..told.held_words import hold_downs, hold_short
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from ..wording.remark import joined
from ..wording.words import over_what

_ABOUT = 22
_MUCH = 0.5
_WAYS = {
    Kind.LOOSE_SLIDING: "slides",
    Kind.ANCHOR_HEAD: "its head",
    Kind.MEMBER: "strength",
    Kind.SEAM: "seams",
    Kind.SPACING: "room of",
}
_PLATES = ("wall panel", "box wall", "roof slope", "roof panel", "lid", "deck")
"""Roles that are left to the engineer's list while they use less than half of their strength."""

_COLUMNS = "{:<13}{:<23}{:>13}  {:>13}   {}"


def checks_table(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return what each check has and needs; the words tell, not the colour."""
    without = (
        "by its posts" if examination.posts is not None else f"without {hold_downs(examination)}"
    )
    tied = f"with {hold_short(examination)}" if examination.held else without
    share = examination.factors.helping
    weight = "2/3" if abs(share - 2.0 / 3.0) < 0.01 else f"{share:.2g}"
    title = Line(f"{f'Checks {tied}, {weight} weight':<36}{'has':>13}  {'needs':>13}")
    shown = [check for check in examination.checks if _is_shown(check)]
    rows = [_row(examination, check, amounts) for check in shown]
    rows += _strengths(examination, amounts)
    if doubtful := [check for check in examination.checks if check.fails_in_doubt]:
        rows += wrapped(
            f"As they are read {joined(check.subject for check in doubtful)} would hold; not if "
            "wood, fasteners or ground give more or less, which nobody knows.",
            "  ",
            "    ",
        )
    if any(check.capacity <= 0.0 for check in examination.free or ()):
        rows.append(Line("  Has none: the wind lifts it off its feet."))
    return [title, *rows]


def _is_shown(check: Check) -> bool:
    """Return whether a check is a row: parts are told apart, and of room only what is short."""
    return check.kind is not Kind.MEMBER and (check.kind is not Kind.SPACING or not check.passes)


def _strengths(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return each part that is not strong enough, and the nearest to it of those that are.

    Walls, roofs, lids and decks that use less than half of theirs are left to the engineer's list.
    """
    told = [
        one
        for one in examination.members.judged
        if one.role not in _PLATES or not one.check.passes or _use(one.check) > _MUCH
    ]
    checks = [one.check for one in told]
    strong = sorted((c for c in checks if c.passes), key=_use, reverse=True)
    rows = [_row(examination, check, amounts) for check in checks if not check.passes]
    if strong:
        more = f", {len(strong) - 1} more" if len(strong) > 1 else ""
        rows.append(_row(examination, strong[0], amounts, more))
    return rows


def _use(check: Check) -> float:
    return check.utilization or 0.0


def _row(examination: Examination, check: Check, amounts: Amounts, more: str = "") -> Line:
    name, about = _said(examination, check, more)
    if isfinite(check.demand):
        if check.unit == "1":
            has, needs = "full hold", f"{check.demand:.2f} {'of' if check.passes else 'x'} hold"
        else:
            has, needs = amounts.has_and_needs(
                check.capacity, check.demand, check.unit, check.passes
            )
    else:
        has, needs = amounts.measure(check.capacity, check.unit), "it tips first"
    verdict = "yes" if check.passes else "-" if not isfinite(check.demand) else "no"
    text = _COLUMNS.format(f"  {name}", about, has, needs, verdict)
    return Line(text, "plain" if check.passes else "bad")


def _said(examination: Examination, check: Check, more: str = "") -> tuple[str, str]:
    """Return a check's name in plain words, and about what (with how many ``more``)."""
    ground = f"on {examination.site.ground}"
    match check.kind:
        case Kind.OVERTURNING:
            return "tipping", f"over {over_what(examination, check.toward_deg or 0.0)}"
        case Kind.SLIDING:
            return "sliding", f"{ground}{_dry(examination)}"
        case Kind.BEARING:
            return "sinking in", ground
        case Kind.PUSH:
            over = over_what(examination, check.toward_deg or 0.0)
            return "push", f"over {over}"
        case Kind.PULL_OUT:
            return "drawn up", "out of the ground"
        case Kind.CLIMB:
            over = over_what(examination, check.toward_deg or 0.0)
            return "climbing", f"over {over}"
        case kind:
            way, of = _WAYS.get(kind, str(kind)), check.subject
            of = f"of {of}" if kind is Kind.MEMBER else of
            width = _ABOUT - len(more)
            return way, (of if len(of) <= width else f"{of[: width - 3]}...") + more


def _dry(examination: Examination) -> str:
    """Return that friction is known dry only, where it is: gusts come with rain."""
    standing = examination.standing
    touching = {patch.contact for patch in standing.structure.patches}
    states = {standing.ground.friction[kind].state for kind in touching}
    return ", dry" if "dry" in states else ""


def engineer(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return utilization, clause, direction and factors of each check, and the wind behind them."""
    found = [Line("For engineers")]
    for check in examination.checks:
        ratio = "none left" if check.utilization is None else f"{check.utilization:.3f}"
        found += wrapped(
            f"{check.name}: utilization {ratio}; {_both(check, amounts)}{_bearings(check)}. "
            + " ".join(check_notes(examination, check)),
            "  ",
            "    ",
        )
        found += wrapped(f"by {check.source}", "    ")
    return found + seam_lines(examination, amounts) + _wind(examination)


def _both(check: Check, amounts: Amounts) -> str:
    """Return demand and capacity in SI, and in pounds-force where the design is imperial."""
    demand = figure(check.demand, 1) if isfinite(check.demand) else "no bound"
    said = f"demand {demand}, capacity {figure(check.capacity, 1)} {check.unit}"
    unit = {"N*m": (POUND_FORCE * FOOT, "lbf-ft"), "N": (POUND_FORCE, "lbf")}.get(check.unit)
    if amounts.metric or unit is None or not isfinite(check.demand):
        return said
    one, name = unit
    return f"{said} ({figure(check.demand / one, 1)}, {figure(check.capacity / one, 1)} {name})"


def _bearings(check: Check) -> str:
    said = ""
    if check.direction_deg is not None:
        said += f"; wind from {check.direction_deg:.1f} deg"
    if check.toward_deg is not None:
        said += f"; over toward {check.toward_deg:.1f} deg"
    return said


def _wind(examination: Examination) -> list[Line]:
    """Return pressure, gust effect factor, directionality and load factors."""
    wind, site, used = examination.wind, examination.site, examination.factors
    low, high = wind.gust_factor.min(), wind.gust_factor.max()
    G = f"{low:.3f}" if f"{low:.3f}" == f"{high:.3f}" else f"{low:.3f} to {high:.3f}"
    Kd = dict(zip(examination.exposed.kinds, wind.directionality, strict=True))
    kinds = ", ".join(
        f"{value:.2f} {kind}"
        for kind, value in Kd.items()
        if kind in STRUCTURE_KINDS or value != 1.0
    )
    letter = f"exposure {site.exposure} ({_meant(site.exposure)}), " if site.exposure else ""
    limits = examination.limits
    at_piece = "none below 150" if limits.tipping is None else f"{limits.tipping:.2f}"
    return wrapped(
        f"wind: {site.method}, {letter}q {wind.pressure:,.1f} Pa at the top without Kd; G {G}; "
        f"Kd {kinds or '1.00'}; greatest force {wind.force.max():,.1f} N, uplift "
        f"{wind.uplift.max():,.1f} N; basis {site.basis}: {used.helping:.3g} D or "
        f"{used.hurting:.3g} D with {used.wind:.3g} W; tips at {at_piece} m/s at the piece, which "
        f"is {limits.ratio:.3f} of the forecast gust.",
        "  ",
        "    ",
    )


def _meant(exposure: str) -> str:
    return {"B": "houses and trees", "C": "open", "D": "shore"}[exposure]
