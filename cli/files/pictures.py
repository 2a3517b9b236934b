"""A drawing as the ending of its file's name asks: .svg as it is, .png and .pdf set."""

from pathlib import Path

from ...report.drawings.paper import Paper
from ...report.templates.typeset import typeset

ENDINGS = (".svg", ".png", ".pdf")


def picture_file(paper: Paper, title: str, name: str) -> bytes:
    """Return the content of a picture file. NoTypesetterError where none is installed."""
    svg, ending = paper.svg(title), Path(name).suffix.casefold()
    if ending == ".svg":
        return svg.encode("utf-8")
    data = {"title": title, "width": paper.width, "height": paper.height, "svg": svg}
    return typeset("drawing", data, "png" if ending == ".png" else "pdf")
