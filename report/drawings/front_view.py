"""The view by which a buyer knows a piece: from the front, a figure from where it is one."""

import numpy as np

from ...checks.examination import Examination
from ...design import plane
from ..messages import page_messages as messages
from ..wording.amounts import Amounts
from .drawing_elevation import draw_seen
from .drawing_scale import OnPaper
from .paper import BOLD_LINE, FINE_LINE, LETTERS, THIN_LINE, Paper, stands, wide
from .seen import from_side, in_the_ground, known_from

_RIGHT = np.eye(2)
"""The plan vector to the right, seen from the front and from the right."""

_BELOW = 2.0 * 1.35 * LETTERS + 6.0


def front_view(found: Examination, width: float, height: float) -> Paper:
    """Return the view with how tall the piece is and how wide its foot, in ``width`` by ``height``.

    In mm; as large as that allows.
    """
    amounts = Amounts(found.design.units == "metric")
    bodies, view = known_from(found.structure)
    seen = from_side(bodies, _RIGHT[view])
    sunk = in_the_ground(bodies, _RIGHT[view])
    areas = [one.area for one in seen if not one.area.is_empty] + sunk
    every = np.vstack([np.zeros((1, 2)), *(plane.coordinates(area) for area in areas)])
    low, high = every.min(axis=0), every.max(axis=0)
    low[1] = min(low[1], 0.0)
    tall = amounts.length(found.structure.height)
    beside = wide(tall) + 5.0
    room = np.array([width - 2.0 * beside, height - _BELOW - 2.0])
    mm = float((room / np.maximum(high - low, 1.0e-6)).min())
    span = (high - low) * mm
    paper = Paper(width, float(span[1]) + _BELOW + 2.0)
    left = 0.5 * (width - float(span[0]))
    placed = OnPaper(mm, left - float(low[0]) * mm, 2.0 + float(high[1]) * mm)
    for area in sunk:
        paper.region(placed.area(area), "none", THIN_LINE, "1.6 1.0")
    draw_seen(paper, placed, seen)
    right, ground = left + float(span[0]), placed.y
    paper.line((left - 4.0, ground), (right + 4.0, ground), BOLD_LINE)
    x = right + (2.0 + LETTERS if stands(tall, found.structure.height * mm) else 3.0)
    top = placed.at(0.0, found.structure.height)[1]
    for y in (top, ground):
        paper.line((right + 1.0, y), (x + 1.0, y), FINE_LINE)
    paper.upright_size((x, ground), top, tall, -1 if x > right + 3.0 else 1)
    below = placed.y - float(low[1]) * mm + 1.35 * LETTERS
    paper.text((0.5 * width, below + 1.0), messages.SEEN_FROM[view], "middle")
    return paper
