"""A design at many sizes, drawn: gusts against one size, or a field of gusts over two."""

from collections.abc import Callable, Sequence

from ...checks.sweep import Figures, Swept, Vary
from ...design.model import Design
from ..messages import messages
from ..wording.amounts import Amounts
from ..wording.ticks import ticks
from .paper import BOLD_LINE, FINE_LINE, LETTERS, PLAIN_LINE, Paper, Point, wide

_WIDTH, _HEIGHT = 160.0, 110.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 16.0, 22.0, 14.0, 18.0
_MARKS = 6
_CELL_WIDTH, _CELL_HEIGHT = 20.0, 9.0


def drawing_sweep(design: Design, swept: Sequence[Swept], varied: Sequence[Vary]) -> Paper:
    """Return the picture of a sweep over one size or two, gusts as forecasts state them."""
    amounts = Amounts(design.units == "metric")
    if len(varied) == 1:
        return _curves(design, swept, varied[0], amounts)
    return _field(design, swept, varied, amounts)


def _curves(design: Design, swept: Sequence[Swept], vary: Vary, amounts: Amounts) -> Paper:
    """Draw tips, slides and act at over the values of one size, evenly spaced as they are."""
    paper = Paper(_WIDTH, _HEIGHT)
    gusts = {
        "tips": [_gust(one, lambda found: found.tips, amounts) for one in swept],
        "slides": [_gust(one, lambda found: found.slides, amounts) for one in swept],
        "act at": [_gust(one, lambda found: found.act, amounts) for one in swept],
    }
    highest = 1.1 * max((g for line in gusts.values() for g in line if g is not None), default=1.0)
    right, bottom = _WIDTH - _RIGHT, _HEIGHT - _BOTTOM

    def at(k: int, gust: float) -> Point:
        x = _LEFT + (right - _LEFT) * k / max(len(swept) - 1, 1)
        return x, bottom - (bottom - _TOP) * gust / highest

    paper.text(
        (0.5 * _WIDTH, _TOP - 6.0), f"{design.name}: forecast gusts by {vary.name}", "middle"
    )
    paper.polyline([(_LEFT, _TOP), (_LEFT, bottom), (right, bottom)], PLAIN_LINE)
    for gust in ticks(0.0, highest, _MARKS):
        x, y = at(0, gust)
        paper.line((x - 1.0, y), (x, y), FINE_LINE)
        paper.text((x - 1.8, y + 1.2), f"{gust:,.0f}", "end")
    paper.text((_LEFT + 1.5, _TOP), amounts.speed_unit)
    _values(paper, swept, at, bottom)
    for words, line in gusts.items():
        points = [at(k, gust) for k, gust in enumerate(line) if gust is not None]
        width, dashes = (
            BOLD_LINE if words == "tips" else PLAIN_LINE,
            "2 1.2" if words == "act at" else "",
        )
        paper.polyline(points, width, dashes)
        for point in points if words != "act at" else ():
            paper.circle(point, 0.8, "black" if words == "tips" else "white", PLAIN_LINE)
        if points:
            paper.text((right + 1.8, points[-1][1] + 1.2), words)
    return paper


def _values(
    paper: Paper, swept: Sequence[Swept], at: Callable[[int, float], Point], bottom: float
) -> None:
    """Write the values beneath, as many as find room."""
    free = 0.0
    for k, one in enumerate(swept):
        x, _ = at(k, 0.0)
        words = str(one.values[0])
        paper.line((x, bottom), (x, bottom + 1.0), FINE_LINE)
        if x - 0.5 * wide(words) >= free:
            paper.text((x, bottom + 2.0 + LETTERS), words, "middle")
            free = x + 0.5 * wide(words) + 2.0


def _field(
    design: Design, swept: Sequence[Swept], varied: Sequence[Vary], amounts: Amounts
) -> Paper:
    """Draw a cell for each pair of sizes with the gust to act at, bold where every check passes."""
    down, across = (list(dict.fromkeys(one.values[k] for one in swept)) for k in (0, 1))
    left = 6.0 + max(wide(str(value)) for value in down)
    width, height = left + _CELL_WIDTH * len(across) + 6.0, 26.0 + _CELL_HEIGHT * len(down)
    title = f"{design.name}: act at, {varied[0].name} down, {varied[1].name} across"
    paper = Paper(max(width, wide(title) + 12.0), height)
    paper.text((4.0, 6.0), title)
    for k, value in enumerate(across):
        paper.text((left + _CELL_WIDTH * (k + 0.5), 14.0), str(value), "middle")
    for k, one in enumerate(swept):
        row, column = divmod(k, len(across))
        x, y = left + _CELL_WIDTH * column, 17.0 + _CELL_HEIGHT * row
        if column == 0:
            paper.text((left - 2.0, y + 5.8), str(one.values[0]), "end")
        _cell(paper, one, (x, y), amounts)
    paper.text((4.0, height - 3.0), "bold: every check passes; crossed out: cannot be made")
    return paper


def _cell(paper: Paper, one: Swept, corner: Point, amounts: Amounts) -> None:
    x, y = corner
    right, low = x + _CELL_WIDTH, y + _CELL_HEIGHT
    paper.polygon([(x, y), (right, y), (right, low), (x, low)], "white", FINE_LINE)
    if not isinstance(one.found, Figures):
        paper.line((x, low), (right, y), FINE_LINE)
        return
    act = one.found.act
    words = messages.CALM if act is None else amounts.act(act)
    passes = one.found.passes
    paper.text((0.5 * (x + right), y + 5.8), words, "middle", bold=passes)


def _gust(one: Swept, which: Callable[[Figures], float | None], amounts: Amounts) -> float | None:
    found = which(one.found) if isinstance(one.found, Figures) else None
    return None if found is None else found / amounts.speed
