"""`yardfast new`: a starting file for a kind of piece, asked for at a terminal."""

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Mapping
from pathlib import Path

from .questions import Answers, Talk

KINDS = ("tower", "well", "post", "sign", "arbor", "wheel")

_OTHER_WORDS = {
    **dict.fromkeys(("light", "lighthouse", "beacon", "gazebo", "birdhouse"), "tower"),
    **dict.fromkeys(("wishing well", "wishing-well"), "well"),
    **dict.fromkeys(("pillar", "column", "pole", "lamp", "totem"), "post"),
    **dict.fromkeys(("board", "signpost", "billboard"), "sign"),
    **dict.fromkeys(("pergola", "trellis", "gate", "arch", "arbour"), "arbor"),
    **dict.fromkeys(("windmill", "mill", "windwheel", "rotor", "turbine"), "wheel"),
}
_WRONG = 2


def add_arguments(parser: ArgumentParser) -> None:
    """Add the arguments of `yardfast new`."""
    parser.add_argument("kind", metavar="KIND", help=", ".join(KINDS))
    parser.add_argument("-o", "--output", metavar="FILE.toml", help="the file to write")
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


def run(arguments: Namespace) -> int:
    """Write a starting file; return 0, or 2 where nothing was written."""
    kind = " ".join(str(arguments.kind).casefold().split())
    if kind not in KINDS:
        return _refuse(_unknown_kind(str(arguments.kind)))
    file = Path(arguments.output) if arguments.output is not None else None
    if file is not None and (problem := _unwritable(file, arguments.force)):
        return _refuse(problem)
    try:
        asked = sys.stdin.isatty() and sys.stdout.isatty()
        text = asked_file(kind, _Terminal()) if asked else default_file(kind)
    except (EOFError, KeyboardInterrupt):
        print(file=sys.stderr)
        return _refuse("Stopped before the end: nothing was written.")
    if file is None:
        sys.stdout.write(text)
        return 0
    try:
        with file.open("w" if arguments.force else "x", encoding="utf-8", newline="\n") as opened:
            opened.write(text)
    except OSError as error:
        return _refuse(f"{file} cannot be written: {error.strerror}. Nothing was kept.")
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

    talk.say(f"A {kind}. Enter takes what stands in [ ], ? explains, and so does \"don't know\".")
    typed: Mapping[str, str] = {}
    while True:
        answers, typed = hold(questions(kind), talk, typed)
        problems = _problems(starting_file(kind, answers))
        if not problems:
            return starting_file(kind, answers)
        talk.say("These do not go together:")
        for problem in problems:
            talk.say(f"  {problem}")
        talk.say("Once more; Enter keeps what you answered.")
