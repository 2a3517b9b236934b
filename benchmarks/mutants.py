"""Mutants of the code, drawn by seed: python benchmarks/mutants.py ROOM ... [--count N] [--seed N]

Each mutant is one small change: a comparison turned, plus for minus, a greatest for a least, a
number off, a condition denied, a term left out. ROOM is a folder or file, such as
checks/stability/sliding.py, or ``all``: every room in turn; ``checks`` alone is the files at its
top. The tests that touch its line run, the likeliest first (``benchmarks/touched.py`` finds out
which); it is killed where one of them asserts otherwise. What ends in a mere crash or takes too
long counts neither way, and so does what ``equivalents.csv`` beside this file names: no answer can
differ.
"""

import argparse
import ast
import contextlib
import csv
import gc
import importlib.machinery
import inspect
import json
import os
import random
import re
import select
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import zip_longest
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

sys.path.insert(0, str(Path(__file__).parent))


import touched
from touched import ROOT, Known, known

ROOMS = (
    *("units", "references", "materials", "design", "loads", "statics", "checks"),
    *("checks/stability", "checks/acting", "checks/stated", "checks/members", "checks/joints"),
    *("checks/anchoring", "checks/seams", "checks/timber", "checks/odds", "checks/sizing"),
    *("checks/verification", "report", "page", "cli"),
)
EQUIVALENTS = Path(__file__).with_name("equivalents.csv")
CRASHES = {
    *("TypeError", "AttributeError", "NameError", "UnboundLocalError", "IndexError", "KeyError"),
    *("ZeroDivisionError", "RecursionError", "OverflowError", "FloatingPointError", "ImportError"),
    *("LinAlgError", "RuntimeWarning", "DeprecationWarning", "StopIteration", "MemoryError"),
    *("ValueError", "AxisError", "GEOSException", "FrozenInstanceError", "NotImplementedError"),
}
BATCHES = (16, 60, 150, 250)
"""So many tests are tried first, then so many more, before a mutant survives."""

SECONDS = 30.0
"""So long may tests of one batch have taken together when they were watched, in s."""

SLOW = 6.0
"""A test that took longer is not tried."""

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
PLAIN = ("-q", "-n0", "-p", "no:cacheprovider", "-p", "no:warnings")


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
            yield line, f"{node.value} off", node, "value", _off(node.value)
        elif isinstance(node, ast.If | ast.IfExp) and "TYPE_CHECKING" not in ast.dump(node.test):
            denied = ast.UnaryOp(ast.Not(), node.test)
            yield line, "condition denied", node, "test", denied


def _off(value: float) -> float:
    """Return another number: the next whole one, or one that is more by a tenth and one."""
    return value + 1 if isinstance(value, int) else value * 1.1 + 1.0


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


def tried(mutant: Mutant, tests: Known, house: "House") -> str:
    """Return what became of a mutant: which test killed it, how it crashed, or that it survives."""
    names = tests.touching(mutant.file, mutant.line) or tests.entering(mutant.file)
    names = _likeliest([name for name in names if name in house.items], mutant.file, tests)
    put_in = house.patch(mutant)
    if put_in is None:  # what stands in no function is touched by the import alone
        names = list(dict.fromkeys([*house.importing(mutant.file), *names]))
    for some in _batches(names, tests) if put_in is not None else ():
        spent = sum(tests.tests[name][0] for name in some)
        ended = _forked(lambda some=some: house.says(put_in, some), 12.0 + 4.0 * spent)
        if ended != "survives":
            return ended
    few = _in_one_go(names, tests)
    if few and (put_in is None or put_in.names & house.at_import):
        return _from_nothing(mutant, few)
    return "survives" if few else "survives, untouched"


def _batches(names: list[str], tests: Known) -> Iterator[list[str]]:
    """Yield tests to be tried together, what takes too long left out."""
    start = 0
    for count in BATCHES:
        some: list[str] = []
        left = SECONDS
        for name in names[start : start + count]:
            spent = tests.tests[name][0]
            if spent <= min(left, SLOW):
                some.append(name)
                left -= spent
        if some:
            yield some
        start += count


