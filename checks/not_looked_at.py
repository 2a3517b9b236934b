"""What was not looked at of a piece, as data: a topic each, and the names that it is of."""

from collections.abc import Iterator
from enum import StrEnum

from .. import materials
from ..loads.methods import standard_of
from ..units.frozen import ByValue
from .acting.borne import Borne
from .holder import holder_of
from .how_often import how_often
from .judged.finding import Amount, Finding, FindingSlot, Term
from .seams.tubes import cornered_parts

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .examination import Examination


class Topic(StrEnum):
    """What may not have been looked at."""

    FASTENING = "how parts are fastened"
    STRENGTH = "strength"
    SEAMS = "seams"
    SEAMS_UNDER_LOADS = "seams under named loads"
    UNDER_LOADS = "strength under named loads"
    UNDER_PEOPLE = "plates and walls under people"
    TWIST = "twist of the post"
    SLAB = "bolts and slab"
    SOIL = "anchors in the soil"
    GUY_ENDS = "how guys are fastened to the piece"
    LAID_ON = "snow, ice and things hung on it"
    WHEEL = "hub, axle and bearing"
    PEOPLE = "people"
    HOW_OFTEN = "how often it blows so"
    IN_TIME = "shaking, rot, rust and frost"


class Unlooked(StrEnum):
    """What more is said of a topic, by what was found of the piece."""

    NO_JOINTS = "no joint at all"
    OTHER_JOINTS = "other joints"
    NO_STRENGTH = "no strength at all"
    OTHER_STRENGTH = "strength of others"
    WHY = "for a reason"
    PARTS_UNDER_LOADS = "parts under loads"
    HOOKS_UNDER_LOADS = "hooks under loads"
    PARTS_AND_HOOKS = "parts and hooks under loads"
    WHEEL_AND_BLADES = "hub, axle and bearing, and blades"
    NOT_THE_CODES = "whether it is the code's wind"


class NotLookedAt(ByValue, frozen=True):
    """One thing that was not looked at; ``of`` names the parts, loads or wheels that it is of.

    ``by_file`` are those of them of which the file can still say it; ``findings`` what is said of
    it in full.
    """

    topic: Topic
    of: tuple[str, ...] = ()
    by_file: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


def not_looked_at(found: "Examination") -> tuple[NotLookedAt, ...]:
    """Return all that was not looked at, what the file can still say first."""
    loads = tuple(one.load.name for one in found.loads)
    wheels = tuple(p.name for p in found.design.parts if p.shape.wheel is not None)
    open_people = found.site.people not in ("children", "public")
    named = (
        (Topic.STRENGTH, _unjudged_parts(found)),
        (Topic.FASTENING, unfastened(found)),
        (Topic.SEAMS, _open_seams(found)),
        (Topic.SEAMS_UNDER_LOADS, loads if found.fastened_seams else ()),
        (Topic.UNDER_LOADS, tuple(one.load.name for one in found.loads if _unjudged(found, one))),
        (Topic.UNDER_PEOPLE, () if open_people else _plates(found)),
        (Topic.WHEEL, wheels),
    )
    always = [Topic.LAID_ON, Topic.IN_TIME]
    if open_people:
        always.append(Topic.PEOPLE)
    if how_often(found) is None:
        always.append(Topic.HOW_OFTEN)
    if found.held.guys:
        always.append(Topic.GUY_ENDS)
    if (holder := _holder(found)) is not None:
        always.append(holder)
    topics = [*((topic, of) for topic, of in named if of), *((topic, ()) for topic in always)]
    order = list(Topic)
    topics.sort(key=lambda one: order.index(one[0]))
    return tuple(
        NotLookedAt(topic, of, _by_file(found, topic, of), tuple(_in_full(found, topic, of)))
        for topic, of in topics
    )


def _by_file(found: "Examination", topic: Topic, of: tuple[str, ...]) -> tuple[str, ...]:
    """Return those of the names of which the file can still say it: joints, seams, material."""
    match topic:
        case Topic.FASTENING | Topic.SEAMS:
            return of
        case Topic.STRENGTH:
            return tuple(one.name for one in found.members.not_judged if one.why == "no material")
        case _:
            return ()


def _in_full(found: "Examination", topic: Topic, of: tuple[str, ...]) -> Iterator[Finding]:
    """Yield what is said of a topic in full."""
    match topic:
        case Topic.FASTENING:
            every = tuple(part.name for part in found.design.parts if not part.loose)
            what = Unlooked.OTHER_JOINTS if found.joints else Unlooked.NO_JOINTS
            yield Finding(what, {"names": of if found.joints else every})
        case Topic.STRENGTH:
            yield _strength(found, of)
        case Topic.UNDER_LOADS:
            yield from _under_loads(found)
        case Topic.WHEEL:
            judged = {member.name for member in found.members.judged}
            what = topic if judged.issuperset(of) else Unlooked.WHEEL_AND_BLADES
            yield Finding(what, {"of": of})
        case Topic.HOW_OFTEN:
            code = standard_of(found.site.method).is_code
            wind = Amount(found.site.wind, "gust", "near")
            yield Finding(Unlooked.NOT_THE_CODES if code else topic, {"wind": wind})
        case Topic.SOIL:
            yield Finding(topic, {"anchor": Term("holder", holder_of(found))})
        case _:
            yield Finding(topic, {"of": _quoted(of) if topic is Topic.SEAMS_UNDER_LOADS else of})


