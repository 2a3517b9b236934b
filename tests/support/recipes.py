"""A copy of the house in which a recipe of DEVELOPERS.md is followed, and what is run there."""

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from shutil import copytree, ignore_patterns
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
DESIGN = """\
[design]
name = 'Crate by the quay'
units = 'imperial'
[site]
method = 'forecast'
wind = '58 mph'
exposure = 'open'
ground = '{ground}'
[[part]]
name = 'crate'
shape = 'box'
length = '24 in'
width = '24 in'
height = '30 in'
wall = '3/4 in'
material = '{material}'
"""

AS_IT_IS = {"ground": "firm lawn", "material": "softwood plywood"}

NOT_THE_HOUSE = ignore_patterns(".*", "__pycache__", "*.egg-info", "tests", "docs", "build", "dist")


def house(folder: Path) -> Path:
    """Return a copy of the rooms in a folder."""
    return Path(copytree(ROOT, folder / "yardfast", ignore=NOT_THE_HOUSE))


def changed(path: Path, pairs: Sequence[tuple[str, str]]) -> None:
    """Put each second text once in place of the first, which stands there."""
    text = path.read_text(encoding="utf-8")
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new, 1)
    path.write_text(text, encoding="utf-8")


def rows_as(path: Path, like: str, name: str) -> None:
    """Add to a table the rows whose first cell is ``like``, as those of ``name``."""
    text = path.read_text(encoding="utf-8")
    rows = [row for row in text.splitlines() if row.startswith(f"{like},")]
    assert rows, like
    more = "\n".join(row.replace(like, name, 1) for row in rows)
    path.write_text(f"{text.rstrip()}\n{more}\n", encoding="utf-8")


def ran(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run Python in a folder that holds a copy; `-m yardfast` is the command of that."""
    return subprocess.run(
        [sys.executable, *arguments],
        env={**os.environ, "PYTHONPATH": str(folder)},
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
    )


def found(folder: Path, text: str = "", **of: str) -> Any:
    """Return the result of a design as a program reads it, by the copy: of a crate as it is."""
    (folder / "crate.toml").write_text(text or DESIGN.format(**(AS_IT_IS | of)))
    done = ran(folder, "-m", "yardfast", "check", "crate.toml", "--format", "json")
    assert done.returncode in (0, 1), done.stderr + done.stdout
    return json.loads(done.stdout)


def numbers(result: Any) -> list[tuple[str, float, float]]:
    """Return name, demand and capacity of each check of a result."""
    return [(check["name"], check["demand"], check["capacity"]) for check in result["checks"]]
