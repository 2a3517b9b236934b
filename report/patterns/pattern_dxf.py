"""The pattern as a DXF drawing in millimetres, by the library ezdxf."""

from configparser import Error as ConfigError
from errno import EINVAL
from importlib import import_module
from io import StringIO
from typing import Any

from ..wording.faults import clean
from .pattern import TEXT, Pattern, PlacedFigure

LAYERS = {"CUT": 7, "INNER_FACE": 8, "TEXT": 3}
"""Layers and their colours: what is sawn, the face beneath, the words."""


def pattern_dxf(pattern: Pattern) -> str:
    """Return the text of a DXF file, the same for the same pattern.

    ImportError where the library is missing.
    """
    ezdxf = _library()
    document: Any = ezdxf.new("R2010", setup=["linetypes"])
    document.units = ezdxf.units.MM
    for name, colour in LAYERS.items():
        document.layers.add(name, color=colour)
    space: Any = document.modelspace()
    x, y, length = pattern.bar
    for k, words in enumerate(pattern.title):
        _write(space, words, x, pattern.height - 1.5 * TEXT * (k + 1))
    for start, end in (
        ((x, y), (x + length, y)),
        ((x, y - 3.0), (x, y + 3.0)),
        ((x + length, y - 3.0), (x + length, y + 3.0)),
    ):
        space.add_line(start, end, dxfattribs={"layer": "TEXT"})
    for placed in pattern.placed:
        _draw(space, placed)
    for kind in sorted(document.entitydb.dxf_types_in_use()):  # else in the order of a set
        document.classes.add_class(kind)
    stream = StringIO()
    document.write(stream)
    return stream.getvalue()


def _library() -> Any:
    """Return the drawing library without what a settings file in the present folder asks of it.

    It reads one when it is imported; a date and a number drawn by lot in each file are left out.
    """
    try:
        library: Any = import_module("ezdxf")  # an extra, and only where a pattern is written
    except (ConfigError, SystemExit):  # a settings file that is none
        message = "the drawing library cannot read its settings file ezdxf.ini"
        raise OSError(EINVAL, f"{message}: take it out of this folder", "ezdxf.ini") from None
    library.options.reset()
    library.options.write_fixed_meta_data_for_testing = True
    return library


def _draw(space: Any, placed: PlacedFigure) -> None:
    figure = placed.figure
    inner = {"layer": "INNER_FACE", "linetype": "DASHED"}
    for points, attributes in (
        (figure.outline, {"layer": "CUT"}),
        (figure.inner, inner),
        *((hole, {"layer": "CUT"}) for hole in figure.holes),
    ):
        if len(points):
            moved = [(placed.x + float(x), placed.y + float(y)) for x, y in points]
            space.add_lwpolyline(moved, close=True, dxfattribs=attributes)
    for x, y, radius in figure.circles:
        centre = (placed.x + x, placed.y + y)
        space.add_circle(centre, radius, dxfattribs={"layer": "CUT"})
    for k, words in enumerate(figure.label):
        _write(space, words, placed.x, placed.y - 1.5 * TEXT * (k + 1))


def _write(space: Any, words: str, x: float, y: float) -> None:
    """Write words as they are: a caret and a doubled percent sign are codes in this format."""
    plain = clean(words).replace("^", "^ ").replace("%%", "% %")
    text = space.add_text(plain, height=TEXT, dxfattribs={"layer": "TEXT"})
    text.set_placement((x, y))
