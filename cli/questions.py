"""A dialogue in questions: each with a default, an explanation, and 'don't know' as an answer.

Nothing here reads a keyboard or prints: a Talk does, at a terminal or by a script.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from textwrap import fill
from typing import Protocol

Answers = Mapping[str, str]
"""What has been answered: by name, text as the design file takes it."""

Reader = Callable[[str, Answers], Answers]
"""Reads a typed answer, beside the earlier ones, into named ones; raises AnswerError."""

Default = str | Callable[[Answers], str]

_LONGEST = 60
_SCREEN = 79
_DO_NOT_KNOW = frozenset(
    {"don't know", "dont know", "do not know", "i don't know", "i dont know", "not known"}
    | {"unknown", "dunno", "no idea", "not sure", "unsure"}
)


class AnswerError(Exception):
    """An answer that cannot be taken: what was read, what is expected, a hint."""

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        super().__init__(
            f"read {shown(found)}, expected {expected}" + (f": {hint}" if hint else "")
        )
        self.found = found
        self.expected = expected
        self.hint = hint

    def __reduce__(self) -> tuple[type["AnswerError"], tuple[str, str, str]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.found, self.expected, self.hint)


class Talk(Protocol):
    """Whom the questions are put to. ``ask`` raises EOFError where there is no more input."""

    def say(self, text: str) -> None:
        """Show a line."""
        ...

    def ask(self, prompt: str) -> str:
        """Show a prompt and return the line that is typed."""
        ...


@dataclass(frozen=True)
class Choice:
    """One of several answers: its word for the file, and what it says to people."""

    word: str
    text: str


@dataclass(frozen=True)
class Question:
    """One question. ``default`` is what Enter takes; without one it has to be answered.

    ``unknown`` is what "don't know" takes (the default where it is empty) and ``unknown_said``
    what is then told. ``follows`` makes it a follow-up, asked only where it returns True.
    """

    name: str
    text: str
    explanation: str
    read: Reader
    default: Default = ""
    choices: tuple[Choice, ...] = ()
    unknown: str = ""
    unknown_said: str = ""
    follows: Callable[[Answers], bool] | None = None


def hold(
    questions: Sequence[Question], talk: Talk, former: Mapping[str, str] | None = None
) -> tuple[Answers, Mapping[str, str]]:
    """Put the questions; return the answers, and by question what was typed for them.

    ``former`` holds what was typed before, the new defaults. EOFError and KeyboardInterrupt of
    the talk pass through.
    """
    answers: dict[str, str] = {}
    typed: dict[str, str] = {}
    main = [question for question in questions if question.follows is None]
    number = 0
    for question in questions:
        if question.follows is None:
            number += 1
            head = f"{number} of {len(main)}  "
        elif question.follows(answers):
            head = "        "
        else:
            continue
        default = (former or {}).get(question.name) or _default(question, answers)
        typed[question.name] = _put(question, default, head, answers, talk)
    return answers, typed


def defaults(questions: Sequence[Question]) -> Answers:
    """Return the answers that Enter alone would give."""
    answers: dict[str, str] = {}
    for question in questions:
        if question.follows is None or question.follows(answers):
            answers.update(question.read(_default(question, answers), answers))
    return answers


def chosen(text: str, choices: Sequence[Choice]) -> str:
    """Return the word of the choice that a text names by number, word or beginning."""
    plain = _plain(text)
    for number, choice in enumerate(choices, 1):
        if plain in (str(number), _plain(choice.word), _plain(choice.text)):
            return choice.word
    begun = [
        choice.word
        for choice in choices
        if len(plain) > 1
        and any(_plain(each).startswith(plain) for each in (choice.word, choice.text))
    ]
    if len(begun) == 1:
        return begun[0]
    raise AnswerError(text, f"a number from 1 to {len(choices)}, or the words beside it")


def choose(name: str, choices: Sequence[Choice]) -> Reader:
    """Return a reader of one of several choices."""
    return lambda text, _: {name: chosen(text, choices)}


def shown(text: str) -> str:
    """Return a typed text between quote marks, cut short, without control characters."""
    clean = "".join(each if each.isprintable() else "?" for each in text)
    return repr(clean if len(clean) <= _LONGEST else clean[: _LONGEST - 1] + "…")


def _put(question: Question, default: str, head: str, answers: dict[str, str], talk: Talk) -> str:
    """Ask until the answer can be taken; add it to ``answers`` and return what was typed."""
    lead = " " * len(head)
    taken = f" [{default}]: " if default else ": "
    if question.choices:
        talk.say(head + question.text)
        for number, choice in enumerate(question.choices, 1):
            talk.say(f"{lead}{number}  {choice.text}")
        taken = f" [{_number(default, question.choices)}]: " if default else ": "
        prompt = f"{lead}which{taken}"
    else:
        prompt = head + question.text + taken
    while True:
        text = talk.ask(prompt).strip()
        if text == "?":
            _tell(talk, lead, question.explanation)
            continue
        said = ""
        if _plain(text) in _DO_NOT_KNOW:
            text = question.unknown or default
            said = question.unknown_said or (
                f"Taken: {text}. Change it in the file." if text else ""
            )
        text = text or default
        if not text:
            _tell(talk, lead, "This has no default: nobody but you can know it. '?' explains.")
            continue
        try:
            answers.update(question.read(text, answers))
        except AnswerError as wrong:
            _tell(talk, lead, str(wrong))
            continue
        if said:
            _tell(talk, lead, said)
        return text


def _tell(talk: Talk, lead: str, text: str) -> None:
    talk.say(fill(text, _SCREEN, initial_indent=lead, subsequent_indent=lead))


def _default(question: Question, answers: Answers) -> str:
    return question.default(answers) if callable(question.default) else question.default


def _number(word: str, choices: Sequence[Choice]) -> str:
    words = [choice.word for choice in choices]
    return str(words.index(word) + 1) if word in words else word


def _plain(text: str) -> str:
    return " ".join(text.casefold().replace("’", "'").split())
