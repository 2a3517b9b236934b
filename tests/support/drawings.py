"""Drawings for cut-outs, and the part that is sawn to one."""

from pathlib import Path

from sample_file import part_text

from yardfast.checks.inputs import read
from yardfast.design.faults import DesignError, Fault
from yardfast.design.model import Design
from yardfast.design.shapes.cutout import Cutout

SPACE = "xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'"


def drawing(inside: str, size: str = "width='200' height='100'") -> str:
    """Return a drawing with these elements in it."""
    return f"<svg {SPACE} {size}>{inside}</svg>"


def written(folder: Path, drawn: str, keys: str = "height='20 in'\nthickness='1/2 in'") -> Path:
    """Write a design with one cut-out, and its drawing beside it; return the design's path."""
    (folder / "heron.svg").write_text(drawn, encoding="utf-8")
    file = folder / "heron.toml"
    text = part_text(f"shape='cutout'\noutline='heron.svg'\n{keys}")
    file.write_text(text, encoding="utf-8")
    return file


def sawn(folder: Path, drawn: str, keys: str = "height='20 in'\nthickness='1/2 in'") -> Cutout:
    """Return the board that is sawn to a drawing."""
    shape = sawn_design(folder, drawn, keys).parts[0].shape
    assert isinstance(shape, Cutout)
    return shape


def sawn_design(
    folder: Path, drawn: str, keys: str = "height='20 in'\nthickness='1/2 in'"
) -> Design:
    """Return the design with one board that is sawn to a drawing."""
    return read(written(folder, drawn, keys))


def drawn_faults(
    folder: Path, drawn: str, keys: str = "height='20 in'\nthickness='1/2 in'"
) -> tuple[Fault, ...]:
    """Return everything that is wrong with a design of one sawn board; nothing if it reads."""
    try:
        read(written(folder, drawn, keys))
    except DesignError as error:
        return error.faults
    return ()
