"""Mutants of the code, drawn by seed: python benchmarks/mutants.py ROOM ... [--count N] [--seed N]

Each mutant is one small change: a comparison turned, plus for minus, a greatest for a least, a
number off, a condition denied, a term left out. ROOM is a folder or file, such as
checks/sliding.py, or ``all``: every room in turn; ``checks`` alone is the files at its top. The
tests that touch its line run, the quickest first (``benchmarks/touched.py`` finds out which); it
is killed where one of them asserts otherwise. What ends in a mere crash or takes too long counts
neither way, and so does what ``equivalents.csv`` beside this file names: no answer can differ.
"""

import argparse
import ast
import csv
import gc
import importlib
import importlib.machinery
import os
import random
import select
import signal
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

import contextlib

from touched import ROOT, Known, known

ROOMS = (
    *("units", "references", "materials", "design", "loads", "statics", "checks"),
    *("checks/members", "checks/joints", "checks/anchoring", "checks/seams", "checks/timber"),
    *("checks/odds", "checks/sizing", "checks/verification", "report", "page", "cli"),
)
EQUIVALENTS = Path(__file__).with_name("equivalents.csv")
CRASHES = {
    *("TypeError", "AttributeError", "NameError", "UnboundLocalError", "IndexError", "KeyError"),
    *("ZeroDivisionError", "RecursionError", "OverflowError", "FloatingPointError", "ImportError"),
    *("LinAlgError", "RuntimeWarning", "DeprecationWarning", "StopIteration", "MemoryError"),
    *("ValueError", "AxisError", "GEOSException", "FrozenInstanceError", "NotImplementedError"),
}
BATCHES = (12, 60, 400)
"""So many tests are tried first, then so many more, before a mutant survives."""

_TURNED = {
    **{ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt},
    **{ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is},
    **{ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult},
    **{ast.And: ast.Or, ast.Or: ast.And, ast.USub: ast.UAdd},
}
_NAMES = {
    **{"max": "min", "min": "max", "maximum": "minimum", "minimum": "maximum"},
    **{"argmax": "argmin", "argmin": "argmax", "any": "all", "all": "any"},
    **{"sin": "cos", "cos": "sin", "floor": "ceil", "ceil": "floor"},
}
_LIBRARIES = (
    *("numpy", "scipy.optimize", "scipy.stats", "shapely", "pint", "rich.console", "rich.table"),
    *("svgelements", "tomlkit", "pytest", "hypothesis", "jsonschema", "trimesh", "manifold3d"),
)


def changes(tree: ast.AST) -> Iterator[tuple[int, str, ast.AST, str, object]]:
    """Yield each change that can be made: line, what, node, field, and its new value."""
    for node in ast.walk(tree):
        line = getattr(node, "lineno", 0)
        if isinstance(node, ast.Compare):
            turned = [_TURNED.get(type(op), type(op))() for op in node.ops]
            if any(type(a) is not type(b) for a, b in zip(turned, node.ops, strict=True)):
                yield line, "comparison turned", node, "ops", turned
        elif isinstance(node, ast.BinOp | ast.BoolOp | ast.UnaryOp) and type(node.op) in _TURNED:
            yield line, f"{type(node.op).__name__} turned", node, "op", _TURNED[type(node.op)]()
        elif isinstance(node, ast.Attribute) and node.attr in _NAMES:
            yield line, f"{_NAMES[node.attr]} for {node.attr}", node, "attr", _NAMES[node.attr]
        elif isinstance(node, ast.Name) and node.id in _NAMES:
            yield line, f"{_NAMES[node.id]} for {node.id}", node, "id", _NAMES[node.id]
        elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
            yield line, f"{node.value} off", node, "value", node.value * 1.1 + 1
        elif isinstance(node, ast.If | ast.IfExp):
            denied = ast.UnaryOp(ast.Not(), node.test)
            yield line, "condition denied", node, "test", denied


@dataclass(frozen=True)
class Mutant:
    """One change: the file, its line, which of that file's changes it is, and what it does."""

    file: str
    line: int
    number: int
    what: str

    @property
    def stands(self) -> str:
        """What stands in the line."""
        return (ROOT / self.file).read_text(encoding="utf-8").splitlines()[self.line - 1].strip()

    def text(self) -> str:
        """Return the whole file so changed."""
        tree = ast.parse((ROOT / self.file).read_text(encoding="utf-8"))
        *_, node, field, new = list(changes(tree))[self.number]
        setattr(node, field, new)
        return ast.unparse(ast.fix_missing_locations(tree))

    def __str__(self) -> str:
        return f"{self.file}:{self.line} {self.what}: {self.stands}"


def mutants(room: str) -> list[Mutant]:
    """Return every mutant of a room that an answer can tell."""
    here = ROOT / room
    found = here.glob("*.py") if room == "checks" else here.rglob("*.py")
    same = _equivalents()
    return [
        each
        for file in ([here] if here.is_file() else sorted(found))
        for each in _of_file(file)
        if (each.file, each.stands, each.what) not in same
    ]


def _of_file(file: Path) -> list[Mutant]:
    tree = ast.parse(file.read_text(encoding="utf-8"))
    name = file.relative_to(ROOT).as_posix()
    return [Mutant(name, line, k, what) for k, (line, what, *_) in enumerate(changes(tree))]


