"""The plan on a buyer's page: a piece from above, its front, what holds it and how far off."""

import numpy as np

from ...checks.examination import Examination
from ...design import plane
from ...design.placing import about_z
from ..messages import page_messages as messages
from ..wording.amounts import Amounts
from .drawing_elevation import draw_seen
from .drawing_scale import OnPaper
from .paper import BOLD_LINE, LETTERS, PLAIN_LINE, THIN_LINE, Paper, points, wide
from .seen import known_from, seen_from_above
from .set_out import SetOut

_DOT = 1.6
_LINE = 1.35 * LETTERS
_SAME = 0.004
"""Distances within 4 mm of each other are told as one."""


def ground_plan(found: Examination, out: SetOut, width: float, height: float) -> Paper:
    """Return the plan, as large as ``width`` by ``height`` mm allows, its front below."""
    amounts = Amounts(found.design.units == "metric")
    seen = seen_from_above(known_from(found.structure)[0])
    foot = found.structure.footprint @ about_z(-found.design.turn)[:2, :2].T
    areas = [plane.coordinates(one.area) for one in seen if not one.area.is_empty]
    every = np.vstack([foot, *areas, out.anchors, *out.guys])
    low, high = every.min(axis=0), every.max(axis=0)
    room = np.array([width - 2.0 * _DOT - 2.0, height - 2.0 * _LINE - 2.0 * _DOT])
    mm = 1000.0 * float((room / 1000.0 / np.maximum(high - low, 1.0e-6)).min())
    span = (high - low) * mm
    paper = Paper(width, float(span[1]) + 2.0 * _LINE + 2.0 * _DOT)
    left = 0.5 * (width - float(span[0]))
    placed = OnPaper(mm, left - float(low[0]) * mm, _DOT + 1.0 + float(high[1]) * mm)
    draw_seen(paper, placed, seen)
    ring = points(np.array([placed.spot(corner) for corner in foot]))
    paper.polyline([*ring, *ring[:1]], PLAIN_LINE)
    for start, end in out.guys:
        paper.line(placed.spot(start), placed.spot(end), PLAIN_LINE)
    for point in out.ends:
        paper.circle(placed.spot(point), _DOT, "black", 0.0)
    _reaches(paper, placed, out, amounts)
    x, y = placed.spot(np.array([out.middle[0], low[1]]))
    paper.text((x, y + _DOT + _LINE), messages.FRONT, "middle", bold=True)
    return paper


def _reaches(paper: Paper, placed: OnPaper, out: SetOut, amounts: Amounts) -> None:
    """Draw how far from the middle of the foot each kind of place is, once for each distance."""
    if not len(out.ends):
        return
    x, y = placed.spot(out.middle)
    paper.line((x - 2.0, y), (x + 2.0, y), BOLD_LINE)
    paper.line((x, y - 2.0), (x, y + 2.0), BOLD_LINE)
    for i in _distinct(out):
        end = placed.spot(out.ends[i])
        paper.arrow((x, y), _short_of((x, y), end), THIN_LINE, 2.4)
        words = amounts.length(float(out.reaches[i]))
        at = (x + 0.55 * (end[0] - x), y + 0.55 * (end[1] - y))
        room = 0.5 * wide(words) + 1.0
        beside = min(max(at[0], room), paper.width - room)
        paper.text((beside, at[1] - 1.2), words, "middle", bold=True)


def _distinct(out: SetOut) -> list[int]:
    """Return one place of each distance, the farthest to the right, three at most.

    More are not read at arm's length.
    """
    found: list[int] = []
    for i in np.argsort(-out.ends[:, 0], kind="stable"):
        if all(abs(out.reaches[i] - out.reaches[j]) > _SAME for j in found):
            found.append(int(i))
    return found[:3]


def _short_of(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    """Return the point at which an arrow to a dot ends, on its rim."""
    way = np.array(end) - np.array(start)
    long = float(np.hypot(*way))
    share = max(long - _DOT, 0.0) / long if long > 0.0 else 0.0
    return start[0] + share * float(way[0]), start[1] + share * float(way[1])
