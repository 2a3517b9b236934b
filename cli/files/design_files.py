"""Which design files are meant by what was typed: a folder stands for those in it."""

import os
from collections.abc import Iterator, Sequence
from pathlib import Path

from ...design.faults import Fault
from ...report.printed.shop import SHOP_FILE


def design_files(named: Sequence[str]) -> tuple[list[str], tuple[Fault, ...]]:
    """Return the design files that names of files and folders stand for, each once, and faults.

    A ``shop.toml`` among several is no design and left out.
    """
    found: dict[str, None] = {}
    faults: list[Fault] = []
    for name in named:
        if not _is_folder(name):
            found[name] = None
            continue
        inside = sorted(str(each) for each in Path(name).glob("*.toml"))
        designs = [each for each in inside if Path(each).name != SHOP_FILE]
        if not designs:
            expected = "a folder with design files, .toml"
            faults.append(Fault(name, None, None, None, "a folder without any", expected))
        found.update(dict.fromkeys(designs))
    designs = without_shop(list(found))
    if [Path(file).name for file in designs] == [SHOP_FILE]:
        hint = "name the designs, or the folder in which they lie"
        faults.append(Fault(designs[0], None, None, None, "the shop's file", "a design file", hint))
        designs = []
    return designs, tuple(faults)


def designs_beneath(named: Sequence[str]) -> tuple[list[str], tuple[Fault, ...]]:
    """Return the files named, for a folder every design file beneath it, and faults of folders.

    A ``shop.toml`` among several is no design and left out, as is what a link to a folder leads to.
    """
    found: list[str] = []
    faults: list[Fault] = []
    for name in named:
        if not _is_folder(name):
            found.append(name)
            continue
        inside = sorted(_beneath(name, faults))
        if not inside:
            expected = "a folder with design files, .toml, in it or in a folder beneath"
            faults.append(Fault(name, None, None, None, "a folder without any", expected))
        found += inside
    return without_shop(found), tuple(faults)


def _beneath(folder: str, faults: list[Fault]) -> Iterator[str]:
    """Yield every design file beneath a folder; what cannot be looked into is a fault."""

    def closed(error: OSError) -> None:
        expected = f"a folder that can be looked into: {error.strerror}"
        faults.append(Fault(str(error.filename), None, None, None, "a closed folder", expected))

    for where, folders, files in os.walk(folder, onerror=closed):
        folders.sort()
        for file in files:
            if file.endswith(".toml") and file != SHOP_FILE:
                yield os.path.join(where, file)


def without_shop(files: Sequence[str]) -> list[str]:
    """Return files without a ``shop.toml`` among several, as ``*.toml`` brings it in."""
    designs = [file for file in files if Path(file).name != SHOP_FILE]
    return designs if designs else list(files)


def _is_folder(name: str) -> bool:
    try:
        return Path(name).is_dir()
    except (OSError, ValueError):
        return False
