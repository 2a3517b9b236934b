"""The pattern as a DXF drawing in millimetres, by the library ezdxf."""

from io import StringIO
from typing import Any

from .faults import clean
from .pattern import TEXT, Pattern, Placed

LAYERS = {"CUT": 7, "INNER_FACE": 8, "TEXT": 3}
"""Layers and their colours: what is sawn, the face beneath, the words."""


def pattern_dxf(pattern: Pattern) -> str:
    """Return the text of a DXF file. ImportError where the library is missing."""
    import ezdxf  # noqa: PLC0415 - an extra, and only where a pattern is written
    from ezdxf import units  # noqa: PLC0415

    document: Any = ezdxf.new("R2010", setup=["linetypes"])  # pyright: ignore[reportPrivateImportUsage]
    document.units = units.MM
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
    stream = StringIO()
    document.write(stream)
    return stream.getvalue()


def _draw(space: Any, placed: Placed) -> None:
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
