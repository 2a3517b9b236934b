"""The plan: a piece from above, with its foot, where it tips, and what holds it down."""

from functools import cached_property, lru_cache
from math import cos

import numpy as np
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ...checks.as_one import AsOne
from ...checks.examination import Examination
from ...checks.sides import Over, goes_over, over_found
from ...design import plane
from ...design.placing import about_z
from ...design.structure import Structure
from ...units.arrays import Array
from ..wording.amounts import Amounts
from ..wording.words import side_said
from .drawing_elevation import BEFORE, draw_seen
from .drawing_scale import OnPaper, Scale
from .governing import Governing, governing
from .paper import BOLD_LINE, FINE_LINE, LETTERS, PLAIN_LINE, THIN_LINE, Paper, points, stands, wide
from .seen import Seen, above, seen_from_above
from .set_out import set_out

_DOT = 1.5
_BESIDE = 0.26
"""How much of the wind blows from a side at which no sizes stand: more than 15 degrees of it."""

_WIND = 13.0
_LINE = 1.35 * LETTERS
_APART = 5.0


@lru_cache(maxsize=2)
def _outline(structure: Structure) -> BaseGeometry:
    """Return the outline of a piece from above, as its file has it; kept while it is changed."""
    whole = plane.union_of([above(body) for body in structure.bodies])
    return affinity.rotate(whole, -structure.design.turn, origin=(0.0, 0.0), use_radians=True)


