"""The verdict on a piece as data: one word, why, what to do untied and tied, what to mend."""

from enum import StrEnum
from math import sqrt

from shapely import Point, Polygon

from ..statics.one_thread import in_one_thread
from ..units import POUND
from ..units.frozen import ByIdentity, ByValue
from .judged.judging import Check, Kind, failing_of, worst_first
from .not_looked_at import NotLookedAt, not_looked_at, unfastened
from .tied import HOLDING, Tied, Way, tied_of

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .examination import Examination

HEAVY = 150.0 * POUND
"""Above this weight (kg) nobody is told to lay a piece down: judgement."""

IN_PART = (
    Kind.JOINT,
    Kind.SEAM,
    Kind.SPACING,
    Kind.MEMBER,
    Kind.RACKING,
    Kind.LOOSE,
    Kind.LOOSE_SLIDING,
    Kind.LOAD,
)
"""Checks that fail where a piece comes apart, whatever holds it down."""

OF_POSTS = (Kind.EMBEDMENT, Kind.PULL_OUT)
BY_PEOPLE = (Kind.PUSH, Kind.CLIMB)


class Word(StrEnum):
    """What a piece does, the worst first; the only words for it on any screen, page or label."""

    FALLS_OVER = "falls over"
    COMES_APART = "comes apart"
    NOTHING_HOLDS = "nothing here holds it"
    TIE_IT_DOWN = "tie it down"
    WEIGH_IT_DOWN = "weigh it down"
    SET_IT_DEEPER = "set it deeper"
    SINKS_IN = "sinks in"
    KEEP_PEOPLE_OFF = "keep people off"
    HELD_DOWN = "held down"
    STANDS = "stands by itself"
    STANDS_BY_POSTS = "stands by its posts"


GOOD = frozenset({Word.HELD_DOWN, Word.STANDS, Word.STANDS_BY_POSTS})
"""Words of a piece of which nothing that was looked at fails."""

HOLDABLE = frozenset({Word.TIE_IT_DOWN, Word.WEIGH_IT_DOWN})
"""Words of a piece that does once it is held as is told."""


class Reason(StrEnum):
    """Why a piece gets its word."""

    BALANCE = "balance point beyond its foot"
    GROUND_GIVES = "ground gives way beneath its foot"
    DOWNHILL = "slides by itself"
    PART_FAILS = "a part of it fails"
    POSTS_GIVE = "its posts give way"
    HELD_TOO_LITTLE = "what holds it does not do"
    MOVES = "tips or slides untied"
    PRESSES = "presses harder than the ground bears"
    PEOPLE = "people tip it"
    NOTHING_FAILS = "nothing that was looked at fails"


class Untied(ByValue, frozen=True):
    """What a piece does untied: forecast gusts in m/s, None above 150; the push in N that tips it.

    ``act`` is the gust to act at, ``until`` that for as long as what fails is not mended;
    ``push_height`` in m. One that ``stays_put`` is not laid down: it is too heavy, or its posts
    stand in the ground.
    """

    act: float | None
    until: float | None
    tips: float | None
    slides: float | None
    push: float
    push_height: float
    stays_put: bool


class Verdict(ByIdentity, frozen=True):
    """One word for a piece, ``reason`` and the ``failing`` checks that gave it, the worst first.

    ``mend`` are all failing checks that no holding down mends, the worst first, ``besides`` those
    of ground, posts and people that the word does not tell. ``unfastened`` are
    the parts of which no joint says how they are fastened: what is said holds if they are;
    ``carrying`` those of them that carry the rest.
    """

    word: Word
    reason: Reason
    failing: tuple[Check, ...]
    untied: Untied
    tied: Tied
    mend: tuple[Check, ...]
    besides: tuple[Check, ...]
    unfastened: tuple[str, ...]
    carrying: tuple[str, ...]
    not_looked_at: tuple[NotLookedAt, ...]

    @property
    def to_mend(self) -> tuple[Check, ...]:
        """Return one check for each thing to mend: a loose piece that tips and slides is one."""
        once: dict[tuple[Kind, str], Check] = {}
        for check in self.mend:
            kind = Kind.LOOSE if check.kind is Kind.LOOSE_SLIDING else check.kind
            once.setdefault((kind, check.subject), check)
        return tuple(once.values())

    @property
    def mended_alike(self) -> tuple[tuple[Check, ...], ...]:
        """Return what is to mend, in order, joints and parts that fail alike together."""
        found: dict[tuple[object, ...], list[Check]] = {}
        for check in self.to_mend:
            found.setdefault(_alike(check), []).append(check)
        return tuple(map(tuple, found.values()))

    @property
    def is_good(self) -> bool:
        """Return whether nothing that was looked at fails."""
        return self.word in GOOD

    @property
    def may_be_sold(self) -> bool:
        """Return whether it does as it is, or once it is held as is told."""
        return self.word in GOOD | HOLDABLE

    def may_be_handed_out(self, *, laid_down: bool) -> bool:
        """Return whether a buyer may have it: it does, or is meant to be ``laid_down``, whole.

        What is meant to be laid down may, as long as there is a gust below which it need not lie,
        and nothing of it comes apart: the gust on the page is the one that tips or slides it.
        """
        whole = self.word not in (Word.FALLS_OVER, Word.COMES_APART)
        return self.may_be_sold or (laid_down and whole and bool(self.untied.act))


