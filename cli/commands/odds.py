"""``yardfast odds FILE``: how likely a piece tips, slides or asks too much of a joint."""

from argparse import Namespace

from ...checks.odds.odds import odds
from ...report.data.odds_record import odds_object
from ...report.told.odds_words import input_lines, odds_lines
from .. import screen
from ..files.designs import read_with_shop

_DONE = 0


def run(arguments: Namespace) -> int:
    """Tell the odds; return 0. Whether it stands is for ``check`` to say."""
    design = read_with_shop(arguments.file)
    found, told = odds(design, arguments.samples, arguments.seed, arguments.years)
    if arguments.format == "json":
        screen.show_json(odds_object(found.design, told))
        return _DONE
    lines = odds_lines(found.design, told, planted=found.posts is not None)
    screen.show([*lines, *input_lines(told)] if arguments.inputs else lines)
    return _DONE
