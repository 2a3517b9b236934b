"""The two views on the page: from the side to which it tips, a person beside it, and from above."""

from functools import cache
from math import ceil

from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from ... import references
from ...checks.as_one import AsOne
from ...design.structure import Structure
from ...units import INCH
from ...units.frozen import ByValue
from ..messages import window_messages as messages
from ..wording.amounts import Amounts
from .drawing_elevation import Elevation
from .drawing_plan import PlanDrawing
from .drawing_scale import OnPaper, Scale, largest
from .governing import Governing, governing
from .paper import BOLD_LINE, FINE_LINE, Paper

FRAME = 112.0
"""Both views stand in frames so many mm wide, and no higher, so that a scale stays what it was."""

_STEP = 14.0
"""Frames are so many mm high, or twice, thrice and so on: the page seldom moves."""

_ABOVE = 2.0
_ROUND = 0.006
"""How round, in shares of the stature, corners of the person's outline are."""


class Views(ByValue, frozen=True):
    """Both views as SVG with what they show in words, and their scale."""

    front: str
    plan: str
    scale: str


def views(found: AsOne, before: Structure | None = None) -> Views:
    """Return the views of a piece, to one scale; ``before`` is what it was, drawn faintly."""
    front, above = Elevation(found, before), PlanDrawing(found, before)
    metric = found.design.units == "metric"
    legend = above.legend(FRAME)
    bare = max(*front.size, *above.size, _stature())

    def high(side: Paper, top: Paper, scale: Scale) -> float:
        person = _stature() * scale.mm + front.below(scale, arm=False) + _ABOVE
        return max(side.height, person, top.height + legend.height)

    @cache
    def drawn(scale: Scale) -> tuple[Paper, Paper]:
        return front.paper(scale, arm=False), above.paper(scale)

    def fits(scale: Scale) -> bool:
        wide, tall = front.least(scale, arm=False)
        if max(bare * scale.mm, wide + _person_width(scale), tall) > FRAME:
            return False  # no need to draw it
        side, top = drawn(scale)
        across = side.width + _person_width(scale)
        return max(across, high(side, top, scale), top.width) <= FRAME

    scale = largest(metric, fits)
    bare_side, top = drawn(scale)
    tall = _STEP * ceil(high(bare_side, top, scale) / _STEP)
    side = _beside_a_person(bare_side, front.below(scale, arm=False), scale, tall)
    flat = Paper(FRAME, tall)
    flat.place(top, (0.5 * (FRAME - top.width), 0.5 * (tall - legend.height - top.height)))
    flat.place(legend, (0.0, tall - legend.height))
    amounts = Amounts(metric)
    stature = _stature() if metric else INCH * round(_stature() / INCH)
    said = messages.SCALE.format(scale=scale, person=amounts.length(stature))
    front_said = _front_said(found.structure, governing(found), found.site.wind, amounts)
    plan_said = _plan_said(found.design.name, above)
    return Views(side.svg(front_said), flat.svg(plan_said), said)


def _beside_a_person(side: Paper, below: float, scale: Scale, high: float) -> Paper:
    """Return an elevation in its frame, a person on the ground that is so many mm from its foot."""
    paper = Paper(FRAME, high)
    room = _person_width(scale)
    x = 0.5 * (FRAME - side.width - room)
    paper.place(side, (x, high - side.height))
    ground = high - below
    left = x + side.width
    paper.line((left, ground), (left + room, ground), BOLD_LINE)
    placed = OnPaper(_stature() * scale.mm, left + 0.5 * room, ground)
    paper.region(placed.area(_figure()), "none", 2.0 * FINE_LINE, ink="gray")
    return paper


@cache
def _figure() -> BaseGeometry:
    """Return a person's outline, of a stature of 1, its corners round."""
    rows = references.table("drawing_person").where("what", "outline")
    figure = Polygon([(float(row["across"]), float(row["up"])) for row in rows])
    return figure.buffer(_ROUND, 2).buffer(-2.0 * _ROUND, 2).buffer(_ROUND, 2)


def _stature() -> float:
    return float(references.table("drawing_person").one("what", "stature")["up"])


def _person_width(scale: Scale) -> float:
    return max(0.3 * _stature() * scale.mm, 4.0)


def _front_said(structure: Structure, decides: Governing, wind: float, amounts: Amounts) -> str:
    """Return what the view from the side shows in a ``wind`` (m/s), for who does not see it."""
    return messages.FRONT_SAID.format(
        name=structure.design.name,
        height=amounts.length(structure.height),
        balance=amounts.length(float(decides.balance[2])),
        force=amounts.force(decides.force),
        wind=amounts.gust(wind, "near"),
        at=amounts.length(decides.force_height),
    )


def _plan_said(name: str, plan: PlanDrawing) -> str:
    """Return what the view from above shows, for who does not see it."""
    marks = "; ".join(words for _, words in plan.meanings())
    return messages.PLAN_SAID.format(name=name, marks=marks)
