"""How the pages are built: offline, with the pictures that the tool draws of its examples.

sphinx-build -W docs docs/_build
"""

from pathlib import Path

from yardfast import __version__ as release
from yardfast.cli import main

HERE = Path(__file__).resolve().parent
project = "Yardfast"
extensions = ["myst_parser"]
exclude_patterns = ["_build"]
highlight_language = "none"
html_theme = "alabaster"
html_theme_options = {"description": f"{release}: will it stand in the wind?"}
html_show_copyright = False
html_show_sphinx = False
suppress_warnings = ["myst.header"]  # pages that are taken in begin below their own heads

PICTURES = {
    "light-tower.svg": ("draw", "light-tower.toml"),
    "heron.svg": ("draw", "heron.toml"),
    "foot.svg": ("sweep", "light-tower.toml", "--vary", "foot.across=18 in..36 in"),
}


def _draw(_: object) -> None:
    folder = HERE / "_pictures"
    folder.mkdir(exist_ok=True)
    for name, (command, file, *more) in PICTURES.items():
        example = str(HERE.parent / "examples" / file)
        status = main([command, example, *more, "-o", str(folder / name), "--force"])
        if status != 0:
            raise RuntimeError(f"{name}: yardfast {command} {file} ended with {status}")


def setup(app: object) -> None:
    """Draw before anything is read."""
    app.connect("builder-inited", _draw)  # type: ignore[attr-defined]