def _in_one_go(names: list[str], tests: Known) -> list[str]:
    """Return as many tests, the likeliest first, as run within one batch's time."""
    found: list[str] = []
    left = SECONDS
    for name in names:
        spent = tests.tests[name][0] if name in tests.tests else 0.0
        if spent <= min(left, SLOW):
            found.append(name)
            left -= spent
    return found[: sum(BATCHES)]


def _likeliest(quickest: list[str], file: str, tests: Known) -> list[str]:
    """Return tests in turns: the quickest, those that touch least, those of the room's own folder.

    And those that name what the file is of.
    """
    *room, name = Path(file).with_suffix("").parts
    own = [each for each in quickest if room and f"/{room[-1]}/" in each]
    named = [each for each in quickest if any(w in each for w in name.split("_") if len(w) > 3)]
    closest = sorted(quickest, key=lambda each: len(tests.tests[each][1]))
    turns = zip_longest(quickest, closest, own, named)
    return list(dict.fromkeys(each for some in turns for each in some if each))


def _forked(does: Callable[[], str], seconds: float) -> str:
    """Return what is said in a process of its own, a copy of this one."""
    read, write = os.pipe()
    process = os.fork()
    if not process:
        try:
            os.close(read)
            os.setpgid(0, 0)
            nothing = os.open(os.devnull, os.O_RDWR)
            for each in (0, 1, 2):
                os.dup2(nothing, each)
            os.write(write, does().encode())
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


def _from_nothing(mutant: Mutant, names: list[str]) -> str:
    """Return what tests say where the change is there from the import on: slow, but whole."""
    asked = json.dumps([mutant.file, mutant.line, mutant.number, mutant.what, names])
    try:
        ran = subprocess.run(
            [sys.executable, __file__, "--alone"],
            input=asked,
            capture_output=True,
            text=True,
            check=False,
            timeout=120,
        )
    except subprocess.TimeoutExpired:
        return "crash: too slow"
    said = ran.stdout.strip().splitlines()
    return said[-1] if said else "crash: of the process"


def _alone() -> int:
    """Run one mutant in this process, as ``_from_nothing`` asks for it."""
    import pytest

    *given, names = json.load(sys.stdin)
    mutant = Mutant(*given)
    os.chdir(ROOT)
    sys.dont_write_bytecode = True
    _instead(ROOT / mutant.file, mutant.text())
    judge = _Judge(names)
    files = list(dict.fromkeys(name.partition("::")[0] for name in names))
    out = os.dup(1)
    os.dup2(os.open(os.devnull, os.O_RDWR), 1)
    status = pytest.main([*PLAIN, "-x", *files], plugins=[judge])
    said = judge.said or ("survives" if status in (0, 5) else "crash: of the import")
    os.write(out, said.encode())
    return 0


class House:
    """All tests collected once, and every function of the package that is alive.

    A mutant is a copy of this process in which functions have other code: nothing is imported anew.
    """

    def __init__(self, session: Any) -> None:
        self.items = {item.nodeid: item for item in session.items}
        self.at_import = _called_at_import()
        self.alive: dict[tuple[str, str, int], list[FunctionType]] = {}
        for each in gc.get_objects():
            if isinstance(each, FunctionType):
                code = each.__code__
                key = code.co_filename, code.co_qualname, code.co_firstlineno
                self.alive.setdefault(key, []).append(each)

    def importing(self, file: str) -> list[str]:
        """Return the tests that stand in files which import a module, by its name."""
        stem = re.escape(Path(file).stem)
        wanted = re.compile(rf"^(?:from|import) .*\b{stem}\b", re.MULTILINE)
        files = dict.fromkeys(name.partition("::")[0] for name in self.items)
        own = {each for each in files if wanted.search((ROOT / each).read_text(encoding="utf-8"))}
        return [name for name in self.items if name.partition("::")[0] in own]

    def patch(self, mutant: Mutant) -> "_Patch | None":
        """Return which functions get which code; None where it is not in a function."""
        file = str(ROOT / mutant.file)
        text = (ROOT / mutant.file).read_text(encoding="utf-8")
        here = _functions(compile(text, file, "exec"))
        plain = _functions(compile(ast.unparse(ast.parse(text)), file, "exec"))
        changed_text = mutant.text()
        changed = _functions(compile(changed_text, file, "exec"))
        put: _Put = []
        for is_, was, new in zip(here, plain, changed, strict=True):
            if was != new:
                key = file, is_.co_qualname, is_.co_firstlineno
                put += [(each, new) for each in self.alive.get(key, ())]
        return _Patch(ROOT / mutant.file, changed_text, put) if put else None

    def says(self, patch: "_Patch", names: list[str]) -> str:
        """Return what tests say, in this process, which is changed for good."""
        for each, code in patch.put:
            each.__code__ = code
        _instead(patch.file, patch.text)  # where it is imported only now
        touched.forget()
        judge = _Judge(names)
        items = [self.items[name] for name in names]
        items[0].config.pluginmanager.register(judge)
        for item, after in zip(items, [*items[1:], None], strict=True):
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=after)
            if judge.said:
                break
        return judge.said or "survives"


