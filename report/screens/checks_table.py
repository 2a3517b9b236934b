"""The checks as a table: what each has, what it needs; for engineers with all that governed."""

from collections.abc import Iterable
from math import isfinite

from ...checks.acting.design_wind import DesignWind
from ...checks.judged.finding import Finding
from ...checks.judged.judging import Check, Kind
from ...checks.limits import Limits
from ...checks.stated.shown_checks import ShownCheck, ShownChecks
from ...loads.asce7.velocity_pressure import STRUCTURE_KINDS
from ...loads.combinations import Factors
from ...loads.wind.site import Site
from ...units import FOOT, INCH, POUND_FORCE, figure
from ..told.check_notes import notes_said
from ..told.held_words import one_word, short_of
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped
from ..wording.remark import joined
from ..wording.words import side_said

_ABOUT = 22
_WAYS = {
    Kind.LOOSE_SLIDING: "slides",
    Kind.ANCHOR_HEAD: "its head",
    Kind.MEMBER: "strength",
    Kind.SEAM: "seams",
    Kind.SPACING: "room of",
}
_COLUMNS = "{:<13}{:<23}{:>13}  {:>13}   {}"


def checks_table(shown: ShownChecks, amounts: Amounts) -> list[Line]:
    """Return what each check has and needs; the words tell, not the colour."""
    weight = "2/3" if abs(shown.helping - 2.0 / 3.0) < 0.01 else f"{shown.helping:.2g}"
    head = f"Checks {_tied(shown)}, {weight} weight"
    title = Line(f"{head:<36}{'has':>13}  {'needs':>13}")
    ground = f"on {shown.ground}"
    rows = [_row(one, ground, amounts, dry=shown.dry) for one in shown.rows]
    if shown.doubtful:
        rows += wrapped(
            f"As they are read {joined(shown.doubtful)} would hold; not if wood, fasteners or "
            "ground give more or less, which nobody knows.",
            "  ",
            "    ",
        )
    if shown.lifted:
        rows.append(Line("  Has none: the wind lifts it off its feet."))
    return [title, *rows]


def _tied(shown: ShownChecks) -> str:
    """Return what holds it in these checks, or what does not."""
    if shown.held:
        return f"with {short_of(shown.held)}"
    return "by its posts" if shown.holder is None else f"without {one_word(shown.holder)}s"


def _row(shown: ShownCheck, ground: str, amounts: Amounts, *, dry: bool) -> Line:
    check = shown.check
    name, about = _said(shown, ground, dry=dry)
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


def _said(shown: ShownCheck, ground: str, *, dry: bool) -> tuple[str, str]:
    """Return a check's name in plain words, and about what (with how many more)."""
    over = "" if shown.over is None else f"over {side_said(shown.over)}"
    match shown.check.kind:
        case Kind.OVERTURNING:
            return "tipping", over
        case Kind.SLIDING:
            # friction may be known dry only, and gusts come with rain
            return "sliding", f"{ground}, dry" if dry else ground
        case Kind.BEARING:
            return "sinking in", ground
        case Kind.PUSH:
            return "push", over
        case Kind.PULL_OUT:
            return "drawn up", "out of the ground"
        case Kind.CLIMB:
            return "climbing", over
        case kind:
            way, of = _WAYS.get(kind, str(kind)), shown.check.subject
            of = f"of {of}" if kind is Kind.MEMBER else of
            more = f", {shown.more} more" if shown.more else ""
            width = _ABOUT - len(more)
            return way, (of if len(of) <= width else f"{of[: width - 3]}...") + more


def engineer(checks: Iterable[tuple[Check, Iterable[Finding]]], amounts: Amounts) -> list[Line]:
    """Return utilization, clause, direction and factors of each check, with what governed it."""
    found = [Line("For engineers")]
    for check, governed in checks:
        ratio = "none left" if check.utilization is None else f"{check.utilization:.3f}"
        found += wrapped(
            f"{check.name}: utilization {ratio}; {_both(check, amounts)}{_bearings(check)}. "
            + " ".join(notes_said(governed, amounts)),
            "  ",
            "    ",
        )
        found += wrapped(f"by {check.source}", "    ")
    return found


_IMPERIAL = {
    "N*m": (POUND_FORCE * FOOT, "lbf-ft", 1),
    "N": (POUND_FORCE, "lbf", 1),
    "m": (INCH, "in", 2),
}


def _both(check: Check, amounts: Amounts) -> str:
    """Return demand and capacity in SI, lengths in mm, and where the design is so in imperial."""
    one, name = (0.001, "mm") if check.unit == "m" else (1.0, check.unit)
    demand = figure(check.demand / one, 1) if isfinite(check.demand) else "no bound"
    said = f"demand {demand}, capacity {figure(check.capacity / one, 1)} {name}"
    if amounts.metric or check.unit not in _IMPERIAL or not isfinite(check.demand):
        return said
    one, name, decimals = _IMPERIAL[check.unit]
    demand, capacity = (figure(value / one, decimals) for value in (check.demand, check.capacity))
    return f"{said} ({demand}, {capacity} {name})"


def _bearings(check: Check) -> str:
    said = ""
    if check.direction_deg is not None:
        said += f"; wind from {check.direction_deg:.1f} deg"
    if check.toward_deg is not None:
        said += f"; over toward {check.toward_deg:.1f} deg"
    return said


def wind_line(
    wind: DesignWind, kinds: Iterable[str], site: Site, used: Factors, limits: Limits
) -> list[Line]:
    """Return pressure, gust effect factor, directionality and load factors."""
    low, high = wind.gust_factor.min(), wind.gust_factor.max()
    G = f"{low:.3f}" if f"{low:.3f}" == f"{high:.3f}" else f"{low:.3f} to {high:.3f}"
    Kd = dict(zip(kinds, wind.directionality, strict=True))
    listed = ", ".join(
        f"{value:.2f} {kind}"
        for kind, value in Kd.items()
        if kind in STRUCTURE_KINDS or value != 1.0
    )
    letter = f"exposure {site.exposure} ({_meant(site.exposure)}), " if site.exposure else ""
    at_piece = "none below 150" if limits.tipping is None else f"{limits.tipping:.2f}"
    return wrapped(
        f"wind: {site.method}, {letter}q {wind.pressure:,.1f} Pa at the top without Kd; G {G}; "
        f"Kd {listed or '1.00'}; greatest force {wind.force.max():,.1f} N, uplift "
        f"{wind.uplift.max():,.1f} N; basis {site.basis}: {used.helping:.3g} D or "
        f"{used.hurting:.3g} D with {used.wind:.3g} W; tips at {at_piece} m/s at the piece, which "
        f"is {limits.ratio:.3f} of the forecast gust.",
        "  ",
        "    ",
    )


def _meant(exposure: str) -> str:
    return {"B": "houses and trees", "C": "open", "D": "shore"}[exposure]
