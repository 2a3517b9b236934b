"""What to do about a piece, line by line in the order in which people ask; from its verdict."""

from collections.abc import Sequence
from math import ceil

from ...checks.judged.judging import Check, Kind
from ...checks.limits import GREATEST_GUST
from ...checks.tied import Way, most
from ...checks.verdict import Reason, Verdict, Word
from ...units.frozen import ByValue, replace
from ..messages import messages
from ..messages.messages import About
from ..messages.terms import WHERE
from ..told.facts import Facts
from ..told.held_words import of_what
from ..told.tied_words import guys_said, how_set
from ..wording.amounts import Amounts
from ..wording.remark import counted, few

MOST_MENDS = 3


TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...checks.anchoring.anchor_choice import AnchorChoice
    from .mends import Mend


class ScreenRow(ByValue, frozen=True):
    """A labelled text of the first screen; ``optional`` ones go first where there is no room.

    ``number`` is which of how many it is, of what is told of several.
    """

    about: About
    text: str
    optional: bool = False
    number: tuple[int, int] | None = None

    @property
    def label(self) -> str:
        """Return its label: ``Tied``, ``Mend 1 of 3``."""
        if self.number is None:
            return self.about
        n, of_all = self.number
        return messages.OF_MANY.format(label=self.about, n=n, all=of_all)


def first_things(verdict: Verdict, facts: Facts, mends: "list[Mend]") -> list[ScreenRow]:
    """Return what to do untied, how to hold it, what to mend: the worst first.

    ``mends`` is what to do about the first of ``verdict.mended_alike``, in their order.
    """
    if verdict.word is Word.COMES_APART and not facts.laid_down:
        tied = [ScreenRow(About.THEN_TIED, row.text) for row in _tied(verdict, facts)[:1]]
        then = tied or _refused(verdict)
        return [*_mends(verdict, mends), *then, ScreenRow(About.UNTIL, _until(verdict, facts))]
    rows = _before_all(verdict, facts)
    if facts.laid_down:
        return [*rows, *_mends(verdict, mends), ScreenRow(About.LAID, laid_down(verdict, facts))]
    rows += [ScreenRow(About.IN_WIND if facts.posts else About.UNTIED, untied(verdict, facts))]
    if facts.often:
        rows.append(ScreenRow(About.OFTEN, facts.often, optional=True))
    if verdict.word is Word.HELD_DOWN or verdict.tied.ways:
        rows += _tied(verdict, facts)
    elif verdict.word is not Word.FALLS_OVER:
        rows += _refused(verdict)
    rows += _mends(verdict, mends)
    return rows


def _refused(verdict: Verdict) -> list[ScreenRow]:
    """Return what would fail of a piece that nothing holds down without breaking it."""
    if not verdict.tied.refused:
        return []
    message = messages.REFUSED if verdict.to_mend else messages.REFUSED_ALONE
    return [ScreenRow(About.THEN, message.format(of=subject(verdict.tied.refused[0][1])))]


def untied(verdict: Verdict, facts: Facts) -> str:
    """Return at which gust to act where nothing holds it, and what it does then."""
    amounts, found = facts.amounts, verdict.untied
    most_ = amounts.gust(GREATEST_GUST)
    if found.act is None:
        said = messages.UNTIED["calm"].format(most=most_)
    elif facts.posts and found.act <= 0.0:
        said = messages.UNTIED["clear"]
    elif facts.posts:
        said = messages.UNTIED["posts"].format(act=amounts.act(found.act))
    else:
        now, before = messages.KEEP[found.stays_put, verdict.word is not Word.NOTHING_HOLDS]
        always = found.act <= 0.0
        message = messages.UNTIED["always" if always else "act"]
        said = message.format(do=now if always else before, act=amounts.act(found.act))
    limits = limits_said(verdict, facts)
    return f"{said} ({limits})" if limits else said