_Put = list[tuple[FunctionType, CodeType]]


@dataclass(frozen=True)
class _Patch:
    file: Path
    text: str
    put: _Put

    @property
    def names(self) -> set[str]:
        """What the changed functions are called."""
        return {each.__name__ for each, _ in self.put}


def _called_at_import() -> set[str]:
    """Return the names of what is called as modules are imported, outside of any function."""
    found = set[str]()
    for file in ROOT.rglob("*.py"):
        if file.relative_to(ROOT).parts[0] not in touched.OUTSIDE:
            left: list[ast.AST] = [ast.parse(file.read_text(encoding="utf-8"))]
            while left:
                node = left.pop()
                if isinstance(node, ast.Call):
                    found.add(getattr(node.func, "attr", getattr(node.func, "id", "")))
                if not isinstance(node, ast.FunctionDef | ast.Lambda):
                    left += ast.iter_child_nodes(node)
    return found


def _functions(code: CodeType) -> list[CodeType]:
    """Return the code of each function that stands in a module or class, in order."""
    found: list[CodeType] = []
    for each in code.co_consts:
        if isinstance(each, CodeType):
            if each.co_flags & inspect.CO_OPTIMIZED:
                found.append(each)
            else:
                found += _functions(each)
    return found


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

    def pytest_collection_modifyitems(self, items: list[Any]) -> None:
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


def judged(room: str, typed: argparse.Namespace, tests: Known, house: House) -> float:
    """Draw, run and print one room; return the share that is killed of those that count."""
    there = mutants(room)
    drawn = list(there)
    random.Random(typed.seed).shuffle(drawn)
    start = time.perf_counter()
    ended: list[tuple[Mutant, str]] = []
    for mutant in drawn[: typed.count]:
        end = tried(mutant, tests, house)
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


class Draws:
    """A plugin: instead of running the tests that were collected, draws and tries mutants."""

    def __init__(self, typed: argparse.Namespace) -> None:
        self.typed = typed
        self.least = 1.0

    def pytest_runtestloop(self, session: Any) -> bool:
        tests, house = known(), House(session)
        gc.freeze()
        rooms = ROOMS if self.typed.rooms == ["all"] else self.typed.rooms
        self.least = min(judged(room, self.typed, tests, house) for room in rooms)
        return True


def main() -> int:
    """Judge each room; return 1 where fewer than the asked share is killed in one."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rooms", nargs="+")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=14)
    parser.add_argument("--verbose", action="store_true", help="tell of each what became of it")
    parser.add_argument("--tests", nargs="*", default=["tests"], help="those that may be run")
    parser.add_argument("--least", type=float, default=0.0, help="share that has to be killed")
    typed = parser.parse_args()
    import pytest

    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    os.chdir(ROOT)
    draws = Draws(typed)
    status = pytest.main([*PLAIN, "-s", *typed.tests], plugins=[draws])
    return status or int(draws.least < typed.least)


if __name__ == "__main__":
    sys.exit(_alone() if sys.argv[1:] == ["--alone"] else main())
