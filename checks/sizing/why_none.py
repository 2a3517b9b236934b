"""Why a remedy is none, or is not needed, as data."""

from enum import StrEnum

from ..examination import Examination
from ..judged.finding import Amount, Finding, FindingSlot
from .remedy import Remedy, RemedyReason


class WhyNone(StrEnum):
    """Why a remedy is none, where its reason alone does not say it."""

    NOT_NEEDED = "not needed"
    ANCHORS_BREAK = "more than anchors hold"
    ANCHORS_SINK_IT = "anchors draw its foot into the ground"
    GUYS_BREAK = "no line or ground anchor holds it"
    GUYS_IDLE = "guys carry nothing"
    BENDS = "one sheet bends too far"
    FAILS_TIED = "held so, a joint or part of it fails"
    NO_PLACE = "nothing to tie guys to"
    POSTS = "posts in the ground carry it"
    NOTHING_UPRIGHT = "nothing upright to scale"
    TIPS = "still tips"
    SLIDES = "still slides"
    SLIDES_UNPINNED = "still slides, however wide"
    SINKS = "sinks"
    GIVES_WAY = "its posts still give way"
    ANOTHER = "another check fails"


class Utmost(StrEnum):
    """The most that was tried, by the kind of remedy: of height and wind the least."""

    WIDTH = "base width"
    WEIGHT = "ballast"
    HEIGHT = "height"
    WIND = "wind"


def why_none(found: Examination, remedy: Remedy) -> Finding | None:
    """Return why a remedy is none, or is not needed; None where there is no more to say."""
    reason = remedy.reason
    if reason is None:
        return None
    slots: dict[str, FindingSlot] = {"governs": str(remedy.governs)}
    if reason is RemedyReason.ANCHORS_BREAK:
        up, sideways = found.anchor_search.pulls
        slots |= {"up": Amount(up, "pull"), "sideways": Amount(sideways, "pull")}
    if reason is RemedyReason.ANCHORS_SINK_IT:
        slots["ground"] = found.standing.ground.name
    if remedy.kind in list(Utmost):
        most = amount_of(remedy.kind, remedy.utmost or 0.0)
        slots |= {"utmost": Finding(Utmost(remedy.kind), {"amount": most}), "across": most}
    unpinned = reason is RemedyReason.SLIDES and remedy.kind == Utmost.WIDTH
    return Finding(WhyNone.SLIDES_UNPINNED if unpinned else WhyNone[reason.name], slots)


def amount_of(kind: str, value: float) -> Amount:
    """Return an amount of a remedy of a kind, as it is built."""
    match kind:
        case Utmost.WIDTH:
            return Amount(value, "width_needed")
        case Utmost.WEIGHT:
            return Amount(value, "mass_needed")
        case Utmost.HEIGHT:
            return Amount(value, "length")
        case _:
            return Amount(value, "gust", "near")
