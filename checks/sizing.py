"""What it takes to hold a piece, each way alone: the inverse of the check, by the check itself.

Every number is found by trying build steps on changed designs, each examined as any design is; so
what is returned passed, and the next smaller step failed.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import inf, isfinite, sqrt

from .. import references, units
from ..design.bounds import WIND
from ..design.model import Design
from ..loads.site import Site
from .build_steps import POUND, Steps, down, greatest, least, steps_of, up
from .examination import Examination, examine
from .ground_parts import GroundParts, ground_parts
from .laid_weight import with_weight
from .other_height import with_height
from .remedy import Reason, Remedy, examined, holds, nearest_its_limit, needed, why_not
from .wider_foot import present_foot, with_width

FOOT = 0.3048
WIDEST = 20.0 * FOOT
HEAVIEST = 5000.0 * POUND
TALLEST = 30.0 * FOOT
"""The most that is tried of a foot's width, weight laid low, height: judgement."""


@dataclass(frozen=True)
class Sizing:
    """The remedies for a design; ``found`` is what was found of it as it stands.

    ``slides_first`` is the foot's width in m from which it slides before it tips: wider buys
    nothing until it is pinned; None where no width up to the widest does.
    """

    design: Design
    found: Examination
    remedies: tuple[Remedy, ...]
    slides_first: float | None

    @property
    def feasible(self) -> bool:
        """Return whether a remedy exists, or none is needed."""
        return any(remedy.feasible for remedy in self.remedies)

    def remedy(self, kind: str) -> Remedy:
        """Return the remedy of a kind. KeyError where there is none such."""
        return {remedy.kind: remedy for remedy in self.remedies}[kind]


def size(design: Design) -> Sizing:
    """Return what it takes to hold a design. Raises DesignError where it cannot stand at all."""
    case = Case(design, examine(design))
    return Sizing(
        design,
        case.before,
        tuple(way(case) for way in _WAYS.values()),
        slides_first(case),
    )


class Case:
    """A design to be sized, and every changed one that was examined on the way."""

    def __init__(self, design: Design, before: Examination) -> None:
        self.design = design
        self.before = before
        self.steps: Steps = steps_of(design.units)
        self.ground: GroundParts = ground_parts(before.structure)
        self.names = needed(before)
        self._tried: dict[tuple[str, float], Examination | None] = {}

    @property
    def stands(self) -> bool:
        """Return whether it neither tips nor slides as it is."""
        return holds(self.before, self.names)

    def changed(self, kind: str, value: float) -> Design | None:
        """Return the design changed in one way; ``value`` in SI."""
        match kind:
            case "base width":
                return with_width(self.design, self.ground, value)
            case "ballast":
                return with_weight(self.design, self.ground, value)
            case "height":
                return with_height(self.design, self.ground, value)
            case _:
                return _with_wind(self.design, value)

    def tried(self, kind: str, value: float) -> Examination | None:
        """Return what is found of the changed design, each looked at once."""
        key = kind, round(value, 9)
        if key not in self._tried:
            self._tried[key] = examined(self.changed(kind, value))
        return self._tried[key]

    def passes(self, kind: str, step: float) -> Callable[[int], bool]:
        """Return whether so many steps of a kind pass."""
        return lambda k: holds(self.tried(kind, k * step), self.names)


def slides_first(case: Case) -> float | None:
    """Return the foot's least width in m at which it slides before it tips, None if none does."""
    step, width = case.steps.width, present_foot(case.design, case.ground).width
    if present_foot(case.design, case.ground).part is not None and _slides_first(case.before):
        return width

    def does(k: int) -> bool:
        found = case.tried("base width", k * step)
        return found is not None and _slides_first(found)

    low = up(width, step)
    found = least(does, low, down(WIDEST, step), low)
    return None if found is None else found * step


def _slides_first(found: Examination) -> bool:
    slides, tips = found.limits.sliding, found.limits.tipping
    return slides is not None and slides < (tips if tips is not None else inf)


def _base_width(case: Case) -> Remedy:
    foot = present_foot(case.design, case.ground)
    if case.stands:
        width = foot.width if foot.part is not None else 0.0
        return _as_it_is(case, "base width", width, "m", foot.part)
    step = case.steps.width
    guess = case.before.remedies.base_width or foot.width
    low, high = up(foot.width, step), down(WIDEST, step)
    k = least(case.passes("base width", step), low, high, up(min(guess, WIDEST), step))
    return _judged(case, "base width", k, step, high, "m", foot.part)


