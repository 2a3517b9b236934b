"""What a command writes to a file that is named for it; why not is refused before or then."""

from collections.abc import Sequence
from pathlib import Path

from ...report.wording.faults import clean
from ..refused import RefusedError
from . import written


def may_write(
    name: str,
    force: bool | None,
    own: Sequence[Path] = (),
    endings: Sequence[str] = (),
    so: str = "Nothing was written.",
) -> None:
    """Refuse a file that cannot be written, before anything is worked out.

    Where there are ``endings`` one of them tells what is to be written.
    """
    if endings and "\0" not in name and Path(name).suffix.casefold() not in endings:
        known = " or ".join(endings)
        shown = clean(name, 60)
        raise RefusedError(f"{shown} does not end in {known}, which tells what is to be written")
    if problem := written.unwritable(Path(name), force=force, own=own):
        raise RefusedError(problem, so)


def write_or_refuse(
    name: str, content: bytes | str, force: bool | None, own: Sequence[Path] = ()
) -> None:
    """Write a file whole, or refuse to."""
    if problem := written.write(Path(name), content, force=force, own=own):
        raise RefusedError(problem)
