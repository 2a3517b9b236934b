"""Joints: what wind or a named load asks of each nail, screw and bolt, and whether it holds.

The fasteners that a cut goes through share what is carried by statics; each is judged by what pulls
it along itself and what pushes it sideways at once.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import inf

import numpy as np
from numpy.typing import NDArray

from ...design.shapes.shape import Array
from ...design.structure import Structure
from ...loads.actions import Blow
from ...loads.combinations import Factors
from ...statics.joint_table import JointRow
from ..borne import Borne
from ..judging import Check, Kind
from . import fastener_group, fastener_layout
from .carried import Fastened
from .cuts import ByPlace, Cut, cuts_at
from .fastener_capacity import Capacity
from .fastener_sets import FastenerSet
from .joint_places import Place
from .most_used import MostUsed, held_for, most_used

SOURCE = "NDS 2018 12.4 with 12.2 and 12.3; statics of the group"


@dataclass(frozen=True, eq=False)
class JointFound:
    """What was found of a joint: its check, and the set of fasteners and place that govern.

    ``tension`` and ``shear`` in N are of the fastener used most, which stands at ``at`` (3,) in m;
    ``count`` in all, at how many ``spots``; ``spacing`` the least in m at one of them.
    ``outward`` is the site's azimuth in degrees of that fastener from the middle of its group, None
    where it stands in it. ``shared_with`` names joints that the same cut goes through. ``longer``
    is what it holds under wind over what it holds for as long as what governs lasts.
    """

    row: JointRow
    check: Check
    place: Place
    fasteners: FastenerSet
    cuts: tuple[Cut, ...]
    tension: float
    shear: float
    at: Array
    outward: float | None
    count: int
    spots: int
    spacing: float | None
    shared_with: tuple[str, ...]
    longer: float = 1.0

    @property
    def holds(self) -> Capacity:
        """Return what one fastener holds for as long as what governs lasts."""
        return held_for(self.row, self.fasteners.holds, self.longer)


def find_joints(
    structure: Structure,
    fastened: Fastened,
    places: Sequence[Place],
    blow: Blow,
    factors: Factors,
    basis: str,
    slope: float,
    loads: Sequence[Borne],
    by_place: ByPlace,
) -> tuple[JointFound, ...]:
    """Return what was found of every joint of a design, in the file's order.

    ``places`` are its joints where they stand, ``blow`` the wind on some of its bodies alone,
    ``basis`` that of judgement, ``slope`` that of the ground in rad, ``loads`` those that the
    design names; ``by_place`` parts what is cut along a slender piece.
    """
    if not places:
        return ()
    cuts = cuts_at(structure, fastened, places, blow, factors, basis, slope, loads, by_place)
    return tuple(
        _worst_of(row, cuts[row.name], factors) for row in structure.design.several(JointRow)
    )


def again(found: JointFound, own: Sequence[Place], factors: Factors) -> JointFound:
    """Return what is found of a joint with other fasteners (``own``) under the same loads."""
    row = own[0].row
    cuts = [
        replace(
            cut,
            through=_refastened(cut.through, own),
            within=_refastened(cut.within, own),
        )
        for cut in found.cuts
    ]
    return _worst_of(row, cuts, factors)


def _refastened(through: Sequence[Place], own: Sequence[Place]) -> tuple[Place, ...]:
    """Return what a cut goes through, with a joint's other fasteners ``own`` for those it had."""
    name = own[0].row.name
    meets = {(place.of, place.to) for place in through if place.row.name == name}
    return (
        *(place for place in through if place.row.name != name),
        *(place for place in own if (place.of, place.to) in meets),
    )


def _worst_of(row: JointRow, cuts: Sequence[Cut], factors: Factors) -> JointFound:
    """Return what is found of a joint in the cut in which it is used most."""
    each = [_judged(row, cut, factors) for cut in cuts]
    return replace(max(each, key=lambda one: one.check.rank), cuts=tuple(cuts))


