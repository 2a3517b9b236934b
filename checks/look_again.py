"""What was read without fault but is hardly meant: shown above the verdict."""

from dataclasses import dataclass


@dataclass(frozen=True)
class LookAgain:
    """One thing to look at again: the part and its key, what was found, what may be meant."""

    part: str
    key: str
    found: str
    hint: str
