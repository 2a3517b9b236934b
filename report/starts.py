"""At which forecast gust a piece slides, starts to tip or its posts give way, with the range."""

from ..checks.examination import Examination
from ..checks.verdict import HEAVY
from .amounts import Amounts


def tie_down(examination: Examination) -> str:
    """Return what is to be done before it blows too hard, as one can with its weight."""
    if examination.structure.mass("typical") <= HEAVY:
        return "tie it or lay it down"
    return "stake it" if examination.standing.ground.stakes_possible else "tie it down"


def starts(examination: Examination, amounts: Amounts) -> str:
    """Return at which forecast gust it slides and starts to tip, with the range."""
    if examination.posts is not None:
        return _gives_way(examination, amounts)
    limits = examination.limits
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    if limits.tipping is not None and limits.tipping <= 0.0:
        return "Untied it falls over with no wind at all." if examination.held else ""
    beyond = amounts.gust(150.0)
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
    low, high = limits.tipping_low, limits.tipping_high
    upper = amounts.bare_gust(high / limits.ratio) if high is not None else f"over {beyond}"
    spread = f"({amounts.bare_gust((low or 0.0) / limits.ratio)} to {upper})"
    if first:
        about = amounts.bare_gust(tips)
        return f"{untied} {first}starts to tip at about {about} {spread}, in gusts as forecast."
    return f"{untied} starts to tip in a forecast gust of about {amounts.gust(tips)} {spread}."


def _who(loose: str | None) -> str:
    """Return what goes first: the whole, or a loose part by itself."""
    return "it" if loose is None else f"the {loose}"


def _gives_way(examination: Examination, amounts: Amounts) -> str:
    """Say at which forecast gust its posts reach what the ground around them is allowed."""
    limits = examination.limits
    tips, low, high = limits.forecast_tipping, limits.tipping_low, limits.tipping_high
    reach = "It reaches" if _give(examination) == "gives" else "They reach"
    beyond = amounts.gust(150.0)
    if tips is None:
        return f"{reach} what the ground may be asked in no gust below {beyond}."
    upper = amounts.bare_gust(high / limits.ratio) if high is not None else f"over {beyond}"
    spread = f"({amounts.bare_gust((low or 0.0) / limits.ratio)} to {upper})"
    return (
        f"{reach} what the ground may be asked in a forecast gust of about "
        f"{amounts.gust(tips)} {spread}."
    )


def _give(examination: Examination) -> str:
    return "gives" if examination.posts and len(examination.posts.part) == 1 else "give"
