"""What can be typed: commands, options, help with an example each. Imports nothing heavy."""

import argparse
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from pathlib import Path
from typing import NamedTuple

from .. import __version__

MENU = f"""\
yardfast {__version__}: will it stand in the wind, and what holds it down?

  yardfast new                 a starting file, by questions
  yardfast check FILE.toml     the verdict on a design file
  yardfast check FOLDER        several at a glance
  yardfast mend FILE.toml      put right what is surely meant in it
  yardfast draw FILE --text    what was read, as a small drawing
  yardfast size FILE.toml      what holds it: foot, weight, anchors, height
  yardfast compare FILE.toml   by every book of wind; or two designs
  yardfast cuts FILE.toml      what to saw: panels, bevels, lumber, sheets
  yardfast sheet FILE.toml     the stability sheet on paper, for a buyer
  yardfast label FILE.toml     text for a listing
  yardfast materials           what a material's name means
  yardfast grounds             what a ground's name means
  yardfast fasteners           what a nail or screw holds in a wood
  yardfast COMMAND --help      more, with an example
"""


MOST_PROCESSES = 256
MOST_STEPS = 200


class Arguments(argparse.Namespace):
    """What was typed, and the command that it asks for."""

    run: Callable[["Arguments"], int]


class _Command(NamedTuple):
    """What a command is for, an example of it, its options, and the function that does it.

    The function is ``does`` in the file ``module`` beside this one: each start pays only for what
    it runs.
    """

    what: str
    example: str
    options: Callable[[argparse.ArgumentParser], None]
    module: str
    does: str = "run"

    def run(self, arguments: Arguments) -> int:
        """Do what was typed, and return the exit status."""
        found = import_module(f".{self.module}", __package__)
        return getattr(found, self.does)(arguments)


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
            own.set_defaults(run=command.run)
            command.options(own)
    return parser


def _add_check(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "files", nargs="+", metavar="FILE", help="a design file, .toml, or a folder of them"
    )
    _add_format(parser)
    parser.add_argument("--csv", metavar="OUT.csv", help="write a row for each design")
    parser.add_argument("--force", action="store_true", help="write over a file that exists")
    parser.add_argument(
        "-j",
        "--jobs",
        type=_processes,
        metavar="N",
        help="so many at a time; else all cores",
    )
    parser.add_argument(
        "--engineer", action="store_true", help="add utilization, clause, direction and factors"
    )
    parser.add_argument(
        "--numbers", action="store_true", help="what each check has and needs, gusts and pulls"
    )
    parser.add_argument(
        "--as-read", action="store_true", help="every size as it was read, and how to prove it"
    )
    parser.add_argument("--assumed", action="store_true", help="what was taken for granted")
    parser.add_argument(
        "--cautions", action="store_true", help="what to take care of, what was not looked at"
    )
    parser.add_argument("--all", action="store_true", help="all of these; each fault")


def _processes(text: str) -> int:
    """Return a number of processes. ArgumentTypeError where it is none."""
    if not text.isdecimal() or not 1 <= int(text[:6]) <= MOST_PROCESSES:
        raise argparse.ArgumentTypeError(f"a whole number from 1 to {MOST_PROCESSES}")
    return int(text)


def _add_format(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--format",
        choices=("text", "json"),
        default="text",
        help="text for people (default), json in SI units for programs",
    )


def _add_new(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "kind",
        nargs="?",
        metavar="KIND",
        help="tower, well, post, sign, arbor, wheel, cut-out, barn, mailbox, birdhouse, "
        "footbridge, swing, obelisk, planter, a-frame or 'crossed boards'; asked for if left out",
    )
    parser.add_argument("-o", "--output", metavar="FILE.toml", help="where to write it")
    parser.add_argument("--force", action="store_true", help="write over a file that exists")
    parser.add_argument("--defaults", action="store_true", help="ask nothing: take every default")
    parser.add_argument("--metric", action="store_true", help="metric sizes, lumber and sheets")


