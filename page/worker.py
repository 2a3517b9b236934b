"""One thread that works things out, one after the other; it never keeps the program from ending."""

import asyncio
from collections.abc import Callable
from functools import partial
from queue import SimpleQueue
from threading import Thread
from typing import TypeVar

_T = TypeVar("_T")


class Worker:
    """A thread beside the server's own, which stays free to answer meanwhile."""

    def __init__(self) -> None:
        self._jobs: SimpleQueue[Callable[[], None]] = SimpleQueue()
        Thread(target=self._run, daemon=True).start()

    async def do(self, job: Callable[[], _T]) -> _T:
        """Return what a job returns or raise what it raises; what nobody awaits is left out."""
        loop = asyncio.get_running_loop()
        future: asyncio.Future[_T] = loop.create_future()

        def work() -> None:
            if future.cancelled():
                return
            try:
                found = job()
            except Exception as error:
                tell = partial(future.set_exception, error)
            else:
                tell = partial(future.set_result, found)
            _tell(loop, future, tell)

        self._jobs.put(work)
        return await future

    def _run(self) -> None:
        while True:
            self._jobs.get()()


def _tell(
    loop: asyncio.AbstractEventLoop, future: "asyncio.Future[_T]", tell: Callable[[], None]
) -> None:
    """Settle a future in its own loop, unless nobody waits for it any more."""

    def settle() -> None:
        if not future.done():
            tell()

    if not loop.is_closed():
        loop.call_soon_threadsafe(settle)
