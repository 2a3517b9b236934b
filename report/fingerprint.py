"""A short number by which an answer is known again: of the design, the tables and the version."""

import hashlib

from .. import __version__, references
from ..design.model import Design

LENGTH = 12


def fingerprint(design: Design) -> str:
    """Return 12 hexadecimal figures that change with a design, a table or the version.

    The parts count besides the text, since an outline may come from a file of its own.
    """
    text = design.text.replace("\r\n", "\n").encode("utf-8", "surrogatepass")
    head = f"{__version__}\0{references.digest()}\0{design.parts!r}\0".encode()
    total = hashlib.sha256(head + text)
    return total.hexdigest()[:LENGTH]