@in_one_thread
def verdict_of(found: "Examination") -> Verdict:
    """Return the verdict on a design; its word is that of the worst thing."""
    tied = tied_of(found)
    word, reason, failing = _word(found, tied)
    return Verdict(
        word=word,
        reason=reason,
        failing=worst_first(failing),
        untied=_untied(found),
        tied=tied,
        mend=failing_of(found.checks, *IN_PART),
        besides=_besides(found, failing),
        unfastened=unfastened(found),
        carrying=_carrying(found),
        not_looked_at=not_looked_at(found),
    )


def _word(found: "Examination", tied: Tied) -> tuple[Word, Reason, tuple[Check, ...]]:
    """Return the first word of the list that holds, why, and the checks that say so."""
    in_part, posts = failing_of(found.checks, *IN_PART), failing_of(found.checks, *OF_POSTS)
    holding = failing_of(found.checks, *HOLDING)
    if (falls := _falls(found)) is not None:
        return Word.FALLS_OVER, falls, holding
    if in_part:
        return Word.COMES_APART, Reason.PART_FAILS, in_part
    if posts:
        return Word.SET_IT_DEEPER, Reason.POSTS_GIVE, posts
    if holding:
        reason = Reason.HELD_TOO_LITTLE if found.held else Reason.MOVES
        return _held_by(tied), reason, holding
    if pressed := failing_of(found.checks, Kind.BEARING):
        return Word.SINKS_IN, Reason.PRESSES, pressed
    if pushed := failing_of(found.checks, *BY_PEOPLE):
        return Word.KEEP_PEOPLE_OFF, Reason.PEOPLE, pushed
    stands = Word.STANDS_BY_POSTS if found.posts is not None else Word.STANDS
    return Word.HELD_DOWN if found.held else stands, Reason.NOTHING_FAILS, ()


def _carrying(found: "Examination") -> tuple[str, ...]:
    """Return the parts that carry the rest and of which no joint says how they are fastened.

    With what stands on or hangs from it, one is at least half of what does not stand on the ground.
    """
    parts, structure = found.design.parts, found.structure
    mass = dict(zip((p.name for p in parts), structure.part_mass[1].tolist(), strict=True))
    touching = {parts[patch.part].name for patch in structure.patches}
    rest = sum(mass[part.name] for part in parts if part.name not in touching)
    beneath = {part.name: part.place.reference for part in parts}

    def borne(name: str) -> float:
        return mass[name] + sum(borne(on) for on, below in beneath.items() if below == name)

    return tuple(name for name in unfastened(found) if borne(name) >= 0.5 * rest > 0.0)


def _besides(found: "Examination", told: tuple[Check, ...]) -> tuple[Check, ...]:
    """Return what fails of ground, posts and people that is not told yet.

    How hard the ground is pressed tells nothing while the piece tips.
    """
    tips = bool(failing_of(found.checks, *HOLDING))
    kinds = (*OF_POSTS, *BY_PEOPLE, *(() if tips else (Kind.BEARING,)))
    return tuple(check for check in failing_of(found.checks, *kinds) if check not in told)


def _falls(found: "Examination") -> Reason | None:
    """Return why the whole moves with no wind at all; None where it does not, or is held."""
    if found.held or found.posts is not None:
        return None
    limits = found.limits
    if limits.tipping is not None and limits.tipping <= 0.0 and limits.loose_tips is None:
        x, y = found.structure.centre_of_mass("typical")[:2]
        within = Polygon(found.structure.footprint).contains(Point(x, y))
        return Reason.GROUND_GIVES if within else Reason.BALANCE
    if limits.sliding is not None and limits.sliding <= 0.0 and limits.loose_slides is None:
        return Reason.DOWNHILL
    return None


def _held_by(tied: Tied) -> Word:
    """Return what to do with a piece that moves, by what would hold it."""
    if Way.ANCHORS in tied.ways or Way.GUYS in tied.ways:
        return Word.TIE_IT_DOWN
    return Word.WEIGH_IT_DOWN if tied.ways else Word.NOTHING_HOLDS


def _untied(found: "Examination") -> Untied:
    limits = found.limits
    heavy = found.structure.mass("typical") > HEAVY
    return Untied(
        act=limits.act,
        until=until(found),
        tips=limits.forecast_tipping,
        slides=limits.forecast_sliding,
        push=limits.push,
        push_height=limits.push_height,
        stays_put=heavy or found.posts is not None,
    )


def until(found: "Examination") -> float | None:
    """Return the forecast gust in m/s to act at until what comes apart is mended.

    What fails in the wind asked at so many times what it holds is taken to hold a wind less by the
    square root of that. Weight that helps does so the more in less wind: it holds no less.
    """
    limits = found.limits
    at_piece = found.site.wind if found.site.method == "gust" else found.site.wind * limits.ratio
    failing = [c for c in failing_of(found.checks, *IN_PART) if not c.load]
    # what fails under its weight alone fails in no wind at all
    gusts = [
        0.0 if c.utilization is None or c.wind == 0.0 else at_piece / sqrt(c.utilization)
        for c in failing
    ]
    own = [] if limits.act is None else [limits.act]
    return min([*own, *(gust / limits.ratio for gust in gusts)], default=None)


def _alike(check: Check) -> tuple[object, ...]:
    """Return what joints and parts have alike that fail as one another do; else their own names."""
    if check.kind not in (Kind.JOINT, Kind.MEMBER) or check.utilization is None:
        return (check.name,)
    return check.kind, f"{check.demand:.3g}", f"{check.capacity:.3g}", check.load