def _equivalents() -> set[tuple[str, str, str]]:
    with EQUIVALENTS.open(encoding="utf-8", newline="") as file:
        return {(row["file"], row["line"], row["what"]) for row in csv.DictReader(file)}


def tried(mutant: Mutant, tests: Known) -> str:
    """Return what became of a mutant: which test killed it, how it crashed, or that it survives."""
    names = tests.touching(mutant.file, mutant.line)
    if not names:
        names = tests.entering(mutant.file)
    crash, start = "", 0
    for count in BATCHES:
        some = names[start : start + count]
        start += count
        if not some:
            break
        expected = sum(tests.tests[name][0] for name in some)
        ended = _forked(mutant, some, 20.0 + 4.0 * expected)
        if ended.startswith("killed"):
            return ended
        crash = crash or (ended if ended != "survives" else "")
        if crash:
            break
    return crash or ("survives" if names else "survives, untouched")


def _forked(mutant: Mutant, names: list[str], seconds: float) -> str:
    """Return what tests say of a mutant, in a process of their own."""
    read, write = os.pipe()
    process = os.fork()
    if not process:
        try:
            os.close(read)
            os.setpgid(0, 0)
            said = _in_child(mutant, names)
            os.write(write, said.encode())
        finally:
            os._exit(0)
    os.close(write)
    ready, _, _ = select.select([read], [], [], seconds)
    said = os.read(read, 4000).decode() if ready else "crash: too slow"
    os.close(read)
    with contextlib.suppress(ProcessLookupError):
        os.killpg(process, signal.SIGKILL)
    os.waitpid(process, 0)
    return said or "crash: of the process"


def _in_child(mutant: Mutant, names: list[str]) -> str:
    import pytest

    nothing = os.open(os.devnull, os.O_RDWR)
    for each in (0, 1, 2):
        os.dup2(nothing, each)
    os.chdir(ROOT)
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    sys.dont_write_bytecode = True
    _instead(ROOT / mutant.file, mutant.text())
    judge = _Judge(names)
    files = list(dict.fromkeys(name.partition("::")[0] for name in names))
    words = ["-q", "-x", "-n0", "-p", "no:cacheprovider", "-p", "no:warnings", *files]
    status = pytest.main(words, plugins=[judge])
    if not judge.said and status not in (0, 5):
        return "crash: of the import"
    return judge.said or "survives"


def _instead(file: Path, text: str) -> None:
    """Have the import of a file give another text."""
    loader = importlib.machinery.SourceFileLoader
    usual = loader.get_code

    def get_code(self, fullname: str):
        if Path(self.path) == file:
            return compile(text, str(file), "exec")
        return usual(self, fullname)

    loader.get_code = get_code


class _Judge:
    """A plugin: runs the named tests alone, in their order, and keeps how the first one failed."""

    def __init__(self, names: list[str]) -> None:
        self.rank = {name: k for k, name in enumerate(names)}
        self.said = ""

    def pytest_collection_modifyitems(self, items: list) -> None:
        chosen = [item for item in items if item.nodeid in self.rank]
        items[:] = sorted(chosen, key=lambda item: self.rank[item.nodeid])

    def pytest_exception_interact(self, node, call) -> None:
        error = call.excinfo.value
        while isinstance(error, BaseExceptionGroup):
            error = error.exceptions[0]
        kind = type(error).__name__
        if not self.said:
            word = "crash" if kind in CRASHES else "killed"
            self.said = f"{word}: {kind} in {node.nodeid}"


def judged(room: str, typed: argparse.Namespace, tests: Known) -> float:
    """Draw, run and print one room; return the share that is killed of those that count."""
    there = mutants(room)
    drawn = list(there)
    random.Random(typed.seed).shuffle(drawn)
    start = time.perf_counter()
    with ThreadPoolExecutor(typed.jobs) as pool:
        ended = []
        for mutant, end in zip(
            drawn[: typed.count],
            pool.map(lambda one: tried(one, tests), drawn[: typed.count]),
            strict=True,
        ):
            ended.append((mutant, end))
            if typed.verbose or end.startswith("survives"):
                print(f"  {end}: {mutant}", file=sys.stderr, flush=True)
    killed = sum(end.startswith("killed") for _, end in ended)
    alive = [(mutant, end) for mutant, end in ended if end.startswith("survives")]
    crashed = len(ended) - killed - len(alive)
    share = killed / max(killed + len(alive), 1)
    spent = time.perf_counter() - start
    print(
        f"{room:<20} {killed:4d} of {killed + len(alive):4d} killed, {100 * share:3.0f} %; "
        f"{crashed} crash; seed {typed.seed}, of {len(there)} there are; {spent:.0f} s",
        flush=True,
    )
    for mutant, end in alive:
        print(f"    {end}: {mutant}", flush=True)
    return share


def main() -> int:
    """Judge each room; return 1 where fewer than the asked share is killed in one."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rooms", nargs="+")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=14)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--verbose", action="store_true", help="tell of each what became of it")
    parser.add_argument("--least", type=float, default=0.0, help="share that has to be killed")
    typed = parser.parse_args()
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    for library in _LIBRARIES:
        importlib.import_module(library)
    tests = known()
    gc.freeze()
    rooms = ROOMS if typed.rooms == ["all"] else typed.rooms
    return int(min([judged(room, typed, tests) for room in rooms]) < typed.least)


if __name__ == "__main__":
    sys.exit(main())
