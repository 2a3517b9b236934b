"""Where what holds a piece is set out: by distances, on a page, or as a full-size template."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from ... import __version__
from ...checks.examination import Examination
from ...checks.verdict import Word
from ...design.model import Design
from ...design.placing import about_z
from ...materials import anchors as kinds
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..drawings.drawing_scale import OnPaper
from ..drawings.paper import BOLD_LINE, LETTERS, PLAIN_LINE, Paper, points
from ..drawings.set_out import SetOut, set_out
from ..messages import page_messages as messages
from ..patterns.pattern import BAR, MARGIN, TEXT, Figure, Pattern
from ..patterns.pattern import PlacedFigure as OnPattern
from ..told.held_words import several_anchors
from ..wording.amounts import Amounts
from ..wording.faults import clean
from ..wording.fingerprint import fingerprint
from ..wording.lines import Line, wrapped
from ..wording.remark import capital, joined
from .shop_parts import ShopPart, shop_page

_COLUMNS = (
    ("No.", 0.4),
    ("What", 2.0),
    ("From the middle", 1.2),
    ("Right or left", 1.2),
    ("Back or front", 1.3),
    ("To the next", 1.1),
)
_TITLE = "{name}: where it is held"
_HOW = (
    "Mark the middle of the foot and its front. Set out each place by its distance from the middle "
    "and from the next one, with two tapes: where both are right, so is the angle. Distances are "
    "level, to the middle of what goes into the ground."
)
_NOTHING = "nothing is to be set out for {name}: {word}"
_RIGHT, _BACK = ("right", "left"), ("to the back", "to the front")
_MIDDLE = "in the middle"
_FAR = "{far} from the middle"
_FULL_TITLE = (
    "{name}: where it is held, full size, seen from above",
    "Print at 100 %. The line below is {bar} long: measure it before you drive anything.",
    "FRONT is at the lower edge. Lay it out level, the cross on the middle of the foot.",
)
_WIDE, _HIGH = 180.0, 130.0
_DOT = 2.2
_CROSS = 0.03
_SPOT = ((0.0, 0.0, 8.0), (0.0, 0.0, 1.0))
_NOWHERE = np.empty((0, 2))


class StakePlaces(ByIdentity, frozen=True):
    """Places (n, 2) in m from the middle of the foot, x right and y back, going round.

    ``what`` stands at each; ``foot`` (k, 2) is the foot's outline from its middle.
    """

    design: Design
    points: Array
    what: tuple[str, ...]
    foot: Array

    @property
    def nexts(self) -> Array:
        """Return how far each place is from the next one round (n,) in m."""
        return np.hypot(*(np.roll(self.points, -1, axis=0) - self.points).T)

    @property
    def reaches(self) -> Array:
        """Return how far each place is from the middle (n,) in m."""
        return np.hypot(*self.points.T)


def stake_places(found: Examination) -> StakePlaces | None:
    """Return where what holds a piece is set out, by its verdict; None where nothing is."""
    out = set_out(found)
    if not len(out.ends):
        return None
    from_middle = out.ends - out.middle
    order = np.argsort(np.arctan2(from_middle[:, 1], from_middle[:, 0]), kind="stable")
    names = _names(out)
    foot = found.structure.footprint @ about_z(-found.design.turn)[:2, :2].T
    around = [int(i) for i in order]
    return StakePlaces(
        found.design, from_middle[order], tuple(names[i] for i in around), foot - out.middle
    )


def _names(out: SetOut) -> list[str]:
    """Return the kind at each end: of anchors, then of guys."""
    names: list[str] = []
    for row in out.held.anchors:
        names += [row.kind] * len(row.points)
    for row, given in zip(out.held.guys, out.guy_rows, strict=True):
        names += [given.anchor] * len(row.tops)
    return [kinds.find_anchor(name).name for name in names]


def nothing_to_set_out(design: Design, word: Word) -> str:
    """Return why there is nothing to set out of a design, by its word."""
    return _NOTHING.format(name=clean(design.file or design.name), word=word.upper())


def stake_lines(places: StakePlaces) -> list[Line]:
    """Return the places as a table of distances."""
    amounts = Amounts(places.design.units == "metric")
    name = clean(places.design.name)
    found = [*wrapped(_TITLE.format(name=name), mood="title"), *wrapped(f"{_many(places)}. {_HOW}")]
    table = [tuple(head for head, _ in _COLUMNS), *_rows(places, amounts)]
    if len(set(places.what)) == 1:
        table = [(row[0], *row[2:]) for row in table]
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    return [
        *found,
        Line(""),
        *(
            Line("  ".join(f"{cell:{w}}" for cell, w in zip(row, widths, strict=True)).rstrip())
            for row in table
        ),
    ]


def stake_object(places: StakePlaces) -> Mapping[str, Any]:
    """Return the places in SI: x to the right and y to the back of the middle of the foot."""
    return {
        "format": 1,
        "name": clean(places.design.name),
        "file": clean(places.design.file),
        "fingerprint": fingerprint(places.design),
        "foot_m": places.foot.tolist(),
        "places": [
            {"kind": what, "right_m": float(x), "back_m": float(y), "next_m": float(far)}
            for what, (x, y), far in zip(places.what, places.points, places.nexts, strict=True)
        ],
    }


def stake_page(places: StakePlaces, paper: str) -> bytes:
    """Return a page with the plan and the distances, to be ticked off, as PDF."""
    amounts = Amounts(places.design.units == "metric")
    name = clean(places.design.name)
    made = messages.MADE_BY.format(version=__version__, fingerprint=fingerprint(places.design))
    rows = tuple(_rows(places, amounts))
    plan = _plan(places).svg(name)
    part = ShopPart(_many(places), _HOW, _COLUMNS, rows, ((plan, ""),), 1)
    return shop_page(_TITLE.format(name=name), f"{made}.", [part], paper)


def stake_pattern(places: StakePlaces) -> Pattern:
    """Return the places at full size, with the foot and its middle."""
    amounts = Amounts(places.design.units == "metric")
    every = np.vstack([places.points, places.foot])
    low, high = every.min(axis=0), every.max(axis=0)
    length, bar = BAR[amounts.metric]
    name = clean(places.design.name)
    title = [each.format(name=name, bar=bar) for each in _FULL_TITLE]
    title += [f"{' '.join(row[:2])}: {_FAR.format(far=row[2])}" for row in _rows(places, amounts)]
    below = 4.0 * TEXT
    width, height = 1000.0 * (high - low) + 2.0 * MARGIN + np.array([0.0, below])
    width = max(float(width), 2.0 * MARGIN + max(map(len, title)) * TEXT)

    def placed(x: float, y: float, figure: Figure) -> OnPattern:
        right, up = 1000.0 * (np.array([x, y]) - low) + MARGIN
        return OnPattern(figure, float(right), float(up) + below)

    corner = places.foot.min(axis=0)
    cross = 1000.0 * _CROSS * np.array([[[-1.0, 0.0], [1.0, 0.0]], [[0.0, -1.0], [0.0, 1.0]]])
    spots = [
        placed(float(x), float(y), _figure(label=str(i + 1), circles=_SPOT))
        for i, (x, y) in enumerate(places.points)
    ]
    figures = (
        placed(float(corner[0]), float(corner[1]), _figure(1000.0 * (places.foot - corner))),
        placed(0.0, 0.0, _figure(holes=tuple(cross))),
        placed(0.0, float(low[1]) - 0.001 * TEXT, _figure(label=messages.FRONT.upper())),
        *spots,
    )
    rule = MARGIN, float(height) + 1.5 * TEXT, length
    return Pattern(
        tuple(title), figures, rule, width, float(height) + (len(title) + 3) * 1.5 * TEXT
    )


def _figure(
    outline: Array = _NOWHERE,
    label: str = "",
    holes: tuple[Array, ...] = (),
    circles: tuple[tuple[float, float, float], ...] = (),
) -> Figure:
    size = np.ptp(outline, axis=0) if len(outline) else np.zeros(2)
    words = (label,) if label else ()
    return Figure(outline, _NOWHERE, holes, circles, words, float(size[0]), float(size[1]))


def _many(places: StakePlaces) -> str:
    """Return how many of what there are."""
    counts = {what: places.what.count(what) for what in dict.fromkeys(places.what)}
    return capital(joined(several_anchors(count, what) for what, count in counts.items()))


def _rows(places: StakePlaces, amounts: Amounts) -> list[tuple[str, ...]]:
    rows = zip(places.what, places.points, places.reaches, places.nexts, strict=True)
    return [
        (
            str(i + 1),
            what,
            amounts.length(float(far)),
            _sideways(float(x), _RIGHT, amounts),
            _sideways(float(y), _BACK, amounts),
            amounts.length(float(on)) if len(places.what) > 1 else "",
        )
        for i, (what, (x, y), far, on) in enumerate(rows)
    ]


def _sideways(distance: float, ways: tuple[str, str], amounts: Amounts) -> str:
    size = amounts.length(abs(distance))
    if size == amounts.length(0.0):
        return _MIDDLE
    return f"{size} {ways[0] if distance > 0.0 else ways[1]}"


def _plan(places: StakePlaces) -> Paper:
    """Return the plan to scale, its front below: the foot, its middle, each place by its number."""
    every = np.vstack([places.points, places.foot])
    low, high = every.min(axis=0), every.max(axis=0)
    room = np.array([_WIDE - 12.0 * _DOT, _HIGH - 4.0 * LETTERS])
    mm = float((room / np.maximum(high - low, 1.0e-6)).min())
    paper = Paper(_WIDE, mm * float(high[1] - low[1]) + 4.0 * LETTERS)
    placed = OnPaper(
        mm, 0.5 * _WIDE - 0.5 * mm * float(high[0] + low[0]), 1.6 * LETTERS + mm * float(high[1])
    )
    ring = points(np.array([placed.spot(corner) for corner in places.foot]))
    paper.polygon(ring, "#eeeeee", PLAIN_LINE)
    x, y = placed.at(0.0, 0.0)
    paper.line((x - 3.0, y), (x + 3.0, y), BOLD_LINE)
    paper.line((x, y - 3.0), (x, y + 3.0), BOLD_LINE)
    for i, point in enumerate(places.points):
        spot = placed.spot(point)
        paper.line((x, y), spot, PLAIN_LINE, "1 1.5")
        paper.circle(spot, _DOT, "black", 0.0)
        paper.text((spot[0] + 1.4 * _DOT, spot[1] - 1.0 * _DOT), str(i + 1), bold=True)
    paper.text((x, paper.height - 0.4 * LETTERS), messages.FRONT, "middle", bold=True)
    return paper
