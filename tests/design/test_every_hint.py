"""Every place of the house that tells what to type is reached here, and what it tells is typed.

The places are read from the code: each call that makes what to type, and each key that must be
there. A new one without a text here fails.
"""

import ast
import re
import sys
from pathlib import Path

import pytest
from sample_file import altered
from slips import FILES, HEIGHT, SURE, UNSURE

from yardfast.checks.inputs import read_text
from yardfast.design.builds.shape_keys import SHAPES
from yardfast.design.faults import DesignError
from yardfast.design.reader import schema, typed_text
from yardfast.design.reader.mending import with_changes
from yardfast.design.reader.scan import seen

ROOM = Path(schema.__file__).parents[1]
MAKERS = {"Instead": schema.Instead, "Problem": typed_text.Problem}
_WRITE = 4
"""So many arguments a problem of the text has where it says what to write."""

ON = "on       = 'foot'"
ROOF = "[[part]]\nname     = 'roof'"
POST = (
    "[[part]]\nname = 'post'\nshape = 'box'\non = 'foot'\nlumber = '2x4 flat'\n"
    f"height = '30 in'\nmaterial = 'redwood'\n{ROOF}"
)
MORE = [
    ("'2x4 flat'", "'2x4 flat"),
    ("wall     = '3/4 in'", "stock    = '3/4 plywod'"),
    (ON, f"{ON}\nloose = 'yes'"),
    (ON, f"{ON}\nloose = 1"),
    (ON, f"{ON}\nloose = TRUE"),
    (ON, f"{ON}\nat = '12 in'"),
    (ON, f"{ON}\nat = (0 in, 0 in, 1 in)"),
    (HEIGHT, "'''48 in"),
    (HEIGHT, "1/2"),
    ("sides    = 8", "sides    = 8,"),
    (ROOF, POST),
    ("[site]", "[site"),
    ("sides    = 8", "sides    = 8."),
]


def faults(text):
    try:
        read_text(text)
    except DesignError as error:
        return error.faults
    return ()


def places():
    """Return every call in the room that makes what to type: file, and its first and last line."""
    for path in sorted(ROOM.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
                continue
            told = node.func.id == "Instead" or (
                node.func.id == "Problem" and len(node.args) >= _WRITE
            )
            if told:
                yield path, node.lineno, node.end_lineno


@pytest.fixture
def reached(monkeypatch):
    """Return the places that are gone through while a test runs."""
    found = set()
    for name, real in MAKERS.items():

        def made(*args, real=real, **more):
            frame = sys._getframe(1)
            found.add((Path(frame.f_code.co_filename), frame.f_lineno))
            return real(*args, **more)

        for module in list(sys.modules.values()):
            if getattr(module, "__name__", "").startswith("yardfast") and (
                getattr(module, name, None) is real and module not in (schema, typed_text)
            ):
                monkeypatch.setattr(module, name, made)
    return found


def texts():
    yield from (altered(old, new) for old, new in (*SURE, *UNSURE, *MORE))
    # what is told of a count so great is not to be typed: another fault would stand there
    yield altered("sides    = 8", "sides    = 1,000")
    yield from (file.read_text(encoding="utf-8") for file in FILES)


def test_every_place_that_tells_what_to_type_is_reached(reached):
    for text in texts():
        faults(text)
    missed = [
        f"{path.relative_to(ROOM)}:{first}"
        for path, first, last in places()
        if not any(path == file and first <= line <= last for file, line in reached)
    ]
    assert missed == []


@pytest.mark.parametrize(("old", "new"), MORE)
def test_what_is_told_is_typed_and_mends_its_place(old, new):
    found = faults(altered(old, new))
    told = [fault for fault in found if fault.change]
    assert told
    for fault in told:
        left = faults(with_changes(seen(altered(old, new)), [fault.change]))
        assert (fault.line, fault.key) not in {(each.line, each.key) for each in left}


@pytest.mark.parametrize("shape", SHAPES)
def test_a_key_that_is_missing_is_there_once_its_hint_is_typed(shape):
    """Each hint of the form ``key = value`` is typed as a line of the part, all others left."""
    head = "[design]\nname = 'Piece'\nunits = 'imperial'\n[site]\nwind = '58 mph'\n"
    head += "method = 'forecast'\nexposure = 'open'\nground = 'firm lawn'\n"
    text = f"{head}[[part]]\nname = 'piece'\nshape = '{shape}'\nmaterial = 'steel'\n"
    missing = [fault for fault in faults(text) if fault.found.startswith("no '")]
    assert missing
    for fault in missing:
        for line in re.findall(rf"{fault.key} = .*?(?= or [a-z_]+ = |$)", fault.hint):
            left = faults(f"{text}{line}\n")
            assert fault.key not in {each.key for each in left}, (fault, left)
