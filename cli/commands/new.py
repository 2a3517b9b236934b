"""`yardfast new`: a starting file for a kind of piece, asked for at a terminal, and checked."""

import sys
from argparse import Namespace
from collections.abc import Mapping, Sequence
from pathlib import Path
from textwrap import fill

from ...report.wording.faults import clean
from ..files import written
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError
from ..starting.pieces import PIECE_KINDS, piece
from ..starting.questions import Question, Talk, given, put, put_questions


def run(arguments: Namespace) -> int:
    """Write a starting file for ``kind``, asking at a terminal; then check it and change a size.

    To ``output``; without it to a free name at a terminal, and in a pipe to standard output.
    ``force`` writes over a file, ``defaults`` asks nothing, ``metric`` offers metric sizes. Returns
    0; refuses where nothing was written.
    """
    wanted, metric = arguments.kind, bool(arguments.metric)
    if wanted is not None and _named(wanted) is None:
        raise RefusedError(_unknown_kind(wanted), "")
    output: str | None = arguments.output
    file = Path(output) if output is not None else None
    if output is not None:
        may_write(output, arguments.force)
    asking = _at_a_terminal() and not arguments.defaults
    if wanted is None and not asking:
        raise RefusedError(f"a piece of which kind? There are: {', '.join(PIECE_KINDS)}.", "")
    talk, typed = _Terminal(), dict[str, str]()
    try:
        kind = _named(wanted) if wanted is not None else _asked_kind(talk)
        assert kind is not None
        if asking:
            typed = typed_answers(kind, talk, metric)
        text = file_of(kind, typed, metric)
    except (EOFError, KeyboardInterrupt):
        print()
        raise RefusedError("Stopped before the end: nothing was written.", "") from None
    if file is None and asking:
        file = _free_name(kind)
    if file is None:
        sys.stdout.write(text)
        return 0
    write_or_refuse(str(file), text, arguments.force)
    if not asking:
        print(f"{clean(str(file))} is written. Next:  yardfast check {clean(str(file))}")
        return 0
    print(f"\n{clean(str(file))} is written.\n")
    return _look_again(kind, file, talk, typed, metric)


def default_file(kind: str, metric: bool = False) -> str:
    """Return the starting file that Enter alone would give."""
    return file_of(kind, {}, metric)


def file_of(kind: str, typed: Mapping[str, str], metric: bool = False) -> str:
    """Return the starting file for what was typed; the default where nothing was."""
    found = piece(kind)
    return found.text(given(found.questions, typed, metric))


def typed_answers(kind: str, talk: Talk, metric: bool = False) -> dict[str, str]:
    """Return what is typed for a kind's questions, asked again until the reader takes the file."""
    talk.say('Enter takes what is in [ ]; ? explains; < goes back; "don\'t know" will do.')
    typed: Mapping[str, str] = {}
    while True:
        typed = put_questions(piece(kind).questions, talk, typed, metric)
        problems = _problems(file_of(kind, typed, metric))
        if not problems:
            return dict(typed)
        _tell(talk, problems)
        talk.say("Once more; Enter keeps what you answered.")


def _look_again(kind: str, file: Path, talk: Talk, typed: dict[str, str], metric: bool) -> int:
    """Show what ``check`` shows, and change one answer after the other as long as one is named."""
    questions = piece(kind).questions
    while True:
        _check(file)
        try:
            question = _which(questions, typed, talk, metric)
            if question is None:
                break
            changed = _changed(questions, question, typed, talk, metric)
        except (EOFError, KeyboardInterrupt):
            print()
            break
        problems = _problems(file_of(kind, changed, metric))
        if problems:
            _tell(talk, problems)
            talk.say(f"{file} stays as it was.")
            continue
        typed = changed
        if problem := written.write(file, file_of(kind, typed, metric), force=True):
            raise RefusedError(problem, f"{file} stays as it was.")
    print(f"Next:  yardfast check {clean(str(file))}")
    return 0


def _check(file: Path) -> None:
    """Show the screen of ``yardfast check``; what it shows is no fault of this command."""
    from ..parser import parse  # noqa: PLC0415 - only once a file is written

    parsed = parse(["check", str(file)])
    if parsed is not None:
        parsed.run(parsed)


