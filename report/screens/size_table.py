"""How wide a foot, how much weight, or which stakes: one table, and what to take."""

from ...checks.sizing.choices import SizeChoice
from ...checks.sizing.mending import mending
from ...checks.sizing.remedy import RemedyReason
from ...checks.sizing.ways import Sizing
from ...checks.sizing.why_none import why_none
from ...checks.tied import Way
from ...checks.verdict import Verdict
from ..advice.mends import mends
from ..advice.what_to_do import MOST_MENDS, ScreenRow, first_things, subject
from ..messages import messages
from ..messages.messages import About
from ..told.facts import Facts, facts_of
from ..told.held_words import numbered
from ..told.sizing_words import why_no_remedy
from ..wording.gusts_to_act import bare_act
from ..wording.lines import Line, wrapped
from ..wording.remark import capital, joined
from .first_screen import MOST_COLUMNS, MOST_LINES, mood_of, title, word_line

_ROW = "  {:<9}{:<20}{:>5}{:>6}   "
_REST = 11
_HELD = (Way.ANCHORS, Way.GUYS)


def size_table(sizing: Sizing) -> list[Line]:
    """Return foot against weight against stakes, untied and tied, and which to take."""
    found = sizing.found
    facts, verdict = facts_of(found), found.verdict
    word, said = word_line(verdict, facts)
    head = wrapped(f"{word}   {said}", "  ", " " * _REST, width=MOST_COLUMNS)
    first = Line(head[0].text, word=(word, mood_of(verdict.word)))
    blocks = [
        title(facts, MOST_COLUMNS),
        [first, *head[1:]],
        _table(sizing.choices, facts) if sizing.choices else [],
        _rows([*_take(sizing, facts, verdict), *_not_offered(sizing, facts)]),
        _next(facts, verdict),
    ]
    blocks = [block for block in blocks if block]
    short = sum(map(len, blocks)) + len(blocks) - 1 > MOST_LINES
    gap = [] if short else [Line("")]
    return [line for block in blocks for line in [*gap, *block]][len(gap) :]


def _rows(rows: list[ScreenRow]) -> list[Line]:
    """Return labelled texts; of what is told of several the label stands once."""
    lines: list[Line] = []
    last = About.MORE
    for row in rows:
        text = row.text
        if row.number is not None:
            text = messages.SIZE_OF_MANY.format(n=row.number[0], all=row.number[1], text=text)
        label = "" if row.about is last else messages.SIZE_LABELS.get(row.about, row.about)
        lines += wrapped(text, f"  {label:<{_REST - 2}}", " " * _REST, width=MOST_COLUMNS)
        last = row.about
    return lines


def _table(choices: tuple[SizeChoice, ...], facts: Facts) -> list[Line]:
    amounts = facts.amounts
    act = messages.SIZE_ACT.format(unit=amounts.speed_unit)
    heads = [f"{act:>40}", _ROW.format("", "", *messages.SIZE_HEADS) + messages.SIZE_WITH]
    lines = [Line(head) for head in heads]
    last = ""
    for one in choices:
        label = messages.SIZE_KINDS[one.kind]
        if one.kind == "ballast":
            build = amounts.mass_needed(one.value)
        else:
            build = messages.SIZE_FOOT.format(width=amounts.width_needed(one.value))
        held, by = _tied(one, facts)
        first = _ROW.format("" if label == last else label, build, bare_act(one.act, amounts), held)
        lines += wrapped(by, first, " " * len(first), width=MOST_COLUMNS) if by else [Line(first)]
        last = label
    return [Line(line.text.rstrip(), line.mood) for line in lines]


def _tied(one: SizeChoice, facts: Facts) -> tuple[str, str]:
    """Return up to which wind it does when tied, and with what; nothing where none is needed."""
    tied = one.verdict.tied
    if one.stands:
        return "", messages.SIZE_STANDS.format(wind=facts.wind)
    if not tied.ways or tied.ways[0] not in (*_HELD, Way.OWN):
        if broken := [check for way, check in tied.refused if way in _HELD]:
            return "-", messages.SIZE_BREAKS.format(of=subject(broken[0]))
        return "-", messages.SIZE_SINKS if tied.sinks_anchored else messages.SIZE_NO_STAKES
    if tied.anchors is None:
        return facts.bare_wind, messages.SIZE_OTHER[tied.ways[0]]
    said = joined(numbered(len(row.points), row.kind) for row in tied.anchors.held.anchors[-1:])
    test = messages.SIZE_TEST.format(pull=facts.amounts.pull(tied.test)) if tied.test > 0.0 else ""
    return facts.bare_wind, f"{said}{test}"


def _take(sizing: Sizing, facts: Facts, verdict: Verdict) -> list[ScreenRow]:
    """Return which way to take, in the words of the first screen."""
    done = mends(mending(sizing.found, MOST_MENDS), facts)
    told = [row for row in first_things(verdict, facts, done) if row.about not in messages.UNSIZED]
    if not told and verdict.is_good:
        return [ScreenRow(About.TAKE, messages.TAKE_NOTHING)]
    return [
        ScreenRow(About.TAKE, capital(row.text)) if row.about in messages.TAKEN else row
        for row in told
    ]


def _not_offered(sizing: Sizing, facts: Facts) -> list[ScreenRow]:
    """Return why a wider foot, guys or a lower piece is not offered, where it is none."""
    if sizing.found.verdict.is_good:
        return []
    amounts = facts.amounts
    said = [
        f"{messages.SIZE_NONE[remedy.kind]}: "
        f"{why_no_remedy(why_none(sizing.found, remedy), amounts)}"
        for remedy in map(sizing.remedy, messages.SIZE_NONE)
        if not remedy.feasible
        and remedy.reason not in (None, RemedyReason.NOT_NEEDED, RemedyReason.POSTS)
    ]
    return [ScreenRow(About.NOT_OFFERED, f"{capital('; '.join(said))}.")] if said else []


def _next(facts: Facts, verdict: Verdict) -> list[Line]:
    kinds = [messages.SIZE_WRITES[way] for way in verdict.tied.ways if way in messages.SIZE_WRITES]
    lines: list[Line] = []
    if verdict.tied.needed and kinds:
        text = messages.SIZE_NEXT.format(file=facts.file, kinds=joined(kinds, "or"))
        lines += wrapped(text, "  Next     ", " " * _REST, width=MOST_COLUMNS)
    more = messages.SIZE_MORE.format(file=facts.file)
    return [*lines, *wrapped(more, "  More     ", " " * _REST, width=MOST_COLUMNS)]
