"""The public check: a design in, its result out."""

from pathlib import Path

from ..checks.examination import examine
from ..checks.inputs import read
from ..design.model import Design
from .result import Result


def check(design: Design | str | Path) -> Result:
    """Return the result for a design, or for the design in a file.

    Raises DesignError with everything that is wrong with the file, or where the piece cannot
    stand at all.
    """
    return Result(examine(design if isinstance(design, Design) else read(design)))
