"""What a command writes: whole or not at all, and never over a file that nobody gave up."""

import os
import shutil
from collections.abc import Generator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from secrets import token_hex
from threading import current_thread, main_thread

from ...report.wording.faults import clean

_LONGEST = 60


def unwritable(file: Path, *, force: bool | None = False, own: Sequence[Path] = ()) -> str:
    """Return why a file cannot be written, before anything is worked out; nothing where it can.

    ``force`` gives up a file that stands there; None is for a command that never writes over one.
    ``own`` are files that the command reads: none is written over, by another name or link neither.
    """
    name = _shown(file)
    try:
        if any(_same(file, each) for each in own):
            return f"{name} is a file of the design itself and is kept as it is: another name"
        if _stands(file):
            if file.is_dir():
                return f"{name} is a folder"
            if not force:
                return _exists(file, force)
            return "" if os.access(file, os.W_OK) else f"{name} is protected against writing"
        if not file.parent.is_dir():
            return f"there is no folder {_shown(file.parent)}"
    except OSError as error:
        return f"{name} cannot be written: {error.strerror}"
    except ValueError:  # a NUL within, or half a character
        return f"'{name}' is no name for a file"
    return ""


def write(
    file: Path, content: str | bytes, *, force: bool | None = False, own: Sequence[Path] = ()
) -> str:
    """Write a file, text in UTF-8; return why it could not be, or nothing where it is written.

    The content stands whole beside it before it takes the name, so a full disk leaves no stump
    and spoils no file that ``force`` gives up; without it a file that came meanwhile is kept.
    """
    problem = unwritable(file, force=force, own=own)
    if problem:
        return problem
    data = content.encode("utf-8") if isinstance(content, str) else content
    try:
        target = file.resolve() if force else file
        if target.exists() and not target.is_file():
            target.write_bytes(data)  # a device or a pipe: it has no content to lose
        else:
            with _ended_tidily():
                _put(target, data, bool(force))
    except FileExistsError:
        return _exists(file, force)
    except OSError as error:
        return f"{_shown(file)} cannot be written: {error.strerror}"
    return ""


@contextmanager
def _ended_tidily() -> Generator[None, None, None]:
    """Have a SIGTERM meanwhile end the program as an exception does: what is beside is put away."""
    import signal  # noqa: PLC0415 - only where something is written

    def end(number: int, _: object) -> None:
        raise SystemExit(128 + number)

    usual = signal.getsignal(signal.SIGTERM) == signal.SIG_DFL
    if current_thread() is not main_thread() or not usual:
        yield
        return
    signal.signal(signal.SIGTERM, end)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _put(target: Path, data: bytes, force: bool) -> None:
    beside = target.with_name(f".yardfast-{token_hex(8)}")
    try:
        with beside.open("xb") as opened:
            opened.write(data)
            opened.flush()
            os.fsync(opened.fileno())
        if force:
            if target.exists():
                with suppress(OSError):  # a disk that knows no rights
                    shutil.copymode(target, beside)
            beside.replace(target)
        else:
            _name(beside, target)
    finally:
        beside.unlink(missing_ok=True)


def _name(beside: Path, target: Path) -> None:
    """Give the content its name. FileExistsError where another file has it by now."""
    try:
        os.link(beside, target)
    except FileExistsError:
        raise
    except OSError:  # a disk without second names, such as a memory card
        _take(beside, target)


def _take(beside: Path, target: Path) -> None:
    """Take a name where none may stand, and then its place. FileExistsError as ``_name``."""
    try:
        target.open("xb").close()
        beside.replace(target)
    except FileExistsError:
        raise
    except BaseException:  # whatever ends it: no empty file is left
        with suppress(OSError):
            if not target.stat().st_size:
                target.unlink()
        raise


def _same(one: Path, other: Path) -> bool:
    """Return whether two names lead to one file, or would."""
    try:
        return one.resolve() == other.resolve() or (
            one.exists() and other.exists() and one.samefile(other)
        )
    except (OSError, ValueError, RuntimeError):  # links in a circle, a name that none can have
        return False


def _stands(file: Path) -> bool:
    """Return whether anything has that name, a link that leads nowhere too."""
    try:
        os.lstat(file)
    except (FileNotFoundError, NotADirectoryError):
        return False
    return True


def _exists(file: Path, force: bool | None) -> str:
    way_out = "another name" if force is None else "another name, or --force"
    return f"{_shown(file)} exists already and is kept as it is: {way_out}"


def _shown(file: Path) -> str:
    return clean(str(file), _LONGEST)
