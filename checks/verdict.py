"""The verdict on a piece as data: one word, why, what to do untied and tied, what to mend."""

from collections.abc import Iterable
from enum import StrEnum
from math import isfinite, sqrt

from shapely import Point, Polygon

from .. import references, units
from ..statics.one_thread import in_one_thread
from ..statics.tables.anchor_table import BallastRow
from ..units import POUND, POUND_FORCE
from ..units.frozen import ByIdentity, ByValue, replace
from .anchoring.anchor_choice import search_anchors
from .judged.judging import Check, Kind
from .not_looked_at import NotLookedAt, not_looked_at, unfastened

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .anchoring.anchor_choice import AnchorChoice, Loaded
    from .anchoring.guy_choice import GuyChoice
    from .examination import Examination

HEAVY = 150.0 * POUND
"""Above this weight (kg) nobody is told to lay a piece down: judgement."""

HOLDING = (Kind.OVERTURNING, Kind.SLIDING, Kind.ANCHOR, Kind.ANCHOR_HEAD, Kind.GUY)
"""Checks that fail where a piece is not held enough."""

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

IDLE = POUND_FORCE
"""Guys that are asked for no more than this in N carry nothing: judgement."""

_TOLD = 2
"""So many ways to hold a piece are told: where there are as many, a wider foot is not tried."""

_TEST = 2.0
"""A stake is tested on the spot with so many times what it is asked for: the factor on a measured
pull."""


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


class Way(StrEnum):
    """A way to hold a piece."""

    OWN = "as its file says"
    ANCHORS = "anchors"
    GUYS = "guys"
    WEIGHT = "weight"
    WIDTH = "a wider foot"


WAY_NAMES = {
    Way.ANCHORS: "anchors",
    Way.GUYS: "guys",
    Way.WEIGHT: "ballast",
    Way.WIDTH: "base width",
}
"""What the sizing calls a way to hold a piece."""


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


class Tied(ByIdentity, frozen=True):
    """What holds a piece, or would: ``ways`` that do, the one to take first; empty where none does.

    It is ``needed`` where the piece moves untied, or as it is held.
    ``anchors`` and ``guys`` are those chosen for it, each anchor to be tested with ``test`` N
    straight up; ``weight`` in kg low in its foot, or a foot ``width`` m across, alone;
    ``width_slides`` where on no foot of a yard piece it would not slide. ``refused`` are ways that
    would hold it down, each with the check that fails of the piece once it is held so. It
    ``sinks_anchored`` where anchors would hold it, but draw its foot into the ground.
    """

    needed: bool
    ways: tuple[Way, ...]
    anchors: "AnchorChoice | None"
    guys: "GuyChoice | None"
    test: float
    weight: float | None
    width: float | None
    width_slides: bool = False
    refused: "tuple[tuple[Way, Check], ...]" = ()
    sinks_anchored: bool = False


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
    tied = _tied(found)
    word, reason, failing = _word(found, tied)
    return Verdict(
        word=word,
        reason=reason,
        failing=_worst_first(failing),
        untied=_untied(found),
        tied=tied,
        mend=_of_kinds(found, *IN_PART),
        besides=_besides(found, failing),
        unfastened=unfastened(found),
        carrying=_carrying(found),
        not_looked_at=not_looked_at(found),
    )


def _word(found: "Examination", tied: Tied) -> tuple[Word, Reason, tuple[Check, ...]]:
    """Return the first word of the list that holds, why, and the checks that say so."""
    in_part, posts = _of_kinds(found, *IN_PART), _of_kinds(found, *OF_POSTS)
    holding = _of_kinds(found, *HOLDING)
    if (falls := _falls(found)) is not None:
        return Word.FALLS_OVER, falls, holding
    if in_part:
        return Word.COMES_APART, Reason.PART_FAILS, in_part
    if posts:
        return Word.SET_IT_DEEPER, Reason.POSTS_GIVE, posts
    if holding:
        reason = Reason.HELD_TOO_LITTLE if found.held else Reason.MOVES
        return _held_by(tied), reason, holding
    if pressed := _of_kinds(found, Kind.BEARING):
        return Word.SINKS_IN, Reason.PRESSES, pressed
    if pushed := _of_kinds(found, *BY_PEOPLE):
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
    tips = bool(_of_kinds(found, *HOLDING))
    kinds = (*OF_POSTS, *BY_PEOPLE, *(() if tips else (Kind.BEARING,)))
    return tuple(check for check in _of_kinds(found, *kinds) if check not in told)


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
    failing = [c for c in _of_kinds(found, *IN_PART) if not c.load]
    # what fails under its weight alone fails in no wind at all
    gusts = [
        0.0 if c.utilization is None or c.wind == 0.0 else at_piece / sqrt(c.utilization)
        for c in failing
    ]
    own = [] if limits.act is None else [limits.act]
    return min([*own, *(gust / limits.ratio for gust in gusts)], default=None)


