"""One rule of gusts with four marks: when to act, when it slides, when it tips, what is asked.

Drawn in shares of its width, so that letters stay as large on a narrow screen.
"""

from html import escape

from ...checks.as_one import AsOne
from ...checks.limits import GREATEST_GUST
from ...units.frozen import ByValue
from ..messages import window_messages as messages
from ..wording.amounts import Amounts
from ..wording.ticks import ticks

_HIGH, _RULE, _THICK = 128, 48, 16
"""Height in px of the whole, where the rule begins, and how thick it is."""

_NUMBERS = 79
"""Where the numbers of the rule stand."""

_ROWS = {"act": 16, "slides": 38, "tips": 101, "asked": 123}
"""Where the words of each mark stand: no two on one line, whatever their gusts."""

_END, _RIGHT = 97.0, 50.0
_MOST_TICKS, _SMALL = 7, 5


class Mark(ByValue, frozen=True):
    """A mark on the rule: what it is, its words, and the gust in the rule's unit or None."""

    key: str
    words: str
    gust: float | None


def marks(found: AsOne) -> tuple[Mark, ...]:
    """Return the four marks of a piece as it stands without anchors and guys."""
    limits = found.limits
    gusts = {
        "act": limits.act,
        "slides": limits.forecast_sliding,
        "tips": limits.forecast_tipping,
        "asked": found.site.wind,
    }
    amounts = Amounts(found.design.units == "metric")
    named = dict(messages.STRIP)
    if found.posts is not None:
        named["tips"] = messages.STRIP_POSTS
        del gusts["slides"]
    return tuple(_mark(key, named[key], gust, amounts) for key, gust in gusts.items())


def _mark(key: str, name: str, gust: float | None, amounts: Amounts) -> Mark:
    if gust is None:
        said = messages.STRIP_OVER.format(mark=name, most=amounts.gust(GREATEST_GUST))
        return Mark(key, said, None)
    shown = {"act": amounts.act(gust), "asked": amounts.gust(gust, "near")}
    return Mark(key, f"{name} {shown.get(key) or amounts.gust(gust)}", gust / amounts.speed)


def gust_strip(placed: tuple[Mark, ...], unit: str) -> str:
    """Return the rule as SVG, as wide as there is room: its marks, and the unit of its gusts."""
    end = _end([mark.gust for mark in placed if mark.gust is not None])
    said = messages.STRIP_SAID.format(unit=unit, marks="; ".join(mark.words for mark in placed))
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="strip" height="{_HIGH}" role="img">',
        f"<title>{escape(said)}</title>",
        f'<rect class="rule" x="0" y="{_RULE}" width="100%" height="{_THICK}"/>',
        *_moves(placed, end),
        *_scale(end),
        *(line for mark in placed for line in _drawn(mark, end)),
        "</svg>",
    ]
    return "\n".join(lines)


def _end(gusts: list[float]) -> float:
    """Return where the rule ends: at a round gust beyond the marks."""
    most = 1.12 * max([*gusts, 20.0])
    step = 10.0 if most < 200.0 else 50.0
    return step * -(-most // step)


def _at(gust: float, end: float) -> float:
    """Return the place of a gust on the rule in percent of its width."""
    return min(_END * gust / end, 100.0)


def _moves(placed: tuple[Mark, ...], end: float) -> list[str]:
    """Return the stretches: from where to act, and from where it moves."""
    gusts = {mark.key: mark.gust for mark in placed}
    known = [gusts[key] for key in ("slides", "tips") if gusts.get(key) is not None]
    moves, act = min((g for g in known if g is not None), default=None), gusts["act"]
    found: list[str] = []
    if act is not None:
        found.append(_stretch("act", _at(act, end), _at(moves, end) if moves else 100.0))
    if moves is not None:
        found.append(_stretch("moves", _at(moves, end), 100.0))
    return found


def _stretch(name: str, start: float, stop: float) -> str:
    return (
        f'<rect class="{name}" x="{start:.2f}%" y="{_RULE}" '
        f'width="{max(stop - start, 0.0):.2f}%" height="{_THICK}"/>'
    )


def _scale(end: float) -> list[str]:
    """Return the ticks of the rule, the longer ones with their number."""
    large = ticks(0.0, end, _MOST_TICKS)
    step = (large[1] - large[0]) / (_SMALL if (large[1] - large[0]) % _SMALL == 0 else 2)
    found: list[str] = []
    for k in range(1, int(end / step + 1.0e-9) + 1):
        x = _at(k * step, end)
        number = any(abs(k * step - each) < 1.0e-6 for each in large)
        low = _RULE + (9 if number else 4)
        found.append(_stroke("tick", x, _RULE, low))
        if number:
            place = f'x="{x:.2f}%" y="{_NUMBERS}" text-anchor="middle"'
            found.append(f'<text class="number" {place}>{k * step:g}</text>')
    return found


def _drawn(mark: Mark, end: float) -> list[str]:
    """Return a mark with its words, at the side of it where there is room."""
    x = 100.0 if mark.gust is None else _at(mark.gust, end)
    row = _ROWS[mark.key]
    up = row < _RULE
    side = ("end", -6) if x > _RIGHT else ("start", 6)
    words = (
        f'<text class="{mark.key}" x="{x:.2f}%" y="{row}" dx="{side[1]}" '
        f'text-anchor="{side[0]}">{escape(mark.words)}</text>'
    )
    if mark.gust is None:
        return [words]
    first, last = (row - 11, _RULE + _THICK) if up else (_RULE, row + 3)
    return [_stroke(mark.key, x, first, last), words]


def _stroke(name: str, x: float, first: int, last: int) -> str:
    return f'<line class="{name}" x1="{x:.2f}%" x2="{x:.2f}%" y1="{first}" y2="{last}"/>'
