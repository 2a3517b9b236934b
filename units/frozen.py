"""What is handed from one question to the next: classes of fields that never change.

Like frozen dataclasses, but made and filled in compiled code: one of these is there in a twentieth
of the time, which counts for a command that loads some four hundred of them before it answers.
"""

from collections.abc import Callable
from functools import wraps
from typing import Any, Concatenate, ParamSpec, TypeVar

from msgspec import Struct, field, structs

__all__ = ["ByIdentity", "ByValue", "field", "kept_with", "replace", "values_by_name"]

_One = TypeVar("_One", bound=Struct)
_Found = TypeVar("_Found")
_Rest = ParamSpec("_Rest")


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


def kept_with(
    work: Callable[Concatenate[_One, _Rest], _Found],
) -> Callable[Concatenate[_One, _Rest], _Found]:
    """Keep what a function finds of its first argument with that, for as long as that lives.

    A table of the last so many would hold on to pieces that nobody asks about any more. What else
    is given is hashed.

    >>> class Pile(ByIdentity, frozen=True):
    ...     bags: int
    >>> @kept_with
    ... def weight(pile: Pile, each: float) -> float:
    ...     print("weighed")
    ...     return pile.bags * each
    >>> pile = Pile(3)
    >>> weight(pile, 18.0), weight(pile, 18.0)
    weighed
    (54.0, 54.0)
    """
    name = f"{work.__module__}.{work.__qualname__}"

    @wraps(work)
    def found(one: _One, *rest: _Rest.args, **named: _Rest.kwargs) -> _Found:
        known: dict[Any, _Found] = vars(one).setdefault(name, {})
        asked = (rest, tuple(named.items())) if named else rest
        if asked not in known:
            known[asked] = work(one, *rest, **named)
        return known[asked]

    return found
