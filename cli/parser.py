"""What can be typed: commands, options, help with an example each. Imports nothing heavy."""

import argparse
import sys
from collections.abc import Callable, Sequence
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import Any, NamedTuple

from .. import __version__

MENU = f"""\
yardfast {__version__}: will it stand in the wind, and what holds it down?

  yardfast new                 a starting file, by questions
  yardfast check FILE.toml     the verdict on a design file
  yardfast check FOLDER        several at a glance
  yardfast page FILE.toml      move a number and see it, in a browser
  yardfast mend FILE.toml      put right what is surely meant in it
  yardfast draw FILE --text    what was read, as a small drawing
  yardfast size FILE.toml      what holds it: foot, weight, anchors, height
  yardfast compare FILE.toml   by every book of wind; or two designs
  yardfast cuts FILE.toml      what to saw: panels, bevels, lumber, sheets
  yardfast sheet FILE.toml     the stability sheet on paper, for a buyer
  yardfast label FILE.toml     text for a listing
  yardfast materials, yardfast grounds: what their names mean
  yardfast fasteners           what a nail or screw holds in a wood
  yardfast COMMAND --help      more, with an example
"""


class Arguments(argparse.Namespace):
    """What was typed, and the command that it asks for."""

    run: Callable[["Arguments"], int]


class _Option(NamedTuple):
    """An option or what stands for itself: its names, and how it is read; it may begin a group."""

    names: tuple[str, ...]
    how: dict[str, Any]
    heading: str = ""


def _takes(names: str, metavar: str | None, says: str, **more: Any) -> _Option:
    """Return an option, or a word that stands for itself, which takes a text."""
    return _Option(tuple(names.split()), {"metavar": metavar, "help": says, **more})


def _flag(name: str, says: str) -> _Option:
    """Return an option that is given or not."""
    return _Option((name,), {"action": "store_true", "help": says})


def _whole(least: int, most: int, what: str) -> Callable[[str], int]:
    """Return what reads a whole number. ArgumentTypeError, saying ``what``, where it is none."""

    def number(typed: str) -> int:
        if typed.isascii() and typed.isdigit() and least <= int(typed[:9]) <= most:
            return int(typed[:9])
        raise argparse.ArgumentTypeError(what.format(least=least, most=most))

    return number


def _number(
    names: str,
    says: str,
    least: int,
    most: int,
    default: int | None = None,
    what: str = "a whole number from {least} to {most}",
) -> _Option:
    """Return an option that takes a whole number."""
    return _takes(names, "N", says, type=_whole(least, most, what), default=default)


_COUNT = "how many pieces, {least} to {most}: --count 3"
_FILE = _takes("file", "FILE", "a design file, .toml")
_FILES = _takes("files", "FILE", "a design file, .toml, or a folder of them", nargs="+")
_FORMAT = _takes(
    "--format",
    None,
    "text for people (default), json in SI units for programs",
    choices=("text", "json"),
    default="text",
)
_FORCE = _flag("--force", "write over a file that exists")
_PAPER = _takes(
    "--paper",
    None,
    "a4 for metric designs, letter for imperial ones",
    choices=("a4", "letter"),
)
_DRAFT = _flag("--draft", "of a piece that is not ready to sell, marked as such")


class _Command(NamedTuple):
    """What a command is for, an example of it, its options, and the function that does it.

    The function is ``does`` in the file ``module`` of ``commands/``: each start pays only for what
    it runs.
    """

    what: str
    example: str
    module: str
    options: tuple[_Option, ...]
    does: str = "run"

    def run(self, name: str, arguments: Arguments) -> int:
        """Do what was typed, and return the exit status; what is wrong is told at one door."""
        from .refused import told  # noqa: PLC0415 - help does without

        does = getattr(import_module(f".commands.{self.module}", __package__), self.does)
        return told(name, lambda: does(arguments))


_OF_A_KIND = tuple(
    _takes(f"--{name}", "…", example)
    for name, example in (
        ("kind", "tower, well, post or wheel"),
        ("sides", "6"),
        ("height", "of its body: '6 ft'"),
        ("body", "its width at bottom and top: '18 in, 10 in'"),
        ("walls", "'3/4 plywood'"),
        ("foot", "the narrowest, and its lumber: '24 in, 2x6 flat'"),
        ("ground", "'wet lawn'"),
        ("exposure", "'open', 'houses and trees' or 'shore'"),
        ("wind", "a forecast gust: '58 mph'"),
    )
)

