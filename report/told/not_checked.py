"""What was not checked of a design: said on every output, so that nobody reads in a promise."""

from ...checks.examination import Examination
from ...checks.stated.not_looked_at import NotLookedAt, Topic
from ...loads.methods import standard_of
from ..wording import messages
from ..wording.amounts import Amounts
from ..wording.remark import are_many, capital, joined
from .held_words import anchor_word
from .load_words import loads_unchecked
from .member_words import strength_unchecked

_NAMED = 6
_PARTS = (Topic.SEAMS, Topic.UNDER_PEOPLE)


def not_checked(examination: Examination) -> tuple[str, ...]:
    """Return what was not checked, each in a full sentence, the joints first."""
    return tuple(_said(examination, one) for one in examination.verdict.not_looked_at)


def _said(found: Examination, one: NotLookedAt) -> str:
    match one.topic:
        case Topic.FASTENING:
            return _fastening(found, one.of)
        case Topic.STRENGTH:
            return strength_unchecked(found)
        case Topic.UNDER_LOADS:
            return loads_unchecked(found) or ""
        case Topic.WHEEL:
            judged = {member.name for member in found.members.judged}
            blades = "" if judged.issuperset(one.of) else messages.BLADES
            said = messages.NOT_CHECKED[one.topic].format(blades=blades, of=joined(one.of))
            return capital(said)
        case Topic.HOW_OFTEN:
            code = standard_of(found.site.method).is_code
            wind = Amounts(found.design.units == "metric").gust(found.site.wind, "near")
            return messages.HOW_OFTEN_UNKNOWN[code].format(wind=wind)
        case topic:
            of = one.of if topic in _PARTS else [f"'{name}'" for name in one.of]
            anchor = anchor_word(found) if topic is Topic.SOIL else ""
            return messages.NOT_CHECKED[topic].format(of=joined(of), anchor=anchor)


def _fastening(found: Examination, names: tuple[str, ...]) -> str:
    """Say of which parts no joint tells how they are fastened."""
    if not found.joints:
        every = [part.name for part in found.design.parts if not part.loose]
        said = joined(every) if len(every) <= _NAMED else f"its {len(every)} parts"
        return messages.NO_JOINTS.format(names=said)
    said = joined(names) if len(names) <= _NAMED else f"{len(names)} other parts"
    return messages.OTHER_JOINTS[are_many(names)].format(names=said)
