"""What would make a joint hold: more of its fasteners, the next larger, or screws."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from ...design.faults import DesignError
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...materials.fastener import Fastener
from ..build_steps import least
from .joint_check import JointFound, again
from .joint_places import places_of
from .joint_table import JointRow
from .larger_fasteners import larger, least_apart, screws

MOST = 120
"""So many fasteners at one place are the most that are tried."""


class Why(Enum):
    """Why no number and no size of fasteners makes a joint hold."""

    PANEL_EDGE = "panel edge"
    END_GRAIN = "end grain"
    NONE_FITS = "none that fits is strong enough"


@dataclass(frozen=True)
class JointRemedy:
    """One way to make a joint hold: ``kind`` is "more", "larger" or "screws".

    ``found`` is the joint with it, checked as any joint; ``before`` the next smaller step, which
    fails, where there is one.
    """

    kind: str
    fastener: Fastener
    count: int
    found: JointFound
    before: JointFound | None


@dataclass(frozen=True)
class JointSizing:
    """A joint, the ways to make it hold, and why there are none."""

    joint: JointFound
    remedies: tuple[JointRemedy, ...]
    why: Why | None


def size_joint(
    structure: Structure, joint: JointFound, factors: Factors, basis: str
) -> JointSizing:
    """Return the ways to make a joint hold; none where it does."""
    if joint.check.passes:
        return JointSizing(joint, (), None)
    tried = _Tried(structure, joint, factors, basis)
    found = [
        remedy for remedy in (_more(tried), *_larger(tried), _screws(tried)) if remedy is not None
    ]
    return JointSizing(joint, tuple(found), None if found else _why(joint))


class _Tried:
    """A joint with other fasteners, each looked at once."""

    def __init__(
        self, structure: Structure, joint: JointFound, factors: Factors, basis: str
    ) -> None:
        self.joint = joint
        self.row = joint.row
        self._structure = structure
        self._factors = factors
        self._basis = basis
        self._known: dict[tuple[str, int], JointFound | None] = {}

    def found(self, fastener: Fastener, count: int) -> JointFound | None:
        """Return what is found of it so, None where it cannot be built so."""
        key = fastener.name, count
        if key not in self._known:
            self._known[key] = self._look(fastener, count)
        return self._known[key]

    def holds(self, fastener: Fastener, count: int) -> bool:
        """Return whether it holds so, with room between the fasteners, and no point comes out."""
        found = self.found(fastener, count)
        if found is None or not found.check.passes:
            return False
        return _has_room(found, fastener) and not found.fasteners.holds.comes_out

    def _look(self, fastener: Fastener, count: int) -> JointFound | None:
        row = replace(self.row, fastener=fastener, count=count)
        if count != self.row.count:
            row = replace(row, points=None)
        try:
            places = places_of(self._structure, row, self._basis)
            return again(self.joint, places, self._factors)
        except (DesignError, ValueError):
            return None


def _more(tried: _Tried) -> JointRemedy | None:
    """Return the least number of the same fastener, in the steps that its pattern takes."""
    row = tried.row
    step = _step(row)
    high = MOST // step
    k = least(
        lambda k: tried.holds(row.fastener, k * step),
        row.count // step + 1,
        high,
        row.count // step + 1,
    )
    if k is None:
        return None
    found = tried.found(row.fastener, k * step)
    assert found is not None
    return JointRemedy(
        "more", row.fastener, k * step, found, tried.found(row.fastener, (k - 1) * step)
    )


def _larger(tried: _Tried) -> Iterator[JointRemedy]:
    """Return the next larger of the kind that holds in the same number."""
    before: JointFound | None = tried.joint
    for fastener in larger(tried.row.fastener):
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
    for fastener in screws():
        if tried.holds(fastener, tried.row.count):
            found = tried.found(fastener, tried.row.count)
            assert found is not None
            return JointRemedy("screws", fastener, tried.row.count, found, before)
        before = tried.found(fastener, tried.row.count)
    return None


def _step(row: JointRow) -> int:
    """Return in which steps a number of fasteners grows: rows of two, or one on each side."""
    if row.where == "each side":
        return row.count
    rows = row.where == "rectangle" or row.length is not None
    return 2 if rows or row.count % 2 == 0 else 1


def _has_room(found: JointFound, fastener: Fastener) -> bool:
    return found.spacing is None or found.spacing >= least_apart(fastener)


def _why(joint: JointFound) -> Why:
    reasons = joint.fasteners.holds.reasons
    if "panel edge" in reasons:
        return Why.PANEL_EDGE
    return Why.END_GRAIN if "end grain" in reasons else Why.NONE_FITS
