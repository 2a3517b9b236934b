"""Remedies in words: amounts as they are built, and why one is none."""

from collections.abc import Sequence

from ...checks.examination import Examination
from ...checks.limits import GREATEST_GUST, Limits
from ...checks.sizing.remedy import Remedy, RemedyReason
from ...checks.sizing.size_curves import CurvePoint
from ..wording.amounts import Amounts

_FAILS = {
    RemedyReason.TIPS: "still tips",
    RemedyReason.SLIDES: "still slides",
    RemedyReason.SINKS: "sinks in",
    RemedyReason.GIVES_WAY: "leans over with its posts",
}
_EVEN = {"base width": "", "ballast": "under ", "height": "only ", "wind": "in "}


def stiffeners(metric: bool) -> str:
    """Return what is nailed beneath a foot that bends too far, as lumber is sold."""
    return "45x95 mm lumber" if metric else "2x4s"


def amount(remedy: Remedy, amounts: Amounts, value: float | None) -> str:
    """Return an amount of a remedy as it is built."""
    value = value or 0.0
    match remedy.kind:
        case "base width":
            return amounts.width_needed(value)
        case "ballast":
            return amounts.mass_needed(value)
        case "height":
            return amounts.length(value)
        case _:
            return amounts.gust(value, "near")


def why_no_remedy(before: Examination, remedy: Remedy) -> str:
    """Return why a remedy is none, or is not needed; nothing where there is no more to say."""
    amounts = Amounts(before.design.units == "metric")
    match remedy.reason:
        case None:
            return ""
        case RemedyReason.NOT_NEEDED:
            return "none needed: it stands as it is"
        case RemedyReason.ANCHORS_BREAK:
            up, sideways = map(amounts.pull, before.anchor_search.pulls)
            return f"{up} up or {sideways} sideways at each is more than garden anchors hold"
        case RemedyReason.ANCHORS_SINK_IT:
            ground = before.standing.ground.name
            return f"they would draw its foot into the {ground}: spread it, and look again"
        case RemedyReason.GUYS_BREAK:
            return "no rope and ground anchor here hold it at 45 degrees"
        case RemedyReason.GUYS_IDLE:
            return "they would carry nothing: pins against sliding hold it alone"
        case RemedyReason.BENDS:
            across = amount(remedy, amounts, remedy.utmost)
            return (
                f"{across} across would do, but bends too far for one sheet: double it, or nail "
                f"{stiffeners(amounts.metric)} beneath to its edge"
            )
        case RemedyReason.FAILS_TIED:
            return f"they would hold it down, but held so it fails elsewhere ({remedy.governs})"
        case RemedyReason.NO_PLACE:
            return "at two thirds of its height nothing stands where four could be tied"
        case RemedyReason.POSTS:
            return "its posts carry it: set them deeper, or in concrete"
        case RemedyReason.NOTHING_UPRIGHT:
            return "nothing upright in it can be made lower"
        case reason:
            most = _EVEN[remedy.kind] + amount(remedy, amounts, remedy.utmost)
            tall = {"base width": " across", "height": " tall"}.get(remedy.kind, "")
            pin = (
                ": pin it" if remedy.kind == "base width" and reason is RemedyReason.SLIDES else ""
            )
            fails = _FAILS.get(reason, f"fails ({remedy.governs})")
            return f"even {most}{tall} it {fails}{pin}"


def limit_gusts(limits: Limits, amounts: Amounts) -> tuple[str, str, str]:
    """Return the forecast gusts that tip and slide it, and the one to act at, without a unit."""
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    return (
        "over" if tips is None else amounts.bare_gust(tips),
        "over" if slides is None else amounts.bare_gust(slides),
        "over" if limits.act is None else f"{amounts.whole_act(limits.act):,}",
    )


def over(amounts: Amounts) -> str:
    """Return what ``over`` means in a table of gusts."""
    return f"over: above {amounts.gust(GREATEST_GUST)}"


def past_which_it_slides(width: float | None, curve: Sequence[CurvePoint], amounts: Amounts) -> str:
    """Return from which width on a wider foot buys nothing, in a sentence."""
    now = next(point for point in curve if point.present)
    if width is None:
        return "However wide the foot, it tips before it slides."
    if width <= now.value:
        return (
            "It slides before it tips as it is: a wider foot buys no more than its own weight "
            "holds, until it is pinned."
        )
    return (
        f"From {amounts.width_needed(width)} across it slides before it tips: a wider foot buys "
        "no more than its own weight holds, until it is pinned."
    )
