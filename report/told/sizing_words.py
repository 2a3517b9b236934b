"""Remedies in words: amounts as they are built, and why one is none."""

from collections.abc import Sequence

from ...checks.judged.finding import Finding
from ...checks.limits import GREATEST_GUST, Limits
from ...checks.sizing.size_curves import CurvePoint
from ...checks.sizing.why_none import Utmost, WhyNone, amount_of
from ..wording.amounts import Amounts
from ..wording.filled import Messages, filled_message, message_of

_STIFFENERS = {False: "2x4s", True: "45x95 mm lumber"}

NO_REMEDY: Messages = {
    WhyNone.NOT_NEEDED: "none needed: it stands as it is",
    WhyNone.ANCHORS_BREAK: (
        "{up} up or {sideways} sideways at each is more than garden anchors hold"
    ),
    WhyNone.ANCHORS_SINK_IT: (
        "they would draw its foot into the {ground}: spread it, and look again"
    ),
    WhyNone.GUYS_BREAK: "no rope and ground anchor here hold it at 45 degrees",
    WhyNone.GUYS_IDLE: "they would carry nothing: pins against sliding hold it alone",
    WhyNone.BENDS: (
        "{across} across would do, but bends too far for one sheet: double it, or nail "
        "{stiffeners} beneath to its edge"
    ),
    WhyNone.FAILS_TIED: "they would hold it down, but held so it fails elsewhere ({governs})",
    WhyNone.NO_PLACE: "at two thirds of its height nothing stands where four could be tied",
    WhyNone.POSTS: "its posts carry it: set them deeper, or in concrete",
    WhyNone.NOTHING_UPRIGHT: "nothing upright in it can be made lower",
    WhyNone.TIPS: "even {utmost} it still tips",
    WhyNone.SLIDES: "even {utmost} it still slides",
    WhyNone.SLIDES_UNPINNED: "even {utmost} it still slides: pin it",
    WhyNone.SINKS: "even {utmost} it sinks in",
    WhyNone.GIVES_WAY: "even {utmost} it leans over with its posts",
    WhyNone.ANOTHER: "even {utmost} it fails ({governs})",
    Utmost.WIDTH: "{amount} across",
    Utmost.WEIGHT: "under {amount}",
    Utmost.HEIGHT: "only {amount} tall",
    Utmost.WIND: "in {amount}",
}


def stiffeners(metric: bool) -> str:
    """Return what is nailed beneath a foot that bends too far, as lumber is sold."""
    return _STIFFENERS[metric]


def amount(kind: str, value: float | None, amounts: Amounts) -> str:
    """Return what a remedy of a kind takes, as it is built."""
    return filled_message("{it}", {"it": amount_of(kind, value or 0.0)}, amounts, {})


def why_no_remedy(why: Finding | None, amounts: Amounts) -> str:
    """Return why a remedy is none, or is not needed; empty where there is no more to say."""
    if why is None:
        return ""
    slots = {**why.slots, "stiffeners": stiffeners(amounts.metric)}
    return message_of(Finding(why.what, slots), amounts, NO_REMEDY)


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
