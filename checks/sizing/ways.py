"""What it takes to hold a piece, each way alone: the inverse of the check, by the check itself.

Every number is found by trying build steps on changed designs, each examined as any design is; so
what is returned passed, and the next smaller step failed.
"""

from collections.abc import Callable, Iterator
from functools import cached_property
from math import inf, isfinite, sqrt

from ...design.bounds import WIND
from ...design.model import Design
from ...units.frozen import ByValue, replace
from ..anchoring.anchor_choice import with_anchors
from ..anchoring.guy_choice import guy_place
from ..examination import Examination, examine
from ..judged.build_steps import MPH, down, greatest, least, up
from .as_built import built
from .choices import SizeChoice, choices_of
from .forbidden import forbidden_foot, idle
from .remedy import Remedy, RemedyReason, failing, nearest_its_limit, why_not
from .size_curves import (
    FOOT,
    HEAVIEST,
    WIDEST_FOOT,
    CurvePoint,
    slides_first,
    weight_curve,
    width_curve,
)
from .sizing_case import Case

_TALLEST = 30.0 * FOOT
_LOWEST = 0.25
CALMEST = 10.0 * MPH
"""The greatest height that is tried for a piece that stands, the least part of its height, below
which it is another piece, and the least wind that anything is built for: judgement."""


class Sizing:
    """The remedies for a design, each worked out once it is asked for, and what goes with them.

    Before each kind of remedy is looked for, ``told`` is called with its name.
    """

    def __init__(self, case: Case, told: Callable[[str], None] | None = None) -> None:
        """Take a design that is to be sized."""
        self.case = case
        self._told = told
        self._known: dict[str, Remedy] = {}

    @property
    def design(self) -> Design:
        """Return the design as it stands."""
        return self.case.design

    @property
    def found(self) -> Examination:
        """Return what was found of the design as it stands."""
        return self.case.before

    @property
    def feasible(self) -> bool:
        """Return whether a remedy exists, or none is needed."""
        return any(self.remedy(kind).feasible for kind in REMEDY_KINDS)

    @property
    def remedies(self) -> tuple[Remedy, ...]:
        """Return every remedy, in the order in which people are told."""
        return tuple(self.remedy(kind) for kind in REMEDY_KINDS)

    def remedy(self, kind: str) -> Remedy:
        """Return the remedy of a kind. KeyError where there is none such."""
        if kind not in self._known:
            if self._told is not None:
                self._told(kind)
            self._known[kind] = _remedy(self.case, kind)
        return self._known[kind]

    @cached_property
    def curve(self) -> tuple[CurvePoint, ...]:
        """Return the limits by the width of the foot and by weight laid low; none of posts."""
        if self.found.posts is not None:
            return ()
        return (
            *width_curve(self.case, self.remedy("base width").value),
            *weight_curve(self.case, self.remedy("ballast").value),
        )

    @cached_property
    def slides_first(self) -> float | None:
        """Return the foot's width in m from which it slides before it tips.

        Wider buys nothing until it is pinned; None where no width up to the widest does.
        """
        return slides_first(self.case) if self.curve else None

    @cached_property
    def choices(self) -> tuple[SizeChoice, ...]:
        """Return a few feet and weights, untied and tied; none of posts."""
        if self.found.posts is not None:
            return ()
        return choices_of(self.case, self.remedy("base width"), self.remedy("ballast"))


def size_design(design: Design, told: Callable[[str], None] | None = None) -> Sizing:
    """Return what it takes to hold a design. Raises DesignError where it cannot stand at all.

    Before each kind of remedy is looked for, ``told`` is called with its name.
    """
    return Sizing(Case(design, examine(design)), told)


def remedy_of(design: Design, kind: str) -> tuple[Examination, Remedy]:
    """Return what is found of a design as it stands, and the remedy of one kind alone.

    DesignError where it cannot stand at all, KeyError where there is no such kind.
    """
    sizing = size_design(design)
    return sizing.found, sizing.remedy(kind)


