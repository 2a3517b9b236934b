"""What a check was found from: the joint, seams, fasteners or part that it is of."""

from collections.abc import Iterable
from typing import Protocol, TypeVar

from .judging import Check


class WithCheck(Protocol):
    """What was found of something, with its check."""

    @property
    def check(self) -> Check:
        """Return its check."""
        ...


J = TypeVar("J", bound=WithCheck)


def judged_by(found: Iterable[J], check: Check) -> J | None:
    """Return the one of what was found that a check is of; None where it is of something else."""
    return next((one for one in found if one.check.name == check.name), None)
