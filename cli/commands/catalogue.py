"""``yardfast check FOLDER`` and ``check FILE FILE``: one bad file never stops the rest."""

import json
import os
import signal
import sys
from argparse import Namespace
from collections.abc import Callable, Generator, Iterator, Sequence
from concurrent.futures import BrokenExecutor, Executor, ProcessPoolExecutor
from contextlib import contextmanager
from functools import partial
from multiprocessing import get_context
from pathlib import Path
from threading import current_thread, main_thread
from typing import Any

from ...design.faults import DesignError
from ...report.data.catalogue import AHEAD, Numbered, finished, no_answer
from ...report.data.checking import check
from ...report.screens.catalogue_rows import COLUMNS, catalogue_row, faulty_row
from ...report.screens.folder import FolderRow, folder
from ...report.screens.sections import Shown, shown_of
from ...report.wording.cells import as_table
from ...report.wording.faults import clean, fault_lines, fault_object
from ...report.wording.lines import Line
from ...units.frozen import ByValue
from .. import screen
from ..files.own_files import own_files
from ..files.writing import may_write
from ..files.written import write
from ..refused import RefusedError
from .check import shown_sections

_PASSES, _FAILS, _WRONG, _INTERRUPTED = 0, 1, 2, 130

_FEW = 8
"""Fewer designs than this are done before other processes have started."""


class Brief(ByValue, frozen=True):
    """What is told of one design among many; ``object`` where its JSON is wanted."""

    passes: bool
    row: FolderRow
    object: dict[str, Any] | None
    more: tuple[Line, ...]


def run(arguments: Namespace, files: Sequence[str]) -> int:
    """Check designs; return the greatest of 0 all pass, 1 something does not, 2 a file is wrong."""
    told = _Told(arguments, len(files))
    told.may_write(files)
    told.begin()
    stopped = False
    try:
        for file, found in _in_order(files, told.wanted, arguments.jobs):
            with _not_stopped_halfway():
                told.take(file, found)
    except KeyboardInterrupt:
        stopped = True
    if problem := told.end():
        raise RefusedError(f"{problem}.", "")
    if stopped:
        why = f"stopped; {told.done} of {len(files)} were checked."
        raise RefusedError(why, "", _INTERRUPTED)
    return told.status


def _in_order(
    files: Sequence[str], work: Callable[[Numbered], Brief], jobs: int | None
) -> Iterator[tuple[str, Brief | DesignError]]:
    """Yield each file with what was found of it, in the order of the files."""
    early: dict[int, Brief | DesignError] = {}
    place = 0
    for k, found in _each(files, work, jobs):
        early[k] = found
        while place in early:
            yield files[place], early.pop(place)
            place += 1


def _each(
    files: Sequence[str], work: Callable[[Numbered], Brief], jobs: int | None
) -> Iterator[tuple[int, Brief | DesignError]]:
    """Yield the place of each file and what was found of it, as they finish.

    Where a process ends, as for want of memory, those that were out are done again, each in a
    process of its own, so that one of them alone is told to have ended it.
    """
    left: dict[int, str | Path] = dict(enumerate(files))
    while left:
        try:
            with _workers(jobs, len(left)) as executor:
                for (k, _), found in finished(list(left.items()), work, executor):
                    del left[k]
                    yield k, found
        except BrokenExecutor:
            for k in list(left)[:AHEAD]:
                yield k, _alone((k, left.pop(k)), work)


def _alone(one: Numbered, work: Callable[[Numbered], Brief]) -> Brief | DesignError:
    try:
        with _workers(1, 1, alone=True) as executor:
            return next(finished([one], work, executor))[1]
    except BrokenExecutor:
        return no_answer(one[1], "its process ended, as for want of memory")


@contextmanager
def _not_stopped_halfway() -> Generator[None, None, None]:
    """Let Ctrl-C wait until what is being told of a design is told whole."""
    came: list[int] = []
    if current_thread() is not main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, lambda number, _: came.append(number))
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
    if came:
        raise KeyboardInterrupt


