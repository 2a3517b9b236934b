"""What would make a joint hold: more of its fasteners, the next larger, or screws for nails."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from ..design.faults import DesignError
from ..design.structure import Structure
from ..loads.combinations import Factors
from ..materials import fasteners
from ..materials.fastener import Fastener
from .build_steps import INCH, least
from .joint_places import places_of
from .joint_table import JointRow
from .joints import JointFound, again

MOST = 120
"""So many fasteners at one place are the most that are tried."""

SPACING = 10.0
"""Least spacing in diameters at which fasteners are offered: judgement, nails in softwood."""

_SCREW_LENGTHS = (1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 3.0, 3.5, 4.0)
_LAG_LENGTHS = (1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 8.0)
_SCREW_SIZES = ("#6", "#8", "#10", "#12", "#14")
_DECK_SIZES = ("#8", "#9", "#10")
_LAG_SIZES = ("1/4", "5/16", "3/8", "1/2")


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
    for fastener in _ladder(tried.row.fastener):
        if tried.holds(fastener, tried.row.count):
            found = tried.found(fastener, tried.row.count)
            assert found is not None
            yield JointRemedy("larger", fastener, tried.row.count, found, before)
            return
        before = tried.found(fastener, tried.row.count)


def _screws(tried: _Tried) -> JointRemedy | None:
    """Return the least wood screw that holds in place of each nail."""
    if tried.row.fastener.kind != "nail" or tried.row.toe_nailed:
        return None
    before: JointFound | None = None
    for size in _SCREW_SIZES:
        for length in _SCREW_LENGTHS:
            fastener = fasteners.find(f"{size} wood screw {_inches(length)} in")
            if tried.holds(fastener, tried.row.count):
                found = tried.found(fastener, tried.row.count)
                assert found is not None
                return JointRemedy("screws", fastener, tried.row.count, found, before)
            before = tried.found(fastener, tried.row.count)
    return None


def _ladder(now: Fastener) -> Iterator[Fastener]:
    """Return larger fasteners of the same kind, the next first."""
    length = (now.length or 0.0) / INCH
    match now.kind:
        case "wood screw":
            yield from _sized(now, "wood screw", _SCREW_SIZES, _SCREW_LENGTHS, length)
        case "deck screw":
            yield from _sized(now, "deck screw", _DECK_SIZES, _SCREW_LENGTHS, length)
        case "lag screw":
            yield from _sized(now, "lag screw", _LAG_SIZES, _LAG_LENGTHS, length)
        case "nail":
            yield from _nails(now)
        case _:
            return


def _sized(
    now: Fastener, kind: str, sizes: tuple[str, ...], lengths: tuple[float, ...], length: float
) -> Iterator[Fastener]:
    for size in sizes:
        for inches in lengths:
            found = fasteners.find(f"{size} {kind} {_inches(inches)} in")
            thicker = found.diameter > now.diameter * (1.0 + 1.0e-6)
            alike = abs(found.diameter - now.diameter) <= 1.0e-6
            if (alike and inches > length + 1.0e-6) or (thicker and inches >= length - 1.0e-6):
                yield found


def _nails(now: Fastener) -> Iterator[Fastener]:
    """Return the larger nails of the same sort, by length and then by diameter."""
    sort = next((word for word in _SORTS if word in now.name.casefold()), None)
    if sort is None:
        return
    named = [name for name in fasteners.names() if sort in name and name.endswith("nail")]
    alike = [fasteners.find(name) for name in named]
    size = (now.length or 0.0, now.diameter)
    larger = [one for one in alike if one.length and (one.length, one.diameter) > size]
    yield from sorted(larger, key=lambda one: (one.length or 0.0, one.diameter))


_SORTS = ("common", "box", "sinker", "finish")


def _inches(length: float) -> str:
    whole, rest = divmod(length, 1.0)
    part = {0.0: "", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}[rest]
    return " ".join(word for word in (f"{whole:.0f}" if whole else "", part) if word)


def _step(row: JointRow) -> int:
    """Return in which steps a number of fasteners grows: rows of two, or one on each side."""
    if row.where == "each side":
        return row.count
    rows = row.where == "rectangle" or row.length is not None
    return 2 if rows or row.count % 2 == 0 else 1


def _has_room(found: JointFound, fastener: Fastener) -> bool:
    return found.spacing is None or found.spacing >= SPACING * fastener.diameter


def _why(joint: JointFound) -> Why:
    reasons = joint.fasteners.holds.reasons
    if "panel edge" in reasons:
        return Why.PANEL_EDGE
    return Why.END_GRAIN if "end grain" in reasons else Why.NONE_FITS
