"""Which anchors, how many and where: the plainest kind that holds a piece by the check itself."""

from functools import cache

import numpy as np

from ...design import plane
from ...design.model import Design
from ...design.structure import Structure
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...materials import anchors as kinds
from ...materials import grounds
from ...statics.contacts.holds_down import anchor_points, anchors_meet, feet_apart
from ...statics.tables.anchor_table import AnchorRow
from ...units.frozen import ByIdentity, ByValue, replace
from ..judged.judging import Check
from ..stability.remedies import on_wood
from ..stability.standing import Standing
from .anchored import anchor_pulls, check_tied
from .capacity.anchor_capacity import Holding
from .held import Held, held_by

PLAINEST = ("stake", "screw anchor", "pier", "buried weight", "slab bolt")
"""Groups in the order of the work that they make; a manufactured-home anchor needs a label to be
read, and a deadman a guy: neither is offered for a foot."""

_THROUGH = 0.040
"""A bolt goes through the foot, so far in m from its edge; all else stands against its outside:
judgement."""

_ROOM = 1.5
"""Least distance between the middles of anchors over the widest part of one: judgement."""

MOST_TRIED = 8
"""Of kinds at the same places that hold the pulls: where the next stronger ones fail too, what
fails is the ground or the places."""

_NAME = "anchors"


class Loaded(ByValue, frozen=True):
    """A design as it stands, and the actions (Q, D, C) that it has to stand, with their factors."""

    design: Design
    standing: Standing
    actions: Actions
    factors: Factors

    @property
    def structure(self) -> Structure:
        """Return the structure that stands."""
        return self.standing.structure

    @property
    def ground(self) -> str:
        """Return the name of the ground."""
        return self.standing.ground.name

    @property
    def metric(self) -> bool:
        """Return whether the design's results are shown in metric units."""
        return self.design.units == "metric"

    def tied(self, held: Held) -> list[Check]:
        """Return its checks when held."""
        return check_tied(held, self.standing, self.actions, self.factors)

    def held_with(self, design: Design) -> Held:
        """Return what holds it in a design that differs only in that."""
        return held_by(design, self.structure, self.standing.ground)


class AnchorChoice(ByValue, frozen=True):
    """Anchors that hold a piece: one row of the file, where they stand, and the checks with them.

    ``places`` is where in words' key: "corner", "side", "second side",
    "foot" or "place round it".
    """

    row: AnchorRow
    places: str
    held: Held
    checks: tuple[Check, ...]


class AnchorSearch(ByIdentity, frozen=True):
    """What was found of anchors: the ``choice``, or the check that ``fails`` with the last tried.

    Neither where each is pulled harder than any kind holds, or where none finds room. ``pulls``
    in N, straight up and sideways, are the greatest that any at the last places is asked.
    """

    choice: AnchorChoice | None = None
    fails: Check | None = None
    pulls: tuple[float, float] = (0.0, 0.0)


def choose_anchors(piece: Loaded) -> AnchorChoice | None:
    """Return the fewest and plainest anchors with which a piece passes; None where none do."""
    return search_anchors(piece).choice


def search_anchors(piece: Loaded) -> AnchorSearch:
    """Return the fewest and plainest anchors with which a piece passes, or what fails with any.

    Fewer places come before more, and at each the groups of kinds in the order of ``PLAINEST``,
    each from small to large. It stands without anchors and is checked as it is with them:
    overturning, sliding, bearing, each anchor and its head.
    """
    fit, fails = suited(piece.ground, piece.metric, PLAINEST), list[Check]()
    asked = (0.0, 0.0)
    for places, where in places_for(piece, _NAME):
        pulls: tuple[float, float] | None = None
        tried = 0
        for kind in fit:
            row = set_as(where, kind)
            if row.inset and not len(plane.inset(piece.structure.footprint, row.inset)):
                continue  # the foot is too narrow for a bolt through it
            if not anchors_meet_piece(piece, row):
                continue
            held = piece.held_with(with_anchors(piece.design, row))
            if pulls is None:
                asked = pulls = anchor_pulls(held, piece.standing, piece.actions, piece.factors)
            if not _fits(held, kind) or not _may_hold(
                held.anchors[-1].holds, pulls, piece.factors.soil
            ):
                continue
            tried += 1
            if tried > MOST_TRIED:
                break
            checks = piece.tied(held)
            if all(check.passes for check in checks):
                return AnchorSearch(AnchorChoice(row, places, held, tuple(checks)))
            fails = [check for check in checks if not check.passes]
    return AnchorSearch(None, max(fails, key=lambda check: check.rank, default=None), asked)


