"""Anchors and guys that a design has besides those of the file that it was read from, as text."""

from collections.abc import Sequence
from math import degrees
from typing import Protocol

from ...design.model import Design
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ...units import plain
from .lines import KeyLine, block, text_line


class Writes(Protocol):
    """What writes a length as the file has it."""

    def length(self, metres: float) -> str:
        """Return a length."""
        ...


def added_holding(write: Writes, old: Design, new: Design) -> list[str]:
    """Return a table for each row of anchors and guys that stands behind the old ones."""
    anchors = new.several(AnchorRow)[len(old.several(AnchorRow)) :]
    guys = new.several(GuyRow)[len(old.several(GuyRow)) :]
    return [_anchor(write, row) for row in anchors] + [_guy(write, row) for row in guys]


def _anchor(write: Writes, row: AnchorRow) -> str:
    rows: list[KeyLine] = [text_line("name", row.name), text_line("kind", row.kind)]
    if row.where is not None:
        rows.append(text_line("where", row.where, "of the foot"))
        if row.inset > 0.0:
            rows.append(text_line("inset", write.length(row.inset), "from the foot's edge"))
    else:
        rows += [
            ("at", _lengths(write, row.at), "the middle of the circle that they stand on"),
            text_line("ring", write.length(row.ring or 0.0)),
            ("count", str(row.count), ""),
        ]
    return block("[[anchor]]", *rows)


def _guy(write: Writes, row: GuyRow) -> str:
    return block(
        "[[guy]]",
        text_line("name", row.name),
        text_line("line", row.line),
        text_line("anchor", row.anchor, "at the ground end of each"),
        text_line("height", write.length(row.height), "where it leaves the piece"),
        text_line("out", write.length(row.out), "from the middle, there"),
        text_line("radius", write.length(row.radius), "from the middle to the ground end"),
        ("count", str(row.count), ""),
        text_line(
            "start", f"{plain(degrees(row.start) % 360.0, 9)} deg", "of the first, from the right"
        ),
        ("at", _lengths(write, row.at), "the middle"),
    )


def _lengths(write: Writes, values: Sequence[float]) -> str:
    return "[" + ", ".join(f"'{write.length(value)}'" for value in values) + "]"
