"""The elevation: a piece seen so that it would tip to the right, with wind, weight and sizes."""

from functools import cached_property, lru_cache

import numpy as np
from shapely import LineString, MultiLineString
from shapely.geometry.base import BaseGeometry

from ...checks.as_one import AsOne
from ...design import plane
from ...design.structure import Structure
from ..wording.amounts import Amounts
from .drawing_scale import OnPaper, Scale
from .governing import Governing, governing
from .paper import BOLD_LINE, FINE_LINE, LETTERS, PLAIN_LINE, THIN_LINE, Paper, points, stands, wide
from .seen import Seen, areas_from_side, from_side, in_the_ground

_ABOVE, _GAP = 3.0, 2.5
_HATCH = 2.2
_BLOWN = 14.0
"""So wide in mm at least is what the wind's arrow takes."""

_BOLDER = 1.08
"""How much wider bold words are."""

BEFORE = "gray"
"""The ink of what a piece was before it was changed."""

_LOW = 8.0
"""A centre of mass less than so many mm above the ground has its weight written above it."""


@lru_cache(maxsize=16)
def _outline(structure: Structure, right: tuple[float, float]) -> BaseGeometry:
    """Return the outline of a piece seen level; kept while it is changed."""
    return plane.union_of(areas_from_side(structure.bodies, np.array(right)))


