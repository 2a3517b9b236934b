"""What a text for a listing says of a piece, as data: a finding for each of its sentences."""

from collections.abc import Mapping
from enum import StrEnum

from ...design.file.record_table import Record
from ...design.model import Design
from ...loads.given import GivenLoad
from ...loads.gust.standard import AT_PIECE
from ...loads.wind.site import OPEN_COUNTRY, Site
from ...units import MPH
from ...units.frozen import ByIdentity
from ..examination import Examination
from ..holder import HeldBy, dug_or_driven, held_in_brief, held_slots
from ..judged.finding import Amount, Ask, Day, Finding, FindingSlot, Several, Term, ToAct
from ..judged.judging import Kind
from ..limits import Limits
from ..not_looked_at import NotLookedAt, Topic
from ..tied import HOLDING, Tied, Way
from ..verdict import Word
from .surroundings import act_by_exposure

_CALM = 31.0 * MPH
"""Up to this gust to act at (m/s) a piece is said to be for calm days: judgement."""


class ToDo(StrEnum):
    """What to do when it is going to blow."""

    CLEAR = "keep clear"
    ALWAYS = "never untied"
    STAKE = "stake it"
    TIE = "tie it"
    LAY = "tie it or lay it down"
    LAY_WEIGHED = "tie it or lay it down, though weight was added"


class Listed(StrEnum):
    """Which sentence of a listing it is."""

    ACT = "the gust to act at"
    ACT_WITHOUT = "the gust to act at, and that without added weight"
    DO = "what to do"
    DO_CALM = "what to do with what is for calm days"
    CALCULATED = "calculated"
    TESTED = "calculated and tested"
    POSTS_STAND = "its posts hold"
    POSTS_GIVE = "its posts do not hold"
    NOTHING_HOLDS = "nothing holds it"
    UNTIED = "it needs nothing"
    HELD = "what holds it"
    PUSH = "the push that tips it"
    PUSH_POSTS = "the push its posts stand"
    UNCHECKED = "what was not checked"
    JOINTS_CHECKED = "that its joints were, and what was not"
    DECORATION = "not for use"
    FOR_LOADS = "for its named loads alone"
    DIG = "whom to ask"
    DRILL = "pipes in the slab"
    NO_DIG = "nothing goes into the ground"


class Worked(StrEnum):
    """The wind that it was worked out for."""

    FORECAST = "a forecast gust"
    AT_PIECE = "a gust at the piece"
    CODE = "the wind of a code's map"
    CODE_MEAN = "the mean wind of a code's map"


class HoldsIt(StrEnum):
    """What holds it, or would."""

    POST = "its post"
    POSTS = "its posts"
    GUYS = "guys"
    WEIGHT = "weight"
    WIDTH = "a wider foot"


class Listing(ByIdentity, frozen=True):
    """All that texts for a listing say of a ``design``; sizes in m and kg.

    ``acts`` is the forecast gust to act at by exposure, m/s. ``short_of`` are the kinds of check
    that fail besides the holding, ``planted`` whether it stands on posts. ``unchecked`` is what was
    not checked, what is of the piece itself first. ``falls`` is how the whole goes with no wind,
    where it does. ``brief`` tells in few words what holds it.
    """

    design: Design
    limits: Limits
    height: float
    mass: float
    site: Site
    acts: Mapping[str, float | None]
    act: Finding
    todo: Finding
    advice: Finding
    basis: Finding
    hold: Finding
    short_of: tuple[Kind, ...]
    planted: bool
    push: Finding
    unchecked: Finding
    use: Finding
    digging: Finding
    brief: Finding
    not_looked_at: tuple[NotLookedAt, ...]


def listing_of(found: Examination) -> Listing:
    """Return what texts for a listing say of a piece."""
    site, planted = found.site, found.posts is not None
    act, todo = _act(found), Finding(_to_do(found))
    weighs_down = found.limits.act
    calm = weighs_down is not None and 0.0 < weighs_down <= _CALM
    for_calm = calm and found.needs_anchors and not planted
    loaded = bool(found.design.several(GivenLoad))
    push = {"force": Amount(found.limits.push, "about_force")}
    return Listing(
        design=found.design,
        limits=found.limits,
        height=found.structure.height,
        mass=found.structure.mass("typical"),
        site=site,
        acts=act_by_exposure(found),
        act=act,
        todo=todo,
        advice=Finding(Listed.DO_CALM if for_calm else Listed.DO, {"todo": todo, "act": act}),
        basis=_basis(found.design),
        hold=_hold(found),
        short_of=_short_of(found),
        planted=planted,
        push=Finding(Listed.PUSH_POSTS if planted else Listed.PUSH, push),
        unchecked=_unchecked(found),
        use=Finding(Listed.FOR_LOADS if loaded else Listed.DECORATION),
        digging=_digging(found),
        brief=held_in_brief(found),
        not_looked_at=found.verdict.not_looked_at,
    )


def _act(found: Examination) -> Finding:
    """Return the gust to act at with its surroundings; where added weight earns it, both gusts."""
    added, bare, own = found.added, found.without_added, found.limits.act
    slots: dict[str, FindingSlot] = {
        "act": Amount(own or 0.0, "act"),
        "around": surroundings_of(found.site),
    }
    if added is None or bare is None or bare.limits.act == own:
        return Finding(Listed.ACT, slots)
    slots |= {"without": ToAct(bare.limits.act), "weight": Amount(added.mass, "mass")}
    return Finding(Listed.ACT_WITHOUT, slots)


