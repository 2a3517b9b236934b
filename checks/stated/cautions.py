"""What to take care of, as data: which rows of the cautions apply to a piece, and to what of it."""

from collections.abc import Callable, Iterable, Mapping
from enum import StrEnum

from ... import references
from ...design.model import Part
from ...design.overlaps import overlaps
from ...design.structure import build_structure
from ...loads.methods import standard_of
from ...materials.fastener import Fastener
from ...units import INCH, MPH
from ...units.frozen import ByValue, replace
from ..examination import Examination
from ..holder import dug_or_driven
from ..judged.finding import Amount, Ask, Finding, FindingSlot
from ..timber.books import titled
from ..timber.terms.capacity import Capacity

PEOPLE_HEIGHT = 27 * INCH
STRONG_WIND = 130.0 * MPH
ADVISORY_GUST = 46.0 * MPH * (1.0 - 1.0e-9)

GENERAL = frozenset(
    {
        "call first",
        "hands off",
        "warnings",
        "hung on it",
        "gusts",
        "inspect",
        "place",
        "officials",
        "professional",
        "glass",
    }
)
"""Rows that are told of every piece."""


class Cautioned(StrEnum):
    """What stands within cautions, by what was found of a piece."""

    CALL = "whom to ask"
    WEIGHED = "what scale and boards say"
    KEEP_AWAY = "keep away"
    LAY_DOWN = "lay it down in time"
    MORE = "more than what hangs on it"
    AT_ALL = "anything at all"


class Caution(ByValue, frozen=True):
    """A row of the table of cautions by its ``key``, its text and what fills that."""

    key: str
    text: str
    slots: Mapping[str, FindingSlot]


class _Fastening(ByValue, frozen=True):
    """A joint or a part's seams, by name: its fastener, what that holds, whether it is glued."""

    name: str
    fastener: Fastener
    holds: Capacity
    gravity: float | None
    predrilled: bool
    comes_out: bool = False
    glue: bool = False


def cautions_of(found: Examination) -> tuple[Caution, ...]:
    """Return every caution that applies to a design, in the order of their table."""
    said: list[Caution] = []
    of_all = _slots(found)
    for row in references.table("cautions").rows:
        key, text = row["key"], row["text"]
        if key == "weighed":
            own = _disagrees(found)
            said += [Caution(key, text, own)] if own else []
        elif key in OF:
            names = tuple(OF[key](found))
            if names:
                of = names if key in _PLAIN else tuple(f"'{name}'" for name in names)
                said.append(Caution(key, text, {"of": of}))
        elif key in GENERAL or WHOLE[key](found):
            said.append(Caution(key, text, of_all))
    return tuple(said)


_PLAIN = ("vines", "overlap")
"""Cautions whose names stand without marks: parts, and pairs of them."""


def _slots(found: Examination) -> Mapping[str, FindingSlot]:
    """Return what fills cautions about the whole piece."""
    carries = bool(found.loads) or any(part.hangs_at is not None for part in found.design.parts)
    stays = found.verdict.untied.stays_put
    return {
        "height": Amount(found.structure.height, "length", "up"),
        "call": Finding(Cautioned.CALL, {"ask": Ask(found.site.country)}),
        "digging": dug_or_driven(found),
        "in_time": Finding(Cautioned.KEEP_AWAY if stays else Cautioned.LAY_DOWN),
        "more": Finding(Cautioned.MORE if carries else Cautioned.AT_ALL),
    }


def _is_code(found: Examination) -> bool:
    return standard_of(found.site.method).is_code


def _people_unanswered(found: Examination) -> bool:
    return found.site.people is None and found.structure.height >= PEOPLE_HEIGHT


def _disagrees(found: Examination) -> Mapping[str, FindingSlot]:
    """Return what scale and boards say where they differ by more than a third; else nothing."""
    design = found.design
    if design.weighed is None:
        return {}
    boards = build_structure(replace(design, weighed=None)).mass("typical")
    if abs(design.weighed - boards) <= boards / 3.0:
        return {}
    both = {"scale": Amount(design.weighed, "mass"), "boards": Amount(boards, "mass")}
    return {"weighed": Finding(Cautioned.WEIGHED, both)}


def _fastenings(found: Examination) -> Iterable[_Fastening]:
    for joint in found.joints:
        row, set_ = joint.row, joint.fasteners
        yield _Fastening(
            row.name,
            row.fastener,
            set_.holds,
            set_.driven.main.gravity,
            row.predrilled,
            set_.holds.comes_out,
            row.glue,
        )
    for seam in found.fastened_seams:
        row, name = seam.row, f"seams of {seam.row.part}"
        gravity = seam.driven.main.gravity
        yield _Fastening(name, row.fastener, seam.holds, gravity, row.predrilled)


def _of_fastenings(applies: Callable[[_Fastening], bool]) -> Callable[[Examination], list[str]]:
    return lambda found: [one.name for one in _fastenings(found) if applies(one)]


def _because(reason: str) -> Callable[[Examination], list[str]]:
    """Return what names joints and seams of which something counts nothing for a reason."""
    return _of_fastenings(lambda one: reason in one.holds.reasons)


def _spins(part: Part) -> bool:
    wheel = part.shape.wheel
    return wheel is not None and wheel.spins


WHOLE: Mapping[str, Callable[[Examination], bool]] = {
    "bolts": lambda e: not e.standing.ground.stakes_possible,
    "hurricane": lambda e: e.site.hurricane is True,
    "public": lambda e: e.site.people == "public",
    "people": _people_unanswered,
    "trees": lambda e: e.site.exposure == "B",
    "wind source": lambda e: _is_code(e) and e.site.wind_source is None,
    "return period": lambda e: _is_code(e) and e.site.return_period is None,
    "just": _is_code,
    "minimum": lambda e: e.minimum_governs,
    "above": lambda e: e.site.wind > STRONG_WIND,
    "below": lambda e: not _is_code(e) and e.site.wind < ADVISORY_GUST,
    "spinning": lambda e: any(_spins(part) for part in e.design.parts),
    "wet": lambda e: e.site.ground == "firm lawn",
    "wet clay": lambda e: e.site.ground == "firm clay lawn",
    "soft": lambda e: e.standing.ground.wet,
    "pavers": lambda e: e.site.ground == "paving",
}
"""When a row that is about the whole piece applies."""

OF: Mapping[str, Callable[[Examination], Iterable[str]]] = {
    "vines": lambda e: (
        part.name
        for part in e.design.parts
        if part.shape.panel is not None and part.shape.is_lattice and not part.shape.climbers
    ),
    "overlap": lambda e: (f"{pair.first} and {pair.second}" for pair in overlaps(e.structure)),
    "panel edge": _because("panel edge"),
    "end grain": _because("end grain"),
    "too short": _because("too short"),
    "comes out": _of_fastenings(lambda one: one.comes_out),
    "lead holes": _of_fastenings(
        lambda one: (
            not one.predrilled
            and titled(one.holds.book).needs_lead_holes(one.fastener, one.gravity)
        )
    ),
    "glue": _of_fastenings(lambda one: one.glue),
}
"""Of what a row is that names some: it applies where there is any."""