def _tied(found: "Examination") -> Tied:
    """Return what holds it, or would; nothing is looked for where it is held or stands."""
    if found.posts is not None or not _of_kinds(found, *HOLDING):
        own = (Way.OWN,) if found.held else ()
        return Tied(found.needs_anchors, own, None, None, _own_test(found), None, None)
    from .sizing.laid_weight import least_weight, slides_on  # noqa: PLC0415 - where it moves

    refused: list[tuple[Way, Check]] = []
    anchors, guys = _chosen(found, refused)
    weight = least_weight(found, most("weight laid low"))
    if weight is not None and _refused(found, Way.WEIGHT, weight, refused):
        weight = None
    told = sum(way is not None for way in (anchors, guys, weight))
    width = _width(found) if told < _TOLD else None
    slides = told >= _TOLD and slides_on(found, most("foot width"))
    offered = (
        (Way.ANCHORS, anchors),
        (Way.GUYS, guys),
        (Way.WEIGHT, weight),
        (Way.WIDTH, width),
    )
    pull = found.remedies.stakes.pull
    testable = anchors is not None and found.standing.ground.stakes_possible
    return Tied(
        needed=True,
        ways=tuple(way for way, what in offered if what is not None),
        anchors=anchors,
        guys=guys,
        test=_TEST * pull if testable else 0.0,
        weight=weight,
        width=width,
        width_slides=slides,
        refused=tuple(refused),
        sinks_anchored=anchors is None and _sinks(found),
    )


def _refused(
    found: "Examination",
    way: Way,
    what: "AnchorChoice | GuyChoice | float",
    refused: list[tuple[Way, Check]],
) -> bool:
    """Return whether a part of the piece fails once it is held so, and note which."""
    from .sizing.as_built import fails_as_held  # noqa: PLC0415 - where it moves

    if (wrong := fails_as_held(found, what)) is None:
        return False
    refused.append((way, wrong))
    return True


def _width(found: "Examination") -> float | None:
    """Return the width in m of a foot that alone would do, as it was built and checked."""
    if not width_helps(found):
        return None
    if found.design.several(BallastRow):
        return found.remedies.base_width
    from .sizing.ways import remedy_of  # noqa: PLC0415 - few are told to widen their foot

    return remedy_of(found.design, "base width")[1].value


def _own_test(found: "Examination") -> float:
    """Return the pull in N with which each anchor of the file is tested; 0 where none can be."""
    heads = (check for check in found.checks if check.kind is Kind.ANCHOR_HEAD)
    asked = (check.demand for check in heads if isfinite(check.demand))
    testable = found.posts is None and found.standing.ground.stakes_possible
    return _TEST * max(asked, default=0.0) if testable else 0.0


def _chosen(
    found: "Examination", refused: list[tuple[Way, Check]]
) -> "tuple[AnchorChoice | None, GuyChoice | None]":
    """Return the anchors that would hold it, else guys, in place of those that its file names.

    What would break a part of it is none, and noted in ``refused``; nor are guys that carry
    nothing.
    """
    bare = _bare(found)
    anchors = found.anchors if bare is None else search_anchors(bare).choice
    if anchors is not None and not _refused(found, Way.ANCHORS, anchors, refused):
        return anchors, None
    from .anchoring.guy_choice import choose_guys  # noqa: PLC0415 - most are anchored at the foot

    guys = found.guys if bare is None else choose_guys(bare)
    if guys is None or guys.pull <= IDLE or _refused(found, Way.GUYS, guys, refused):
        return None, None
    return None, guys


def _sinks(found: "Examination") -> bool:
    """Return whether anchors would hold it, but draw its foot into the ground."""
    bare = _bare(found)
    fails = (found.anchor_search if bare is None else search_anchors(bare)).fails
    return fails is not None and fails.kind is Kind.BEARING


def _bare(found: "Examination") -> "Loaded | None":
    """Return what has to be held without what holds it by its file; None where that is nothing."""
    if not found.held:
        return None
    from .sizing.as_built import without_its_own  # noqa: PLC0415 - few are held too little

    return replace(found.loaded, design=without_its_own(found.design))


def width_helps(found: "Examination") -> bool:
    """Return whether a wider foot alone would do."""
    width = found.remedies.base_width
    return width is not None and width <= most("foot width") and not found.remedies.base_slides


def most(remedy: str) -> float:
    """Return the most of a remedy that is still one, in SI: N, kg or m."""
    row = references.table("remedies").one("remedy", remedy)
    unit = "lbf" if remedy.endswith("pull") else row["unit"]
    return float(row["most"]) * units.factor(unit)


def _of_kinds(found: "Examination", *kinds: Kind) -> tuple[Check, ...]:
    """Return the failing checks of some kinds, the worst first."""
    return _worst_first(c for c in found.checks if c.kind in kinds and not c.passes)


def _alike(check: Check) -> tuple[object, ...]:
    """Return what joints and parts have alike that fail as one another do; else their own names."""
    if check.kind not in (Kind.JOINT, Kind.MEMBER) or check.utilization is None:
        return (check.name,)
    return check.kind, f"{check.demand:.3g}", f"{check.capacity:.3g}", check.load


def _worst_first(checks: Iterable[Check]) -> tuple[Check, ...]:
    """Return checks by how much is asked of what they hold; a frame that racks is the worst."""
    return tuple(sorted(checks, key=lambda check: (check.kind is not Kind.RACKING, -check.rank)))
