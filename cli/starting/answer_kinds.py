"""What a typed answer means, by its kind: the name that a question's ``takes`` gives."""

from collections.abc import Callable, Mapping, Sequence

from ...design.reader.near_names import plain_name
from . import answered_lengths as lengths
from . import answered_stock as stock
from . import answered_wind as wind
from .answers import AnswerError, Answers, Asked, Choice, Found, Slot

LEFT_OPEN = "left open"
"""What "don't know" takes where the file can do without."""

_MOST_TEXT = 200

Reader = Callable[[str, Asked], Found]


def read_answer(
    takes: str, slot: str, text: str, default: str, choices: Sequence[Choice], answers: Answers
) -> tuple[Found, str]:
    """Return what an answer of a kind means, and what is to be said of how it was read.

    Raises AnswerError for what it cannot mean; KeyError for an unknown kind.
    """
    asked = Asked(slot, default, choices, answers, [])
    found = _READERS[takes](text, asked)
    return found, " ".join(asked.said)


def _line(text: str, asked: Asked) -> Found:
    """Read a line of text, which may be left open."""
    line = " ".join(text.replace("'", "’").split())
    if text == LEFT_OPEN:
        line = ""
    if (line and not line.isprintable()) or len(line) > _MOST_TEXT:
        raise AnswerError(text, f"one line of text, up to {_MOST_TEXT} characters")
    return {asked.slot: Slot(line, line)}


def _choice(text: str, asked: Asked) -> Found:
    word = chosen(text, asked.choices)
    return {asked.slot: Slot(word, word)}


def chosen(text: str, choices: Sequence[Choice]) -> str:
    """Return the word of the choice that a text names by number, word or beginning."""
    typed = plain_name(text)
    for number, choice in enumerate(choices, 1):
        if typed in (str(number), plain_name(choice.word), plain_name(choice.says)):
            return choice.word
    begun = [
        choice.word
        for choice in choices
        if len(typed) > 1
        and any(plain_name(each).startswith(typed) for each in (choice.word, choice.says))
    ]
    if len(begun) == 1:
        return begun[0]
    raise AnswerError(text, f"a number from 1 to {len(choices)}, or the words beside it")


_READERS: Mapping[str, Reader] = {
    "length": lengths.one,
    "length or none": lengths.or_none,
    "lengths": lengths.answered_lengths,
    "widths": lengths.answered_widths,
    "sides": lengths.sides,
    "count": lengths.answered_count,
    "wheel": lengths.wheel,
    "walls": stock.walls,
    "material": stock.material,
    "standing lumber": stock.standing_stick,
    "lying lumber": stock.lying_stick,
    "foot": stock.foot,
    "speed": wind.gust_asked,
    "record": wind.record,
    "line": _line,
    "choice": _choice,
}
