"""What has been answered, by slots that a template takes, and an answer that cannot be taken."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ...units.frozen import ByValue
from ..files.written_sizes import is_metric
from .expressions import Worth

_LONGEST = 60


class AnswerError(Exception):
    """An answer that cannot be taken: what was read, what is expected, a hint."""

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        super().__init__(
            f"read {shown_answer(found)}, expected {expected}" + (f": {hint}" if hint else "")
        )
        self.found = found
        self.expected = expected
        self.hint = hint

    def __reduce__(self) -> tuple[type["AnswerError"], tuple[str, str, str]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.found, self.expected, self.hint)


class Choice(NamedTuple):
    """One of several answers: its word for the file, and what it says to people."""

    word: str
    says: str


class Slot(NamedTuple):
    """One thing answered: text as the file takes it, and its worth (a length in m)."""

    text: str
    value: Worth


class Answers(ByValue, frozen=True):
    """What has been answered, by slot: text as the file takes it, and its worth.

    The first length answered says whether the piece is built in metric sizes (``metric``).
    """

    texts: Mapping[str, str]
    values: Mapping[str, Worth]
    sized: bool = False

    @staticmethod
    def none(metric: bool) -> "Answers":
        """Return no answers yet."""
        return Answers({}, {"metric": float(metric)})


class Asked(NamedTuple):
    """What a reader knows: the slot, the default's own text, the choices, earlier answers."""

    slot: str
    default: str
    choices: Sequence[Choice]
    answers: Answers
    said: list[str]


Found = dict[str, Slot]


def with_answer(answers: Answers, found: Found) -> Answers:
    """Return answers with one more."""
    texts = {**answers.texts, **{name: each.text for name, each in found.items()}}
    values = {**answers.values, **{name: each.value for name, each in found.items()}}
    lengths = [
        text for text, value in found.values() if isinstance(value, float) and text[-1:].isalpha()
    ]
    if not answers.sized and lengths:
        values["metric"] = float(is_metric(lengths[0]))
    return Answers(texts, values, answers.sized or bool(lengths))


def shown_answer(text: str) -> str:
    """Return a typed text between quote marks, cut short, without control characters."""
    clean = "".join(each if each.isprintable() else "?" for each in text)
    return repr(clean if len(clean) <= _LONGEST else clean[: _LONGEST - 1] + "…")
