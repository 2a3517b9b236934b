"""The gusts that tip and slide a piece, drawn against the width of its foot."""

from collections.abc import Callable

from ...checks.examination import Examination
from ...checks.sizing.size_curves import width_curve
from ...checks.sizing.sizing_case import Case
from ..wording.amounts import FOOT, INCH, Amounts
from ..wording.ticks import INCHES, ticks
from .paper import BOLD_LINE, FINE_LINE, LETTERS, PLAIN_LINE, Paper, Point

_MARKS = 5


def curve(examination: Examination, width: float, height: float) -> Paper:
    """Return the picture, in forecast gusts: how far a wider foot helps, and where sliding ends it.

    The present foot is marked, and the wind that was asked for.
    """
    amounts = Amounts(examination.design.units == "metric")
    if examination.posts is not None:
        return _said("Posts in the ground carry it", width, height)
    found = width_curve(Case(examination.design, examination), None)
    if all(p.limits.forecast_tipping is p.limits.forecast_sliding is None for p in found):
        return _said("Neither tips nor slides at any width", width, height)
    paper = Paper(width, height)
    title = "Untied gusts by width of foot" if examination.held else "Gusts by width of foot"
    paper.text((0.5 * width, LETTERS - 0.6), title, "middle")
    one = 1.0e-3 if amounts.metric else INCH
    asked = examination.site.wind / amounts.speed
    gusts = {
        "tips": [(p.value / one, _shown(p.limits.forecast_tipping, amounts)) for p in found],
        "slides": [(p.value / one, _shown(p.limits.forecast_sliding, amounts)) for p in found],
    }
    highest = 1.15 * max([asked, *(gust for line in gusts.values() for _, gust in line if gust)])
    low, high = found[0].value / one, found[-1].value / one
    left, right, top, bottom = 11.0, width - 14.0, 2.0 * LETTERS, height - 2.2 * LETTERS

    def at(across: float, gust: float) -> Point:
        x = left + (right - left) * (across - low) / max(high - low, 1e-9)
        return x, bottom - (bottom - top) * gust / highest

    _axes(paper, at, (low, high), highest, amounts)
    paper.line(at(low, asked), at(high, asked), PLAIN_LINE, "1.6 1.2")
    ends = {"asked": at(high, asked)[1]}
    for words, line in gusts.items():
        fill = "black" if words == "tips" else "white"
        points = [at(across, gust) for across, gust in line if gust is not None]
        paper.polyline(points, BOLD_LINE if words == "tips" else PLAIN_LINE)
        for point in points[1:]:
            paper.circle(point, 0.8, fill, PLAIN_LINE)
        if line[0][1] is not None:
            _present(paper, points[0], fill)
        if points:
            ends[words] = points[-1][1]
    _names(paper, right, ends)
    return paper


def _said(words: str, width: float, height: float) -> Paper:
    """Return words in place of the picture."""
    paper = Paper(width, height)
    paper.text((0.5 * width, 0.5 * height), words, "middle")
    return paper


def _shown(gust: float | None, amounts: Amounts) -> float | None:
    return None if gust is None else gust / amounts.speed


def _axes(
    paper: Paper,
    at: Callable[[float, float], Point],
    across: tuple[float, float],
    highest: float,
    amounts: Amounts,
) -> None:
    low, high = across
    paper.polyline([at(low, highest), at(low, 0.0), at(high, 0.0)], PLAIN_LINE)
    for gust in ticks(0.0, highest, _MARKS):
        x, y = at(low, gust)
        paper.line((x - 1.0, y), (x, y), FINE_LINE)
        paper.text((x - 1.6, y + 1.3), f"{gust:,.0f}", "end", 0.85 * LETTERS)
    for size in ticks(low, high, _MARKS - 1, () if amounts.metric else INCHES):
        x, y = at(size, 0.0)
        paper.line((x, y), (x, y + 1.0), FINE_LINE)
        words = f"{size:,.0f}" if amounts.metric else _feet(size)
        paper.text((x, y + 1.0 + 0.85 * LETTERS), words, "middle", 0.85 * LETTERS)
    x, y = at(high, 0.0)
    paper.text((x, y + 2.0 * LETTERS), "mm" if amounts.metric else "wide", "end", 0.85 * LETTERS)
    x, y = at(low, highest)
    paper.text((x + 1.2, y + 2.0), amounts.speed_unit, "start", 0.85 * LETTERS)


def _feet(inches: float) -> str:
    feet = inches * INCH / FOOT
    return (
        f"{feet:.0f} ft" if feet >= 1.0 and abs(feet - round(feet)) < 1e-6 else f"{inches:.0f} in"
    )


def _names(paper: Paper, right: float, ends: dict[str, float]) -> None:
    """Name each line beside its end, no two names on each other; ``ends`` are heights in mm."""
    rows = sorted(ends.items(), key=lambda each: each[1])
    places: list[float] = []
    for _, y in rows:
        places.append(max(y, places[-1] + LETTERS) if places else y)
    excess = 0.5 * (places[-1] - rows[-1][1]) if places else 0.0
    for (words, _), y in zip(rows, places, strict=True):
        paper.text((right + 1.8, y - excess + 1.2), words)


def _present(paper: Paper, spot: Point, fill: str) -> None:
    """Mark the foot as it is."""
    x, y = spot
    square = [(x - 1.1, y - 1.1), (x + 1.1, y - 1.1), (x + 1.1, y + 1.1), (x - 1.1, y + 1.1)]
    paper.polygon(square, fill, PLAIN_LINE)
