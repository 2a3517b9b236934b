"""What it takes to hold a piece, each way alone: the inverse of the check, by the check itself.

Every number is found by trying build steps on changed designs, each examined as any design is; so
what is returned passed, and the next smaller step failed.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from math import inf, isfinite, sqrt

from ...design.bounds import WIND
from ...design.model import Design
from ..anchoring.anchor_choice import with_anchors
from ..anchoring.guy_choice import guy_place
from ..build_steps import MPH, down, greatest, least, up
from ..examination import Examination, examine
from .as_built import built
from .choices import Choice, choices_of
from .forbidden import forbidden_foot, idle
from .remedy import Reason, Remedy, failing, holds, nearest_its_limit, why_not
from .size_curves import FOOT, HEAVIEST, WIDEST, CurvePoint, slides_first, weight_curve, width_curve
from .sizing_case import Case

TALLEST = 30.0 * FOOT
LOWEST = 0.25
CALMEST = 10.0 * MPH
"""The greatest height that is tried for a piece that stands, the least part of its height, below
which it is another piece, and the least wind that anything is built for: judgement."""


@dataclass(frozen=True)
class Sizing:
    """The remedies for a design; ``found`` is what was found of it as it stands.

    ``slides_first`` is the foot's width in m from which it slides before it tips: wider buys
    nothing until it is pinned; None where no width up to the widest does. ``curve`` holds the
    limits by the width of the foot and by weight laid low, ``choices`` a few of both, untied and
    tied.
    """

    design: Design
    found: Examination
    remedies: tuple[Remedy, ...]
    slides_first: float | None
    curve: tuple[CurvePoint, ...]
    choices: tuple[Choice, ...] = ()

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
    remedies = {kind: _remedy(case, kind) for kind in KINDS}
    if case.before.posts is not None:
        return Sizing(design, case.before, tuple(remedies.values()), None, ())
    curve = (
        *width_curve(case, remedies["base width"].value),
        *weight_curve(case, remedies["ballast"].value),
    )
    every, first = tuple(remedies.values()), slides_first(case)
    return Sizing(design, case.before, every, first, curve, choices_of(case, remedies))


def _remedy(case: Case, kind: str) -> Remedy:
    """Return the remedy of a kind; what is done at a foot is none where posts carry the piece."""
    if case.before.posts is not None and kind not in ("height", "wind") and not case.stands:
        governs = nearest_its_limit(case.before, case.names).name
        return Remedy(kind, None, _UNITS[kind], False, governs, Reason.POSTS)
    return _WAYS[kind](case)


def remedy_of(design: Design, kind: str) -> tuple[Examination, Remedy]:
    """Return what is found of a design as it stands, and the remedy of one kind alone.

    DesignError where it cannot stand at all, KeyError where there is no such kind.
    """
    case = Case(design, examine(design))
    return case.before, _remedy(case, kind)


def each_way(design: Design, found: Examination) -> Iterator[Remedy]:
    """Yield the remedies of a design one after the other, each once it is worked out.

    ``found`` is what was found of it as it stands.
    """
    case = Case(design, found)
    return (_remedy(case, kind) for kind in KINDS)


@dataclass(frozen=True)
class StartingSizes:
    """How a piece goes with the width of its foot, before there is a design.

    ``found`` is what was found of it on the narrowest foot, ``curve`` its limits by width, and
    ``weighted`` the least weight laid low there that holds it in the asked wind.
    """

    found: Examination
    curve: tuple[CurvePoint, ...]
    slides_first: float | None
    weighted: Remedy


def starting_sizes(design: Design) -> StartingSizes:
    """Return how a design goes with its foot's width. DesignError where it cannot stand at all."""
    case = Case(design, examine(design))
    curve = width_curve(case, None)
    return StartingSizes(case.before, curve, slides_first(case), _ballast(case))


def _base_width(case: Case) -> Remedy:
    foot, step = case.foot, case.steps.width
    if case.stands:
        width = foot.width if foot.part is not None else 0.0
        return _as_it_is(case, "base width", width, "m")
    guess = case.before.remedies.base_width or foot.width
    low, high = up(foot.width, step), down(WIDEST, step)
    k = least(case.passes("base width"), low, high, up(min(guess, WIDEST), step))
    return _judged(case, "base width", k, high, "m")


def _ballast(case: Case) -> Remedy:
    if case.stands:
        return _as_it_is(case, "ballast", 0.0, "kg")
    step, high = case.steps.mass, down(HEAVIEST, case.steps.mass)
    guess = case.before.verdict.tied.weight or case.before.remedies.ballast
    start = up(guess, step) if isfinite(guess) and guess < HEAVIEST else high
    k = least(case.passes("ballast"), 1, high, start)
    return _judged(case, "ballast", k, start, "kg")


