"""What a command and its options are made of."""

import argparse
from collections.abc import Callable
from importlib import import_module
from typing import Any, NamedTuple


class Arguments(argparse.Namespace):
    """What was typed, and the command that it asks for."""

    run: Callable[["Arguments"], int]


class Option(NamedTuple):
    """An option or what stands for itself: its names, and how it is read; it may begin a group."""

    names: tuple[str, ...]
    how: dict[str, Any]
    heading: str = ""


def takes(names: str, metavar: str | None, says: str, **more: Any) -> Option:
    """Return an option, or a word that stands for itself, which takes a text."""
    return Option(tuple(names.split()), {"metavar": metavar, "help": says, **more})


def takes_nothing(name: str, says: str) -> Option:
    """Return an option that is given or not."""
    return Option((name,), {"action": "store_true", "help": says})


def _whole(least: int, most: int, what: str) -> Callable[[str], int]:
    """Return what reads a whole number. ArgumentTypeError, saying ``what``, where it is none."""

    def number(typed: str) -> int:
        if typed.isascii() and typed.isdigit() and least <= int(typed[:9]) <= most:
            return int(typed[:9])
        raise argparse.ArgumentTypeError(what.format(least=least, most=most))

    return number


def takes_whole(
    names: str,
    says: str,
    least: int,
    most: int,
    default: int | None = None,
    what: str = "a whole number from {least} to {most}",
) -> Option:
    """Return an option that takes a whole number."""
    return takes(names, "N", says, type=_whole(least, most, what), default=default)


class Command(NamedTuple):
    """What a command is for, an example of it, its options, and the function that does it.

    The function is ``does`` in the file ``module`` of ``commands/``: each start pays only for what
    it runs.
    """

    what: str
    example: str
    module: str
    options: tuple[Option, ...]
    does: str = "run"

    def run(self, name: str, arguments: Arguments) -> int:
        """Do what was typed, and return the exit status; what is wrong is told at one door."""
        from .refused import told  # noqa: PLC0415 - help does without

        does = getattr(import_module(f".commands.{self.module}", __package__), self.does)
        return told(name, lambda: does(arguments))
