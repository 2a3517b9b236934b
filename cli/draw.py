"""``yardfast draw FILE --text``: what was read, as a small drawing in characters."""

import sys
from argparse import Namespace

from ..checks.inputs import read
from ..design.faults import DesignError
from ..design.structure import build_structure
from ..report.faults import clean, fault_lines
from ..report.sketch import sketch
from . import screen

DRAWN, WRONG = 0, 2


def run(arguments: Namespace) -> int:
    """Draw the file named; return 0, or 2 where it is wrong or a picture file is asked for."""
    if arguments.output is not None or not arguments.text:
        print(
            "yardfast draw: a picture file comes later; "
            f"yardfast draw {clean(arguments.file)} --text  draws it in characters.",
            file=sys.stderr,
        )
        return WRONG
    try:
        lines = sketch(build_structure(read(arguments.file)))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    screen.show(lines)
    return DRAWN