class Elevation:
    """An elevation in the governing direction, to be drawn to a scale.

    ``before`` is the piece as it was, of which a faint outline is drawn.
    """

    def __init__(self, examination: AsOne, before: Structure | None = None) -> None:
        self.examination = examination
        self.before = before
        self.amounts = Amounts(examination.design.units == "metric")
        self.governing: Governing = governing(examination)

    @cached_property
    def seen(self) -> list[Seen]:
        """Return what is seen, the farthest first."""
        return from_side(self.examination.structure.bodies, self.governing.toward)

    @cached_property
    def was(self) -> BaseGeometry:
        """Return the outline of what it was, seen from the same side."""
        if self.before is None:
            return plane.NOTHING
        return _outline(self.before, tuple(self.governing.toward.tolist()))

    @cached_property
    def reach(self) -> tuple[float, float]:
        """Return from where to where the piece and its foot go, to the right, in m."""
        along = self.examination.structure.footprint @ self.governing.toward
        areas = [one.area for one in self.seen if not one.area.is_empty]
        areas += [] if self.was.is_empty else [self.was]
        every = np.concatenate([along, *(plane.coordinates(area)[:, 0] for area in areas)])
        return float(every.min()), float(every.max())

    @property
    def top(self) -> float:
        """Return how high the piece goes, or went, in m."""
        heights = [self.examination.structure.height]
        return max(heights + ([] if self.before is None else [self.before.height]))

    def below(self, scale: Scale, arm: bool = True) -> float:
        """Return how far (mm) the paper goes on below the ground."""
        if self.governing.planted:
            return self.depth * scale.mm + 3.0
        return (19.0 if arm else 12.0) + 1.0

    @property
    def size(self) -> tuple[float, float]:
        """Return how wide and high the piece itself is, with what stands in the ground, in m."""
        return self.reach[1] - self.reach[0], self.top + self.depth

    @cached_property
    def depth(self) -> float:
        """Return how deep it stands in the ground, in m."""
        return max(-min(body.bottom for body in self.examination.structure.bodies), 0.0)

    def least(self, scale: Scale, arm: bool = True) -> tuple[float, float]:
        """Return how wide and high in mm it is at the least, before it is drawn."""
        beside = LETTERS + _BLOWN + 4.0 + _GAP
        across, high = (self.reach[1] - self.reach[0]) * scale.mm, self.top * scale.mm
        return across + beside, _ABOVE + high + self.below(scale, arm)

    def paper(self, scale: Scale, arm: bool = True) -> Paper:
        """Return the elevation to a scale; ``arm`` with the balance point's way to the edge."""
        g, mm = self.governing, scale.mm
        left, right = self.reach
        wind = [f"wind {self.amounts.force(g.force)}", f"in {self._asked()}"]
        up = self.amounts.length(g.force_height)
        beside = LETTERS if stands(up, g.force_height * mm) else wide(up) + 1.5
        blown = max(*map(wide, wind), _BLOWN) + 2.0
        start = beside + 2.0 + blown + _GAP
        columns = self._columns(scale)
        above = max(_ABOVE, 2.6 * LETTERS - (self.top - g.force_height) * mm)
        ground = above + self.top * mm
        wide_ = start + (right - left) * mm + columns[-1] + 2.0
        paper = Paper(wide_, ground + self.below(scale, arm))
        placed = OnPaper(mm, start - left * mm, ground)
        for area in in_the_ground(self.examination.structure.bodies, g.toward):
            paper.region(placed.area(area), "none", THIN_LINE, "1.6 1.0")
        draw_seen(paper, placed, self.seen)
        paper.region(placed.area(self.was), "none", THIN_LINE, "1.2 0.8", BEFORE)
        end = start + (right - left) * mm
        self._ground(paper, ground, start - _GAP, end + _GAP)
        self._wind(paper, placed, wind, up, beside + 1.0)
        self._weight(paper, placed)
        self._heights(paper, placed, end, columns)
        self._widths(paper, placed, arm)
        return paper

    def _asked(self) -> str:
        return self.amounts.gust(self.examination.site.wind, "near")

    def _ground(self, paper: Paper, ground: float, left: float, right: float) -> None:
        paper.line((left, ground), (right, ground), BOLD_LINE)
        x = np.arange(left + 2.0, right, 3.0)
        starts = np.column_stack([x, np.full_like(x, ground)])
        paper.lines(np.stack([starts, starts + np.array([-1.8, 1.8])], axis=1), FINE_LINE)

    def _wind(
        self, paper: Paper, placed: OnPaper, words: list[str], up: str, size_at: float
    ) -> None:
        g = self.governing
        if g.force <= 0.0:
            return
        tip, y = placed.at(self._windward(g.force_height), g.force_height)
        paper.line((size_at - 1.0, y), (size_at + 3.0, y), THIN_LINE)
        paper.arrow((size_at + 3.0, y), (tip, y), BOLD_LINE, 4.0)
        paper.text((size_at + 3.0, y - 1.6 - LETTERS), words[0], bold=True)
        paper.text((size_at + 3.0, y - 1.4), words[1])
        paper.upright_size((size_at, placed.y), y, up)

    def _windward(self, height: float) -> float:
        """Return where (m) the wind's line of action first meets the piece."""
        left, right = self.reach
        line = LineString([(left - 1.0, height), (right + 1.0, height)])
        met = [
            float(plane.bounds_of(cut)[0])
            for one in self.seen
            if not (cut := one.area.intersection(line)).is_empty
        ]
        return min(met, default=left)

    def _weight(self, paper: Paper, placed: OnPaper) -> None:
        g = self.governing
        x, y = placed.at(float(g.toward @ g.balance[:2]), float(g.balance[2]))
        down = min(y + 12.0, max(placed.y - 1.0, y + 5.0))
        paper.arrow((x, y), (x, down), BOLD_LINE, 3.2)
        paper.balance((x, y))
        mass = self.examination.structure.mass("typical")
        beside = y + 5.4 if placed.y - y > _LOW else y - 2.6
        paper.text((x + 2.6, beside), self.amounts.mass(mass), bold=True)

    def _columns(self, scale: Scale) -> list[float]:
        """Return where right of the piece the two upright sizes stand, and where they end, mm."""
        found, x = list[float](), max(_GAP, self._weight_beyond(scale) + 1.5)
        for size in self._sizes():
            level = not stands(self.amounts.length(size), size * scale.mm)
            x += 2.0 if level else LETTERS + 2.0
            found.append(x)
            x += wide(self.amounts.length(size)) + 2.0 if level else 0.0
        return [*found, x]

    def _weight_beyond(self, scale: Scale) -> float:
        """Return how far (mm) the weight's words go beyond the piece, to the right."""
        g = self.governing
        room = (self.reach[1] - float(g.toward @ g.balance[:2])) * scale.mm
        words = self.amounts.mass(self.examination.structure.mass("typical"))
        return 2.6 + _BOLDER * wide(words) - room

    def _sizes(self) -> tuple[float, float]:
        return float(self.governing.balance[2]), self.examination.structure.height

    def _heights(self, paper: Paper, placed: OnPaper, right: float, columns: list[float]) -> None:
        g, ground = self.governing, placed.y
        balance, _ = placed.at(float(g.toward @ g.balance[:2]), 0.0)
        if g.planted:
            self._depth(paper, placed, right + columns[-2])
        areas = [one.area for one in self.seen if not one.area.is_empty]
        top = max(areas, key=lambda area: float(plane.bounds_of(area)[3]))
        summit, _ = placed.at(float(plane.coordinates(top)[:, 0].mean()), 0.0)
        for x, size, near in zip(columns, self._sizes(), (balance + 2.0, summit), strict=False):
            _, y = placed.at(0.0, size)
            paper.line((near + 0.8, y), (right + x + 1.0, y), FINE_LINE, "1.2 0.8")
            paper.line((right + _GAP, ground), (right + x + 1.0, ground), FINE_LINE)
            words = self.amounts.length(size)
            side = -1 if stands(words, ground - y) else 1
            paper.upright_size((right + x, ground), y, words, side)

    def _depth(self, paper: Paper, placed: OnPaper, x: float) -> None:
        words = self.amounts.length(self.depth)
        low = placed.y + self.depth * placed.mm
        paper.line((x - 4.0, low), (x + 1.0, low), FINE_LINE)
        side = -1 if stands(words, low - placed.y) else 1
        paper.upright_size((x, low), placed.y, words, side)

    def _widths(self, paper: Paper, placed: OnPaper, arm: bool) -> None:
        g, ground = self.governing, placed.y
        if g.planted:
            return
        along = self.examination.structure.footprint @ g.toward
        left, right, tips, balance = (
            placed.at(value, 0.0)[0]
            for value in (
                float(along.min()),
                float(along.max()),
                g.pivot,
                float(g.toward @ g.balance[:2]),
            )
        )
        edge = [(tips, ground), (tips - 1.7, ground + 3.2), (tips + 1.7, ground + 3.2)]
        paper.polygon(edge, "black", 0.0)
        size = ground + 10.0
        for x in (left, right):
            paper.line((x, ground + 4.0), (x, size + 1.0), FINE_LINE)
        paper.level_size((left, size), right, f"foot {self.amounts.length(float(np.ptp(along)))}")
        if arm:
            size += 7.0
            for x in (balance, tips):
                paper.line((x, ground + 4.0), (x, size + 1.0), FINE_LINE, "1.2 0.8")
            first, last = sorted((balance, tips))
            paper.level_size((first, size), last, self.amounts.length(abs(g.arm)))