COMMANDS = {
    "new": _Command(
        "a starting file, by questions",
        "tower -o light.toml",
        "new",
        (
            _takes(
                "kind",
                "KIND",
                "tower, well, post, sign, arbor, wheel, cut-out, barn, mailbox, birdhouse, "
                "footbridge, swing, obelisk, planter, a-frame or 'crossed boards'; asked for if "
                "left out",
                nargs="?",
            ),
            _takes("-o --output", "FILE.toml", "where to write it"),
            _FORCE,
            _flag("--defaults", "ask nothing: take every default"),
            _flag("--metric", "metric sizes, lumber and sheets"),
        ),
    ),
    "check": _Command(
        "the verdict on one design file or several",
        "light.toml --engineer",
        "check",
        (
            _FILES,
            _FORMAT,
            _takes("--csv", "OUT.csv", "write a row for each design"),
            _FORCE,
            _number("-j --jobs", "so many at a time; else all cores", 1, 256),
            _flag("--engineer", "add utilization, clause, direction and factors"),
            _flag("--numbers", "what each check has and needs, gusts and pulls"),
            _flag("--as-read", "every size as it was read, and how to prove it"),
            _flag("--assumed", "what was taken for granted"),
            _flag("--cautions", "what to take care of, what was not looked at"),
            _takes(
                "--explain",
                "CHECK",
                "a check's relation, source and inputs, each with where it came from: overturning, "
                "'joint: NAME'; may stand again",
                action="append",
            ),
            _flag("--all", "all of these; each fault"),
        ),
    ),
    "page": _Command(
        "the page: move a number, see the piece, read what happens; on this machine alone",
        "light.toml",
        "page",
        (
            _takes("file", "FILE", "a design file, .toml; without one a new piece", nargs="?"),
            _number(
                "--port", "where it listens; 0, if not said, takes any that is free", 0, 65535, 0
            ),
            _flag("--no-browser", "open no browser; the address is printed"),
            _flag(
                "--lan",
                "for a phone in the yard: anybody on the local network who has the "
                "address may read and change the file",
            ),
        ),
    ),
    "mend": _Command(
        "put right what is surely meant in a design file, the old text kept beside it",
        "light.toml",
        "mend",
        (_FILE, _flag("--yes", "put in all that is sure, without asking")),
    ),
    "draw": _Command(
        "the drawing: elevation, plan, gusts by side",
        "light.toml -o light.svg",
        "draw",
        (
            _FILE,
            _flag("--text", "in characters, 80 columns wide"),
            _takes("-o --output", "OUT.svg", "a picture to scale: .svg, .png or .pdf"),
            _PAPER,
            _FORCE,
        ),
    ),
    "size": _Command(
        "what holds a piece down, each way alone",
        "light.toml --write heavy.toml --remedy ballast",
        "size",
        (
            _takes("file", "FILE", "a design file, .toml", nargs="?"),
            _FORMAT,
            _flag("--all", "every way alone, gusts by foot and weight, joints"),
            _takes("--write", "NEW.toml", "write the design changed; never over"),
            _takes(
                "--remedy",
                "REMEDY",
                "which: 'base width', 'ballast', 'anchors', 'guys', 'height' or 'wind'",
            ),
            _OF_A_KIND[0]._replace(heading="before there is a file"),
            *_OF_A_KIND[1:],
        ),
    ),
    "sweep": _Command(
        "one design at many sizes: gusts, weight and word over one or two of them",
        "light.toml --vary 'foot.across=18 in..36 in'",
        "sweep",
        (
            _FILE,
            _takes(
                "--vary",
                "PART.KEY=A..B",
                "a size, from and to: 'foot.across=18 in..36 in'; once or twice",
                action="append",
                required=True,
            ),
            _number("--steps", "so many values of each; 7 if not said", 2, 200, 7),
            _FORMAT,
            _takes("--csv", "OUT.csv", "write a row for each size"),
            _takes("-o --output", "OUT.svg", "a picture: .svg, .png or .pdf"),
            _FORCE,
        ),
    ),
    "odds": _Command(
        "how likely a piece tips or slides, of many like it",
        "light.toml --samples 1000000",
        "odds",
        (
            _FILE,
            _FORMAT,
            _number("--samples", "so many like it; 100000 if not said", 1, 100_000_000, 100_000),
            _number("--seed", "another draw of them; 1 if not said", 0, 100_000_000, 1),
            _number("--years", "within so many years; 10 if not said", 1, 1000, 10),
            _flag("--inputs", "what varies, by how much and who says so"),
        ),
    ),
    "compare": _Command(
        "one piece by every book of wind, or two designs",
        "light.toml",
        "compare",
        (
            _FILE,
            _takes("second", "FILE2", "another: what changed, and what it did", nargs="?"),
            _FORMAT,
        ),
    ),
    "cuts": _Command(
        "what to saw and to buy for a piece, and where its stakes go",
        "light.toml --count 3 -o shop.pdf",
        "cuts",
        (
            _FILE,
            _FORMAT,
            _takes(
                "-o --output", "OUT", "write it: .pdf a page to tick off, .svg or .dxf full size"
            ),
            _flag("--stakes", "where what holds it is set out, in place of the list"),
            # beyond a hundred the layout on sheets takes long
            _number("--count", "for so many of a kind", 1, 100, 1, _COUNT),
            _FORCE,
        ),
    ),
    "sheet": _Command(
        "the stability sheet on paper, for the buyer",
        "light.toml -o light.pdf",
        "sheet",
        (
            _FILES,
            _takes(
                "-o --output",
                "OUT",
                "where to write it: OUT.pdf, or a folder for many; left out: beside each design",
            ),
            _flag("--full", "the whole calculation instead, step by step"),
            _DRAFT,
            _PAPER,
            _FORCE,
        ),
    ),
    "label": _Command(
        "text for a listing, of one design or a folder",
        "my-designs -o labels.csv",
        "label",
        (
            _FILES,
            _takes(
                "--format",
                None,
                "text to copy, csv a row each for a spreadsheet, json for programs; left out: as "
                "the name of OUT ends, else text",
                choices=("text", "csv", "json"),
            ),
            _takes("-o --output", "OUT", "where to write it"),
            _DRAFT,
            _FORCE,
        ),
    ),
    "stale": _Command(
        "which printed sheets are no longer current",
        "labels.csv",
        "stale",
        (
            _takes(
                "printed",
                "LABELS.csv",
                "a table that 'label --format csv' wrote; or FILE.toml and, behind it, the "
                "fingerprint on its sheet",
                nargs="+",
            ),
            _FORMAT,
        ),
    ),
    "materials": _Command(
        "what each material's name means, with sources", "", "listing", (_FORMAT,), "materials"
    ),
    "grounds": _Command(
        "what each ground's name means, with sources",
        "--format json",
        "listing",
        (_FORMAT,),
        "grounds",
    ),
    "fasteners": _Command(
        "what a nail or screw holds in a wood",
        "'8d common' --wood 'western redcedar'",
        "fasteners",
        (
            _takes("name", "NAME", "which: '8d common', 'lag screw', '#8'; all without", nargs="?"),
            _takes("--wood", "NAME", "a wood or panel: 'western redcedar'"),
            _takes("--side", "…", "how thick the board is that it fastens", default="3/4 in"),
            _FORMAT,
        ),
    ),
    "schema": _Command(
        "what a design file may hold, or a result or the odds hold, as a JSON Schema",
        "design",
        "schema",
        (
            _takes(
                "of",
                None,
                "of the design file (default), or of what check or odds prints by '--format json'",
                nargs="?",
                choices=("design", "result", "odds"),
                default="design",
            ),
        ),
    ),
    "verify": _Command(
        "every published answer that ships, worked out again beside its print",
        "--format json",
        "verify",
        (_FORMAT,),
    ),
}
"""Every command, in the order in which help shows them."""


