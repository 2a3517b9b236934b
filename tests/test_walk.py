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


def test_every_file_that_the_guide_names_stands() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    every = [path.relative_to(ROOT).as_posix() for path in ROOT.rglob("*.*") if path.is_file()]
    known = {f"/{path}" for path in every if not path.startswith((".venv/", ".git/"))}
    named = set(re.findall(r"`([a-z_0-9/]+\.(?:py|csv|toml|typ|md))`", text))
    assert len(named) > 100
    assert not {name for name in named if not any(path.endswith(f"/{name}") for path in known)}
