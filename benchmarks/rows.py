"""How well the rows are known that answers rest on: counts by confidence, read and unread.

A stand-in for the loader notes each row of which a value is taken while every example is checked by
its own books and by EN 1991-1-4 with EN 1995-1-1, and cut; the plainest sized, drawn and labelled;
everything is listed and verified, the public calls are made, and what a file may name is asked for
by its name: each anchor in each ground, each line and its ends, each fastener in each wood, lumber,
sheets, metals, plastics, hills and roofs of every kind; in a process for each core. To look for a
row by its first column is not to read it; a table that code looks through by other columns counts
as read whole. What is unread then only other shapes and sizes ask for.

    python benchmarks/rows.py             the counts: some three minutes on two cores
    python benchmarks/rows.py --unread    tables of which rows are unread
    python benchmarks/rows.py --memory    rows from memory that are read
    python benchmarks/rows.py --decides   what of each example's verdict rests on memory
"""

import contextlib
import io
import os
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

import yardfast as yf
from yardfast import references
from yardfast.checks.anchoring.capacity.anchor_capacity import anchor_capacity
from yardfast.checks.anchoring.guys import allowable
from yardfast.checks.timber.books import BOOKS
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.cli import main
from yardfast.loads.asce7.hill import LANDFORMS, greatest_topographic_factor
from yardfast.loads.other_books import in_every_book
from yardfast.loads.wind.site import Site
from yardfast.materials import (
    anchors,
    ballast,
    bought,
    fastener_sizes,
    fasteners,
    grounds,
    guy_lines,
    lumber,
    material,
    metal,
    plastic,
    sheets,
    stock,
)
from yardfast.references.table import Table, TableRow
from yardfast.report.wording.dig_line import dig_line
from yardfast.units import INCH
from yardfast.units.frozen import replace

EXAMPLES = sorted((Path(__file__).parents[1] / "examples").glob("*.toml"))
_SIZED = 5
"""How many of the examples are sized and drawn: those of the fewest parts."""
_ASKING = {"source", "confidence", "confidence_note", "note"}
_read: set[tuple[str, int]] = set()
_watched: dict[str, Table] = {}
_whole = references.table


class Watched(dict[str, str]):
    """A row that notes when a value of it is taken."""

    def __init__(self, row: TableRow, table: str, place: int, key: str) -> None:
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

    def where(self, column: str, value: str) -> tuple[TableRow, ...]:
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


Job = tuple[str, ...]


def jobs() -> list[Job]:
    """Return what is run, the longest first: commands, "european" and "calls"."""
    plainest = sorted(EXAMPLES, key=lambda file: file.read_text(encoding="utf-8").count("[[part]]"))
    found: list[Job] = []
    for file in EXAMPLES:
        found += [("check", str(file)), ("european", str(file)), ("cuts", str(file))]
    for file in plainest[:_SIZED]:
        found += [("size", str(file)), ("draw", str(file)), ("label", str(file))]
    for kind in ("materials", "grounds", "fasteners"):
        found += [(kind,), (kind, "--format", "json")]
    found += [("fasteners", "--wood", "southern pine"), ("verify",), ("calls",), ("named",)]
    found.append(("odds", str(plainest[0])))
    return sorted(found, key=lambda job: "arbor" not in job[-1] and "bridge" not in job[-1])


def run() -> None:
    """Run all of it, its output thrown away, and keep what was read."""
    with ProcessPoolExecutor(os.cpu_count(), initializer=stand_in) as pool:
        for read in pool.map(done, jobs()):
            _read.update(read)


def stand_in() -> None:
    """Put the loader's stand-in where it was imported."""
    for module in [each for name, each in sys.modules.items() if name.startswith("yardfast")]:
        for attribute in [key for key, value in vars(module).items() if value is _whole]:
            setattr(module, attribute, watch)


def done(job: Job) -> set[tuple[str, int]]:
    """Do one job and return every row that was read in this process so far."""
    stand_in()
    with (
        tempfile.TemporaryDirectory() as folder,
        contextlib.redirect_stdout(io.StringIO()),
        contextlib.redirect_stderr(io.StringIO()),
        contextlib.suppress(SystemExit),
    ):
        if job == ("calls",):
            calls()
        elif job == ("named",):
            named()
        elif job[0] == "european":
            by_europe(job[1])
        else:
            main([*job, *(["-o", f"{folder}/drawn.svg"] if job[0] == "draw" else [])])
    return set(_read)


def by_europe(file: str) -> None:
    """Check a file by EN 1991-1-4 with EN 1995-1-1, as ``compare`` does."""
    own = yf.check(yf.read(file))
    found = own.examination
    for site in in_every_book(found.site, found.structure.height)[1:]:
        if site.method == "EN 1991-1-4":
            design = replace(own.design, tables={**own.design.tables, Site: site})
            yf.check(design).to_dict()


