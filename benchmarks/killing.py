"""What becomes of a mutant: the tests that touch its line, tried in a process that holds it."""

import ast
import contextlib
import gc
import importlib.machinery
import inspect
import json
import os
import re
import select
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import zip_longest
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import touched
from mutations import Mutant
from touched import ROOT, Known

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

PLAIN = ("-q", "-n0", "-p", "no:cacheprovider", "-p", "no:warnings")


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
            [sys.executable, __file__],
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


if __name__ == "__main__":
    sys.exit(_alone())
