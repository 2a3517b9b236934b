"""A short number by which an answer is known again: of the design, the tables and the version."""

import hashlib
from typing import cast

from ... import __version__, references
from ...design.model import Design
from ...units.frozen import values_by_name

LENGTH = 12


def fingerprint(design: Design) -> str:
    """Return 12 hexadecimal figures that change with a design, a table or the version.

    The parts count besides the text, since an outline may come from a file of its own.
    """
    head = f"{__version__}\0{references.digest()}\0{_written_out(design.parts)}\0".encode()
    return _figures(head + _text(design))


def design_mark(design: Design) -> str:
    """Return figures that change with the design alone."""
    return _figures(f"{_written_out(design.parts)}\0".encode() + _text(design))


def tables_mark() -> str:
    """Return figures that change with the tables and the version alone."""
    return _figures(f"{__version__}\0{references.digest()}".encode())


def _text(design: Design) -> bytes:
    return design.text.replace("\r\n", "\n").encode("utf-8", "surrogatepass")


def _figures(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:LENGTH]


def _written_out(value: object) -> str:
    """Return a value in characters that are the same in every run: sets have no order of their own.

    Parts and their shapes have fields of text, numbers, None, and tuples and sets of these.
    """
    if inside := values_by_name(value):
        named = (f"{name}={_written_out(each)}" for name, each in inside.items())
        return f"{type(value).__name__}({', '.join(named)})"
    if isinstance(value, tuple):
        return f"({', '.join(map(_written_out, cast(tuple[object, ...], value)))})"
    if isinstance(value, frozenset):
        return f"{{{', '.join(sorted(map(_written_out, cast(frozenset[object], value))))}}}"
    return repr(value)