def laid_down(verdict: Verdict, facts: Facts) -> str:
    """Return the whole advice for a piece that is meant to be laid down."""
    act = verdict.untied.until
    if act is None or facts.amounts.whole_act(act) <= 0:
        return untied(verdict, facts)
    said = messages.LAY_DOWN.format(act=facts.amounts.act(act))
    return f"{said} ({limits})" if (limits := limits_said(verdict, facts)) else said


def limits_said(verdict: Verdict, facts: Facts) -> str:
    """Return where it slides and tips, and the push that tips it."""
    amounts, found = facts.amounts, verdict.untied
    if verdict.word is Word.FALLS_OVER:
        return ""
    both = [(found.slides, "it slides"), (found.tips, _tips(facts))]
    known = sorted((gust, does) for gust, does in both if gust is not None)
    gusts = ", ".join(f"at {amounts.bare_gust(gust)} {does}" for gust, does in known)
    does = "is all that they may be asked" if facts.posts else "tips it"
    push = f"{amounts.force(found.push, 'down')} of push {does}" if found.push > 0.0 else ""
    return "; ".join(each for each in (gusts, push) if each)


def _tips(facts: Facts) -> str:
    return "its posts are asked all they may" if facts.posts else "it tips"


def _until(verdict: Verdict, facts: Facts) -> str:
    """Return what to do until what fails is mended."""
    act, stays = verdict.untied.until, verdict.untied.stays_put
    if act is None:
        act = GREATEST_GUST
    if facts.amounts.whole_act(act) <= 0:
        return messages.UNTIL["clear" if stays else "always"]
    return messages.UNTIL["stays" if stays else "laid"].format(act=facts.amounts.act(act))


def _before_all(verdict: Verdict, facts: Facts) -> list[ScreenRow]:
    """Return what has to be done first: of what falls over, sinks in, is pushed over."""
    key = {
        Reason.BALANCE: "balance",
        Reason.GROUND_GIVES: "ground",
        Reason.DOWNHILL: "downhill",
        Reason.PRESSES: "sinks",
        Reason.PEOPLE: "people",
    }.get(verdict.reason)
    if verdict.word is Word.NOTHING_HOLDS:
        key = "sinks anchored" if verdict.tied.sinks_anchored else "nothing"
    if verdict.word is Word.SET_IT_DEEPER:
        return [ScreenRow(About.MEND, facts.deeper)]
    if key is None:
        return []
    pull = facts.people_pull
    anchors = ""
    if pull > 0.0 and pull < most("stake pull"):
        anchors = messages.OR_ANCHORS.format(pull=facts.amounts.pull(pull))
    return [
        ScreenRow(About.MEND, messages.MEND_FIRST[key].format(anchors=anchors, ground=facts.ground))
    ]


def _tied(verdict: Verdict, facts: Facts) -> list[ScreenRow]:
    """Return how to hold it, and what over the wind that this is worked out for; one other way."""
    tied, amounts = verdict.tied, facts.amounts
    over = messages.OVER_CLEAR if verdict.untied.stays_put else messages.OVER
    over = over.format(wind=facts.wind)
    ways: list[str] = []
    for way in tied.ways:
        match way:
            case Way.OWN:
                own = messages.OWN.format(holders=facts.holders)
                ways.append(f"{own}. {test}" if (test := _test(verdict, facts)) else own)
            case Way.ANCHORS if tied.anchors is not None:
                said = anchors_set(tied.anchors, amounts)
                ways.append(f"{said}. {test}" if (test := _test(verdict, facts)) else said)
            case Way.GUYS if tied.guys is not None:
                ways.append(guys_said(tied.guys, amounts))
            case Way.WEIGHT if tied.weight is not None:
                ways.append(weight_said(tied.weight, facts))
            case Way.WIDTH if tied.width is not None:
                ways.append(messages.WIDTH.format(width=amounts.width_needed(tied.width)))
            case _:
                pass
    if not ways:
        return []
    first = ways[0].rstrip(".")
    about = About.WEIGHED if tied.ways[0] in (Way.WEIGHT, Way.WIDTH) else About.TIED
    rows = [ScreenRow(about, f"{first}. {over}")]
    if len(ways) > 1:
        slides = f" ({messages.WIDTH_SLIDES})" if tied.width_slides else ""
        rows.append(ScreenRow(About.OR, f"{ways[1]}{slides}", optional=True))
    return rows