def _anchors(case: Case) -> Remedy:
    """Return the pull that each anchor has to hold, the more of straight up and sideways, in N."""
    stakes, step = case.before.remedies.stakes, case.steps.pull
    governs = "overturning" if stakes.pull > 0.0 else "sliding"
    if case.stands:
        return _as_it_is(case, "anchors", 0.0, "N")
    pull = step * up(max(stakes.pull, stakes.sideways), step)
    choice = case.before.anchors
    if choice is None:
        return Remedy("anchors", pull, "N", False, governs, Reason.ANCHORS_BREAK)
    design = with_anchors(case.design, choice.row)
    return _tied(case, Remedy("anchors", pull, "N", True, governs, None, design, anchors=choice))


def _guys(case: Case) -> Remedy:
    """Return the pull that each guy has to hold, in N."""
    if case.stands:
        return _as_it_is(case, "guys", 0.0, "N")
    step = case.steps.pull
    choice = case.before.guys
    if choice is None:
        why = Reason.NO_PLACE if guy_place(case.before.loaded) is None else Reason.GUYS_BREAK
        return Remedy("guys", None, "N", False, "overturning", why)
    if idle(choice):
        return Remedy("guys", None, "N", False, "sliding", Reason.GUYS_IDLE)
    pull = step * up(choice.pull, step)
    design = choice.added_to(case.design)
    return _tied(case, Remedy("guys", pull, "N", True, None, None, design, guys=choice))


def _tied(case: Case, remedy: Remedy) -> Remedy:
    """Return a remedy with what is found of its design as of any other; none where that fails."""
    found = built(case.before, remedy.kind, 0, remedy.design)
    assert found is not None
    if wrong := failing(found, case.names):
        # tied, other forces go through its joints and parts than where the ground holds all of it
        why = Reason.FAILS_TIED
        return Remedy(remedy.kind, remedy.value, "N", False, wrong[0].name, why, None, found)
    governs = nearest_its_limit(found, frozenset(check.name for check in found.checks)).name
    return replace(remedy, found=found, governs=governs)


def _height(case: Case) -> Remedy:
    now, step = case.before.structure.height, case.steps.height
    high = down(now, step)
    if case.stands:
        high = max(high, down(TALLEST, step))
    low = max(up(case.ground.top, step) + 1, up(LOWEST * now, step))

    def not_too_tall(k: int) -> bool:
        """Return whether it is low enough; one at which it cannot be built is taken for too low."""
        found = case.tried("height", k)
        return found is None or holds(found, case.names)

    k = greatest(not_too_tall, low, high, down(now * _share(case.before), step))
    if k is not None and case.tried("height", k) is None:
        k, low = None, k + 1
    return _judged(case, "height", k, low, "m")


def _wind(case: Case) -> Remedy:
    step = case.steps.wind
    guess = down(case.before.site.wind * _share(case.before), step)
    low = up(CALMEST, step)
    k = greatest(case.passes("wind"), low, down(WIND.most, step), guess)
    return _judged(case, "wind", k, low, "m/s")


_WAYS: dict[str, Callable[[Case], Remedy]] = {
    "base width": _base_width,
    "ballast": _ballast,
    "anchors": _anchors,
    "guys": _guys,
    "height": _height,
    "wind": _wind,
}
KINDS = tuple(_WAYS)
_UNITS = {"base width": "m", "ballast": "kg", "anchors": "N", "guys": "N"}


def _as_it_is(case: Case, kind: str, value: float, unit: str) -> Remedy:
    governs = nearest_its_limit(case.before, case.names).name
    why = Reason.NOT_NEEDED
    return Remedy(kind, value, unit, True, governs, why, case.design, case.before, case.foot.part)


def _judged(case: Case, kind: str, k: int | None, utmost: int, unit: str) -> Remedy:
    """Return the remedy of so many steps, or why not even the ``utmost`` is one."""
    part = case.foot.part
    if k is None:
        found = case.tried(kind, utmost)
        names = case.names_for(kind)
        reason, name = why_not(found, names) if found else (Reason.NOTHING_UPRIGHT, None)
        tried = utmost * case.step(kind)
        return Remedy(kind, None, unit, False, name, reason, None, found, part, tried)
    found = case.tried(kind, k)
    assert found is not None
    governs = nearest_its_limit(found, case.names_for(kind)).name
    value = k * case.step(kind)
    forbids = forbidden_foot(found, part) if kind == "base width" else None
    if forbids is not None:
        return Remedy(kind, None, unit, False, governs, forbids, None, found, part, value)
    return Remedy(kind, value, unit, True, governs, None, case.changed(kind, k), found, part)


def _share(found: Examination) -> float:
    """Return a first guess of the part of the wind's speed that it stands: as force goes."""
    worst = max(check.rank for check in found.free or found.checks)
    return 1.0 / sqrt(worst) if 0.0 < worst < inf else 0.1
