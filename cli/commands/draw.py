"""``yardfast draw FILE``: the drawing of a piece, as a picture file or in characters."""

from argparse import Namespace

from ...checks.examination import examine
from ...design.model import Design
from ...design.structure import build_structure
from ...report.drawings.paper import Paper
from ...report.wording.faults import clean
from .. import screen
from ..files.designs import read_with_shop
from ..files.own_files import own_files
from ..files.pictures import ENDINGS, picture_file
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError

DRAWN = 0


def run(arguments: Namespace) -> int:
    """Draw the file named; return 0. Refuses what is wrong and what cannot be written."""
    name: str | None = arguments.output
    if name is None and not arguments.text:
        file = clean(arguments.file)
        raise RefusedError(
            f"as a picture, yardfast draw {file} -o OUT.svg, or in characters, yardfast draw "
            f"{file} --text"
        )
    own = own_files([arguments.file])
    if name is not None:
        may_write(name, arguments.force, own, ENDINGS)
    design = read_with_shop(arguments.file)
    if arguments.text:
        from ...report.drawings.sketch import sketch  # noqa: PLC0415 - a picture does without

        screen.show(sketch(build_structure(design)))
    if name is not None:
        write_or_refuse(
            name,
            picture_file(_drawn(design, arguments.paper), design.name, name),
            arguments.force,
            own,
        )
        print(f"{clean(name)} is written.")
    return DRAWN


def _drawn(design: Design, paper: str | None) -> Paper:
    from ...report.drawings.drawing import drawing  # noqa: PLC0415 - characters do without

    return drawing(examine(design), paper or ("a4" if design.units == "metric" else "letter"))
