"""Guys that hold a piece: how many, from how high, which line, which ground anchor."""

from math import atan2, cos, inf, pi, sin

import numpy as np

from ...design import plane
from ...design.model import Design
from ...design.placing import about_z
from ...design.sections import section
from ...design.structure import Structure
from ...materials import guy_lines
from ...materials.guy_lines import GuyLine
from ...statics.contacts.holds_down import guy_tops, guys_meet
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ...units.frozen import ByValue, replace
from ..judged.build_steps import down, steps_of, up
from ..judged.judging import Check
from ..stability.sliding import check_sliding
from . import guys
from .anchor_choice import (
    MOST_TRIED,
    PLAINEST,
    Loaded,
    anchors_meet_piece,
    places_for,
    set_as,
    suited,
    with_anchors,
)
from .anchored import anchor_pulls, guy_pulls
from .held import Held

SHARE = 2.0 / 3.0
"""Part of the height from which guys start: common practice, above the wind's middle."""
RISE = 1.0
"""Rise of a guy over its run, 45 degrees: common practice."""
CLEAR = 0.1
"""Between a guy and the tips of blades, in m: judgement."""
LINES = ("polyester rope", "galvanised cable", "plaited polyester rope", "stainless cable")
"""Kinds that are offered, the cheaper first: no rope that rots or breaks in the sun (judgement)."""
_GROUND = ("stake", "screw anchor", "pier", "slab bolt")
"""Groups of ground anchors for a guy in the order of the work that they make."""

_NAME, _PINS = "guys", "pins"


class GuyChoice(ByValue, frozen=True):
    """Guys that hold a piece, and the ``pins`` that end its sliding; None where friction does.

    ``pull`` in N is the greatest that any guy is asked for; ``checks`` are all with them.
    """

    row: GuyRow
    pins: AnchorRow | None
    pull: float
    checks: tuple[Check, ...]

    def added_to(self, design: Design) -> Design:
        """Return the design with guys and pins."""
        rows = (*design.several(GuyRow), self.row)
        tied = replace(design, tables={**design.tables, GuyRow: rows})
        return tied if self.pins is None else with_anchors(tied, self.pins)


def choose_guys(piece: Loaded) -> GuyChoice | None:
    """Return four guys with which a piece passes, None where none of the lines and anchors do.

    They leave it at two thirds of its height, below any wheel, toward its corners, at 45 degrees.
    It stands without guys and is checked as it is with them.
    """
    place = guy_place(piece)
    if place is None:
        return None
    slides = not check_sliding(piece.standing, piece.actions, piece.factors).passes
    pins = _pins(piece) if slides else None
    if slides and pins is None:
        return None
    pull: float | None = None
    tried = 0
    for anchor in suited(piece.ground, piece.metric, _GROUND, for_a_rope=True):
        row = replace(place, anchor=anchor)
        held = _with(piece, row, None)
        if pull is None:
            pull = guy_pulls(held, piece.standing, piece.actions, piece.factors)
        ropes = held.guys[-1]
        if pull > piece.factors.soil * ropes.holds.along(ropes.elevation):
            continue
        line = _line(pull, piece.metric)
        tried += 1
        if line is None or tried > MOST_TRIED:
            return None
        choice = replace(row, line=line)
        checks = piece.tied(_with(piece, choice, pins))
        if all(check.passes for check in checks):
            return GuyChoice(choice, pins, pull, tuple(checks))
    return None


def guy_place(piece: Loaded) -> GuyRow | None:
    """Return guys at their height, toward the corners of the foot; None where no wood is there."""
    structure, step = piece.structure, steps_of(piece.design.units).height
    height = step * down(min(SHARE * structure.height, _below_wheels(structure)), step)
    if height <= 0.0:
        return None
    cut = plane.union_of(
        [section(body, height) for body in structure.bodies if body.shape.wheel is None]
    )
    if cut.is_empty:
        return None
    whole = plane.ring_of(cut.convex_hull)
    middle = 0.5 * (whole.min(axis=0) + whole.max(axis=0))
    corner = structure.footprint[0] - structure.footprint.mean(axis=0)
    start = atan2(float(corner[1]), float(corner[0]))
    ways = [np.array([cos(angle), sin(angle)]) for angle in start + 0.5 * pi * np.arange(4)]
    x, y = (float(one) for one in about_z(piece.design.turn)[:2, :2].T @ middle)
    none = GuyRow(
        _NAME, guy_lines.line_names()[0], "", height, height, 4, start - piece.design.turn
    )
    for reach in (
        min(float(((whole - middle) @ way).max()) for way in ways),
        min(plane.farthest(cut, middle, way) for way in ways),
        0.0,
    ):
        out, radius = step * down(reach, step), step * up(reach + height / RISE, step)
        row = replace(none, radius=radius, out=out, at=(x, y, 0.0))
        if guys_meet(structure, guy_tops(structure, row)[0]):
            return row
    return None


def _below_wheels(structure: Structure) -> float:
    """Return the height in m below which no wheel turns, a hand's breadth off; infinite without."""
    return min(
        (
            float(body.origin[2]) - wheel.span - CLEAR
            for body in structure.bodies
            if (wheel := body.shape.wheel) is not None
        ),
        default=inf,
    )


def _pins(piece: Loaded) -> AnchorRow | None:
    """Return the smallest anchors at the foot that end sliding; guys hold it down. None: none."""
    places = places_for(piece, _PINS)
    for kind in suited(piece.ground, piece.metric, PLAINEST) if places else ():
        row = set_as(places[0][1], kind)
        if not anchors_meet_piece(piece, row):
            continue
        held = piece.held_with(with_anchors(piece.design, row))
        _, level = anchor_pulls(held, piece.standing, piece.actions, piece.factors)
        if level <= piece.factors.soil * held.anchors[-1].holds.sideways:
            return row
    return None


def _with(piece: Loaded, row: GuyRow, pins: AnchorRow | None) -> Held:
    return piece.held_with(GuyChoice(row, pins, 0.0, ()).added_to(piece.design))


def _line(pull: float, metric: bool) -> str | None:
    """Return the thinnest line of the cheapest kind that may be pulled so, in N; None: none may."""
    known = [line for line in guy_lines.all_lines() if _kind_of(line) in LINES]
    known.sort(
        key=lambda each: (
            each.name.endswith(" mm") != metric,
            LINES.index(_kind_of(each)),
            each.diameter,
        )
    )
    return next((line.name for line in known if guys.allowable(line) >= pull), None)


def _kind_of(line: GuyLine) -> str:
    return " ".join(line.name.split()[:-2])
