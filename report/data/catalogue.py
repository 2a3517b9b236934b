"""Many designs checked, one after another or by many workers: each result as it comes."""

from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, BrokenExecutor, Executor, Future, wait
from pathlib import Path
from typing import TypeVar

from ...design.faults import DesignError, Fault
from .checking import check
from .result import Result

AHEAD = 64
"""So many designs are handed out before the first of them is back: what waits takes memory."""

Numbered = tuple[int, str | Path]
_T = TypeVar("_T")


def check_many(
    paths: Iterable[str | Path], executor: Executor | None = None
) -> Iterator[tuple[str | Path, Result | DesignError]]:
    """Yield each path with its result, or with all that is wrong with its file, as they finish.

    ``executor`` is any of ``concurrent.futures``, or another's with the same face; without one
    they are worked out here, one after another. Each path comes back exactly once. A design that
    makes a fault of ours comes back as a DesignError that says so, and the rest go on.
    BrokenExecutor where the executor's workers ended; what came before it is done.

    >>> for path, found in yf.check_many(["examples/pinwheel.toml", "no-such-file.toml"]):
    ...     wrong = isinstance(found, yf.DesignError)
    ...     print(path, found.faults[0].found if wrong else found.verdict.word)
    examples/pinwheel.toml tie it down
    no-such-file.toml no such file
    """
    for place, found in finished(enumerate(paths), _checked, executor):
        yield place[1], found


def finished(
    designs: Iterable[Numbered], work: Callable[[Numbered], _T], executor: Executor | None = None
) -> Iterator[tuple[Numbered, _T | DesignError]]:
    """Yield each design, a place among others and a path, with what ``work`` gives for it.

    As `check_many`, for whatever is wanted of each design.
    """
    if executor is None:
        for one in designs:
            yield one, _answer(one, lambda one=one: work(one))
        return
    waiting: dict[Future[_T], Numbered] = {}
    left = iter(designs)
    try:
        while _hand_out(executor, left, work, waiting):
            done, _ = wait(waiting, return_when=FIRST_COMPLETED)
            for future in done:
                one = waiting.pop(future)
                yield one, _answer(one, future.result)
    finally:
        for future in waiting:
            future.cancel()


def _checked(one: Numbered) -> Result:
    return check(one[1])


def _hand_out(
    executor: Executor,
    left: Iterator[Numbered],
    work: Callable[[Numbered], _T],
    waiting: dict[Future[_T], Numbered],
) -> bool:
    """Hand out designs until enough are waited for; return whether any is."""
    while len(waiting) < AHEAD and (one := next(left, None)) is not None:
        waiting[executor.submit(work, one)] = one
    return bool(waiting)


def _answer(one: Numbered, ask: Callable[[], _T]) -> _T | DesignError:
    """Return what is found of a design, or what is wrong with it, whatever that is."""
    try:
        return ask()
    except DesignError as wrong:
        return wrong
    except BrokenExecutor:
        raise
    except Exception as error:
        kind = f"{type(error).__name__}: {error}".splitlines()[0][:200]
        return no_answer(one[1], kind)


def no_answer(path: str | Path, what: str) -> DesignError:
    """Return what is said of a design of which a fault of ours left nothing else to say."""
    expected = "an answer: this is a fault of yardfast itself, not of your file"
    return DesignError((Fault(str(path), None, None, None, what, expected),))
