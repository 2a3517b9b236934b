"""``yardfast check FILE...``: read, examine, report; the exit status is the worst of all."""

import os
from argparse import Namespace

from ..checks.examination import examine
from ..design.faults import DesignError
from ..report.faults import fault_lines
from . import screen
from .designs import read

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..report.sections import Shown

PASSES, FAILS, WRONG = 0, 1, 2


def run(arguments: Namespace) -> int:
    """Check the files named; return 0 all passes, 1 something does not, 2 a file is wrong."""
    files: list[str] = arguments.files
    several = len(files) > 1 or arguments.csv is not None or os.path.isdir(files[0])
    if several:
        from . import catalogue  # noqa: PLC0415 - one file does without
        from .design_files import designs_beneath  # noqa: PLC0415

        files, faults = designs_beneath(files)
        if faults:
            screen.complain(fault_lines(faults))
        status = catalogue.run(arguments, files) if files else WRONG
        return WRONG if faults and status < WRONG else status
    try:
        found = examine(read(files[0]))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults, every=arguments.all))
        return WRONG
    if arguments.format == "json":
        from ..report.result import Result  # noqa: PLC0415 - text does without

        screen.show_json(Result(found).to_dict())
    else:
        from ..report.sections import shown_of  # noqa: PLC0415 - JSON does without

        screen.show(shown_of(found, shown(arguments), screen.columns()))
    return PASSES if found.passes else FAILS


def shown(arguments: Namespace) -> "Shown":
    """Return which sections are asked for beside the first screen."""
    from ..report.sections import Shown  # noqa: PLC0415 - JSON does without

    return Shown(
        numbers=arguments.numbers,
        as_read=arguments.as_read,
        assumed=arguments.assumed,
        cautions=arguments.cautions,
        everything=arguments.all,
        engineer=arguments.engineer,
    )