def _ballast(case: Case) -> Remedy:
    if case.stands:
        return _as_it_is(case, "ballast", 0.0, "kg")
    step, high = case.steps.mass, down(HEAVIEST, case.steps.mass)
    guess = case.before.remedies.ballast
    start = up(guess, step) if isfinite(guess) and guess < HEAVIEST else high
    k = least(case.passes("ballast", step), 1, high, start)
    return _judged(case, "ballast", k, step, start if k is None else high, "kg")


def _anchors(case: Case) -> Remedy:
    """Return the pull that each anchor has to hold, the more of straight up and sideways, in N."""
    stakes, step = case.before.remedies.stakes, case.steps.pull
    governs = "overturning" if stakes.pull > 0.0 else "sliding"
    if case.stands:
        return _as_it_is(case, "anchors", 0.0, "N")
    pull = step * up(max(stakes.pull, stakes.sideways), step)
    row = references.table("remedies").one("remedy", "anchor pull")
    if pull > float(row["most"]) * units.factor("lbf"):
        return Remedy("anchors", pull, "N", False, governs, Reason.ANCHORS_BREAK)
    ground = case.before.standing.ground
    driven = ground.stakes_possible and not ground.straight_pull and stakes.pull > 0.0
    reason = Reason.NO_STRAIGHT_PULL if driven else None
    return Remedy("anchors", pull, "N", not driven, governs, reason)


def _height(case: Case) -> Remedy:
    now, step = case.before.structure.height, case.steps.height
    high = down(now, step)
    if case.stands:
        high = max(high, down(TALLEST, step))
    lowest = up(case.ground.top, step) + 1

    def not_too_tall(k: int) -> bool:
        """A height at which it cannot be built is taken for too low, not for too tall."""
        found = case.tried("height", k * step)
        return found is None or holds(found, case.names)

    k = greatest(not_too_tall, lowest, high, down(now * _share(case.before), step))
    if k is not None and case.tried("height", k * step) is None:
        return Remedy("height", None, "m", False, None, Reason.NOTHING_UPRIGHT)
    return _judged(case, "height", k, step, lowest, "m")


def _wind(case: Case) -> Remedy:
    step = case.steps.wind
    guess = down(case.before.site.wind * _share(case.before), step)
    high = down(WIND.most, step)
    k = greatest(case.passes("wind", step), 1, high, guess)
    return _judged(case, "wind", k, step, 1, "m/s")


_WAYS: dict[str, Callable[[Case], Remedy]] = {
    "base width": _base_width,
    "ballast": _ballast,
    "anchors": _anchors,
    # "guys" go here, once guys can be sized
    "height": _height,
    "wind": _wind,
}
KINDS = tuple(_WAYS)


def _as_it_is(
    case: Case, kind: str, value: float, unit: str, part: str | None = None
) -> Remedy:
    governs = nearest_its_limit(case.before, case.names).name
    return Remedy(
        kind, value, unit, True, governs, Reason.NOT_NEEDED, case.design, case.before, part
    )


def _judged(
    case: Case, kind: str, k: int | None, step: float, most: int, unit: str, part: str | None = None
) -> Remedy:
    """Return the remedy of so many steps, or why not even ``most`` steps are one."""
    if k is None:
        found = case.tried(kind, most * step)
        reason, name = why_not(found, case.names) if found else (Reason.NOTHING_UPRIGHT, None)
        return Remedy(kind, None, unit, False, name, reason, found=found, part=part)
    found = case.tried(kind, k * step)
    assert found is not None
    governs = nearest_its_limit(found, case.names).name
    design = case.changed(kind, k * step)
    return Remedy(kind, k * step, unit, True, governs, None, design, found, part)


def _share(found: Examination) -> float:
    """Return a first guess of the part of the wind's speed that it stands: as force goes."""
    worst = max(check.utilization or inf for check in found.free)
    return 1.0 / sqrt(worst) if 0.0 < worst < inf else 0.1


def _with_wind(design: Design, wind: float) -> Design:
    site = replace(design.table(Site), wind=wind)
    return replace(design, tables={**design.tables, Site: site})
