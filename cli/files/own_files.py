"""The files that a command reads: it never writes over one of them, whatever name leads there."""

import tomllib
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, cast

from ...design.faults import DesignError
from ...design.reader.file_text import text_in
from ...design.reader.scan import seen
from ...report.printed.shop import shop_file


def own_files(designs: Sequence[str]) -> tuple[Path, ...]:
    """Return the design files named, the drawings that they name, and the shop's file beside."""
    found: dict[Path, None] = {}
    for name in designs:
        found[Path(name)] = None
        found.update((Path(name).parent / drawing, None) for drawing in _drawings(name))
        shop = shop_file(name)
        if shop is not None:
            found[shop] = None
    return tuple(found)


def _drawings(name: str) -> Iterator[str]:
    """Yield the drawings that a design file names; none where it cannot be read at all."""
    try:
        data = tomllib.loads(seen(text_in(name, "a design file")).replace("\u00a0", " "))
    except (DesignError, ValueError, RecursionError):
        return
    parts: Any = data.get("part")
    for part in cast("list[object]", parts) if isinstance(parts, list) else []:
        outline = cast("dict[str, object]", part).get("outline") if isinstance(part, dict) else None
        if isinstance(outline, str):
            yield outline