def anchors_set(choice: "AnchorChoice", amounts: Amounts) -> str:
    """Return which anchors are added, where they stand, and how they are set."""
    return messages.TIED.format(
        what=of_what_added(choice),
        where=WHERE[choice.places],
        how=how_set(choice.row, len(choice.held.anchors[-1].points), amounts),
    )


def of_what_added(choice: "AnchorChoice") -> str:
    """Return what is added by a choice of anchors: ``four steel stakes 1 in x 36 in``."""
    return of_what(replace(choice.held, anchors=choice.held.anchors[-1:], guys=()))


def _test(verdict: Verdict, facts: Facts) -> str:
    if verdict.tied.test <= 0.0:
        return ""
    return messages.PULL_TEST.format(pull=facts.amounts.pull(verdict.tied.test))


def bags_said(kilograms: float, facts: Facts) -> str:
    """Return how many bags a weight is."""
    bag = most("bag, metric" if facts.amounts.metric else "bag, imperial")
    return f"{counted(ceil(kilograms / bag - 1.0e-9), 'bag')} of {facts.amounts.mass(bag)}"


def weight_said(kilograms: float, facts: Facts) -> str:
    """Return a weight low in the foot, and how many bags that is."""
    weight = facts.amounts.mass_needed(kilograms)
    return messages.WEIGHT.format(weight=weight, bags=bags_said(kilograms, facts))


_LINE = 60
"""So many letters of a mend take a line, with what it is of."""


def _mends(verdict: Verdict, mends: "list[Mend]") -> list[ScreenRow]:
    """Return the first mend whole, two more in a line each, then how many more there are."""
    total = len(verdict.mended_alike)
    rows: list[ScreenRow] = []
    for i, (alike, mend) in enumerate(zip(verdict.mended_alike, mends, strict=False)):
        of = subjects(alike)
        fits = i == 0 or len(of) + len(mend.whole) <= _LINE
        said = mend.whole if fits else mend.short
        rows.append(ScreenRow(About.MEND, f"{of}: {said}", number=(i + 1, total)))
    if total > MOST_MENDS:
        rows.append(ScreenRow(About.MORE, messages.MORE_MENDS.format(n=total - MOST_MENDS)))
    return rows


def subjects(alike: Sequence[Check]) -> str:
    """Return what checks that fail alike are of."""
    return few([subject(check) for check in alike])


def subject(check: Check) -> str:
    """Return what a check is of: the joint, part or load by its name."""
    if check.kind is Kind.RACKING:
        return few([str(name) for name in check.slots], most=1)
    return f"'{check.subject}'" if check.kind is Kind.LOAD else check.subject


def fastening(verdict: Verdict, facts: Facts) -> list[ScreenRow]:
    """Return what is known of joints, and what of them the file does not give.

    A good word says the latter itself.
    """
    told = verdict.carrying if verdict.may_be_sold else ()
    names = few([name for name in verdict.unfastened if name not in told])
    names = "" if verdict.is_good else names
    said = joints_said(verdict, facts)
    more = [
        messages.GIVEN_BY_FILE[one.topic].format(of=few(one.by_file, most=2))
        for one in verdict.not_looked_at
        if one.by_file and one.topic in messages.GIVEN_BY_FILE
    ]
    open_ = [each for each in (names, *more) if each]
    if open_:
        message = messages.FASTENING_OPEN if said or not names else messages.FASTENING_NONE
        said = f"{said} {message.format(names='; '.join(open_))}".lstrip()
    return [ScreenRow(About.FASTENING, said)] if said else []


