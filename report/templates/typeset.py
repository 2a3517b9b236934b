"""Setting pages: data goes to a template as JSON, so that nobody's words are taken for markup."""

import json
from pathlib import Path
from typing import Any, Literal, cast

PAPER_SIZES = {"a4": (210.0, 297.0, "a4"), "letter": (215.9, 279.4, "us-letter")}
"""Width and height in mm, and the typesetter's name (ISO 216; ANSI/ASME Y14.1)."""

_INSTALL = '.venv/bin/pip install -e ".[sheet]"'
_FOLDER = Path(__file__).parent


class NoTypesetterError(Exception):
    """The typesetter is not installed; the text says how to get it, and what does without."""

    def __init__(self, picture: bool) -> None:
        without = ". An .svg needs nothing more" if picture else ""
        super().__init__(
            f"paper needs the typesetter 'typst'; install it with  {_INSTALL}{without}"
        )


def typeset(
    template: str, data: Any, kind: Literal["pdf", "png"] = "pdf", ppi: float = 200.0
) -> bytes:
    """Return a page of a template of this room, filled with ``data``, as PDF, or PNG of one page.

    The same data give the same bytes: no date, no fonts of the machine, no file but the template.
    NoTypesetterError where the extra is not installed.
    """
    try:
        import typst  # noqa: PLC0415 - only paper needs it
    except ImportError:
        raise NoTypesetterError(picture=template == "drawing") from None
    found = typst.compile(
        str(_FOLDER / f"{template}.typ"),
        root=str(_FOLDER),
        format=kind,
        ppi=ppi,
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(data, ensure_ascii=True, allow_nan=False)},
    )
    return cast("bytes", found[0] if isinstance(found, list) else found)
