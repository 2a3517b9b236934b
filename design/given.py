"""What a design's text says in so many words, to tell a default from a value that was given."""

import tomllib
from collections.abc import Mapping
from typing import Any, cast

from .model import Design


def given_parts(design: Design) -> tuple[Mapping[str, Any], ...]:
    """Return each part's keys as written, in the order of the design's parts.

    Empty mappings where the design came without its text.
    """
    try:
        data = tomllib.loads(design.text)
    except ValueError:
        data = {}
    rows = data.get("part", [])
    found = cast("list[dict[str, Any]]", rows if isinstance(rows, list) else [])
    if len(found) != len(design.parts):
        return tuple({} for _ in design.parts)
    return tuple(found)
