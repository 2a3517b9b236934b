"""What would make a joint hold: more of its fasteners, the next larger, screws, lag screws."""

from collections.abc import Iterator, Sequence
from enum import Enum

from ...design.faults import DesignError
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...materials.fastener import Fastener
from ...statics.tables.joint_table import JointRow
from ...units.frozen import ByValue, replace
from ..fasteners.fastener_sets import BLOCKS, CLEAT, JointPlace
from ..fasteners.joint_places import joint_touching, places_of
from ..fasteners.spacing import HALF, nearest_of
from ..judged.build_steps import least
from .joint_check import JointFound, refastened_joint
from .larger_fasteners import lag_screws, larger, screws

_MOST = 120
"""So many fasteners at one place are the most that are tried."""

MOST_OF_OTHERS = 8
"""So many steps of their number are tried of other fasteners: judgement."""


class Why(Enum):
    """Why no number and no size of fasteners makes a joint hold."""

    PANEL_EDGE = "panel edge"
    END_GRAIN = "end grain"
    NO_ROOM = "enough of them stand too near together"
    NONE_FITS = "none that fits is strong enough"


class JointRemedy(ByValue, frozen=True):
    """One way to make a joint hold: "more", "larger", "screws", "lag screws" or "blocks" by kind.

    ``found`` is the joint with it, checked as any joint; ``before`` the next smaller step, which
    fails, where there is one.
    """

    kind: str
    fastener: Fastener
    count: int
    found: JointFound
    before: JointFound | None


class JointSizing(ByValue, frozen=True):
    """A joint, the ways to make it hold, and why there are none.

    ``crowded`` is the joint with enough of its fasteners, where these have no room.
    """

    joint: JointFound
    remedies: tuple[JointRemedy, ...]
    why: Why | None
    crowded: JointFound | None = None


def size_joint(
    structure: Structure, joint: JointFound, factors: Factors, basis: str
) -> JointSizing:
    """Return the ways to make a joint hold; none where it does."""
    if joint.check.passes:
        return JointSizing(joint, (), None)
    tried = _Tried(structure, joint, factors, basis)
    enough = _enough(tried)
    ways = [_more(tried, enough), *_larger(tried), _screws(tried)]
    found = [remedy for remedy in ways if remedy is not None]
    if not found and "panel edge" not in joint.fasteners.holds.reasons:
        found = [remedy for remedy in _others(tried) if remedy is not None]
    elif not found:
        found = list(_into_blocks(structure, joint, factors, basis))
    if found:
        return JointSizing(joint, tuple(found), None)
    crowded = None if enough is None else tried.found(joint.row.fastener, enough)
    why = _why(joint)
    if why is not Why.NONE_FITS or crowded is None or crowded.fasteners.holds.comes_out:
        return JointSizing(joint, (), why)
    return JointSizing(joint, (), Why.NO_ROOM, crowded)


class _Tried:
    """A joint with other fasteners, each looked at once."""

    def __init__(
        self,
        structure: Structure,
        joint: JointFound,
        factors: Factors,
        basis: str,
        row: JointRow | None = None,
    ) -> None:
        self.joint = joint
        self.row = row or joint.row
        self.metric = structure.design.units == "metric"
        self._structure = structure
        self._factors = factors
        self._basis = basis
        self._faces = joint_touching(structure, self.row)
        self._known: dict[tuple[str, int], JointFound | None] = {}
        self._placed: dict[tuple[str, int], list[JointPlace]] = {}

    def found(self, fastener: Fastener, count: int) -> JointFound | None:
        """Return what is found of it so, None where it cannot be built so."""
        key = fastener.name, count
        if key not in self._known:
            places = self._places(fastener, count)
            try:
                self._known[key] = (
                    refastened_joint(self.joint, places, self._factors) if places else None
                )
            except ValueError:
                self._known[key] = None
        return self._known[key]

    def can_be_built(self, fastener: Fastener, count: int) -> bool:
        """Return whether there is a place where it may stand so."""
        return bool(self._places(fastener, count))

    def has_room(self, fastener: Fastener, count: int, used: float = HALF) -> bool:
        """Return whether it can be built so with room for the fasteners."""
        places = self._places(fastener, count)
        nearest = nearest_of(self._structure, places, used)
        return bool(places) and (nearest is None or nearest.fits)

    def holds(self, fastener: Fastener, count: int) -> bool:
        """Return whether it holds so, with room for the fasteners, and no point comes out."""
        if not self.has_room(fastener, count):
            return False
        found = self.found(fastener, count)
        if found is None or found.check.utilization is None or found.fasteners.holds.comes_out:
            return False
        return found.check.passes and self.has_room(fastener, count, found.check.utilization)

    def strong(self, fastener: Fastener, count: int) -> bool:
        """Return whether it holds so, however near together they stand."""
        found = self.found(fastener, count)
        return found is not None and found.check.passes

    def _places(self, fastener: Fastener, count: int) -> list[JointPlace]:
        """Return where it stands so; nowhere where it cannot be built so."""
        key = fastener.name, count
        if key not in self._placed:
            row = replace(self.row, fastener=fastener, count=count)
            if count != self.row.count:
                row = replace(row, points=None)
            try:
                self._placed[key] = places_of(self._structure, row, self._basis, self._faces)
            except (DesignError, ValueError):
                self._placed[key] = []
        return self._placed[key]


