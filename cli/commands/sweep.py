"""``yardfast sweep FILE --vary 'foot.across=18 in..36 in'``: one design at many sizes."""

from argparse import Namespace

from ...checks.inputs import read
from ...checks.sweep import sweep
from ...design.faults import DesignError
from ...report.screens.sweep_words import sweep_cells, sweep_lines, sweep_object
from ...report.wording.cells import as_table
from ...report.wording.faults import clean
from .. import screen
from ..files.own_files import own_files
from ..files.pictures import ENDINGS, picture_file
from ..files.varied import VaryError, varied_sizes
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError

_DONE = 0


def run(arguments: Namespace) -> int:
    """Examine a design at many sizes; return 0. Refuses what is wrong of the file or is typed."""
    own, force = own_files([arguments.file]), arguments.force
    try:
        sizes = varied_sizes(arguments.vary, arguments.steps)
    except VaryError as wrong:
        raise RefusedError(clean(str(wrong))) from None
    if arguments.output is not None:
        may_write(arguments.output, force, own, ENDINGS)
    if arguments.csv is not None:
        may_write(arguments.csv, force, own)
    design = read(arguments.file)
    swept = tuple(sweep(design, sizes))
    faulty = [one.found for one in swept if isinstance(one.found, tuple)]
    if len(faulty) == len(swept):
        raise DesignError(faulty[0])
    if arguments.format == "json":
        screen.show_json(sweep_object(swept, sizes))
    else:
        screen.show(sweep_lines(swept, sizes, design.units == "metric"))
    if arguments.csv is not None:
        cells = sweep_cells(swept, sizes)
        write_or_refuse(arguments.csv, as_table(list(cells[0]), cells), force, own)
    if arguments.output is not None:
        from ...report.drawings.drawing_sweep import drawing_sweep  # noqa: PLC0415 - only for a picture

        drawn = picture_file(drawing_sweep(design, swept, sizes), design.name, arguments.output)
        write_or_refuse(arguments.output, drawn, force, own)
    return _DONE
