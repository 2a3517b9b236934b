"""What is handed from one question to the next: classes of fields that never change.

Like frozen dataclasses, but made and filled in compiled code: one of these is there in a twentieth
of the time, which counts for a command that loads some four hundred of them before it answers.
"""

from typing import Any, TypeVar

from msgspec import Struct, field, structs

__all__ = ["ByIdentity", "ByValue", "field", "replace", "values_by_name"]

_One = TypeVar("_One", bound=Struct)


class ByValue(Struct, frozen=True, dict=True):
    """Fields that tell all of it: two with the same are equal.

    >>> class Size(ByValue, frozen=True):
    ...     width: float
    ...     height: float = 1.0
    >>> Size(2.0) == Size(2.0, 1.0), replace(Size(2.0), height=3.0)
    (True, Size(width=2.0, height=3.0))
    """


class ByIdentity(Struct, frozen=True, eq=False, dict=True):
    """Fields that hold arrays, or much: it equals itself alone."""


def replace(one: _One, **changes: Any) -> _One:
    """Return the same with other values in some of its fields. TypeError for a field it has not."""
    return structs.replace(one, **changes)


def values_by_name(one: object) -> dict[str, Any]:
    """Return the values of a thing's fields by name; nothing of what has none."""
    return structs.asdict(one) if isinstance(one, Struct) else {}
