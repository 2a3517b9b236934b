"""Which design files are meant by what was typed: a folder stands for those in it."""

from collections.abc import Sequence
from pathlib import Path

from ..design.faults import Fault
from ..report.shop import SHOP_FILE


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


def without_shop(files: Sequence[str]) -> list[str]:
    """Return files without a ``shop.toml`` among several, as ``*.toml`` brings it in."""
    designs = [file for file in files if Path(file).name != SHOP_FILE]
    return designs if designs else list(files)


def _is_folder(name: str) -> bool:
    try:
        return Path(name).is_dir()
    except (OSError, ValueError):
        return False
