"""The page of the Python interface, made from the docstrings of the public names.

.venv/bin/python tests/support/interface_page.py     # writes examples/PYTHON.md anew
"""

import inspect
import re
from functools import cached_property
from pathlib import Path

import yardfast as yf
from yardfast.checks.timber.nds.public import Lateral
from yardfast.report.data import result_parts
from yardfast.report.screens.sizes import ResultRemedy

PAGE = Path(__file__).resolve().parents[2] / "examples" / "PYTHON.md"

HEAD = """\
# The Python interface

`import yardfast as yf` imports nothing else; each name is fetched when it is first used. Sizes,
winds and forces are text as in a design file, `'4 ft 6 in'`, or pint quantities, one or an array;
what comes back is a quantity. This page is made from the docstrings; a test runs their examples."""

CALLS = (
    "read",
    "check",
    "check_many",
    "size",
    "velocity_pressure",
    "withdrawal",
    "lateral",
    "embedment",
    "return_period",
    "Q",
)
KINDS = ("Design", "Result", "Sizes", "DesignError", "Fault", "UnitError")
HELD = (
    result_parts.ResultVerdict,
    result_parts.ResultCheck,
    result_parts.ResultLimits,
    result_parts.ResultJoint,
    result_parts.ResultMember,
    ResultRemedy,
    Lateral,
)
"""What results hold: not made by a user, so not among the public names."""


def page() -> str:
    """Return the page."""
    blocks = [HEAD, "## Calls"]
    blocks += [_call(name) for name in CALLS]
    blocks.append("## What they take and give")
    blocks += [_kind(getattr(yf, name)) for name in (*KINDS,)]
    blocks.append("## What results hold")
    blocks += [_kind(kind) for kind in HELD]
    return "\n\n".join(blocks) + "\n"


def _call(name: str) -> str:
    signature = inspect.signature(getattr(yf, name))
    shown = [
        str(one.replace(annotation=inspect.Parameter.empty))
        for one in signature.parameters.values()
    ]
    firsts = [
        i for i, one in enumerate(signature.parameters.values()) if one.kind is one.KEYWORD_ONLY
    ]
    if firsts:
        shown.insert(firsts[0], "*")
    return f"### `yf.{name}({', '.join(shown)})`\n\n{_said(getattr(yf, name))}"


def _kind(kind: type) -> str:
    rows = [f"| `{name}` | {says} |" for name, says in _attributes(kind)]
    table = "\n\n| | |\n|---|---|\n" + "\n".join(rows) if rows else ""
    return f"### `{kind.__name__}`\n\n{_said(kind)}{table}"


def _annotated(kind: type) -> dict[str, object]:
    return vars(kind).get("__annotations__", {})


def _attributes(kind: type) -> list[tuple[str, str]]:
    """Return fields by their type; properties and methods by the first line of their docstring."""
    found = []
    types = {name: its for one in reversed(kind.__mro__) for name, its in _annotated(one).items()}
    for name in getattr(kind, "__struct_fields__", ()):
        found.append((name, f"`{_type(types[name])}`".replace("|", "\\|")))
    for name, value in vars(kind).items():
        called = inspect.isfunction(value)
        if name.startswith("_") or not (called or isinstance(value, (property, cached_property))):
            continue
        takes = ", ".join([*inspect.signature(value).parameters][1:]) if called else ""
        says = (inspect.getdoc(value) or "").splitlines()[0].replace("``", "`")
        found.append((f"{name}({takes})" if called else name, says))
    return found


def _type(annotation: object) -> str:
    """Return a type without the rooms in which its names stand."""
    plain = isinstance(annotation, type) and not hasattr(annotation, "__args__")
    return annotation.__name__ if plain else re.sub(r"[\w.]*\.(\w+)", r"\1", str(annotation))


def _said(thing: object) -> str:
    """Return a docstring as markdown: its examples as code, its marks of code as code."""
    text, example, rest = (inspect.getdoc(thing) or "").partition("\n\n>>> ")
    said = text.replace("``", "`")
    return f"{said}\n\n```python\n>>> {rest}\n```" if example else said


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8", newline="\n")
