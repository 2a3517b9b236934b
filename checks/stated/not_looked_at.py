"""What was not looked at of a piece, as data: a topic each, and the names that it is of."""

from enum import StrEnum

from ...loads.recurrence import recurrence
from ...units.frozen import ByValue
from ..acting.borne import Borne
from ..seams.tubes import cornered_parts

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..examination import Examination


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


GIVEN_BY_FILE = frozenset({Topic.FASTENING, Topic.SEAMS, Topic.PEOPLE})
"""What the design file can still say: joints, seams, who comes near."""


class NotLookedAt(ByValue, frozen=True):
    """One thing that was not looked at; ``of`` names the parts, loads or wheels that it is of."""

    topic: Topic
    of: tuple[str, ...] = ()


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
    if not _knows_how_often(found):
        always.append(Topic.HOW_OFTEN)
    if found.held.guys:
        always.append(Topic.GUY_ENDS)
    if (holder := _holder(found)) is not None:
        always.append(holder)
    all_of_it = [
        *(NotLookedAt(topic, names) for topic, names in named if names),
        *(NotLookedAt(topic) for topic in always),
    ]
    order = list(Topic)
    return tuple(sorted(all_of_it, key=lambda one: order.index(one.topic)))


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
    judged = {member.name for member in found.members.judged if one.load.name in member.loads}
    points = {p.name for p in found.design.parts if p.shape.is_point}
    hung = {part.name for part in found.design.parts if part.hangs_at is not None}
    return any(name in hung or name not in judged | points for name in one.path)


def _knows_how_often(found: "Examination") -> bool:
    limits = found.limits
    gusts = [g for g in (limits.forecast_tipping, limits.forecast_sliding) if g is not None]
    gust = min(gusts, default=0.0)
    return gust > 0.0 and recurrence(gust, found.site) is not None


def _holder(found: "Examination") -> Topic | None:
    """Return what holds it, or would, and was not looked at."""
    if found.posts is not None:
        return Topic.TWIST if len(found.posts.part) == 1 else None
    if not found.needs_anchors:
        return None
    return Topic.SOIL if found.standing.ground.stakes_possible else Topic.SLAB
