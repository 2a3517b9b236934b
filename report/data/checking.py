"""The public check: a design in, its result out."""

from pathlib import Path

from ...checks.examination import examine
from ...checks.inputs import read
from ...design.model import Design
from .result import Result


def check(design: Design | str | Path) -> Result:
    """Return the result for a design, or for the design in a file.

    Raises DesignError with everything that is wrong with the file, or where the piece cannot
    stand at all.

    >>> result = yf.check("examples/light-tower.toml")
    >>> result.verdict.word
    'tie it down'
    >>> result.passes, result.needs_anchors
    (False, True)
    >>> [joint.name for joint in result.joints if joint.passes]
    ['tower to foot', 'gallery to tower', 'roof to eaves']
    >>> print(result.to_text().splitlines()[0].split("  ")[0])
    Light tower
    """
    return Result(examine(design if isinstance(design, Design) else read(design)))