def parse(arguments: Sequence[str]) -> Arguments | None:
    """Return what was typed, or None with a message where no command is meant by it.

    Raises SystemExit with status 0 after help or version, 2 for a wrong option.
    """
    if not arguments:
        print(MENU, end="")
        raise SystemExit(0)
    first = arguments[0]
    if not first.startswith("-") and first not in COMMANDS:
        print(_unknown(first), file=sys.stderr)
        return None
    return _parser(first).parse_args(arguments, namespace=Arguments())


def _unknown(word: str) -> str:
    """Return the answer to a command that there is not: the nearest, or what a file needs."""
    from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

    shown = "".join(c if c.isprintable() else "?" for c in word[:60])
    if word.endswith(".toml") or Path(word[:200].replace("\0", "")).is_file():
        return f"yardfast: a file needs a command before it: yardfast check {shown}"
    near = get_close_matches(word[:60].casefold(), COMMANDS, n=1, cutoff=0.5)
    hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(COMMANDS)}"
    return f"yardfast: there is no command '{shown}': {hint}"


def _parser(typed: str) -> argparse.ArgumentParser:
    """Return the reader of the command line; only the command that is typed is spelt out."""
    parser = argparse.ArgumentParser(
        prog="yardfast",
        description="Works out whether a yard piece stands in the wind, and what holds it down.",
        epilog="Example:  yardfast check harbour-light.toml",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"yardfast {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for name, command in COMMANDS.items():
        if typed.startswith("-") or typed == name:
            own = commands.add_parser(
                name,
                help=command.what,
                description=f"{command.what[0].upper()}{command.what[1:]}.",
                epilog=f"Example:  yardfast {name} {command.example}".rstrip(),
                allow_abbrev=False,
            )
            own.set_defaults(run=partial(command.run, name))
            group = own
            for option in command.options:
                group = own.add_argument_group(option.heading) if option.heading else group
                group.add_argument(*option.names, **option.how)
    return parser
