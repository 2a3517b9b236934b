"""The gust that tips a piece, drawn toward the side from which the wind comes."""

from math import cos, pi, sin

import numpy as np

from ...checks.by_direction import tipping_gusts
from ...checks.examination import Examination
from ...units.arrays import first_greatest
from ..wording.amounts import Amounts
from ..wording.ticks import ticks
from .paper import BOLD_LINE, FINE_LINE, LETTERS, PLAIN_LINE, Paper, Point

_FARTHEST = 2.5
"""Gusts beyond so many times the least are drawn at the rim."""

_RINGS = 4


def polar(examination: Examination, width: float) -> Paper:
    """Return the picture, ``width`` mm across: forecast gusts by the side that they come from.

    The front is below, as in the plan, before the piece's own last turn.
    """
    amounts = Amounts(examination.design.units == "metric")
    gusts = tipping_gusts(examination) / examination.limits.ratio
    unit = amounts.speed
    shown = gusts / unit
    asked = examination.site.wind / unit
    least = float(shown.min())
    paper = Paper(width, width + 2.4 * LETTERS)
    centre = (0.5 * width, LETTERS + 1.5 + 0.5 * width)
    if not np.isfinite(least):
        tips = "untied tips" if examination.held else "tips"
        words = f"{tips} in no forecast gust below {amounts.gust(150.0)}"
        paper.text((0.5 * width, centre[1]), words, "middle")
        return paper
    if least <= 0.0:
        paper.text((0.5 * width, centre[1]), "goes over with no wind at all", "middle")
        return paper
    rim = max(1.1 * min(float(shown.max()), _FARTHEST * least), 1.05 * least)
    radius = 0.5 * width - LETTERS - 1.0

    def at(gust: float, azimuth: float) -> Point:
        r = radius * min(gust / rim, 1.0)
        return centre[0] + r * sin(azimuth), centre[1] - r * cos(azimuth)

    rings = ticks(0.0, rim, _RINGS + 1)[1:]
    for ring in rings:
        paper.circle(centre, radius * ring / rim, "none", FINE_LINE)
    for azimuth in (0.0, 0.5 * pi):
        paper.line(at(rim, azimuth), at(rim, azimuth + pi), FINE_LINE)
    own = np.radians(examination.wind.azimuths) + examination.design.turn
    curve = [at(float(gust), float(azimuth)) for gust, azimuth in zip(shown, own, strict=True)]
    paper.polygon(curve, "none", BOLD_LINE)
    if asked < rim:
        paper.circle(centre, radius * asked / rim, "none", PLAIN_LINE, "1.6 1.2")
    for ring in rings:
        x, y = at(ring, 0.25 * pi)
        paper.text((x, y + 1.3), f"{ring:,.0f}", "middle", 0.85 * LETTERS)
    weakest = first_greatest(-shown)
    paper.circle(curve[weakest], 1.3, "black", 0.0)
    for words, azimuth in (("back", 0.0), ("front", pi)):
        x, y = at(rim, azimuth)
        paper.text((x, y + (-1.0 if azimuth == 0.0 else LETTERS)), words, "middle")
    for words, azimuth in (("right", 0.5 * pi), ("left", 1.5 * pi)):
        x, y = at(rim, azimuth)
        shift = 0.5 + 0.8 * LETTERS if azimuth < pi else -0.7
        paper.text((x + shift, y), words, "middle", upward=True)
    planted = examination.posts is not None
    told = (
        f"{_told(planted=planted, held=bool(examination.held))} {amounts.gust(float(gusts.min()))}"
    )
    told += f"; dashed: {asked:.0f}, asked" if asked < rim else ""
    paper.text((0.5 * width, paper.height - 1.0), told, "middle", bold=True)
    tips = "tips it untied" if examination.held else "tips it"
    title = f"Gust that {'its posts take' if planted else tips}, by side"
    paper.text((0.5 * width, LETTERS - 0.6), title, "middle")
    return paper


def _told(*, planted: bool, held: bool) -> str:
    """Return what the least gust does, which is worked out without anchors and guys."""
    if planted:
        return "least"
    return "untied from" if held else "tips from"
