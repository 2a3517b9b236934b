"""The first screen: the word, what to do, what to mend, what was not looked at; with a picture."""

from ...checks.examination import Examination
from ...checks.tied import WAY_NAMES
from ...checks.verdict import GOOD, HOLDABLE, Verdict, Word
from ..advice.verdict_words import if_fastened, why
from ..advice.what_to_do import (
    MOST_MENDS,
    ScreenRow,
    also,
    cautions_now,
    fastening,
    first_things,
    not_looked_at_row,
)
from ..drawings.picture import picture
from ..messages import messages
from ..messages.messages import About
from ..told.facts import Facts, facts_of
from ..wording.lines import Line, Mood, wrapped
from .beside import Beside

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..advice.mends import Mend

MOST_LINES, MOST_COLUMNS = 22, 79
_NARROW = 72
"""Below so many columns there is no picture."""

_WITH_LESS = ((True, 1.0), (False, 1.0), (False, 0.75), (False, 0.6), (False, 0.0))
"""What is left out step by step: whether with what is optional, and how large the picture is."""

_LABEL, _MENDING = 10, 14
"""How wide labels are, and where one says how many mends there are."""
_GAP = 3


def first_screen(found: Examination, columns: int = MOST_COLUMNS) -> list[Line]:
    """Return the first screen, ``columns`` wide and 79 at most: 22 lines, where that is 79.

    Where there is no room empty lines go first, then what is optional, then the picture gets
    smaller, and leaves.
    """
    facts, verdict = facts_of(found), found.verdict
    width = min(columns, MOST_COLUMNS)
    todo, rest = todo_and_rest(found, verdict, facts)
    best: list[Line] = []
    for optional, share in _WITH_LESS:
        drawing = picture(found.structure, share) if share and width >= _NARROW else []
        first = [row for row in todo if optional or not row.optional]
        blocks = [first, rest, _next(verdict, facts, width)]
        for gaps in range(len(blocks) - 1, -1, -1):
            best = _laid_out(verdict, facts, blocks, drawing, width, gaps)
            if len(best) <= MOST_LINES:
                return best
    return best


def todo_and_rest(
    found: Examination, verdict: Verdict, facts: Facts
) -> tuple[list[ScreenRow], list[ScreenRow]]:
    """Return what to do, the worst first, and what else is told of it, cautions of now last."""
    todo = first_things(verdict, facts, _mends(found, verdict, facts))
    never = not_looked_at_row(verdict, all_of_it=False)
    rest = [*also(verdict, facts), *fastening(verdict, facts), never]
    return todo, [*rest, *cautions_now(verdict, facts)]


def _mends(found: Examination, verdict: Verdict, facts: Facts) -> "list[Mend]":
    """Return what to do about what fails."""
    if not verdict.mend:
        return []
    from ...checks.sizing.mending import mending  # noqa: PLC0415 - most pieces want none
    from ..advice.mends import mends  # noqa: PLC0415

    return mends(mending(found, MOST_MENDS), facts)


def title(facts: Facts, width: int) -> list[Line]:
    """Return the name, and how tall, wide and heavy it is at the right."""
    if len(facts.name) + len(facts.size) + _GAP <= width:
        room = width - len(facts.name)
        return [Line(f"{facts.name}{facts.size:>{room}}", "title")]
    return [*wrapped(facts.name, mood="title", width=width), Line(facts.size.rjust(width), "title")]


def word_line(verdict: Verdict, facts: Facts) -> tuple[str, str]:
    """Return the word and what follows it on its line."""
    said = why(verdict, facts).lstrip(" ,:")
    names = verdict.unfastened if verdict.is_good else verdict.carrying
    if_ = if_fastened(names) if verdict.may_be_sold else ""
    return verdict.word.upper(), f"{said}, {if_}" if if_ else said


def mood_of(word: Word) -> Mood:
    """Return the colour of a word: of what fails, of what is to be tied, of what stands."""
    return "good" if word in GOOD else "tie" if word in HOLDABLE else "bad"


def _next(verdict: Verdict, facts: Facts, width: int) -> list[ScreenRow]:
    """Return what to type next: each line a purpose and a command; FILE for a long name."""
    said: list[str] = []
    for file in (facts.file, messages.FILE):
        rows = _purposes(verdict, facts, file)
        if width < _NARROW:
            rows = [("", command) for _, command in rows]
        wide = max(len(purpose) for purpose, _ in rows) + 2
        said = [f"{purpose:<{wide}}{command}".lstrip() for purpose, command in rows]
        if all(len(text) <= width - _MENDING - 2 for text in said):
            break
    return [ScreenRow(About.NEXT if i == 0 else About.MORE, text) for i, text in enumerate(said)]


def _purposes(verdict: Verdict, facts: Facts, file: str) -> list[tuple[str, str]]:
    """Return what may be done next, each with the command for it."""
    rows: list[tuple[str, str]] = []
    kind = WAY_NAMES.get(verdict.tied.ways[0]) if verdict.tied.ways else None
    if verdict.word in HOLDABLE and kind is not None and not facts.laid_down:
        purpose = messages.NEXT[kind].format(anchors=facts.anchors)
        rows.append((purpose, f"yardfast size {file} --write tied.toml"))
        rows.append((messages.NEXT_PAPER, "yardfast sheet tied.toml -o tied.pdf"))
    elif verdict.is_good or facts.laid_down:
        rows.append((messages.NEXT_PAPER, f"yardfast sheet {file} -o sheet.pdf"))
    else:
        rows.append((messages.NEXT_MEND, f"yardfast size {file}"))
    return [*rows, (messages.NEXT_MORE, "--numbers  --as-read  --assumed  --cautions")]


def _laid_out(
    verdict: Verdict,
    facts: Facts,
    blocks: list[list[ScreenRow]],
    drawn: list[str],
    width: int,
    gaps: int,
) -> list[Line]:
    """Return the lines with the picture at their right; so many of the blocks set apart."""
    wide = _MENDING if verdict.word is Word.COMES_APART else _LABEL
    page = Beside(width, drawn)
    for note in facts.look_again:
        page.put("  Look again  ", note, rest=wide + 2, word=("Look again", "tie"))
    word, said = word_line(verdict, facts)
    page.gap()
    page.put(f"  {word}   ", said, rest=wide + 2, word=(word, mood_of(verdict.word)))
    for i, block in enumerate(blocks):
        if i == len(blocks) - 1:
            page.clear()
        if i < gaps + 1:
            page.gap()
        for row in block:
            label = f"{row.label:<{wide}}" if len(row.label) < wide else f"{row.label}: "
            page.put(f"  {label}", row.text, rest=wide + 2)
    return [*title(facts, width), *page.lines()]