def _add_compare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument(
        "second", nargs="?", metavar="FILE2", help="another: what changed, and what it did"
    )
    _add_format(parser)


def _add_mend(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument(
        "--yes", action="store_true", help="put in all that is sure, without asking"
    )


def _add_draw(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument("--text", action="store_true", help="in characters, 80 columns wide")
    parser.add_argument(
        "-o", "--output", metavar="OUT.svg", help="a picture to scale: .svg, .png or .pdf"
    )
    _add_paper(parser)


def _add_sheet(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "files", nargs="+", metavar="FILE", help="a design file, .toml, or a folder of them"
    )
    parser.add_argument(
        "-o",
        "--output",
        metavar="OUT",
        help="where to write it: OUT.pdf, or a folder for many; left out: beside each design",
    )
    parser.add_argument(
        "--full", action="store_true", help="the whole calculation instead, step by step"
    )
    parser.add_argument(
        "--draft", action="store_true", help="of a piece that is not ready to sell, marked as such"
    )
    _add_paper(parser)


def _add_paper(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--paper", choices=("a4", "letter"), help="a4 for metric designs, letter for imperial ones"
    )
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


def _add_size(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", nargs="?", metavar="FILE", help="a design file, .toml")
    _add_format(parser)
    parser.add_argument(
        "--all", action="store_true", help="every way alone, gusts by foot and weight, joints"
    )
    parser.add_argument("--write", metavar="NEW.toml", help="write the design changed; never over")
    parser.add_argument(
        "--remedy",
        metavar="REMEDY",
        help="which: 'base width', 'ballast', 'anchors', 'guys', 'height' or 'wind'",
    )
    before = parser.add_argument_group("before there is a file")
    for option, example in (
        ("kind", "tower, well, post or wheel"),
        ("sides", "6"),
        ("height", "of its body: '6 ft'"),
        ("body", "its width at bottom and top: '18 in, 10 in'"),
        ("walls", "'3/4 plywood'"),
        ("foot", "the narrowest, and its lumber: '24 in, 2x6 flat'"),
        ("ground", "'wet lawn'"),
        ("exposure", "'open', 'houses and trees' or 'shore'"),
        ("wind", "a forecast gust: '58 mph'"),
    ):
        before.add_argument(f"--{option}", metavar="…", help=example)


def _add_schema(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "of",
        nargs="?",
        choices=("design", "result"),
        default="design",
        help="of the design file (default), or of what 'check --format json' prints",
    )


def _add_sweep(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument(
        "--vary",
        action="append",
        required=True,
        metavar="PART.KEY=A..B",
        help="a size, from and to: 'foot.across=18 in..36 in'; once or twice",
    )
    parser.add_argument(
        "--steps", type=_steps, default=7, metavar="N", help="so many values of each; 7 if not said"
    )
    _add_format(parser)
    parser.add_argument("--csv", metavar="OUT.csv", help="write a row for each size")
    parser.add_argument("-o", "--output", metavar="OUT.svg", help="a picture: .svg, .png or .pdf")
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


def _steps(text: str) -> int:
    """Return a number of steps. ArgumentTypeError where it is none."""
    if not text.isdecimal() or not 2 <= int(text[:6]) <= MOST_STEPS:
        raise argparse.ArgumentTypeError(f"a whole number from 2 to {MOST_STEPS}")
    return int(text)


def _add_fasteners(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "name", nargs="?", metavar="NAME", help="which: '8d common', 'lag screw', '#8'; all without"
    )
    parser.add_argument("--wood", metavar="NAME", help="a wood or panel: 'western redcedar'")
    parser.add_argument(
        "--side", metavar="…", default="3/4 in", help="how thick the board is that it fastens"
    )
    _add_format(parser)


def _add_cuts(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    _add_format(parser)
    parser.add_argument(
        "-o",
        "--output",
        metavar="OUT",
        help="write it: .pdf a page to tick off, .svg or .dxf full size",
    )
    parser.add_argument(
        "--stakes", action="store_true", help="where what holds it is set out, in place of the list"
    )
    parser.add_argument(
        "--count",
        type=_several,
        default=1,
        metavar="N",
        help="for so many of a kind",
    )
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


def _several(typed: str) -> int:
    """Return how many pieces are meant. ArgumentTypeError where that is no number of pieces."""
    if not (typed.isascii() and typed.isdigit() and 1 <= int(typed[:6]) <= MOST_PIECES):
        raise argparse.ArgumentTypeError(f"how many pieces, 1 to {MOST_PIECES}: --count 3")
    return int(typed[:6])


MOST_PIECES = 100
"""Of a kind, cut at once: beyond that the layout on sheets takes long."""


def _add_label(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "files", nargs="+", metavar="FILE", help="a design file, .toml, or a folder of them"
    )
    parser.add_argument(
        "--format",
        choices=("text", "csv", "json"),
        help="text to copy, csv a row each for a spreadsheet, json for programs; left out: as the "
        "name of OUT ends, else text",
    )
    parser.add_argument("-o", "--output", metavar="OUT", help="where to write it")
    parser.add_argument(
        "--draft", action="store_true", help="of a piece that is not ready to sell, marked as such"
    )
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


def _add_stale(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "printed",
        nargs="+",
        metavar="LABELS.csv",
        help="a table that 'label --format csv' wrote; or FILE.toml and, behind it, the "
        "fingerprint on its sheet",
    )
    _add_format(parser)


COMMANDS = {
    "new": _Command("a starting file, by questions", "tower -o light.toml", _add_new, "new"),
    "check": _Command(
        "the verdict on one design file or several", "light.toml --engineer", _add_check, "check"
    ),
    "mend": _Command(
        "put right what is surely meant in a design file, the old text kept beside it",
        "light.toml",
        _add_mend,
        "mend",
    ),
    "draw": _Command(
        "the drawing: elevation, plan, gusts by side", "light.toml -o light.svg", _add_draw, "draw"
    ),
    "size": _Command(
        "what holds a piece down, each way alone",
        "light.toml --write heavy.toml --remedy ballast",
        _add_size,
        "size",
    ),
    "sweep": _Command(
        "one design at many sizes: gusts, weight and word over one or two of them",
        "light.toml --vary 'foot.across=18 in..36 in'",
        _add_sweep,
        "sweep",
    ),
    "compare": _Command(
        "one piece by every book of wind, or two designs", "light.toml", _add_compare, "compare"
    ),
    "cuts": _Command(
        "what to saw and to buy for a piece, and where its stakes go",
        "light.toml --count 3 -o shop.pdf",
        _add_cuts,
        "cuts",
    ),
    "sheet": _Command(
        "the stability sheet on paper, for the buyer",
        "light.toml -o light.pdf",
        _add_sheet,
        "sheet",
    ),
    "label": _Command(
        "text for a listing, of one design or a folder",
        "my-designs -o labels.csv",
        _add_label,
        "label",
    ),
    "stale": _Command("which printed sheets no longer hold", "labels.csv", _add_stale, "stale"),
    "materials": _Command(
        "what each material's name means, with sources", "", _add_format, "listing", "materials"
    ),
    "grounds": _Command(
        "what each ground's name means, with sources",
        "--format json",
        _add_format,
        "listing",
        "grounds",
    ),
    "fasteners": _Command(
        "what a nail or screw holds in a wood",
        "'8d common' --wood 'western redcedar'",
        _add_fasteners,
        "fasteners",
    ),
    "schema": _Command(
        "what a design file may hold, or a result holds, as a JSON Schema",
        "design",
        _add_schema,
        "schema",
    ),
    "verify": _Command(
        "every published answer that ships, worked out again beside its print",
        "--format json",
        _add_format,
        "verify",
    ),
}
"""Every command, in the order in which help shows them."""