def _enough(tried: _Tried) -> int | None:
    """Return the least number of the same fastener that is strong enough, room or none."""
    row = tried.row
    step = grows_by(row)
    first = row.count // step + 1
    k = least(lambda k: tried.strong(row.fastener, k * step), first, _MOST // step, first)
    return None if k is None else k * step


def _more(tried: _Tried, enough: int | None) -> JointRemedy | None:
    """Return the least number of the same fastener that holds, in the steps that its pattern takes.

    More than are strong enough are tried only where bolts and lag screws so near hold less.
    """
    row, step = tried.row, grows_by(tried.row)
    if enough is None:
        return None
    for count in range(enough, min(enough + 2 * step, _MOST) + 1, step):
        if tried.holds(row.fastener, count):
            found = tried.found(row.fastener, count)
            assert found is not None
            before = tried.found(row.fastener, count - step)
            return JointRemedy("more", row.fastener, count, found, before)
    return None


def _larger(tried: _Tried) -> Iterator[JointRemedy]:
    """Return the next larger of the kind that holds in the same number."""
    before: JointFound | None = tried.joint
    for fastener in larger(tried.row.fastener, tried.metric):
        if tried.holds(fastener, tried.row.count):
            found = tried.found(fastener, tried.row.count)
            assert found is not None
            yield JointRemedy("larger", fastener, tried.row.count, found, before)
            return
        before = tried.found(fastener, tried.row.count)


def _screws(tried: _Tried) -> JointRemedy | None:
    """Return the least wood screw that holds in place of each nail or staple."""
    if tried.row.fastener.kind not in ("nail", "staple") or tried.row.toe_nailed:
        return None
    before: JointFound | None = None
    for fastener in screws(tried.metric):
        if tried.holds(fastener, tried.row.count):
            found = tried.found(fastener, tried.row.count)
            assert found is not None
            return JointRemedy("screws", fastener, tried.row.count, found, before)
        before = tried.found(fastener, tried.row.count)
    return None


def grows_by(row: JointRow) -> int:
    """Return in which steps a number of fasteners grows: rows of two, or one on each side."""
    if row.where == "each side":
        return row.count
    rows = row.where == "rectangle" or row.length is not None
    return 2 if rows or row.count % 2 == 0 else 1


def _others(tried: _Tried) -> Iterator[JointRemedy | None]:
    """Return other fasteners in another number: larger ones, wood screws, else lag screws."""
    kind, row = tried.row.fastener.kind, tried.row
    first = _another_number(tried, "larger", tuple(larger(row.fastener, tried.metric)))
    yield first
    if kind == "bolt" or row.toe_nailed:
        return
    second = None
    if kind in ("nail", "staple"):
        second = _another_number(tried, "screws", tuple(screws(tried.metric)))
        yield second
    if first is None and second is None:
        yield _another_number(tried, "lag screws", tuple(lag_screws(tried.metric)))


def _into_blocks(
    structure: Structure, joint: JointFound, factors: Factors, basis: str
) -> Iterator[JointRemedy]:
    """Yield what holds through blocks inside, to which both parts are fastened across their grain.

    The same fasteners, larger ones or screws in the same number, else in more; of these those for
    which the blocks may be thinnest.
    """
    row = joint.row
    if row.blocks is not None or row.toe_nailed or row.fastener.kind == "bolt":
        return
    bare = replace(
        row, blocks=CLEAT, points=None, through=None, head_in=None, into=None, washer=None
    )
    tried = _Tried(structure, joint, factors, basis, bare)
    ladder = [row.fastener, *larger(row.fastener, tried.metric)]
    ladder += screws(tried.metric) if row.fastener.kind in ("nail", "staple") else ()
    for count in (
        row.count,
        *(row.count + k * grows_by(row) for k in range(1, MOST_OF_OTHERS + 1)),
    ):
        hold = [fastener for fastener in ladder if tried.holds(fastener, count)]
        ways = [found for each in hold if (found := tried.found(each, count)) is not None]
        if ways:
            found = min(ways, key=reach_into_blocks)
            yield JointRemedy("blocks", found.row.fastener, count, found, None)
            return


def reach_into_blocks(joint: JointFound) -> float:
    """Return how far in m the fasteners of a joint reach into its blocks; 0 where they do not."""
    return max(
        (one.holds.penetration for one in joint.place.sets if one.point_in == BLOCKS), default=0.0
    )


def _another_number(tried: _Tried, kind: str, ladder: Sequence[Fastener]) -> JointRemedy | None:
    """Return the fewest fasteners of a ladder that hold, and of these the least."""
    step = grows_by(tried.row)
    for count in range(step, (MOST_OF_OTHERS + 1) * step, step):
        before: JointFound | None = None
        for fastener in ladder:
            if not tried.can_be_built(fastener, count):
                continue
            if not tried.has_room(fastener, count):
                break
            found = tried.found(fastener, count)
            if found is not None and tried.holds(fastener, count):
                return JointRemedy(kind, fastener, count, found, before)
            before = found
    return None


def _why(joint: JointFound) -> Why:
    reasons = joint.fasteners.holds.reasons
    if "panel edge" in reasons:
        return Why.PANEL_EDGE
    return Why.END_GRAIN if "end grain" in reasons else Why.NONE_FITS
