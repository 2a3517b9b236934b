"""``yardfast cuts FILE``: what to saw and to buy; ``-o`` writes the full-size pattern."""

from argparse import Namespace

from ..checks.inputs import read
from ..design.cut_list import cut_list
from ..design.faults import DesignError
from ..design.structure import build_structure
from ..report.faults import fault_lines
from . import screen

SHOWN, WRONG = 0, 2


def run(arguments: Namespace) -> int:
    """Show the cut list of a file, or write its pattern; return 0, or 2 for wrong input."""
    if arguments.output is not None:
        from .pattern_file import write_pattern  # noqa: PLC0415 - the list does without

        return write_pattern(arguments)
    try:
        cuts = cut_list(build_structure(read(arguments.file)), arguments.count)
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    if arguments.format == "json":
        from ..report.cut_object import cut_object  # noqa: PLC0415 - text does without

        screen.show_json(cut_object(cuts))
    else:
        from ..report.cut_lines import cut_lines  # noqa: PLC0415 - JSON does without

        screen.show(cut_lines(cuts))
    return SHOWN
