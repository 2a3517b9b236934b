"""A check: of what kind and subject it is, demand against capacity, and what governed it."""

from collections.abc import Iterable
from enum import StrEnum
from typing import Protocol, TypeVar

import numpy as np

from ...units.arrays import Array, to_rank
from ...units.frozen import ByValue

_NONE = 1.0e-12
"""Of what is asked: what resists no more than that resists nothing."""


class Kind(StrEnum):
    """What a check is about; those of the whole piece first, then those that have a subject."""

    OVERTURNING = "overturning"
    SLIDING = "sliding"
    BEARING = "bearing"
    PUSH = "push"
    CLIMB = "climb"
    PULL_OUT = "pull-out"
    RACKING = "racking"
    ANCHOR = "anchor"
    ANCHOR_HEAD = "anchor head"
    GUY = "guy"
    EMBEDMENT = "embedment"
    LOAD = "load"
    LOOSE = "loose"
    LOOSE_SLIDING = "loose sliding"
    JOINT = "joint"
    SPACING = "spacing"
    SEAM = "seam"
    MEMBER = "member"


class Remark(StrEnum):
    """What is remarked of what governed a check; ``slots`` of the check are of this."""

    WORST_OF = "worst of"
    """Of several checks, the name of the worst."""
    HEAD = "head"
    """How an anchor's head holds the piece."""
    GROUND_ANCHOR = "ground anchor"
    LINE = "line"
    FORCE_AT = "force at"
    """How high in m the force acts above the ground."""
    MOVES = "moves"
    """The parts that move."""


class Check(ByValue, frozen=True):
    """One check in SI units, with what governed.

    ``subject`` names the part, joint, row of anchors or load that it is of; empty of the whole.
    ``demand`` and ``capacity`` are factored, in ``unit``. ``utilization`` is their ratio, None
    where nothing is left to resist. ``direction_deg`` is the azimuth that the governing wind comes
    from and ``toward_deg`` the one in which the piece goes over. ``weighing``, ``dead`` and
    ``wind`` tell which weight and load factors governed, ``case`` which wind case, ``bare`` the
    factor of safety without load factors. ``load`` names the load that governed in place of wind,
    whose factor ``wind`` then is. ``envelope`` is the least and the greatest utilization over the
    sets of stiffness, and ``as_read`` that by what stiffness is read as, where the model's matters.
    """

    kind: Kind
    subject: str
    demand: float
    capacity: float
    unit: str
    utilization: float | None
    passes: bool
    source: str
    direction_deg: float | None = None
    toward_deg: float | None = None
    weighing: str = "light"
    dead: float = 1.0
    wind: float = 1.0
    case: str = ""
    bare: float | None = None
    remark: Remark | None = None
    slots: tuple[str | float, ...] = ()
    load: str = ""
    envelope: tuple[float, float] | None = None
    as_read: float | None = None

    @property
    def fails_in_doubt(self) -> bool:
        """Return whether it fails only where things are stiffer or softer than they are read."""
        return not self.passes and self.as_read is not None and self.as_read <= 1.0

    @property
    def name(self) -> str:
        """Return the name that a program reads: ``overturning``, ``joint: tower to foot``."""
        return f"{self.kind}: {self.subject}" if self.subject else str(self.kind)

    @property
    def used(self) -> float:
        """Return utilization: infinite where nothing is left to resist."""
        return np.inf if self.utilization is None else self.utilization

    @property
    def rank(self) -> float:
        """Return how far it is used, to rank checks by: alike where they differ by rounding."""
        return to_rank(self.used)


def check_demand(kind: Kind, demand: float, capacity: float, unit: str, source: str) -> Check:
    """Return the check of a demand against a capacity; ``replace`` adds what governed."""
    utilization, passes = judged(demand, capacity)
    return Check(kind, "", demand, capacity, unit, utilization, passes, source)


def judged(demand: float, capacity: float) -> tuple[float | None, bool]:
    """Return utilization (None where nothing resists but something is asked) and whether it passes.

    Passing is at 1.0 or below. What resists a trillionth of what is asked does so by rounding.

    >>> judged(30.0, 40.0), judged(30.0, 1e-15)
    ((0.75, True), (None, False))
    """
    if demand <= 0.0:
        return 0.0, True
    if capacity <= _NONE * demand:
        return None, False
    ratio = demand / capacity
    return ratio, ratio <= 1.0


def azimuth(vector: Array) -> float:
    """Return the azimuth in degrees, clockwise from +y, toward which a plan vector (2,) points."""
    return float(np.degrees(np.arctan2(vector[0], vector[1])) % 360.0)


def failing_of(checks: Iterable[Check], *kinds: Kind) -> tuple[Check, ...]:
    """Return the failing checks of some kinds, the worst first."""
    return worst_first(check for check in checks if check.kind in kinds and not check.passes)


def worst_first(checks: Iterable[Check]) -> tuple[Check, ...]:
    """Return checks by how much is asked of what they hold; a frame that racks is the worst."""
    return tuple(sorted(checks, key=lambda check: (check.kind is not Kind.RACKING, -check.rank)))


class WithCheck(Protocol):
    """What was found of something, with its check."""

    @property
    def check(self) -> Check:
        """Return its check."""
        ...


J = TypeVar("J", bound=WithCheck)


def judged_by(found: Iterable[J], check: Check) -> J | None:
    """Return the one of what was found that a check is of; None where it is of something else."""
    return next((one for one in found if one.check.name == check.name), None)
