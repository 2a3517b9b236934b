"""What the README begins with is what the tool draws and says now."""

import re
from pathlib import Path

from yardfast.cli import main

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMAND = "$ yardfast check examples/light-tower.toml\n"


def test_its_screen_is_what_the_command_prints(monkeypatch, capsys):
    monkeypatch.chdir(ROOT)
    main(["check", "examples/light-tower.toml"])
    begins = README.index(COMMAND) + len(COMMAND)
    assert README[begins : README.index("```", begins)] == capsys.readouterr().out


def test_its_picture_is_what_the_command_draws(monkeypatch, tmp_path):
    monkeypatch.chdir(ROOT)
    picture = tmp_path / "tower.svg"
    assert main(["draw", "examples/light-tower.toml", "-o", str(picture)]) == 0
    shown = ROOT / "examples" / "pictures" / "light-tower.svg"
    assert _unmarked(picture) == _unmarked(shown)
    assert "(examples/pictures/light-tower.svg)" in README


def _unmarked(file):
    """Return a drawing without its fingerprint, which follows every table."""
    return re.sub(r"fingerprint [0-9a-f]+", "", file.read_text(encoding="utf-8"))
