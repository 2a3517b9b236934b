"""Reading a design file with the tables of every room, so that all its faults come at once."""

from pathlib import Path

from ..design.file.document import read_design, read_design_text, scanned_design
from ..design.file.record_table import RECORD
from ..design.model import Design
from ..design.reader.scan import Scan
from ..loads.load_table import LOAD
from ..loads.site_table import SITE
from ..statics.tables.anchor_table import ANCHOR, BALLAST, GUY
from ..statics.tables.joint_table import JOINT
from ..statics.tables.seam_table import SEAM
from .odds_table import ODDS

SPECS = (SITE, LOAD, ANCHOR, BALLAST, GUY, JOINT, SEAM, RECORD, ODDS)
"""The tables beside ``[design]`` and ``[[part]]``, each from the room that owns it."""


def read(path: str | Path) -> Design:
    """Return the design in a file. DesignError holds everything that is wrong with it.

    >>> yf.read("examples/light-tower.toml")
    <Design 'Light tower': 8 parts, examples/light-tower.toml>
    """
    return read_design(path, SPECS)


def read_text(text: str, file: str = "") -> Design:
    """Return the design in a text; ``file`` is its name in faults. Raises as ``read``."""
    return read_design_text(text, file, SPECS)


def scanned(text: str) -> Scan:
    """Return where each table, key and value stand in a text, whatever is wrong with it."""
    return scanned_design(text, SPECS)