def _fits(held: Held, kind: str) -> bool:
    """Return whether anchors of a kind find room: as far apart as half again their own width."""
    anchor = kinds.find_anchor(kind)
    wide = max(anchor.diameter or 0.0, anchor.plate or 0.0)
    apart = np.linalg.norm(held.points[:, None] - held.points[None], axis=-1)
    np.fill_diagonal(apart, np.inf)
    return float(apart.min()) >= _ROOM * wide


def _may_hold(holds: Holding, pulls: tuple[float, float], soil: float) -> bool:
    """Return whether each greatest pull alone is held: less cannot do, both together may not."""
    straight, level = pulls
    return (
        straight <= soil * holds.straight and level <= soil * holds.sideways
    ) and straight <= holds.head


def set_as(where: AnchorRow, kind: str) -> AnchorRow:
    """Return anchors of a kind at places about the foot: bolts go through it, all else beside."""
    if kinds.find_anchor(kind).group != "slab bolt":
        return replace(where, kind=kind)
    ring = None if where.ring is None else where.ring - 2.0 * _THROUGH
    return replace(where, kind=kind, inset=_THROUGH, ring=ring)


def anchors_meet_piece(piece: Loaded, row: AnchorRow) -> bool:
    """Return whether each anchor of a row stands against, or goes through, the piece."""
    if row.where is not None and not len(plane.inset(piece.structure.footprint, row.inset)):
        return False
    return anchors_meet(piece.structure, anchor_points(piece.structure, row), row.kind)


def with_anchors(design: Design, row: AnchorRow) -> Design:
    """Return the design with a row of anchors added to those that it has."""
    rows = (*design.several(AnchorRow), row)
    return replace(design, tables={**design.tables, AnchorRow: rows})


def places_for(piece: Loaded, name: str) -> list[tuple[str, AnchorRow]]:
    """Return where anchors may stand, fewest first: at feet, corners, sides, or round it."""
    foot, wood = piece.structure.footprint, piece.standing.contact
    plain = AnchorRow(name, "")
    if len(feet_apart(piece.structure)):
        return [("foot", replace(plain, where="feet"))]
    if len(foot) <= 4:
        return [("corner", replace(plain, where="corners"))]
    if len(foot) <= 12:
        middles = 0.5 * (foot + np.roll(foot, -1, axis=0))
        found: list[tuple[str, AnchorRow]] = []
        if len(foot) % 2 == 0 and on_wood(middles[::2], wood):
            found.append(("second side", replace(plain, where="second sides")))
        if on_wood(middles, wood):
            found.append(("side", replace(plain, where="sides")))
        return found or [("corner", replace(plain, where="corners"))]
    middle = foot.mean(axis=0)
    ring = 2.0 * float(np.linalg.norm(foot - middle, axis=1).min())
    turn = piece.design.turn
    x = float(middle[0] * np.cos(turn) + middle[1] * np.sin(turn))
    y = float(middle[1] * np.cos(turn) - middle[0] * np.sin(turn))
    round_about: list[tuple[str, AnchorRow]] = []
    for count in (4, 6, 8):
        round_it = replace(plain, at=(x, y, 0.0), ring=ring, count=count)
        turned = [replace(round_it, start=start) for start in _starts(piece)]
        on = [row for row in turned if on_wood(anchor_points(piece.structure, row), wood)]
        round_about += [("place round it", row) for row in on[:1]]
    return round_about


def _starts(piece: Loaded) -> list[float]:
    """Return plan angles in rad in the design's axes: the right, and where each foot stands."""
    middle = piece.structure.footprint.mean(axis=0)
    feet = [plane.middle(foot) - middle for foot in plane.pieces(piece.standing.contact)]
    apart = [foot for foot in feet if float(np.hypot(*foot)) > _THROUGH]
    return [0.0, *(float(np.arctan2(y, x)) - piece.design.turn for x, y in apart)]


@cache
def suited(
    ground: str, metric: bool, groups: tuple[str, ...], for_a_rope: bool = False
) -> tuple[str, ...]:
    """Return the kinds of some ``groups`` that a ground takes, in their order, own units before.

    A stake with an eye is for the rope of a guy, ``for_a_rope``, and holds no foot.
    """
    takes = grounds.find_ground(ground).stakes_possible
    fit = [
        each
        for each in map(kinds.find_anchor, kinds.anchor_names())
        if each.group in groups
        and (each.group == "slab bolt") != takes
        and (for_a_rope or each.group != "stake" or each.head.name != "eye")
    ]
    fit.sort(key=lambda each: (groups.index(each.group), ("mm" in each.name) != metric))
    return tuple(each.name for each in fit)
