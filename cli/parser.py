"""What can be typed: commands, options, help with an example each. Imports nothing heavy."""

import argparse
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from .. import __version__

MENU = f"""\
yardfast {__version__}: will it stand in the wind, and what holds it down?

  yardfast new                 a starting file, by questions
  yardfast check FILE.toml     the verdict on a design file
  yardfast check *.toml        several at a glance
  yardfast draw FILE --text    what was read, as a small drawing
  yardfast size FILE.toml      what holds it: foot, weight, anchors, height
  yardfast cuts FILE.toml      what to saw: panels, bevels, lumber, sheets
  yardfast sheet FILE.toml     the stability sheet on paper, for a buyer
  yardfast label FILE.toml     text for a listing
  yardfast materials           what a material's name means
  yardfast grounds             what a ground's name means
  yardfast fasteners           what a nail or screw holds in a wood
  yardfast COMMAND --help      more, with an example
"""

COMMANDS = (
    "new",
    "check",
    "draw",
    "size",
    "cuts",
    "sheet",
    "label",
    "stale",
    "materials",
    "grounds",
    "fasteners",
)


class Arguments(argparse.Namespace):
    """What was typed, and the command that it asks for."""

    run: Callable[["Arguments"], int]


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
    return _parser().parse_args(arguments, namespace=Arguments())


def _unknown(word: str) -> str:
    """Return the answer to a command that there is not: the nearest, or what a file needs."""
    from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

    shown = "".join(c if c.isprintable() else "?" for c in word[:60])
    if word.endswith(".toml") or Path(word[:200].replace("\0", "")).is_file():
        return f"yardfast: a file needs a command before it: yardfast check {shown}"
    near = get_close_matches(word[:60].casefold(), COMMANDS, n=1, cutoff=0.5)
    hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(COMMANDS)}"
    return f"yardfast: there is no command '{shown}': {hint}"


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="yardfast",
        description="Works out whether a yard piece stands in the wind, and what holds it down.",
        epilog="Example:  yardfast check harbour-light.toml",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"yardfast {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    add = commands.add_parser
    _add_new(_command(add, "new", "a starting file, by questions", _new))
    _add_check(_command(add, "check", "the verdict on one design file or several", _check))
    _add_size(_command(add, "size", "what holds a piece down, each way alone", _size))
    _add_draw(_command(add, "draw", "the drawing: elevation, plan, gusts by side", _draw))
    _add_sheet(_command(add, "sheet", "the stability sheet on paper, for the buyer", _sheet))
    _add_cuts(_command(add, "cuts", "what to saw and to buy for a piece", _cuts))
    _add_label(_command(add, "label", "text for a listing, of one design or a folder", _label))
    _add_stale(_command(add, "stale", "which printed sheets no longer hold", _stale))
    for name, what in (("materials", _materials), ("grounds", _grounds)):
        each = _command(add, name, f"what each {name[:-1]}'s name means, with sources", what)
        _add_format(each)
    _add_fasteners(_command(add, "fasteners", "what a nail or screw holds in a wood", _fasteners))
    return parser


_EXAMPLES = {
    "new": "yardfast new tower -o light.toml",
    "check": "yardfast check light.toml --engineer",
    "draw": "yardfast draw light.toml -o light.svg",
    "size": "yardfast size light.toml --write heavy.toml --remedy ballast",
    "cuts": "yardfast cuts light.toml -o pattern.svg",
    "label": "yardfast label my-designs -o labels.csv",
    "stale": "yardfast stale labels.csv",
    "sheet": "yardfast sheet light.toml -o light.pdf",
    "materials": "yardfast materials",
    "grounds": "yardfast grounds --format json",
    "fasteners": "yardfast fasteners '8d common' --wood 'western redcedar'",
}


def _command(
    add: Callable[..., argparse.ArgumentParser],
    name: str,
    help_: str,
    run: Callable[[Arguments], int],
) -> argparse.ArgumentParser:
    parser = add(
        name,
        help=help_,
        description=f"{help_[0].upper()}{help_[1:]}.",
        epilog=f"Example:  {_EXAMPLES[name]}",
        allow_abbrev=False,
    )
    parser.set_defaults(run=run)
    return parser


def _add_check(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("files", nargs="+", metavar="FILE", help="a design file, .toml")
    _add_format(parser)
    parser.add_argument(
        "--engineer", action="store_true", help="add utilization, clause, direction and factors"
    )
    parser.add_argument("--assumptions", action="store_true", help="every assumption in full")
    parser.add_argument("--cautions", action="store_true", help="every caution in full")


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
        help="tower, well, post, sign, arbor, wheel, cut-out, barn, mailbox, birdhouse, footbridge "
        "or swing; asked for where it is left out",
    )
    parser.add_argument("-o", "--output", metavar="FILE.toml", help="where to write it")
    parser.add_argument("--force", action="store_true", help="write over a file that exists")
    parser.add_argument("--defaults", action="store_true", help="ask nothing: take every default")


def _add_draw(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument("--text", action="store_true", help="in characters, 80 columns wide")
    parser.add_argument(
        "-o", "--output", metavar="OUT.svg", help="a picture to scale: .svg, .png or .pdf"
    )
    _add_paper(parser)


def _add_sheet(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a design file, .toml")
    parser.add_argument(
        "-o", "--output", metavar="OUT.pdf", required=True, help="where to write it"
    )
    parser.add_argument(
        "--full", action="store_true", help="the whole calculation instead, step by step"
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
        "-o", "--output", metavar="OUT", help="write the full-size pattern: .svg or .dxf"
    )
    parser.add_argument("--force", action="store_true", help="write over a file that exists")


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


def _new(arguments: Arguments) -> int:
    from .new import run  # noqa: PLC0415 - each start pays only for what it runs

    return run(arguments)


def _check(arguments: Arguments) -> int:
    from .check import run  # noqa: PLC0415

    return run(arguments)


def _draw(arguments: Arguments) -> int:
    from .draw import run  # noqa: PLC0415

    return run(arguments)


def _size(arguments: Arguments) -> int:
    from .size import run  # noqa: PLC0415

    return run(arguments)


def _cuts(arguments: Arguments) -> int:
    from .cuts import run  # noqa: PLC0415

    return run(arguments)


def _label(arguments: Arguments) -> int:
    from .label import run  # noqa: PLC0415

    return run(arguments)


def _stale(arguments: Arguments) -> int:
    from .stale import run  # noqa: PLC0415

    return run(arguments)


def _sheet(arguments: Arguments) -> int:
    from .sheet import run  # noqa: PLC0415

    return run(arguments)


def _materials(arguments: Arguments) -> int:
    from .listing import materials  # noqa: PLC0415

    return materials(arguments)


def _grounds(arguments: Arguments) -> int:
    from .listing import grounds  # noqa: PLC0415

    return grounds(arguments)


def _fasteners(arguments: Arguments) -> int:
    from .fasteners import run  # noqa: PLC0415

    return run(arguments)
