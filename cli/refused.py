"""What ends a command without an answer: told at one door, in one form, for every command."""

from collections.abc import Callable

from ..design.faults import DesignError
from ..report.templates.typeset import NoTypesetterError
from . import screen

_WRONG = 2


class RefusedError(Exception):
    """Why nothing was done, as a sentence without its stop, and what was not done therefore."""

    def __init__(self, why: str, so: str = "Nothing was written.", status: int = _WRONG) -> None:
        super().__init__(f"{why}. {so}" if so else why)
        self.status = status


def told(command: str, do: Callable[[], int]) -> int:
    """Do what a command does; return its status, or that of what it ends in, told."""
    try:
        return do()
    except DesignError as wrong:
        from ..report.wording.faults import fault_lines  # noqa: PLC0415 - only of what is wrong

        screen.complain(fault_lines(wrong.faults))
    except NoTypesetterError as missing:
        screen.complain([f"yardfast {command}: {missing}. Nothing was written."])
    except RefusedError as refused:
        screen.complain([f"yardfast {command}: {refused}"])
        return refused.status
    return _WRONG
