"""``yardfast check FILE...``: read, examine, report; the exit status is the worst of all."""

import os
from argparse import Namespace
from typing import Any

from ...checks.examination import Examination, examine
from ...design.faults import DesignError
from ...report.wording.faults import fault_lines
from ...report.wording.lines import Line
from .. import screen
from ..files.designs import read_with_shop
from ..refused import RefusedError

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...report.screens.sections import Shown

_PASSES, _FAILS, _WRONG = 0, 1, 2


def run(arguments: Namespace) -> int:
    """Check the files named; return 0 all passes, 1 something does not, 2 a file is wrong."""
    files: list[str] = arguments.files
    several = len(files) > 1 or arguments.csv is not None or os.path.isdir(files[0])
    if several and arguments.explain:
        raise RefusedError("--explain is of one design: name its file alone", "")
    if several:
        from ..files.design_files import designs_beneath  # noqa: PLC0415
        from . import catalogue  # noqa: PLC0415 - one file does without

        files, faults = designs_beneath(files)
        if faults:
            screen.complain(fault_lines(faults))
        status = catalogue.run(arguments, files) if files else _WRONG
        return _WRONG if faults and status < _WRONG else status
    try:
        found = examine(read_with_shop(files[0]))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults, every=arguments.all))
        return _WRONG
    if arguments.format == "json":
        from ...report.data.result import Result  # noqa: PLC0415 - text does without

        said = {"explained": _explained(found, arguments)} if arguments.explain else {}
        screen.show_json({**Result(found).to_dict(), **said})
    elif arguments.explain:
        screen.show(_explained_lines(found, arguments))
    else:
        from ...report.screens.sections import shown_of  # noqa: PLC0415 - JSON does without

        screen.show(shown_of(found, shown_sections(arguments), screen.screen_columns()))
    return _PASSES if found.passes else _FAILS


def _explained(found: Examination, arguments: Namespace) -> list[dict[str, Any]]:
    """Return the checks that are asked for, explained. RefusedError: there is none of a name."""
    from ...report.calculation.explained import NoCheckError, explained_object  # noqa: PLC0415 - seldom asked

    try:
        return [explained_object(found, name) for name in arguments.explain]
    except NoCheckError as wrong:
        raise RefusedError(str(wrong), "") from None


def _explained_lines(found: Examination, arguments: Namespace) -> list[Line]:
    from ...report.calculation.explained import NoCheckError, explained  # noqa: PLC0415 - seldom asked

    try:
        each = [explained(found, name) for name in arguments.explain]
    except NoCheckError as wrong:
        raise RefusedError(str(wrong), "") from None
    return [line for lines in each for line in (*lines, Line(""))][:-1]


def shown_sections(arguments: Namespace) -> "Shown":
    """Return which sections are asked for beside the first screen."""
    from ...report.screens.sections import Shown  # noqa: PLC0415 - JSON does without

    return Shown(
        numbers=arguments.numbers,
        as_read=arguments.as_read,
        assumed=arguments.assumed,
        cautions=arguments.cautions,
        everything=arguments.all,
        engineer=arguments.engineer,
    )
