"""The command: ``yardfast check FILE`` and its like. Heavy imports wait for what needs them.

Read ``parser`` (every command with its options), ``screen`` and ``refused`` (how all of them
answer, and refuse), then ``commands/``, ``files/`` and ``starting/`` (what ``new`` asks).
"""

import gc
import os
import sys
from collections.abc import Sequence
from contextlib import suppress

_INTERRUPTED = 130
BROKEN_PIPE = 141
_WRONG = 2


OBJECTS_BETWEEN_SEARCHES = 250_000

ONE_THREAD = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")
"""What keeps products of matrices in one thread: small ones cost far more in several."""


def command() -> int:
    """Run the command as a process of its own; return its exit status.

    A run is short and leaves hardly a circle of objects: looking for them less often saves a tenth
    of its time.
    """
    gc.set_threshold(OBJECTS_BETWEEN_SEARCHES)
    for each in ONE_THREAD:
        os.environ.setdefault(each, "1")
    status = main()
    gc.freeze()  # nothing is looked for on leaving either
    return status


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; return its exit status: 0 all passes, 1 something does not, 2 wrong input.

    Nothing that can be typed ends in a traceback; with YARDFAST_DEBUG set, our own faults do.
    """
    if sys.stderr is None:  # closed by whoever started it: what is wrong is then told to nobody
        sys.stderr = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115
    if sys.stdout is None:
        _complain("standard output is closed: there is nowhere to show an answer")
        return _WRONG
    _say_what_cannot_be_shown()
    try:
        status = _run(list(sys.argv[1:] if arguments is None else arguments))
        sys.stdout.flush()
    except BrokenPipeError:
        _hang_up()
        return BROKEN_PIPE
    except KeyboardInterrupt:
        return _INTERRUPTED
    except OSError as error:
        what = error.filename if error.filename else "the answer cannot be shown"
        _complain(f"{what}: {error.strerror or error}")
        _hang_up()
        return _WRONG
    except Exception as error:
        if os.environ.get("YARDFAST_DEBUG"):
            raise
        kind = f"{type(error).__name__}: {error}".splitlines()[0][:200]
        _complain(f"a fault of yardfast itself, not of your file: {kind}")
        return _WRONG
    return status


def _run(arguments: list[str]) -> int:
    from .parser import parse  # noqa: PLC0415 - each start pays only for what it runs

    try:
        parsed = parse(arguments)
    except SystemExit as leaving:  # after help, version or a wrong option
        return leaving.code if isinstance(leaving.code, int) else _WRONG
    return _WRONG if parsed is None else parsed.run(parsed)


def _complain(message: str) -> None:
    with suppress(OSError):  # nobody can be told
        print(f"yardfast: {message}", file=sys.stderr, flush=True)


def _say_what_cannot_be_shown() -> None:
    """Let a screen that lacks a character show another, instead of ending the run."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")


def _hang_up() -> None:
    """Leave nothing for the interpreter to write to a pipe that nobody reads."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
    except (OSError, ValueError):
        pass
