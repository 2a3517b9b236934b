"""Which lines of the code each test touches, and how long it takes: a plugin of pytest.

    python benchmarks/touched.py [TESTS]      # all, or those named, beside what is known of others

Writes ``.mutants/``, which ``benchmarks/mutants.py`` reads. A line counts as touched where one of
the first calls of its function ran it. What is kept between tests is forgotten with each file.
"""

import functools
import gc
import os
import pickle
import subprocess
import sys
import time
from dataclasses import dataclass, field
from difflib import SequenceMatcher
from pathlib import Path
from types import CodeType, FrameType

import pytest

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / ".mutants"
CALLS, LINES = 12, 400
"""So many calls of a function are watched in each test, and so many lines of each call."""

OUTSIDE = (".venv", "tests", "benchmarks")
"""Folders of which no code is of the package."""


@dataclass
class Known:
    """What the tests touch: for each its seconds, and for each file the lines as bits."""

    tests: dict[str, tuple[float, dict[str, int]]] = field(default_factory=dict)
    texts: dict[str, str] = field(default_factory=dict)

    def touching(self, file: str, line: int) -> list[str]:
        """Return the tests that ran a line as the file stands now, the quickest first."""
        bits = {known_as: 1 << self._then(known_as, file, line) for known_as in self._names(file)}
        found = [
            (spent, name)
            for name, (spent, at) in self.tests.items()
            if any(at.get(known_as, 0) & bit for known_as, bit in bits.items())
        ]
        return [name for _, name in sorted(found)]

    def entering(self, file: str) -> list[str]:
        """Return the tests that ran anything of a file, the quickest first."""
        names = self._names(file)
        found = [(spent, name) for name, (spent, at) in self.tests.items() if names & at.keys()]
        return [name for _, name in sorted(found)]

    def _names(self, file: str) -> set[str]:
        """Return what a file is called, and was before it was moved: those of its name now gone."""
        alike = {each for each in self.texts if Path(each).name == Path(file).name}
        return {file} | {each for each in alike if not (ROOT / each).exists()}

    def _then(self, known_as: str, file: str, line: int) -> int:
        """Return where a line stood, or what stood there, when the tests were watched."""
        now = (ROOT / file).read_text(encoding="utf-8").splitlines()
        then = self.texts.get(known_as, "").splitlines()
        if now == then:
            return line
        for tag, a, b, c, d in SequenceMatcher(None, then, now, autojunk=False).get_opcodes():
            if c < line <= d:
                return a + line - c if tag == "equal" else max(a, min(b, a + line - c))
        return line

    def add(self, other: "Known") -> None:
        """Take in what other tests touch; lines are told by the texts of the latest."""
        for file in other.texts.keys() & self.texts.keys():
            if other.texts[file] != self.texts[file]:
                self._move(file, other.texts[file])
        self.texts |= other.texts
        self.tests |= other.tests

    def _move(self, file: str, text: str) -> None:
        then, now = self.texts[file].splitlines(), text.splitlines()
        blocks = SequenceMatcher(None, then, now, autojunk=False).get_matching_blocks()
        for _, at in self.tests.values():
            bits = at.get(file, 0)
            if bits:
                at[file] = sum(
                    ((bits >> (a + 1)) & ((1 << size) - 1)) << (b + 1) for a, b, size in blocks
                )


def known() -> Known:
    """Return what was found out in earlier runs."""
    with (FOLDER / "touched.pickle").open("rb") as file:
        return pickle.load(file)


class Watch:
    """The plugin: it traces the first calls of each function of the package in each test."""

    def __init__(self) -> None:
        self.found = Known()
        self.own: dict[CodeType, str | None] = {}
        self.now: dict[CodeType, tuple[list[int], set[int]]] = {}
        self.file: object = None

    def called(self, frame: FrameType, event: str, arg: object):
        code = frame.f_code
        entry = self.now.get(code)
        if entry is None:
            if code not in self.own:
                self.own[code] = _file_of(code)
            if self.own[code] is None:
                return None
            entry = self.now[code] = [0], set()
        count, lines = entry
        if count[0] >= CALLS:
            return None
        count[0] += 1
        left = LINES

        def line(frame: FrameType, event: str, arg: object):
            nonlocal left
            lines.add(frame.f_lineno)
            left -= 1
            if not left:
                frame.f_trace_lines = False
            return line

        return line

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item):
        if item.path != self.file:
            forget()
            self.file = item.path
        self.now.clear()
        start = time.perf_counter()
        sys.settrace(self.called)
        yield
        sys.settrace(None)
        at: dict[str, int] = {}
        for code, (_, lines) in self.now.items():
            file = self.own[code]
            assert file
            at[file] = at.get(file, 0) | sum(1 << line for line in lines)
        self.found.tests[item.nodeid] = (time.perf_counter() - start, at)

    def pytest_sessionfinish(self) -> None:
        for file in {file for file in self.own.values() if file}:
            self.found.texts[file] = (ROOT / file).read_text(encoding="utf-8")
        FOLDER.mkdir(exist_ok=True)
        with (FOLDER / f"part-{os.getpid()}.pickle").open("wb") as file:
            pickle.dump(self.found, file)


def _file_of(code: CodeType) -> str | None:
    try:
        file = Path(code.co_filename).relative_to(ROOT)
    except ValueError:
        return None
    return None if file.parts[0] in OUTSIDE else file.as_posix()


def forget() -> None:
    """Forget what the package and its tests keep from one question to the next."""
    from yardfast.checks import examination

    for cell in getattr(examination.examine, "__closure__", None) or ():
        if hasattr(cell.cell_contents, "clear"):
            cell.cell_contents.clear()
    for each in gc.get_objects():
        if isinstance(each, functools._lru_cache_wrapper) and "yardfast" in each.__module__:
            each.cache_clear()


def pytest_configure(config: pytest.Config) -> None:
    """Watch where tests run: in each worker, or in the one process."""
    if hasattr(config, "workerinput") or not config.getoption("numprocesses", None):
        config.pluginmanager.register(Watch(), "watch")


def main() -> int:
    """Run the tests and put together what their workers saw."""
    for part in FOLDER.glob("part-*.pickle"):
        part.unlink()
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    words = ["-q", "-p", "touched", "--dist", "loadfile", *(sys.argv[1:] or ("tests",))]
    ran = subprocess.run([sys.executable, "-m", "pytest", *words], env=environment, check=False)
    whole = known() if (FOLDER / "touched.pickle").exists() else Known()
    for part in FOLDER.glob("part-*.pickle"):
        with part.open("rb") as file:
            whole.add(pickle.load(file))
        part.unlink()
    with (FOLDER / "touched.pickle").open("wb") as file:
        pickle.dump(whole, file)
    print(f"{len(whole.tests)} tests touch {len(whole.texts)} files")
    return ran.returncode


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parent))
    import touched  # by its name, as the plugin: what is kept is of one class

    sys.exit(touched.main())
