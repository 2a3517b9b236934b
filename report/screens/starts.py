"""At which forecast gust a piece slides, starts to tip or its posts give way, with the range."""

from ...checks.examination import Examination
from ...checks.limits import GREATEST_GUST, Limits
from ..wording.amounts import Amounts


def starts(examination: Examination, amounts: Amounts) -> str:
    """Return at which forecast gust it slides and starts to tip, with the range."""
    if examination.posts is not None:
        return _gives_way(examination, amounts)
    limits = examination.limits
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    if limits.tipping is not None and limits.tipping <= 0.0:
        return "Untied it falls over with no wind at all." if examination.held else ""
    beyond = amounts.gust(GREATEST_GUST)
    untied = "Left untied" if examination.needs_anchors and not examination.held else "Untied"
    tipping, sliding = _who(limits.loose_tips), _who(limits.loose_slides)
    slides_first = slides is not None and slides > 0.0 and (tips is None or slides < 0.97 * tips)
    first = ""
    if slides_first:
        off = " off" if limits.loose_slides is not None else ""
        again = "" if tipping == sliding else f"{tipping} "
        untied = f"{untied} {sliding}"
        first = f"slides{off} at about {amounts.gust(slides or 0.0)} and {again}"
    else:
        untied = f"{untied} {tipping}"
    if tips is None:
        gusts = ", in gusts as forecast" if first else ""
        return f"{untied} {first}starts to tip in no gust below {beyond}{gusts}."
    spread = _spread(limits, amounts)
    if first:
        about = amounts.bare_gust(tips)
        return f"{untied} {first}starts to tip at about {about} {spread}, in gusts as forecast."
    return f"{untied} starts to tip in a forecast gust of about {amounts.gust(tips)} {spread}."


def _who(loose: str | None) -> str:
    """Return what goes first: the whole, or a loose part by itself."""
    return "it" if loose is None else f"the {loose}"


def _gives_way(examination: Examination, amounts: Amounts) -> str:
    """Say at which forecast gust its posts reach what the ground around them is allowed."""
    one = examination.posts is not None and len(examination.posts.part) == 1
    reach = "It reaches" if one else "They reach"
    tips, most = examination.limits.forecast_tipping, amounts.gust(GREATEST_GUST)
    if tips is None:
        return f"{reach} what the ground may be asked in no gust below {most}."
    return (
        f"{reach} what the ground may be asked in a forecast gust of about "
        f"{amounts.gust(tips)} {_spread(examination.limits, amounts)}."
    )


def _spread(limits: Limits, amounts: Amounts) -> str:
    """Return the range of the gust that tips it: ``(31 to 40)``."""
    low, high = limits.tipping_low, limits.tipping_high
    upper = f"over {amounts.gust(GREATEST_GUST)}"
    if high is not None:
        upper = amounts.bare_gust(high / limits.ratio)
    return f"({amounts.bare_gust((low or 0.0) / limits.ratio)} to {upper})"
