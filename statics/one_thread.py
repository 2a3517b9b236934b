"""Linear algebra in one thread: small products in several cost far more than they save."""

import os
from collections.abc import Callable
from functools import cache, wraps
from importlib import import_module
from typing import Any, ParamSpec, TypeVar

_ASKED = "OPENBLAS_NUM_THREADS"
"""Who starts a process with 1 there, as the command does, has one thread already."""

P = ParamSpec("P")
R = TypeVar("R")


def in_one_thread(work: Callable[P, R]) -> Callable[P, R]:
    """Return a function whose linear algebra runs in one thread, whatever the caller's setting.

    That setting is back once it returns.
    """

    @wraps(work)
    def run(*args: P.args, **kwargs: P.kwargs) -> R:
        if os.environ.get(_ASKED) == "1":
            return work(*args, **kwargs)
        with _controller().limit(limits=1, user_api="blas"):
            return work(*args, **kwargs)

    return run


@cache
def _controller() -> Any:
    # the command does without
    return import_module("threadpoolctl").ThreadpoolController()
