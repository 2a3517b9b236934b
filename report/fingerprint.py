"""A short number by which an answer is known again: of the design, the tables and the version."""

import hashlib

from .. import __version__, references
from ..design.model import Design

LENGTH = 12


def fingerprint(design: Design) -> str:
    """Return 12 hexadecimal figures that change with the design's text, a table or the version."""
    text = design.text.replace("\r\n", "\n").encode("utf-8", "surrogatepass")
    total = hashlib.sha256(f"{__version__}\0{references.digest()}\0".encode() + text)
    return total.hexdigest()[:LENGTH]
