"""What to take care of: the general cautions always, the others where they apply."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from .. import references
from ..checks.examination import Examination
from ..checks.joints.fastener_room import needs_lead_holes
from ..checks.joints.joint_check import JointFound
from ..design.overlaps import overlaps
from ..design.shapes.flat import Panel
from ..design.shapes.rotor import Rotor
from ..design.structure import build_structure
from ..loads.methods import standard_of
from ..units import INCH, MPH
from .amounts import Amounts
from .dig_line import dig_line, digging
from .joint_words import names_of, to_be_drilled
from .remark import capital, joined

PEOPLE_HEIGHT = 27 * INCH
STRONG_WIND = 130.0 * MPH
ADVISORY_GUST = 46.0 * MPH

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


def cautions(examination: Examination) -> tuple[str, ...]:
    """Return every caution that applies to a design, in the order of their table."""
    return tuple(
        _filled(row["text"], examination)
        for row in references.table("cautions").rows
        if row["key"] in GENERAL or _APPLIES[row["key"]](examination)
    )


def _filled(text: str, examination: Examination) -> str:
    """Fill in the names and sizes of this design where a caution has a place for them."""
    for place, words in _FILLS.items():
        if place in text:
            text = text.replace(place, words(examination))
    return text


def _carries(examination: Examination) -> bool:
    """Return whether something is meant to hang on it or to weigh on it: a seat, a named load."""
    hangs = any(part.hangs_at is not None for part in examination.design.parts)
    return hangs or bool(examination.loads)


def _height(examination: Examination) -> str:
    amounts = Amounts(examination.design.units == "metric")
    return amounts.length(examination.structure.height, "up")


def _shared(examination: Examination) -> str:
    return joined(f"{pair.first} and {pair.second}" for pair in overlaps(examination.structure))


def _open_lattices(examination: Examination) -> list[str]:
    return [
        part.name
        for part in examination.design.parts
        if isinstance(part.shape, Panel) and part.shape.solidity < 1.0 and not part.shape.climbers
    ]


def _disagrees(examination: Examination) -> str:
    """Return what scale and boards say where they differ by more than a third, else nothing."""
    design = examination.design
    if design.weighed is None:
        return ""
    boards = build_structure(replace(design, weighed=None)).mass("typical")
    if abs(design.weighed - boards) <= boards / 3.0:
        return ""
    amounts = Amounts(design.units == "metric")
    return f"{amounts.mass(design.weighed)}, the boards come to {amounts.mass(boards)}"


def _is_code(examination: Examination) -> bool:
    return standard_of(examination.site.method).is_code


def _people_unanswered(examination: Examination) -> bool:
    return examination.site.people is None and examination.structure.height >= PEOPLE_HEIGHT


def _has_spinning(examination: Examination) -> bool:
    return any(isinstance(p.shape, Rotor) and p.shape.spins for p in examination.design.parts)


def _of_joints(applies: Callable[[JointFound], bool]) -> Callable[[Examination], str]:
    """Return what names the joints to which something applies."""
    return lambda e: names_of(joint for joint in e.joints if applies(joint))


def _because(reason: str) -> Callable[[Examination], str]:
    """Return what names joints and seams of which something counts nothing for a reason."""

    def named(examination: Examination) -> str:
        names = [
            *(j.row.name for j in examination.joints if reason in j.fasteners.holds.reasons),
            *(
                f"seams of {s.row.part}"
                for s in examination.fastened_seams
                if reason in s.holds.reasons
            ),
        ]
        return joined(f"'{name}'" for name in names)

    return named


_EDGE, _END, _SHORT = _because("panel edge"), _because("end grain"), _because("too short")
_OUT = _of_joints(lambda joint: joint.fasteners.holds.comes_out)
_GLUED = _of_joints(lambda joint: joint.row.glue)


def _to_drill(examination: Examination) -> str:
    """Return what names joints and seams whose screws have to be given lead holes."""
    names = [
        *(j.row.name for j in examination.joints if to_be_drilled(j)),
        *(
            f"seams of {s.row.part}"
            for s in examination.fastened_seams
            if not s.row.predrilled and needs_lead_holes(s.row.fastener, s.driven.main.gravity)
        ),
    ]
    return joined(f"'{name}'" for name in names)


_APPLIES: Mapping[str, Callable[[Examination], bool]] = {
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
    "below": lambda e: not _is_code(e) and e.site.wind < ADVISORY_GUST * (1.0 - 1.0e-9),
    "spinning": _has_spinning,
    "vines": lambda e: bool(_open_lattices(e)),
    "overlap": lambda e: bool(overlaps(e.structure)),
    "wet": lambda e: e.site.ground == "firm lawn",
    "wet clay": lambda e: e.site.ground == "firm clay lawn",
    "soft": lambda e: e.standing.ground.wet,
    "pavers": lambda e: e.site.ground == "paving",
    "weighed": lambda e: bool(_disagrees(e)),
    "panel edge": lambda e: bool(_EDGE(e)),
    "end grain": lambda e: bool(_END(e)),
    "comes out": lambda e: bool(_OUT(e)),
    "too short": lambda e: bool(_SHORT(e)),
    "lead holes": lambda e: bool(_to_drill(e)),
    "glue": lambda e: bool(_GLUED(e)),
}
_FILLS: Mapping[str, Callable[[Examination], str]] = {
    "{height}": _height,
    "{call}": lambda e: capital(dig_line(e.site.country)),
    "{digging}": digging,
    "{laid in time}": lambda e: (
        "keep away from it" if e.verdict.untied.stays_put else "lay it down or take it in, in time"
    ),
    "{more}": lambda e: "more " if _carries(e) else "",
    "{parts}": lambda e: joined(_open_lattices(e)),
    "{pairs}": _shared,
    "{weighed}": _disagrees,
    "{edge}": _EDGE,
    "{end}": _END,
    "{out}": _OUT,
    "{short}": _SHORT,
    "{drill}": _to_drill,
    "{glued}": _GLUED,
}
