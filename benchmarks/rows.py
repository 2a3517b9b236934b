"""How well the rows are known that answers rest on: counts by confidence, read and unread.

A stand-in for the loader notes each row of which a value is taken while every example is checked,
sized, drawn, cut and labelled, everything is listed, and the public calls are made. To look for a
row by its first column is not to read it; a table that code looks through by other columns counts
as read whole. What only other designs ask for (a named rope, a bag of sand) counts as unread.

    python benchmarks/rows.py             the counts
    python benchmarks/rows.py --unread    tables of which rows are unread
    python benchmarks/rows.py --memory    rows from memory that are read
"""

import contextlib
import io
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import yardfast as yf
from yardfast import references
from yardfast.cli import main
from yardfast.references.table import Row, Table

EXAMPLES = sorted((Path(__file__).parents[1] / "examples").glob("*.toml"))
_ASKING = {"source", "confidence", "confidence_note", "note"}
_read: set[tuple[str, int]] = set()
_watched: dict[str, Table] = {}
_whole = references.table


class Watched(dict[str, str]):
    """A row that notes when a value of it is taken."""

    def __init__(self, row: Row, table: str, place: int, key: str) -> None:
        super().__init__(row)
        self.about, self.key = (table, place), key

    def __getitem__(self, column: str) -> str:
        if column != self.key and column not in _ASKING:
            _read.add(self.about)
        return super().__getitem__(column)

    def get(self, column: str, default: Any = None) -> Any:
        """Return a value like any other that is taken."""
        return self[column] if column in self.keys() else default


class WatchedTable(Table):
    """A table in which looking for a row is not reading the others."""

    def where(self, column: str, value: str) -> tuple[Row, ...]:
        """Return the rows whose ``column`` holds ``value``, without reading any."""
        return tuple(row for row in self.rows if dict.get(row, column) == value)  # type: ignore[arg-type]


def watch(name: str) -> Table:
    """Return a table whose rows note what is read of them."""
    if name not in _watched:
        plain = _whole(name)
        key = plain.columns[0]
        rows = tuple(Watched(row, name, i, key) for i, row in enumerate(plain.rows))
        _watched[name] = WatchedTable(name, plain.columns, rows)
    return _watched[name]


def commands(folder: str) -> Iterator[list[str]]:
    """Yield the commands that ask for the most; what they write goes into ``folder``."""
    for file in EXAMPLES:
        for more in ([], ["--format", "json"]):
            yield ["check", str(file), *more]
            yield ["size", str(file), *more]
        yield ["cuts", str(file), "--format", "json"]
        yield ["label", str(file)]
        yield ["compare", str(file)]
        yield ["draw", str(file), "-o", f"{folder}/{file.stem}.svg"]
    for kind in ("materials", "grounds", "fasteners"):
        yield [kind]
        yield [kind, "--format", "json"]
    yield ["fasteners", "--wood", "southern pine"]


def run() -> None:
    """Run all of it with the loader replaced, its output thrown away."""
    for module in [each for name, each in sys.modules.items() if name.startswith("yardfast")]:
        for attribute in [key for key, value in vars(module).items() if value is _whole]:
            setattr(module, attribute, watch)
    with tempfile.TemporaryDirectory() as folder:
        for command in commands(folder):
            with (
                contextlib.redirect_stdout(io.StringIO()),
                contextlib.redirect_stderr(io.StringIO()),
                contextlib.suppress(SystemExit),
            ):
                main(command)
    place: dict[str, Any] = {"height": "10 ft", "elevation": "500 ft"}
    for exposure in ("B", "C", "D"):
        yf.velocity_pressure("105 mph", method="ASCE 7-22", exposure=exposure, **place)
        place_16 = {**place, "directionality": 0.85}
        yf.velocity_pressure("105 mph", method="ASCE 7-16", exposure=exposure, **place_16)
    for kind in ("nail", "ring-shank nail", "stainless nail", "wood screw", "lag screw"):
        yf.withdrawal(kind, "0.25 in", 0.42)


def rows() -> Iterator[tuple[tuple[str, int], Mapping[str, str]]]:
    """Yield each row of each table by its table's name and its place there."""
    for name in references.names():
        for i, row in enumerate(_whole(name).rows):
            yield (name, i), row


def show() -> None:
    """Print the counts."""
    counts = {True: Counter[str](), False: Counter[str]()}
    for about, row in rows():
        counts[about in _read][row["confidence"]] += 1
    print(f"{'confidence':<12}{'read':>7}{'unread':>8}{'all':>7}")
    for word in references.CONFIDENCES:
        one, other = counts[True][word], counts[False][word]
        print(f"{word:<12}{one:>7}{other:>8}{one + other:>7}")
    one, other = (counts[way].total() for way in (True, False))
    print(f"{'all':<12}{one:>7}{other:>8}{one + other:>7}")
    print(f"from memory, of the rows that are read: {counts[True]['memory'] / one:.0%}")
    untouched = set(references.names()) - {name for name, _ in _read}
    print(f"tables: {len(references.names())}, read by none of this: {len(untouched)}")


def show_unread() -> None:
    """Print each table of which not every row is read."""
    for name in references.names():
        taken = sum(1 for table, _ in _read if table == name)
        if taken < len(_whole(name).rows):
            print(f"{name}: {taken} of {len(_whole(name).rows)} read")


if __name__ == "__main__":
    run()
    show()
    if "--unread" in sys.argv:
        show_unread()
    if "--memory" in sys.argv:
        for about, row in rows():
            if about in _read and row["confidence"] == "memory":
                print(f"{about[0]}: {' | '.join(list(row.values())[:4])} <- {row['source'][:90]}")
