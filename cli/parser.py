"""What can be typed: commands, options, help with an example each. Imports nothing heavy."""

import argparse
import sys
from collections.abc import Sequence
from functools import partial
from pathlib import Path

from .. import __version__
from .command_table import COMMANDS
from .options import Arguments

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
