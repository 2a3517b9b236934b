"""What holds the bodies of a model: ties of fasteners on a face, and points on the ground."""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array
from ..units.frozen import ByIdentity, ByValue
from .contacts.face import Face
from .pressed_joint import Shared, share
from .stiffness import AXIAL, BED, LATERAL
from .wrench import about, motion_rows

Many = tuple[Array, Array, Array, NDArray[np.bool_], NDArray[np.str_]]
"""Springs as points, directions (k, 3), stiffness, what only presses, and kinds (k,)."""

SLACK = 1.0e-4
"""Share of its stiffness that a bolt has sideways before it bears."""


class Tie(ByIdentity, frozen=True):
    """What fastens body ``of`` to body ``to`` on the ``face`` on which they meet.

    ``points`` (n, 3) on the site, each a spring of ``stiffness`` (n, 3) in N/m along its own
    ``ways`` (n, 3, 3), the face's right, up and leaving axes where nothing is said; ``kind`` (n, 3)
    tells which are axial, which lateral. ``bed`` in
    Pa/m is the stiffness of what presses between them. ``alone``: nothing else joins what it
    joins, so that whatever its stiffness it takes the same. ``slips`` (n,) are bolts in holes
    wider than they are.
    """

    of: int
    to: int
    face: Face
    points: Array
    stiffness: Array
    kind: NDArray[np.str_]
    bed: float
    alone: bool = False
    slips: NDArray[np.bool_] | None = None
    ways: Array | None = None

    @property
    def along(self) -> Array:
        """Return the unit vectors (n, 3, 3) of each fastener's springs, a row each."""
        given = self.axes if self.ways is None else self.ways
        return np.broadcast_to(given, (len(self.points), 3, 3))

    @property
    def pull(self) -> Array:
        """Return the stiffness (n,) in N/m of each fastener square to the face."""
        return np.einsum("nk,nk->n", self.stiffness, (self.along @ self.face.leaves) ** 2)

    def on_site(self, force: Array) -> Array:
        """Return forces (…, n, 3) on the site's axes of those along each fastener's own ways."""
        return np.einsum("...nk,nkx->...nx", force, self.along)

    @property
    def axes(self) -> Array:
        """Return the face's right, up and leaving unit vectors (3, 3)."""
        return np.stack([self.face.right, self.face.up, self.face.leaves])

    def springs(self, cells_each_way: int) -> Many:
        """Return points (k, 3), directions (k, 3), stiffness, what only presses, kinds (k,).

        Fasteners first, three springs each, then the bed.
        """
        n = len(self.points)
        spots, area = self.face.bed(cells_each_way)
        m = len(area)
        points = np.concatenate([np.repeat(self.points, 3, axis=0), spots])
        bed = np.repeat(self.axes[2:], m, axis=0)
        along = np.concatenate([self.along.reshape(-1, 3), bed])
        stiffness = np.concatenate([self.stiffness.ravel(), self.bed * area])
        kinds = np.concatenate([self.kind.ravel(), np.full(m, BED)])
        return points, along, stiffness, np.arange(3 * n + m) >= 3 * n, kinds


class Footing(ByIdentity, frozen=True):
    """How a body is held by the ground: springs at points (n, 3), each ``along`` (n, 3).

    ``stiffness`` (n,) in N/m. One that is ``one_way`` (n,) only pushes the body that way: a foot
    that presses, a line that draws. What stands there is held both ways unless something else
    holds it down: what a piece does that nothing holds is told by statics of the whole, and its
    parts are judged as if it were held. One that ``stands`` bears it on uneven ground or not.
    """

    body: int
    points: Array
    along: Array
    stiffness: Array
    one_way: NDArray[np.bool_]
    stands: bool = False


def stood(
    body: int,
    points: Array,
    stiffness: Array,
    *,
    presses: bool = False,
    stands: bool = False,
) -> Footing:
    """Return a body held at points (n, 3) along x, y and z, of ``stiffness`` (n, 3) in N/m.

    Where it only ``presses`` it is not held down.
    """
    n = len(points)
    return Footing(
        body,
        np.repeat(points, 3, axis=0),
        np.tile(np.eye(3), (n, 1)),
        stiffness.ravel(),
        np.tile([False, False, presses], n),
        stands,
    )


class Variant(ByValue, frozen=True):
    """One way in which a tie may be stiff: a set of factors, and which bolt does not bear yet."""

    factors: Mapping[str, float]
    slack: int | None = None


AS_GIVEN = Variant({})
"""As stiff as given, every fastener bearing."""


def share_of(
    tie: Tie,
    wrenches: Array,
    rows_each_way: int,
    variants: Sequence[Variant] = (AS_GIVEN,),
) -> Shared:
    """Return how the fasteners of a tie and its bed share wrenches (cases, 6) about its face.

    Fasteners come first, three springs each. Cases come in as many equal runs as there are
    ``variants``, one of each.
    """
    points, along, stiffness, one_way, kinds = tie.springs(rows_each_way)
    each = np.array([_times(kinds, one) for one in variants])
    times = np.repeat(each, len(wrenches) // len(variants), axis=0)
    # about the joint's own middle: a face's origin may lie far off, which costs digits of turns
    middle = points.mean(axis=0)
    r = motion_rows(along, points, middle)
    size = float(np.linalg.norm(points - middle, axis=1).max(initial=0.0)) or 1.0
    wrenches = about(wrenches, middle - tie.face.origin)
    return share(r, stiffness * times, one_way, wrenches, size)


def _times(kinds: NDArray[np.str_], one: Variant) -> Array:
    """Return what multiplies the stiffness (k,) of each spring in a variant."""
    known = {kind: one.factors.get(kind, 1.0) for kind in (AXIAL, LATERAL, BED)}
    times = np.array([known[str(kind)] for kind in kinds])
    if one.slack is not None:
        own = slice(3 * one.slack, 3 * one.slack + 3)
        times[own] = np.where(kinds[own] == LATERAL, SLACK, times[own])
    return times