def _remedy(case: Case, kind: str) -> Remedy:
    """Return the remedy of a kind; what is done at a foot is none where posts carry the piece."""
    if case.before.posts is not None and kind not in ("height", "wind") and not case.stands:
        governs = nearest_its_limit(case.before, case.names).name
        return Remedy(kind, None, _UNITS[kind], False, governs, RemedyReason.POSTS)
    return _WAYS[kind](case)


def each_way(design: Design, found: Examination) -> Iterator[Remedy]:
    """Yield the remedies of a design one after the other, each once it is worked out.

    ``found`` is what was found of it as it stands.
    """
    case = Case(design, found)
    return (_remedy(case, kind) for kind in REMEDY_KINDS)


class StartingSizes(ByValue, frozen=True):
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
    low, high = up(foot.width, step), down(WIDEST_FOOT, step)
    k = least(case.passes("base width"), low, high, up(min(guess, WIDEST_FOOT), step))
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
        sinks = case.before.verdict.tied.sinks_anchored
        why = RemedyReason.ANCHORS_SINK_IT if sinks else RemedyReason.ANCHORS_BREAK
        return Remedy("anchors", pull, "N", False, "bearing" if sinks else governs, why)
    design = with_anchors(case.design, choice.row)
    return _tied(case, Remedy("anchors", pull, "N", True, governs, None, design, anchors=choice))


def _guys(case: Case) -> Remedy:
    """Return the pull that each guy has to hold, in N."""
    if case.stands:
        return _as_it_is(case, "guys", 0.0, "N")
    step = case.steps.pull
    choice = case.before.guys
    if choice is None:
        why = (
            RemedyReason.NO_PLACE
            if guy_place(case.before.loaded) is None
            else RemedyReason.GUYS_BREAK
        )
        return Remedy("guys", None, "N", False, "overturning", why)
    if idle(choice):
        return Remedy("guys", None, "N", False, "sliding", RemedyReason.GUYS_IDLE)
    pull = step * up(choice.pull, step)
    design = choice.added_to(case.design)
    return _tied(case, Remedy("guys", pull, "N", True, None, None, design, guys=choice))


def _tied(case: Case, remedy: Remedy) -> Remedy:
    """Return a remedy with what is found of its design as of any other; none where that fails."""
    found = built(case.before, remedy.kind, 0, remedy.design)
    assert found is not None
    if wrong := failing(found, case.names):
        # tied, other forces go through its joints and parts than where the ground holds all of it
        why = RemedyReason.FAILS_TIED
        return Remedy(remedy.kind, remedy.value, "N", False, wrong[0].name, why, None, found)
    governs = nearest_its_limit(found, frozenset(check.name for check in found.checks)).name
    return replace(remedy, found=found, governs=governs)


def _height(case: Case) -> Remedy:
    now, step = case.before.structure.height, case.steps.height
    high = down(now, step)
    if case.stands:
        high = max(high, down(_TALLEST, step))
    low = max(up(case.ground.top, step) + 1, up(_LOWEST * now, step))
    not_too_tall = case.passes("height", unbuilt=True)
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
REMEDY_KINDS = tuple(_WAYS)
_UNITS = {"base width": "m", "ballast": "kg", "anchors": "N", "guys": "N"}


def _as_it_is(case: Case, kind: str, value: float, unit: str) -> Remedy:
    governs = nearest_its_limit(case.before, case.names).name
    why = RemedyReason.NOT_NEEDED
    return Remedy(kind, value, unit, True, governs, why, case.design, case.before, case.foot.part)


def _judged(case: Case, kind: str, k: int | None, utmost: int, unit: str) -> Remedy:
    """Return the remedy of so many steps, or why not even the ``utmost`` is one."""
    part = case.foot.part
    if k is None:
        found = case.tried(kind, utmost)
        names = case.names_for(kind)
        reason, name = why_not(found, names) if found else (RemedyReason.NOTHING_UPRIGHT, None)
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
