"""``yardfast size --kind tower ...``: the table of base widths before there is a design."""

from argparse import Namespace
from collections.abc import Mapping

from ...checks.inputs import read_text
from ...checks.sizing.ways import starting_sizes
from ...design.faults import DesignError
from ...design.model import Design
from ...loads.wind.site import Site
from ...report.wording.faults import clean
from ...units.frozen import replace
from .. import screen
from ..files.written_sizes import written_size as written
from ..refused import RefusedError
from .answered_wind import speed
from .answers import AnswerError, Answers
from .pieces import PIECE_KINDS, PieceKind, piece

_FOUND = 0

_QUESTION_OF = {
    "sides": "sides",
    "height": "height",
    "body": "widths",
    "walls": "walls",
    "foot": "foot",
    "ground": "ground",
    "exposure": "around",
}
_NEEDED = ("sides", "height", "body")


def run_kind(arguments: Namespace) -> int:
    """Show the base widths of a kind of piece; return 0. Refuses sizes that are wrong."""
    kind = " ".join(arguments.kind.casefold().split())
    if problem := _problem(kind, arguments):
        raise RefusedError(problem, "")
    design, taken = _designed(kind, arguments)
    sizes = starting_sizes(design)
    if arguments.format == "json":
        from ...report.screens.starting_sizes import starting_object  # noqa: PLC0415 - text does without

        screen.show_json(starting_object(kind, taken, sizes))
    else:
        from ...report.screens.starting_sizes import starting_lines  # noqa: PLC0415 - JSON does without

        screen.show(starting_lines(kind, taken, sizes, _typed(arguments)))
    return _FOUND


def _typed(arguments: Namespace) -> list[tuple[str, str]]:
    """Return the options as they were typed, to be typed as answers again."""
    told = ((name, getattr(arguments, name)) for name in (*_QUESTION_OF, "wind"))
    return [(name, clean(text, 60)) for name, text in told if text is not None]


def _problem(kind: str, arguments: Namespace) -> str:
    kinds = [each for each in PIECE_KINDS if _options(each).issuperset(_NEEDED)]
    if kind not in kinds:
        return f"--kind is one of {', '.join(kinds)}; the others need a file: yardfast new"
    missing = [f"--{name}" for name in _NEEDED if getattr(arguments, name) is None]
    if missing:
        return (
            f"a {kind} needs {', '.join(missing)}: --sides 6 --height '6 ft' --body '18 in, 10 in'"
        )
    given = {name for name in _QUESTION_OF if getattr(arguments, name) is not None}
    unasked = sorted(given - _options(kind))
    return f"a {kind} takes no --{unasked[0]}" if unasked else ""


def _options(kind: str) -> set[str]:
    asked = {question.slot for question in piece(kind).questions}
    return {option for option, slot in _QUESTION_OF.items() if slot in asked}


def _designed(kind: str, arguments: Namespace) -> tuple[Design, Mapping[str, str]]:
    """Return the design that the options describe, and what was taken where they do not say."""
    typed = {
        slot: (option, getattr(arguments, option))
        for option, slot in _QUESTION_OF.items()
        if getattr(arguments, option) is not None
    }
    asked = piece(kind)
    answers, taken = _answers(asked, typed)
    wind = _wind(arguments.wind) if arguments.wind is not None else None
    own = "foot" in typed or "foot" not in answers.texts
    for each in () if own else (_narrow(answers),):
        try:
            return _read(asked, each, wind), _told(taken, each)
        except DesignError:
            continue
    try:
        return _read(asked, answers, wind), _told(taken, answers)
    except DesignError as wrong:
        fault = wrong.faults[0]
        raise RefusedError(
            f"these sizes do not go together: {fault.part or 'the piece'}, "
            f"{fault.key or 'as a whole'}: read {fault.found}, expected {fault.expected}",
            "",
        ) from None


def _answers(
    asked: PieceKind, typed: Mapping[str, tuple[str, str]]
) -> tuple[Answers, dict[str, str]]:
    """Return the answers that options and defaults give, and the defaults that were taken."""
    answers = Answers.none(metric=False)
    taken: dict[str, str] = {}
    for question in asked.questions:
        if not question.asked(answers):
            continue
        option, text = typed.get(question.slot, ("", ""))
        if not option:
            text = taken[question.slot] = question.offered(answers)
        try:
            answers, _ = question.taken(text, answers)
        except AnswerError as wrong:
            asked_by = f"--{option}" if option else f"'{question.ask}', not given"
            raise RefusedError(f"{asked_by}: {wrong}", "") from None
    return answers, taken


def _narrow(answers: Answers) -> Answers:
    """Return the answers with a foot no wider than the body: there the table begins."""
    bottom = float(answers.values["bottom"])
    foot = written(bottom, bool(answers.values["metric"]), 64)
    return replace(
        answers,
        texts={**answers.texts, "foot": foot},
        values={**answers.values, "foot": bottom},
    )


def _read(asked: PieceKind, answers: Answers, wind: float | None) -> Design:
    design = read_text(asked.text(answers))
    if wind is None:
        return design
    site = replace(design.table(Site), wind=wind)
    return replace(design, tables={**design.tables, Site: site})


def _told(taken: Mapping[str, str], answers: Answers) -> Mapping[str, str]:
    """Return what was taken without being said, in the words of the file."""
    told = {name: taken[name] for name in ("walls", "wood", "wheel", "eaves") if name in taken}
    if "foot" in taken:
        told["foot"] = f"{answers.texts['foot_lumber']}, from {answers.texts['foot']}"
    return told | {name: taken[name] for name in ("ground", "around") if name in taken}


def _wind(text: str) -> float:
    try:
        return speed(text)
    except AnswerError as wrong:
        raise RefusedError(f"--wind: {wrong}", "") from None