def _which(
    questions: Sequence[Question], typed: Mapping[str, str], talk: Talk, metric: bool
) -> Question | None:
    """Return the question whose answer is to be changed, or None to leave."""
    answers = given(questions, typed, metric)
    open_to_all = [each for each in questions if each.asked(answers)]
    talk.say("\nChange one and look again?")
    for number, question in enumerate(open_to_all, 1):
        talk.say(f"  {number:>2}  {_short(question.ask)}: {typed.get(question.slot, '')}")
    while True:
        text = talk.ask("Its number, or Enter to leave: ").strip()
        if text.casefold() in {"", "n", "no", "q", "quit", "<"}:
            return None
        if text.isascii() and text.isdigit() and 1 <= int(text) <= len(open_to_all):
            return open_to_all[int(text) - 1]


def _changed(
    questions: Sequence[Question],
    question: Question,
    typed: Mapping[str, str],
    talk: Talk,
    metric: bool,
) -> dict[str, str]:
    """Return what was typed with one answer, and the follow-ups that it brings, put anew."""
    found = dict(typed)
    place = next(k for k, each in enumerate(questions) if each is question)
    for k, each in enumerate(questions[place:], place):
        answers = given(questions[:k], found, metric)
        fresh = each is question or (each.when and each.slot not in found and each.asked(answers))
        if not fresh:
            continue
        text = put(each, found.get(each.slot, ""), "  ", answers, talk)
        if text is None:
            return dict(typed)
        found[each.slot] = text
    return found


def _short(ask: str) -> str:
    return ask.partition(",")[0].rstrip("?") if len(ask) > 40 else ask.rstrip("?")


def _tell(talk: Talk, problems: Sequence[str]) -> None:
    talk.say("These do not go together:")
    for problem in problems:
        talk.say(fill(problem, 79, initial_indent="  ", subsequent_indent="    "))


def _at_a_terminal() -> bool:
    """Return whether somebody sits at both ends; standard input may be closed altogether."""
    return sys.stdin is not None and sys.stdin.isatty() and sys.stdout.isatty()


def _free_name(kind: str) -> Path:
    """Return a name that no file here has yet: garden-tower.toml, garden-tower-2.toml and so on."""
    number, called = 1, kind.replace(" ", "-")
    while True:
        file = Path(f"garden-{called}.toml" if number == 1 else f"garden-{called}-{number}.toml")
        if not file.exists():
            return file
        number += 1


class _Terminal:
    """The talk with whoever sits at the terminal."""

    def say(self, text: str) -> None:
        """Show a line."""
        print(text)

    def ask(self, prompt: str) -> str:
        """Show a prompt and return the line that is typed."""
        print(prompt, end="", flush=True)  # input() may put its prompt on standard error
        try:
            return input()
        except UnicodeDecodeError:  # bytes that are no text: asked again
            return "\N{REPLACEMENT CHARACTER}"


def _problems(text: str) -> list[str]:
    """Return what the reader has against a file, in lines; nothing where it takes it."""
    from ...checks.inputs import read_text  # noqa: PLC0415 - only once all is answered
    from ...design.faults import DesignError  # noqa: PLC0415
    from ...design.structure import build_structure  # noqa: PLC0415

    try:
        build_structure(read_text(text))
    except DesignError as error:
        return [
            f"{fault.part or 'the file'}, {fault.key or 'as a whole'}: read {fault.found}, "
            f"expected {fault.expected}" + (f" ({fault.hint})" if fault.hint else "")
            for fault in error.faults
        ]
    return []


def _named(word: str) -> str | None:
    from ...design.reader.near_names import plain_name  # noqa: PLC0415 - the help does without

    typed = plain_name(word)
    return next((kind for kind in PIECE_KINDS if plain_name(kind) == typed), None)


def _asked_kind(talk: Talk) -> str:
    from ..starting.answers import Choice  # noqa: PLC0415 - see above

    question = Question(
        "kind",
        "What is it nearest to?",
        "Its parts are then filled in for you: change, add and delete them in the file.",
        "choice",
        "tower",
        tuple(Choice(kind, piece(kind).says) for kind in PIECE_KINDS),
    )
    typed = put_questions([question], talk, {}, False)
    return given([question], typed, False).texts["kind"]


def _unknown_kind(word: str) -> str:
    from ...design.reader.near_names import nearest_name  # noqa: PLC0415 - only where something is wrong
    from ..starting.answers import shown_answer  # noqa: PLC0415

    kind_of = {other: kind for kind in PIECE_KINDS for other in (kind, *piece(kind).also)}
    near = nearest_name(word, tuple(kind_of))
    meant = f" Did you mean {kind_of[near]}?" if near else ""
    return f"{shown_answer(word)} is no kind of piece.{meant} There are: {', '.join(PIECE_KINDS)}."