def surroundings_of(site: Site) -> Term:
    """Return what lies around a piece, as a term of the list of surroundings."""
    return Term("surroundings", site.terrain or site.exposure or OPEN_COUNTRY)


def _to_do(found: Examination) -> ToDo:
    if found.posts is not None:
        return ToDo.CLEAR
    if not found.limits.act:
        return ToDo.ALWAYS
    if found.verdict.untied.stays_put:
        return ToDo.STAKE if found.standing.ground.stakes_possible else ToDo.TIE
    return ToDo.LAY if found.added is None else ToDo.LAY_WEIGHED


def tests_of(design: Design) -> tuple[Record, ...]:
    """Return the dated tests of a finished piece that stand in its design."""
    return tuple(record for record in design.several(Record) if record.kind != "weight")


def _basis(design: Design) -> Finding:
    """Return what the numbers rest on: calculation alone, or with the last dated test."""
    dated = tests_of(design)
    if not dated:
        return Finding(Listed.CALCULATED)
    last = max(dated, key=lambda record: record.date)
    return Finding(Listed.TESTED, {"test": last.kind, "day": Day(last.date)})


def _hold(found: Examination) -> Finding:
    """Return how to hold it down, with the wind that this was worked out for."""
    tied, wind = found.verdict.tied, _worked_out_for(found.site)
    if found.posts is not None:
        gives = found.verdict.word is Word.SET_IT_DEEPER
        what = Listed.POSTS_GIVE if gives else Listed.POSTS_STAND
        number = len(found.posts.part)
        deep = dict.fromkeys(round(float(depth), 6) for depth in sorted(found.posts.depth))
        posts: dict[str, FindingSlot] = {
            "posts": Several(number, ("post",)),
            "deep": tuple(Amount(depth, "length") for depth in deep),
        }
        its = Finding(HoldsIt.POST if number == 1 else HoldsIt.POSTS, posts)
        return Finding(what, {"its": its, **posts, "wind": wind})
    if tied.ways:
        return Finding(Listed.HELD, {"way": _way(found, tied), "wind": wind})
    return Finding(Listed.NOTHING_HOLDS if tied.needed else Listed.UNTIED, {"wind": wind})


def _worked_out_for(site: Site) -> Finding:
    """Return the wind that it was worked out for, with surroundings and ground."""
    slots: dict[str, FindingSlot] = {
        "gust": Amount(site.wind, "gust", "near"),
        "method": site.method,
        "around": surroundings_of(site),
        "ground": site.ground,
    }
    if site.method == AT_PIECE:
        return Finding(Worked.AT_PIECE, slots)
    if site.method == "forecast":
        return Finding(Worked.FORECAST, slots)
    return Finding(Worked.CODE if site.terrain is None else Worked.CODE_MEAN, slots)


def _way(found: Examination, tied: Tied) -> Finding:
    """Return what holds it, or would: its own, anchors, guys, weight or a wider foot."""
    if tied.ways[0] is Way.OWN:
        return Finding(HeldBy.OWN, held_slots(found, found.held))
    if tied.anchors is not None:
        where = Term("places", tied.anchors.places)
        return Finding(HeldBy.CHOSEN, {**held_slots(found, tied.anchors.held), "where": where})
    if tied.guys is not None:
        row = tied.guys.row
        return Finding(HoldsIt.GUYS, {"guys": Several(row.count, ("guy",)), "line": row.line})
    if tied.weight is not None:
        return Finding(HoldsIt.WEIGHT, {"weight": Amount(tied.weight, "mass_needed")})
    return Finding(HoldsIt.WIDTH, {"width": Amount(tied.width or 0.0, "width_needed")})


def _short_of(found: Examination) -> tuple[Kind, ...]:
    """Return the kinds of check that fail besides the holding.

    How hard the ground is pressed tells nothing while the piece tips.
    """
    failing = {check.kind for check in found.checks if not check.passes}
    beside = failing - {*HOLDING, Kind.EMBEDMENT}
    if failing & set(HOLDING):
        beside -= {Kind.BEARING}
    return tuple(sorted(beside))


def _unchecked(found: Examination) -> Finding:
    """Return of joints, strength and snow what was not checked; snow never is."""
    unlooked = found.verdict.not_looked_at
    open_ = {one.topic for one in unlooked if one.of}
    kinds = {check.kind for check in found.checks}
    names = [
        *((_SOME[Kind.JOINT, Kind.JOINT in kinds],) if Topic.FASTENING in open_ else ()),
        *((_SOME[Kind.MEMBER, Kind.MEMBER in kinds],) if Topic.STRENGTH in open_ else ()),
        "snow",
        "hung on",
    ]
    first, *others = (Term("unchecked", name) for name in names)
    joints = [check for check in found.checks if check.kind is Kind.JOINT]
    done = joints and all(check.passes for check in joints)
    told = done and not any(one.topic is Topic.FASTENING for one in unlooked)
    what = Listed.JOINTS_CHECKED if told else Listed.UNCHECKED
    return Finding(what, {"first": first, "others": tuple(others)})


_SOME = {
    (Kind.JOINT, False): "joints",
    (Kind.JOINT, True): "some joints",
    (Kind.MEMBER, False): "strength",
    (Kind.MEMBER, True): "strength of some",
}


def _digging(found: Examination) -> Finding:
    """Return whether whom to ask is told, before digging, driving or drilling."""
    stakes = found.standing.ground.stakes_possible
    if found.posts is not None or stakes:
        slots = {"ask": Ask(found.site.country), "digging": dug_or_driven(found)}
        return Finding(Listed.DIG, slots)
    return Finding(Listed.DRILL if found.needs_anchors else Listed.NO_DIG)
