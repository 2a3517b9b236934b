"""A dialogue in questions: a default, an explanation, a way back, and 'don't know' as an answer.

Nothing here reads a keyboard or prints: a Talk does, at a terminal or by a script.
"""

from collections.abc import Mapping, Sequence
from textwrap import fill
from typing import Protocol

from ...units.frozen import ByValue
from .answer_kinds import read_answer
from .answers import AnswerError, Answers, Choice, with_answer
from .expressions import worth
from .templates import filled_template

_SCREEN = 79
_BACK = frozenset({"<", "back"})
_DO_NOT_KNOW = frozenset(
    {"don't know", "dont know", "do not know", "i don't know", "i dont know", "not known"}
    | {"unknown", "dunno", "no idea", "not sure", "unsure"}
)


class Talk(Protocol):
    """Whom the questions are put to. ``ask`` raises EOFError where there is no more input."""

    def say(self, text: str) -> None:
        """Show a line."""
        ...

    def ask(self, prompt: str) -> str:
        """Show a prompt and return the line that is typed."""
        ...


class Question(ByValue, frozen=True):
    """One question, as a row of a piece's table; ``takes`` is the kind of answer (answers.py).

    ``default`` is what Enter takes, a template; without one it has to be answered. ``unknown`` is
    what "don't know" takes (the default where it is empty), ``unknown_said`` what is then told.
    ``when`` makes it a follow-up, asked where that holds; ``must`` has to hold of the answer, else
    ``otherwise`` is said.
    """

    slot: str
    ask: str
    explain: str
    takes: str
    default: str = ""
    choices: tuple[Choice, ...] = ()
    unknown: str = ""
    unknown_said: str = ""
    when: str = ""
    must: str = ""
    otherwise: str = ""

    def offered(self, answers: Answers) -> str:
        """Return what Enter takes beside earlier answers."""
        return filled_template(self.default, answers.texts, answers.values)

    def asked(self, answers: Answers) -> bool:
        """Return whether it is asked at all beside earlier answers."""
        return not self.when or bool(worth(self.when, answers.values))

    def taken(self, text: str, answers: Answers) -> tuple[Answers, str]:
        """Return the answers with this one, and what is to be said of it. Raises AnswerError."""
        found, said = read_answer(
            self.takes, self.slot, text, self.offered(answers), self.choices, answers
        )
        together = with_answer(answers, found)
        if self.must and not worth(self.must, together.values):
            raise AnswerError(
                text, filled_template(self.otherwise, together.texts, together.values)
            )
        return together, said


def put_questions(
    questions: Sequence[Question], talk: Talk, former: Mapping[str, str], metric: bool
) -> Mapping[str, str]:
    """Put the questions; return by question what was typed for it.

    ``former`` holds what was typed before, the new defaults. EOFError and KeyboardInterrupt of the
    talk pass through.
    """
    former, typed = dict(former), dict[str, str]()
    main = [question for question in questions if not question.when]
    way: list[int] = []
    index = 0
    while index < len(questions):
        question, answers = questions[index], given(questions[:index], typed, metric)
        if not question.asked(answers):
            typed.pop(question.slot, None)
            index += 1
            continue
        place = (
            "" if question.when or len(main) == 1 else f"{main.index(question) + 1} of {len(main)}"
        )
        text = put(question, former.get(question.slot, ""), f"{place:<8}", answers, talk)
        if text is None and way:
            index = way.pop()
            former[questions[index].slot] = typed.pop(questions[index].slot)
        elif text is None:
            talk.say("        This is the first question.")
        else:
            typed[question.slot] = text
            way.append(index)
            index += 1
    return typed


def given(questions: Sequence[Question], typed: Mapping[str, str], metric: bool) -> Answers:
    """Return what was answered by what was typed; the default where nothing was."""
    answers = Answers.none(metric)
    for question in questions:
        if question.asked(answers):
            text = typed.get(question.slot) or question.offered(answers)
            answers = question.taken(text, answers)[0]
    return answers


def put(question: Question, former: str, head: str, answers: Answers, talk: Talk) -> str | None:
    """Ask until the answer can be taken and return what was typed; None for a step back."""
    default, lead = former or question.offered(answers), " " * len(head)
    prompt = _prompt(question, default, head, talk)
    while True:
        text = talk.ask(prompt).strip()
        if text.casefold() in _BACK:
            return None
        if text == "?":
            _tell(talk, lead, question.explain)
            continue
        told = ""
        if " ".join(text.casefold().replace("’", "'").split()) in _DO_NOT_KNOW:
            text = question.unknown or default
            told = question.unknown_said or (f"Taken: {text}. Change it in the file." * bool(text))
        text = text or default
        if not text:
            _tell(talk, lead, "This has no default: nobody but you can know it. '?' explains.")
            continue
        try:
            _, said = question.taken(text, answers)
        except AnswerError as wrong:
            _tell(talk, lead, str(wrong))
            continue
        if told or said:
            _tell(talk, lead, told or said)
        return text


def _prompt(question: Question, default: str, head: str, talk: Talk) -> str:
    if not question.choices:
        return head + question.ask + (f" [{default}]: " if default else ": ")
    talk.say(head + question.ask)
    lead = " " * len(head)
    for number, choice in enumerate(question.choices, 1):
        talk.say(f"{lead}{number}  {choice.says}")
    words = [choice.word for choice in question.choices]
    number = str(words.index(default) + 1) if default in words else default
    return f"{lead}which [{number}]: " if number else f"{lead}which: "


def _tell(talk: Talk, lead: str, text: str) -> None:
    talk.say(fill(text, _SCREEN, initial_indent=lead, subsequent_indent=lead))