def _quoted(names: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(f"'{name}'" for name in names)


def _strength(found: "Examination", of: tuple[str, ...]) -> Finding:
    """Return the parts whose strength was not checked, with the reason where there is one."""
    reasons = tuple(
        Finding(Unlooked.WHY, {"name": one.name, "why": Term("why", one.why)})
        for one in found.members.not_judged
    )
    if found.members.judged:
        return Finding(Unlooked.OTHER_STRENGTH, {"names": of, "reasons": reasons})
    stuffs = [part.material for part in found.design.parts if part.material is not None]
    kinds = dict.fromkeys(materials.find_material(name).kind for name in stuffs)
    terms = tuple(Term("stuff", kind) for kind in kinds) or (Term("stuff", ""),)
    return Finding(Unlooked.NO_STRENGTH, {"kinds": terms, "reasons": reasons})


def _under_loads(found: "Examination") -> Iterator[Finding]:
    """Yield by unjudged parts and hooks on their way to the ground the loads that go there."""
    ways: dict[tuple[tuple[str, ...], tuple[str, ...]], list[str]] = {}
    for one in found.loads:
        weak, hung = _weak(found, one), _hung(found, one)
        if weak or hung:
            ways.setdefault((weak, hung), []).append(one.load.name)
    for (weak, hung), loads in ways.items():
        what = Unlooked.PARTS_UNDER_LOADS if weak else Unlooked.HOOKS_UNDER_LOADS
        what = Unlooked.PARTS_AND_HOOKS if weak and hung else what
        slots: dict[str, FindingSlot] = {"weak": weak, "hung": hung}
        yield Finding(what, slots | {"loads": _quoted(tuple(loads))})


def unfastened(found: "Examination") -> tuple[str, ...]:
    """Return the parts of which no joint says how they are fastened to what carries them.

    What a body is filled with is fastened to nothing.
    """
    fills = {f"{part.fill} in {part.name}" for part in found.design.parts if part.fill}
    parts = [part for part in found.design.parts if not part.loose and part.name not in fills]
    names = [part.name for part in found.design.parts]
    fastened = {joint.row.of for joint in found.joints}
    named = fastened | {joint.row.to for joint in found.joints}
    roots = [part.name for part in parts if part.place.reference is None]
    open_ones = [
        part.name
        for part in parts
        if part.place.reference is not None and part.hangs_at is None and part.name not in fastened
    ]
    apart = [name for name in roots if len(roots) > 1 and name not in named]
    return tuple(sorted({*open_ones, *apart}, key=names.index))


def _unjudged_parts(found: "Examination") -> tuple[str, ...]:
    judged = {one.name for one in found.members.judged}
    return tuple(
        part.name
        for part in found.design.parts
        if part.name not in judged and not part.shape.is_point
    )


def _plates(found: "Examination") -> tuple[str, ...]:
    """Return the parts that are judged as strips: under wind and named loads, not under people."""
    return tuple(one.name for one in found.members.judged if not one.forces)


def _open_seams(found: "Examination") -> tuple[str, ...]:
    fastened = {one.row.part for one in found.fastened_seams}
    return tuple(name for name in cornered_parts(found.structure) if name not in fastened)


def _unjudged(found: "Examination", one: Borne) -> bool:
    """Return whether a named load goes through a part not judged under it, or through a hook."""
    return bool(_weak(found, one) or _hung(found, one))


def _weak(found: "Examination", one: Borne) -> tuple[str, ...]:
    """Return the parts that carry a load and whose strength was not judged under it."""
    judged = {member.name for member in found.members.judged if one.load.name in member.loads}
    points = {part.name for part in found.design.parts if part.shape.is_point}
    return tuple(name for name in one.path if name not in judged | points)


def _hung(found: "Examination", one: Borne) -> tuple[str, ...]:
    hung = {part.name for part in found.design.parts if part.hangs_at is not None}
    return tuple(name for name in one.path if name in hung)


def _holder(found: "Examination") -> Topic | None:
    """Return what holds it, or would, and was not looked at."""
    if found.posts is not None:
        return Topic.TWIST if len(found.posts.part) == 1 else None
    if not found.needs_anchors:
        return None
    return Topic.SOIL if found.standing.ground.stakes_possible else Topic.SLAB