def calls() -> None:
    """Make the public calls that read tables."""
    place: dict[str, Any] = {"height": "10 ft", "elevation": "500 ft"}
    for exposure in ("B", "C", "D"):
        yf.velocity_pressure("105 mph", method="ASCE 7-22", exposure=exposure, **place)
        place_16 = {**place, "directionality": 0.85}
        yf.velocity_pressure("105 mph", method="ASCE 7-16", exposure=exposure, **place_16)
    for kind in ("nail", "ring-shank nail", "stainless nail", "wood screw", "lag screw"):
        yf.withdrawal(kind, "0.25 in", 0.42)


def named() -> None:
    """Ask for all that a file may name, by its name, whatever is not known of some of it."""
    for ground in grounds.ground_names():
        for anchor in anchors.anchor_names():
            for known in ({}, {"torque": 500.0}, {"listed": True}, {"depth": 0.6}):
                one = anchors.find_anchor(anchor), grounds.find_ground(ground)
                _ask(lambda a=one, k=known: anchor_capacity(*a, **k))
    for head in anchors.heads():
        anchors.find_head(head)
    for bag in ballast.ballast_names():
        ballast.find_ballast(bag)
    for line in guy_lines.line_names():
        for end in guy_lines.ends(guy_lines.find_line(line).of):
            _ask(lambda a=line, b=end: allowable(guy_lines.find_line(a), guy_lines.end(b)))
    for stuff in material.material_names():
        for least, wide in ((1.5, 3.5), (1.5, 5.5), (3.5, 3.5), (5.5, 5.5)):
            for grade in (None, "No. 2"):
                _ask(
                    lambda s=stuff, a=least, b=wide, g=grade: lumber.find_lumber(
                        s, a * INCH, b * INCH, g
                    )
                )
        _ask(lambda s=stuff: lumber.find_boards(s, 0.75 * INCH))
        for thick in sorted(set(stock.sheet_thicknesses().values())):
            _ask(lambda s=stuff, t=thick: sheets.find_sheet(s, t))
        for each in (metal.find_metal, plastic.find_plastic, bought.sold_as, joint_material_of):
            _ask(lambda f=each, s=stuff: f(s))
        for fastener in fastener_sizes.fastener_names():
            for into in ("side grain", "end grain"):
                wood = joint_material_of(stuff)
                driven = Driven(wood, wood, 0.75 * INCH, 3.0 * INCH, into)
                for opened in BOOKS.values():
                    book = opened()
                    basis = "strength" if book.name == "NDS" else "EN 1995, strength"
                    _ask(
                        lambda b=book, f=fastener, d=driven, w=basis: b.capacity(
                            fasteners.find_fastener(f), d, w
                        )
                    )
    for landform in LANDFORMS:
        for exposure in "BCD":
            _ask(lambda a=landform, b=exposure: greatest_topographic_factor(a, b))
    for row in watch("dig_lines").rows:
        dig_line(row["country"])
    for system in ("imperial", "metric"):
        bought.sheet_sizes(system)
        bought.lumber_lengths(system)
        bought.saw_kerf(system)


def _ask(what: Callable[[], object]) -> None:
    with contextlib.suppress(KeyError, ValueError, AttributeError, TypeError):
        what()


def rows() -> Iterator[tuple[tuple[str, int], Mapping[str, str]]]:
    """Yield each row of each table by its table's name and its place there."""
    for name in references.table_names():
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
    untouched = set(references.table_names()) - {name for name, _ in _read}
    print(f"tables: {len(references.table_names())}, read by none of this: {len(untouched)}")


def show_unread() -> None:
    """Print each table of which not every row is read."""
    for name in references.table_names():
        taken = sum(1 for table, _ in _read if table == name)
        if taken < len(_whole(name).rows):
            print(f"{name}: {taken} of {len(_whole(name).rows)} read")


def decides(files: Sequence[Path]) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """Yield each file's name, word, and the values from memory that its check names."""
    for file in files:
        found = yf.check(yf.read(file))
        yield file.stem, found.verdict.word, found.unverified


if __name__ == "__main__":
    if "--decides" in sys.argv:
        for name, word, recalled in decides(EXAMPLES):
            print(f"{name}: {word}; from memory: {len(recalled)}", *recalled, sep="\n    ")
        sys.exit()
    run()
    show()
    if "--unread" in sys.argv:
        show_unread()
    if "--memory" in sys.argv:
        for about, row in rows():
            if about in _read and row["confidence"] == "memory":
                print(f"{about[0]}: {' | '.join(list(row.values())[:4])} <- {row['source'][:90]}")
