"""The small changes that can be made to the code, each one mutant."""

import ast
import csv
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from touched import ROOT

EQUIVALENTS = Path(__file__).with_name("equivalents.csv")

_TURNED = {
    **{ast.Lt: ast.GtE, ast.LtE: ast.Gt, ast.Gt: ast.LtE, ast.GtE: ast.Lt},
    **{ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is},
    **{ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult},
    **{ast.And: ast.Or, ast.Or: ast.And, ast.USub: ast.UAdd},
}

_NAMES = {
    **{"max": "min", "min": "max", "maximum": "minimum", "minimum": "maximum"},
    **{"argmax": "argmin", "argmin": "argmax", "any": "all", "all": "any"},
    **{"sin": "cos", "cos": "sin", "floor": "ceil", "ceil": "floor"},
}


def changes(tree: ast.AST) -> Iterator[tuple[int, str, ast.AST, str, object]]:
    """Yield each change that can be made: line, what, node, field, and its new value."""
    for node in ast.walk(tree):
        line = getattr(node, "lineno", 0)
        if isinstance(node, ast.Compare):
            turned = [_TURNED.get(type(op), type(op))() for op in node.ops]
            if any(type(a) is not type(b) for a, b in zip(turned, node.ops, strict=True)):
                yield line, "comparison turned", node, "ops", turned
        elif isinstance(node, ast.BinOp | ast.BoolOp | ast.UnaryOp) and type(node.op) in _TURNED:
            yield line, f"{type(node.op).__name__} turned", node, "op", _TURNED[type(node.op)]()
        elif isinstance(node, ast.Attribute) and node.attr in _NAMES:
            yield line, f"{_NAMES[node.attr]} for {node.attr}", node, "attr", _NAMES[node.attr]
        elif isinstance(node, ast.Name) and node.id in _NAMES:
            yield line, f"{_NAMES[node.id]} for {node.id}", node, "id", _NAMES[node.id]
        elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
            yield line, f"{node.value} off", node, "value", _off(node.value)
        elif isinstance(node, ast.If | ast.IfExp) and "TYPE_CHECKING" not in ast.dump(node.test):
            denied = ast.UnaryOp(ast.Not(), node.test)
            yield line, "condition denied", node, "test", denied


def _off(value: float) -> float:
    """Return another number: the next whole one, or one that is more by a tenth and one."""
    return value + 1 if isinstance(value, int) else value * 1.1 + 1.0


@dataclass(frozen=True)
class Mutant:
    """One change: the file, its line, which of that file's changes it is, and what it does."""

    file: str
    line: int
    number: int
    what: str

    @property
    def stands(self) -> str:
        """What stands in the line."""
        return (ROOT / self.file).read_text(encoding="utf-8").splitlines()[self.line - 1].strip()

    def text(self) -> str:
        """Return the whole file so changed."""
        tree = ast.parse((ROOT / self.file).read_text(encoding="utf-8"))
        *_, node, field, new = list(changes(tree))[self.number]
        setattr(node, field, new)
        return ast.unparse(ast.fix_missing_locations(tree))

    def __str__(self) -> str:
        return f"{self.file}:{self.line} {self.what}: {self.stands}"


def mutants(room: str) -> list[Mutant]:
    """Return every mutant of a room that an answer can tell."""
    here = ROOT / room
    found = here.glob("*.py") if room == "checks" else here.rglob("*.py")
    same = _equivalents()
    return [
        each
        for file in ([here] if here.is_file() else sorted(found))
        for each in _of_file(file)
        if (each.file, each.stands, each.what) not in same
    ]


def _of_file(file: Path) -> list[Mutant]:
    tree = ast.parse(file.read_text(encoding="utf-8"))
    name = file.relative_to(ROOT).as_posix()
    return [Mutant(name, line, k, what) for k, (line, what, *_) in enumerate(changes(tree))]


def _equivalents() -> set[tuple[str, str, str]]:
    with EQUIVALENTS.open(encoding="utf-8", newline="") as file:
        return {(row["file"], row["line"], row["what"]) for row in csv.DictReader(file)}
