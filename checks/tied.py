"""What holds a piece, or would: the ways that do, the one to take first, and those refused."""

from enum import StrEnum
from math import isfinite

from .. import references, units
from ..statics.tables.anchor_table import BallastRow
from ..units import POUND_FORCE
from ..units.frozen import ByIdentity, replace
from .anchoring.anchor_choice import search_anchors
from .judged.judging import Check, Kind, failing_of

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .anchoring.anchor_choice import AnchorChoice, Loaded
    from .anchoring.guy_choice import GuyChoice
    from .examination import Examination

HOLDING = (Kind.OVERTURNING, Kind.SLIDING, Kind.ANCHOR, Kind.ANCHOR_HEAD, Kind.GUY)
"""Checks that fail where a piece is not held enough."""

IDLE = POUND_FORCE
"""Guys that are asked for no more than this in N carry nothing: judgement."""

_TOLD = 2
"""So many ways to hold a piece are told: where there are as many, a wider foot is not tried."""

_TEST = 2.0
"""A stake is tested on the spot with so many times what it is asked for: the factor on a measured
pull."""


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


def tied_of(found: "Examination") -> Tied:
    """Return what holds it, or would; nothing is looked for where it is held or stands."""
    if found.posts is not None or not failing_of(found.checks, *HOLDING):
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
