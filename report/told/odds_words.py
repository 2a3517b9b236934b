"""The odds of a piece for people and for programs: what they are, and what they do not include."""

from collections.abc import Mapping
from math import isfinite

from ...checks.odds.odds import Gusts, Odds
from ...design.model import Design
from ..messages import messages
from ..wording.amounts import Amounts
from ..wording.lines import Line, wrapped

_WIDTH = 79

NAMES: Mapping[str, str] = {
    "density": "how dense its materials are",
    "thickness": "how thick they are",
    "moisture": "how wet its wood is",
    "friction": "friction on the ground",
    "soil": "how firm the ground is",
    "coefficient": "how hard wind presses on its shapes",
    "gust": "the gust at the piece for one forecast",
    "climate": "how well the place's gusts are known",
    "fastening": "what fasteners hold",
}
"""What varies, in words."""

NOT_INCLUDED = (
    "stakes, bolts and guys",
    "what the file has wrong",
    "rot, rust, what works loose",
    "what houses and hedges do to gusts",
    "people, snow, what is hung on it",
    "the strength of parts and seams",
)
"""What the odds leave out, each a thing that can make them worse."""

_SHOWN = 4
_LEAST_SHARE = 0.02
_ROW = "  {:<12}{:>14}{:>14}{:>14}"


def odds_lines(design: Design, odds: Odds, *, planted: bool) -> list[Line]:
    """Return the first screen of the odds of a design; ``planted`` where it stands on posts."""
    amounts = Amounts(design.units == "metric")
    lines = [Line(f"{design.name}: odds of {odds.samples:,} like it, untied", "title")]
    lines += [Line(""), *_told("Asked", _asked(odds, amounts, planted=planted)), Line("")]
    lines.append(Line(_ROW.format("of 100", "5 have", "50 have", "95 have"), "title"))
    if not planted:
        lines.append(_gusts("tipped by", odds.tipping, amounts))
        lines.append(_gusts("slid by", odds.sliding, amounts))
    else:
        lines.append(_gusts("posts by", odds.tipping, amounts))
        lines += _told("", "past what the code allows the ground, not yet leaning.")
    if odds.joint is not None:
        lines.append(_gusts("joint by", odds.joint, amounts))
        lines += _told("", f"{odds.first_joint}: past what its book allows, not yet broken.")
    lines += [Line(""), *_told("A year", _yearly(odds))]
    lines += _told("Decides", _shares(odds))
    lines += _told("Leaves out", f"{'; '.join(NOT_INCLUDED)}.")
    lines += _told("More", "what varies, by how much and who says so: --inputs")
    return lines


def input_lines(odds: Odds) -> list[Line]:
    """Return what varies, by how much, and on whose word."""
    lines = [Line(""), Line("What varies, each by itself", "title")]
    for name, kind, one in odds.varying:
        of = f" of {kind}" if kind else ""
        bounds = [
            f"{word} {value:g}"
            for word, value in (("from", one.low), ("to", one.high))
            if value > 0.0 and isfinite(value)
        ]
        mean = "" if one.mean == 1.0 else f", mean {one.mean:g} of what is written"
        said = f"{name}{of}: {one.shape}, {100.0 * one.spread:g} % either way{mean}"
        said = " ".join([said, *bounds])
        who = f" ({one.confidence})" if one.confidence else ""
        lines += wrapped(f"{said}. {one.source}{who}.", rest="    ", first="  ", width=_WIDTH)
    lines += wrapped(
        "Another is a table of the file: [[odds]] with name = 'friction', spread = 0.3.",
        rest="  ",
        first="  ",
        width=_WIDTH,
    )
    return lines


def _asked(odds: Odds, amounts: Amounts, *, planted: bool) -> str:
    ways = {
        "tips": "ask too much of the ground beside their posts" if planted else "tip",
        "slides": "slide",
        "joint": "ask too much of a joint",
    }
    each = [
        f"{chance_in_words(odds.chances[key])} {word}"
        for key, word in ways.items()
        if odds.chances[key] > 0.0
    ]
    more = " or ask more than a book allows" if planted or odds.chances["joint"] > 0.0 else ""
    any_way = chance_in_words(odds.chances["any"])
    said = f"in gusts of {amounts.gust(odds.asked)} {any_way} give way{more}"
    return f"{said}: {', '.join(each)}." if len(each) > 1 else f"{said}."


def chance_in_words(chance: float) -> str:
    """Return a chance as so many of a hundred, or of a thousand where they are few.

    >>> [chance_in_words(each) for each in (0.134, 0.004, 1.0, 1e-5)]
    ['13 of 100', '4 of 1,000', 'all', 'fewer than 1 of 1,000']
    """
    if chance == 0.0:
        return "none"
    if chance < 0.001:
        return "fewer than 1 of 1,000"
    if chance < 0.0095:
        return f"{round(1000.0 * chance)} of 1,000"
    if chance <= 0.99:
        return f"{round(100.0 * chance)} of 100"
    return "all" if chance == 1.0 else "nearly all"


def _yearly(odds: Odds) -> str:
    if odds.per_year is None or odds.over_years is None:
        return "not told: [site] needs gusts = { 10 = '60 mph', 50 = '75 mph' }"
    yearly, in_all = chance_in_words(odds.per_year), chance_in_words(odds.over_years)
    said = f"{yearly} give way in a year, {in_all} within {odds.years} years"
    if odds.bounded:
        return f"at most {said}: rarer is not told of gusts known for so long."
    return f"{said}, if nobody ties them or lays them down."


def _shares(odds: Odds) -> str:
    told = [(NAMES[name], share) for name, share in odds.shares if share >= _LEAST_SHARE][:_SHOWN]
    if not told:
        return "nothing varies."
    return (
        "most first: "
        + "; ".join(f"{name} ({round(100 * share)})" for name, share in told)
        + (", in parts of 100.")
    )


def _gusts(head: str, gusts: Gusts, amounts: Amounts) -> Line:
    each = [
        messages.CALM if one is None else amounts.gust(one)
        for one in (gusts.p5, gusts.p50, gusts.p95)
    ]
    return Line(_ROW.format(head, *each))


def _told(head: str, said: str) -> list[Line]:
    return wrapped(said, first=f"  {head:<11} ", rest=" " * 14, width=_WIDTH)
