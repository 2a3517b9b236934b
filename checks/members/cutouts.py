"""Boards sawn to an outline: cantilevers from their foot, or propped by a brace, level by level."""

from dataclasses import dataclass

import numpy as np

from ...design import plane
from ...design.placing import Body
from ...design.shapes.cutout import Cutout
from ...design.shapes.shape import Array
from ...design.structure import Structure
from ...design.touching import GAP
from ...loads.combinations import Factors
from ..local_wind import LocalWind
from .member_check import Member, NotJudged
from .strips import check_strip, strip_of, stuff_of
from .uprights import Mask, section_of

_LEVELS = 200


@dataclass(frozen=True, eq=False)
class Levels:
    """What bends a board at heights ``up`` (n,) in m above its foot, for a pressure of 1 Pa.

    ``width`` (n,) in m of wood there, ``moment`` (n,) in N m per Pa and ``shear`` (n,) in N per Pa.
    """

    up: Array
    width: Array
    moment: Array
    shear: Array


def check_cutout(
    structure: Structure, i: int, near: Mask, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of a sawn board at the level that is used most; None for any other body.

    Judged at level sections alone: what reaches out to a side hangs on the wood beside it.
    """
    body = structure.bodies[i]
    board, part = body.shape, structure.design.parts[body.part]
    if not isinstance(board, Cutout) or not body.upright:
        return None
    stuff = stuff_of(part, board.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    brace = _brace(structure, body, near)
    if isinstance(brace, str):
        return NotJudged(part.name, brace)
    levels = levels_of(board, brace)
    pressure = factors.wind * float(local.standing[i])
    some = levels.width > 0.0
    up, width = levels.up[some], levels.width[some]
    moment, shear = pressure * levels.moment[some], pressure * levels.shear[some]
    strip = strip_of(stuff, board.thickness, width, board.height <= board.width, basis)
    if strip is None:
        return NotJudged(part.name, "across grain")
    use = np.maximum(moment / strip.moment, shear / strip.shear)
    k = int(use.argmax())
    one = strip_of(stuff, board.thickness, width[k], board.height <= board.width, basis)
    assert one is not None
    check, governs = check_strip(part.name, one, float(moment[k]), float(shear[k]), factors, stuff)
    bends = _bends(up, moment / factors.wind, strip.stiffness, brace)
    role = "cut-out" if brace is None else "propped cut-out"
    return Member(part.name, check, role, governs, 1, bends, stuff, level=float(up[k]))


def levels_of(board: Cutout, brace: float | None) -> Levels:
    """Return what an even wind does at the levels of a sawn board, held at its foot.

    ``brace`` in m above the foot is where it is propped too. Its foot may hold it fast or let it
    turn: below the brace the worse of both is taken, the moment of the free foot, or of the fast
    one: half of the brace's, or W z/8 of the wind W below it. Holes are closed for the wind and
    weaken the wood. Source: statics; Wood Handbook FPL-GTR-190 (2010) Table 9-1 has the beams.
    """
    low_x, low, high_x, high = (float(end) for end in plane.bounds_of(board.outline))
    edges: Array = np.linspace(low, high, _LEVELS + 1)
    step = (high - low) / _LEVELS
    wood = plane.polygon(board.sawn, [np.asarray(hole) for hole in board.holes])
    width = plane.widths(wood, edges, low_x - 1.0, high_x + 1.0)
    filled = plane.widths(board.outline, edges + 0.5 * step, low_x - 1.0, high_x + 1.0)[:-1] * step
    middle = edges[:-1] + 0.5 * step - low
    up = edges - low
    above = (middle[None] > up[:, None]) * filled
    shear: Array = above.sum(axis=1)
    moment: Array = (above * (middle[None] - up[:, None])).sum(axis=1)
    if brace is not None:
        at_brace = float(np.interp(brace, up, moment))
        prop = moment[0] / brace
        below = up < brace
        free = np.abs(moment - prop * (brace - up))
        wind_below = float(filled[middle < brace].sum())
        fast = max(0.5 * at_brace, wind_below * brace / 8.0)
        moment = np.where(below, np.maximum(free, fast), moment)
        fast_shear = shear[0] + 1.5 * at_brace / brace
        shear = np.where(below, fast_shear, shear)
    return Levels(up, width, moment, shear)


def _brace(structure: Structure, body: Body, near: Mask) -> float | str | None:
    """Return how high above its foot a board is propped, None without a prop, or why it is refused.

    Whatever touches it above its foot props it up to there; posts hold it in another way.
    """
    parts = structure.design.parts
    part = parts[body.part]
    stands = body.bottom <= GAP or any(
        touches and abs(other.top - body.bottom) <= GAP
        for other, touches in zip(structure.bodies, near, strict=True)
    )
    if not stands or part.place.under is not None or part.hangs_at is not None:
        return "held otherwise"
    found: list[float] = []
    for other, touches in zip(structure.bodies, near, strict=True):
        if not touches or other.top <= body.bottom + GAP:
            continue
        if parts[other.part].place.reference == part.name:
            return "load on it"
        if section_of(other) is not None or other.top > body.top + GAP:
            return "held otherwise"
        found.append(other.top - body.bottom)
    return min(found, default=None)


def _bends(up: Array, moment: Array, stiffness: Array, brace: float | None) -> float:
    """Return how far in m the top moves: curvature summed from the foot, or from the brace."""
    start = 0.0 if brace is None else brace
    above = up >= start
    if above.sum() < 2:
        return 0.0
    curved = moment[above] / stiffness[above]
    arm = up[above][-1] - up[above]
    swing = curved * arm
    return float((0.5 * (swing[1:] + swing[:-1]) * np.diff(up[above])).sum())
