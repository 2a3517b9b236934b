"""The first lines of a verdict: what to do, and the gusts at which it acts up."""

from enum import Enum

from shapely import Point, Polygon

from .. import references, units
from ..checks.examination import Examination
from .amounts import Amounts
from .remark import counted, joined

SURROUNDINGS = {"B": "houses and trees", "C": "open ground", "D": "shore"}


class Stand(Enum):
    """What a verdict has to say first."""

    FALLS = "falls over by itself"
    SLIDES = "slides down by itself"
    STANDS = "stands untied"
    ANCHOR = "anchor it"
    WEIGH = "weigh it down"
    HOPELESS = "nothing here holds it"
    SINKS = "the ground gives way"
    PUSHED = "people tip it"
    IN_PART = "a loose part or a named load fails"


def stand_of(examination: Examination) -> Stand:
    """Return what the verdict of a design has to say first."""
    limits, remedies = examination.limits, examination.remedies
    if limits.tipping is not None and limits.tipping <= 0.0:
        return Stand.FALLS
    if limits.sliding is not None and limits.sliding <= 0.0:
        return Stand.SLIDES
    if examination.needs_anchors:
        if remedies.stakes.pull <= most("anchor pull"):
            return Stand.ANCHOR
        if remedies.ballast <= most("weight laid low") or width_helps(examination):
            return Stand.WEIGH
        return Stand.HOPELESS
    failing = [check.name for check in examination.checks if not check.passes]
    if "push" in failing:
        return Stand.PUSHED
    if "bearing" in failing:
        return Stand.SINKS
    return Stand.IN_PART if failing else Stand.STANDS


def width_helps(examination: Examination) -> bool:
    """Return whether a wider foot alone would do."""
    width = examination.remedies.base_width
    return (
        width is not None and width <= most("foot width") and not examination.remedies.base_slides
    )


def most(remedy: str) -> float:
    """Return the most of a remedy that is still one, in SI: N, kg or m."""
    row = references.table("remedies").one("remedy", remedy)
    unit = "lbf" if remedy.endswith("pull") else row["unit"]
    return float(row["most"]) * units.factor(unit)


def asked(examination: Examination, amounts: Amounts) -> str:
    """Return the wind that was asked for, in a few words."""
    site = examination.site
    wind = amounts.gust(site.wind, "near")
    if site.method == "gust":
        return f"{wind} at the piece"
    around = SURROUNDINGS.get(site.exposure or "C", "")
    return f"{wind}, {around}"


def code_wind(examination: Examination, amounts: Amounts) -> str | None:
    """Return the sentence that names a code's wind as it was given; None for plain gusts."""
    site = examination.site
    if not site.method.startswith("ASCE"):
        return None
    source = f"source: {site.wind_source}" if site.wind_source else "no source given"
    years = site.return_period
    period = f"return period {years:,.0f} years" if years else "no return period given"
    kind = "from a nominal speed" if site.wind_kind == "nominal" else "ultimate"
    return (
        f"Code wind: {site.method}, {amounts.gust(site.wind, 'near')} {kind} 3-second gust; "
        f"{source}; {period}; {site.basis} basis."
    )


def wind_words(examination: Examination, amounts: Amounts) -> str:
    """Return the asked wind as it stands in a sentence: ``58 mph forecast gust you asked``."""
    wind = amounts.gust(examination.site.wind, "near")
    match examination.site.method:
        case "forecast":
            return f"{wind} forecast gust you asked"
        case "gust":
            return f"{wind} gust at the piece that you asked"
        case method:
            return f"{wind} map wind ({method})"


def to_spare(examination: Examination) -> str:
    """Return the reserve that was asked for, in words."""
    site = examination.site
    if site.basis != "service":
        return "which just does not tip it"
    if abs(site.safety - 1.5) < 1.0e-9:
        return "half again to spare"
    if abs(site.safety - 1.0) < 1.0e-9:
        return "nothing to spare"
    return f"{site.safety:g} times what is needed" if site.safety > 1.0 else "less than needed"


def headline(examination: Examination, amounts: Amounts) -> tuple[str, bool]:
    """Return the first sentences, what to do before all else, and whether they are good news."""
    said, good = _remedy(examination, amounts)
    if examination.minimum_governs:
        said += (
            " The least wind of the standard, 16 psf on the whole outline, decides here: the "
            "answer does not follow the wind typed."
        )
    return f"{said} {_starts(examination, amounts)}", good


