"""`yardfast new`: a starting file for a kind of piece, asked for at a terminal."""

import sys
from argparse import Namespace
from collections.abc import Mapping
from pathlib import Path
from textwrap import fill

from .questions import Talk
from .written import unwritable, write

_KIND_SAYS = {
    "tower": "a tower: a hollow body on a foot, straight or tapered, with a roof",
    "well": "a well: a wall, and a roof on two posts",
    "post": "a post on a foot",
    "sign": "a sign: a board on two legs",
    "arbor": "an arbor: four posts, lattice, a top",
    "wheel": "a wheel of blades on a tower",
    "cut-out": "a figure sawn from a board, with a brace behind it",
    "barn": "a mini barn or boathouse with a gambrel roof, on skids",
    "mailbox": "a mailbox on a braced post with a heavy foot",
    "birdhouse": "a birdhouse on a post with a crossed foot",
    "footbridge": "a footbridge with posts and rails",
    "swing": "a swing on A-legs",
}
KINDS = tuple(_KIND_SAYS)

_OTHER_WORDS = {
    **dict.fromkeys(("light", "lighthouse", "beacon", "gazebo"), "tower"),
    **dict.fromkeys(("wishing well", "wishing-well"), "well"),
    **dict.fromkeys(("pillar", "column", "pole", "lamp", "totem"), "post"),
    **dict.fromkeys(("cutout", "figure", "silhouette", "heron"), "cut-out"),
    **dict.fromkeys(("boathouse", "boat house", "shed", "playhouse"), "barn"),
    **dict.fromkeys(("letterbox", "postbox"), "mailbox"),
    **dict.fromkeys(("nest box", "bird house", "feeder"), "birdhouse"),
    **dict.fromkeys(("bridge",), "footbridge"),
    **dict.fromkeys(("board", "signpost", "billboard"), "sign"),
    **dict.fromkeys(("pergola", "trellis", "gate", "arch", "arbour"), "arbor"),
    **dict.fromkeys(("windmill", "mill", "windwheel", "rotor", "turbine"), "wheel"),
}
_WRONG = 2


def run(arguments: Namespace) -> int:
    """Write a starting file for ``kind``, asking at a terminal.

    To ``output``; without it to a free name at a terminal, and in a pipe to standard output.
    ``force`` writes over a file, ``defaults`` asks nothing. Returns 0, or 2 where nothing was
    written.
    """
    given = arguments.kind
    if given is not None and _named(given) is None:
        return _refuse(_unknown_kind(given))
    file = Path(arguments.output) if arguments.output is not None else None
    if file is not None and (problem := unwritable(file, force=arguments.force)):
        return _refuse(f"{problem}. Nothing was written.")
    asking = sys.stdin.isatty() and sys.stdout.isatty() and not arguments.defaults
    if given is None and not asking:
        return _refuse(f"a piece of which kind? There are: {', '.join(KINDS)}.")
    try:
        kind = _named(given) if given is not None else _asked_kind(_Terminal())
        assert kind is not None
        text = asked_file(kind, _Terminal()) if asking else default_file(kind)
    except (EOFError, KeyboardInterrupt):
        print()
        return _refuse("Stopped before the end: nothing was written.")
    if file is None and asking:
        file = _free_name(kind)
    if file is None:
        sys.stdout.write(text)
        return 0
    if problem := write(file, text, force=arguments.force):
        return _refuse(f"{problem}. Nothing was written.")
    print(f"{file} is written. Next:  yardfast check {file}")
    return 0


def default_file(kind: str) -> str:
    """Return the starting file that Enter alone would give."""
    from .asked import questions  # noqa: PLC0415 - the help and a refusal do without
    from .questions import defaults  # noqa: PLC0415
    from .starting_files import starting_file  # noqa: PLC0415

    return starting_file(kind, defaults(questions(kind)))


def asked_file(kind: str, talk: Talk) -> str:
    """Return the starting file for what is answered, asked again until the reader takes it."""
    from .asked import questions  # noqa: PLC0415 - the help and a refusal do without
    from .questions import hold  # noqa: PLC0415
    from .starting_files import starting_file  # noqa: PLC0415

    talk.say('Enter takes what is in [ ]; ? explains; "don\'t know" will do; Ctrl-C leaves.')
    typed: Mapping[str, str] = {}
    while True:
        answers, typed = hold(questions(kind), talk, typed)
        problems = _problems(starting_file(kind, answers))
        if not problems:
            return starting_file(kind, answers)
        talk.say("These do not go together:")
        for problem in problems:
            talk.say(fill(problem, 79, initial_indent="  ", subsequent_indent="    "))
        talk.say("Once more; Enter keeps what you answered.")


def _free_name(kind: str) -> Path:
    """Return a name that no file here has yet: garden-tower.toml, garden-tower-2.toml and so on."""
    number = 1
    while True:
        file = Path(f"garden-{kind}.toml" if number == 1 else f"garden-{kind}-{number}.toml")
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
    from ..checks.inputs import read_text  # noqa: PLC0415 - only once all is answered
    from ..design.faults import DesignError  # noqa: PLC0415
    from ..design.structure import build_structure  # noqa: PLC0415

    try:
        build_structure(read_text(text))
    except DesignError as error:
        return [
            f"{fault.part or 'the file'}, {fault.key or 'as a whole'}: read {fault.found}, "
            f"expected {fault.expected}" + (f" ({fault.hint})" if fault.hint else "")
            for fault in error.faults
        ]
    return []


def _named(kind: str) -> str | None:
    plain = " ".join(kind.casefold().split())
    return plain if plain in KINDS else None


def _asked_kind(talk: Talk) -> str:
    from .questions import Choice, Question, choose, hold  # noqa: PLC0415 - see above

    kinds = tuple(Choice(kind, text) for kind, text in _KIND_SAYS.items())
    what = "Its parts are then filled in for you: change, add and delete them in the file."
    question = Question(
        "kind", "What is it nearest to?", what, choose("kind", kinds), "tower", kinds
    )
    return hold([question], talk)[0]["kind"]


def _refuse(message: str) -> int:
    print(f"yardfast new: {message}", file=sys.stderr)
    return _WRONG


def _unknown_kind(kind: str) -> str:
    from ..design.near_names import nearest  # noqa: PLC0415 - only where something is wrong
    from .questions import shown  # noqa: PLC0415

    near = nearest(kind, (*KINDS, *_OTHER_WORDS))
    near = _OTHER_WORDS.get(near, near) if near else None
    meant = f" Did you mean {near}?" if near else ""
    return f"{shown(kind)} is no kind of piece.{meant} There are: {', '.join(KINDS)}."
