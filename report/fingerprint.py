"""A short number by which an answer is known again: of the design, the tables and the version."""

import hashlib

from .. import __version__, references
from ..design.model import Design

LENGTH = 12


def fingerprint(design: Design) -> str:
    """Return 12 hexadecimal figures that change with a design, a table or the version.

    The parts count besides the text, since an outline may come from a file of its own.
    """
    head = f"{__version__}\0{references.digest()}\0{design.parts!r}\0".encode()
    return _figures(head + _text(design))


def design_mark(design: Design) -> str:
    """Return figures that change with the design alone."""
    return _figures(f"{design.parts!r}\0".encode() + _text(design))


def tables_mark() -> str:
    """Return figures that change with the tables and the version alone."""
    return _figures(f"{__version__}\0{references.digest()}".encode())


def _text(design: Design) -> bytes:
    return design.text.replace("\r\n", "\n").encode("utf-8", "surrogatepass")


def _figures(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:LENGTH]