def joints_said(verdict: Verdict, facts: Facts) -> str:
    """Return how many joints were checked, and how many hold; nothing where the file has none."""
    if not facts.checked:
        return ""
    failing = sum(check.kind is Kind.JOINT for check in verdict.mend)
    hold = "all hold" if not failing else f"{facts.checked - failing} hold"
    if facts.checked == 1:
        hold = "holds" if not failing else "does not hold"
    return messages.FASTENING_ALL.format(n=counted(facts.checked, "joint"), hold=hold)


def not_looked_at_row(verdict: Verdict, *, all_of_it: bool = True) -> ScreenRow:
    """Return what was not looked at, in a line; all of it, or without what the file can say."""
    said: list[str] = []
    for one in verdict.not_looked_at:
        message = messages.TOPICS.get(one.topic)
        of = one.of if all_of_it else [name for name in one.of if name not in one.by_file]
        if message is not None and (of or not one.of):
            said.append(message.format(of=few(of, most=2)))
    return ScreenRow(About.NOT_LOOKED_AT, "; ".join(said))


def cautions_now(verdict: Verdict, facts: Facts) -> list[ScreenRow]:
    """Return at most two cautions: those to be done, or known, now for this piece."""
    said: list[str] = []
    if facts.least_wind:
        said.append(messages.LEAST_WIND)
    elif facts.just:
        said.append(messages.JUST)
    driven = verdict.tied.ways and verdict.tied.ways[0] in (Way.OWN, Way.ANCHORS, Way.GUYS)
    if facts.posts or (driven and not facts.laid_down):
        said.append(messages.ASK_BEFORE_DIGGING.format(ask=facts.ask, setting=facts.setting))
    return [ScreenRow(About.FIRST if i == 0 else About.MORE, text) for i, text in enumerate(said)]


def also(verdict: Verdict, facts: Facts) -> list[ScreenRow]:
    """Return what fails besides, which the word does not say: ground, posts, people."""
    kinds = {check.kind for check in verdict.besides}
    said = [
        message.format(ground=facts.ground, people=facts.people, posts=facts.posts)
        for kind, message in messages.ALSO.items()
        if kind in kinds
    ]
    said = list(dict.fromkeys(said))
    return [ScreenRow(About.ALSO, "; ".join(said))] if said else []


def first_mend(verdict: Verdict, facts: Facts, mends: "list[Mend]") -> str:
    """Return what to mend before all else; empty where nothing is known."""
    if verdict.to_mend and mends:
        return f"{subjects(verdict.mended_alike[0])}: {mends[0].whole}"
    rows = _before_all(verdict, facts)
    return rows[0].text if rows else ""


def in_brief(verdict: Verdict, facts: Facts) -> str:
    """Return what to mend or to hold it with, in a few words; nothing where it stands."""
    if verdict.to_mend:
        alike, *others = verdict.mended_alike
        racks = alike[0].kind is Kind.RACKING
        what = str(alike[0].slots[0]) if others and racks else subjects(alike)
        more = len(others)
        message = messages.BRIEF_MORE if more else messages.BRIEF_MEND
        return message.format(what=what, n=more)
    if rows := _before_all(verdict, facts):
        return rows[0].text
    tied, amounts = verdict.tied, facts.amounts
    match tied.ways[0] if tied.ways else None:
        case Way.OWN:
            return messages.BRIEF_HELD.format(what=facts.holders)
        case Way.ANCHORS if tied.anchors is not None:
            return messages.BRIEF_TIE.format(what=of_what_added(tied.anchors))
        case Way.GUYS if tied.guys is not None:
            return messages.BRIEF_TIE.format(
                what=f"{counted(tied.guys.row.count, 'guy')} of {tied.guys.row.line}"
            )
        case Way.WEIGHT if tied.weight is not None:
            return messages.BRIEF_TIE.format(what=weight_said(tied.weight, facts))
        case Way.WIDTH if tied.width is not None:
            return messages.BRIEF_TIE.format(
                what=messages.WIDTH.format(width=amounts.width_needed(tied.width))
            )
        case _:
            return ""