def _judged(row: JointRow, cut: Cut, factors: Factors) -> JointFound:
    """Return how a joint is used within a cut, by its fastener that is used most."""
    held = _shared(cut)
    longer = np.array([one.longer for one in cut.loads.sets])
    at = 0
    worst: MostUsed | None = None
    for place in cut.through:
        size = len(place.points)
        if place.row.name == row.name:
            for fasteners in place.sets:
                drawn = _on_axis(held[..., at : at + size, :], fasteners.draws)
                one = most_used(row, place, fasteners, longer, *drawn)
                if worst is None or one.rank > worst.rank:
                    worst = one
        at += size
    assert worst is not None
    place = worst.place
    found = _check(row, cut, worst, factors)
    own = [each for each in cut.whole if each.row.name == row.name]
    points = np.vstack([each.points for each in cut.whole])
    apart = [fastener_layout.least_spacing(each.points) for each in own]
    spaced = [each for each in apart if each is not None]
    others = {each.row.name: None for each in cut.whole if each.row.name != row.name}
    return JointFound(
        row=row,
        check=found,
        place=place,
        fasteners=worst.fasteners,
        cuts=(cut,),
        tension=worst.tension,
        shear=worst.shear,
        at=place.points[worst.nth],
        outward=_outward(points, place.points[worst.nth]),
        count=sum(len(each.points) for each in own),
        spots=len(own),
        spacing=min(spaced, default=None),
        shared_with=tuple(others),
        longer=float(longer[worst.load[0]]),
    )


def _shared(cut: Cut) -> Array:
    """Return the force (…, n, 3) in N that each fastener takes which a cut goes through."""
    points = np.vstack([place.points for place in cut.through])
    F, M = cut.loads.force, cut.loads.about(cut.origin)
    if len(cut.corners) == 0:
        held = fastener_group.hung(points - cut.origin, F, M)
    else:
        right, up, out = cut.axes
        local = (points - cut.origin) @ cut.axes[:2].T
        first = np.stack([-(M @ up), M @ right], axis=-1)
        pulled = fastener_group.pulls(local, cut.corners, F @ out, first)
        along = np.stack([F @ right, F @ up], axis=-1)
        flat = fastener_group.shares(local, along, M @ out)
        unheld = np.logical_not(np.isfinite(flat))
        sound = np.where(unheld, 0.0, flat) @ cut.axes[:2]
        held = pulled.tension[..., None] * out + sound
        held = np.where(unheld.any(axis=-1, keepdims=True), inf, held)
    return held


def _on_axis(held: Array, draws: Array) -> tuple[Array, Array]:
    """Return tension and shear (…, n) of forces (…, n, 3) on fasteners drawn along (n, 3).

    Infinite shear where nothing holds.
    """
    unheld: NDArray[np.bool_] = np.isinf(held[..., 0])
    sound = np.where(unheld[..., None], 0.0, held)
    drawn = (sound * draws).sum(axis=-1)
    across = np.linalg.norm(sound - drawn[..., None] * draws, axis=-1)
    return np.maximum(drawn, 0.0), np.where(unheld, inf, across)


def _check(row: JointRow, cut: Cut, worst: MostUsed, factors: Factors) -> Check:
    """Return the check: the force on the fastener used most, against what it holds that way."""
    s, _, d, c = worst.load
    acts = cut.loads.sets[s]
    by_wind = acts.is_wind
    used, holds = worst.used, held_for(row, worst.fasteners.holds, acts.longer)
    whole = float(np.linalg.norm(cut.loads.force[worst.load])) / acts.longer
    force = float(np.hypot(worst.tension, worst.shear)) if np.isfinite(worst.shear) else whole
    capacity = force / used if 0.0 < used < inf else 0.0
    if used == 0.0:
        capacity = min(holds.pull, holds.sideways)
    return Check(
        kind=Kind.JOINT,
        subject=row.name,
        demand=force,
        capacity=capacity,
        unit="N",
        utilization=used if used < inf else None,
        passes=used <= 1.0,
        source=f"{SOURCE}; {factors.source}",
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.live,
        direction_deg=float(cut.loads.azimuths[d]) if by_wind else None,
        case="calm" if acts.is_calm else cut.loads.cases[c] if by_wind else "",
        load=acts.name,
    )


def _outward(points: Array, at: Array) -> float | None:
    away = (at - points.mean(axis=0))[:2]
    if np.hypot(*away) < 1.0e-3:
        return None
    return float(np.degrees(np.arctan2(away[0], away[1])) % 360.0)
