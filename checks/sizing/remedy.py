"""One remedy: what it takes, whether it does, and what is nearest its limit then."""

from enum import Enum

from ...design.model import Design
from ...units.frozen import ByValue
from ..anchoring.anchor_choice import AnchorChoice
from ..anchoring.guy_choice import GuyChoice
from ..as_one import AsOne
from ..examination import Examination
from ..judged.judging import Check, Kind

WIND_CHECKS = frozenset({Kind.OVERTURNING, Kind.SLIDING})
POST_CHECKS = frozenset({Kind.EMBEDMENT, Kind.PULL_OUT})


class RemedyReason(Enum):
    """Why there is nothing to build, or no remedy."""

    NOT_NEEDED = "not needed"
    TIPS = "still tips"
    SLIDES = "still slides"
    SINKS = "sinks"
    GIVES_WAY = "its posts still give way"
    ANOTHER = "another check fails"
    ANCHORS_BREAK = "more than anchors hold"
    ANCHORS_SINK_IT = "anchors draw its foot into the ground"
    GUYS_BREAK = "no line or ground anchor holds it"
    BENDS = "one sheet bends too far"
    FAILS_TIED = "held so, a joint or part of it fails"
    GUYS_IDLE = "guys carry nothing"
    NO_PLACE = "nothing to tie guys to"
    POSTS = "posts in the ground carry it"
    NOTHING_UPRIGHT = "nothing upright to scale"


class Built(ByValue, frozen=True):
    """What a remedy of a ``kind`` takes, as ``Remedy`` has it, and the gust to act at then, m/s."""

    kind: str
    value: float
    anchors: AnchorChoice | None
    guys: GuyChoice | None
    act: float | None


class Remedy(ByValue, frozen=True):
    """One remedy alone: ``value`` in the SI ``unit``, None where there is none.

    ``governs`` names the check nearest its limit there, or the one that fails at the most that was
    tried. ``design`` is the changed design and ``found`` what was found of it. ``anchors`` and
    ``guys`` are what was chosen, ``value`` then the pull on each. ``part`` names the foot that is
    widened, or is None where one is added. ``utmost`` is the most (of height and wind the least)
    that was tried in vain.
    """

    kind: str
    value: float | None
    unit: str
    feasible: bool
    governs: str | None
    reason: RemedyReason | None = None
    design: Design | None = None
    found: Examination | None = None
    part: str | None = None
    utmost: float | None = None
    anchors: AnchorChoice | None = None
    guys: GuyChoice | None = None

    @property
    def built(self) -> Built | None:
        """Return what there is to do that would hold the piece; None where there is nothing."""
        if not self.feasible or self.design is None or self.reason is not None:
            return None
        act = None if self.found is None else self.found.limits.act
        return Built(self.kind, self.value or 0.0, self.anchors, self.guys, act)


def checks_needed(before: Examination) -> frozenset[str]:
    """Return the checks that a remedy has to pass: those of wind, and all that passed before."""
    if before.posts is not None:
        wind = {check.name for check in before.checks if check.kind in POST_CHECKS}
    else:
        wind = WIND_CHECKS
    return frozenset(wind) | {check.name for check in before.checks if check.passes}


def checks_pass(found: Examination | None, names: frozenset[str]) -> bool:
    """Return whether the named checks pass."""
    return found is not None and not failing(found, names)


def failing(found: AsOne, names: frozenset[str]) -> tuple[Check, ...]:
    """Return those of the named checks that fail, the worst first."""
    failed = [check for check in found.checks if check.name in names and not check.passes]
    return tuple(sorted(failed, key=lambda check: check.rank, reverse=True))


def nearest_its_limit(found: Examination, names: frozenset[str]) -> Check:
    """Return the check of the named ones that is used most."""
    named = (check for check in found.checks if check.name in names)
    return max(named, key=lambda check: check.rank)


def why_not(found: Examination, names: frozenset[str]) -> tuple[RemedyReason, str]:
    """Return why a changed design is no remedy, and the check that says so."""
    worst = {check.name: check for check in failing(found, names)}
    for name, reason in (("sliding", RemedyReason.SLIDES), ("overturning", RemedyReason.TIPS)):
        if name in worst:
            return reason, name
    if found.posts is not None:
        return RemedyReason.GIVES_WAY, next(iter(worst))
    name = next(iter(worst))
    return (RemedyReason.SINKS if name == "bearing" else RemedyReason.ANOTHER), name