def _remedy(examination: Examination, amounts: Amounts) -> tuple[str, bool]:
    wind, spare = wind_words(examination, amounts), to_spare(examination)
    match stand_of(examination):
        case Stand.FALLS:
            return (
                f"IT FALLS OVER with no wind at all: {_why_it_falls(examination)}. "
                "Widen the foot or lower the piece before anything else.",
                False,
            )
        case Stand.SLIDES:
            return (
                "IT SLIDES DOWNHILL with no wind at all. Level its place or pin it before "
                "anything else.",
                False,
            )
        case Stand.ANCHOR:
            return _anchor(examination, amounts), False
        case Stand.WEIGH:
            return f"HOLD IT DOWN. {_weigh(examination, amounts)}", False
        case Stand.HOPELESS:
            return (
                "NOTHING IN THIS LIST HOLDS IT. Make it lower or smaller, or set its posts in "
                "the ground in concrete.",
                False,
            )
        case Stand.SINKS:
            return (
                f"SPREAD ITS FOOT. It stands untied in the {wind}, {spare}, but presses harder "
                f"on {examination.site.ground} than that bears; not checked: "
                f"{_first_unchecked(examination)}.",
                False,
            )
        case Stand.PUSHED:
            who = "a child" if examination.site.people == "children" else "a person"
            return (
                f"FASTEN IT AGAINST PEOPLE. It stands untied in the {wind}, {spare}, but the pull "
                f"of {who} tips it; not checked: {_first_unchecked(examination)}.",
                False,
            )
        case Stand.IN_PART:
            return (
                f"FASTEN WHAT FAILS. The whole stands untied in the {wind}, {spare}, but not "
                f"{_failing(examination)}; not checked: {_first_unchecked(examination)}.",
                False,
            )
        case Stand.STANDS:
            above = amounts.bare_gust(examination.site.wind, "near")
            how = "stake it" if examination.standing.ground.stakes_possible else "tie it down"
            return (
                f"STANDS UNTIED in the {wind}, {spare}; not checked: "
                f"{_first_unchecked(examination)}. Above {above}, {how}.",
                True,
            )


def _failing(examination: Examination) -> str:
    """Return which loose parts and named loads fail: ``its loose cap``, ``under 'bench'``."""
    found: dict[str, None] = {}
    for check in examination.checks:
        kind, _, name = check.name.partition(": ")
        if not check.passes:
            found[f"under the load '{name}'" if kind == "load" else f"its loose {name}"] = None
    return joined(found, "nor")


def _why_it_falls(examination: Examination) -> str:
    structure = examination.structure
    x, y = structure.centre_of_mass("typical")[:2]
    if Polygon(structure.footprint).contains(Point(x, y)):
        lean = " on this slope" if examination.site.slope else ""
        return f"{examination.site.ground} gives way beneath its foot{lean}"
    return "its balance point lies beyond its foot"


def _anchor(examination: Examination, amounts: Amounts) -> str:
    stakes = examination.remedies.stakes
    what = hold_down(examination)
    number = counted(len(stakes.points), what, f"{what}s")
    number = number[0].upper() + number[1:]
    if stakes.pull <= 0.0:
        side = amounts.pull(stakes.sideways)
        return f"ANCHOR IT. {number} that each hold {side} sideways would keep it from sliding."
    return (
        f"ANCHOR IT. {number} that each hold {amounts.pull(stakes.pull)} straight up would keep "
        "it down."
    )


def _weigh(examination: Examination, amounts: Amounts) -> str:
    remedies = examination.remedies
    ways: list[str] = []
    if remedies.ballast <= most("weight laid low"):
        ways.append(f"about {amounts.mass_needed(remedies.ballast)} fixed low")
    if width_helps(examination) and remedies.base_width is not None:
        ways.append(f"a foot about {amounts.width_needed(remedies.base_width)} across")
    if not examination.standing.ground.stakes_possible:
        ways.append("bolts into the slab")
    said = joined(ways, "or")
    return f"{said[0].upper()}{said[1:]} would keep it where it stands."


def hold_down(examination: Examination) -> str:
    """Return what kind of anchor is meant: stake, ground anchor or bolt."""
    ground, stakes = examination.standing.ground, examination.remedies.stakes
    if not ground.stakes_possible:
        return "bolt"
    if stakes.pull <= 0.0 or (ground.straight_pull and stakes.pull <= most("stake pull")):
        return "stake"
    return "ground anchor"


def _first_unchecked(examination: Examination) -> str:
    return "joints" if len(examination.design.parts) > 1 else "strength of what it is made of"


def _starts(examination: Examination, amounts: Amounts) -> str:
    """Say at which forecast gust it slides and starts to tip, with the range."""
    limits = examination.limits
    if limits.tipping is not None and limits.tipping <= 0.0:
        return ""
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    beyond = amounts.gust(150.0)
    if tips is None:
        said = f"starts to tip in no gust below {beyond}"
    else:
        low, high = limits.tipping_low, limits.tipping_high
        upper = amounts.bare_gust(high / limits.ratio) if high is not None else f"over {beyond}"
        lower = amounts.bare_gust((low or 0.0) / limits.ratio)
        said = (
            f"starts to tip in a forecast gust of about {amounts.gust(tips)} ({lower} to {upper})"
        )
    first = ""
    if slides is not None and slides > 0.0 and (tips is None or slides < 0.97 * tips):
        first = f"slides from a forecast gust of about {amounts.gust(slides)} and "
        said = said.replace("a forecast gust of about", "one of about")
    untied = "Left untied it" if examination.needs_anchors else "Untied it"
    return f"{untied} {first}{said}."