class PlanDrawing:
    """A plan as the design's file has it, before its own last turn; the front is below.

    ``before`` is the piece as it was, of which a faint outline is drawn.
    """

    def __init__(self, examination: AsOne, before: Structure | None = None) -> None:
        self.examination = examination
        self.before = before
        self.amounts = Amounts(examination.design.units == "metric")
        self.governing: Governing = governing(examination)
        self._back = about_z(-examination.design.turn)[:2, :2]

    @cached_property
    def seen(self) -> list[Seen]:
        """Return what is seen, the lowest first."""
        return seen_from_above(self.examination.structure.as_filed)

    @cached_property
    def was(self) -> BaseGeometry:
        """Return the outline from above of what it was."""
        return plane.NOTHING if self.before is None else _outline(self.before)

    @cached_property
    def foot(self) -> Array:
        """Return the footprint (k, 2) in m."""
        return self._own(self.examination.structure.footprint)

    @cached_property
    def anchors(self) -> Array:
        """Return where anchors of the design stand (n, 2) in m."""
        rows = self.examination.held.anchors
        return self._own(np.vstack([row.points for row in rows])) if rows else np.empty((0, 2))

    @cached_property
    def suggested(self) -> Array:
        """Return where anchors are proposed (n, 2) in m; none where it has or needs none.

        Of a piece of which no more is known than how it stands as one body none are.
        """
        found = self.examination
        if found.held or not isinstance(found, Examination):
            return np.empty((0, 2))
        return set_out(found).anchors

    @cached_property
    def guys(self) -> list[tuple[Array, Array]]:
        """Return where each guy leaves the piece and where it meets the ground, in m."""
        return [
            (self._own(top[:2]), self._own(top[:2] + row.length * cos(row.elevation) * out))
            for row in self.examination.held.guys
            for top, out in zip(row.tops, row.outward, strict=True)
        ]

    @property
    def size(self) -> tuple[float, float]:
        """Return how wide and deep the piece with all that holds it is, in m."""
        low, high = self._window
        return float(high[0] - low[0]), float(high[1] - low[1])

    def paper(self, scale: Scale) -> Paper:
        """Return the plan to a scale; what its marks mean stands in `legend`."""
        low, high = self._window
        mm = scale.mm
        wind, out = self._wind_outside(low, high, mm)
        words = [self.amounts.length(float(s)) for s in np.ptp(self.foot, axis=0)]
        deep = float(np.ptp(self.foot[:, 1])) * mm
        beside = LETTERS + 3.0 if stands(words[1], deep) else wide(words[1]) + 4.0
        word, body = wide("wind") + 3.0, (high - low) * mm
        on_left, on_front = self._sizes_at()
        left = max(beside if on_left else 2.0, word - float(out[0]))
        right = max(2.0 if on_left else beside, float(out[0] - body[0]) + word)
        over = max(2.0 if on_front else 11.0, float(out[1] - body[1]) + 1.0)
        below = max((9.0 if on_front else 0.5) + _LINE, -float(out[1]))
        paper = Paper(left + float(body[0]) + right, over + float(body[1]) + below + 1.5)
        placed = OnPaper(mm, left - float(low[0]) * mm, over + float(high[1]) * mm)
        draw_seen(paper, placed, self.seen)
        paper.region(placed.area(self.was), "none", THIN_LINE, "1.2 0.8", BEFORE)
        self._foot(paper, placed)
        self._holders(paper, placed)
        if self.governing.force > 0.0:
            corner = np.array([left, over + float(body[1])])
            start, end = (corner + np.array([1.0, -1.0]) * spot for spot in (out, wind))
            tail, tip = (float(start[0]), float(start[1])), (float(end[0]), float(end[1]))
            paper.arrow(tail, tip, BOLD_LINE, 4.0)
            middle = (0.5 * (tail[0] + tip[0]), 0.5 * (tail[1] + tip[1]))
            if abs(tip[0] - tail[0]) > abs(tip[1] - tail[1]):
                slant = 0.5 * abs(tip[1] - tail[1])
                paper.text((middle[0], middle[1] - 1.6 - slant), "wind", "middle")
            else:
                slant = 0.5 * abs(tip[0] - tail[0])
                paper.text((middle[0] + 1.8 + slant, middle[1] + 1.3), "wind")
        edges = [(left, left + float(body[0])), (over, over + float(body[1]))]
        self._sizes(paper, placed, words, edges)
        front, _ = placed.spot(self.foot.min(axis=0) if not on_front else self.foot.mean(axis=0))
        label = edges[1][1] + (9.0 if on_front else 0.5) + 0.8 * _LINE
        paper.text((front, label), "front", "middle")
        return paper

    def legend(self, width: float) -> Paper:
        """Return what the marks mean, in rows of at most ``width`` mm, each in its middle."""
        rows: list[list[tuple[str, str]]] = [[]]
        for item in self.meanings():
            if rows[-1] and sum(_item(each) for each in [*rows[-1], item]) > width:
                rows.append([])
            rows[-1].append(item)
        paper = Paper(width, len(rows) * _LINE + 1.0)
        for i, row in enumerate(rows):
            x = max(0.5 * (width - sum(map(_item, row)) + _APART), 0.0)
            for mark, words in row:
                _mark(paper, (x + 2.0, (i + 1) * _LINE - 1.3), mark, _DOT)
                paper.text((x + 5.5, (i + 1) * _LINE), words)
                x += _item((mark, words))
        return paper

    def meanings(self) -> list[tuple[str, str]]:
        """Return each mark and what it means."""
        found: list[tuple[str, str]] = []
        if len(self.anchors):
            found.append(("anchor", "anchors of this design"))
        if len(self.suggested):
            found.append(("suggested", "suggested anchors"))
        if self.guys:
            found.append(("guy", "guys, to the ground"))
        if self.governing.planted:
            return [*found, ("balance", "balance point")]
        over = side_said(over_found(self.examination, self.governing.check.toward_deg or 0.0))
        alike = goes_over(self.examination, self.governing.check.toward_deg or 0.0)
        tips = "tips" if alike in (Over.ANY_SIDE, Over.ANY_CORNER) else "tips first"
        untied = "untied, " if self.examination.held else ""
        return [*found, ("edge", f"{untied}{tips} over {over}")]

    def _own(self, on_site: Array) -> Array:
        """Return site points (…, 2) in the axes of the design's file."""
        return on_site @ self._back.T

    @cached_property
    def _window(self) -> tuple[Array, Array]:
        drawn = [*(one.area for one in self.seen), self.was]
        areas = [plane.coordinates(area) for area in drawn if not area.is_empty]
        ends = [np.vstack(pair) for pair in self.guys]
        every = np.vstack([self.foot, *areas, self.anchors, self.suggested, *ends])
        return every.min(axis=0), every.max(axis=0)

    def _wind_outside(self, low: Array, high: Array, mm: float) -> tuple[Array, Array]:
        """Return head and tail (2,) of the wind's arrow in mm from the window's lower left."""
        size = (high - low) * mm
        centre = (self._own(self.governing.balance[:2]) - low) * mm
        against = -self._own(self.governing.wind)
        room = np.where(against > 0.0, size - centre, centre)
        slant = np.abs(against)
        reach = np.where(slant > 1.0e-9, room / np.where(slant > 1.0e-9, slant, 1.0), np.inf)
        head = centre + (float(reach.min()) + 2.0) * against
        return head, head + _WIND * against

    def _sizes_at(self) -> tuple[bool, bool]:
        """Return whether sizes stand at the left and at the front: away from the wind's arrow."""
        against = -self._own(self.governing.wind)
        return bool(against[0] > -_BESIDE), bool(against[1] > -_BESIDE)

    def _foot(self, paper: Paper, placed: OnPaper) -> None:
        ring = points(np.array([placed.spot(corner) for corner in self.foot]))
        paper.polyline([*ring, ring[0]], PLAIN_LINE, "2.4 0.8")
        paper.balance(placed.spot(self._own(self.governing.balance[:2])))
        if self.governing.planted:
            return
        toward = self._own(self.governing.toward)
        reach = self.foot @ toward
        along = np.array([-toward[1], toward[0]])
        on_edge = self.foot[reach > reach.max() - 1.0e-3] @ along
        if len(on_edge) < 2 or np.ptp(on_edge) < 0.01:
            on_edge = np.array([-0.25, 0.25]) * np.ptp(self.foot @ along) + on_edge.mean()
        ends = [reach.max() * toward + side * along for side in (on_edge.min(), on_edge.max())]
        paper.line(placed.spot(ends[0]), placed.spot(ends[1]), 2.0 * BOLD_LINE)

    def _holders(self, paper: Paper, placed: OnPaper) -> None:
        every = np.vstack([self.anchors, self.suggested])
        near = np.linalg.norm(every[:, None] - every[None], axis=-1)
        near = near[near > 0.0]
        dot = max(min(_DOT, 0.35 * placed.mm * float(near.min(initial=np.inf))), 0.5)
        for top, end in self.guys:
            paper.line(placed.spot(top), placed.spot(end), PLAIN_LINE)
            _mark(paper, placed.spot(end), "anchor", dot)
        for point in self.anchors:
            _mark(paper, placed.spot(point), "anchor", dot)
        for point in self.suggested:
            _mark(paper, placed.spot(point), "suggested", dot)

    def _sizes(
        self,
        paper: Paper,
        placed: OnPaper,
        words: list[str],
        edges: list[tuple[float, float]],
    ) -> None:
        """Draw the foot's width and depth; ``edges`` are the drawing's own, across and down."""
        on_left, on_front = self._sizes_at()
        (left, front), (right, back) = (
            placed.spot(end) for end in (self.foot.min(axis=0), self.foot.max(axis=0))
        )
        y = edges[1][1] + 7.0 if on_front else edges[1][0] - 4.0
        for at in (left, right):
            nearest = front + 1.0 if on_front else back - 1.0
            paper.line((at, nearest), (at, y + (1.0 if on_front else -1.0)), FINE_LINE)
        paper.level_size((left, y), right, words[0])
        x = edges[0][0] - 3.0 if on_left else edges[0][1] + 3.0
        for at in (front, back):
            nearest = left - 1.0 if on_left else right + 1.0
            paper.line((nearest, at), (x + (-1.0 if on_left else 1.0), at), FINE_LINE)
        paper.upright_size((x, front), back, words[1], -1 if on_left else 1)


def _item(item: tuple[str, str]) -> float:
    """Return how wide (mm) a mark with its words is, with the gap behind it."""
    return 5.5 + wide(item[1]) + _APART


def _mark(paper: Paper, spot: tuple[float, float], mark: str, dot: float) -> None:
    x, y = spot
    match mark:
        case "anchor":
            paper.circle(spot, dot, "black", 0.0)
        case "suggested":
            paper.circle(spot, dot, "white", BOLD_LINE)
        case "balance":
            paper.balance(spot, dot)
        case "guy":
            paper.line((x - 2.0, y), (x + 2.0, y), THIN_LINE)
        case _:
            paper.line((x - 2.0, y), (x + 2.0, y), 2.0 * BOLD_LINE)
