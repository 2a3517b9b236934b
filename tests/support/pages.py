"""What a PDF says and in which size of type, read by a library that had no part in making it."""

import io
import math

import pypdf


def pages(pdf):
    return pypdf.PdfReader(io.BytesIO(pdf)).pages


def words(pdf):
    """Return all text, its line breaks and runs of spaces as single spaces."""
    return " ".join(" ".join(page.extract_text() for page in pages(pdf)).split())


def sizes_of_type(pdf):
    """Return the height of type in points of every piece of text as it lies on the page."""
    found = {}

    def visit(text, across, along, _font, size):
        if text.strip():
            shrunk = abs(along[0] * along[3] - along[1] * along[2])
            shrunk *= abs(across[0] * across[3] - across[1] * across[2])
            found.setdefault(text.strip(), size * math.sqrt(shrunk))

    for page in pages(pdf):
        page.extract_text(visitor_text=visit)
    return found
