"""Elevation and plan side by side, to one scale, as large as a frame of the page allows."""

from functools import cache

import numpy as np

from ...checks.examination import Examination
from ...units.frozen import ByValue
from .drawing_elevation import Elevation
from .drawing_plan import PlanDrawing
from .drawing_scale import Scale, largest
from .paper import Paper

_BETWEEN = 4.0


class Pair(ByValue, frozen=True):
    """Both views on one paper, and their scale."""

    paper: Paper
    scale: Scale


def pairs(examination: Examination, width: float, heights: list[float]) -> list[Pair]:
    """Return the views for frames of ``width`` mm and each of the heights, the tallest first.

    A height that gives no smaller a scale than the one before it is left out.
    """
    elevation, plan = Elevation(examination), PlanDrawing(examination)
    metric = examination.design.units == "metric"

    legend = plan.legend(width)

    sizes = np.array([elevation.size, plan.size])

    @cache
    def drawn(scale: Scale) -> tuple[Paper, Paper]:
        return elevation.paper(scale, arm=False), plan.paper(scale)

    def fits(scale: Scale, height: float) -> bool:
        bare = sizes * scale.mm
        if bare[:, 0].sum() > width or bare[:, 1].max() > height:
            return False
        front, above = drawn(scale)
        across = front.width + _BETWEEN + above.width
        return across <= width and max(front.height, above.height) + legend.height <= height

    def found(scale: Scale) -> Pair:
        front, above = drawn(scale)
        height = max(front.height, above.height)
        paper = Paper(width, height + legend.height)
        spare = max(width - front.width - _BETWEEN - above.width, 0.0) / 3.0
        paper.place(front, (spare, height - front.height))
        beside = 2.0 * spare + front.width + _BETWEEN
        paper.place(above, (beside, 0.5 * (height - above.height)))
        paper.place(legend, (0.0, height))
        return Pair(paper, scale)

    scales = dict.fromkeys(
        largest(metric, lambda scale, height=height: fits(scale, height))
        for height in sorted(heights, reverse=True)
    )
    return [found(scale) for scale in scales]
