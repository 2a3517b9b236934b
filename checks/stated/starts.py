"""At which forecast gust a piece slides, starts to tip or its posts give way, as data."""

from enum import StrEnum

from ..examination import Examination
from ..judged.finding import Amount, Finding, FindingSlot, Several
from ..limits import GREATEST_GUST, Limits

_FIRST = 0.97
"""It slides first where it does so below this share of the gust that tips it: judgement."""


class Starts(StrEnum):
    """What a piece does first, and when."""

    FALLS = "falls over untied"
    TIPS = "tips"
    NEVER_TIPS = "does not tip"
    SLIDES_THEN_TIPS = "slides, then tips"
    SLIDES_ALONE = "slides, and does not tip"
    POSTS_GIVE = "its posts give way"
    POSTS_STAND = "its posts do not give way"


class Goes(StrEnum):
    """What goes, how it was left, and how far the range of its gust reaches."""

    IT = "the whole"
    LOOSE = "a loose part"
    NOT_AGAIN = "the same as before"
    UNTIED = "as it is"
    LEFT_UNTIED = "though it has to be tied"
    OFF = "off what it stands on"
    ALONG = "along the ground"
    UP_TO = "up to a gust"
    BEYOND = "beyond all gusts"


def starts(found: Examination) -> Finding | None:
    """Return at which forecast gust it slides and starts to tip, with the range.

    None of what falls over with no wind, where nothing holds it.
    """
    limits = found.limits
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    slots: dict[str, FindingSlot] = {
        "beyond": Amount(GREATEST_GUST, "gust", "down"),
        "tips": Amount(tips or 0.0, "gust", "down"),
        "bare_tips": Amount(tips or 0.0, "bare_gust", "down"),
        **_range(limits),
    }
    if found.posts is not None:
        slots["posts"] = Several(len(found.posts.part), ("post",))
        return Finding(Starts.POSTS_STAND if tips is None else Starts.POSTS_GIVE, slots)
    if limits.tipping is not None and limits.tipping <= 0.0:
        return Finding(Starts.FALLS) if found.held else None
    left = found.needs_anchors and not found.held
    slots["untied"] = Finding(Goes.LEFT_UNTIED if left else Goes.UNTIED)
    tipping, sliding = _who(limits.loose_tips), _who(limits.loose_slides)
    if slides is None or slides <= 0.0 or (tips is not None and slides >= _FIRST * tips):
        return Finding(Starts.NEVER_TIPS if tips is None else Starts.TIPS, slots | {"who": tipping})
    slots |= {
        "who": sliding,
        "again": Finding(Goes.NOT_AGAIN) if tipping == sliding else tipping,
        "off": Finding(Goes.ALONG if limits.loose_slides is None else Goes.OFF),
        "slides": Amount(slides, "gust", "down"),
    }
    return Finding(Starts.SLIDES_ALONE if tips is None else Starts.SLIDES_THEN_TIPS, slots)


def _who(loose: str | None) -> Finding:
    """Return what goes first: the whole, or a loose part by itself."""
    return Finding(Goes.IT) if loose is None else Finding(Goes.LOOSE, {"loose": loose})


def _range(limits: Limits) -> dict[str, FindingSlot]:
    """Return the range of the gust that tips it."""
    low, high = limits.tipping_low or 0.0, limits.tipping_high
    top = Finding(Goes.BEYOND, {"gust": Amount(GREATEST_GUST, "gust", "down")})
    if high is not None:
        top = Finding(Goes.UP_TO, {"gust": Amount(high / limits.ratio, "bare_gust", "down")})
    return {"low": Amount(low / limits.ratio, "bare_gust", "down"), "high": top}
