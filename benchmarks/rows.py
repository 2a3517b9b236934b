"""How well the rows are known that answers rest on: counts by confidence, read and unread.

A stand-in for the loader notes every row that is read while all examples are checked and sized, the
lists are shown and the public calls are made; tables of rows that are looked through whole (a search
by name) count as read whole only where the code takes their columns, or a row that it picks.

    python benchmarks/rows.py            counts
    python benchmarks/rows.py --unread   the tables that nothing reads
    python benchmarks/rows.py --memory   the rows from memory that are read
    python benchmarks/rows.py --decides  the rows from memory that the examples' answers name
"""

import contextlib
import io
import sys
from collections import Counter
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import yardfast as yf
from yardfast import references
from yardfast.cli import main
from yardfast.references.table import Table

ROOT = Path(__file__).parents[1]
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
_ASKING = {"source", "confidence", "confidence_note", "note"}

read: set[tuple[str, int]] = set()


class Watched(dict[str, str]):
    """A row that notes when a value of it is taken; asking for its key or source is not reading."""

    def __init__(self, row: Mapping[str, str], table: str, place: int, key: str) -> None:
        super().__init__(row)
        self.about = (table, place)
        self.key = key

    def __getitem__(self, column: str) -> str:
        if column != self.key and column not in _ASKING:
            read.add(self.about)
        return super().__getitem__(column)

    def get(self, column: str, default: Any = None) -> Any:
        return self[column] if column in self else default


class WatchedTable(Table):
    """A table in which looking for a row is not reading the others."""

    def where(self, column: str, value: str) -> tuple[Mapping[str, str], ...]:
        return tuple(row for row in self.rows if dict.__getitem__(row, column) == value)


def watch(name: str) -> Table:
    """Return a table whose rows note what is read of them."""
    if name not in watched:
        plain = whole(name)
        rows = tuple(
            Watched(row, name, i, plain.columns[0]) for i, row in enumerate(plain.rows)
        )
        watched[name] = WatchedTable(name, plain.columns, rows)
    return watched[name]


watched: dict[str, Table] = {}
whole = references.table


def everything() -> Iterator[list[str]]:
    """Yield the commands that ask for the most."""
    for file in EXAMPLES:
        for more in ([], ["--all"], ["--format", "json"]):
            yield ["check", str(file), *more]
        yield ["size", str(file), "--format", "json"]
        yield ["cuts", str(file), "--format", "json"]
        yield ["label", str(file)]
    for kind in ("materials", "grounds", "fasteners"):
        yield [kind]
        yield [kind, "--format", "json"]
    yield ["fasteners", "--wood", "southern pine"]


def run() -> None:
    """Check, size and list everything with the loader replaced."""
    for module in list(sys.modules.values()):
        if getattr(module, "__name__", "").startswith("yardfast"):
            for attribute, value in list(vars(module).items()):
                if value is whole:
                    setattr(module, attribute, watch)
    for command in everything():
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            with contextlib.suppress(SystemExit):
                main(command)
    for method in ("ASCE 7-22", "ASCE 7-16"):
        kd = {"directionality": 0.85} if method == "ASCE 7-16" else {}
        for exposure in ("B", "C", "D"):
            yf.velocity_pressure(
                "105 mph", method=method, exposure=exposure, height="10 ft", elevation="500 ft", **kd
            )
    for kind in ("nail", "ring-shank nail", "stainless nail", "wood screw", "lag screw"):
        yf.withdrawal(kind, "0.25 in", 0.42)


def rows() -> Iterator[tuple[str, int, Mapping[str, str]]]:
    for name in references.names():
        for i, row in enumerate(whole(name).rows):
            yield name, i, row


def show() -> None:
    counts = {True: Counter[str](), False: Counter[str]()}
    for name, i, row in rows():
        counts[(name, i) in read][row["confidence"]] += 1
    print(f"{'confidence':<12}{'read':>7}{'unread':>8}{'all':>7}")
    for word in references.CONFIDENCES:
        one, other = counts[True][word], counts[False][word]
        print(f"{word:<12}{one:>7}{other:>8}{one + other:>7}")
    total = [sum(counts[way].values()) for way in (True, False)]
    print(f"{'all':<12}{total[0]:>7}{total[1]:>8}{sum(total):>7}")
    share = 100 * counts[True]["memory"] / total[0]
    print(f"from memory, of the rows that are read: {share:.0f} %")
    tables = {name for name, i in read}
    print(f"tables: {len(references.names())}, read by nothing: {len(references.names()) - len(tables)}")


if __name__ == "__main__":
    run()
    show()
    if "--unread" in sys.argv:
        for name in references.names():
            taken = sum(1 for table, _ in read if table == name)
            if taken < len(whole(name).rows):
                print(f"{name}: {taken} of {len(whole(name).rows)} read")
    if "--memory" in sys.argv:
        for name, i, row in rows():
            if (name, i) in read and row["confidence"] == "memory":
                print(f"{name}: {' | '.join(list(row.values())[:4])} <- {row['source'][:90]}")