@contextmanager
def _workers(
    jobs: int | None, designs: int, alone: bool = False
) -> Generator[Executor | None, None, None]:
    """Give as many processes as are asked for, all cores if not said; none for a few designs."""
    processes = min(jobs or os.cpu_count() or 1, designs)
    if not alone and (processes == 1 or (jobs is None and designs < _FEW)):
        yield None
        return
    pool = ProcessPoolExecutor(processes, get_context("spawn"), _leave_stopping_to_who_asked)
    try:
        yield pool
    finally:
        pool.shutdown(cancel_futures=True)


def _leave_stopping_to_who_asked() -> None:
    """Let Ctrl-C end the process that asked alone: it tells what was done."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _brief(one: Numbered) -> Brief:
    found = check(one[1])
    return Brief(found.passes, found.row, None, ())


def _whole(one: Numbered) -> Brief:
    found = check(one[1])
    return Brief(found.passes, found.row, found.to_dict(), ())


class _Told:
    """What is told of many designs, as far as they are done."""

    def __init__(self, arguments: Namespace, asked: int) -> None:
        self._asked = asked
        self.done, self.status = 0, _PASSES
        self._as_json = arguments.format == "json"
        self._csv = None if arguments.csv is None else Path(arguments.csv)
        self._force = bool(arguments.force)
        self._every = bool(arguments.all)
        self._sections = shown_sections(arguments)
        self._rows: list[FolderRow] = []
        self._faulty: list[tuple[str, int]] = []
        self._more: list[Line] = []
        self._complaints: list[str] = []
        self._cells: list[dict[str, str]] = []
        self._own: tuple[Path, ...] = ()

    @property
    def wanted(self) -> Callable[[Numbered], Brief]:
        """Return what is to be worked out of each design."""
        if not self._as_json and not self._sections.nothing:
            return partial(
                _with_sections, self._sections, screen.screen_columns(), self._csv is not None
            )
        return _whole if self._as_json or self._csv is not None else _brief

    def may_write(self, files: Sequence[str]) -> None:
        """Refuse a table that cannot be written, before anything is worked out."""
        if self._csv is not None:
            self._own = own_files(files)
            may_write(str(self._csv), self._force, self._own, so="Nothing was checked.")

    def begin(self) -> None:
        """Open the array."""
        if self._as_json:
            sys.stdout.write("[")

    def take(self, file: str, found: Brief | DesignError) -> None:
        """Take in one design: its JSON goes out at once, its rows wait for the table."""
        if isinstance(found, DesignError):
            self.status = _WRONG
            self._faulty.append((file, len(found.faults)))
            self._complaints += fault_lines(found.faults, every=self._every)
        else:
            self.status = max(self.status, _PASSES if found.passes else _FAILS)
            self._more += found.more
        if self._as_json:
            sys.stdout.write(",\n" if self.done else "\n")
            json.dump(_object(file, found), sys.stdout, indent=2, allow_nan=False)
            sys.stdout.flush()
        elif isinstance(found, Brief):
            self._rows.append(found.row)
        if self._csv is not None:
            self._cells.append(_cells(file, found))
        self.done += 1
        _progress(self.done, self._asked)

    def end(self) -> str:
        """Close what is open, show the table and what is wrong; return why CSV is not written."""
        _progress(self._asked, self._asked)
        if self._as_json:
            sys.stdout.write("\n]\n" if self.done else "]\n")
        elif self._rows:
            screen.show([*folder(self._rows, self._faulty), *self._more])
        if self._complaints:
            screen.complain(self._complaints)
        if self._csv is None:
            return ""
        return write(self._csv, as_table(COLUMNS, self._cells), force=self._force, own=self._own)


def _with_sections(sections: Shown, columns: int, whole: bool, one: Numbered) -> Brief:
    found = check(one[1])
    more = (Line(""), Line(""), *shown_of(found.examination, sections, columns))
    return Brief(found.passes, found.row, found.to_dict() if whole else None, more)


def _object(file: str, found: Brief | DesignError) -> dict[str, Any] | None:
    if isinstance(found, DesignError):
        return {"file": clean(file), "faults": [fault_object(fault) for fault in found.faults]}
    return found.object


def _cells(file: str, found: Brief | DesignError) -> dict[str, str]:
    if isinstance(found, DesignError):
        return faulty_row(file, found)
    return catalogue_row(found.object or {}, found.row)


def _progress(done: int, asked: int) -> None:
    """Tell how far it is; the line is gone when all is done."""
    screen.busy(f"  {done} of {asked} checked" if done < asked else "")
