"""The examples, and how tests ask each of them: those that take long to judge in the slow part."""

from pathlib import Path

import pytest

FOLDER = Path(__file__).resolve().parents[2] / "examples"

EXAMPLES = sorted(FOLDER.glob("*.toml"), key=lambda file: file.stem)

LONG = ("arbor", "footbridge", "signpost", "swing")
"""Frames of many sticks and joints, which take long to judge."""


def marked(name):
    """Return the marks of a test that is asked of an example or a design of a name."""
    return pytest.mark.slow if name in LONG else ()


every_example = pytest.mark.parametrize("file", EXAMPLES, ids=[file.stem for file in EXAMPLES])
"""Each of them: of what is soon asked."""

each_example = pytest.mark.parametrize(
    "file", [pytest.param(file, marks=marked(file.stem), id=file.stem) for file in EXAMPLES]
)
"""Each of them, those that take long in the slow part: of what is judged and told."""