def draw_seen(paper: Paper, placed: OnPaper, seen: list[Seen]) -> None:
    """Draw what is seen, the farthest first: nearer bodies hide what is behind them."""
    for one in seen:
        area = placed.area(one.area)
        if one.area.is_empty:
            x, y = placed.spot(one.spot)
            paper.polygon([(x - 1, y - 1), (x + 1, y - 1), (x + 1, y + 1), (x - 1, y + 1)])
            continue
        if one.lattice:
            hatched(paper, area)
        paper.region(area, "none" if one.lattice else "white", PLAIN_LINE)
        paper.lines(placed.points(one.edges), FINE_LINE)


def hatched(paper: Paper, area: BaseGeometry) -> None:
    """Draw crossed lines over an area on the paper: what the wind partly goes through."""
    if area.is_empty:
        return
    left, top, right, bottom = (float(value) for value in plane.bounds_of(area))
    rise = bottom - top
    for way in (1.0, -1.0):
        first = np.arange(left - rise, right + rise, _HATCH)
        lines = [
            ((x, top), (x + rise, bottom)) if way > 0.0 else ((x, bottom), (x + rise, top))
            for x in first.tolist()
        ]
        cut = MultiLineString(lines).intersection(area)
        for piece in plane.strokes(cut):
            paper.polyline(points(piece), FINE_LINE)
