"""The walk of DEVELOPERS.md from a file to the verdict: run as it stands there."""

import re
from importlib import import_module
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
_LINE = re.compile(r"\w+ = (\w+)\(.*\)  # ([\w/]+)\.py: .+")


@pytest.fixture(scope="module")
def lines() -> list[str]:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    block = re.search(r"## A walk .*?```python\n(.*?)```", text, re.DOTALL)
    assert block
    return block[1].splitlines()


def test_ten_lines_name_ten_functions_and_the_files_that_they_stand_in(lines: list[str]) -> None:
    found = [_LINE.fullmatch(line) for line in lines]
    assert all(found)
    assert len({each[1] for each in found if each}) == 10
    for name, file in (each.groups() for each in found if each):
        assert f"\ndef {name}(" in (ROOT / f"{file}.py").read_text(encoding="utf-8")


def test_the_walk_ends_in_what_the_command_says(
    lines: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    known: dict[str, object] = {}
    for line in lines:
        found = _LINE.fullmatch(line)
        assert found
        name, file = found.groups()
        known[name] = getattr(import_module(f"yardfast.{file.replace('/', '.')}"), name)
        exec(line, known)
    shown = "\n".join(line.text.rstrip() for line in known["lines"])
    assert shown.strip() in (ROOT / "README.md").read_text(encoding="utf-8")
